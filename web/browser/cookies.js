// A tiny cookie jar: a Response cannot carry Set-Cookie, so settings travel as plain name and value.
const JAR = "daybook-cookies";

/** headers with the Cookie header brought up to date by Set-Cookie lines. */
export function withCookies(headers, lines) {
  const jar = fromHeader(headers.Cookie ?? "");
  for (const line of lines) put(jar, line);
  return { ...headers, Cookie: toHeader(jar) };
}

export function cookieHeader() {
  return toHeader(open());
}

export function cookie(name) {
  return open()[name];
}

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

function open() {
  try {
    return JSON.parse(localStorage.getItem(JAR)) ?? {};
  } catch {
    return {};
  }
}

function put(jar, line) {
  const [pair, ...attributes] = line.split(";").map((part) => part.trim());
  const [name, value] = split(pair);
  if (attributes.some((attribute) => /^max-age=(0|-\d+)$/i.test(attribute))) delete jar[name];
  else jar[name] = value;
}

function fromHeader(header) {
  return Object.fromEntries(header.split(";").filter((pair) => pair.includes("=")).map((pair) => split(pair.trim())));
}

function toHeader(jar) {
  return Object.entries(jar).map(([name, value]) => `${name}=${value}`).join("; ");
}

function split(pair) {
  const at = pair.indexOf("=");
  return [pair.slice(0, at), pair.slice(at + 1)];
}
