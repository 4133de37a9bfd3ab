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
    for (const e of await db.answer(entries.getAll())) if (e.photos > 0) entries.put({ ...e, photos: 0, photosLost: e.photos });
    photos.clear();
  }),
];

/**
 * Does something that needs room, making room step by step when there is none.
 * @template T @param {() => Promise<T>} work @returns {Promise<T>}
 */
export async function makeRoom(work) {
  for (let step = 0; ; step++) {
    try {
      return await work();
    } catch (error) {
      if (!isFull(error) || step >= STEPS.length) throw error;
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
