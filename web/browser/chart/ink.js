// The book's colours, as the style sheet has them now; on paper, black.

const NAMES = ["ink", "accent", "moss", "ochre", "faint", "edge", "rule"];
/** @type {Ink} */
const ON_PAPER = { ink: "#000", accent: "#555", moss: "#333", ochre: "#777", faint: "#222", edge: "#666", rule: "#bbb" };
const LINES = ["ink", "accent", "moss", "ochre"];

/** @type {(element: Element, isForPaper: boolean) => Ink} */
export function inkOf(element, isForPaper) {
  const style = getComputedStyle(element);
  const colours = NAMES.map((name) => [name, style.getPropertyValue(`--${name}`).trim()]);
  return { ...Object.fromEntries(colours), ...(isForPaper && ON_PAPER), family: style.fontFamily };
}

/** A probe has one colour in all panels. From the fifth on colours come again, with other strokes.
 * @type {(columns: Column[]) => (column: Column) => Stroke} */
export function strokeOf(columns) {
  const names = [...new Set(columns.map(({ name }) => name))];
  return ({ name, quantity }) => {
    const nth = names.indexOf(name);
    const round = Math.floor(nth / LINES.length);
    const dash = quantity === "dew point" ? [2, 3] : Array(round).fill([9, 4]).flat();
    return { colour: LINES[nth % LINES.length], dash };
  };
}

/** call: when the theme, the contrast or the medium has changed.
 * @type {(call: (isForPaper: boolean) => void, signal: AbortSignal) => void} */
export function onOtherInk(call, signal) {
  const watching = new MutationObserver(() => call(false));
  watching.observe(document.documentElement, { attributeFilter: ["data-theme"] });
  signal.addEventListener("abort", () => watching.disconnect());
  for (const wish of ["(prefers-color-scheme: dark)", "(prefers-contrast: more)", "(forced-colors: active)"]) {
    matchMedia(wish).addEventListener("change", () => call(false), { signal });
  }
  addEventListener("beforeprint", () => call(true), { signal });
  addEventListener("afterprint", () => call(false), { signal });
}
