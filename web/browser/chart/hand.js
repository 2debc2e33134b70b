// Fingers, mouse and keys on the chart. No movement without a button that does the same: the buttons are in frame.js.
import { moved, pinched } from "./view.js";

/**
 * field(): where the panels' field lies, {left, width} in the page's pixels. moves: see moves.js. One finger or the
 * mouse's button pans, two fingers pinch, a mouse points.
 * @type {(box: HTMLElement, field: () => { left: number, width: number }, moves: Moves, signal: AbortSignal) => void}
 */
export function listen(box, field, moves, signal) {
  /** @type {Map<number, { share: number, moment: number }>} */
  const held = new Map(); // pointer → {share of the width, moment under it}
  /** @type {(event: MouseEvent) => number} */
  const shareOf = (event) => (event.clientX - field().left) / field().width;
  /** @type {(share: number) => number} */
  const momentAt = (share) => moves.view.from + share * (moves.view.to - moves.view.from);
  const hold = () => held.forEach((each) => (each.moment = momentAt(each.share)));
  /** @type {<Name extends keyof HTMLElementEventMap>(name: Name, act: (event: HTMLElementEventMap[Name]) => void) => void} */
  const on = (name, act) => box.addEventListener(name, act, { signal });

  on("pointerdown", (event) => {
    if (event.button !== 0) return;
    box.setPointerCapture(event.pointerId);
    held.set(event.pointerId, { share: shareOf(event), moment: 0 });
    hold();
    moves.point(momentAt(shareOf(event)));
  });
  on("pointermove", (event) => {
    const share = shareOf(event);
    const finger = held.get(event.pointerId);
    if (finger) {
      finger.share = share;
      const [one, other] = held.values();
      if (other) moves.show(pinched([one.moment, other.moment], [one.share, other.share], moves.whole, moves.least));
      else moves.show(moved(moves.view, moves.whole, one.moment - momentAt(share)));
    }
    if (held.size < 2) moves.point(momentAt(share));
  });
  /** @type {(event: PointerEvent) => void} */
  const letGo = (event) => {
    held.delete(event.pointerId);
    hold();
  };
  on("pointerup", letGo);
  on("pointercancel", letGo);
  on("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !(event.key in KEYS)) return;
    event.preventDefault();
    KEYS[event.key](moves);
  });
}

/** @type {Record<string, (moves: Moves) => void>} */
const KEYS = {
  ArrowLeft: (moves) => moves.step(-1),
  ArrowDown: (moves) => moves.step(-1),
  ArrowRight: (moves) => moves.step(1),
  ArrowUp: (moves) => moves.step(1),
  Home: (moves) => moves.point(moves.view.from),
  End: (moves) => moves.point(moves.view.to),
  PageUp: (moves) => moves.go("Earlier"),
  PageDown: (moves) => moves.go("Later"),
  "+": (moves) => moves.go("In"),
  "-": (moves) => moves.go("Out"),
};
