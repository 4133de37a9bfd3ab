// What the hour meter shows.

import { h } from '../dom.js';
import { numberField, when } from '../fields.js';
import { form } from '../form.js';
import { oddHours } from '../odd.js';
import { recorded } from '../record.js';
import { state } from '../state.js';
import { number, t, w } from '../texts.js';
import { day } from '../time.js';

export async function act(/** @type {any} */ card) {
  const engines = card.positions.filter((/** @type {any} */ p) => p.engine);
  if (engines.length === 0) return { title: t('dock-hours.title'), body: h('p.note', null, t('dock-hours.no_engine')) };
  const meters = engines.map((/** @type {any} */ p) => numberField(p.position === 'single' ? t('dock-hours.meter') : t('dock-hours.meter_of', { position: w('position', p.position) }), {
    unit: 'h', least: 0, most: 100000, needed: engines.length === 1, hint: p.hours ? t('dock-hours.last', { n: number(p.hours.value, 1), day: day(p.hours.on) }) : null, oninput: () => check(),
  }));
  const odd = h('p.note', { role: 'status', hidden: true });
  const check = () => {
    const back = engines.some((/** @type {any} */ p, /** @type {number} */ i) => { const v = meters[i].read().value; return v !== null && p.hours && v < p.hours.value; });
    odd.hidden = !back;
    odd.textContent = back ? t('dock-hours.backwards') : '';
  };
  const earlier = when(state.device?.zone ?? 'UTC');
  const body = await form({
    key: `hours/${card.boat}`, fields: { ...Object.fromEntries(meters.map((/** @type {any} */ m, /** @type {number} */ i) => ['m' + i, m])), when: earlier },
    body: [meters.map((/** @type {any} */ m) => m.node), odd, earlier.node],
    odd: v => engines.map((/** @type {any} */ p, /** @type {number} */ i) => oddHours(p, v['m' + i])),
    record: async (v, draft) => {
      const records = engines.map((/** @type {any} */ p, /** @type {number} */ i) => ({ kind: 'hours_read', record: { engine: p.engine.engine, hours: v['m' + i] } })).filter((/** @type {any} */ r) => r.record.hours !== null);
      if (records.length === 0) throw new Error(t('dock-hours.one'));
      await recorded(card, records, { draft, at: v.when });
    },
  });
  return { title: t('dock-hours.title'), body };
}
