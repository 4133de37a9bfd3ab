// A sea trial: out and back at wide open throttle, with the cautions first and what it showed at once.

import { fill, h } from '../dom.js';
import { choice, when } from '../fields.js';
import { fittedNow } from '../fitted.js';
import { form } from '../form.js';
import { ownOf } from '../hire.js';
import { recorded } from '../record.js';
import { conditions } from '../trial-conditions.js';
import { resultOf } from '../trial-result.js';
import { runs } from '../trial-runs.js';
import { state } from '../state.js';
import { t, w } from '../texts.js';

export async function act(/** @type {any} */ card, /** @type {{ madeAt: string }} */ found) {
  const own = await ownOf(card, found.madeAt);
  const open = whatIsOpen(card, own);
  const result = h('section.sheet', { 'aria-live': 'polite', 'aria-label': t('dock-trial.result') });
  const vibration = choice(t('dock-trial.vibration'), 'yes_no', ['no', 'yes'], { onpick: turn });
  const throttle = choice(t('dock-trial.throttle'), 'throttle', ['wide_open', 'part'], { value: 'wide_open', onpick: () => { turn(); draw(); } });
  const said = conditions(card, draw);
  const made = runs(card.positions, draw);
  const earlier = when(state.device?.zone ?? 'UTC');
  const why = h('p.note.stop', { role: 'status', hidden: true });

  /** No phone leads anybody to wide open throttle with something open; what was measured anyway is taken all the same. */
  function turn() {
    const wide = throttle.get() !== 'part';
    const list = [...open, ...(vibration.get() === 'yes' ? [t('dock-trial.open_vibration')] : [])];
    why.hidden = !wide || (list.length === 0 && vibration.get() === 'no');
    fill(why, list.length === 0 ? t('dock-trial.answer_first') : t('dock-trial.not_guided', { what: list.join(', ') }));
    why.classList.toggle('stop', list.length > 0);
    made.guide(wide ? list.length === 0 && vibration.get() === 'no' : true);
  }

  function draw() {
    fill(result, h('h2', null, t('dock-trial.result')), card.positions.map((/** @type {any} */ p) => {
      // The numbers of the prop that the office knows are not those of one that this phone says was fitted since.
      const part = fittedNow(p, own) === (p.mounting?.prop ?? null) ? p : { ...p, mounting: null };
      return [card.positions.length > 1 ? h('h3', null, w('position', p.position)) : null, resultOf(part, made.of(p.position), said.values(), throttle.get() === 'part')];
    }));
  }

  const body = await form({
    key: `trial/${card.boat}`, fields: { vibration: { ...vibration, read: () => ({ value: vibration.get() }) }, throttle, ...said.fields, when: earlier },
    extra: { get: made.get, set: v => { made.set(v); turn(); draw(); } },
    body: [
      h('details.cautions', { open: true }, h('summary', null, t('dock-trial.cautions')), h('ul', null, [1, 2, 3, 4, 5, 6].map(n => h('li', null, t('dock-trial.caution_' + n))))),
      vibration.node, throttle.node, why, made.node, result, said.node, earlier.node],
    record: async (v, draft) => {
      const list = made.read();
      if (list.wrong) throw new Error(list.wrong);
      await recorded(card, [{ kind: 'trial_run', record: { boat: card.boat, throttle: v.throttle, runs: list.value, meters: said.meters(v), ...said.record(v) } }], { draft, at: v.when });
    },
  });
  turn();
  draw();
  return { title: t('dock-trial.title'), body, leave: made.stop };
}

/** What speaks against a run at wide open throttle. @param {any} card @param {import('../outbox.js').Kept[]} own @returns {string[]} */
function whatIsOpen(card, own) {
  const list = [];
  if (card.positions.some((/** @type {any} */ p) => (p.openStrikes ?? []).length > 0) || own.some(e => e.kind === 'strike_reported')) list.push(t('dock-trial.open_strike'));
  const fresh = own.filter(e => e.kind === 'prop_mounted');
  const done = own.filter(e => e.kind === 'nut_retorqued');
  const isDone = (/** @type {string} */ position, /** @type {number} */ after) => done.some(e => e.position === position && e.count > after);
  const due = card.positions.some((/** @type {any} */ p) => p.mounting?.retorqueDue && p.mounting.fittedOn < new Date(Date.now() + state.skew).toISOString().slice(0, 10) && !isDone(p.position, 0));
  if (due || fresh.some(e => card.positions.find((/** @type {any} */ p) => p.position === e.position)?.engine?.fastening?.retorque === true && !isDone(e.position ?? '', e.count))) list.push(t('dock-trial.open_retorque'));
  return list;
}
