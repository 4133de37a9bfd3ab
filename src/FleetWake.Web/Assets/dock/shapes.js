// The shape in which entries are kept. An app of tomorrow reads entries of today by these steps, one for each shape; an
// entry of a newer app is kept as it is and sent by none but that one.

/** The shape that this app writes. */
export const SHAPE = 1;

/** From shape n to n + 1, at place n. @type {((entry: any) => any)[]} */
const STEPS = [
  // Before there were shapes, a note was an object with its time; only the words are sent.
  entry => ({ ...entry, note: typeof entry.note === 'object' && entry.note ? entry.note.text : entry.note ?? '' }),
];

/** @param {any} entry @returns {any} the entry as this app writes it; one of a newer app as it came */
export function inShape(entry) {
  for (let shape = entry.shape ?? 0; shape < SHAPE; shape++) entry = { ...STEPS[shape](entry), shape: shape + 1 };
  return entry;
}

/** Made by a newer app, so that this one must not touch it. @param {any} entry */
export const isNewer = entry => (entry.shape ?? 0) > SHAPE;

/** Brings what lies on the phone into shape, once at each start. @param {IDBObjectStore} entries @param {(r: IDBRequest) => Promise<any>} answer */
export async function bringIntoShape(entries, answer) {
  for (const entry of await answer(entries.getAll())) if ((entry.shape ?? 0) < SHAPE) entries.put(inShape(entry));
}
