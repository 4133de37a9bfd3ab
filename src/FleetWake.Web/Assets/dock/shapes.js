// The shape in which entries are kept. An app of tomorrow reads entries of today by these steps, one for each shape; an
// entry of a newer app is kept as it is and sent by none but that one.

/** The shape that this app writes. */
export const SHAPE = 2;

/** @typedef {{ operator?: string | null, device?: string | null }} Owner whose phone this is */

/** From shape n to n + 1, at place n. @type {((entry: any, owner: Owner) => any)[]} */
const STEPS = [
  // Before there were shapes, a note was an object with its time; only the words are sent.
  entry => ({ ...entry, note: typeof entry.note === 'object' && entry.note ? entry.note.text : entry.note ?? '' }),
  // Entries did not say whose they are: they are of the operator whose phone it was then. Nor what was known of the clock.
  (entry, owner) => ({
    ...entry, operator: entry.operator ?? owner.operator ?? null, device: entry.device ?? owner.device ?? null, typed: false, skew: null, comparedAt: null, frame: null,
    countedAfter: entry.answeredAt ?? null, noteTold: null,
  }),
];

/** @param {any} entry @param {Owner} owner @returns {any} the entry as this app writes it; one of a newer app as it came */
export function inShape(entry, owner) {
  for (let shape = entry.shape ?? 0; shape < SHAPE; shape++) entry = { ...STEPS[shape](entry, owner), shape: shape + 1 };
  return isNewer(entry) ? entry : marked(entry);
}

/** Made by a newer app, so that this one must not touch it. @param {any} entry */
export const isNewer = entry => (entry.shape ?? 0) > SHAPE;

/**
 * With the marks by which it is found: a note that has still to go, a name that no PIN confirmed.
 * @template {any} T @param {T} entry @returns {T}
 */
export function marked(entry) {
  const e = /** @type {any} */ (entry);
  const arrived = e.fate === 'sent' || e.fate === 'held' || e.fate === 'kept_back';
  return { ...e, marks: [...((e.note || e.noteErased) && !e.noteSent && arrived ? ['note'] : []), ...(e.claimed && (arrived || e.fate === 'waiting') ? ['unsigned'] : [])] };
}

/** Brings what lies on the phone into shape, once at each start. @param {IDBObjectStore} entries @param {(r: IDBRequest) => Promise<any>} answer @param {Owner} owner */
export async function bringIntoShape(entries, answer, owner) {
  for (const entry of await answer(entries.getAll())) if ((entry.shape ?? 0) < SHAPE) entries.put(inShape(entry, owner));
}
