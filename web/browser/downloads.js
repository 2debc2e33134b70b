// Files the application makes: fetched from the worker, handed to the browser's own way of saving.
import { copyOf } from "./copy.js";
import { notify, withdraw } from "./device.js";
import { openFiles } from "./journal.js";
import { base, pathInside } from "./place.js";
import { wordsFor } from "./words.js";

const KEEP_MS = 60_000;

/** failed(sentence) is told when there is no file. @type {(send: Send, failed: (sentence: string) => void) => void} */
export function saveDownloads(send, failed) {
  /** @type {(event: MouseEvent) => void} */
  const tapped = (event) => {
    const link = event.target instanceof Element && event.target.closest("a[download]");
    if (!(link instanceof HTMLAnchorElement) || !/^https?:/.test(link.href) || pathInside(link.href) === undefined) return;
    event.preventDefault();
    event.stopImmediatePropagation(); // a morph may have made it of a link that htmx listens to
    download(send, link).catch(() => failed(wordsFor("no_file")));
  };
  document.addEventListener("click", tapped, true);
}

/** @type {(send: Send, link: HTMLAnchorElement) => Promise<void>} */
async function download(send, link) {
  const response = await send(link.href, { headers: { Accept: "*/*" } });
  if (!response.ok) throw new Error(`The answer was ${response.status}.`);
  const name = fileName(response.headers.get("Content-Disposition") ?? "") || link.download || "daybook";
  if (link.dataset.copy === undefined) return save(await response.blob(), name);
  const copy = await withFiles(new Uint8Array(await response.arrayBuffer()));
  if (!copy) return;
  save(copy, name.replace(/\.json$/, ".zip"));
  await send(link.dataset.copy, { method: "POST" });
}

/** The journal and every file beside it, told as it goes; undefined where it was stopped.
 * @type {(journal: Uint8Array) => Promise<Blob | undefined>} */
export async function withFiles(journal) {
  const files = openFiles(base);
  let isStopped = false;
  /** @type {(done: number, of: number) => void} */
  const told = (done, of) =>
    notify("copy", { text: wordsFor("copying", { done, of }), button: wordsFor("stop"), act: () => (isStopped = true) });
  try {
    return await copyOf(journal, files, told, () => isStopped);
  } finally {
    withdraw("copy");
    await files.close();
  }
}

/** @type {(blob: Blob, name: string) => void} */
export function save(blob, name) {
  const url = URL.createObjectURL(blob);
  const saving = document.createElement("a");
  saving.href = url;
  saving.download = name;
  saving.click();
  setTimeout(() => URL.revokeObjectURL(url), KEEP_MS);
}

/** @type {(disposition: string) => string} */
export function fileName(disposition) {
  const encoded = /filename\*=UTF-8''([^;]+)/i.exec(disposition)?.[1];
  if (encoded) return decodeURIComponent(encoded);
  return /filename="?([^";]+)"?/i.exec(disposition)?.[1] ?? "";
}
