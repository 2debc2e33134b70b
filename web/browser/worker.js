// The worker: Python, the journal on the device, and one request of the page after the other.
//
// From the page: {type: "start", base, touchPoints}, {type: "journal", parts}, {type: "request", id, request},
// {type: "abort", id}.
// To the page: {type: "progress", phase, done, total}, {type: "ready", marks}, {type: "answer", id, answer},
// {type: "failed", id, saved, report}, {type: "news"}, {type: "stopped", report}.
/* global BUILD_ID */
import { onProgress } from "./assets.js";
import { exchange } from "./exchange.js";
import { openJournal } from "./journal.js";
import { beginFetching, startPython } from "./python.js";

const PAUSE_MS = 30; // time for a tap to get in between

performance.mark("daybook:worker");
const files = beginFetching();
/** @type {Set<number>} */
const dropped = new Set();
/** @type {(parts: Part[]) => void} */
let giveEarly;
/** @type {Promise<Part[]>} */
const early = new Promise((resolve) => (giveEarly = resolve)); // the journal, as the page has read it
let base = "";
let isCold = true;
/** @type {Host | undefined} */
let host;
/** @type {Journal} */
let journal;
/** @type {Promise<void>} */
let queue;

self.onmessage = ({ data }) => {
  if (data.type === "start") queue = start(data).catch(stop);
  else if (data.type === "journal") giveEarly(data.parts);
  else if (data.type === "abort") dropped.add(data.id);
  else if (data.type === "request") queue = queue.then(() => serve(data.id, data.request));
};

/** @type {(message: { base: string, touchPoints: number }) => Promise<void>} */
async function start({ base: path, touchPoints }) {
  base = path;
  journal = openJournal(base, early, () => say({ type: "news" }));
  onProgress(({ done, total }) => say({ type: "progress", phase: done < total ? "files" : "python", done, total }));
  host = await startPython(files, touchPoints);
  if (host.start(base, BUILD_ID) !== BUILD_ID) throw new Error("Python answered for another build.");
  performance.mark("daybook:python");
  say({ type: "progress", phase: "journal", done: 0, total: 1 });
  await journal.begin(host.learn);
  performance.mark("daybook:journal");
  say({ type: "ready", marks: marks() });
}

/** @type {(id: number, request: Asking) => Promise<void>} */
async function serve(id, request) {
  if (!host) return;
  if (dropped.delete(id)) return; // a figure asked for while typing, and by now typed over
  try {
    const answer = await exchange(request, host, journal, base);
    say({ type: "answer", id, answer }, [answer.body.buffer]);
    if (isCold) warmUp();
  } catch (/** @type {any} */ error) {
    say({ type: "failed", id, saved: error.saved ?? 0, report: reportOf(error) });
    if (error.pyodide_fatal_error) stop(error);
  }
}

/** Between two requests Python imports the screens that nobody has asked for yet, one at a time. */
function warmUp() {
  isCold = false;
  setTimeout(() => {
    queue = queue.then(() => {
      if (host && warmedOne()) warmUp();
    });
  }, PAUSE_MS);
}

function warmedOne() {
  try {
    return host !== undefined && host.warm() > 0;
  } catch {
    return false; // who asks for that screen will be told
  }
}

/** @type {(error: unknown) => void} */
function stop(error) {
  host = undefined;
  say({ type: "stopped", report: reportOf(error) });
}

/** @type {(error: any) => string} */
function reportOf(error) {
  const said = `${error}`; // where Safari's stack does not begin with it
  const stack = error?.stack ?? "";
  return `${stack.startsWith(said) ? "" : `${said}\n`}${stack}\nbuild ${BUILD_ID}\n${navigator.userAgent}`;
}

function marks() {
  const all = performance.getEntriesByType("mark").filter((mark) => mark.name.startsWith("daybook:"));
  return Object.fromEntries(all.map((mark) => [mark.name.slice("daybook:".length), Math.round(mark.startTime)]));
}

/** @type {(message: object, transfer?: Transferable[]) => void} */
function say(message, transfer = []) {
  self.postMessage(message, { transfer });
}
