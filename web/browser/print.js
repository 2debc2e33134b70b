// Paper: what is folded is open on it, the photos are there, and the day of printing stands at the foot.

/** @type {HTMLDetailsElement[]} */
let unfolded = [];

export function printPages() {
  document.addEventListener("click", ({ target }) => target instanceof Element && target.closest("[data-print]") && printNow());
  addEventListener("beforeprint", unfold);
  addEventListener("afterprint", foldAgain);
}

async function printNow() {
  unfold();
  const photos = /** @type {NodeListOf<import("./photos.js").KeptPhoto>} */ (document.querySelectorAll("main kept-photo"));
  await Promise.all([...photos].map((photo) => photo.shown()));
  window.print();
}

function unfold() {
  const folds = /** @type {HTMLDetailsElement[]} */ ([...document.querySelectorAll("main details:not([open])")]);
  unfolded.push(...folds);
  for (const fold of folds) fold.open = true;
  const { lang } = document.documentElement;
  const day = new Date().toLocaleDateString(lang === "en" ? "en-GB" : lang, { dateStyle: "medium" }); // as the pages say it
  for (const each of document.querySelectorAll("[data-printed]")) each.textContent = day;
}

function foldAgain() {
  for (const fold of unfolded) fold.open = false;
  unfolded = [];
}
