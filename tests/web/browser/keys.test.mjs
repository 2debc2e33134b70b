// The number keys: what a press does to the text and to the caret.
import assert from "node:assert/strict";
import test from "node:test";
import { edited, unitsWithKeys } from "../../../web/browser/keys.js";

/** `|` is the caret, `[…]` what is selected. */
function pressed(key, put, text) {
  const bare = text.replace(/[|[\]]/g, "");
  const start = text.search(/[|[]/);
  const end = text.includes("]") ? text.indexOf("]") - 1 : start;
  const after = edited(key, put, { text: bare, start, end });
  return after && `${after.text.slice(0, after.caret)}|${after.text.slice(after.caret)}`;
}

for (const [what, key, put, before, after] of [
  ["a digit goes in at the caret", "7", "7", "12|5", "127|5"],
  ["what is selected makes way for a digit", "7", "7", "[0.25]", "7|"],
  ["and for the decimal mark", "mark", ",", "[0,25]", ",|"],
  ["a number has one decimal mark", "mark", ".", "12.5|", undefined],
  ["also where it stands behind the caret", "mark", ".", "1|2.5", undefined],
  ["the next number of a compound has its own", "mark", ".", "12.5 lb 4|", "12.5 lb 4.|"],
  ["the last sign is deleted", "back", "", "12.5|", "12.|"],
  ["what is selected is deleted", "back", "", "1[2.]5", "1|5"],
  ["nothing is left to delete", "back", "", "|5", "|5"],
  ["a unit is deleted as one", "back", "", "12 fl oz|", "12 fl|"],
  ["with the space before it", "back", "", "12 kg|", "12|"],
  ["a half is deleted as one", "back", "", "2½|", "2|"],
  ["a minus stands before the number", "minus", "−", "12|", "−12|"],
  ["the same key takes it away", "minus", "−", "−12|", "12|"],
  ["a minus of the keyboard goes too", "minus", "−", "-12|", "12|"],
  ["wherever the caret is", "minus", "−", "1|2", "−1|2"],
  ["a minus begins a number", "minus", "−", "[12]", "−|"],
  ["a half follows its whole", "half", "½", "2|", "2½|"],
  ["a unit is typed with its space", "unit", "lb", "12|", "12 lb|"],
  ["what follows a unit has a space before it", "4", "4", "12 lb|", "12 lb 4|"],
  ["a second unit makes a compound", "unit", "oz", "12 lb 4|", "12 lb 4 oz|"],
  ["a sign for a unit is one", "unit", "%", "78|", "78 %|"],
]) {
  test(what, () => assert.equal(pressed(key, put, before), after));
}

test("a unit without a number is not typed", () => assert.equal(pressed("unit", "kg", "|"), "|"));

test("the units for which there is room have keys, the chosen one among them", () => {
  const units = ["L", "mL", "gal", "qt", "tsp"];
  assert.deepEqual(unitsWithKeys(units, "L", 4), ["L", "mL", "gal", "qt"]);
  assert.deepEqual(unitsWithKeys(units, "tsp", 4), ["L", "mL", "gal", "tsp"]);
  assert.deepEqual(unitsWithKeys(["%"], "", 4), ["%"]);
  assert.deepEqual(unitsWithKeys([], "", 4), []);
});
