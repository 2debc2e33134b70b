// One panel: the lines of one unit over the common time.
import uPlot from "uplot";
import { withGaps } from "./columns.js";
import { LONG_S, running } from "./running.js";
import { drawBands, drawEdges, drawLabels, drawMarks } from "./shading.js";
import { ticks, withMark } from "./moments.js";

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
  const { times } = whole;
  const means = times[times.length - 1] - times[0] > LONG_S ? columns.map(({ values }) => running(times, values)) : [];
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
    series: [{}, ...columns.map((column) => lineOf(column, shared)), ...means.flatMap((_, at) => meanOf(columns[at], shared))],
    bands: means.map((_, at) => swingOf(columns, at, shared)),
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
  const drawn = [...columns.map(({ values }) => values), ...means.flatMap(({ mean, low, high }) => [mean, low, high])];
  return new uPlot(options, [times, ...drawn.map(withGaps)], box);
}

/** What is in sight decides: the means of a long stretch, or every reading.
 * @type {(plot: uPlot, columns: number, view: View) => void} */
export function showReadings(plot, columns, { from, to }) {
  const isEvery = to - from <= LONG_S || plot.series.length === 1 + columns;
  if (plot.series[1].show === isEvery) return;
  plot.batch(() => {
    for (let at = 1; at < plot.series.length; at += 1) plot.setSeries(at, { show: at <= columns === isEvery });
  });
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

/** A mean, and the lowest and highest that its shade lies between. @type {(column: Column, shared: Shared) => uPlot.Series[]} */
function meanOf(column, shared) {
  const edge = { width: 0, points: { show: false }, show: false };
  return [{ ...lineOf(column, shared), width: 2, points: { show: false }, show: false }, edge, edge];
}

/** @type {(columns: Column[], at: number, shared: Shared) => uPlot.Band} */
function swingOf(columns, at, shared) {
  const mean = 1 + columns.length + 3 * at;
  const { colour } = shared.strokeOf(columns[at]);
  return { series: [mean + 2, mean + 1], fill: () => thin(shared.ink[colour]) };
}

/** On paper, and where the device sets the colours, there is no shade. @type {(colour: string) => string} */
function thin(colour) {
  return /^#[0-9a-f]{6}$/i.test(colour) ? `${colour}30` : "transparent";
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
