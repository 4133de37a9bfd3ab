// Out of hire, and back. A hand may lift what keeps a boat: a known one, which says of each thing that it has seen it.

import { fill, h } from '../dom.js';
import { choice, tick, when } from '../fields.js';
import { form } from '../form.js';
import { hireOf, ownOf } from '../hire.js';
import { mayLift } from '../odd.js';
import { recorded } from '../record.js';
import { state } from '../state.js';
import { t } from '../texts.js';

export async function act(/** @type {any} */ card, /** @type {{ madeAt: string }} */ found) {
  const hire = hireOf({ ...card, hire: card.hire ?? { word: 'in_hire', reasons: [] } }, found.madeAt, await ownOf(card, found.madeAt));
  const out = hire.kind === 'in';
  const may = mayLift();
  const which = choice(t('dock-hire.which'), 'hire_act', ['out', 'back'], { value: out ? 'out' : null, onpick: turn });
  const why = choice(t('dock-hire.why_out'), 'out_why', ['strike', 'damage', 'service', 'office', 'other'], { optional: true });
  const grounds = choice(t('dock-hire.why_back'), 'back_why', ['looked_at_dock', 'repaired', 'office'], { optional: true });
  const boxes = hire.reasons.map((/** @type {any} */ r) => tick(r.sentence));
  const wrong = h('p.wrong');
  const open = {
    node: h('fieldset.keys.wide', null, h('legend', null, t(boxes.length > 0 ? 'dock-hire.open' : 'dock-hire.open_none')), boxes.map((/** @type {any} */ b) => b.node), wrong),
    get: () => null, set: () => {}, read: () => ({ value: boxes.every((/** @type {any} */ b) => b.get()) }), say: (/** @type {string | null} */ words) => fill(wrong, words ?? ''),
  };
  const note = h('p.note', null, t('dock-hire.take_off'));
  const sign = h('div.note.stop', { role: 'status' }, h('p', null, t(state.online ? 'dock-hire.sign' : 'dock-hire.sign_offline')), h('a.button', { href: '/dock/who?to=' + encodeURIComponent(location.pathname) }, t('dock-hire.sign_now')));
  const earlier = when(state.device?.zone ?? 'UTC');
  function turn() {
    const back = which.get() === 'back';
    why.node.hidden = which.get() !== 'out';
    grounds.node.hidden = note.hidden = open.node.hidden = !back || !may;
    sign.hidden = !back || may;
  }
  const body = await form({
    key: `hire/${card.boat}`, fields: { which, why, open, grounds, when: earlier }, extra: { get: () => null, set: turn },
    body: [which.node, why.node, sign, open.node, grounds.node, note, earlier.node],
    check: v => {
      if (v.which === 'out') return v.why ? [] : [[why, t('dock-form.choose')]];
      if (!may) return [[{ ...which, node: sign, say: () => {} }, '']];
      return [...(v.open ? [] : [[open, t('dock-hire.open_tick')]]), ...(v.grounds ? [] : [[grounds, t('dock-form.choose')]])];
    },
    record: async (v, draft) => {
      await recorded(card, [v.which === 'out' ? { kind: 'out_of_hire', record: { boat: card.boat, why: v.why } } : { kind: 'back_in_hire', record: { boat: card.boat, why: v.grounds } }], { draft, at: v.when });
    },
  });
  turn();
  return { title: t('dock-hire.title'), body };
}
