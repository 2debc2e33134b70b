// One request of the page: asked of Python, its entries committed, its redirects followed; then, only then, answered.
import { withCookies } from "./cookies.js";
import { reasonNotSaved } from "./store.js";

const MOST_HOPS = 5;
const REDIRECTS = [301, 302, 303, 307, 308];

/** request: {method, path, headers, body}. Resolves to {status, headers, body, path, saved}.
 * @type {(request: Asking, host: Host, journal: Journal, base: string) => Promise<Answer>} */
export async function exchange(request, host, journal, base) {
  const writes = request.method !== "GET" && request.method !== "HEAD";
  const first = writes ? await journal.alone(() => write(request, host, journal)) : await read(request, host, journal);
  try {
    return await follow(request, first, (next) => read(next, host, journal), base);
  } catch (error) {
    throw Object.assign(/** @type {Error} */ (error), { saved: first.saved });
  }
}

/** @type {(request: Asking, host: Host, journal: Journal) => Promise<Stored>} */
async function read(request, host, journal) {
  await journal.news();
  const answer = await ask(request, host, journal);
  if (hasToBeStored(answer)) throw new Error(`${request.method} ${request.path} wants to write.`);
  return { ...answer, saved: 0 };
}

/** @type {(request: Asking, host: Host, journal: Journal) => Promise<Stored>} */
async function write(request, host, journal) {
  await journal.news();
  const answer = await ask(request, host, journal);
  if (!hasToBeStored(answer)) return { ...answer, saved: 0 };
  let saved;
  try {
    saved = await journal.commit(answer.entries, answer.files);
  } catch (error) {
    return { ...(await ask({ ...request, refused: reasonNotSaved(error) }, host, journal)), saved: 0 };
  }
  for (const { sha, bytes } of answer.files) host.give(sha, bytes);
  await journal.news(); // reads back what was just written: what Python knows is what the disk holds
  return { ...answer, saved };
}

/** Python cannot wait for the disk: it breaks off where it lacks a file, and is asked once more when it has it.
 * @type {(request: Asking, host: Host, journal: Journal) => Promise<Said>} */
async function ask(request, host, journal) {
  let answer = host.answer(request);
  while (answer.wants) {
    host.give(answer.wants, await journal.file(answer.wants));
    answer = host.answer(request);
  }
  return answer;
}

/** @type {(answer: Said) => boolean} */
function hasToBeStored({ entries, files }) {
  return entries.length > 0 || files.length > 0;
}

/** fetch() would follow a redirect before the page sees it; so does the worker.
 * @type {(request: Asking, first: Stored, readNext: (next: Asking) => Promise<Said>, base: string) => Promise<Answer>} */
async function follow(request, first, readNext, base) {
  /** @type {Said} */
  let answer = first;
  let { path } = request;
  const cookies = setCookies(first);
  for (let hops = 0; REDIRECTS.includes(answer.status) && hops < MOST_HOPS; hops += 1) {
    path = target(answer, path, base);
    answer = await readNext({ ...request, ...get(request.headers, cookies), path });
    cookies.push(...setCookies(answer));
  }
  const { status, body } = answer;
  const others = answer.headers.filter(([name]) => !isSetCookie(name));
  const headers = [...others, ...cookies.map((value) => /** @type {Header} */ (["Set-Cookie", value]))];
  return { status, headers, body, path, saved: first.saved };
}

/** @type {(headers: Head, cookies: string[]) => Omit<Asking, "path">} */
function get(headers, cookies) {
  const kept = Object.entries(headers).filter(([name]) => !name.toLowerCase().startsWith("content-"));
  return { method: "GET", headers: withCookies(Object.fromEntries(kept), cookies), body: new Uint8Array() };
}

/** @type {(answer: Said, path: string, base: string) => string} */
function target(answer, path, base) {
  const location = answer.headers.find(([name]) => name.toLowerCase() === "location")?.[1] ?? "";
  const here = new URL(base + path, self.location.origin);
  const there = new URL(location, here);
  if (there.origin !== here.origin || !there.pathname.startsWith(`${base}/`)) throw new Error(`${path} leads away.`);
  return there.pathname.slice(base.length) + there.search;
}

/** @type {(answer: Said) => string[]} */
function setCookies(answer) {
  return answer.headers.filter(([name]) => isSetCookie(name)).map(([, value]) => value);
}

/** @type {(name: string) => boolean} */
function isSetCookie(name) {
  return name.toLowerCase() === "set-cookie";
}
