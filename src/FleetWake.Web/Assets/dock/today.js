// Today's list: what the office knew when it was last asked. Everything shown from it says how old it is.

import { ask, Offline, Problem } from './api.js';
import * as db from './db.js';
import { state, keep, learnSkew, rightNow, changed } from './state.js';

/** @type {Promise<void> | null} */
let asking = null;

/** Asks for the list; without signal the old one stays. */
export function refresh() {
  asking ??= (async () => {
    try {
      const tag = state.today?.tag;
      const { status, body, madeAt, tag: newTag } = await ask('/today', { headers: tag ? { 'If-None-Match': tag } : {} });
      // Nothing has changed since, so that the list is as young as this answer.
      if (status === 304) await keep('today', { ...state.today, madeAt: madeAt ?? state.today.madeAt });
      else {
        await learnSkew(body.now);
        await keep('today', { ...body, tag: newTag });
      }
    } catch (error) {
      // The old list stays, whatever it was; and what waits is sent all the same.
      if (!(error instanceof Offline) && !(error instanceof Problem)) console.error(error);
    } finally {
      asking = null;
      changed();
    }
  })();
  return asking;
}

/** Age of the list [h], by the right time. */
export function ageHours(madeAt = state.today?.madeAt) {
  return madeAt ? Math.max(0, (rightNow() - Date.parse(madeAt)) / 3_600_000) : Infinity;
}

/** Whether a card of the list lacks what the office has: soon it will not. */
export const isBehind = () => !!state.today?.boats?.some((/** @type {any} */ b) => b.upToDate === false);

/** So old that nobody may be told "in hire" from it. */
export const isStale = (madeAt = state.today?.madeAt) => ageHours(madeAt) > (state.today?.staleAfterHours ?? 12);

/**
 * The card of a boat: of today's list, else asked for, else as it was last seen.
 * @param {string} boat
 * @returns {Promise<{ card: any, madeAt: string } | null>}
 */
export async function cardOf(boat) {
  if (!state.today) await asking;
  const here = state.today?.boats?.find((/** @type {any} */ b) => b.boat === boat);
  if (here) return { card: here, madeAt: state.today.madeAt };
  try {
    const { body, madeAt } = await ask('/boats/' + encodeURIComponent(boat));
    const kept = { boat, card: body, madeAt: madeAt ?? new Date(rightNow()).toISOString() };
    await db.put('cards', kept).catch(() => {});
    return kept;
  } catch (error) {
    if (error instanceof Problem && error.status === 404) return null;
    if (!(error instanceof Offline) && !(error instanceof Problem)) throw error;
    return (await db.get('cards', boat)) ?? null;
  }
}

/** @param {string} engine @returns {string | null} the boat it hangs on */
export const boatOfEngine = engine => find((/** @type {any} */ p) => p.engine?.engine === engine);

/** @param {string} prop @returns {string | null} the boat it is fitted to */
export const boatOfProp = prop => find((/** @type {any} */ p) => p.mounting?.prop === prop);

/** @param {(position: any) => boolean} is */
const find = is => state.today?.boats?.find((/** @type {any} */ b) => b.positions.some(is))?.boat ?? null;
