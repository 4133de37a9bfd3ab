// What is due: taken by somebody, or done.

import { h } from '../dom.js';
import { choice, numberField, pick, when } from '../fields.js';
import { form } from '../form.js';
import { recorded } from '../record.js';
import { state } from '../state.js';
import { t } from '../texts.js';

export async function act(/** @type {any} */ card) {
  const query = new URLSearchParams(location.search);
  const rule = query.get('rule');
  const position = query.get('position');
  const due = (card.due ?? []).find((/** @type {any} */ d) => d.ruleId === rule && (!position || d.position === position));
  if (!rule) return { title: t('dock-duty.title'), body: h('p.note', null, t('dock-duty.none')) };
  const act = { after_strike_inspection: 'inspection', six_monthly_inspection: 'inspection', before_relaunch: 'inspection', first_outing_retorque: 'retorque' }[/** @type {string} */ (due?.kind)];
  const what = choice(t('dock-duty.which'), 'duty', act ? ['taken'] : ['taken', 'done'], { value: act ? 'taken' : null, onpick: turn });
  const hours = numberField(t('dock-form.hours'), { unit: 'h', least: 0, most: 100000 });
  const parts = state.today?.parts ?? [];
  const part = pick(t('dock-duty.part'), parts.map((/** @type {any} */ p) => ({ value: p.part, words: `${p.name ?? p.part}${p.atDock === undefined ? '' : ` (${p.atDock})`}` })), { none: t('dock-duty.no_part') });
  const quantity = numberField(t('dock-duty.quantity'), { whole: true, least: 1, most: 100, value: 1 });
  const earlier = when(state.device?.zone ?? 'UTC');
  const done = h('div', null, position ? hours.node : null, parts.length > 0 ? [part.node, quantity.node] : null);
  function turn() { done.hidden = what.get() !== 'done'; }
  const body = await form({
    key: `duty/${card.boat}/${rule}`, fields: { what, hours, part, quantity, when: earlier }, extra: { get: () => null, set: turn },
    body: [h('p', null, h('strong', null, due?.what ?? rule), due?.why ? ` ${due.why}` : ''), due?.takenBy ? h('p', null, t('dock-duty.is_taken', { by: state.today?.people?.find((/** @type {any} */ p) => p.person === due.takenBy)?.name ?? due.takenBy })) : null,
      act ? h('p', null, h('a.button', { href: `/dock/b/${encodeURIComponent(card.boat)}/${act}${position ? '?position=' + position : ''}` }, t('dock-duty.do_' + act))) : null,
      h('p.caution', null, t('dock-form.caution')), what.node, done, earlier.node],
    record: async (v, draft) => {
      const about = { boat: card.boat, rule, position };
      await recorded(card, [v.what === 'taken' ? { kind: 'duty_taken', record: about }
        : { kind: 'duty_done', record: { ...about, hours: position ? v.hours : null, parts: v.part ? [{ part: v.part, quantity: v.quantity ?? 1, dock: state.device?.dock }] : [] } }], { draft, at: v.when });
    },
  });
  turn();
  return { title: t('dock-duty.title'), body };
}
