// Will the browser keep the entries? Asked once, after the first entry is saved; the answer is remembered.

const ANSWER = "daybook-kept";

export function keptAnswer() {
  return localStorage.getItem(ANSWER) ?? "unknown";
}

/** Resolves to "yes" or "no" the first time, afterwards to undefined. */
export async function askToKeep() {
  if (keptAnswer() !== "unknown" || !navigator.storage?.persist) return undefined;
  return remember(await navigator.storage.persist());
}

/** Installing the app, or use, may have changed the browser's mind since. */
export async function lookAgain() {
  if (keptAnswer() === "unknown" || !navigator.storage?.persisted) return;
  remember(await navigator.storage.persisted());
}

/** @type {(isKept: boolean) => "yes" | "no"} */
function remember(isKept) {
  const answer = isKept ? "yes" : "no";
  localStorage.setItem(ANSWER, answer);
  return answer;
}
