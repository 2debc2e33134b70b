// Moments and figures as the book writes them. A log's times are its own wall clock, held as if they were UTC.
import { cookie } from "../cookies.js";
import { wordsFor } from "../words.js";

/** @type {Record<string, number>} */
const DIGITS = { Pa: 0, kPa: 2, psi: 3 };
const DAY_S = 86_400;

/** @type {(seconds: number) => string} */
export function day(seconds) {
  return wordsFor("day", parts(seconds));
}

/** @type {(seconds: number) => string} */
export function hour(seconds) {
  return new Date(seconds * 1000).toISOString().slice(11, 16);
}

/** @type {(seconds: number) => string} */
export function clock(seconds) {
  return wordsFor("moment", { date: wordsFor("day_of", parts(seconds)), time: hour(seconds) });
}

/** @type {(seconds: number) => Record<string, string | number>} */
function parts(seconds) {
  const date = new Date(seconds * 1000);
  return { day: date.getUTCDate(), month: wordsFor(`month_${date.getUTCMonth() + 1}`), year: date.getUTCFullYear() };
}

/** Under a line of the grid: its hour, and the day where one begins or where it is the first.
 * @type {(moments: number[]) => string[]} */
export function ticks(moments) {
  return moments.map((moment, at) => {
    if (moment % DAY_S === 0) return day(moment);
    return at === 0 ? `${hour(moment)}\n${day(moment)}` : hour(moment);
  });
}

/** One row in words, probe by probe: "Upper shelf 12.7 °C, dew point 8.9 °C, 75.1 %; Lower shelf 13.4 °C".
 * @type {(columns: Column[], row: number) => string} */
export function reading(columns, row) {
  /** @type {Map<string, string[]>} */
  const probes = new Map();
  for (const { name, quantity, unit, values } of columns) {
    const read = figure(values[row], unit);
    const words = quantity === "dew point" ? wordsFor("dew_point", { figure: read }) : read;
    probes.set(name, [...(probes.get(name) ?? []), words]);
  }
  return inTurn("next_probe", [...probes].map(([probe, readings]) => wordsFor("of_probe", { probe, readings: inTurn("next_reading", readings) })));
}

/** @type {(key: string, texts: string[]) => string} */
function inTurn(key, texts) {
  return texts.reduce((before, next) => wordsFor(key, { before, next }));
}

/** @type {(value: number, unit: string) => string} */
function figure(value, unit) {
  if (Number.isNaN(value)) return "—";
  return `${withMark(value.toFixed(DIGITS[unit] ?? 1))}\u00a0${unit}`;
}

/** A decimal mark as it was chosen. @type {(text: string) => string} */
export function withMark(text) {
  return cookie("decimal") === "comma" ? text.replace(".", ",") : text;
}
