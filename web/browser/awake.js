// The screen stays lit while one weighs: wet hands cannot wake a tablet. Asked from a tap, and again after a look away.

/** @type {Promise<WakeLockSentinel | undefined> | undefined} */
let asked; // a promise of the lock, or of nothing where the device refused
let isWanted = false;

export function keepAwake() {
  if (!("wakeLock" in navigator)) return;
  document.addEventListener("click", () => settle(true));
  document.addEventListener("visibilitychange", () => settle(isWanted));
}

/** After each swap: a page without [data-awake] lets the screen sleep again. */
export function afterSwap() {
  if (!document.querySelector("[data-awake]")) settle(false);
}

/** @type {(wish: boolean) => void} */
function settle(wish) {
  isWanted = wish && document.querySelector("[data-awake]") !== null;
  if (isWanted && document.visibilityState === "visible") asked ??= ask();
  else if (!isWanted) letGo();
}

async function ask() {
  const lock = await navigator.wakeLock.request("screen").catch(() => undefined); // the battery may be low
  if (!lock) asked = undefined;
  lock?.addEventListener("release", () => (asked = undefined)); // the browser takes it back when one looks away
  return lock;
}

async function letGo() {
  await (await asked)?.release();
}
