// The files a start needs, by their logical names. CacheStorage comes first: in Firefox a worker's own fetch fails
// offline before the service worker sees it.
/* global ASSETS, SIZES */

const root = new URL("../", import.meta.url); // the bundle lies in assets/
const fetchFile = self.fetch.bind(self); // while Pyodide starts, self.fetch is ours (see python.js)
const progress = { done: 0, total: 0 };
/** @type {(told: { done: number, total: number }) => void} */
let tell = () => {};

/** @type {(listener: (told: { done: number, total: number }) => void) => void} */
export function onProgress(listener) {
  tell = listener;
  tell(progress);
}

/** @type {(name: string) => string} */
export function assetUrl(name) {
  return new URL(ASSETS[name], root).href;
}

/** @type {(name: string) => Promise<Response>} */
export async function openAsset(name) {
  const url = assetUrl(name);
  const size = SIZES[ASSETS[name]];
  progress.total += size;
  const kept = await keptResponse(url);
  const response = kept ? await sameByFetch(name, url, kept) : await fetchFile(url);
  if (!response.ok) throw new Error(`${name} could not be fetched (${response.status}).`);
  if (kept) advance(size);
  else countArriving(response.clone());
  return response;
}

/** Chromium keeps the engine's compiled code with what is fetched, not with what is taken out of CacheStorage; without it
 * a start costs the processor 6 to 7 s instead of 2.3 to 2.5 s. The service worker answers, or the kept file stands in.
 * @type {(name: string, url: string, kept: Response) => Response | Promise<Response>}
 */
function sameByFetch(name, url, kept) {
  if (name !== "wasm") return kept;
  return fetchFile(url).then((response) => (response.ok ? response : kept), () => kept);
}

/** Compiling while streaming needs the right type, which not every static host sends.
 * @type {(response: Response) => Response} */
export function asWasm(response) {
  const right = response.headers.get("Content-Type")?.split(";")[0].trim() === "application/wasm";
  return right ? response : new Response(response.body, { headers: { "Content-Type": "application/wasm" } });
}

/** @type {(url: string) => Promise<Response | undefined>} */
async function keptResponse(url) {
  try {
    return await caches.match(url, { ignoreVary: true });
  } catch {
    return undefined; // some private windows have no CacheStorage
  }
}

/** @type {(copy: Response) => Promise<void>} */
async function countArriving(copy) {
  const reader = /** @type {ReadableStream<Bytes>} */ (copy.body).getReader();
  for (let part = await reader.read(); !part.done; part = await reader.read()) advance(part.value.length);
}

/** @type {(bytes: number) => void} */
function advance(bytes) {
  progress.done += bytes;
  tell(progress);
}
