// Where one is in a log: what is in sight of it, and the row that is read.
import { nearest } from "./columns.js";
import { moved, zoomed } from "./view.js";

const LEAST_ROWS = 10; // no nearer than so many
const STEPS = 100; // from one edge of what is in sight to the other, by an arrow key

/** changed(): something of it has moved. @param {Float64Array} times @param {() => void} changed */
export function openMoves(times, changed) {
  const last = times.length - 1;
  const whole = { from: times[0], to: times[last] };
  const least = (LEAST_ROWS * (whole.to - whole.from)) / last;

  const moves = {
    whole,
    least,
    view: whole,
    /** @type {number | undefined} */
    row: undefined,

    /** @type {(view: View) => void} */
    show(view) {
      moves.view = view;
      changed();
    },

    /** @type {(moment: number) => void} */
    point(moment) {
      const { from, to } = moves.view;
      moves.row = nearest(times, Math.min(Math.max(moment, from), to));
      changed();
    },

    /** direction: -1 or 1. One row at least. @type {(direction: number) => void} */
    step(direction) {
      const { from, to } = moves.view;
      if (moves.row === undefined) return moves.point((from + to) / 2);
      const next = nearest(times, times[moves.row] + (direction * (to - from)) / STEPS);
      return moves.point(times[next === moves.row ? Math.min(Math.max(next + direction, 0), last) : next]);
    },

    /** where: the name of a button. @type {(where: string) => void} */
    go(where) {
      const { view } = moves;
      const length = view.to - view.from;
      if (where === "All") moves.show(whole);
      if (where === "In") moves.show(zoomed(view, whole, 0.5, middle(), least));
      if (where === "Out") moves.show(zoomed(view, whole, 2, middle(), least));
      if (where === "Earlier") moves.show(moved(view, whole, -length / 2));
      if (where === "Later") moves.show(moved(view, whole, length / 2));
    },
  };

  /** One comes nearer to what one reads, if that is in sight. */
  function middle() {
    const { from, to } = moves.view;
    const moment = moves.row === undefined ? NaN : times[moves.row];
    return moment >= from && moment <= to ? moment : (from + to) / 2;
  }

  return moves;
}
