// A copy of the whole book as one zip: journal.json, and files/ with the raw files under their names. Made on the page,
// one file at a time, so that a tablet need not hold them all.
import { Zip, ZipDeflate } from "fflate";

/**
 * journal: its bytes. files: {names(), file(name)}. told(done, of): after each file. stopped(): whether to break off.
 * Resolves to a Blob, or to undefined where it was stopped.
 * @param {Uint8Array} journal @param {RawFiles} files
 * @param {(done: number, of: number) => void} told @param {() => boolean} stopped
 */
export async function copyOf(journal, files, told, stopped) {
  /** @type {Blob[]} */
  const parts = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    parts.push(new Blob([chunk])); // what a blob holds may lie on the disk
  });
  const names = await files.names();
  put(zip, "journal.json", journal);
  for (const [at, name] of names.entries()) {
    told(at, names.length);
    await pause();
    if (stopped()) return undefined;
    put(zip, `files/${name}`, /** @type {Bytes} */ (await files.file(name)));
  }
  zip.end();
  return new Blob(parts, { type: "application/zip" });
}

/** @type {(zip: Zip, name: string, bytes: Uint8Array) => void} */
function put(zip, name, bytes) {
  const entry = new ZipDeflate(name, { level: 6 });
  zip.add(entry);
  entry.push(bytes, true);
}

/** Time for a tap, and for what was told to be drawn. */
function pause() {
  return new Promise((resolve) => setTimeout(resolve));
}
