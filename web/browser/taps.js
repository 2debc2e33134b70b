// A wet finger taps twice. The second tap on the same control within 300 ms does nothing; nor does one within 600 ms
// after a tap has brought another page, which is meant for what stood there before.

const PAUSE_MS = 300;
const LOOK_MS = 600;
const BOUNCE_PX = 40;
const CONTROLS = "a, button, summary, label, select, input:is([type=checkbox], [type=radio], [type=submit], [type=image])";
/** @type {WeakMap<Element, number>} */
const lastTap = new WeakMap();
let shown = location.pathname;
let drawnAt = -Infinity;
/** @type {{ x: number, y: number } | undefined} */
let lastDown;

export function ignoreSecondTaps() {
  document.addEventListener("click", (event) => ignoreIfSecond(event, elementOf(event)?.closest(CONTROLS)), true);
  document.addEventListener("submit", (event) => ignoreIfSecond(event, elementOf(event)), true);
  document.addEventListener("pointerdown", ignoreBounce, true);
}

/** ctx: htmx's request. Going back, or what comes unasked, brings no second tap.
 * @type {(element: Element, detail: Swap) => void} */
export function afterSwap(_, { ctx }) {
  if (location.pathname === shown) return;
  shown = location.pathname;
  drawnAt = ctx.sourceElement === document.body ? -Infinity : performance.now();
}

/** @type {(event: Event) => Element | undefined} */
function elementOf({ target }) {
  return target instanceof Element ? target : undefined;
}

/** A key of the keyboard has no detail: it is never a slip of the finger.
 * @type {(event: UIEvent | Event, control: Element | null | undefined) => void} */
function ignoreIfSecond(event, control) {
  if (!control) return;
  const now = performance.now();
  const isStray = "detail" in event && event.detail > 0 && isJustDrawn();
  if (isStray || now - (lastTap.get(control) ?? -Infinity) < PAUSE_MS) ignore(event);
  else lastTap.set(control, now);
}

/** The number keys act before a click comes of it. A digit lost is as bad as one too many: what is pressed elsewhere than
 * the finger was is meant. @type {(event: PointerEvent) => void} */
function ignoreBounce(event) {
  const { clientX: x, clientY: y } = event;
  const isThere = lastDown !== undefined && Math.hypot(x - lastDown.x, y - lastDown.y) < BOUNCE_PX;
  lastDown = { x, y };
  if (isThere && isJustDrawn() && elementOf(event)?.closest("number-pad")) ignore(event);
}

function isJustDrawn() {
  return performance.now() - drawnAt < LOOK_MS;
}

/** @type {(event: Event) => void} */
function ignore(event) {
  event.preventDefault();
  event.stopImmediatePropagation();
}
