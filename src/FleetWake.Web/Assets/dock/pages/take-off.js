// A prop comes off and none goes on.

import { h } from '../dom.js';
import { choice, ID, numberField, textField, when } from '../fields.js';
import { fittedNow } from '../fitted.js';
import { form } from '../form.js';
import { ownOf } from '../hire.js';
import { partOf, positionField, positionOf } from '../position.js';
import { recorded } from '../record.js';
import { state } from '../state.js';
import { t } from '../texts.js';

/** Why a prop comes off. */
export const WHY = ['service', 'worn', 'struck', 'shop', 'other_size', 'hub_slip'];

export async function act(/** @type {any} */ card, /** @type {{ madeAt: string }} */ found) {
  const own = await ownOf(card, found.madeAt);
  const position = positionField(card, new URLSearchParams(location.search).get('position'), turn);
  const prop = textField(t('dock-mounting.tag_off'), { pattern: ID, hint: t('dock-mounting.tag_off_what'), attributes: { autocapitalize: 'none' } });
  const why = choice(t('dock-mounting.why'), 'off_why', WHY);
  const hours = numberField(t('dock-form.hours'), { unit: 'h', least: 0, most: 100000 });
  const earlier = when(state.device?.zone ?? 'UTC');
  function turn() { if (!prop.get()) prop.set(fittedNow(partOf(card, position.get()), own) ?? ''); }
  const body = await form({
    key: `take-off/${card.boat}`, fields: { position, prop, why, hours, when: earlier },
    body: [h('p.caution', null, t('dock-form.caution_prop')), position.node, prop.node, why.node, hours.node, earlier.node],
    record: async (v, draft) => recorded(card, [{ kind: 'prop_removed', record: { boat: card.boat, position: positionOf(card, v.position), why: v.why, prop: v.prop, hours: v.hours } }], { draft, at: v.when }),
  });
  if (position.get()) turn();
  return { title: t('dock-mounting.take_off_title'), body };
}
