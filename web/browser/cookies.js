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

/** One with no age lasts as long as its tab. @type {(lines: string[]) => void} */
export function keepCookies(lines) {
  if (lines.length === 0) return;
  const [kept, ofTab] = [opened(() => localStorage), opened(() => sessionStorage)];
  for (const line of lines) {
    if (isAged(line)) put(kept, line);
    if (!isAged(line) || isOver(line)) put(ofTab, line);
  }
  try {
    localStorage.setItem(JAR, JSON.stringify(kept));
    sessionStorage.setItem(JAR, JSON.stringify(ofTab));
  } catch {
    // a full or forbidden storage: the setting lasts for this page
  }
}

/** @type {() => Record<string, string>} */
function open() {
  return { ...opened(() => localStorage), ...opened(() => sessionStorage) };
}

/** Where storage is forbidden even its name may not be read. @type {(storage: () => Storage) => Record<string, string>} */
function opened(storage) {
  try {
    return JSON.parse(storage().getItem(JAR) ?? "null") ?? {};
  } catch {
    return {};
  }
}

/** @type {(line: string) => boolean} */
const isAged = (line) => /;\s*max-age=/i.test(line);
/** @type {(line: string) => boolean} */
const isOver = (line) => /;\s*max-age=(0|-\d+)\s*(;|$)/i.test(line);

/** @type {(jar: Record<string, string>, line: string) => void} */
function put(jar, line) {
  const [name, value] = split(line.split(";")[0].trim());
  if (isOver(line)) delete jar[name];
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
