// The phone as the office knows it: a key that never leaves it, and a token that is renewed in time.

import { ask, rotate } from './api.js';
import * as db from './db.js';
import { carried, disown } from './outbox.js';
import { state, keep, changed, tellTabs } from './state.js';

/**
 * Enrols this phone with a code of the office. The key is made so that no script, ours included, can read its secret half.
 * @param {string} code @param {string} name what the office shall call the phone
 */
export async function enrol(code, name) {
  const key = /** @type {CryptoKeyPair} */ (await crypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, false, ['sign', 'verify']));
  const { kty, crv, x, y } = await crypto.subtle.exportKey('jwk', key.publicKey);
  // The office refuses a phone that carries another fleet's entries: they must not be sent to this one.
  const { body } = await ask('/enrol', { json: { code, name, publicKey: { kty, crv, x, y }, ...await carried() }, open: true });
  if (state.device?.dock !== body.dock) await keep('today', null);
  // A PIN confirmed what was entered on the phone under its old id; under the new one it is asked for again.
  await disown();
  if (state.person) await keep('person', { ...state.person, until: null });
  await keep('device', { ...body, key });
  // Asked when the phone has something to lose; a browser may say no, and the outbox says so.
  await navigator.storage?.persist?.().catch(() => false);
}

/** Renews the token when its time has come; a phone without signal goes on with the old one. */
export async function renew() {
  const device = state.device;
  if (!device || device.ended === 'device-revoked' || !(Date.parse(device.rotateAfter) < Date.now() + state.skew)) return;
  await rotate().catch(() => {});
}

/** Forgets everything on this phone. */
export async function wipePhone() {
  await db.wipe();
  for (const name of await caches.keys()) if (name.startsWith('dock-')) await caches.delete(name);
  for (const worker of await navigator.serviceWorker?.getRegistrations?.() ?? []) await worker.unregister();
  Object.assign(state, { device: null, person: null, today: null, waiting: 0, trouble: 0, unconfirmed: 0, extras: 0 });
  changed();
  tellTabs('wiped');
}
