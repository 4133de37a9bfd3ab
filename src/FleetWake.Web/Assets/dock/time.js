// Times: as the dock's clock shows them, with the offset, whatever zone the phone stands in.

import { t, count } from './texts.js';

/** @param {string} zone @param {Date} at */
function partsIn(zone, at) {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone, hourCycle: 'h23', year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', second: '2-digit',
  }).formatToParts(at);
  return Object.fromEntries(parts.map(p => [p.type, p.value]));
}

/** @param {string} zone @param {Date} at @returns {number} minutes east of UTC */
export function offsetMinutes(zone, at) {
  const p = partsIn(zone, at);
  return Math.round((Date.UTC(+p.year, +p.month - 1, +p.day, +p.hour, +p.minute, +p.second) - Math.floor(at.getTime() / 1000) * 1000) / 60000);
}

/** As records want it: 2026-05-03T10:15:00+12:00. @param {string} zone @param {Date=} at */
export function stampIn(zone, at = new Date()) {
  const p = partsIn(zone, at);
  const minutes = offsetMinutes(zone, at);
  const two = (/** @type {number} */ n) => String(n).padStart(2, '0');
  const sign = minutes < 0 ? '-' : '+';
  return `${p.year}-${p.month}-${p.day}T${p.hour}:${p.minute}:${p.second}${sign}${two(Math.floor(Math.abs(minutes) / 60))}:${two(Math.abs(minutes) % 60)}`;
}

/** What a date and time typed at the dock means. @param {string} zone @param {string} local 2026-05-03T10:15 */
export function instantIn(zone, local) {
  const plain = new Date(local + (local.length === 16 ? ':00Z' : 'Z'));
  const first = new Date(plain.getTime() - offsetMinutes(zone, plain) * 60000);
  return new Date(plain.getTime() - offsetMinutes(zone, first) * 60000);
}

/** For an input of the kind datetime-local. @param {string} zone @param {Date} at */
export const inputIn = (zone, at) => stampIn(zone, at).slice(0, 16);

/** A day for people. @param {string | null | undefined} date 2026-05-03, or a whole time */
export function day(date) {
  if (!date) return '';
  const [y, m, d] = date.slice(0, 10).split('-').map(Number);
  return new Intl.DateTimeFormat(undefined, { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' }).format(new Date(Date.UTC(y, m - 1, d)));
}

/** A local time of a record for people. @param {string} local */
export const clock = local => `${day(local)}, ${local.slice(11, 16)}`;

/** How long ago. @param {number} then @param {number=} now both in ms */
export function ago(then, now = Date.now()) {
  const minutes = Math.floor((now - then) / 60000);
  if (minutes < 1) return t('dock.just_now');
  if (minutes < 60) return count('dock.minutes_ago', minutes);
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? count('dock.hours_ago', hours) : count('dock.days_ago', Math.floor(hours / 24));
}
