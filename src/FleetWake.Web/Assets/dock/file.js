// The outbox as a file: the way out when a phone will not send any more, and the way back in on another.

import * as db from './db.js';
import { fill, h } from './dom.js';
import { entries, recount } from './outbox.js';
import { draw } from './router.js';
import { SHAPE, inShape, isNewer } from './shapes.js';
import { state } from './state.js';
import { count, t } from './texts.js';

const FORMAT = 'fleetwake-dock-entries';

/** Writes every entry, with the photos that are not sent, into a file. @returns {Promise<Blob>} */
export async function exportFile() {
  const photos = [];
  for (const p of await db.all('photos')) if (p.blob) photos.push({ entry: p.entry, n: p.n, original: p.original, capturedAt: p.capturedAt, type: p.blob.type, base64: await base64(p.blob) });
  const { device, operator, dock } = state.device ?? { device: null, operator: null, dock: null };
  return new Blob([JSON.stringify({ format: FORMAT, shape: SHAPE, writtenAt: new Date().toISOString(), device, operator, dock, entries: (await entries()).reverse(), photos }, null, 1)], { type: 'application/json' });
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
  const photos = (file.photos ?? []).map((/** @type {any} */ p) => ({ key: `${p.entry}/${p.n}`, entry: p.entry, n: p.n, original: p.original, capturedAt: p.capturedAt, sent: false, blob: new Blob([Uint8Array.from(atob(p.base64), c => c.charCodeAt(0))], { type: p.type }) }));
  const result = { taken: 0, known: 0, newer: 0 };
  await db.within(['entries', 'photos'], 'readwrite', async (store, photoStore) => {
    for (const e of file.entries) {
      if (typeof e?.id !== 'string' || typeof e?.kind !== 'string' || typeof e?.record !== 'object') continue;
      if (await db.answer(store.getKey(e.id))) { result.known++; continue; }
      if (isNewer(e)) { result.newer++; continue; }
      store.add(inShape(e));
      for (const p of photos) if (p.entry === e.id) photoStore.put(p);
      result.taken++;
    }
  });
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

/** Hands a file to whoever holds the phone. */
export async function saveFile() {
  const url = URL.createObjectURL(await exportFile());
  const a = h('a', { href: url, download: `dock-entries-${new Date().toISOString().slice(0, 16).replaceAll(':', '')}.json` });
  document.body.append(a);
  a.click();
  a.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
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
  return [h('div.row', null, h('button.plain', { type: 'button', onclick: saveFile }, t('dock-outbox.export')), h('label.button.plain', null, input, h('span', null, t('dock-outbox.import')))), said];
}
