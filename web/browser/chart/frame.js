// What stands around the drawing: headline, buttons, the text that says what is in sight and what is under the finger.
import { wordsFor } from "../words.js";

const BUTTONS = ["In", "Out", "All", "Earlier", "Later"];

/** Fills the element anew. Returns its parts. The slider is what fingers and arrow keys move: the moment to be read.
 * @type {(element: Element, label: string, headline: string) => Parts} */
export function build(element, label, headline) {
  const buttons = made("div", { className: "moves" }, { role: "group", "aria-label": wordsFor("moves") });
  buttons.append(...BUTTONS.map((name) => made("button", { type: "button", value: name, textContent: wordsFor(name) })));
  const sight = made("p", { className: "sight" });
  const means = made("p", { className: "means", hidden: true, textContent: wordsFor("means") });
  const readout = made("p", { className: "readout", textContent: wordsFor("touch") }, { "aria-live": "off" });
  const name = wordsFor("moment_in", { chart: label });
  const range = { "aria-valuemin": 0, "aria-valuemax": 0, "aria-valuenow": 0 };
  const slider = made("div", { className: "panels", tabIndex: 0 }, { role: "slider", "aria-label": name, ...range });
  const line = made("div", { className: "moment", hidden: true });
  slider.append(line);
  const figure = made("figure", { className: "log-chart" });
  figure.append(made("figcaption", { textContent: headline || label }), buttons, sight, means, readout, slider);
  element.replaceChildren(figure);
  return { buttons, sight, means, readout, slider, line };
}

/** @type {(parts: Parts, title: string) => HTMLElement} */
export function addPanel({ line }, title) {
  const panel = made("div", { className: "panel" });
  panel.append(made("p", { className: "unit", textContent: title }));
  line.before(panel);
  return panel;
}

/** @type {(name: string, properties: object, attributes?: Record<string, string | number>) => HTMLElement} */
function made(name, properties, attributes = {}) {
  const element = Object.assign(document.createElement(name), properties);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, `${value}`);
  return element;
}
