// A long log in little: the mean of some hours in place of the comb that the compressor draws, and how far that swings.

const HOUR_S = 3600;
export const WINDOW_S = 3 * HOUR_S; // more than one run of the compressor and its pause
/** With more than this in sight the teeth run together; a day shows them. */
export const LONG_S = 30 * HOUR_S;

/** Of the rows within the window about each. A gap stays one.
 * @type {(times: Float64Array, values: Float32Array) => Record<"mean" | "low" | "high", Float32Array>} */
export function running(times, values) {
  const mean = new Float32Array(values.length).fill(NaN);
  const low = mean.slice();
  const high = mean.slice();
  const lowest = extremes(values, (one, other) => one <= other);
  const highest = extremes(values, (one, other) => one >= other);
  let [first, next, sum, count] = [0, 0, 0, 0];
  for (let row = 0; row < values.length; row += 1) {
    for (; next < values.length && times[next] <= times[row] + WINDOW_S / 2; next += 1) {
      if (Number.isNaN(values[next])) continue;
      sum += values[next];
      count += 1;
      lowest.enter(next);
      highest.enter(next);
    }
    for (; times[first] < times[row] - WINDOW_S / 2; first += 1) {
      if (Number.isNaN(values[first])) continue;
      sum -= values[first];
      count -= 1;
    }
    if (Number.isNaN(values[row])) continue;
    mean[row] = sum / count;
    low[row] = values[lowest.since(first)];
    high[row] = values[highest.since(first)];
  }
  return { mean, low, high };
}

/** The row of the least, or greatest, of a window that moves on: those that another has overtaken are forgotten.
 * @param {Float32Array} values @param {(one: number, other: number) => boolean} isAhead */
function extremes(values, isAhead) {
  /** @type {number[]} */
  const rows = [];
  let head = 0;
  return {
    /** @type {(row: number) => void} */
    enter(row) {
      while (rows.length > head && isAhead(values[row], values[rows[rows.length - 1]])) rows.pop();
      rows.push(row);
    },
    /** @type {(first: number) => number} */
    since(first) {
      while (rows[head] < first) head += 1;
      return rows[head];
    },
  };
}
