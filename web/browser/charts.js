// The charts' code comes with the first page that has one.
/* global ASSETS */
import { base } from "./place.js";
import { wordsFor } from "./words.js";

export function afterSwap() {
  const waiting = document.querySelectorAll("log-chart:not(:defined)");
  if (waiting.length === 0) return;
  import(new URL(ASSETS.chart, `${location.origin}${base}/`).href).catch((error) => {
    for (const each of waiting) each.textContent = wordsFor("no_chart");
    console.warn(error);
  });
}
