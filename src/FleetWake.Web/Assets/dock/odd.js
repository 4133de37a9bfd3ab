// Readings that are hardly so: a finger slips with wet hands. They are asked about once, and taken as read when somebody says so.

import { rightNow, state } from './state.js';
import { number, t, w } from './texts.js';
import { torqueOf } from './words.js';

/** More than this beyond the manual, or less than this of it, is rather a slip or another unit. Judgement. */
const [FAR_ABOVE, FAR_BELOW] = [1.5, 0.5];

/** @param {any} part a position of the card @param {number | null} hours @returns {string | null} */
export function oddHours(part, hours) {
  const last = part?.hours;
  if (!last || hours === null || hours === undefined) return null;
  const days = Math.max(1, Math.ceil((rightNow() - Date.parse(last.on)) / 86_400_000) + 1);
  const is = { last: number(last.value, 1), now: number(hours, 1) };
  return hours < last.value ? t('dock-form.odd_hours_less', is) : hours > last.value + 24 * days ? t('dock-form.odd_hours_more', is) : null;
}

/** @param {any} engine @param {number | null} torque in the manual's unit @returns {string | null} */
export function oddTorque(engine, torque) {
  const manual = torqueOf(engine);
  if (!manual || torque === null || torque === undefined) return null;
  const far = torque > FAR_ABOVE * (manual.high ?? manual.low) || torque < FAR_BELOW * manual.low;
  return far ? t('dock-form.odd_torque', { manual: [manual.low, manual.high].filter(v => v !== null).map(v => number(/** @type {number} */ (v), 1)).join(' – '), now: number(torque, 1), unit: w('unit', manual.unit) }) : null;
}

/** @param {string | null} verdict @param {string[]} marks @returns {string | null} */
export function oddVerdict(verdict, marks) {
  const bad = marks.find(m => ['crack', 'hub_slip', 'bent_blade', 'water_in_oil', 'line_at_seal'].includes(m));
  return verdict === 'fit' && bad ? t('dock-form.odd_verdict', { mark: w('mark', bad) }) : null;
}

/** Whether the person in whose hand the phone is may put a boat back in hire: by PIN, and in a role that may. */
export function mayLift() {
  const role = state.today?.people?.find((/** @type {any} */ p) => p.person === state.person?.person)?.role;
  return !!state.person?.until && state.person.until > rightNow() && role !== undefined && role !== 'analyst';
}
