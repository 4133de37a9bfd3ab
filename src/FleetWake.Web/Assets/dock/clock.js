// The phone's clock and its error. An entry keeps the time that the phone showed, and what was known then of its error; when
// it is sent, the office is told what that clock would show now, and takes the error off. So it does not matter whether the
// clock was set in between, or which phone sends.

import { rightNow, state } from './state.js';
import { stampIn } from './time.js';

/** Below this the office takes a difference for the time of travel (Arrival.ClockToleranceSeconds) [ms]. */
const TOLERANCE = 120_000;

/** How little the last comparison may disagree with an entry made after it [ms]. */
const SLACK = 5 * 60_000;

/** What is known of the clock now, to be kept with an entry. */
export const clockNow = () => ({
  skew: state.skewKnown ? state.skew : null, comparedAt: state.comparedAt ?? (Date.parse(state.today?.madeAt ?? '') || null), session: performance.timeOrigin, mark: Math.round(Date.now() - performance.now()),
});

/**
 * What the office's clock showed less the clock that an entry was made by [ms].
 * @param {import('./outbox.js').Kept} e
 */
export function skewOf(e) {
  if (e.frame !== null && e.frame !== undefined) return e.frame;
  // Of another phone: this one's clock says nothing of that one's.
  if (e.imported) return e.skew ?? 0;
  if (e.skew === null || e.skew === undefined || Math.abs(e.skew - state.skew) <= TOLERANCE) return state.skew;

  // The clock was set since it was last compared: before the entry, or after it. It was made after that comparison and before now.
  const can = (/** @type {number} */ skew) => e.enteredAt + skew >= (e.comparedAt ?? -Infinity) - SLACK && e.enteredAt + skew <= rightNow() + SLACK;
  const [then, now] = [can(e.skew), can(state.skew)];
  if (then !== now) return then ? e.skew : state.skew;
  const untouched = e.session === performance.timeOrigin && Math.abs(Date.now() - performance.now() - (e.mark ?? 0)) <= TOLERANCE;
  return !then || untouched ? state.skew : e.skew;
}

/** When it happened, by the right clock. @param {import('./outbox.js').Kept} e */
export function happened(e) {
  const skew = skewOf(e);
  return e.typed || Math.abs(skew) <= TOLERANCE ? e.happenedAt : stampIn(e.zone, new Date(Date.parse(e.happenedAt) + skew));
}

/** The same by the clock that the entry was made by, as the office wants it. @param {import('./outbox.js').Kept} e */
export function asShown(e) {
  const skew = skewOf(e);
  return e.typed && Math.abs(skew) > TOLERANCE ? stampIn(e.zone, new Date(Date.parse(e.happenedAt) - skew)) : e.happenedAt;
}

/** What a clock of that error would show now, as a batch says it. @param {string} zone @param {number} skew */
export const sentBy = (zone, skew) => stampIn(zone, new Date(rightNow() - skew));
