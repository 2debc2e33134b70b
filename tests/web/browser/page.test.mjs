// Small parts of the page that need no page.
import assert from "node:assert/strict";
import test from "node:test";
import { bytesOf } from "../../../web/browser/bodies.js";
import { withCookies } from "../../../web/browser/cookies.js";
import "./words.mjs";

const listeners = {};
Object.assign(globalThis, {
  HTMLElement: class {},
  HTMLDetailsElement: class {},
  Element: class {},
  location: { pathname: "/batches/one/weigh" },
  document: { addEventListener: (name, act) => (listeners[name] = act), querySelectorAll: () => [] },
});
const { left } = await import("../../../web/browser/time_left.js");
const typed = await import("../../../web/browser/typed.js");

for (const [seconds, words] of [
  [-1, "The time is over."],
  [0, "The time is over."],
  [0.001, "0:01 left"],
  [59.2, "1:00 left"],
  [3599, "59:59 left"],
  [3600, "1:00:00 left"],
  [45_296, "12:34:56 left"],
]) {
  test(`${seconds} s are said as the server says them: ${words}`, () => assert.equal(left(seconds * 1000), words));
}

test("no moment has no words", () => assert.equal(left(NaN), ""));

test("cookies are replaced, added and taken away", () => {
  const lines = ["units=metric; Path=/; SameSite=Lax", "writer=; Max-Age=0", "theme=a=b"];
  assert.deepEqual(withCookies({ Accept: "*/*", Cookie: "units=us; writer=Ada" }, lines), {
    Accept: "*/*",
    Cookie: "units=metric; theme=a=b",
  });
});

test("a text too long goes one letter too long, so that the server refuses it; a file goes whole", async () => {
  const body = new FormData();
  body.append("note", "x".repeat(30_000));
  body.append("file", new Blob(["y".repeat(30_000)]), "log.csv");
  const { type, bytes } = await bytesOf("https://cellar.test/", "POST", body);
  const sent = await new Response(bytes, { headers: { "Content-Type": type } }).formData();
  assert.deepEqual([sent.get("note").length, sent.get("file").size], [20_001, 30_000]);
});

class Box extends globalThis.Element {
  constructor(value, more = {}) {
    super();
    Object.assign(this, { tagName: "INPUT", type: "text", id: "mass", name: "mass", value, ...more });
  }

  setAttribute(name, value) {
    this[name] = value;
  }
}

function morphed(oldNode, newNode, ...byHand) {
  typed.watchTyping();
  for (const target of byHand) listeners.input({ target });
  typed.beforeMorphNode(null, { oldNode, newNode });
  return [oldNode.value, newNode.value];
}

test("what was typed goes over a morph of its box", () => {
  const box = new Box("1.2");
  assert.deepEqual(morphed(box, new Box(""), box), ["1.2", "1.2"]);
});

test("a box that nobody touched follows the server", () => {
  const [, now] = morphed(new Box("1.2"), new Box("1.3"));
  assert.equal(now, "1.3");
});

test("what was typed into one box does not stand in another that takes its place", () => {
  const box = new Box("1.2");
  assert.deepEqual(morphed(box, new Box("", { id: "ph", name: "ph" }), box), ["", ""]);
});

test("a tick set by hand stays as it is", () => {
  const tick = { type: "checkbox", id: "brine", name: "brine" };
  const box = new Box("brined", { ...tick, checked: true });
  morphed(box, new Box("brined", { ...tick, checked: false }), box);
  assert.equal(box.checked, true);
});
