// A tiny cookie jar: a Response cannot carry Set-Cookie, so settings travel as plain name and value.
const JAR = "daybook-cookies";

/** headers with the Cookie header brought up to date by Set-Cookie lines.
 * @type {(headers: Head, lines: string[]) => Head} */
export function withCookies(headers, lines) {
  const jar = fromHeader(headers.Cookie ?? "");
  for (const line of lines) put(jar, line);
  return { ...headers, Cookie: toHeader(jar) };
}

export function cookieHeader() {
  return toHeader(open());
}

/** @type {(name: string) => string | undefined} */
export function cookie(name) {
  return open()[name];
}

/** @type {(lines: string[]) => void} */
export function keepCookies(lines) {
  if (lines.length === 0) return;
  const jar = open();
  for (const line of lines) put(jar, line);
  try {
    localStorage.setItem(JAR, JSON.stringify(jar));
  } catch {
    // a full or forbidden storage: the setting lasts for this page
  }
}

/** @type {() => Record<string, string>} */
function open() {
  try {
    return JSON.parse(localStorage.getItem(JAR) ?? "null") ?? {};
  } catch {
    return {};
  }
}

/** @type {(jar: Record<string, string>, line: string) => void} */
function put(jar, line) {
  const [pair, ...attributes] = line.split(";").map((part) => part.trim());
  const [name, value] = split(pair);
  if (attributes.some((attribute) => /^max-age=(0|-\d+)$/i.test(attribute))) delete jar[name];
  else jar[name] = value;
}

/** @type {(header: string) => Record<string, string>} */
function fromHeader(header) {
  return Object.fromEntries(header.split(";").filter((pair) => pair.includes("=")).map((pair) => split(pair.trim())));
}

/** @type {(jar: Record<string, string>) => string} */
function toHeader(jar) {
  return Object.entries(jar).map(([name, value]) => `${name}=${value}`).join("; ");
}

/** @type {(pair: string) => [name: string, value: string]} */
function split(pair) {
  const at = pair.indexOf("=");
  return [pair.slice(0, at), pair.slice(at + 1)];
}
