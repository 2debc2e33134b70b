// What lies under and beside the lines: the band one wants, what happened when, and the names at their ends.

const FONT = 14;
const LINE = 17;
const STRIP = 6; // the cooling runs, along the foot
/** @type {Record<string, string>} */
const COLOURS = { cooling: "edge", defrost: "ochre", door: "accent", settled: "moss" };

/** @type {(plot: uPlot, bands: Band[], ink: Ink) => void} */
export function drawBands(plot, bands, ink) {
  on(plot, (context, { left, width }) => {
    for (const { low, high } of bands) {
      const [top, bottom] = [high, low].map((value) => plot.valToPos(value, "y", true));
      context.fillStyle = ink.moss;
      context.globalAlpha = 0.14;
      context.fillRect(left, top, width, bottom - top);
    }
  });
}

/** Over the lines, for many of them hide the band. @type {(plot: uPlot, bands: Band[], ink: Ink) => void} */
export function drawEdges(plot, bands, ink) {
  on(plot, (context, { left, width }) => {
    context.strokeStyle = ink.moss;
    context.setLineDash([8 * devicePixelRatio, 6 * devicePixelRatio]);
    for (const edge of bands.flatMap(({ low, high }) => [low, high])) {
      const y = plot.valToPos(edge, "y", true);
      context.beginPath();
      context.moveTo(left, y);
      context.lineTo(left + width, y);
      context.stroke();
    }
  });
}

/** @type {(plot: uPlot, marks: Mark[], isFirst: boolean, ink: Ink) => void} */
export function drawMarks(plot, marks, isFirst, ink) {
  const dots = devicePixelRatio;
  on(plot, (context, { left, top, width, height }) => {
    for (const { kind, from, to } of marks) {
      const [start, end] = [from, to ?? from].map((moment) => plot.valToPos(moment, "x", true));
      if (end < left || start > left + width) continue;
      const isStrip = kind === "cooling";
      context.fillStyle = ink[COLOURS[kind] ?? "edge"];
      context.globalAlpha = isStrip || kind === "settled" ? 1 : 0.22;
      const y = isStrip ? top + height - STRIP * dots : top;
      context.fillRect(start, y, Math.max(end - start, (kind === "settled" ? 2 : 1) * dots), isStrip ? STRIP * dots : height);
    }
  });
  if (isFirst) drawWords(plot, marks.filter(({ kind }) => kind !== "cooling"), ink);
}

/** Over the panel, each where its mark begins; one that would run into the last is left out.
 * @type {(plot: uPlot, marks: Mark[], ink: Ink) => void} */
function drawWords(plot, marks, ink) {
  const { context, left, top, width, dots } = brush(plot, ink);
  let free = left;
  for (const { kind, from, to, words } of [...marks].sort((one, other) => one.from - other.from)) {
    if (plot.valToPos(to ?? from, "x", true) < left) continue;
    const start = Math.max(plot.valToPos(from, "x", true), left);
    const end = start + context.measureText(words).width;
    if (start < free || end > left + width + 40 * dots) continue;
    context.fillStyle = ink[COLOURS[kind] ?? "faint"];
    context.textBaseline = "bottom";
    context.fillText(words, start, top - 3 * dots);
    free = end + 8 * dots;
  }
  context.restore();
}

/** Each line's name at its end, moved apart where two would lie on each other.
 * @type {(plot: uPlot, columns: Column[], marks: Mark[], isFirst: boolean, shared: Shared) => void} */
export function drawLabels(plot, columns, marks, isFirst, { ink, right, strokeOf }) {
  const { context, left, top, width, height, dots } = brush(plot, ink);
  const labels = columns.flatMap((column, at) => {
    const value = lastInSight(plot, plot.series[at + 1].show ? at + 1 : 1 + columns.length + 3 * at);
    return value == null ? [] : [{ words: column.label, colour: strokeOf(column).colour, y: plot.valToPos(value, "y", true) }];
  });
  const cooling = isFirst && marks.find(({ kind }) => kind === "cooling");
  if (cooling) labels.push({ words: cooling.words, colour: "faint", y: top + height - (STRIP / 2) * dots });
  context.textBaseline = "middle";
  for (const { words, colour, y } of apart(labels, top, top + height, LINE * dots)) {
    context.fillStyle = ink[colour];
    context.fillText(words, left + width + 6 * dots, y, (right - 8) * dots);
  }
  context.restore();
}

/** @type {(plot: uPlot, series: number) => number | undefined} */
function lastInSight(plot, series) {
  const [from, to] = plot.series[0].idxs ?? [0, -1];
  for (let row = to; row >= from; row -= 1) {
    const value = plot.data[series][row];
    if (value != null) return value;
  }
  return undefined;
}

/** @type {(labels: Label[], top: number, bottom: number, line: number) => Label[]} */
function apart(labels, top, bottom, line) {
  const placed = [...labels].sort((one, other) => one.y - other.y);
  let free = top + line / 2;
  for (const label of placed) {
    label.y = Math.max(label.y, free);
    free = label.y + line;
  }
  let lowest = bottom;
  for (const label of placed.reverse()) {
    label.y = Math.min(label.y, lowest);
    lowest = label.y - line;
  }
  return placed;
}

/** Within the panel's field and with nothing left behind.
 * @type {(plot: uPlot, paint: (context: CanvasRenderingContext2D, box: uPlot.BBox) => void) => void} */
function on(plot, paint) {
  const { left, top, width, height } = plot.bbox;
  const context = plot.ctx;
  context.save();
  context.beginPath();
  context.rect(left, top, width, height);
  context.clip();
  paint(context, plot.bbox);
  context.restore();
}

/** @param {uPlot} plot @param {Ink} ink */
function brush(plot, ink) {
  const context = plot.ctx;
  const dots = devicePixelRatio;
  context.save();
  context.font = `${FONT * dots}px ${ink.family}`;
  context.textAlign = "left";
  return { context, dots, ...plot.bbox };
}
