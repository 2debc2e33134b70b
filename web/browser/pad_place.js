// Where the number keys stand: at the foot of what is typed, over nothing that one looks at while typing.

const LEAST_ROOM_PX = 150; // for the box with its label above the keys
const root = document.documentElement;

/** Above what is pinned at the foot; where that leaves no room for the box, right under it.
 * @type {(pad: HTMLElement, box: Field) => void} */
export function place(pad, box) {
  const field = box.closest(".field") ?? box;
  delete pad.dataset.short;
  stand(pad, box.form);
  const under = pinnedUnder(pad);
  const height = pad.offsetHeight;
  const isShort = innerHeight - under - height < LEAST_ROOM_PX;
  if (isShort) {
    pad.dataset.short = "";
    field.after(pad);
  }
  root.dataset.pad = "";
  root.style.setProperty("--under-pad", `${under}px`);
  root.style.setProperty("--pad-height", `${isShort ? 0 : height}px`);
  for (const each of [field, box]) each.scrollIntoView({ block: "nearest" }); // the box, where not all of it fits
}

/** @type {(pad: HTMLElement) => void} */
export function takeAway(pad) {
  pad.remove();
  delete root.dataset.pad;
}

/** Once there it is not moved: to move it is to end a press of its keys.
 * @type {(pad: HTMLElement, form: HTMLFormElement | null) => void} */
function stand(pad, form) {
  const own = form?.querySelector("[data-pad-place]") ?? form?.querySelector(".typing");
  const after = form?.querySelector(".figures, .actions");
  if (own || !after) {
    const parent = own ?? form;
    if (pad.parentElement !== parent) parent?.append(pad);
  } else if (after.previousElementSibling !== pad) after.before(pad);
}

/** How high the bars reach that are pinned where the keys would lie: the foot row, the form's buttons, the answer.
 * @type {(pad: HTMLElement) => number} */
function pinnedUnder(pad) {
  const { left, right } = pad.getBoundingClientRect();
  const bars = document.querySelectorAll("body > *, form > *, form > * > *");
  return [...bars].reduce((most, each) => {
    const { position, bottom } = getComputedStyle(each);
    if (each === pad || !["sticky", "fixed"].includes(position) || bottom === "auto") return most;
    const bar = each.getBoundingClientRect();
    const isAside = bar.height === 0 || bar.right <= left || bar.left >= right;
    return isAside ? most : Math.max(most, parseFloat(bottom) + bar.height);
  }, 0);
}
