// Where the daybook lives on its host: at the root or under any path.

const manifest = /** @type {HTMLLinkElement} */ (document.querySelector('link[rel="manifest"]'));

/** The path of the site's root without its last slash. The manifest always lies there. */
export const base = new URL(".", manifest.href).pathname.slice(0, -1);

export function here() {
  return location.pathname + location.search;
}

/** A page's URL as the application knows it. Returns undefined for what is not the application's.
 * @type {(url: string) => string | undefined} */
export function pathInside(url) {
  const { origin, pathname, search } = new URL(url, location.href);
  if (origin !== location.origin || !`${pathname}/`.startsWith(`${base}/`)) return undefined;
  const path = pathname.slice(base.length).replace(/^\/index\.html$/, "/") || "/";
  return path + search;
}
