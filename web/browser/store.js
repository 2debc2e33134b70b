// On the device, in IndexedDB: entries, one record each, in the order they were committed here; and raw files.
import { openDB } from "idb";

const VERSION = 2;
const ENTRIES = "entries"; // {id, seq, entry}
const FILES = "files"; // {sha, bytes}
const CHUNK = 5000;
const openTables = /** @type {typeof openDB<Tables>} */ (openDB);

/** @param {string} name */
export function openStore(name) {
  /** @type {Promise<Database> | undefined} */
  let opening;

  /** @type {() => Promise<Database>} */
  function database() {
    const closing = { blocking: forget, terminated: forget }; // a newer version of the app opens it in another tab
    opening ??= openTables(name, VERSION, { upgrade, ...closing })
      .catch((error) => {
        if (error.name !== "VersionError") throw error;
        return openTables(name, undefined, closing); // a newer version has been here: it adds tables, it changes none
      })
      .catch((error) => {
        opening = undefined;
        throw error;
      });
    return opening;
  }

  async function forget() {
    const closing = await opening?.catch(() => undefined);
    opening = undefined;
    closing?.close();
  }

  /** Browsers drop the connection of a tab long asleep: open again, once.
   * @type {<Done>(work: (db: Database) => Promise<Done>) => Promise<Done>} */
  async function steadily(work) {
    try {
      return await work(await database());
    } catch (error) {
      if (!isLostConnection(error)) throw error;
      await forget();
      return work(await database());
    }
  }

  return {
    /** The records after a place in the order: at most CHUNK, in order.
     * @type {(seq: number) => Promise<StoredEntry[]>} */
    after: (seq) => steadily((db) => db.getAllFromIndex(ENTRIES, "seq", IDBKeyRange.lowerBound(seq, true), CHUNK)),
    /** A file's bytes, or undefined. @type {(sha: string) => Promise<Bytes | undefined>} */
    file: (sha) => steadily(async (db) => (await db.get(FILES, sha))?.bytes),
    /** The names of all files. @type {() => Promise<string[]>} */
    files: () => steadily((db) => db.getAllKeys(FILES)),
    /** Resolves once all is on the disk, with how many entries were new: what is already there is not written again.
     * @type {(entries: Entry[], files: StoredFile[]) => Promise<number>} */
    commit: (entries, files) => steadily((db) => commit(db, entries, files)),
    /** Nothing is left of it. @type {() => Promise<void>} */
    empty: () => steadily(empty),
    close: forget,
  };
}

/** @type {(db: Database, from: number) => void} */
function upgrade(db, from) {
  if (from < 1) db.createObjectStore(ENTRIES, { keyPath: "id" }).createIndex("seq", "seq", { unique: true });
  if (from < 2) db.createObjectStore(FILES, { keyPath: "sha" });
}

/** files: [{sha, bytes}]. All or nothing.
 * @type {(db: Database, entries: Entry[], files: StoredFile[]) => Promise<number>} */
async function commit(db, entries, files) {
  const transaction = db.transaction([ENTRIES, FILES], "readwrite", { durability: "strict" });
  try {
    const added = await addEntries(transaction.objectStore(ENTRIES), entries);
    await addFiles(transaction.objectStore(FILES), files);
    await transaction.done;
    return added;
  } catch (error) {
    transaction.done.catch(() => {});
    abort(transaction);
    throw transaction.error ?? error; // the transaction knows the true reason, such as a full disk
  }
}

/** @type {(db: Database) => Promise<void>} */
async function empty(db) {
  const transaction = db.transaction([ENTRIES, FILES], "readwrite", { durability: "strict" });
  await Promise.all([transaction.objectStore(ENTRIES).clear(), transaction.objectStore(FILES).clear(), transaction.done]);
}

/** @type {(table: Table<"entries">, entries: Entry[]) => Promise<number>} */
async function addEntries(table, entries) {
  const last = await table.index("seq").openKeyCursor(null, "prev");
  let seq = last?.key ?? 0;
  let added = 0;
  for (const entry of entries) {
    if (await table.getKey(entry.id)) continue;
    await table.add({ id: entry.id, seq: ++seq, entry });
    added += 1;
  }
  return added;
}

/** @type {(table: Table<"files">, files: StoredFile[]) => Promise<void>} */
async function addFiles(table, files) {
  for (const file of files) if (!(await table.getKey(file.sha))) await table.add(file);
}

/** @type {(transaction: { abort: () => void }) => void} */
function abort(transaction) {
  try {
    transaction.abort();
  } catch {
    // it has ended by itself
  }
}

/** @type {(error: any) => boolean} */
function isLostConnection(error) {
  return ["InvalidStateError", "UnknownError", "AbortError"].includes(error?.name);
}

/** Why nothing was saved: a key of NOT_SAVED in web/journal.py. @type {(error: any) => string} */
export function reasonNotSaved(error) {
  return error?.name === "QuotaExceededError" ? "full" : "unwritten";
}
