// What the app knows, in memory and in IndexedDB at once; whoever draws listens for "change".

import * as db from './db.js';

/**
 * @typedef {{ device: string, dock: string, dockName: string, zone: string, operator: string, operatorName: string,
 *   token: string, tokenUntil: string, rotateAfter: string, key: CryptoKeyPair, ended?: 'device-revoked' | 'token-expired' | 'device-unknown' }} Device
 * @typedef {{ person: string, name: string, until: number | null }} Somebody `until` is null while the PIN was not checked
 */

/** @type {{ device: Device | null, person: Somebody | null, today: any, skew: number, skewKnown: boolean, online: boolean, sending: boolean, waiting: number, trouble: number, unconfirmed: number, update: ServiceWorker | null }} */
export const state = {
  device: null, person: null, today: null, skew: 0, skewKnown: false, online: navigator.onLine, sending: false, waiting: 0, trouble: 0, unconfirmed: 0, update: null,
};

const heard = new EventTarget();

/** @param {() => void} listener @returns {() => void} stops listening */
export function listen(listener) {
  heard.addEventListener('change', listener);
  return () => heard.removeEventListener('change', listener);
}

/** Tells everybody who draws. */
export const changed = () => heard.dispatchEvent(new Event('change'));

/** Reads what the phone keeps. */
export async function loadState() {
  [state.device, state.person, state.today, state.skew] = await db.within(['state'], 'readonly', s =>
    Promise.all(['device', 'person', 'today', 'skew'].map(k => db.answer(s.get(k)))));
  state.device ??= null;
  state.person ??= null;
  state.today ??= null;
  state.skewKnown = state.skew !== undefined;
  state.skew ??= 0;
}

/** Keeps one thing. @param {'device' | 'person' | 'today' | 'skew'} key @param {any} value */
export async function keep(key, value) {
  /** @type {any} */ (state)[key] = value;
  await db.put('state', value, key);
  changed();
}

/**
 * What the office's clock shows less the phone's [ms]. Records keep the phone's time and the office takes the error off; the
 * app itself needs the right time for the age of what it shows.
 * @param {string} officeNow
 */
export async function learnSkew(officeNow) {
  const skew = Date.parse(officeNow) - Date.now();
  if (!Number.isFinite(skew)) return;
  if (state.skewKnown && Math.abs(skew - state.skew) < 5000) return;
  state.skewKnown = true;
  await keep('skew', Math.abs(skew) < 5000 ? 0 : skew);
}

/** The right time as far as it is known [ms]. */
export const rightNow = () => Date.now() + state.skew;
