// One entry: what it says, what became of it, and what can still be done about it.

import * as db from '../db.js';
import { h, line, link, fill } from '../dom.js';
import { choice, textField } from '../fields.js';
import { photoInput } from '../photo-input.js';
import { happened } from '../clock.js';
import { canUndo, change, entries, takeBack, UNDO } from '../outbox.js';
import { keepPhotos } from '../photos.js';
import { draw, go, tell } from '../router.js';
import { once } from '../record.js';
import { room } from '../space.js';
import { send } from '../sending.js';
import { listen } from '../state.js';
import { t, w, count } from '../texts.js';
import { clock } from '../time.js';
import { spell } from '../spell.js';

export async function show(/** @type {string} */ id) {
  const list = await entries();
  const e = list.find(x => x.id === id);
  if (!e) return { title: t('dock-entry.none'), body: h('p', null, t('dock-entry.none_what')) };
  const group = list.filter(x => x.group === e.group).reverse();
  const fresh = new URLSearchParams(location.search).has('new');
  const fate = h('p.fate', { role: 'status' });
  const drawFate = async () => {
    const now = await db.get('entries', id);
    if (!now) return;
    fill(fate, ...fateWords(now));
    // Why it was refused, and what can be done, follow from its fate.
    if (now.fate !== e.fate && fate.isConnected) draw({ quietly: true });
  };
  await drawFate();
  const stop = listen(drawFate);
  return {
    title: fresh && e.fate !== 'withdrawn' && !e.takenBackBy ? t('dock-entry.recorded', { kind: w('kind', e.kind) }) : w('kind', e.kind),
    leave: stop,
    trail: e.boat ? h('p.trail', null, link('/dock/b/' + encodeURIComponent(e.boat), '‹ ' + (e.boatName || e.boat))) : null,
    body: [
      fate,
      undo(e, group),
      group.map(g => h('section.sheet', null, group.length > 1 ? h('h2', null, w('kind', g.kind)) : null, h('dl', null, spell(g), line(t('dock-entry.when'), clock(happened(g))), line(t('dock-entry.by'), g.byName + (g.claimed ? ' ' + t('dock-entry.claimed') : ''))))),
      e.told.length > 0 && e.fate !== 'sent' ? h('section.sheet', null, h('h2', null, t('dock-entry.told_' + (e.fate === 'held' ? 'held' : 'refused'))), h('ul', null, e.told.map(x => h('li', null, x.field ? h('strong', null, spellField(x.field) + ': ') : '', x.message)))) : null,
      e.told.length > 0 && e.fate === 'sent' ? h('section.sheet', null, h('h2', null, t('dock-entry.question')), h('ul', null, e.told.map(x => h('li', null, x.message)))) : null,
      e.fate === 'withdrawn' || e.takenBackBy || e.kind === 'retracted' ? null : await extras(e),
      later(e),
      h('p', null, e.boat ? h('a.button.plain', { href: '/dock/b/' + encodeURIComponent(e.boat) }, t('dock-entry.to_boat', { boat: e.boatName || e.boat })) : null),
    ],
  };
}

/** @param {string} pointer */
const spellField = pointer => pointer.split('/').filter(p => p && p !== 'entry').map(p => /^\d+$/.test(p) ? String(+p + 1) : w('field', p)).join(' ');

/** @param {import('../outbox.js').Kept} e */
function fateWords(e) {
  if (e.takenBackBy && e.fate !== 'withdrawn') return [t('dock-entry.taken_back')];
  const shape = { waiting: '◔', sent: '●', held: '◐', refused: '▲', conflict: '▲', kept_back: '◧', left_out: '×', withdrawn: '×' }[e.fate];
  return [h('span', { 'aria-hidden': 'true' }, shape + ' '), t('dock-entry.fate_' + e.fate)];
}

/** @param {import('../outbox.js').Kept} e @param {import('../outbox.js').Kept[]} group */
function undo(e, group) {
  const can = group.filter(canUndo);
  if (can.length === 0) return null;
  const minutes = Math.max(1, Math.ceil((UNDO - (Date.now() - e.enteredAt)) / 60_000));
  return h('p.undo', null, h('button.plain', { type: 'button', onclick: () => once(async () => { await takeBack(can, 'did_not_happen'); send(); tell(t('dock-entry.undone')); await draw(); }) }, t('dock-entry.undo')), h('span.quiet.small', null, count('dock-entry.undo_for', minutes)));
}

/** Photo and words. @param {import('../outbox.js').Kept} e */
async function extras(e) {
  const note = textField(t('dock-entry.note'), { long: true, most: 1000, value: e.note, hint: t('dock-entry.note_what') });
  const keepWords = async () => { if (note.get().trim() !== e.note) await change(e.id, kept => { kept.note = note.get().trim(); kept.noteErased = kept.noteSent && kept.note === ''; kept.noteSent = false; kept.noteTold = null; }); };
  const save = h('button.plain', { type: 'button', onclick: async () => { if (!note.get().trim() && !e.note) { note.say(t('dock-form.needed')); return; } await keepWords(); send(); tell(t('dock-entry.note_kept')); await draw(); } }, t('dock-entry.note_keep'));
  const photos = (await db.all('photos')).filter(p => p.entry === e.id);
  const lost = /** @type {any} */ (e).photosLost;
  const space = await room();
  return h('section.sheet', null,
    h('h2', null, t('dock-entry.more')),
    photos.length > 0 ? h('p', null, count('dock-photo.kept', photos.length), ' ', h('span.quiet.small', null, photos.every(p => p.sent) ? t('dock-photo.all_sent') : t('dock-photo.sent_last'))) : null,
    photos.filter(p => p.told).map(p => h('p.wrong', null, p.told)),
    lost ? h('p.wrong', null, count('dock-photo.lost', lost)) : null,
    space?.nearly ? h('p.note', null, t('dock.room_nearly')) : null,
    // The words that stand beside it are kept with it: the page is drawn anew.
    photoInput(async taken => { await keepWords(); const no = await keepPhotos(e.id, taken); send(); tell(no > 0 ? t('dock-photo.no_room') : t('dock-photo.is_kept')); await draw(); }),
    note.node, e.noteTold ? h('p.wrong', null, t('dock-entry.note_refused', { why: e.noteTold })) : null, save);
}

/** Change, or take back with a reason, once undoing is over. @param {import('../outbox.js').Kept} e */
function later(e) {
  if (e.takenBackBy || e.kind === 'retracted' || e.fate === 'withdrawn') return null;
  const change_ = h('a.button.plain', { href: `/dock/entry/${e.id}/change` }, t(e.fate === 'refused' || e.fate === 'conflict' ? 'dock-entry.mend' : 'dock-entry.change'));
  if (e.fate === 'kept_back' || e.fate === 'left_out') return null;
  if (e.fate === 'refused' || e.fate === 'conflict') {
    // The office has nothing of it: it can just go.
    return h('div.row', null, change_, h('button.plain', { type: 'button', onclick: () => once(async () => { await takeBack([e], 'did_not_happen'); tell(t('dock-entry.undone')); await draw(); }) }, t('dock-entry.take_back')));
  }
  if (canUndo(e)) return h('p', null, change_);
  const why = choice(t('dock-entry.why'), 'retract', ['typed_wrong', 'wrong_subject', 'recorded_twice', 'did_not_happen']);
  return [h('p', null, change_), h('details', null, h('summary', null, t('dock-entry.take_back')), why.node, h('button.stop', {
    type: 'button', onclick: async () => {
      const { value, wrong } = why.read();
      why.say(wrong ?? null);
      if (wrong) return;
      await once(async () => {
        await takeBack([e], value);
        send();
        await go('/dock/entry/' + e.id);
      });
    },
  }, t('dock-entry.take_back')))];
}
