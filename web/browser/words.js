// What the scripts say, in the reader's language: the build gives it in from web/script_words.py.
/* global WORDS */
import { cookie } from "./cookies.js";

export function language() {
  const chosen = cookie("language") ?? "";
  return chosen in WORDS ? chosen : "en";
}

/** values: what its text names in braces. @type {(key: string, values?: Record<string, string | number>) => string} */
export function wordsFor(key, values = {}) {
  return WORDS[language()][key].replace(/\{(\w+)\}/g, (_, name) => `${values[name]}`);
}
