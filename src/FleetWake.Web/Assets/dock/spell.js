// A record in words, field by field, as it was entered.

import { h, line } from './dom.js';
import { state } from './state.js';
import { number, t, w } from './texts.js';

/** Lists of words by field; `why` says other things in other kinds. @type {Record<string, string | ((kind: string) => string)>} */
const LISTS = {
  object: 'object', severity: 'severity', verdict: 'verdict', position: 'position', marks: 'mark', seen: kind => kind === 'looked_over' ? 'look' : 'part', moment: 'moment',
  torqueUnit: 'unit', speedUnit: 'unit', throttle: 'throttle', work: 'service', why: kind => kind === 'out_of_hire' ? 'out_why' : kind === 'back_in_hire' ? 'back_why' : kind === 'retracted' ? 'retract' : 'off_why',
};

/** @param {string} field @param {string} kind */
export const listOf = (field, kind) => { const l = LISTS[field]; return typeof l === 'function' ? l(kind) : l; };

/** @param {string} field @param {any} value @param {string} kind @returns {any} */
export function valueWords(field, value, kind) {
  if (field === 'runs' && Array.isArray(value)) return value.map(r => h('p', null, runWords(r)));
  if (Array.isArray(value)) return value.map(v => typeof v === 'object' ? Object.entries(v).map(([f, x]) => Array.isArray(x) || typeof x === 'object' ? valueWords(f, x, kind) : `${w('field', f)} ${valueWords(f, x, kind)}`).join(', ') : valueWords(field, v, kind)).join('; ');
  if (value === true) return t('dock-form.yes');
  if (value === false) return t('dock-form.no');
  if (typeof value === 'number') return number(value, 2) + (UNITS[field] ?? '');
  if (field === 'rule') return state.today?.policy?.rules?.find((/** @type {any} */ r) => r.id === value)?.name ?? value;
  if (field === 'engine') return engineWords(value);
  const list = listOf(field, kind);
  return list ? w(list, value) : field === 'photo' || field === 'retracts' || field === 'strike' ? String(value).slice(0, 8) + '…' : String(value);
}

const UNITS = /** @type {Record<string, string>} */ ({ loadKilograms: ' kg', fuelPercent: ' %', trimDegrees: '°', airTemperatureCelsius: ' °C', pressureHectopascals: ' hPa', humidityPercent: ' %', windKnots: ' kn', waveHeightMetres: ' m', waterDepthMetres: ' m' });

/** @param {any} r a run of a trial */
const runWords = r => [`${number(r.speed, 2)} ${w('unit', r.speedUnit)}`, `${number(r.headingDegrees)}°`, ...r.tachometers.map((/** @type {any} */ m) => `${m.position === 'single' ? '' : w('position', m.position) + ' '}${t('dock-trial.rpm_is', { n: number(m.rpm) })}${m.limiterReached ? ', ' + w('field', 'limiterReached') : ''}${m.ventilated ? ', ' + w('field', 'ventilated') : ''}`), r.seconds ? `${number(r.seconds)} s` : null].filter(Boolean).join(', ');

/** The engine as people know it: by its model and place. @param {string} id */
function engineWords(id) {
  for (const b of state.today?.boats ?? []) {
    const p = b.positions.find((/** @type {any} */ p) => p.engine?.engine === id);
    if (p) return [p.engine.model, b.positions.length > 1 ? w('position', p.position) : null].filter(Boolean).join(', ') || id;
  }
  return id;
}

/** @param {{ kind: string, record: Record<string, any> }} e */
export const spell = e => Object.entries(e.record).filter(([f, v]) => f !== 'boat' && !(f === 'position' && v === 'single')).map(([f, v]) => line(w('field', f), valueWords(f, v, e.kind)));
