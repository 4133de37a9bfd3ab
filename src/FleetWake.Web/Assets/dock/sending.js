// Sends what waits: records first and in order, then notes, photos last. Whatever goes wrong, the entry stays on the phone.

import { ask, Offline, Problem } from './api.js';
import { sentBy, skewOf } from './clock.js';
import * as db from './db.js';
import { begin, change, changeAll, havingFate, recount, wire } from './outbox.js';
import { keep, learnSkew, rightNow, state, changed } from './state.js';

/** The office knows what time it is; so long its answer is good [ms]. */
const CLOCK_HOLDS = 10 * 60_000;

/** So often it is asked what became of entries that were kept back [ms]. */
const ASK_FATES = 5 * 60_000;

/** So long a full store is left alone [ms]. */
const PHOTOS_PAUSE = 3 * 3_600_000;

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
        await askFates();
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
  if (state.waiting === 0) await recount();
  if (state.waiting === 0) return;
  await knowTheTime();
  for (let list = await begin(); list.length > 0; list = await begin()) {
    // A batch says what the clock that its entries were made by would show now.
    while (list.length > 0) {
      const end = list.findIndex(e => skewOf(e) !== skewOf(list[0]));
      await sendBatch(list.splice(0, end < 0 ? list.length : end));
    }
  }
}

/** @type {{ at: number, mark: number } | null} */
let asked = null;

/** Asks the office for the time, so that the error of the clock is not one of yesterday. */
async function knowTheTime() {
  const mark = Date.now() - performance.now();
  if (asked && performance.now() - asked.at < CLOCK_HOLDS && Math.abs(mark - asked.mark) < 30_000) return;
  try {
    await learnSkew((await ask('/clock', { open: true })).body.now);
    asked = { at: performance.now(), mark: Date.now() - performance.now() };
  } catch (error) {
    // An office of before this app tells no time, and takes records all the same.
    if (!(error instanceof Offline) || error.status !== 404) throw error;
  }
}

/** @param {import('./outbox.js').Kept[]} list */
async function sendBatch(list) {
  const device = /** @type {import('./state.js').Device} */ (state.device);
  try {
    const { body, madeAt } = await ask('/records', { json: { device: device.device, sentAt: sentBy(device.zone, skewOf(list[0])), records: list.map(wire) } });
    if (body.results?.length !== list.length) throw new Offline('an answer that is not understood', 60);
    await settle(list, body.results, Date.parse(madeAt ?? '') || rightNow());
  } catch (error) {
    // Only a refusal of what was sent is one: not that nobody answered, nor that the phone is not known.
    if (!(error instanceof Problem) || ![400, 413, 415, 422].includes(error.status)) throw error;
    // The batch as a whole was refused: one of them is to blame, and the others must not wait for it.
    if (list.length > 1) { for (const e of list) await sendBatch([e]); return; }
    await settle(list, [{ outcome: 'refused', refusals: error.body.refusals ?? [{ field: '', message: error.message }] }], rightNow());
  }
}

const FATES = { recorded: 'sent', held: 'held', refused: 'refused', conflict: 'conflict', kept_back: 'kept_back' };

/** @param {import('./outbox.js').Kept[]} list @param {any[]} results @param {number} at the office's time of the answer */
async function settle(list, results, at) {
  await changeAll(list.map(e => e.id), (kept, n) => {
    const fate = /** @type {any} */ (FATES)[results[n]?.outcome];
    if (!fate || kept.fate !== 'waiting') return false;
    const { refusals = [], held = [], contradictions = [] } = results[n];
    kept.fate = fate;
    kept.answeredAt = Date.now();
    kept.countedAfter = at;
    kept.told = [...refusals, ...held, ...contradictions.map((/** @type {any} */ c) => ({ field: '', message: c.question ?? c.sentence ?? '' }))];
  });
  if (results.some(r => !(r?.outcome in FATES))) throw new Offline('an answer that is not understood', 60);
}

let askedFates = { at: -Infinity, device: '' };

/** What the office decided about entries that were kept back. What was let through is like any other: its note and photos follow. */
async function askFates() {
  const device = state.device?.device ?? '';
  if (state.device?.ended || (askedFates.device === device && performance.now() - askedFates.at < ASK_FATES)) return;
  const list = (await havingFate('kept_back')).slice(0, 500);
  if (list.length > 0) {
    askedFates = { at: performance.now(), device };
    const { body } = await ask('/entries/fates', { json: { entries: list.map(e => e.id) } });
    const decided = new Map(body.fates.map((/** @type {any} */ f) => [f.entry, f.state]));
    await changeAll(list.map(e => e.id), kept => {
      const state = decided.get(kept.id);
      if (kept.fate !== 'kept_back' || (state !== 'released' && state !== 'left_out')) return false;
      kept.fate = state === 'released' ? 'sent' : 'left_out';
      kept.countedAfter = rightNow();
    });
  }
}

const arrived = (/** @type {import('./outbox.js').Kept} */ e) => e.fate === 'sent' || e.fate === 'held';

async function sendNotes() {
  /** @type {import('./outbox.js').Kept[]} */
  const list = await db.within(['entries'], 'readonly', s => db.answer(s.index('marks').getAll('note')));
  for (const e of list.filter(e => arrived(e) && !e.noteTold)) {
    const told = await passing(() => ask(`/entries/${e.id}/note`, { method: 'PUT', json: { text: e.note } }));
    // One that was refused is not sent: it stays, with why.
    await change(e.id, kept => { if (kept.note === e.note) { kept.noteSent = told === null; kept.noteTold = told; } });
  }
}

async function sendPhotos() {
  if ((state.photosPause ?? 0) > rightNow()) return;
  for (const key of await db.within(['photos'], 'readonly', s => db.answer(s.index('marks').getAllKeys('unsent')))) {
    const photo = await db.get('photos', key);
    const e = photo && await db.get('entries', photo.entry);
    if (!e || !arrived(e)) continue;
    let told = null;
    try {
      told = await passing(() => ask(`/entries/${e.id}/photos/${photo.n}`, {
        method: 'PUT', body: photo.blob, patience: 120_000,
        headers: { 'Content-Type': photo.blob.type, 'FleetWake-Captured-At': photo.capturedAt, 'FleetWake-Original-Sha256': photo.original },
      }));
    } catch (error) {
      if (!(error instanceof Problem) || error.status !== 507) throw error;
      // The office has no room: it stays here, and the page says so. Asking each minute would make none.
      await keep('photosPause', rightNow() + PHOTOS_PAUSE);
      return;
    }
    // The picture itself is the office's now; what stays is that there was one. One that was refused stays whole, with why.
    await db.put('photos', { ...photo, sent: true, told, blob: told ? photo.blob : null, marks: [] });
    if (state.photosPause) await keep('photosPause', null);
    await recount();
  }
}

/** What the office will never take must not stop the rest. @param {() => Promise<any>} work @returns {Promise<string | null>} why it was not taken */
async function passing(work) {
  try {
    await work();
    return null;
  } catch (error) {
    if (!(error instanceof Problem) || [401, 403, 404, 507].includes(error.status)) throw error;
    return error.message;
  }
}
