// What was typed is never changed under the hand by a morph of the page.

const FREE = ["hidden", "file", "submit", "button", "reset", "image"]; // these follow the server
const TICKED = ["checkbox", "radio"];

/** @type {WeakMap<Element, string>} */
const touched = new WeakMap(); // what was changed by hand, and on which page: the next page may use the same ids
/** @type {[select: Field, value: string][]} */
let afterMorph = [];

export function watchTyping() {
  for (const name of ["input", "change"]) {
    document.addEventListener(name, ({ target }) => target instanceof Element && touch(target), true);
  }
  document.addEventListener("click", ({ target }) => {
    const summary = target instanceof Element && target.closest("summary");
    if (summary && summary.parentElement) touch(summary.parentElement); // folded out by hand: it stays so
  });
}

/** Something has been filled in and not sent: the page must not be drawn anew by itself.
 * @type {(within?: ParentNode) => boolean} */
export function isHalfFilled(within = document) {
  return fields(within).some((field) => touched.has(field));
}

/** Before htmx makes an old node look like a new one: what the hand did to it goes over.
 * @type {(element: Element, detail: Morph) => void} */
export function beforeMorphNode(_, { oldNode, newNode }) {
  if (oldNode instanceof HTMLDetailsElement && newNode instanceof HTMLDetailsElement) keepFold(oldNode, newNode);
  if (!isField(oldNode) || (FREE.includes(oldNode.type) && oldNode.type !== "file")) return;
  const isSame = oldNode.id === newNode.id && oldNode.name === newNode.name && oldNode.type === newNode.type;
  const persists = isSame && isHere(oldNode);
  if (!persists) touched.delete(oldNode);
  if (oldNode.type === "file") {
    if (!persists) oldNode.value = "";
    return; // what was chosen stays chosen: nobody but the hand can choose it again
  }
  const from = persists && touched.has(oldNode) ? oldNode : newNode;
  if (TICKED.includes(newNode.type)) oldNode.checked = from.checked;
  else if (newNode.tagName === "SELECT") afterMorph.push([oldNode, from.value]); // its options are still to come
  else if (newNode.tagName === "TEXTAREA") newNode.textContent = from.value;
  else if (from === oldNode) newNode.setAttribute("value", oldNode.value);
  else if (!persists) oldNode.value = newNode.value;
}

/** A form whose entries were saved is done with the files chosen in it. ctx: htmx's request.
 * @type {(element: Element, detail: Swap) => void} */
export function beforeSwap(_, { ctx }) {
  if (!ctx.response.raw.headers.has("Daybook-Saved")) return;
  /** @type {NodeListOf<Field>} */
  const boxes = ctx.sourceElement.querySelectorAll("[type=file]");
  for (const box of boxes) {
    box.value = "";
    touched.delete(box);
  }
}

export function afterSwap() {
  for (const [select, value] of afterMorph) select.value = value;
  afterMorph = [];
}

/** @type {(element: Element) => void} */
function touch(element) {
  for (const each of choicesOf(element)) touched.set(each, location.pathname);
}

/** To choose one is to leave the others: they must not be chosen again by the server.
 * @type {(element: Element) => Element[]} */
function choicesOf(element) {
  if (!isField(element) || element.type !== "radio") return [element];
  return fields().filter((each) => each.type === "radio" && each.name === element.name && each.form === element.form);
}

/** htmx has moved on to the new address by the time it morphs. @type {(element: Element) => boolean} */
function isHere(element) {
  return (touched.get(element) ?? location.pathname) === location.pathname;
}

/** @type {(oldNode: HTMLDetailsElement, newNode: HTMLDetailsElement) => void} */
function keepFold(oldNode, newNode) {
  const persists = oldNode.id === newNode.id && summaryOf(oldNode) === summaryOf(newNode) && isHere(oldNode);
  if (!persists) touched.delete(oldNode);
  else if (touched.has(oldNode)) newNode.open = oldNode.open;
}

/** @type {(details: Element) => string | undefined} */
function summaryOf(details) {
  return details.querySelector("summary")?.textContent.trim();
}

/** @type {(within?: ParentNode) => Field[]} */
function fields(within = document) {
  return [.../** @type {NodeListOf<Field>} */ (within.querySelectorAll("input, textarea, select"))];
}

/** @type {(node: Element) => node is Field} */
function isField(node) {
  return ["INPUT", "TEXTAREA", "SELECT"].includes(node.tagName);
}
