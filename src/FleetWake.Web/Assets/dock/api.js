// Speaks to the office. Every answer is one of: a value, "offline" (keep and try later), or a problem in words.

import { state, changed, keep, learnSkew } from './state.js';

/** Nothing could be reached, or what answered is not the office, or it cannot answer just now. */
export class Offline extends Error {
  /** @param {string} why @param {number=} after seconds to wait @param {number=} status */
  constructor(why, after = 0, status = 0) { super(why); this.after = after; this.status = status; }
}

/** Only the office's own refusals are of these types. */
const OURS = 'urn:fleetwake:problem:';

/** The office said no, and why. */
export class Problem extends Error {
  /** @param {number} status @param {any} body */
  constructor(status, body) {
    super(body?.detail ?? body?.title ?? String(status));
    this.status = status;
    this.body = body ?? {};
    this.kind = String(body?.type ?? '').split(/[:/]/).pop() ?? '';
  }
}

const PATIENCE = 20_000;

/**
 * @param {string} path below /dock/api
 * @param {{ method?: string, json?: any, body?: BodyInit, headers?: Record<string, string>, open?: boolean, patience?: number }=} what
 *   `open`: needs no token
 * @returns {Promise<{ status: number, body: any, tag: string | null, madeAt: string | null }>}
 */
export async function ask(path, what = {}) {
  try {
    return await askOnce(path, what);
  } catch (error) {
    // An old token: the phone proves by its key that it is the same phone, and asks again.
    if (what.open || !(error instanceof Problem) || error.status !== 401) throw error;
    if (error.kind === 'device-revoked' || error.kind === 'device-unknown') throw await ended(error);
    try {
      await rotate();
    } catch (failed) {
      // That no new token was had is no answer to what was asked.
      if (failed instanceof Problem && failed.status !== 401) throw new Offline('no new token: ' + failed.message, 60);
      throw failed;
    }
    return askOnce(path, what);
  }
}

/** @param {string} path @param {any} what */
async function askOnce(path, what) {
  const headers = new Headers(what.headers);
  if (!what.open && state.device) headers.set('Authorization', 'Bearer ' + state.device.token);
  if (what.json !== undefined) headers.set('Content-Type', 'application/json');
  let response;
  try {
    response = await fetch('/dock/api' + path, {
      method: what.method ?? (what.json === undefined && what.body === undefined ? 'GET' : 'POST'),
      headers, body: what.json === undefined ? what.body : JSON.stringify(what.json), cache: 'no-store', credentials: 'omit',
      signal: AbortSignal.timeout(what.patience ?? PATIENCE),
    });
  } catch (error) {
    reached(false);
    throw new Offline(String(error));
  }

  const { status } = response;
  const body = status === 304 || status === 204 ? null : await response.json().catch(() => null);
  const later = Number(response.headers.get('Retry-After')) || 5;
  // A sign-in page of some dock's wireless network is an answer, too, and so is a proxy's: but not the office's.
  const ours = response.ok ? status === 204 || body !== null : status === 304 || String(body?.type ?? '').startsWith(OURS);
  if (!ours) {
    reached(status >= 500);
    throw new Offline(`not the office: ${status}`, later, status);
  }
  reached(true);
  await learnSkew(response.headers.get('Date') ?? '');
  if (response.ok || status === 304) return { status, body, tag: response.headers.get('ETag'), madeAt: response.headers.get('FleetWake-Made-At') };
  // That photos find no room there is an answer, and not soon another one.
  if ((status >= 500 && status !== 507) || status === 429 || status === 408) throw new Offline(String(status), later, status);
  throw new Problem(status, body);
}

/** @param {boolean} yes */
function reached(yes) {
  if (state.online === yes) return;
  state.online = yes;
  changed();
}

/** @param {Problem} problem */
async function ended(problem) {
  if (state.device) await keep('device', { ...state.device, ended: problem.kind });
  return problem;
}

/** @type {Promise<void> | null} */
let rotating = null;

/** Gets a new token for the phone's key; one at a time. */
export function rotate() {
  rotating ??= (async () => {
    try {
      for (let attempt = 0; ; attempt++) {
        const device = state.device;
        if (!device) throw new Problem(401, { type: 'device-unknown' });
        const at = new Date(Date.now() + state.skew).toISOString();
        const text = new TextEncoder().encode(`fleetwake-token\n${device.device}\n${at}`);
        const signature = base64url(await crypto.subtle.sign({ name: 'ECDSA', hash: 'SHA-256' }, device.key.privateKey, text));
        try {
          const { body } = await askOnce('/token', { json: { device: device.device, at, signature }, open: true });
          await keep('device', { ...device, ...body, ended: undefined });
          return;
        } catch (error) {
          if (!(error instanceof Problem)) throw error;
          // The phone's clock is wrong: the office says what time it is.
          if (error.status === 422 && error.body.now && attempt === 0) { await learnSkew(error.body.now); continue; }
          throw error.status === 401 ? await ended(error) : error;
        }
      }
    } finally {
      rotating = null;
    }
  })();
  return rotating;
}

/** @param {ArrayBuffer} bytes */
export function base64url(bytes) {
  return btoa(String.fromCharCode(...new Uint8Array(bytes))).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}
