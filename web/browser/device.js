// The region #device: what the device itself has to say. Every page has it and no answer of the application fills it.
import { wordsFor } from "./words.js";

/** @type {Map<string, Notice>} */
const notices = new Map(); // by subject; a later one about the same takes the earlier's place

/** @type {WeakMap<Element, Notice>} */
const drawnFrom = new WeakMap();

/** content: {text, detail, button, act}. act: called when the button is tapped.
 * @type {(subject: string, content: Notice) => void} */
export function notify(subject, content) {
  notices.set(subject, content);
  render();
}

/** @type {(subject: string) => void} */
export function withdraw(subject) {
  if (notices.delete(subject)) render();
}

/** Going back replaces the whole body, and this region with it. */
export function render() {
  const region = document.getElementById("device");
  if (!region || isShown(region)) return;
  region.replaceChildren(...[...notices].map(([subject, content]) => drawn(subject, content)));
}

/** @type {(region: Element) => boolean} */
function isShown(region) {
  const all = [...notices];
  const isOf = (/** @type {Element} */ box, /** @type {Notice} */ content) => drawnFrom.get(box) === content;
  return region.children.length === all.length && all.every(([, content], at) => isOf(region.children[at], content));
}

/** @type {(subject: string, content: Notice) => HTMLElement} */
function drawn(subject, content) {
  const box = element("div", { className: "notice" });
  drawnFrom.set(box, content);
  box.dataset.notice = subject;
  box.append(element("p", { textContent: content.text }));
  if (content.button) box.append(button(subject, content));
  if (content.detail) box.append(report(content.detail));
  return box;
}

/** @type {(subject: string, content: Notice) => HTMLElement} */
function button(subject, { button: words, act }) {
  const made = element("button", { type: "button", textContent: words });
  made.dataset[subject] = "";
  made.addEventListener("click", () => act?.());
  return made;
}

/** Selected as a whole by one tap, to be copied and sent to whoever helps. @type {(text: string) => HTMLElement} */
function report(text) {
  const details = element("details", {});
  const box = Object.assign(document.createElement("textarea"), { readOnly: true, rows: 8, value: text });
  box.setAttribute("aria-label", wordsFor("report"));
  box.addEventListener("focus", () => box.select());
  details.append(element("summary", { textContent: wordsFor("report") }), box);
  return details;
}

/** @type {(name: string, properties: object) => HTMLElement} */
function element(name, properties) {
  return Object.assign(document.createElement(name), properties);
}
