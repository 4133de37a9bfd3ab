// Photos: made small by drawing them anew, which also drops the place where they were taken; the hash of what left the
// camera is kept, so that nobody can say later that it was another.

import * as db from './db.js';
import { recount } from './outbox.js';
import { isFull } from './space.js';
import { state } from './state.js';

/** @typedef {{ blob: Blob, original: string, capturedAt: string }} Taken */

const LONGEST = 1600;

/** @param {File} file @returns {Promise<Taken>} */
export async function small(file) {
  const bytes = await file.arrayBuffer();
  const original = [...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))].map(b => b.toString(16).padStart(2, '0')).join('');
  const most = state.today?.photoLimits?.bytes ?? 2_000_000;
  const image = await createImageBitmap(file, { imageOrientation: 'from-image' });
  for (let longest = LONGEST, quality = 0.8; ; longest *= 0.7, quality = 0.7) {
    const scale = Math.min(1, longest / Math.max(image.width, image.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(image.width * scale));
    canvas.height = Math.max(1, Math.round(image.height * scale));
    /** @type {CanvasRenderingContext2D} */ (canvas.getContext('2d')).drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = /** @type {Blob} */ (await new Promise((resolve, reject) => canvas.toBlob(b => b ? resolve(b) : reject(new Error('no room to draw')), 'image/jpeg', quality)));
    if (blob.size <= most || longest < 200) return { blob, original, capturedAt: new Date(file.lastModified || Date.now()).toISOString() };
  }
}

/**
 * Keeps photos with an entry. An entry is worth more than any photo: nothing else is thrown away for one.
 * @param {string} entry @param {Taken[]} photos
 * @returns {Promise<number>} how many found no room
 */
export async function keepPhotos(entry, photos) {
  let lost = 0;
  for (const photo of photos) {
    try {
      await db.within(['photos', 'entries'], 'readwrite', async (store, entries) => {
        const here = await db.answer(store.getAll(IDBKeyRange.bound(entry + '/', entry + '0', false, true)));
        const n = Math.max(0, ...here.map((/** @type {any} */ p) => p.n)) + 1;
        store.put({ ...photo, key: `${entry}/${n}`, entry, n, sent: false, marks: ['unsent'] });
        const kept = await db.answer(entries.get(entry));
        if (kept) entries.put({ ...kept, photos: kept.photos + 1 });
      });
    } catch (error) {
      if (!isFull(error)) throw error;
      lost++;
    }
  }
  await recount().catch(console.error);
  return lost;
}
