// A wet finger taps twice: the second tap on the same control within 300 ms does nothing.

const PAUSE_MS = 300;
const CONTROLS = "a, button, summary, label, select, input:is([type=checkbox], [type=radio], [type=submit], [type=image])";
/** @type {WeakMap<Element, number>} */
const lastTap = new WeakMap();

export function ignoreSecondTaps() {
  document.addEventListener("click", (event) => ignoreIfSecond(event, elementOf(event)?.closest(CONTROLS)), true);
  document.addEventListener("submit", (event) => ignoreIfSecond(event, elementOf(event)), true);
}

/** @type {(event: Event) => Element | undefined} */
function elementOf({ target }) {
  return target instanceof Element ? target : undefined;
}

/** @type {(event: Event, control: Element | null | undefined) => void} */
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
