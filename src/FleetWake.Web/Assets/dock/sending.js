// Sends what waits: records first and in order, then notes, photos last. Whatever goes wrong, the entry stays on the phone.

import { ask, Offline, Problem } from './api.js';
import * as db from './db.js';
import { change, entries, next, wire } from './outbox.js';
import { state, changed } from './state.js';
import { stampIn } from './time.js';

let timer = 0;
let pause = 0;
let again = false;

/** Sends now, in one tab at a time, and again later when something is left. */
export async function send() {
  clearTimeout(timer);
  // Without any network nothing can have left the phone: what waits can still be withdrawn without a trace.
  if (!state.device || !navigator.onLine) return;
  if (state.sending) {
    // What was kept while something was on its way must not wait for the next tap.
    again = true;
    return;
  }

  const work = async () => {
    state.sending = true;
    changed();
    try {
      do {
        again = false;
        await sendRecords();
        await sendNotes();
        await sendPhotos();
      } while (again);
      pause = 0;
    } catch (error) {
      if (!(error instanceof Offline) && !(error instanceof Problem)) console.error(error);
      pause = Math.min(Math.max(error instanceof Offline ? error.after : 60, pause * 2, 5), 300);
    } finally {
      state.sending = false;
      changed();
    }
  };
  if (navigator.locks) await navigator.locks.request('dock-send', { ifAvailable: true }, lock => lock ? work() : void (pause = 5));
  else await work();
  if (pause > 0) timer = setTimeout(send, pause * 1000);
}

async function sendRecords() {
  for (let list = await next(); list.length > 0; list = await next()) await sendBatch(list);
}

/** @param {import('./outbox.js').Kept[]} list */
async function sendBatch(list) {
  // Before the first byte leaves: from here on the office may have it, even if no answer comes.
  await db.within(['entries'], 'readwrite', async s => {
    for (const e of list) { const kept = await db.answer(s.get(e.id)); if (kept) s.put({ ...kept, attempts: kept.attempts + 1 }); }
  });
  const still = (await Promise.all(list.map(e => db.get('entries', e.id)))).filter(e => e?.fate === 'waiting');
  if (still.length === 0) return;
  const device = /** @type {import('./state.js').Device} */ (state.device);
  try {
    const { body } = await ask('/records', { json: { device: device.device, sentAt: stampIn(device.zone), records: still.map(wire) } });
    for (let i = 0; i < still.length; i++) await settle(still[i].id, body.results[i]);
  } catch (error) {
    if (!(error instanceof Problem) || error.status === 401 || error.status === 403) throw error;
    // The batch as a whole was refused: one of them is to blame, and the others must not wait for it.
    if (still.length > 1) { for (const e of still) await sendBatch([e]); return; }
    await settle(still[0].id, { outcome: 'refused', refusals: error.body.refusals ?? [{ field: '', message: error.message }] });
  }
}

/** @param {string} id @param {any} result */
async function settle(id, result) {
  const fates = { recorded: 'sent', held: 'held', refused: 'refused', conflict: 'conflict', kept_back: 'kept_back' };
  await change(id, kept => {
    kept.fate = /** @type {any} */ (fates)[result?.outcome] ?? 'waiting';
    kept.answeredAt = Date.now();
    kept.told = [...(result?.refusals ?? []), ...(result?.held ?? []), ...(result?.contradictions ?? []).map((/** @type {any} */ c) => ({ field: '', message: c.question ?? c.sentence ?? '' }))];
  });
  if (!(result?.outcome in fates)) throw new Offline('an answer that is not understood', 60);
}

const arrived = (/** @type {import('./outbox.js').Kept} */ e) => e.fate === 'sent' || e.fate === 'held';

async function sendNotes() {
  for (const e of (await entries()).filter(e => arrived(e) && e.note && !e.noteSent)) {
    await passing(() => ask(`/entries/${e.id}/note`, { method: 'PUT', json: { text: e.note } }));
    await change(e.id, kept => { if (kept.note === e.note) kept.noteSent = true; });
  }
}

async function sendPhotos() {
  for (const photo of await db.all('photos')) {
    const e = photo.sent ? undefined : await db.get('entries', photo.entry);
    if (!e || !arrived(e)) continue;
    const taken = await passing(() => ask(`/entries/${e.id}/photos/${photo.n}`, {
      method: 'PUT', body: photo.blob, patience: 120_000,
      headers: { 'Content-Type': photo.blob.type, 'FleetWake-Captured-At': photo.capturedAt, 'FleetWake-Original-Sha256': photo.original },
    }));
    // The picture itself is the office's now; what stays is that there was one. One that was refused stays whole, with why.
    await db.put('photos', { ...photo, sent: true, told: taken, blob: taken ? photo.blob : null });
    changed();
  }
}

/** What the office will never take must not stop the rest. @param {() => Promise<any>} work @returns {Promise<string | null>} why it was not taken */
async function passing(work) {
  try {
    await work();
    return null;
  } catch (error) {
    if (!(error instanceof Problem) || [401, 403, 404].includes(error.status)) throw error;
    return error.message;
  }
}
