// Moments and figures as the book writes them. A log's times are its own wall clock, held as if they were UTC.
import { cookie } from "../cookies.js";

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
/** @type {Record<string, number>} */
const DIGITS = { Pa: 0, kPa: 2, psi: 3 };
const DAY_S = 86_400;

/** @type {(seconds: number) => string} */
export function day(seconds) {
  const date = new Date(seconds * 1000);
  return `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`;
}

/** @type {(seconds: number) => string} */
export function hour(seconds) {
  return new Date(seconds * 1000).toISOString().slice(11, 16);
}

/** @type {(seconds: number) => string} */
export function clock(seconds) {
  return `${day(seconds)} ${new Date(seconds * 1000).getUTCFullYear()}, ${hour(seconds)}`;
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
    const words = `${quantity === "dew point" ? "dew point " : ""}${figure(values[row], unit)}`;
    probes.set(name, [...(probes.get(name) ?? []), words]);
  }
  return [...probes].map(([name, words]) => `${name} ${words.join(", ")}`).join("; ");
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

/** What a line is called: a dew point says so, for it shares a panel with temperatures.
 * @type {(column: { name: string, quantity: string }) => string} */
export function nameOf({ name, quantity }) {
  return quantity === "dew point" ? `${name} dew point`.trim() : name;
}

/** @type {(columns: Column[]) => string} */
export function titleOf(columns) {
  const quantities = [...new Set(columns.map(({ quantity }) => quantity))].join(" and ");
  return `${quantities.charAt(0).toUpperCase()}${quantities.slice(1)}, ${columns[0].unit}`;
}
