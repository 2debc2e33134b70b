// A log drawn into an element: panels under each other that move together, and a line of text to read them by.
import { panelsOf } from "./columns.js";
import { addPanel, build } from "./frame.js";
import { listen } from "./hand.js";
import { inkOf, onOtherInk, strokeOf } from "./ink.js";
import { openMoves } from "./moves.js";
import { drawPanel, LEFT, showReadings } from "./panel.js";
import { LONG_S } from "./running.js";
import { wordsFor } from "../words.js";
import { clock, reading } from "./moments.js";

const FIRST_HEIGHT = 230;
const OTHER_HEIGHT = 150;

/** log: as readColumns gives it, two rows at least. Ends with the signal.
 * @type {(element: HTMLElement, label: string, log: Log, signal: AbortSignal) => void} */
export function drawLog(element, label, log, signal) {
  const ink = inkOf(element, false);
  const shared = { ink, strokeOf: strokeOf(log.columns), right: widthOfNames(log.columns, ink, element.clientWidth) };
  const parts = build(element, label, log.headline);
  const panels = panelsOf(log.columns);
  const plots = drawPanels(parts, log, panels, element.clientWidth, shared);
  const field = () => ({
    left: parts.slider.getBoundingClientRect().left + LEFT,
    width: parts.slider.clientWidth - LEFT - shared.right,
  });
  /** @type {number | undefined} */
  let frame;
  const moves = openMoves(log.times, () => {
    tell(element, "moving");
    frame ??= requestAnimationFrame(paint);
  });

  function paint() {
    frame = undefined;
    for (const [at, plot] of plots.entries()) look(plot, panels[at].length, moves.view);
    say(parts, log, moves, field());
    queueMicrotask(() => tell(element, "still")); // the panels draw in a microtask, asked for before this one
  }

  function fit() {
    const width = element.clientWidth;
    if (width === 0 || width === plots[0].width) return;
    for (const plot of plots) plot.setSize({ width, height: plot.height });
    say(parts, log, moves, field());
  }

  parts.slider.setAttribute("aria-valuemax", `${log.times.length - 1}`);
  const tap = (/** @type {Event} */ { target }) => target instanceof HTMLButtonElement && moves.go(target.value);
  parts.buttons.addEventListener("click", tap, { signal });
  listen(parts.slider, field, moves, signal);
  onOtherInk((isForPaper) => {
    shared.ink = inkOf(element, isForPaper);
    for (const plot of plots) plot.redraw(false);
  }, signal);
  const watching = new ResizeObserver(fit);
  watching.observe(element);
  signal.addEventListener("abort", () => {
    watching.disconnect();
    if (frame !== undefined) cancelAnimationFrame(frame);
    for (const plot of plots) plot.destroy();
  });
  paint();
}

/**
 * Whether what is drawn is what was asked for: "waiting" for a log, "moving" until the next frame, "still". It stands
 * within the element, for a morph would take it off the element itself.
 * @type {(element: Element, state: "waiting" | "moving" | "still") => void}
 */
export function tell(element, state) {
  const figure = element.querySelector("figure");
  if (figure) figure.dataset.state = state;
}

/** @type {(parts: Parts, log: Log, panels: Column[][], width: number, shared: Shared) => uPlot[]} */
function drawPanels(parts, log, panels, width, shared) {
  return panels.map((columns, at, all) => {
    const place = { isFirst: at === 0, isLast: at === all.length - 1, height: at === 0 ? FIRST_HEIGHT : OTHER_HEIGHT };
    return drawPanel(addPanel(parts, log.titles[columns[0].unit]), log, columns, { ...place, width }, shared);
  });
}

/** @type {(plot: uPlot, columns: number, view: View) => void} */
function look(plot, columns, view) {
  const { from, to } = view;
  const { min, max } = plot.scales.x;
  showReadings(plot, columns, view);
  if (min !== from || max !== to) plot.setScale("x", { min: from, max: to });
}

/** @type {(parts: Parts, log: Log, moves: Moves, field: { width: number }) => void} */
function say({ sight, means, readout, slider, line }, { times, columns }, { view, row }, { width }) {
  means.hidden = view.to - view.from <= LONG_S;
  sight.textContent = wordsFor("in_sight", { start: clock(view.from), end: clock(view.to) });
  if (row === undefined) return;
  const share = (times[row] - view.from) / (view.to - view.from);
  readout.textContent = wordsFor("read_at", { moment: clock(times[row]), reading: reading(columns, row) });
  slider.setAttribute("aria-valuenow", `${row}`);
  slider.setAttribute("aria-valuetext", readout.textContent);
  line.hidden = share < 0 || share > 1;
  line.style.left = `${LEFT + share * width}px`;
}

/** @type {(columns: Column[], ink: Ink, width: number) => number} */
function widthOfNames(columns, ink, width) {
  const context = /** @type {CanvasRenderingContext2D} */ (document.createElement("canvas").getContext("2d"));
  context.font = `14px ${ink.family}`;
  const longest = Math.max(...columns.map(({ label }) => context.measureText(label).width));
  return Math.round(Math.min(longest + 12, width * 0.28));
}
