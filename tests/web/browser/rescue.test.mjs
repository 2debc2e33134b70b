// A copy without Python is the same as one with it.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import test from "node:test";
import "./words.mjs";

globalThis.document = { querySelector: () => ({ href: "https://cellar.test/book/manifest.webmanifest" }) };
const { exported } = await import("../../../web/browser/rescue.js");

test("it holds every entry of every part, in order", () => {
  const parts = [{ json: '[{"id": "a"},{"id": "b"}]' }, { json: '[{"id": "c"}]' }];
  assert.deepEqual(JSON.parse(exported(parts)).entries.map((each) => each.id), ["a", "b", "c"]);
});

test("an empty book makes an empty copy", () => {
  assert.deepEqual(JSON.parse(exported([])).entries, []);
  assert.deepEqual(JSON.parse(exported([{ json: "[]" }])).entries, []);
});

test("its format is the one that is read in", () => {
  const said = /^FORMAT = "(.+)"$/m.exec(readFileSync(new URL("../../../web/copied.py", import.meta.url), "utf-8"));
  assert.equal(JSON.parse(exported([])).format, said[1]);
});
