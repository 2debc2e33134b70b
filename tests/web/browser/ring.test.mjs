// The end of a timed step, heard: on a page that is none, with a clock that is moved by hand.
import assert from "node:assert/strict";
import test, { beforeEach, mock } from "node:test";

class HTMLFormElement {
  constructor(dataset) {
    this.dataset = dataset;
  }
}
const NOON = Date.parse("2026-11-25T12:00:00Z");
const IN_A_MINUTE = "2026-11-25T12:01:00Z";
const shown = new Set();
const heard = { contexts: 0, beeps: 0, shakes: 0, asked: 0, notices: [] };
const listeners = {};
const node = () => ({ gain: { setValueAtTime() {} }, frequency: {}, connect: (next) => next, start: () => (heard.beeps += 1), stop() {} });
class AudioContext {
  currentTime = 0;
  constructor() {
    heard.contexts += 1;
  }
  resume() {}
  createOscillator = node;
  createGain = node;
}
const Notification = { permission: "default", requestPermission: () => (heard.asked += 1) };
const registration = { showNotification: (title, { body }) => heard.notices.push(`${title} ${body}`) };
Object.assign(globalThis, {
  HTMLFormElement,
  AudioContext,
  Notification,
  window: { AudioContext, Notification },
  document: {
    addEventListener: (name, act) => (listeners[name] = act),
    querySelector: (css) => (shown.has(css) ? {} : null),
  },
});
const device = { vibrate: () => (heard.shakes += 1), serviceWorker: { getRegistration: async () => registration } };
Object.defineProperty(globalThis, "navigator", { value: device });
mock.timers.enable({ apis: ["setTimeout", "Date"], now: NOON });
const { askToRing, callOff, ringAt } = await import("../../../web/browser/ring.js");
askToRing();

beforeEach(() => {
  Object.assign(heard, { contexts: 0, beeps: 0, shakes: 0, asked: 0, notices: [] });
  shown.clear();
  Notification.permission = "default";
  mock.timers.setTime(NOON);
});

test("without a tap that starts a time no sound is made, and nothing is asked", () => {
  listeners.submit({ target: new HTMLFormElement({}) });
  ringAt(IN_A_MINUTE, "Keep it wet.", "The time is over.");
  mock.timers.tick(61_000);
  assert.deepEqual([heard.contexts, heard.asked, heard.beeps, heard.shakes], [0, 0, 0, 1]);
});

test("the tap that starts the time is its leave to sound, and asks for notices", () => {
  listeners.submit({ target: new HTMLFormElement({ rings: "" }) });
  assert.deepEqual([heard.contexts, heard.asked], [1, 1]);
});

test("it rings at its moment, once, and says what is over where it may", async () => {
  Notification.permission = "granted";
  for (let drawn = 0; drawn < 2; drawn += 1) ringAt(IN_A_MINUTE, "Keep it wet.", "The time is over.");
  mock.timers.tick(59_999);
  assert.equal(heard.beeps, 0);
  mock.timers.tick(1);
  await registration;
  await registration;
  assert.deepEqual([heard.beeps, heard.shakes, heard.notices], [1, 1, ["Keep it wet. The time is over."]]);
});

test("a time that is over when its page opens does not ring", () => {
  ringAt("2026-11-25T11:00:00Z", "Keep it wet.", "The time is over.");
  mock.timers.tick(3_600_000);
  assert.equal(heard.beeps, 0);
});

for (const [where, page, beeps] of [
  ["on the page of its run it was undone: silent", ["[data-run]"], 0],
  ["on the page of its run it is shown still: it rings", ["[data-run]", "time-left"], 1],
  ["on another page it rings", [], 1],
]) {
  test(`a time that is shown no longer, ${where}`, () => {
    ringAt(IN_A_MINUTE, "Keep it wet.", "The time is over.");
    page.forEach((css) => shown.add(css));
    callOff();
    mock.timers.tick(61_000);
    assert.equal(heard.beeps, beeps);
  });
}
