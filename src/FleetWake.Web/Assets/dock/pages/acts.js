// What can be recorded about a boat: each act its own file, all with the boat's card in hand.

import { h, link } from '../dom.js';
import { t } from '../texts.js';
import { cardOf } from '../today.js';

/** @type {Record<string, () => Promise<{ act: (card: any, found: { madeAt: string }) => Promise<any> }>>} */
const ACTS = {
  strike: () => import('./strike.js'), mounting: () => import('./mounting.js'), 'take-off': () => import('./take-off.js'), found: () => import('./found.js'),
  inspection: () => import('./inspection.js'), look: () => import('./look.js'), retorque: () => import('./retorque.js'), hours: () => import('./hours.js'),
  trial: () => import('./trial.js'), work: () => import('./work.js'), hire: () => import('./hire-act.js'), duty: () => import('./duty.js'),
};

export async function show(/** @type {string} */ boat, /** @type {string} */ act) {
  const [found, module] = await Promise.all([cardOf(boat), ACTS[act]()]);
  // A boat of which the phone knows nothing can still be struck: the office holds it until it knows the boat.
  const card = found?.card ?? { boat, name: boat, positions: [{ position: 'single' }, { position: 'port' }, { position: 'starboard' }, { position: 'centre' }], unknown: true };
  const page = await module.act(card, found ?? { madeAt: '' });
  return { ...page, trail: h('p.trail', null, link('/dock/b/' + encodeURIComponent(boat), '‹ ' + card.name)), body: [card.unknown ? h('p.note', null, t('dock-form.boat_unknown')) : null, page.body] };
}
