// What must hold between the page, Python and the disk: nothing is told as saved that is not, and nothing leads away.
import assert from "node:assert/strict";
import test from "node:test";
import { exchange } from "../../../web/browser/exchange.js";

globalThis.self = { location: { origin: "https://cellar.test" } };
const BASE = "/book";
const BODY = new Uint8Array();
const POST = { method: "POST", path: "/batches", headers: { Cookie: "units=us", "Content-Type": "text/plain" }, body: BODY };
const ENTRY = { id: "one" };

const says = (more) => ({ status: 200, headers: [], entries: [], files: [], body: BODY, ...more });

/** A host that answers in turn, and a disk; both write down what is done. */
function kitchen(answers, { commit = async (entries) => entries.length } = {}) {
  const done = [];
  const asked = [];
  const host = {
    answer(request) {
      asked.push(request);
      done.push("answer");
      return answers[Math.min(asked.length, answers.length) - 1];
    },
    give: (sha) => done.push(`give ${sha}`),
  };
  const journal = {
    alone: (work) => work(),
    news: async () => void done.push("news"),
    file: async () => undefined,
    commit: async (...what) => {
      done.push("commit");
      return commit(...what);
    },
  };
  return { done, asked, ask: (request = POST) => exchange(request, host, journal, BASE) };
}

test("an entry is committed before the answer, and read back from the disk", async () => {
  const { ask, done } = kitchen([says({ entries: [ENTRY], files: [{ sha: "ab", bytes: BODY }] })]);
  assert.equal((await ask()).saved, 1);
  assert.deepEqual(done, ["news", "answer", "commit", "give ab", "news"]);
});

test("what the disk refuses is asked once more with the reason, and nothing is saved", async () => {
  const refuse = async () => {
    throw new DOMException("", "QuotaExceededError");
  };
  const { ask, asked } = kitchen([says({ entries: [ENTRY] }), says({ status: 503 })], { commit: refuse });
  const { status, saved } = await ask();
  assert.deepEqual([status, saved], [503, 0]);
  assert.equal(asked[1].refused, "full");
});

test("a page that is only read may not write", async () => {
  const { ask, done } = kitchen([says({ entries: [ENTRY] })]);
  await assert.rejects(ask({ ...POST, method: "GET" }), /wants to write/);
  assert.ok(!done.includes("commit"));
});

test("a file that Python lacks is handed in and the same request asked again", async () => {
  const { ask, done, asked } = kitchen([{ wants: "ab" }, says()]);
  await ask();
  assert.deepEqual(done, ["news", "answer", "give ab", "answer"]);
  assert.equal(asked[0], asked[1]);
});

test("a redirect is followed by reading, with the cookies that came with it", async () => {
  const found = says({ status: 303, headers: [["Location", "/book/batches/one"], ["Set-Cookie", "units=metric; Path=/"]] });
  const { ask, asked } = kitchen([found, says()]);
  const answer = await ask();
  assert.deepEqual(answer.headers, [["Set-Cookie", "units=metric; Path=/"]]);
  const { method, path, headers } = asked[1];
  assert.deepEqual({ method, path, headers }, { method: "GET", path: "/batches/one", headers: { Cookie: "units=metric" } });
});

for (const away of ["https://elsewhere.test/book/", "/other/", "//elsewhere.test/"]) {
  test(`a redirect to ${away} is not followed, and the entry stays told as saved`, async () => {
    const { ask } = kitchen([says({ status: 303, headers: [["Location", away]], entries: [ENTRY] })]);
    await assert.rejects(ask(), (error) => error.saved === 1 && /leads away/.test(error.message));
  });
}

test("redirects that never end are answered after five", async () => {
  const { ask, asked } = kitchen([says({ status: 302, headers: [["Location", "/book/again"]] })]);
  assert.equal((await ask()).status, 302);
  assert.equal(asked.length, 6);
});
