// Starting over: the page deletes what it keeps. It was asked for on a page of its own, which offers a copy first.
import { forgetBook } from "./journal.js";
import { base } from "./place.js";

export function startOver() {
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
  await forgetBook(base);
  localStorage.clear();
  sessionStorage.clear();
  location.assign(`${base}/`);
}
