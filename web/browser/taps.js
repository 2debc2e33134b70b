// A wet finger taps twice: the second tap on the same control within 300 ms does nothing.

const PAUSE_MS = 300;
const CONTROLS = "a, button, summary, label, select, input:is([type=checkbox], [type=radio], [type=submit], [type=image])";
const lastTap = new WeakMap();

export function ignoreSecondTaps() {
  document.addEventListener("click", (event) => ignoreIfSecond(event, event.target.closest?.(CONTROLS)), true);
  document.addEventListener("submit", (event) => ignoreIfSecond(event, event.target), true);
}

function ignoreIfSecond(event, control) {
  if (!control) return;
  const now = performance.now();
  if (now - (lastTap.get(control) ?? -Infinity) < PAUSE_MS) {
    event.preventDefault();
    event.stopImmediatePropagation();
    return;
  }
  lastTap.set(control, now);
}
