// The service worker serves files, and nothing of the application: every page is the shell.
/* global PRECACHE */
import { cacheNames, clientsClaim } from "workbox-core";
import { cleanupOutdatedCaches, getCacheKeyForURL, matchPrecache, precacheAndRoute } from "workbox-precaching";
import { NavigationRoute, registerRoute } from "workbox-routing";

/** @type {{ skipWaiting: () => Promise<void>, registration: ServiceWorkerRegistration }} */
const worker = /** @type {any} */ (self);

precacheAndRoute(PRECACHE);
cleanupOutdatedCaches();
clientsClaim();
registerRoute(new NavigationRoute(shell));

// A new version waits until the page asks for it: nobody loses what is on the screen.
self.addEventListener("message", (event) => {
  const { data, ports } = event;
  if (data?.type === "SKIP_WAITING") worker.skipWaiting();
  if (data?.type === "MEND") /** @type {any} */ (event).waitUntil(mend().then((count) => ports[0].postMessage(count)));
});

/** Files that the browser has thrown away, fetched again as they were; resolves to how many came. */
async function mend() {
  const cache = await caches.open(cacheNames.precache);
  let count = 0;
  for (const { url, integrity } of PRECACHE) {
    const key = /** @type {string} */ (getCacheKeyForURL(url));
    if (await cache.match(key)) continue;
    const response = await fetch(key, { integrity, cache: "reload" }).catch(() => undefined); // offline: another time
    if (!response?.ok) continue;
    await cache.put(key, response);
    count += 1;
  }
  return count;
}

/** The shell names its files relative to the root, which deep in the application they are not. */
async function shell() {
  const root = new URL(worker.registration.scope).pathname;
  const kept = (await matchPrecache("index.html")) ?? (await fetch(root));
  const html = (await kept.text()).replaceAll('"./', `"${root}`);
  const headers = new Headers(kept.headers);
  headers.delete("Content-Length");
  headers.delete("Content-Encoding");
  return new Response(html, { headers });
}
