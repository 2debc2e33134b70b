// Where one stands after the page has changed: at the error, at the next box, or at the new page's heading.

let shown = location.pathname;
/** @type {Set<Element>} */
let before = new Set();

/** @type {(element: Element, detail: Swap) => void} */
export function beforeSwap(_, { tasks }) {
  before = new Set(document.querySelectorAll("[data-focus]"));
  // htmx scrolls every answer to a boosted form to the top; here only a new page does.
  for (const task of tasks) if (task.type === "main") task.swapSpec.show = "none";
}

/** ctx: htmx's request. A form that was sent takes the focus anew even where the error is the same as before.
 * @type {(element: Element, detail: Swap) => void} */
export function afterSwap(_, { ctx }) {
  const { method, headers } = ctx.request;
  const isNewPage = location.pathname !== shown;
  shown = location.pathname;
  if ("Daybook-Refresh" in headers) return;
  const offered = [.../** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-focus]"))];
  const wanted = offered.find((each) => method !== "GET" || isNewPage || !before.has(each));
  if (wanted) focusOn(wanted, false);
  else if (isNewPage || (method !== "GET" && isLost())) headPage("HX-History-Restore-Request" in headers);
}

/** The box or button that had it is gone from the page. */
function isLost() {
  return document.activeElement === document.body;
}

/** Going back, the browser restores how far one had scrolled. @type {(isReturn: boolean) => void} */
function headPage(isReturn) {
  if (!isReturn) window.scrollTo({ top: 0, behavior: "instant" });
  if (!location.hash) focusOn(document.querySelector("h1"), true);
}

/** @type {(element: HTMLElement | null, preventScroll: boolean) => void} */
function focusOn(element, preventScroll) {
  if (!element) return;
  if (element.tabIndex < 0) element.tabIndex = -1;
  element.focus({ preventScroll });
}

