// A log as it is sent, and where one is in it.
import assert from "node:assert/strict";
import test from "node:test";
import { nearest, panelsOf, readColumns, withGaps } from "../../../web/browser/chart/columns.js";
import { openMoves } from "../../../web/browser/chart/moves.js";
import { pinched, zoomed } from "../../../web/browser/chart/view.js";
import { clock, reading, ticks } from "../../../web/browser/chart/moments.js";
import "./words.mjs";

const MIDNIGHT = Date.UTC(2026, 10, 25) / 1000;

/** The same bytes that the application sends. */
function sent(header, times, ...columns) {
  const written = new TextEncoder().encode(JSON.stringify(header).padEnd(1024));
  const words = written.slice(0, 1020); // so that the times begin at a multiple of 8
  const length = new Uint8Array(new Uint32Array([words.length]).buffer);
  const numbers = [new Float64Array(times), ...columns.map((values) => new Float32Array(values))];
  return new Blob([length, words, ...numbers]).arrayBuffer();
}

const column = (name, quantity, unit, values) => ({ name, quantity, unit, values: Float32Array.from(values) });

test("columns come out as they went in, each with its own values", async () => {
  const columns = [{ name: "left", quantity: "temperature", unit: "°C" }, { name: "left", quantity: "humidity", unit: "%" }];
  const log = readColumns(await sent({ rows: 2, columns, headline: "Two days" }, [60, 120], [12.5, NaN], [75, 76]));
  assert.deepEqual([...log.times], [60, 120]);
  assert.deepEqual(log.columns.map(({ quantity, values }) => [quantity, ...values]), [
    ["temperature", 12.5, NaN],
    ["humidity", 75, 76],
  ]);
  assert.deepEqual([log.headline, log.bands, log.marks], ["Two days", [], []]);
});

test("what has one unit has one panel, in the order of the first of each", () => {
  const columns = [column("a", "temperature", "°C", []), column("a", "humidity", "%", []), column("a", "dew point", "°C", [])];
  assert.deepEqual(panelsOf(columns).map((each) => each.map(({ quantity }) => quantity)), [
    ["temperature", "dew point"],
    ["humidity"],
  ]);
});

test("a gap is null to the drawing", () => {
  assert.deepEqual(withGaps(Float32Array.of(1, NaN, 2)), [1, null, 2]);
});

for (const [moment, row] of [[-5, 0], [4.9, 0], [5.1, 1], [10, 1], [14.9, 1], [25.1, 3], [99, 3]]) {
  test(`the row next to ${moment} is ${row}`, () => {
    assert.equal(nearest(Float64Array.of(0, 10, 20, 30), moment), row);
  });
}

test("one comes nearer about the moment under the finger, and never out of the whole", () => {
  const whole = { from: 0, to: 100 };
  assert.deepEqual(zoomed(whole, whole, 0.5, 25, 1), { from: 12.5, to: 62.5 });
  assert.deepEqual(zoomed({ from: 80, to: 100 }, whole, 2, 100, 1), { from: 60, to: 100 });
  assert.deepEqual(zoomed({ from: 40, to: 50 }, whole, 0.01, 45, 5), { from: 42.5, to: 47.5 });
});

test("two fingers that meet do not divide by nothing", () => {
  assert.deepEqual(pinched([40, 60], [0.5, 0.5], { from: 0, to: 100 }, 1), { from: 0, to: 100 });
});

test("an arrow key moves by one row at least, and stays within the log", () => {
  const moves = openMoves(Float64Array.from({ length: 50 }, (_, at) => at), () => {});
  moves.point(10);
  moves.step(1);
  assert.equal(moves.row, 11);
  moves.point(0);
  moves.step(-1);
  assert.equal(moves.row, 0);
});

test("In comes nearer to the row that is read", () => {
  const moves = openMoves(Float64Array.from({ length: 101 }, (_, at) => at), () => {});
  moves.point(20);
  moves.go("In");
  assert.deepEqual(moves.view, { from: 10, to: 60 });
  moves.go("All");
  assert.deepEqual(moves.view, { from: 0, to: 100 });
});

test("moments are said by the log's own clock", () => {
  assert.equal(clock(MIDNIGHT + 3660), "25 Nov 2026, 01:01");
  assert.deepEqual(ticks([MIDNIGHT - 3600, MIDNIGHT, MIDNIGHT + 3600]), ["23:00\n24 Nov", "25 Nov", "01:00"]);
});

test("a row is read probe by probe, and a gap is no figure", () => {
  const columns = [column("Upper", "temperature", "°C", [12.71]), column("Upper", "dew point", "°C", [NaN])];
  assert.equal(reading([...columns, column("Lower", "humidity", "%", [75.06])], 0), "Upper 12.7\u00a0°C, dew point —; Lower 75.1\u00a0%");
});

const { LONG_S, running, WINDOW_S } = await import("../../../web/browser/chart/running.js");

/** A tooth an hour, of 10 to 14, a row a minute. */
const COMB = Array.from({ length: 600 }, (_, row) => 10 + (4 * (row % 60)) / 59);
const MINUTES = Float64Array.from(COMB, (_, row) => 60 * row);

test("over a window of whole teeth the mean is flat and the shade as high as a tooth", () => {
  const { mean, low, high } = running(MINUTES, Float32Array.from(COMB));
  for (let row = WINDOW_S / 120; row < 600 - WINDOW_S / 120; row += 1) {
    assert.ok(Math.abs(mean[row] - 12) < 0.05, `${row}: ${mean[row]}`);
    assert.deepEqual([low[row], high[row]], [10, 14]);
  }
});

test("lowest, mean and highest are those of the rows within the window, however the rows lie", () => {
  const times = Float64Array.from([0, 100, 5000, 5100, 5500, 20_000, 20_001, 31_000]);
  const values = Float32Array.from([3, 9, NaN, 1, 7, 4, 2, 8]);
  const { mean, low, high } = running(times, values);
  times.forEach((at, row) => {
    const near = [...values].filter((each, other) => !Number.isNaN(each) && Math.abs(times[other] - at) <= WINDOW_S / 2);
    if (Number.isNaN(values[row])) return assert.deepEqual([mean[row], low[row], high[row]], [NaN, NaN, NaN]);
    assert.deepEqual([low[row], high[row]], [Math.min(...near), Math.max(...near)]);
    return assert.ok(Math.abs(mean[row] - near.reduce((sum, each) => sum + each) / near.length) < 1e-5);
  });
});

test("two days are seen as a mean, one day reading by reading", () => {
  assert.ok(LONG_S < 48 * 3600 && LONG_S > 24 * 3600);
});
