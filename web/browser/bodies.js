// A form's body as bytes that can be handed to the worker.

const LONGEST = 20_000;

/** Resolves to {type, bytes}. body: null, URLSearchParams or FormData.
 * @type {(url: string, method: string, body: Form) => Promise<{ type?: string | null, bytes: Bytes }>} */
export async function bytesOf(url, method, body) {
  if (body == null) return { type: undefined, bytes: new Uint8Array() };
  const short = shortened(body);
  if (short instanceof FormData && [...short.values()].some((each) => typeof each !== "string")) return multipart(short);
  const request = new Request(url, { method, body: short });
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

/** Written by hand: WebKit cannot read back a form that holds a file which was made on the page.
 * @type {(form: FormData) => Promise<{ type: string, bytes: Bytes }>} */
async function multipart(form) {
  const boundary = `daybook-${crypto.randomUUID()}`;
  /** @type {BlobPart[]} */
  const parts = [];
  for (const [name, value] of form) {
    const file = typeof value === "string" ? "" : `; filename="${quoted(value.name)}"\r\nContent-Type: ${value.type || "application/octet-stream"}`;
    parts.push(`--${boundary}\r\nContent-Disposition: form-data; name="${quoted(name)}"${file}\r\n\r\n`, value, "\r\n");
  }
  const whole = new Blob([...parts, `--${boundary}--\r\n`]);
  return { type: `multipart/form-data; boundary=${boundary}`, bytes: new Uint8Array(await whole.arrayBuffer()) };
}

/** As HTML says it of names in a form. @type {(name: string) => string} */
function quoted(name) {
  return name.replaceAll('"', "%22").replaceAll("\r", "%0D").replaceAll("\n", "%0A");
}
