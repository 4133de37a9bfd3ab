// What the app knows, in memory and in IndexedDB at once; whoever draws listens for "change".

import * as db from './db.js';
import { CHEAP, makeRoom } from './space.js';

/**
 * @typedef {{ device: string, dock: string, dockName: string, zone: string, operator: string, operatorName: string,
 *   token: string, tokenUntil: string, rotateAfter: string, key: CryptoKeyPair, ended?: 'device-revoked' | 'token-expired' | 'device-unknown' }} Device
 * @typedef {{ person: string, name: string, until: number | null }} Somebody `until` is null while the PIN was not checked
 */

/**
 * @type {{ device: Device | null, person: Somebody | null, today: any, skew: number, skewKnown: boolean, comparedAt: number | null, photosPause: number | null, online: boolean, sending: boolean,
 *   waiting: number, trouble: number, unconfirmed: number, extras: number, update: ServiceWorker | null }}
 *   `comparedAt`: when the clock was compared [ms, the office's time]; `photosPause`: the office has no room for photos until then; `extras`: photos and notes that are not sent
 */
export const state = {
  device: null, person: null, today: null, skew: 0, skewKnown: false, comparedAt: null, photosPause: null, online: navigator.onLine, sending: false, waiting: 0, trouble: 0, unconfirmed: 0, extras: 0, update: null,
};

const heard = new EventTarget();

/** @param {() => void} listener @returns {() => void} stops listening */
export function listen(listener) {
  heard.addEventListener('change', listener);
  return () => heard.removeEventListener('change', listener);
}

/** Tells everybody who draws. */
export const changed = () => heard.dispatchEvent(new Event('change'));

/** Other tabs of the app on this phone. */
const tabs = 'BroadcastChannel' in globalThis ? new BroadcastChannel('fleetwake-dock') : null;

/** Tells the other tabs. @param {{ kept: string } | 'outbox' | 'wiped'} what */
export const tellTabs = what => tabs?.postMessage(what);

/** What another tab did. @param {(what: 'outbox' | 'wiped') => void} then */
export function hearTabs(then) {
  tabs?.addEventListener('message', async ({ data }) => {
    if (data?.kept) { await read(data.kept).catch(console.error); changed(); } else then(data);
  });
}

/** Reads what the phone keeps. */
export async function loadState() {
  await Promise.all(['device', 'person', 'today', 'skew', 'photosPause'].map(read));
}

/** @param {string} key */
async function read(key) {
  const value = await db.get('state', key);
  if (key === 'skew') state.skewKnown = value !== undefined;
  /** @type {any} */ (state)[key] = value ?? (key === 'skew' ? 0 : null);
}

/** Keeps one thing. @param {'device' | 'person' | 'today' | 'skew' | 'photosPause'} key @param {any} value */
export async function keep(key, value) {
  /** @type {any} */ (state)[key] = value;
  const dear = key === 'device' || key === 'person';
  try {
    await makeRoom(() => db.put('state', value, key), dear ? undefined : CHEAP);
    tellTabs({ kept: key });
  } catch (error) {
    // What the office tells again is no reason to stop: until the app is shut it is known all the same.
    if (dear) throw error;
    console.error(error);
  }
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
  state.comparedAt = Date.parse(officeNow);
  if (state.skewKnown && Math.abs(skew - state.skew) < 5000) return;
  state.skewKnown = true;
  await keep('skew', Math.abs(skew) < 5000 ? 0 : skew);
}

/** The right time as far as it is known [ms]. */
export const rightNow = () => Date.now() + state.skew;
