// Starting over: the page deletes what it keeps. It was asked for on a page of its own, which offers a copy first.
import { forgetBook, onEmptied } from "./journal.js";
import { base } from "./place.js";

export function startOver() {
  onEmptied(base, () => location.assign(`${base}/`)); // this page too: it hears what it tells
  document.addEventListener(
    "submit",
    (event) => {
      if (!(event.target instanceof Element) || !event.target.matches("[data-start-over]")) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      forget();
    },
    true,
  );
}

async function forget() {
  localStorage.clear();
  sessionStorage.clear();
  await forgetBook(base);
}
