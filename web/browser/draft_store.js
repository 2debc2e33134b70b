// What is half typed, kept on the device: a locked tablet ends its tabs and forgets all that only a page knows.

const KEY = "daybook-draft ";
const OLDEST_MS = 24 * 3600 * 1000; // by then it is another day's work
const MOST_LETTERS = 20_000; // no box takes more

/** @type {(key: string, draft: Draft) => void} */
export function put(key, draft) {
  if (draft.texts.some(([, text]) => text.length > MOST_LETTERS)) return;
  try {
    localStorage.setItem(KEY + key, JSON.stringify(draft));
  } catch {
    // a full or forbidden storage: it lasts as long as the page
  }
}

/** @type {(key: string, now?: number) => Draft | undefined} */
export function get(key, now = Date.now()) {
  try {
    /** @type {Draft | null} */
    const draft = JSON.parse(localStorage.getItem(KEY + key) ?? "null");
    return draft && now - draft.at < OLDEST_MS ? draft : undefined;
  } catch {
    return undefined;
  }
}

/** @type {(key: string) => void} */
export function drop(key) {
  localStorage.removeItem(KEY + key);
}

/** Those that are offered no more. */
export function dropOld() {
  const keys = Object.keys(localStorage).filter((each) => each.startsWith(KEY)).map((each) => each.slice(KEY.length));
  for (const each of keys) if (!get(each)) drop(each);
}
