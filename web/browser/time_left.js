// <time-left until="2026-11-25T14:32:10+01:00">: counts down to a moment, rings, and says in words that it is over.
import { callOff, ringAt } from "./ring.js";
import { wordsFor } from "./words.js";

class TimeLeft extends HTMLElement {
  static observedAttributes = ["until"];

  connectedCallback() {
    this.ticking = setInterval(() => this.say(), 1000);
    this.say();
    this.ring();
  }

  disconnectedCallback() {
    clearInterval(this.ticking);
    callOff();
  }

  attributeChangedCallback() {
    if (!this.isConnected) return;
    this.say();
    this.ring();
  }

  ring() {
    ringAt(this.getAttribute("until") ?? "", this.getAttribute("of") ?? "", this.getAttribute("over") ?? "");
  }

  say() {
    const words = left(Date.parse(this.getAttribute("until") ?? "") - Date.now());
    if (words && words !== this.textContent) this.replaceChildren(words);
  }
}

/** The words of the server's own filter, so that nothing jumps when the page is drawn anew.
 * @type {(milliseconds: number) => string} */
export function left(milliseconds) {
  if (Number.isNaN(milliseconds)) return "";
  const seconds = Math.ceil(milliseconds / 1000);
  if (seconds <= 0) return wordsFor("over");
  /** @type {(number: number) => string} */
  const two = (number) => String(number).padStart(2, "0");
  const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
  const time = hours ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
  return wordsFor("left", { time });
}

export function countDown() {
  customElements.define("time-left", TimeLeft);
}
