// What is half typed, as it lies on the device.
import assert from "node:assert/strict";
import test from "node:test";

const HOUR_MS = 3600_000;
const draft = { at: 0, fresh: "[]", texts: [["mass_kg", "1250"]] };
let storage = {};
globalThis.localStorage = new Proxy(storage, {
  get: (_, name) =>
    ({ getItem: (key) => storage[key] ?? null, setItem: (key, text) => (storage[key] = text), removeItem: (key) => delete storage[key] })[name],
  ownKeys: () => Object.keys(storage),
  getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
});
const { drop, dropOld, get, put } = await import("../../../web/browser/draft_store.js");

test("a draft is there until a day has passed", () => {
  put("/hang", draft);
  assert.deepEqual(get("/hang", 23.9 * HOUR_MS), draft);
  assert.equal(get("/hang", 24 * HOUR_MS), undefined);
});

test("one form's draft is not another's", () => {
  put("/hang", draft);
  assert.equal(get("/weigh", 0), undefined);
});

test("a draft that is dropped is gone", () => {
  put("/hang", draft);
  drop("/hang");
  assert.equal(get("/hang", 0), undefined);
});

test("old drafts are cleared away, and nothing else", () => {
  put("/hang", draft);
  put("/weigh", { ...draft, at: Date.now() });
  localStorage.setItem("daybook-cookies", "{}");
  dropOld();
  assert.deepEqual(Object.keys(storage).sort(), ["daybook-cookies", "daybook-draft /weigh"]);
});

test("what no box takes is not kept, nor does a full device stop one from typing", () => {
  put("/long", { ...draft, texts: [["note", "x".repeat(20_001)]] });
  assert.equal(get("/long", 0), undefined);
  const { setItem } = localStorage;
  assert.ok(setItem);
  storage = new Proxy({}, { set: () => { throw new Error("full"); } });
  assert.doesNotThrow(() => put("/hang", draft));
  storage = {};
});

test("what cannot be read is no draft", () => {
  storage = { "daybook-draft /hang": "{" };
  assert.equal(get("/hang", 0), undefined);
});
