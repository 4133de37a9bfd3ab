// What is not sent, and since when; what was refused, and why; everything else of this phone below.

import { h, link } from '../dom.js';
import { happened } from '../clock.js';
import * as db from '../db.js';
import { canUndo, entries } from '../outbox.js';
import { isNewer } from '../shapes.js';
import { room } from '../space.js';
import { send } from '../sending.js';
import { draw } from '../router.js';
import { rightNow, state } from '../state.js';
import { count, t, w } from '../texts.js';
import { ago, clock } from '../time.js';
import { fileKeys } from '../file.js';

export async function show() {
  const list = await entries();
  const waiting = list.filter(e => e.fate === 'waiting').reverse();
  const trouble = list.filter(e => e.fate === 'refused' || e.fate === 'conflict');
  const notes = list.filter(e => e.marks?.includes('note'));
  const photos = new Set((await db.within(['photos'], 'readonly', s => db.answer(s.index('marks').getAll('unsent')))).map((/** @type {any} */ p) => p.entry));
  const extras = list.filter(e => e.fate !== 'waiting' && (notes.includes(e) || photos.has(e.id)));
  const known = new Set([...waiting, ...trouble]);
  const rest = list.filter(e => !known.has(e));
  const space = await room();
  return {
    title: t('dock-outbox.title'),
    body: [
      space?.full ? h('p.note.stop', { role: 'alert' }, t('dock.room_full')) : space?.nearly ? h('p.note', null, t('dock.room_nearly')) : null,
      waiting.length === 0 && trouble.length === 0 && extras.length === 0 ? h('p', null, t('dock-outbox.nothing')) : null,
      trouble.length > 0 ? [h('h2', null, count('dock-outbox.refused', trouble.length)), rows(trouble)] : null,
      waiting.length > 0 ? [h('h2', null, count('dock-outbox.waiting', waiting.length)), h('p.quiet.small', null, t('dock-outbox.since', { ago: ago(Math.min(...waiting.map(e => e.enteredAt))) }), ' ', whyNot()), rows(waiting),
        h('p', null, h('button', { type: 'button', onclick: async () => { await send(); await draw(); } }, t('dock-outbox.send_now')))] : null,
      extras.length > 0 ? [h('h2', null, count('dock-outbox.extras', state.extras)), (state.photosPause ?? 0) > rightNow() ? h('p.note', null, t('dock-outbox.photos_full')) : null,
        h('ul.boats', null, extras.map(e => h('li', null, link('/dock/entry/' + e.id, h('strong', null, title(e)), h('span.small', null, [photos.has(e.id) ? t('dock-outbox.photo_waits') : null, notes.includes(e) ? t('dock-outbox.note_waits') : null].filter(Boolean).join(', ')),
          e.noteTold ? h('span.wrong.small', null, e.noteTold) : null))))] : null,
      rest.length > 0 ? [h('h2', null, t('dock-outbox.history')), rows(rest.slice(0, 200))] : null,
      h('section.sheet', null, h('h2', null, t('dock-outbox.file')), h('p.quiet.small', null, t('dock-outbox.file_what')), fileKeys()),
    ],
  };
}

function whyNot() {
  if (!state.device) return t('dock-outbox.not_enrolled');
  if (state.device.ended) return t('dock.ended_' + state.device.ended.replaceAll('-', '_'));
  return state.online ? '' : t('dock-outbox.offline');
}

/** @param {import('../outbox.js').Kept} e */
const title = e => `${e.boatName || e.boat || e.record.engine || e.record.prop || ''}: ${w('kind', e.kind)}`;

/** @param {import('../outbox.js').Kept[]} list */
function rows(list) {
  return h('ul.boats', null, list.map(e => h('li', null, link('/dock/entry/' + e.id, h('strong', null, title(e)),
    h('span.small', null, t('dock-outbox.fate_' + (isNewer(e) ? 'newer' : e.takenBackBy ? 'taken_back' : e.fate)), canUndo(e) ? ' · ' + t('dock-outbox.undo') : ''),
    h('span.quiet.small', null, `${clock(happened(e))}, ${e.byName}`), e.fate === 'refused' || e.fate === 'conflict' ? h('span.wrong.small', null, e.told[0]?.message ?? t('dock-entry.fate_' + e.fate)) : null))));
}
