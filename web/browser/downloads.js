// Files the application makes: fetched from the worker, handed to the browser's own way of saving.
import { pathInside } from "./place.js";

const KEEP_MS = 60_000;

/** failed(sentence) is told when there is no file. */
export function saveDownloads(send, failed) {
  const save = (event) => {
    const link = event.target.closest?.("a[download]");
    if (!link || !/^https?:/.test(link.href) || pathInside(link.href) === undefined) return;
    event.preventDefault();
    event.stopImmediatePropagation(); // a morph may have made it of a link that htmx listens to
    download(send, link).catch(() => failed("The file could not be made."));
  };
  document.addEventListener("click", save, true);
}

async function download(send, link) {
  const response = await send(link.href, { headers: { Accept: "*/*" } });
  if (!response.ok) throw new Error(`The answer was ${response.status}.`);
  const url = URL.createObjectURL(await response.blob());
  const saving = document.createElement("a");
  saving.href = url;
  saving.download = fileName(response.headers.get("Content-Disposition") ?? "") || link.download || "daybook";
  saving.click();
  setTimeout(() => URL.revokeObjectURL(url), KEEP_MS);
}

export function fileName(disposition) {
  const encoded = /filename\*=UTF-8''([^;]+)/i.exec(disposition)?.[1];
  if (encoded) return decodeURIComponent(encoded);
  return /filename="?([^";]+)"?/i.exec(disposition)?.[1] ?? "";
}
