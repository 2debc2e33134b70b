// The starting screen: how far it is, in words and as a bar.

const PHASES = {
  files: { from: 0, to: 70, words: "Opening the daybook…" },
  python: { from: 70, to: 90, words: "Getting the sums ready…" },
  journal: { from: 90, to: 100, words: "Reading your entries…" },
};

/** @type {(progress: Progress) => void} */
export function showProgress({ phase, done, total }) {
  const bar = document.querySelector("progress");
  const status = document.querySelector("#starting [role=status]");
  if (!bar || !status) return;
  const { from, to, words } = PHASES[phase];
  bar.value = phase === "files" ? from + ((to - from) * done) / total : from;
  if (status.textContent !== words) status.textContent = words;
}

export function showStopped() {
  document.querySelector("#starting")?.remove();
}
