// The journal between tabs: what others have written is learnt before each request, and one tab writes at a time.
import { openStore } from "./store.js";

const EMPTIED = "emptied";

/**
 * early: what the page has read while Python was starting. onNews: another tab has written.
 * @param {string} base @param {Promise<Part[]>} early @param {() => void} onNews
 */
export function openJournal(base, early, onNews) {
  const name = nameOf(base);
  const store = openStore(name);
  const channel = new BroadcastChannel(name);
  /** @type {(entries: string) => void} */
  let learn;
  let seen = 0;
  channel.onmessage = onNews;

  async function news() {
    for (let records = await store.after(seen); records.length > 0; records = await store.after(seen)) take(part(records));
  }

  /** @type {(part: Part) => void} */
  function take({ json, last }) {
    learn(json);
    seen = last;
  }

  return {
    /** learner: takes entries as JSON into Python's book. Resolves when all there is has been learnt.
     * @type {(learner: (entries: string) => void) => Promise<void>} */
    async begin(learner) {
      learn = learner;
      (await early).forEach(take);
      await news();
    },

    news,

    file: store.file,

    /** @type {<Done>(work: () => Promise<Done>) => Promise<Done>} */
    alone: (work) => navigator.locks.request(`${name}-writer`, work),

    /** Only within alone(). Throws when nothing was written.
     * @type {(entries: Entry[], files: StoredFile[]) => Promise<number>} */
    async commit(entries, files) {
      const added = await store.commit(entries, files);
      if (added > 0) channel.postMessage("written");
      return added;
    },
  };
}

/** For the page, whose thread is idle while Python's start takes up the worker's: all there is, in parts.
 * @type {(base: string) => Promise<Part[]>} */
export async function readJournal(base) {
  const store = openStore(nameOf(base));
  /** @type {Part[]} */
  const parts = [];
  try {
    for (let records = await store.after(0); records.length > 0; records = await store.after(parts.at(-1)?.last ?? 0)) {
      parts.push(part(records));
    }
  } finally {
    await store.close();
  }
  return parts;
}

/** For the page: the raw files, as {names(), file(name), close()}. @param {string} base */
export function openFiles(base) {
  const store = openStore(nameOf(base));
  return { names: store.files, file: store.file, close: store.close };
}

/** For the page: every entry and file gone from the device, and the other tabs told to begin again.
 * @param {string} base */
export async function forgetBook(base) {
  const name = nameOf(base);
  const store = openStore(name);
  await navigator.locks.request(`${name}-writer`, store.empty);
  await store.close();
  new BroadcastChannel(name).postMessage(EMPTIED);
}

/** For the page: what another tab has written it sees at the next request; of an emptied book it must know at once.
 * The tab that emptied it hears of it too.
 * @param {string} base @param {() => void} act */
export function onEmptied(base, act) {
  new BroadcastChannel(nameOf(base)).addEventListener("message", ({ data }) => data === EMPTIED && act());
}

/** One daybook's own, so that two under one origin stay apart. @type {(base: string) => string} */
function nameOf(base) {
  return `daybook${base}`;
}

/** @type {(records: StoredEntry[]) => Part} */
function part(records) {
  return { json: JSON.stringify(records.map((record) => record.entry)), last: records.at(-1)?.seq ?? 0 };
}
