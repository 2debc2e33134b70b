// The page: htmx, with the worker as its server.
import htmx from "htmx.org";
import * as awake from "./awake.js";
import * as charts from "./charts.js";
import { cookie } from "./cookies.js";
import { notify, render, withdraw } from "./device.js";
import { saveDownloads } from "./downloads.js";
import * as drafts from "./drafts.js";
import * as focus from "./focus.js";
import { openWhatIsLedTo } from "./folds.js";
import { askToKeep, lookAgain } from "./keeping.js";
import * as pad from "./pad.js";
import { takePhotos } from "./photos.js";
import { here } from "./place.js";
import { printPages } from "./print.js";
import { saveFromDisk } from "./rescue.js";
import { askToRing } from "./ring.js";
import { selectWhatIsThere } from "./selecting.js";
import { startOver } from "./start_over.js";
import { sayIt, showProgress, showStopped } from "./starting.js";
import * as taps from "./taps.js";
import { countDown } from "./time_left.js";
import { openTransport } from "./transport.js";
import * as typed from "./typed.js";
import { keepUpToDate } from "./update.js";
import { wordsFor } from "./words.js";

const UNASKED = { "Daybook-Refresh": "yes" };
/** @type {() => void} */
let finish;
let isAnswerToForm = false;
const ready = new Promise((/** @type {(_: void) => void} */ resolve) => (finish = resolve));
const send = openTransport({ progress: showProgress, ready: open, news: refresh, saved, failed, stopped });
window.daybook = { ready, send }; // for tests and measuring

htmx.registerExtension("daybook", {
  htmx_before_request: (/** @type {Element} */ _, /** @type {Swap} */ { ctx }) => {
    ctx.fetch = send;
  },
  htmx_before_morph_node: (/** @type {Element} */ element, /** @type {Morph} */ detail) => {
    typed.beforeMorphNode(element, detail);
    pad.beforeMorphNode(element, detail);
  },
  htmx_before_swap: (/** @type {Element} */ element, /** @type {Swap} */ detail) => {
    typed.beforeSwap(element, detail);
    drafts.beforeSwap(element, detail);
    focus.beforeSwap(element, detail);
  },
  htmx_after_swap: (/** @type {Element} */ element, /** @type {Swap} */ detail) => {
    typed.afterSwap();
    drafts.afterSwap();
    taps.afterSwap(element, detail);
    awake.afterSwap();
    charts.afterSwap();
    withdraw("failed");
    render();
    applyTheme();
    isAnswerToForm = detail.ctx.request.method !== "GET";
    focus.afterSwap(element, detail);
    pad.afterSwap();
  },
});

sayIt();
fixLinks();
startOver();
taps.ignoreSecondTaps();
selectWhatIsThere();
countDown();
openWhatIsLedTo();
askToRing();
typed.watchTyping();
drafts.keepDrafts();
pad.openPad();
awake.keepAwake();
takePhotos();
printPages();
saveDownloads(send, (text) => notify("download", { text }));
lookAgain();

/** @type {(message: { marks: Record<string, number> }) => Promise<void>} */
async function open({ marks }) {
  await draw();
  window.daybook.marks = marks;
  window.daybook.startedInMs = Math.round(performance.now());
  performance.measure("daybook:start", { start: 0 });
  document.documentElement.dataset.open = "";
  finish();
  keepUpToDate();
}

/** The shell's links are relative, to fit any path, and the address is about to change under them. */
function fixLinks() {
  for (const link of document.querySelectorAll("link")) {
    if (/icon|manifest/.test(link.rel)) link.setAttribute("href", link.href);
  }
}

function draw() {
  return htmx.ajax("GET", here(), { target: "body", swap: "innerMorph", headers: UNASKED });
}

/** Another tab has written. A form half filled in, or one that has just been answered, is left as it is. */
function refresh() {
  if (isAnswerToForm || typed.isHalfFilled() || !("open" in document.documentElement.dataset)) return;
  draw();
}

async function saved() {
  const answer = await askToKeep();
  if (answer === "yes") notify("kept", { text: wordsFor("kept") });
  if (answer === "no") notify("kept", { text: wordsFor("not_kept") });
}

/** @type {(message: { saved: number, report: string }) => void} */
function failed({ saved: count, report }) {
  const text = wordsFor(count > 0 ? "saved_unshown" : "failed");
  notify("failed", { text, detail: report });
}

/** @type {(message: { report: string }) => void} */
function stopped({ report }) {
  showStopped();
  notify("reload", {
    text: wordsFor("stopped"),
    button: wordsFor("open_again"),
    act: () => location.reload(),
    detail: report,
  });
  notify("rescue", { text: wordsFor("rescue"), button: wordsFor("save_copy"), act: rescue });
  keepUpToDate();
}

function rescue() {
  saveFromDisk().catch(() => notify("download", { text: wordsFor("no_file") }));
}

function applyTheme() {
  const theme = cookie("theme");
  if (theme) document.documentElement.dataset.theme = theme;
}
