// The starting screen: how far it is, in words and as a bar.
import { language, wordsFor } from "./words.js";

const PHASES = {
  files: { from: 0, to: 70, key: "opening" },
  python: { from: 70, to: 90, key: "readying" },
  journal: { from: 90, to: 100, key: "reading" },
};

/** The page comes in English: the language of who opens it is known on the device alone. */
export function sayIt() {
  document.documentElement.lang = language();
  for (const each of document.querySelectorAll("[data-say]")) each.textContent = wordsFor(/** @type {HTMLElement} */ (each).dataset.say ?? "");
}

/** @type {(progress: Progress) => void} */
export function showProgress({ phase, done, total }) {
  const bar = document.querySelector("progress");
  const status = document.querySelector("#starting [role=status]");
  if (!bar || !status) return;
  const { from, to, key } = PHASES[phase];
  const words = wordsFor(key);
  bar.value = phase === "files" ? from + ((to - from) * done) / total : from;
  if (status.textContent !== words) status.textContent = words;
}

export function showStopped() {
  document.querySelector("#starting")?.remove();
}
