// The page's own number keys. On a touch screen they open beside a number box, and the device's keyboard, which would
// hide half of the page, stays away. They act as the finger comes down and never take the focus from the box.
import { cookie } from "./cookies.js";
import { edited, hasLetter, unitsWithKeys } from "./keys.js";
import { place, takeAway } from "./pad_place.js";

const NUMBER = "input[data-number]";
const HOLD_MS = 450;
const AGAIN_MS = 90;
const coarse = matchMedia("(pointer: coarse)");
/** @type {Field | undefined} */
let box;
/** @type {HTMLElement | undefined} */
let pad;
let isDown = false;
/** @type {number | undefined} */
let holding;

export function openPad() {
  document.addEventListener("focusin", ({ target }) => isNumber(target) && isWanted() && open(target));
  document.addEventListener("focusout", () => setTimeout(closeIfLeft));
  document.addEventListener("pointerdown", () => (isDown = true), true);
  for (const name of ["pointerup", "pointercancel"]) document.addEventListener(name, lifted, true);
  document.addEventListener("change", ({ target }) => box && target === unitBox(box) && label());
  addEventListener("resize", () => pad && box && place(pad, box));
  coarse.addEventListener("change", afterSwap);
}

/** Before htmx makes an old box look like a new one, which does not know of the keys.
 * @type {(element: Element, detail: Morph) => void} */
export function beforeMorphNode(_, { newNode }) {
  if (isNumber(newNode) && isWanted()) newNode.inputMode = "none";
}

/** The boxes are others, or may be; the keys may have gone with the morph. */
export function afterSwap() {
  for (const each of document.querySelectorAll(NUMBER)) quieten(/** @type {Field} */ (each));
  const { activeElement } = document;
  if (pad?.contains(activeElement) && box?.isConnected) open(box);
  else if (isNumber(activeElement) && isWanted()) open(activeElement);
  else close();
}

/** As it was set in the book; else wherever one points with a finger. */
function isWanted() {
  const keys = cookie("keys");
  return keys === "page" || (keys !== "tablet" && coarse.matches);
}

/** @type {(each: Field) => void} */
function quieten(each) {
  if (isWanted()) each.inputMode = "none";
  else if (each.inputMode === "none") each.inputMode = "decimal";
}

/** @type {(next: Field) => void} */
function open(next) {
  box = next;
  pad ??= drawn();
  if (!pad) return;
  label();
  place(pad, box);
}

function closeIfLeft() {
  const { activeElement } = document;
  if (!pad || isDown || activeElement === box || pad.contains(activeElement)) return;
  if (!isNumber(activeElement)) close();
}

function close() {
  if (pad) takeAway(pad);
  pad = box = undefined;
}

/** A button must not slip from under the finger that presses it: the keys go after its click. */
function lifted() {
  isDown = false;
  clearTimeout(holding);
  setTimeout(closeIfLeft);
}

/** @type {() => HTMLElement | undefined} */
function drawn() {
  const template = /** @type {HTMLTemplateElement | null} */ (document.getElementById("pad-keys"));
  const made = /** @type {HTMLElement | null | undefined} */ (template?.content.firstElementChild?.cloneNode(true));
  made?.addEventListener("pointerdown", (event) => {
    event.preventDefault();
    const key = keyOf(event);
    if (key) hold(key);
  });
  made?.addEventListener("mousedown", (event) => event.preventDefault()); // it would take the focus from the box
  made?.addEventListener("click", (event) => {
    const key = keyOf(event);
    if (key && event.detail === 0) press(key); // a screen reader or a keyboard: no finger came down
  });
  return made ?? undefined;
}

/** @type {(event: Event) => HTMLElement | null} */
function keyOf({ target }) {
  return target instanceof Element ? target.closest("[data-key]") : null;
}

/** @type {(key: HTMLElement) => void} */
function hold(key) {
  press(key);
  clearTimeout(holding);
  if (key.dataset.key === "back") holding = setTimeout(again, HOLD_MS, key);
}

/** @type {(key: HTMLElement) => void} */
function again(key) {
  press(key);
  holding = setTimeout(again, AGAIN_MS, key);
}

/** @type {(key: HTMLElement) => void} */
function press(key) {
  const { key: name = "" } = key.dataset;
  if (!box?.isConnected) return;
  if (name === "next") goOn(box);
  else if (name === "unit" && isToChoose(box, shown(key))) choose(box, shown(key));
  else type(box, name, shown(key));
}

/** @type {(box: Field, name: string, put: string) => void} */
function type(box, name, put) {
  const { value: text } = box;
  const [start, end] = [box.selectionStart ?? text.length, box.selectionEnd ?? text.length];
  const after = edited(name, put, { text, start, end });
  if (!after || after.text === text) return;
  box.setRangeText(after.text, 0, text.length, "end");
  box.setSelectionRange(after.caret, after.caret);
  box.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: name === "back" ? "deleteContentBackward" : "insertText" }));
}

/** The unit that is chosen already is typed: a bare number may have been asked about.
 * @type {(box: Field, unit: string) => boolean} */
function isToChoose(box, unit) {
  const select = unitBox(box);
  return select !== null && select.value !== unit && !hasLetter(box.value);
}

/** @type {(box: Field, unit: string) => void} */
function choose(box, unit) {
  const select = unitBox(box);
  if (!select) return;
  select.value = unit;
  for (const name of ["input", "change"]) select.dispatchEvent(new Event(name, { bubbles: true }));
}

/** To the next box; from the last one to the button that ends it, or to what comes of it. @type {(box: Field) => void} */
function goOn(box) {
  /** @type {(selector: string) => HTMLElement[]} */
  const shownOf = (selector) => [...(box.form?.querySelectorAll(selector) ?? [])].filter(isShown);
  const boxes = shownOf("input[type=text], textarea");
  const [next] = [boxes.slice(boxes.indexOf(box) + 1), ...["button.main", ".figures", "button"].map(shownOf)].flat();
  if (!next) return;
  if (next.tabIndex < 0) next.tabIndex = -1;
  next.focus();
}

/** What the keys are called for this box: its units, its sign. */
function label() {
  if (!pad || !box) return;
  const isSigned = box.dataset.number === "signed";
  keyNamed("minus").hidden = !isSigned;
  keyNamed("half").hidden = isSigned;
  const cells = [.../** @type {NodeListOf<HTMLElement>} */ (pad.querySelectorAll('[data-key="unit"]'))];
  const chosen = unitBox(box)?.value ?? "";
  const units = unitsWithKeys((box.dataset.units ?? "").split("|").filter(Boolean), chosen, cells.length);
  for (const [at, cell] of cells.entries()) {
    cell.textContent = units[at] ?? "";
    cell.style.visibility = units[at] ? "" : "hidden"; // its place stays: the digits never move
    if (chosen) cell.setAttribute("aria-pressed", `${units[at] === chosen}`);
    else cell.removeAttribute("aria-pressed");
  }
}

/** @type {(name: string) => HTMLElement} */
function keyNamed(name) {
  return /** @type {HTMLElement} */ (pad?.querySelector(`[data-key="${name}"]`));
}

/** @type {(key: HTMLElement) => string} */
function shown(key) {
  return key.textContent.trim();
}

/** @type {(box: Field) => HTMLSelectElement | null} */
function unitBox(box) {
  return box.form?.querySelector(`select[name="${CSS.escape(`${box.name}-unit`)}"]`) ?? null;
}

/** What is folded away may have a place all the same. @type {(each: Element) => each is HTMLElement} */
function isShown(each) {
  const isFolded = each.closest("details:not([open]) > :not(summary)") !== null;
  return each instanceof HTMLElement && each.getClientRects().length > 0 && !isFolded;
}

/** @type {(node: unknown) => node is Field} */
function isNumber(node) {
  return node instanceof Element && node.matches(NUMBER);
}
