// The journal between tabs: what others have written is learnt before each request, and one tab writes at a time.
import { openStore } from "./store.js";

/** name: one daybook's own, so that two under one origin stay apart. onNews: another tab has written. */
export function openJournal(name, onNews) {
  const store = openStore(name);
  const channel = new BroadcastChannel(name);
  const early = readAll(store); // while Python is starting
  early.catch(() => {}); // said when it is asked for
  let learn;
  let seen = 0;
  channel.onmessage = onNews;

  async function news() {
    for (let records = await store.after(seen); records.length > 0; records = await store.after(seen)) {
      learn(asJson(records));
      seen = records.at(-1).seq;
    }
  }

  return {
    /** learner: takes entries as JSON into Python's book. Resolves when all there is has been learnt. */
    async begin(learner) {
      learn = learner;
      for (const { json, last } of await early) {
        learn(json);
        seen = last;
      }
      await news();
    },

    news,

    alone: (work) => navigator.locks.request(`${name}-writer`, work),

    /** Only within alone(). Throws when nothing was written. */
    async commit(entries) {
      const added = await store.commit(entries);
      if (added > 0) channel.postMessage("written");
      return added;
    },
  };
}

async function readAll(store) {
  const parts = [];
  for (let records = await store.after(0); records.length > 0; records = await store.after(parts.at(-1).last)) {
    parts.push({ json: asJson(records), last: records.at(-1).seq });
  }
  return parts;
}

function asJson(records) {
  return JSON.stringify(records.map((record) => record.entry));
}
