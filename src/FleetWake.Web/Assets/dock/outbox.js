// What was entered on this phone: written to the disk before anything else happens, sent in its own order, never lost. Whatever
// looks at an entry and changes it does both in one transaction: another tab, or an answer of the office, may come in between.

import { asShown, clockNow, happened, skewOf } from './clock.js';
import * as db from './db.js';
import { SHAPE, bringIntoShape, isNewer, marked } from './shapes.js';
import { makeRoom } from './space.js';
import { state, changed, hearTabs, tellTabs } from './state.js';
import { t } from './texts.js';
import { stampIn } from './time.js';

/**
 * @typedef {'waiting' | 'sent' | 'held' | 'refused' | 'conflict' | 'kept_back' | 'left_out' | 'withdrawn'} Fate
 * @typedef {{ shape: number, id: string, operator: string | null, device: string | null, imported?: boolean, kind: string, record: Record<string, any>, by: string, byName: string, claimed: boolean, count: number,
 *   happenedAt: string, typed: boolean, zone: string, enteredAt: number, skew: number | null, comparedAt: number | null, session?: number, mark?: number, frame: number | null,
 *   boat: string | null, boatName: string, position: string | null, group: string, fate: Fate, attempts: number, answeredAt: number | null, countedAfter: number | null,
 *   told: { field: string, message: string }[], note: string, noteSent: boolean, noteErased?: boolean, noteTold: string | null, photos: number, photosLost?: number, amends: string | null, takenBackBy: string | null }} Kept
 *   `happenedAt`: as the phone's clock showed it, or, when `typed`, by the right clock; `frame`: the clock error it was first sent with [ms]; `countedAfter`: a card made later than that counts it [ms, the office's time]
 * @typedef {{ boat?: string | null, boatName?: string, at?: Date, happenedAt?: { at: string, typed: boolean }, note?: string, amends?: string | null, draft?: string | null, links?: { from: number, field: string, to: number }[] }} About
 *   `links`: a record that names another of the same act by its entry id; `draft`: what was typed for it and is not needed any more
 */

/** What can be undone without a word, for so long [ms]. */
export const UNDO = 10 * 60_000;

/** So long the phone remembers what the office has [ms]. */
const REMEMBERED = 60 * 86_400_000;

const STORES = ['entries', 'state', 'photos', 'drafts'];

/**
 * Looks and changes in one transaction, making room when there is none. What is kept then is kept, whatever the counting says.
 * @template T @param {(entries: IDBObjectStore, kept: IDBObjectStore, photos: IDBObjectStore, drafts: IDBObjectStore) => Promise<T>} work @returns {Promise<T>}
 */
async function changing(work) {
  const result = await makeRoom(() => db.within(STORES, 'readwrite', work));
  await recount().catch(console.error);
  tellTabs('outbox');
  return result;
}

/**
 * Makes entries within a transaction. Who and for whom is read there: another tab may have changed it.
 * @param {IDBObjectStore} entries @param {IDBObjectStore} kept @param {{ kind: string, record: Record<string, any> }[]} records @param {About} about
 * @returns {Promise<Kept[]>}
 */
async function make(entries, kept, records, about) {
  /** @type {[import('./state.js').Device, import('./state.js').Somebody]} */
  const [device, person] = [await db.answer(kept.get('device')), await db.answer(kept.get('person'))];
  if (!device || !person) throw new Error(t('dock-form.nobody'));
  const [group, now] = [crypto.randomUUID(), Date.now()];
  let count = (await db.answer(kept.get('count'))) ?? 0;
  const checked = !!person.until && person.until > now + state.skew;
  /** @type {string[]} */
  const ids = checked ? (await db.answer(kept.get('ids'))) ?? [] : [];
  /** @type {Kept[]} */
  const list = records.map(({ kind, record }) => ({
    // One of the ids that the person's PIN has confirmed beforehand, as long as there are some.
    shape: SHAPE, claimed: ids.length === 0, id: ids.shift() ?? crypto.randomUUID(), operator: device.operator, device: device.device, kind, record, by: person.person, byName: person.name, count: ++count,
    happenedAt: about.happenedAt?.at ?? stampIn(device.zone, about.at ?? new Date(now)), typed: about.happenedAt?.typed ?? !!about.at, zone: device.zone, enteredAt: now, ...clockNow(), frame: null,
    boat: about.boat ?? null, boatName: about.boatName ?? '', position: record.position ?? null, group, fate: 'waiting', attempts: 0, answeredAt: null, countedAfter: null,
    told: [], note: about.note ?? '', noteSent: false, noteTold: null, photos: 0, amends: about.amends ?? null, takenBackBy: null,
  }));
  for (const l of about.links ?? []) list[l.from].record[l.field] = list[l.to].id;
  for (const entry of list) entries.add(marked(entry));
  kept.put(count, 'count');
  if (checked) kept.put(ids, 'ids');
  return list;
}

/** Keeps records that were made together. @param {{ kind: string, record: Record<string, any> }[]} records @param {About} about @returns {Promise<Kept[]>} */
export const add = (records, about) => changing(async (entries, kept, _, drafts) => {
  const made = await make(entries, kept, records, about);
  if (about.draft) drafts.delete(about.draft);
  return made;
});

/** Whether the person's PIN was checked and that still holds. */
export const isChecked = () => !!state.person?.until && state.person.until > Date.now() + state.skew;

/** Every entry, the newest first. @returns {Promise<Kept[]>} */
export const entries = async () => (await db.all('entries')).sort((a, b) => b.count - a.count);

/** Every entry of a boat, the newest first. @param {string} boat @returns {Promise<Kept[]>} */
export const entriesOf = async boat => (await db.within(['entries'], 'readonly', s => db.answer(s.index('boat').getAll(boat)))).sort((/** @type {Kept} */ a, /** @type {Kept} */ b) => b.count - a.count);

/** Entries of a fate, in the order of entry. @param {Fate} fate */
const ofFate = fate => IDBKeyRange.bound([fate], [fate, []]);

/** @param {string} id @returns {Promise<Kept | undefined>} */
export const entry = id => db.get('entries', id);

/** Changes some entries as they stand on the disk. @param {string[]} ids @param {(entry: Kept, n: number) => void | false} how answers false where nothing changes */
export const changeAll = (ids, how) => changing(async store => {
  for (const [n, id] of ids.entries()) {
    const kept = await db.answer(store.get(id));
    if (kept && how(kept, n) !== false) store.put(marked(kept));
  }
});

/** Changes one entry as it stands on the disk. @param {string} id @param {(entry: Kept) => void} how */
export const change = (id, how) => changeAll([id], how);

/** Counts what the bar shows. */
export async function recount() {
  [state.waiting, state.trouble, state.unconfirmed, state.extras] = await db.within(['entries', 'photos'], 'readonly', async (s, photos) => {
    const n = (/** @type {IDBIndex} */ index, /** @type {any} */ key) => db.answer(index.count(key));
    const [fate, marks] = [s.index('fate'), s.index('marks')];
    const [waiting, refused, conflict, unsigned, notes, unsent] = await Promise.all([n(fate, ofFate('waiting')), n(fate, ofFate('refused')), n(fate, ofFate('conflict')), n(marks, 'unsigned'), n(marks, 'note'), n(photos.index('marks'), 'unsent')]);
    return [waiting, refused + conflict, unsigned, notes + unsent];
  });
  changed();
}

hearTabs(what => { if (what === 'outbox') recount().catch(console.error); else location.replace('/dock/phone'); });

/** Reads entries of an older app into this one's shape, and forgets what the office has had for long. */
export async function wake() {
  await changing(async (store, _, photos, drafts) => {
    await bringIntoShape(store, db.answer, { operator: state.device?.operator, device: state.device?.device });
    // An app before this one kept what was typed of a PIN.
    drafts.delete('pin');
    /** @type {Set<string>} */
    const old = new Set();
    for (const fate of /** @type {Fate[]} */ (['sent', 'withdrawn', 'left_out'])) {
      await db.walk(store.index('fate'), ofFate(fate), e => { if (e.enteredAt < Date.now() - REMEMBERED && !(e.marks ?? []).includes('note')) old.add(e.id); });
    }
    if (old.size === 0) return;
    for (const p of await db.answer(photos.getAll())) if (old.has(p.entry)) { if (p.blob) old.delete(p.entry); else photos.delete(p.key); }
    for (const id of old) store.delete(id);
  });
}

/** Whose entries the phone carries. @returns {Promise<{ operator?: string }>} */
export async function carried() {
  const operator = state.device?.operator ?? (await db.all('entries')).find(e => e.operator)?.operator;
  return operator ? { operator } : {};
}

/** What was confirmed beforehand, or before it was sent, is claimed only: the phone gets another id. */
export const disown = () => changing(async (store, kept) => {
  kept.delete('ids');
  for (const e of await db.answer(store.index('fate').getAll(ofFate('waiting')))) if (!isNewer(e)) store.put(marked({ ...e, claimed: true }));
});

/** As the office takes it. @param {Kept} e */
export function wire(e) {
  /** @type {Record<string, any>} */
  const stamp = { id: e.id, by: e.by, happenedAt: asShown(e), zone: e.zone, count: e.count };
  if (e.amends) Object.assign(stamp, { amends: e.amends, enteredAt: stampIn(e.zone, new Date(e.enteredAt)) });
  return { kind: e.kind, entry: stamp, ...e.record };
}

/** Whether this phone may send it: made by this app, and of the fleet that the phone belongs to. @param {Kept} e */
const isOurs = e => !isNewer(e) && (!e.operator || e.operator === state.device?.operator);

/**
 * What goes next, in the order of entry: noted as tried before the first byte leaves. From then on the office may have it,
 * even if no answer comes, and it is sent by the same clock each time.
 * @returns {Promise<Kept[]>}
 */
export async function begin(most = 100) {
  return makeRoom(() => db.within(['entries'], 'readwrite', async store => {
    /** @type {Kept[]} */
    const list = [];
    await db.walk(store.index('fate'), ofFate('waiting'), e => { if (isOurs(e)) list.push(e); return list.length < most; });
    return list.map(e => { const tried = { ...e, attempts: e.attempts + 1, frame: skewOf(e) }; store.put(tried); return tried; });
  }));
}

/** Entries of a fate that this phone may speak for. @param {Fate} fate @returns {Promise<Kept[]>} */
export const havingFate = async fate => (await db.within(['entries'], 'readonly', s => db.answer(s.index('fate').getAll(ofFate(fate))))).filter(isOurs);

/** Whether it never left the phone, or not to stay: the office has nothing of it. @param {Kept} e */
const isHereOnly = e => e.fate === 'refused' || e.fate === 'conflict' || (e.fate === 'waiting' && e.attempts === 0);

/** Whether it can be undone without a word. @param {Kept} e */
export const canUndo = e => Date.now() - e.enteredAt < UNDO && Date.now() >= e.enteredAt && !e.takenBackBy && e.kind !== 'retracted' && (e.fate === 'waiting' || e.fate === 'sent' || e.fate === 'held');

/** @param {IDBObjectStore} photos @param {string} id */
const photosOf = async (photos, id) => (await db.answer(photos.getAll(IDBKeyRange.bound(id + '/', id + '0', false, true))));

/**
 * Takes entries back. What never left the phone is withdrawn; what the office has, or may have, is retracted by a record of
 * its own, sent after it.
 * @param {Kept[]} list @param {string} why
 */
export const takeBack = (list, why) => changing(async (store, kept, photos) => {
  for (const { id } of list) {
    /** @type {Kept | undefined} */
    const now = await db.answer(store.get(id));
    if (!now || now.takenBackBy || now.fate === 'withdrawn') continue;
    if (isHereOnly(now)) {
      for (const p of await photosOf(photos, id)) photos.delete(p.key);
      store.put(marked({ ...now, fate: 'withdrawn', photos: 0 }));
      continue;
    }

    const about = ['engine', 'prop', 'part'].find(k => !now.record.boat && now.record[k]);
    const [back] = await make(store, kept, [{ kind: 'retracted', record: { retracts: now.id, why, ...(about ? { [about]: now.record[about] } : { boat: now.record.boat ?? now.boat }) } }], { boat: now.boat, boatName: now.boatName });
    store.put(marked({ ...now, takenBackBy: back.id }));
  }
});

/**
 * Puts a changed record in the place of an entry: sent anew where the office has nothing of it, else as a record that takes its place.
 * @param {string} id @param {Record<string, any>} record @param {Date | null} at when it happened, if that changes @param {string=} draft
 * @returns {Promise<Kept>}
 */
export const replace = (id, record, at, draft) => changing(async (store, kept, photos, drafts) => {
  /** @type {Kept} */
  const old = await db.answer(store.get(id));
  if (old.takenBackBy || old.fate === 'withdrawn') throw new Error(t('dock-entry.taken_back'));
  const anew = isHereOnly(old);
  // By the right clock, for the phone's may have been set since.
  const happenedAt = { at: at ? stampIn(old.zone, at) : happened(old), typed: true };
  const [made] = await make(store, kept, [{ kind: old.kind, record }], { boat: old.boat, boatName: old.boatName, note: anew ? old.note : '', amends: anew ? old.amends : id, happenedAt });
  if (anew) {
    const moved = await photosOf(photos, id);
    for (const photo of moved) { photos.delete(photo.key); photos.put({ ...photo, entry: made.id, key: `${made.id}/${photo.n}` }); }
    store.put(marked({ ...made, photos: moved.length }));
  }

  store.put(marked({ ...old, ...(anew ? { fate: /** @type {Fate} */ ('withdrawn'), photos: 0 } : {}), takenBackBy: made.id }));
  if (draft) drafts.delete(draft);
  return made;
});
