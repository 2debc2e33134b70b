// The journal between tabs: what others have written is learnt before each request, and one tab writes at a time.
import { openStore } from "./store.js";

/** name: one daybook's own, so that two under one origin stay apart. onNews: another tab has written. */
export function openJournal(name, onNews) {
  const store = openStore(name);
  const channel = new BroadcastChannel(name);
  const early = store.after(0); // read while Python is starting
  early.catch(() => {}); // said when it is asked for
  let learn;
  let seen = 0;
  channel.onmessage = onNews;

  async function news(first = store.after(seen)) {
    for (let records = await first; records.length > 0; records = await store.after(seen)) {
      learn(JSON.stringify(records.map((record) => record.entry)));
      seen = records.at(-1).seq;
    }
  }

  return {
    /** learn: takes entries as JSON into Python's book. Resolves when all there is has been learnt. */
    async begin(learner) {
      learn = learner;
      await news(early);
      return seen;
    },

    news: () => news(),

    alone: (work) => navigator.locks.request(`${name}-writer`, work),

    /** Only within alone(). Throws when nothing was written. */
    async commit(entries) {
      const added = await store.commit(entries);
      if (added > 0) channel.postMessage("written");
      return added;
    },
  };
}
