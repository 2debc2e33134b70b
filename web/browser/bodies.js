// A form's body as bytes that can be handed to the worker.

const LONGEST = 20_000;

/** Resolves to {type, bytes}. body: null, URLSearchParams or FormData.
 * @type {(url: string, method: string, body: Form) => Promise<{ type?: string | null, bytes: Bytes }>} */
export async function bytesOf(url, method, body) {
  if (body == null) return { type: undefined, bytes: new Uint8Array() };
  const request = new Request(url, { method, body: shortened(body) }); // the browser writes the multipart boundaries
  return { type: request.headers.get("Content-Type"), bytes: new Uint8Array(await request.arrayBuffer()) };
}

/** A text so long is a slip of the clipboard. One character too many is enough for the server to say so.
 * @type {(body: URLSearchParams | FormData) => URLSearchParams | FormData} */
function shortened(body) {
  /** @type {(value: FormDataEntryValue) => boolean} */
  const isLong = (value) => typeof value === "string" && value.length > LONGEST;
  const fields = [...body];
  if (!fields.some(([, value]) => isLong(value))) return body;
  const short = body instanceof FormData ? new FormData() : new URLSearchParams();
  for (const [name, value] of fields) {
    const text = /** @type {string} */ (value); // or a file, which only a FormData holds
    short.append(name, isLong(value) ? text.slice(0, LONGEST + 1) : text);
  }
  return short;
}
