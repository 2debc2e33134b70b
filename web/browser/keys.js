// What a number key does to the text of its box, apart from any box.

const LETTER = /[^\d\s.,+\-−/½]/u;
const LAST = /(?:\s*[^\d\s.,+\-−/½]+\s*|.)$/su; // a unit goes as one, with the space before it

/** @typedef {{ text: string, start: number, end: number }} Typed */

/** The text with what the key puts into it, and the caret after that. Undefined: the key does nothing here.
 * @type {(key: string, put: string, typed: Typed) => { text: string, caret: number } | undefined} */
export function edited(key, put, { text, start, end }) {
  const before = text.slice(0, start);
  const after = text.slice(end);
  if (key === "back") return joined(start < end ? before : before.replace(LAST, ""), "", after);
  if (key === "minus") return negated(put, before, after, end);
  if (key === "mark" && (numberAtEnd(before) + numberAtStart(after)).includes(put)) return undefined;
  if (key === "unit") return joined(before.trimEnd(), before.trim() && ` ${put}`, after);
  return joined(before, hasLetter(before.slice(-1)) ? ` ${put}` : put, after);
}

/** Somebody has typed a unit: 12 lb 4 oz goes on in words. @type {(text: string) => boolean} */
export function hasLetter(text) {
  return LETTER.test(text);
}

/** The units that get a key: those there is room for, among them the one that is chosen.
 * @type {(units: string[], chosen: string, room: number) => string[]} */
export function unitsWithKeys(units, chosen, room) {
  const first = units.slice(0, room);
  return chosen && units.includes(chosen) && !first.includes(chosen) ? [...first.slice(0, -1), chosen] : first;
}

/** @type {(before: string, put: string, after: string) => { text: string, caret: number }} */
function joined(before, put, after) {
  return { text: before + put + after, caret: before.length + put.length };
}

/** The sign stands before the number wherever the caret is, and goes by the same key.
 * @type {(sign: string, before: string, after: string, end: number) => { text: string, caret: number }} */
function negated(sign, before, after, end) {
  const text = before + after;
  const caret = Math.min(before.length, end);
  if (/^[-−]/.test(text)) return { text: text.slice(1), caret: Math.max(0, caret - 1) };
  return { text: sign + text, caret: caret + 1 };
}

/** @type {(text: string) => string} */
function numberAtEnd(text) {
  return /[\d.,]*$/.exec(text)?.[0] ?? "";
}

/** @type {(text: string) => string} */
function numberAtStart(text) {
  return /^[\d.,]*/.exec(text)?.[0] ?? "";
}
