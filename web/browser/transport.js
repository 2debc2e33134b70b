// htmx's fetch, answered by the worker. Requests that come before Python is ready wait in the worker's queue.
/* global ASSETS */
import { bytesOf } from "./bodies.js";
import { cookieHeader, keepCookies } from "./cookies.js";
import { readJournal } from "./journal.js";
import { keptAnswer } from "./keeping.js";
import { base, here, pathInside } from "./place.js";

const WALL_CLOCK = "2026-11-25T17:30:12.345".length;
const NO_BODY = [101, 204, 205, 304];

/** on: {progress, ready, news, saved, failed, stopped}, called with the worker's messages. Returns send(url, request).
 * @type {(on: Record<string, (message: any) => void>) => Send} */
export function openTransport(on) {
  const worker = new Worker(new URL(ASSETS.worker, `${location.origin}${base}/`), { type: "module" });
  /** @type {Map<number, Waiting>} */
  const waiting = new Map();
  /** @type {Promise<void> | undefined} */
  let reading;
  /** @type {string | undefined} */
  let stopped;
  let last = 0;

  worker.onerror = (event) => stop(event.message ?? "The worker could not be started.");
  worker.onmessage = ({ data }) => {
    if (data.type === "progress" && data.phase !== "files") reading ??= handOverJournal(worker);
    if (data.type === "answer" || data.type === "failed") settle(data);
    else if (data.type === "stopped") stop(data.report);
    else on[data.type](data);
  };
  worker.postMessage({ type: "start", base, touchPoints: navigator.maxTouchPoints });

  /** @type {(message: { type: string, id: number, answer: Answer, saved: number, report: string }) => void} */
  function settle({ type, id, answer, saved, report }) {
    const asked = waiting.get(id);
    waiting.delete(id);
    if (type === "failed") {
      on.failed({ saved, report });
      asked?.reject(new Error("The daybook could not answer."));
      return;
    }
    keepCookies(answer.headers.filter(([name]) => isSetCookie(name)).map(([, value]) => value));
    if (answer.saved > 0) on.saved(answer);
    asked?.resolve(responseOf(answer, asked));
  }

  /** @type {(report: string) => void} */
  function stop(report) {
    stopped ??= report;
    on.stopped({ report: stopped });
    for (const { reject } of waiting.values()) reject(new Error("The daybook stopped."));
    waiting.clear();
  }

  return async function send(url, { method = "GET", headers = {}, body = null, signal } = {}) {
    const path = pathInside(url);
    if (path === undefined) throw new Error(`${url} is not a page of the daybook.`);
    if (stopped) throw new Error("The daybook stopped.");
    signal?.throwIfAborted();
    const acted = localTime(new Date());
    const { type, bytes } = await bytesOf(url, method, body);
    signal?.throwIfAborted();
    const id = (last += 1);
    const request = {
      method,
      path,
      body: bytes,
      headers: {
        ...headers,
        ...(type && { "Content-Type": type }),
        Cookie: cookieHeader(),
        "Daybook-Now": acted,
        ...typedMoment(body, acted),
        "Daybook-Kept": keptAnswer(),
      },
    };
    return new Promise((resolve, reject) => {
      waiting.set(id, { resolve, reject, method, path, headers });
      signal?.addEventListener("abort", () => {
        if (!waiting.delete(id)) return;
        worker.postMessage({ type: "abort", id });
        reject(signal.reason instanceof Error ? signal.reason : new DOMException("Stopped.", "AbortError"));
      });
      worker.postMessage({ type: "request", id, request }, [bytes.buffer]);
    });
  };
}

/** While the worker starts Python, but not before its files have arrived: they come from the same disk.
 * @type {(worker: Worker) => Promise<void>} */
async function handOverJournal(worker) {
  const parts = await readJournal(base).catch(() => []); // the worker will meet the same trouble, and say it
  worker.postMessage({ type: "journal", parts });
}

/** @type {(answer: Answer, asked: Waiting) => Response} */
function responseOf(answer, asked) {
  const headers = new Headers(answer.headers.filter(([name]) => !isSetCookie(name)));
  if (answer.saved > 0) headers.set("Daybook-Saved", `${answer.saved}`);
  const step = historyStep(asked, answer);
  if (step) headers.set(...step);
  return new Response(NO_BODY.includes(answer.status) ? null : answer.body, { status: answer.status, headers });
}

/** What the answer does to the way back: a step for each new page, none for a form that stays where it is.
 * @type {(asked: Waiting, answer: Answer) => Header | undefined} */
function historyStep({ method, path, headers }, answer) {
  const there = base + answer.path;
  const isUnasked = "HX-History-Restore-Request" in headers || "Daybook-Refresh" in headers;
  if (answer.path !== path) return [isUnasked || there === here() ? "HX-Replace-Url" : "HX-Push-Url", there];
  if (method !== "GET") return ["HX-Push-Url", "false"];
  return "HX-Boosted" in headers && there === here() ? ["HX-Replace-Url", there] : undefined;
}

/** @type {(name: string) => boolean} */
function isSetCookie(name) {
  return name.toLowerCase() === "set-cookie";
}

/** Python knows no time zones: a moment typed into the form brings the offset that the device's clock had on that day.
 * @type {(body: Form, acted: string) => Head} */
function typedMoment(body, acted) {
  const isYesterday = body?.get("when") === "yesterday";
  const moment = new Date(isYesterday ? acted.slice(0, WALL_CLOCK) : `${body?.get("happened") || ""}`);
  if (isYesterday) moment.setDate(moment.getDate() - 1);
  return Number.isNaN(moment.getTime()) ? {} : { "Daybook-Then": localTime(moment) };
}

/** The device's own wall clock with its offset: 2026-11-25T17:30:12.345+01:00. @type {(date: Date) => string} */
export function localTime(date) {
  const offset = -date.getTimezoneOffset();
  const wall = new Date(date.getTime() + offset * 60_000).toISOString().slice(0, -1);
  /** @type {(number: number) => string} */
  const two = (number) => String(Math.trunc(number)).padStart(2, "0");
  return `${wall}${offset < 0 ? "-" : "+"}${two(Math.abs(offset) / 60)}:${two(Math.abs(offset) % 60)}`;
}
