// A copy of the book: whole, told as it goes, and broken off by a tap.
import assert from "node:assert/strict";
import test from "node:test";
import { strFromU8, unzipSync } from "../../../web/node_modules/fflate/esm/browser.js";
import { copyOf } from "../../../web/browser/copy.js";

const LOGS = { a: new Uint8Array([1, 2, 3]), b: new Uint8Array(100_000).fill(7) };
const files = { names: async () => Object.keys(LOGS), file: async (name) => LOGS[name] };
const journal = new TextEncoder().encode('{"entries": []}');

test("it holds the journal and every file, byte for byte", async () => {
  const blob = await copyOf(journal, files, () => {}, () => false);
  const held = unzipSync(new Uint8Array(await blob.arrayBuffer()));
  assert.deepEqual(Object.keys(held).sort(), ["files/a", "files/b", "journal.json"]);
  assert.equal(strFromU8(held["journal.json"]), '{"entries": []}');
  assert.deepEqual(held["files/b"], LOGS.b);
});

test("it tells how far it is, before each file", async () => {
  const told = [];
  await copyOf(journal, files, (done, of) => told.push([done, of]), () => false);
  assert.deepEqual(told, [[0, 2], [1, 2]]);
});

test("stopped, it makes no copy and reads no further file", async () => {
  const read = [];
  const watched = { ...files, file: async (name) => (read.push(name), LOGS[name]) };
  assert.equal(await copyOf(journal, watched, () => {}, () => read.length === 1), undefined);
  assert.deepEqual(read, ["a"]);
});
