// The conditions of a trial: what the last one had stands there already, what the air is today has to be read today.

import { h } from './dom.js';
import { numberField } from './fields.js';
import { t, w } from './texts.js';

/** @type {[name: string, unit: string, least: number, most: number, whole?: boolean][]} */
const LAST = [['people', '', 0, 100, true], ['loadKilograms', 'kg', 0, 20000], ['fuelPercent', '%', 0, 100], ['trimDegrees', '°', -30, 90]];
/** @type {[name: string, unit: string, least: number, most: number, whole?: boolean][]} */
const TODAY = [['airTemperatureCelsius', '°C', -40, 55], ['pressureHectopascals', 'hPa', 500, 1090], ['humidityPercent', '%', 0, 100], ['windKnots', 'kn', 0, 80], ['waveHeightMetres', 'm', 0, 10], ['waterDepthMetres', 'm', 0.1, 12000]];

/** @param {any} card @param {() => void} changed */
export function conditions(card, changed) {
  const last = card.positions.map((/** @type {any} */ p) => p.lastTrial).find(Boolean);
  /** @type {Record<string, import('./fields.js').Field & { input: any }>} */
  const fields = {};
  const make = (/** @type {any} */ [name, unit, least, most, whole], /** @type {any} */ value) => {
    fields[name] = numberField(w('field', name), { unit: unit || undefined, least, most, whole, value, oninput: changed, hint: name === 'pressureHectopascals' ? t('dock-trial.pressure_what') : null });
    return fields[name].node;
  };
  const load = LAST.map(f => make(f, last?.[f[0]] ?? null));
  const air = TODAY.map(f => make(f, null));
  const hours = card.positions.map((/** @type {any} */ p) => {
    const field = numberField(card.positions.length > 1 ? t('dock-hours.meter_of', { position: w('position', p.position) }) : t('dock-hours.meter'), { unit: 'h', least: 0, most: 100000 });
    fields['meter_' + p.position] = field;
    return field.node;
  });
  const node = h('section.sheet', null, h('h2', null, t('dock-trial.conditions')),
    last ? h('p.quiet.small', null, t('dock-trial.prefilled')) : null, load, h('p.quiet.small', null, t('dock-trial.air_what')), air, hours);
  return {
    node, fields,
    values: () => Object.fromEntries(Object.entries(fields).map(([name, f]) => { const { value, wrong } = f.read(); return [name, wrong ? null : value]; })),
    record: (/** @type {Record<string, any>} */ v) => Object.fromEntries([...LAST, ...TODAY].map(([name]) => [name, v[name]])),
    meters: (/** @type {Record<string, any>} */ v) => card.positions.map((/** @type {any} */ p) => ({ position: p.position, hours: v['meter_' + p.position] })).filter((/** @type {any} */ m) => m.hours !== null),
  };
}
