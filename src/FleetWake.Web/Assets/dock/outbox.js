// What was entered on this phone: written to the disk before anything else happens, sent in its own order, never lost.

import * as db from './db.js';
import { SHAPE, isNewer, bringIntoShape } from './shapes.js';
import { makeRoom } from './space.js';
import { state, changed } from './state.js';
import { stampIn } from './time.js';

/**
 * @typedef {'waiting' | 'sent' | 'held' | 'refused' | 'conflict' | 'kept_back' | 'withdrawn'} Fate
 * @typedef {{ shape: number, id: string, kind: string, record: Record<string, any>, by: string, byName: string, claimed: boolean, count: number,
 *   happenedAt: string, zone: string, enteredAt: number, boat: string | null, boatName: string, position: string | null, group: string, fate: Fate,
 *   attempts: number, answeredAt: number | null, told: { field: string, message: string }[], note: string, noteSent: boolean, photos: number,
 *   amends: string | null, takenBackBy: string | null }} Kept
 */

/** What can be undone without a word, for so long [ms]. */
export const UNDO = 10 * 60_000;

/**
 * Keeps records that were made together.
 * @param {{ kind: string, record: Record<string, any> }[]} records
 * @param {{ boat?: string | null, boatName?: string, at?: Date, note?: string, amends?: string | null, links?: { from: number, field: string, to: number }[] }} about `links`: a record that names another of the same act by its entry id
 * @returns {Promise<Kept[]>}
 */
export async function add(records, about) {
  const device = /** @type {import('./state.js').Device} */ (state.device);
  const person = /** @type {import('./state.js').Somebody} */ (state.person);
  const group = crypto.randomUUID();
  const now = Date.now();
  const made = await makeRoom(() => db.within(['entries', 'state'], 'readwrite', async (entries, kept) => {
    let count = (await db.answer(kept.get('count'))) ?? 0;
    /** @type {string[]} */
    const ids = isChecked() ? (await db.answer(kept.get('ids'))) ?? [] : [];
    /** @type {Kept[]} */
    const list = records.map(({ kind, record }) => ({
      // One of the ids that the person's PIN has confirmed beforehand, as long as there are some.
      shape: SHAPE, claimed: ids.length === 0, id: ids.shift() ?? crypto.randomUUID(), kind, record, by: person.person, byName: person.name, count: ++count,
      happenedAt: stampIn(device.zone, about.at ?? new Date(now)), zone: device.zone, enteredAt: now,
      boat: about.boat ?? null, boatName: about.boatName ?? '', position: record.position ?? null, group, fate: 'waiting',
      attempts: 0, answeredAt: null, told: [], note: about.note ?? '', noteSent: false, photos: 0, amends: about.amends ?? null, takenBackBy: null,
    }));
    for (const l of about.links ?? []) list[l.from].record[l.field] = list[l.to].id;
    for (const entry of list) entries.add(entry);
    kept.put(count, 'count');
    if (isChecked()) kept.put(ids, 'ids');
    return list;
  }));
  await recount();
  return made;
}

/** Whether the person's PIN was checked and that still holds. */
export const isChecked = () => !!state.person?.until && state.person.until > Date.now() + state.skew;

/** Every entry, the newest first. @returns {Promise<Kept[]>} */
export async function entries() {
  return (await db.all('entries')).sort((a, b) => b.count - a.count);
}

/** @param {string} id @returns {Promise<Kept | undefined>} */
export const entry = id => db.get('entries', id);

/** Changes one entry as it stands on the disk. @param {string} id @param {(entry: Kept) => void} how */
export async function change(id, how) {
  await db.within(['entries'], 'readwrite', async s => {
    const kept = await db.answer(s.get(id));
    if (!kept) return;
    how(kept);
    s.put(kept);
  });
  await recount();
}

/** Counts what the bar shows. */
export async function recount() {
  const list = await db.all('entries');
  state.waiting = list.filter(e => e.fate === 'waiting').length;
  state.trouble = list.filter(e => e.fate === 'refused' || e.fate === 'conflict').length;
  state.unconfirmed = list.filter(e => e.claimed && e.fate !== 'withdrawn' && e.fate !== 'refused' && e.fate !== 'conflict').length;
  changed();
}

/** Reads entries of an older app into this one's shape. */
export async function wake() {
  await db.within(['entries'], 'readwrite', s => bringIntoShape(s, db.answer));
  await recount();
}

/** As the office takes it. @param {Kept} e */
export function wire(e) {
  /** @type {Record<string, any>} */
  const stamp = { id: e.id, by: e.by, happenedAt: e.happenedAt, zone: e.zone, count: e.count };
  if (e.amends) Object.assign(stamp, { amends: e.amends, enteredAt: stampIn(e.zone, new Date(e.enteredAt)) });
  return { kind: e.kind, entry: stamp, ...e.record };
}

/** What goes next, in the order of entry. @returns {Promise<Kept[]>} */
export async function next(most = 100) {
  return (await entries()).filter(e => e.fate === 'waiting' && !isNewer(e)).reverse().slice(0, most);
}

/** Whether it can be undone without a word. @param {Kept} e */
export const canUndo = e => Date.now() - e.enteredAt < UNDO && Date.now() >= e.enteredAt && !e.takenBackBy && e.kind !== 'retracted' && (e.fate === 'waiting' || e.fate === 'sent' || e.fate === 'held');

/**
 * Takes entries back. What never left the phone is withdrawn; what the office has, or may have, is retracted by a record of
 * its own, sent after it.
 * @param {Kept[]} list @param {string} why
 */
export async function takeBack(list, why) {
  for (const e of list) {
    const now = await entry(e.id);
    if (!now || now.takenBackBy || now.fate === 'withdrawn') continue;
    if (now.fate === 'waiting' && now.attempts === 0) {
      await change(e.id, kept => { kept.fate = 'withdrawn'; });
      continue;
    }

    const about = ['engine', 'prop', 'part'].find(k => !now.record.boat && now.record[k]);
    const [back] = await add([{ kind: 'retracted', record: { retracts: now.id, why, ...(about ? { [about]: now.record[about] } : { boat: now.record.boat ?? now.boat }) } }], { boat: now.boat, boatName: now.boatName });
    await change(e.id, kept => { kept.takenBackBy = back.id; });
  }
}

/** Sends a changed record in place of one that was refused: with an id of its own. @param {Kept} old @param {Record<string, any>} record @param {string} happenedAt */
export async function resend(old, record, happenedAt) {
  const [made] = await add([{ kind: old.kind, record }], { boat: old.boat, boatName: old.boatName, note: old.note, amends: old.amends });
  await db.within(['entries', 'photos'], 'readwrite', async (entriesStore, photos) => {
    entriesStore.put({ ...made, happenedAt, photos: old.photos });
    for (const photo of await db.answer(photos.getAll())) if (photo.entry === old.id) { photos.delete(photo.key); photos.put({ ...photo, entry: made.id, key: `${made.id}/${photo.n}` }); }
    entriesStore.put({ ...old, fate: 'withdrawn', photos: 0, takenBackBy: made.id });
  });
  await recount();
  return made;
}
