// The region #device: what the device itself has to say. Every page has it and no answer of the application fills it.

const notices = new Map(); // by subject; a later one about the same takes the earlier's place

/** content: {text, detail, button, act}. act: called when the button is tapped. */
export function notify(subject, content) {
  notices.set(subject, content);
  render();
}

export function withdraw(subject) {
  if (notices.delete(subject)) render();
}

/** Going back replaces the whole body, and this region with it. */
export function render() {
  const region = document.getElementById("device");
  if (!region || isShown(region)) return;
  region.replaceChildren(...[...notices].map(([subject, content]) => drawn(subject, content)));
}

function isShown(region) {
  const all = [...notices];
  return region.children.length === all.length && all.every(([, content], at) => region.children[at].notice === content);
}

function drawn(subject, content) {
  const box = element("div", { className: "notice" });
  box.notice = content;
  box.dataset.notice = subject;
  box.append(element("p", { textContent: content.text }));
  if (content.button) box.append(button(subject, content));
  if (content.detail) box.append(report(content.detail));
  return box;
}

function button(subject, { button: words, act }) {
  const made = element("button", { type: "button", textContent: words });
  made.dataset[subject] = "";
  made.addEventListener("click", act);
  return made;
}

/** Selected as a whole by one tap, to be copied and sent to whoever helps. */
function report(text) {
  const details = element("details", {});
  const box = element("textarea", { readOnly: true, rows: 8, value: text });
  box.setAttribute("aria-label", "Report");
  box.addEventListener("focus", () => box.select());
  details.append(element("summary", { textContent: "Report" }), box);
  return details;
}

function element(name, properties) {
  return Object.assign(document.createElement(name), properties);
}
