// The charts' code comes with the first page that has one.
/* global ASSETS */
import { base } from "./place.js";

export function afterSwap() {
  if (document.querySelector("log-chart:not(:defined)")) import(new URL(ASSETS.chart, `${location.origin}${base}/`).href);
}
