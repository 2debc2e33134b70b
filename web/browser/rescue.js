// A copy of the book by the page alone, where Python does not start: what lies on the disk, as an export holds it.
import { save, withFiles } from "./downloads.js";
import { readJournal } from "./journal.js";
import { base } from "./place.js";

const FORMAT = "curing-daybook-journal"; // of web/copied.py

export async function saveFromDisk() {
  const copy = await withFiles(new TextEncoder().encode(exported(await readJournal(base))));
  if (copy) save(copy, `curing-daybook-${new Date().toISOString().slice(0, 10)}.zip`);
}

/** @type {(parts: Part[]) => string} */
export function exported(parts) {
  const entries = parts.map(({ json }) => json.slice(1, -1)).filter(Boolean); // each is an array in JSON
  return `{"format": "${FORMAT}", "version": 1, "entries": [${entries.join(",\n")}]}`;
}
