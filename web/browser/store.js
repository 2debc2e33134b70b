// Entries on the device: IndexedDB, one record an entry, in the order they were committed here.
import { openDB } from "idb";

const TABLE = "entries";
const CHUNK = 5000;

export function openStore(name) {
  let opening;

  function database() {
    opening ??= openDB(name, 1, {
      upgrade: (db) => db.createObjectStore(TABLE, { keyPath: "id" }).createIndex("seq", "seq", { unique: true }),
      blocking: forget, // a newer version of the app wants to open it in another tab
      terminated: forget,
    }).catch((error) => {
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

  /** Browsers drop the connection of a tab long asleep: open again, once. */
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
    /** The records after a place in the order: at most CHUNK, in order. */
    after: (seq) => steadily((db) => db.getAllFromIndex(TABLE, "seq", IDBKeyRange.lowerBound(seq, true), CHUNK)),
    /** Resolves once the entries are on the disk, with how many were new: one already there is not written again. */
    commit: (entries) => steadily((db) => commit(db, entries)),
    close: forget,
  };
}

async function commit(db, entries) {
  const transaction = db.transaction(TABLE, "readwrite", { durability: "strict" });
  try {
    const { store } = transaction;
    const last = await store.index("seq").openKeyCursor(null, "prev");
    let seq = last?.key ?? 0;
    let added = 0;
    for (const entry of entries) {
      if (await store.getKey(entry.id)) continue;
      await store.add({ id: entry.id, seq: ++seq, entry });
      added += 1;
    }
    await transaction.done;
    return added;
  } catch (error) {
    transaction.done.catch(() => {});
    abort(transaction);
    throw transaction.error ?? error; // the transaction knows the true reason, such as a full disk
  }
}

function abort(transaction) {
  try {
    transaction.abort();
  } catch {
    // it has ended by itself
  }
}

function isLostConnection(error) {
  return ["InvalidStateError", "UnknownError", "AbortError"].includes(error?.name);
}

/** Why nothing was saved, for the person at the table. */
export function reasonNotSaved(error) {
  if (error?.name === "QuotaExceededError") return "Not saved: the device's storage is full.";
  return "Not saved: the browser could not write to its storage.";
}
