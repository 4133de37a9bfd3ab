// The outbox as a file: the way out when a phone will not send any more, and the way back in on another.

import * as db from './db.js';
import { fill, h } from './dom.js';
import { skewOf } from './clock.js';
import { entries, recount } from './outbox.js';
import { draw } from './router.js';
import { SHAPE, inShape, isNewer } from './shapes.js';
import { makeRoom } from './space.js';
import { state } from './state.js';
import { count, t } from './texts.js';

const FORMAT = 'fleetwake-dock-entries';

/** A file stays small enough for a phone to make, and for another to read [bytes of photos]. */
const MOST_PHOTOS = 60e6;

/**
 * Writes every entry with its words, and the photos that are not sent, into a file. Another phone sends them as if by this one's
 * clock, so that what is known of its error goes with each.
 * @returns {Promise<{ blob: Blob, entries: number, photos: number, left: number }>} `left`: photos that it does not hold
 */
export async function exportFile() {
  const photos = [];
  let [bytes, left] = [0, 0];
  for (const p of await db.all('photos')) {
    if (!p.blob) continue;
    bytes += p.blob.size;
    try {
      if (bytes > MOST_PHOTOS) throw new Error('too large');
      photos.push({ entry: p.entry, n: p.n, original: p.original, capturedAt: p.capturedAt, type: p.blob.type, base64: await base64(p.blob) });
    } catch (error) {
      // A photo that cannot be read must not keep the entries on a broken phone.
      console.error(error);
      left++;
    }
  }

  const { device, operator, dock } = state.device ?? { device: null, operator: null, dock: null };
  const list = (await entries()).reverse().map(e => isNewer(e) || !state.skewKnown ? e : { ...e, skew: skewOf(e) });
  const text = JSON.stringify({ format: FORMAT, shape: SHAPE, writtenAt: new Date().toISOString(), skew: state.skewKnown ? state.skew : null, device, operator, dock, entries: list, photos }, null, 1);
  return { blob: new Blob([text], { type: 'application/json' }), entries: list.length, photos: photos.length, left };
}

/**
 * Takes entries of a file. What is here already stays as it is, and what was sent before is not sent again.
 * @param {string} text
 * @returns {Promise<{ taken: number, known: number, newer: number }>}
 */
export async function importFile(text) {
  const file = JSON.parse(text);
  if (file?.format !== FORMAT || !Array.isArray(file.entries)) throw new Error(t('dock-outbox.not_ours'));
  if (state.device && file.operator && file.operator !== state.device.operator) throw new Error(t('dock-outbox.other_operator'));
  const photos = (file.photos ?? []).map((/** @type {any} */ p) => ({ key: `${p.entry}/${p.n}`, entry: p.entry, n: p.n, original: p.original, capturedAt: p.capturedAt, sent: false, marks: ['unsent'], blob: new Blob([Uint8Array.from(atob(p.base64), c => c.charCodeAt(0))], { type: p.type }) }));
  const result = { taken: 0, known: 0, newer: 0 };
  await makeRoom(() => db.within(['entries', 'photos'], 'readwrite', async (store, photoStore) => {
    Object.assign(result, { taken: 0, known: 0, newer: 0 });
    for (const e of file.entries) {
      if (typeof e?.id !== 'string' || typeof e?.kind !== 'string' || typeof e?.record !== 'object') continue;
      if (await db.answer(store.getKey(e.id))) { result.known++; continue; }
      if (isNewer(e)) { result.newer++; continue; }
      const mine = inShape(e, { operator: file.operator, device: file.device });
      store.add({ ...mine, imported: true, skew: mine.skew ?? file.skew ?? null });
      for (const p of photos) if (p.entry === e.id) photoStore.put(p);
      result.taken++;
    }
  }));
  await recount();
  return result;
}

/** @param {Blob} blob @returns {Promise<string>} */
async function base64(blob) {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return btoa(text);
}

/** Hands a file to whoever holds the phone. @returns {Promise<string | null>} what it holds, in words; null when it was not taken */
export async function saveFile() {
  const { blob, entries: n, photos, left } = await exportFile();
  const name = `dock-entries-${new Date().toISOString().slice(0, 16).replaceAll(':', '')}.json`;
  const held = [count('dock-outbox.holds', n), count('dock-outbox.holds_photos', photos), left > 0 ? count('dock-outbox.holds_not', left) : ''].join(' ').trim();
  const file = new File([blob], name, { type: blob.type });
  // An app on the home screen of some phones has no downloads: there the file is handed on.
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file] });
      return held;
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return null;
    }
  }

  const url = URL.createObjectURL(blob);
  const a = h('a', { href: url, download: name });
  document.body.append(a);
  a.click();
  a.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
  return held;
}

/** The two keys. */
export function fileKeys() {
  const said = h('p', { role: 'status' });
  const input = h('input.hidden-file', {
    type: 'file', accept: 'application/json,.json', onchange: async () => {
      try {
        const { taken, known, newer } = await importFile(await input.files[0].text());
        await draw();
        fill(/** @type {Element} */ (document.getElementById('told')), h('p', null, count('dock-outbox.taken', taken), known ? ' ' + count('dock-outbox.known', known) : '', newer ? ' ' + t('dock-outbox.newer') : ''));
      } catch (error) {
        fill(said, h('span.wrong', null, t('dock-outbox.unreadable', { why: error instanceof Error ? error.message : '' })));
      }
    },
  });
  return [h('div.row', null, h('button.plain', { type: 'button', onclick: async () => fill(said, await saveFile() ?? '') }, t('dock-outbox.export')), h('label.button.plain', null, input, h('span', null, t('dock-outbox.import')))), said];
}
