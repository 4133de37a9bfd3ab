// An inspection: what was in hand, what was seen, and the verdict. Only an inspection says fit.

import { h } from '../dom.js';
import { choice, numberField, pick, ticks, when } from '../fields.js';
import { form } from '../form.js';
import { oddHours, oddVerdict } from '../odd.js';
import { photoInput } from '../photo-input.js';
import { partOf, positionField, positionOf } from '../position.js';
import { recorded } from '../record.js';
import { state } from '../state.js';
import { t, w } from '../texts.js';

const TOOLS = ['pitch_gauge', 'pitch_blocks', 'shop_machine'];

export async function act(/** @type {any} */ card) {
  const query = new URLSearchParams(location.search);
  /** @type {import('../photos.js').Taken[]} */
  const photos = [];
  const taken = h('p.quiet.small', { role: 'status' });
  const stainless = h('p.note', { hidden: true }, t('dock-inspection.stainless'));
  const position = positionField(card, query.get('position'), turn);
  const seen = ticks(t('dock-inspection.seen'), 'part', ['prop', 'hub', 'shaft', 'seal', 'gear_oil']);
  const marks = ticks(t('dock-inspection.marks'), 'mark', ['chips', 'crack', 'edge_wear', 'bent_blade', 'corrosion', 'hub_slip', 'line_at_seal', 'water_in_oil', 'growth']);
  const verdict = choice(t('dock-inspection.verdict'), 'verdict', ['fit', 'watch', 'repair', 'take_off'], { words: o => [h('strong', null, w('verdict', o)), h('span.quiet.small', null, t('dock-inspection.verdict_' + o))] });
  const hours = numberField(t('dock-form.hours'), { unit: 'h', least: 0, most: 100000 });
  const blades = [1, 2, 3, 4, 5].map(n => numberField(t('dock-inspection.blade', { n }), { unit: 'in', least: 1, most: 60 }));
  const diameter = numberField(t('dock-inspection.diameter'), { unit: 'in', least: 3, most: 60 });
  const tool = pick(t('dock-inspection.tool'), TOOLS.map(value => ({ value, words: w('tool', value) })));
  const earlier = when(state.device?.zone ?? 'UTC');

  function turn() {
    const part = partOf(card, position.get());
    const struck = (part.openStrikes ?? []).some((/** @type {any} */ s) => ['chipped', 'bent', 'broken'].includes(s.severity));
    stainless.hidden = !(part.mounting?.material === 'stainless' && struck);
    blades.forEach((b, i) => { b.node.hidden = i >= (part.mounting?.blades ?? 4); });
  }

  const body = await form({
    key: `inspection/${card.boat}`, fields: { position, seen, marks, verdict, hours, diameter, tool, when: earlier, ...Object.fromEntries(blades.map((b, i) => ['blade' + i, b])) },
    extra: { get: () => null, set: turn },
    body: [h('p.caution', null, t('dock-form.caution_prop')), position.node, stainless, seen.node, marks.node, verdict.node,
      h('details', null, h('summary', null, t('dock-inspection.measured')), h('p.quiet.small', null, t('dock-inspection.measured_what')), tool.node, diameter.node, blades.map(b => b.node)),
      hours.node, h('h2', null, t('dock-photo.title')), photoInput(list => { photos.push(...list); taken.textContent = t('dock-photo.taken', { n: photos.length }); }), taken, earlier.node],
    check: v => v.diameter !== null && !(partOf(card, positionOf(card, v.position)).mounting && blades.filter((_, i) => v['blade' + i] !== null).length >= 2) ? [[diameter, t('dock-inspection.diameter_alone')]] : [],
    odd: v => [oddHours(partOf(card, positionOf(card, v.position)), v.hours), oddVerdict(v.verdict, v.marks)],
    record: async (v, draft) => {
      const at = positionOf(card, v.position);
      const part = partOf(card, at);
      const pitches = blades.map((_, i) => v['blade' + i]).filter(p => p !== null);
      const records = [{ kind: 'inspected', record: { boat: card.boat, position: at, verdict: v.verdict, marks: v.marks, seen: v.seen, measuredPitchInches: pitches, hours: v.hours } }];
      // What a gauge showed belongs to the prop, too, wherever it goes next.
      if (part.mounting && pitches.length >= 2 && v.tool) records.push({ kind: 'prop_measured', record: /** @type {any} */ ({ prop: part.mounting.prop, pitchInchesByBlade: pitches, tool: v.tool, diameterInches: v.diameter }) });
      await recorded(card, records, { draft, at: v.when, photos });
    },
  });
  turn();
  return { title: t('dock-inspection.title'), body };
}
