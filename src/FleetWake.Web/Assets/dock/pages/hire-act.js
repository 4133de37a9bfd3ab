// Out of hire, and back.

import { h } from '../dom.js';
import { choice, when } from '../fields.js';
import { form } from '../form.js';
import { hireOf, ownOf } from '../hire.js';
import { recorded } from '../record.js';
import { state } from '../state.js';
import { t } from '../texts.js';

export async function act(/** @type {any} */ card, /** @type {{ madeAt: string }} */ found) {
  const hire = hireOf({ ...card, hire: card.hire ?? { word: 'in_hire', reasons: [] } }, found.madeAt, await ownOf(card, found.madeAt));
  const out = hire.kind === 'in';
  const which = choice(t('dock-hire.which'), 'hire_act', ['out', 'back'], { value: out ? 'out' : null, onpick: turn });
  const why = choice(t('dock-hire.why_out'), 'out_why', ['strike', 'damage', 'service', 'office', 'other'], { optional: true });
  const grounds = choice(t('dock-hire.why_back'), 'back_why', ['looked_at_dock', 'repaired', 'office'], { optional: true });
  const note = h('p.note', null, t('dock-hire.take_off'));
  const earlier = when(state.device?.zone ?? 'UTC');
  function turn() {
    why.node.hidden = which.get() !== 'out';
    grounds.node.hidden = note.hidden = which.get() !== 'back';
  }
  const body = await form({
    key: `hire/${card.boat}`, fields: { which, why, grounds, when: earlier }, extra: { get: () => null, set: turn },
    body: [which.node, why.node, note, grounds.node, earlier.node],
    record: async (v, draft) => {
      const says = v.which === 'out' ? why : grounds;
      const word = v.which === 'out' ? v.why : v.grounds;
      says.say(word ? null : t('dock-form.choose'));
      if (!word) throw new Error(t('dock-form.choose'));
      await recorded(card, [{ kind: v.which === 'out' ? 'out_of_hire' : 'back_in_hire', record: { boat: card.boat, why: word } }], { draft, at: v.when });
    },
  });
  turn();
  return { title: t('dock-hire.title'), body };
}
