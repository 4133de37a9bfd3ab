// Room on the phone. When it runs out, what can be fetched or made again goes first, photos last, and an entry never.

import * as db from './db.js';

const MONTH = 30 * 86_400_000;

/** In the order in which they go. @type {(() => Promise<unknown>)[]} */
const STEPS = [
  () => db.within(['photos'], 'readwrite', async s => { for (const p of await db.answer(s.getAll())) if (p.sent && !p.told) s.delete(p.key); }),
  () => db.within(['cards'], 'readwrite', s => { s.clear(); }),
  // The office may ask for them again for thirty days.
  () => db.within(['entries'], 'readwrite', async s => { for (const e of await db.answer(s.getAll())) if ((e.fate === 'sent' || e.fate === 'withdrawn') && e.enteredAt < Date.now() - MONTH) s.delete(e.id); }),
  () => db.within(['entries', 'photos'], 'readwrite', async (entries, photos) => {
    /** @type {Map<string, number>} */
    const lost = new Map();
    for (const p of await db.answer(photos.getAll())) if (p.blob) lost.set(p.entry, (lost.get(p.entry) ?? 0) + 1);
    photos.clear();
    for (const [id, n] of lost) { const e = await db.answer(entries.get(id)); if (e) entries.put({ ...e, photos: 0, photosLost: (e.photosLost ?? 0) + n }); }
  }),
];

/** Only what the office has, or gives again: for what is worth less than a photo. */
export const CHEAP = 2;

/**
 * Does something that needs room, making room step by step when there is none.
 * @template T @param {() => Promise<T>} work @param {number=} most how many steps may be taken for it @returns {Promise<T>}
 */
export async function makeRoom(work, most = STEPS.length) {
  for (let step = 0; ; step++) {
    try {
      return await work();
    } catch (error) {
      if (!isFull(error) || step >= most) throw error;
      // A step may itself find no room; the next one frees more.
      await STEPS[step]().catch(() => {});
    }
  }
}

/** @param {any} error */
export const isFull = error => error?.name === 'QuotaExceededError';

/** How full the phone is, where the browser tells. @returns {Promise<{ free: number, full: boolean, nearly: boolean } | null>} */
export async function room() {
  const told = await navigator.storage?.estimate?.().catch(() => null);
  if (!told?.quota) return null;
  const free = told.quota - (told.usage ?? 0);
  return { free, full: free < 2e6, nearly: free < 30e6 };
}
