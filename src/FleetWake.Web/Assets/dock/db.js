// Everything the phone keeps, in one IndexedDB. A version only ever adds stores and indexes: entries made by an older app stay readable.

const NAME = 'fleetwake-dock';
const VERSION = 2;

/** @type {Promise<IDBDatabase> | undefined} */
let opening;

let newer = false;

/** @returns {Promise<IDBDatabase>} */
function open() {
  opening ??= new Promise((resolve, reject) => {
    const asked = newer ? indexedDB.open(NAME) : indexedDB.open(NAME, VERSION);
    asked.onupgradeneeded = ({ oldVersion }) => {
      const db = asked.result;
      if (oldVersion < 1) {
        db.createObjectStore('state');
        db.createObjectStore('entries', { keyPath: 'id' });
        db.createObjectStore('photos', { keyPath: 'key' });
        db.createObjectStore('drafts');
        db.createObjectStore('cards', { keyPath: 'boat' });
      }
      const tx = /** @type {IDBTransaction} */ (asked.transaction);
      const [entries, photos] = [tx.objectStore('entries'), tx.objectStore('photos')];
      entries.createIndex('fate', ['fate', 'count']);
      entries.createIndex('boat', 'boat');
      for (const store of [entries, photos]) store.createIndex('marks', 'marks', { multiEntry: true });
      photos.openCursor().onsuccess = e => {
        const cursor = /** @type {IDBRequest<IDBCursorWithValue | null>} */ (e.target).result;
        if (!cursor) return;
        if (!cursor.value.sent) cursor.update({ ...cursor.value, marks: ['unsent'] });
        cursor.continue();
      };
    };
    asked.onsuccess = () => {
      // Another tab with a newer app must not wait for this one; and a connection that a phone dropped is made again.
      asked.result.onversionchange = () => { asked.result.close(); opening = undefined; };
      asked.result.onclose = () => { opening = undefined; };
      resolve(asked.result);
    };
    asked.onerror = () => {
      opening = undefined;
      // A newer app was here before this one: what it added does not stand in the way.
      if (asked.error?.name === 'VersionError' && !newer) { newer = true; open().then(resolve, reject); } else reject(asked.error);
    };
  });
  return opening;
}

/**
 * Works in one transaction and waits until it is on the disk.
 * @template T
 * @param {string[]} stores
 * @param {IDBTransactionMode} mode
 * @param {(...stores: IDBObjectStore[]) => T | Promise<T>} work
 * @returns {Promise<T>}
 */
export async function within(stores, mode, work) {
  for (let attempt = 0; ; attempt++) {
    /** @type {IDBTransaction | undefined} */
    let tx;
    try {
      const db = await open();
      tx = db.transaction(stores, mode, mode === 'readwrite' ? { durability: 'strict' } : undefined);
      const done = new Promise((resolve, reject) => {
        if (!tx) return;
        tx.oncomplete = () => resolve(undefined);
        tx.onabort = () => reject(tx?.error ?? new DOMException('aborted', 'AbortError'));
      });
      // Told to whoever waits for it below; without this a failure of the work itself would be reported twice.
      done.catch(() => {});
      const result = await work(...stores.map(s => /** @type {IDBTransaction} */ (tx).objectStore(s)));
      await done;
      return result;
    } catch (caught) {
      // A full disk shows in the transaction, not in the request that met it. What was begun must not half stay.
      try { tx?.abort(); } catch { /* over already */ }
      const error = tx?.error ?? caught;
      // "Connection lost": phones drop it in the background.
      if (attempt > 0 || !(error instanceof DOMException) || (error.name !== 'InvalidStateError' && error.name !== 'UnknownError')) throw error;
      opening = undefined;
    }
  }
}

/**
 * A request's answer.
 * @param {IDBRequest} request
 * @returns {Promise<any>}
 */
export const answer = request => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

/**
 * Walks along an index until `take` answers false.
 * @param {IDBIndex} index @param {IDBKeyRange} range @param {(value: any) => boolean | void} take
 * @returns {Promise<void>}
 */
export const walk = (index, range, take) => new Promise((resolve, reject) => {
  const request = index.openCursor(range);
  request.onsuccess = () => { if (!request.result || take(request.result.value) === false) resolve(); else request.result.continue(); };
  request.onerror = () => reject(request.error);
});

/** @param {string} store @param {IDBValidKey} key @returns {Promise<any>} */
export const get = (store, key) => within([store], 'readonly', s => answer(s.get(key)));

/** @param {string} store @returns {Promise<any[]>} */
export const all = store => within([store], 'readonly', s => answer(s.getAll()));

/** @param {string} store @param {any} value @param {IDBValidKey=} key */
export const put = (store, value, key) => within([store], 'readwrite', s => answer(key === undefined ? s.put(value) : s.put(value, key)));

/** @param {string} store @param {IDBValidKey} key */
export const remove = (store, key) => within([store], 'readwrite', s => answer(s.delete(key)));

/** Forgets everything: the phone is wiped. */
export const wipe = () => within(['state', 'entries', 'photos', 'drafts', 'cards'], 'readwrite', (...stores) => { for (const s of stores) s.clear(); });
