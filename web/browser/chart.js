// <log-chart src="…" label="…">: a logger's readings as a chart. Comes with the first page that has one.
//
// src is a page of the application that answers with columns (see chart/columns.js). A morph of the page leaves what is
// drawn in peace; another src draws anew. What stands in the element until then is for who waits.
import "./chart/language.js";
import { readColumns } from "./chart/columns.js";
import { drawLog, tell } from "./chart/drawn.js";
import { wordsFor } from "./words.js";

class LogChart extends HTMLElement {
  static observedAttributes = ["src"];
  /** @type {AbortController | undefined} */
  #stopping;

  connectedCallback() {
    this.#draw();
  }

  disconnectedCallback() {
    this.#stopping?.abort();
  }

  /** @type {(name: string, before: string | null, now: string | null) => void} */
  attributeChangedCallback(_, before, now) {
    if (this.isConnected && before !== null && before !== now) this.#draw();
  }

  async #draw() {
    this.#stopping?.abort();
    this.#stopping = new AbortController();
    const { signal } = this.#stopping;
    tell(this, "waiting");
    const began = performance.now();
    try {
      const log = await fetched(this.getAttribute("src") ?? "", signal);
      if (signal.aborted) return;
      if (log.times.length < 2) this.textContent = wordsFor("empty_chart");
      else drawLog(this, this.getAttribute("label") ?? "", log, signal);
      requestAnimationFrame(() => performance.measure("daybook:chart", { start: began }));
    } catch (error) {
      if (signal.aborted) return;
      this.textContent = wordsFor("no_chart");
      console.warn(error);
    }
  }
}

/** @type {(src: string, signal: AbortSignal) => Promise<Log>} */
async function fetched(src, signal) {
  const response = await window.daybook.send(new URL(src, location.href).href, { headers: { Accept: "*/*" }, signal });
  if (!response.ok) throw new Error(`The answer was ${response.status}.`);
  return readColumns(await response.arrayBuffer());
}

customElements.define("log-chart", LogChart);
