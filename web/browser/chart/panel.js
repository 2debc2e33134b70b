// One panel: the lines of one unit over the common time.
import uPlot from "uplot";
import { withGaps } from "./columns.js";
import { drawBands, drawEdges, drawLabels, drawMarks } from "./shading.js";
import { ticks, withMark } from "./words.js";

const MINUTE_S = 60;
const HOUR_S = 3600;
const DAY_S = 86_400;
const STEPS_S = [
  ...[1, 2, 5, 10, 15, 30].map((minutes) => minutes * MINUTE_S),
  ...[1, 2, 3, 6, 12].map((hours) => hours * HOUR_S),
  ...[1, 2, 7, 14, 28].map((days) => days * DAY_S),
];
export const LEFT = 56; // CSS pixels, for the figures of the scale
const TOP = 20; // for the words of marks
const BOTTOM = 46; // for hour and day
const FONT = 14;

/** whole: {headline, bands, marks, times, columns}. shared: {ink, right, strokeOf}, ink as it is now.
 * @type {(box: HTMLElement, whole: Log, columns: Column[], place: Place, shared: Shared) => uPlot} */
export function drawPanel(box, whole, columns, { isFirst, isLast, height, width }, shared) {
  const bands = whole.bands.filter((band) => columns.some(({ quantity }) => quantity === band.quantity));
  /** @type {(name: string) => () => string} */
  const ink = (name) => () => shared.ink[name];
  const grid = { stroke: ink("rule"), width: 1 };
  /** @type {uPlot.Options} */
  const options = {
    width,
    height: height + (isFirst ? TOP : 0) + (isLast ? BOTTOM : 0),
    padding: [isFirst ? TOP : 8, shared.right, isLast ? 0 : 8, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: { x: { time: false }, y: { range: (_, low, high) => rangeOf(low, high, bands) } },
    axes: [
      {
        ...axis(shared),
        grid,
        incrs: STEPS_S,
        space: 76,
        size: isLast ? BOTTOM : 0,
        values: isLast ? (_, moments) => ticks(moments) : () => [],
      },
      { ...axis(shared), grid, size: LEFT, space: 44, values: (_, figures) => figures.map((each) => withMark(`${each}`)) },
    ],
    series: [{}, ...columns.map((column) => lineOf(column, shared))],
    hooks: {
      drawClear: [(plot) => drawBands(plot, bands, shared.ink)],
      draw: [
        (plot) => {
          drawEdges(plot, bands, shared.ink);
          drawMarks(plot, whole.marks, isFirst, shared.ink);
          drawLabels(plot, columns, whole.marks, isFirst, shared);
        },
      ],
    },
  };
  return new uPlot(options, [whole.times, ...columns.map(({ values }) => withGaps(values))], box);
}

/** @type {(shared: Shared) => uPlot.Axis} */
function axis(shared) {
  return { stroke: () => shared.ink.faint, font: `${FONT}px ${shared.ink.family}`, ticks: { show: false }, gap: 6 };
}

/** @type {(column: Column, shared: Shared) => uPlot.Series} */
function lineOf(column, shared) {
  const { colour, dash } = shared.strokeOf(column);
  return { stroke: () => shared.ink[colour], width: 1.25, dash, points: { size: 4 } };
}

/** The band is always in sight, and a still air is no drama.
 * @type {(low: number, high: number, bands: Band[]) => uPlot.Range.MinMax} */
function rangeOf(low, high, bands) {
  const lows = bands.map((band) => band.low);
  const highs = bands.map((band) => band.high);
  const [least, most] = [Math.min(low ?? Infinity, ...lows), Math.max(high ?? -Infinity, ...highs)];
  if (!Number.isFinite(least) || !Number.isFinite(most)) return [0, 1];
  const margin = Math.max((most - least) * 0.08, 0.2);
  return [least - margin, most + margin];
}
