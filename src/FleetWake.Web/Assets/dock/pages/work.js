// Cleaned or serviced: a tick for each thing that was done.

import { h } from '../dom.js';
import { numberField, tick, ticks, when } from '../fields.js';
import { form } from '../form.js';
import { recorded } from '../record.js';
import { state } from '../state.js';
import { t, w } from '../texts.js';

export async function act(/** @type {any} */ card) {
  const hull = tick(t('dock-work.hull'));
  const parts = card.positions.map((/** @type {any} */ p) => {
    const of = (/** @type {string} */ words) => p.position === 'single' ? words : t('dock-work.of', { words, position: w('position', p.position) });
    return {
      p, prop: tick(of(t('dock-work.prop'))),
      work: ticks(of(t('dock-work.engine')), 'service', ['gear_oil', 'engine_oil', 'water_pump', 'anodes', 'plugs', 'shaft_greased']),
      hours: numberField(of(t('dock-form.hours')), { unit: 'h', least: 0, most: 100000 }),
    };
  });
  const earlier = when(state.device?.zone ?? 'UTC');
  /** @type {Record<string, import('../fields.js').Field>} */
  const fields = { hull, when: earlier };
  for (const { p, prop, work, hours } of parts) Object.assign(fields, { ['prop' + p.position]: prop, ['work' + p.position]: work, ['hours' + p.position]: hours });
  const body = await form({
    key: `work/${card.boat}`, fields,
    body: [h('p.caution', null, t('dock-form.caution_prop')), hull.node, parts.map((/** @type {any} */ x) => h('section.sheet', null, x.prop.node, x.p.engine ? [x.work.node, x.hours.node] : null)), earlier.node],
    record: async (v, draft) => {
      const records = [];
      if (v.hull) records.push({ kind: 'hull_cleaned', record: { boat: card.boat } });
      for (const { p } of parts) {
        if (v['prop' + p.position]) records.push({ kind: 'prop_cleaned', record: { boat: card.boat, position: p.position } });
        if (p.engine && v['work' + p.position].length > 0) records.push({ kind: 'engine_serviced', record: { engine: p.engine.engine, work: v['work' + p.position], hours: v['hours' + p.position] } });
        else if (p.engine && v['hours' + p.position] !== null) records.push({ kind: 'hours_read', record: { engine: p.engine.engine, hours: v['hours' + p.position] } });
      }
      if (records.length === 0) throw new Error(t('dock-work.nothing'));
      await recorded(card, records, { draft, at: v.when });
    },
  });
  return { title: t('dock-work.title'), body };
}
