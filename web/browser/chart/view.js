// What is in sight of the whole: {from, to} in seconds. Every way of moving gives another view, within the whole.

/** factor: below 1 one comes nearer. about: the moment that stays where it is. least: seconds.
 * @type {(view: View, whole: View, factor: number, about: number, least: number) => View} */
export function zoomed(view, whole, factor, about, least) {
  const length = Math.max(least, (view.to - view.from) * factor);
  const share = (about - view.from) / (view.to - view.from);
  const from = about - share * length;
  return within({ from, to: from + length }, whole);
}

/** @type {(view: View, whole: View, seconds: number) => View} */
export function moved(view, whole, seconds) {
  return within({ from: view.from + seconds, to: view.to + seconds }, whole);
}

/** Two fingers hold two moments; now they are at these shares (0 to 1) of the width.
 * @type {(moments: number[], shares: number[], whole: View, least: number) => View} */
export function pinched([one, other], [oneShare, otherShare], whole, least) {
  const apart = Math.abs(otherShare - oneShare);
  const length = Math.max(least, Math.abs(other - one) / Math.max(apart, 0.01));
  const from = (one + other) / 2 - ((oneShare + otherShare) / 2) * length;
  return within({ from, to: from + length }, whole);
}

/** @type {(view: View, whole: View) => View} */
function within({ from, to }, whole) {
  const length = Math.min(to - from, whole.to - whole.from);
  const start = Math.min(Math.max(from, whole.from), whole.to - length);
  return { from: start, to: start + length };
}
