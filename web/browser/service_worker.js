// The service worker serves files, and nothing of the application: every page is the shell.
/* global PRECACHE */
import { clientsClaim } from "workbox-core";
import { cleanupOutdatedCaches, matchPrecache, precacheAndRoute } from "workbox-precaching";
import { NavigationRoute, registerRoute } from "workbox-routing";

/** @type {{ skipWaiting: () => Promise<void>, registration: ServiceWorkerRegistration }} */
const worker = /** @type {any} */ (self);

precacheAndRoute(PRECACHE);
cleanupOutdatedCaches();
clientsClaim();
registerRoute(new NavigationRoute(shell));

// A new version waits until the page asks for it: nobody loses what is on the screen.
self.addEventListener("message", ({ data }) => {
  if (data?.type === "SKIP_WAITING") worker.skipWaiting();
});

/** The shell names its files relative to the root, which deep in the application they are not. */
async function shell() {
  const kept = /** @type {Response} */ (await matchPrecache("index.html"));
  const root = new URL(worker.registration.scope).pathname;
  const html = (await kept.text()).replaceAll('"./', `"${root}`);
  const headers = new Headers(kept.headers);
  headers.delete("Content-Length");
  headers.delete("Content-Encoding");
  return new Response(html, { headers });
}
