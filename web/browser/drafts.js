// What is half typed in a form outlives its page: a reload, a tab that was ended, a tap that led away, a new version.
// It is gone when it was sent; and it comes back only into a form that is as it was before anybody typed.
import htmx from "htmx.org";
import { cookie } from "./cookies.js";
import { drop, dropOld, get, put } from "./draft_store.js";
import { here } from "./place.js";
import { isHalfFilled } from "./typed.js";

const FORMS = "main form[method=post]";
const UNKEPT = ["hidden", "file", "submit", "button", "reset", "image"];
const TICKED = ["checkbox", "radio"];
/** @type {WeakMap<HTMLFormElement, string>} */
const keys = new WeakMap(); // by what a form is known when it is sent: the address may have changed under it
let shown = location.pathname;
let isFilling = false;
/** @type {Map<string, number>} */
const restored = new Map(); // on this page: when it was typed
/** @type {Map<string, string>} */
const untouched = new Map(); // on this page: what a form held at first, of which an answer may have made something else
/** @type {string | undefined} */
let asked; // of which the form was asked for with boxes that it had not at first

export function keepDrafts() {
  dropOld();
  document.addEventListener("input", ({ target }) => isField(target) && keep(target.form)); // a box that is removed says "change"
  document.addEventListener("click", ({ target }) => {
    const button = target instanceof Element && target.closest("[data-clear-draft]");
    if (button instanceof HTMLElement) clear(button.dataset.clearDraft ?? "");
  });
}

/** What was sent and taken is no draft any more; what was refused, or only looked at, stays one. ctx: htmx's request.
 * @type {(element: Element, detail: Swap) => void} */
export function beforeSwap(_, { ctx }) {
  const form = ctx.sourceElement.closest("form");
  const key = form && keys.get(form);
  if (!key || ctx.request.method === "GET" || !isTaken(ctx.response.raw)) return;
  forget(key);
}

/** @type {(key: string) => void} */
function forget(key) {
  drop(key);
  restored.delete(key);
  untouched.delete(key);
}

/** @type {(response: Response) => boolean} */
function isTaken({ ok, headers }) {
  const moved = headers.get("HX-Push-Url") ?? headers.get("HX-Replace-Url") ?? "false";
  return ok && (headers.has("Daybook-Saved") || moved !== "false");
}

export function afterSwap() {
  if (location.pathname !== shown) for (const each of [restored, untouched]) each.clear();
  shown = location.pathname;
  for (const form of document.querySelectorAll(FORMS)) {
    if (!(form instanceof HTMLFormElement)) continue;
    const key = keyOf(form);
    const draft = get(key);
    keys.set(form, key);
    if (!draft) continue;
    if (isHalfFilled(form)) keep(form); // its boxes may be others now
    else if (asked === key) fill(form, draft.texts);
    else if (draft.fresh === freshOf(form)) restore(form, key, draft);
    if (restored.has(key)) say(form, key);
  }
  asked = undefined;
}

/** @type {(form: HTMLFormElement | null) => void} */
function keep(form) {
  if (isFilling || !form?.matches(FORMS)) return;
  const key = keyOf(form);
  const before = get(key);
  const fresh = before?.fresh ?? untouched.get(key) ?? freshOf(form);
  const texts = textsOf(form);
  untouched.set(key, fresh);
  if (fresh === nowOf(form)) drop(key);
  else if (`${before?.texts}` !== `${texts}`) put(key, { at: Date.now(), fresh, texts });
}

/** @type {(form: HTMLFormElement, key: string, draft: Draft) => void} */
function restore(form, key, { at, texts }) {
  restored.set(key, at);
  const drawn = new Set(fieldsOf(form).map((each) => each.name));
  if (texts.every(([name]) => drawn.has(name))) return fill(form, texts);
  asked = key;
  const query = new URLSearchParams([["anew", "1"], ...texts]);
  const action = actionOf(form);
  action.search += `${action.search ? "&" : "?"}${query}`;
  htmx.ajax("GET", action.pathname + action.search, { target: "#main", select: "#main", swap: "outerMorph", headers: { "Daybook-Refresh": "yes" } });
}

/** @type {(form: HTMLFormElement, texts: Draft["texts"]) => void} */
function fill(form, texts) {
  const known = new Map(texts);
  const ticked = new Set(texts.map(([name, text]) => `${name}=${text}`));
  isFilling = true; // no hand is typing
  for (const each of fieldsOf(form)) {
    const before = stateOf(each);
    if (TICKED.includes(each.type)) each.checked = ticked.has(`${each.name}=${each.value}`);
    else each.value = known.get(each.name) ?? each.value;
    if (stateOf(each) !== before) each.dispatchEvent(new Event("input", { bubbles: true }));
  }
  isFilling = false;
}

/** @type {(form: HTMLFormElement, key: string) => void} */
function say(form, key) {
  if (form.previousElementSibling?.localName === "draft-line") return;
  const template = /** @type {HTMLTemplateElement | null} */ (document.getElementById("draft-line"));
  const line = /** @type {HTMLElement | undefined} */ (template?.content.firstElementChild?.cloneNode(true));
  const [time, button] = [line?.querySelector("time"), line?.querySelector("button")];
  if (!line || !time || !button) return;
  time.textContent = clock(new Date(restored.get(key) ?? 0));
  button.dataset.clearDraft = key;
  form.before(line);
}

/** As the server writes it: 14:05. @type {(moment: Date) => string} */
function clock(moment) {
  return [moment.getHours(), moment.getMinutes()].map((each) => `${each}`.padStart(2, "0")).join(":");
}

/** @type {(key: string) => Promise<void>} */
async function clear(key) {
  forget(key);
  await htmx.ajax("GET", here(), { target: "#main", select: "#main", swap: "outerHTML", headers: { "Daybook-Refresh": "yes" } });
  document.querySelector("h1")?.focus();
}

/** A page, and which of its forms; whatever was saved last stands in the address as well.
 * @type {(form: HTMLFormElement) => string} */
function keyOf(form) {
  const query = new URLSearchParams(location.search);
  query.delete("saved");
  const whose = cookie("example") ? ["example"] : []; // what was tried there is no draft of one's own book
  return [...whose, location.pathname, query, actionOf(form).pathname].join(" ");
}

/** A box may be called action. @type {(form: HTMLFormElement) => URL} */
function actionOf(form) {
  return new URL(form.getAttribute("action") ?? "", location.href);
}

/** What the server put into each box. The unit beside it follows the reader's settings, and is no news.
 * @type {(form: HTMLFormElement) => string} */
function freshOf(form) {
  return JSON.stringify(fieldsOf(form).filter(isTold).map((each) => [each.name, servedOf(each)]));
}

/** @type {(form: HTMLFormElement) => string} */
function nowOf(form) {
  return JSON.stringify(fieldsOf(form).filter(isTold).map((each) => [each.name, stateOf(each)]));
}

/** @type {(form: HTMLFormElement) => Draft["texts"]} */
function textsOf(form) {
  const own = new Set(fieldsOf(form).map((each) => each.name));
  return [...new FormData(form)].flatMap(([name, text]) => (own.has(name) && typeof text === "string" ? [[name, text]] : []));
}

/** @type {(field: Field) => string} */
function servedOf(field) {
  if (TICKED.includes(field.type)) return `${field.value}: ${field.defaultChecked}`;
  if (field.localName !== "select") return field.defaultValue;
  const options = [.../** @type {NodeListOf<HTMLOptionElement>} */ (field.querySelectorAll("option"))];
  return (options.find((each) => each.defaultSelected) ?? options[0])?.value ?? "";
}

/** @type {(field: Field) => string} */
function stateOf(field) {
  return TICKED.includes(field.type) ? `${field.value}: ${field.checked}` : field.value;
}

/** @type {(field: Field) => boolean} */
function isTold(field) {
  return !field.name.endsWith("-unit");
}

/** @type {(form: HTMLFormElement) => Field[]} */
function fieldsOf(form) {
  return [...form.elements].filter((each) => isField(each)).filter((each) => each.name !== "" && !UNKEPT.includes(each.type));
}

/** @type {(node: unknown) => node is Field} */
function isField(node) {
  return node instanceof Element && ["input", "textarea", "select"].includes(node.localName);
}
