// The service worker, seen from the page: ready to work offline; a new version waits until it is asked for.
import { Workbox } from "workbox-window";
import { notify } from "./device.js";
import { base } from "./place.js";
import { wordsFor } from "./words.js";

/** @type {(() => void) | undefined} */
let look;

/** Called when the daybook is open, so that the first visit's downloads do not compete with the start; and when it
 * stopped, for a new version may mend it. */
export async function keepUpToDate() {
  if (!("serviceWorker" in navigator)) return;
  if (look) return look();
  look = () => {};
  const workbox = new Workbox(`${base}/sw.js`, { scope: `${base}/` });
  let asked = false;

  /** @type {(take: () => void) => void} */
  const offer = (take) =>
    notify("update", {
      text: wordsFor("new_version"),
      button: wordsFor("use_it"),
      act: () => {
        asked = true;
        take();
      },
    });

  workbox.addEventListener("activated", ({ isUpdate }) => {
    if (!isUpdate) notify("offline", { text: wordsFor("offline") });
  });
  workbox.addEventListener("controlling", ({ isUpdate }) => {
    if (asked) location.reload();
    else if (isUpdate) offer(() => location.reload()); // taken in another tab
  });

  const registration = await workbox.register({ immediate: true });
  if (registration) onWaiting(registration, offer);
  look = () => void registration?.update().catch(() => {}); // offline: later
  look();
  mendFiles();
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && look?.());
}

/** Workbox tells of the first alone: one whose upload was half done is followed by the right one.
 * @type {(registration: ServiceWorkerRegistration, offer: (take: () => void) => void) => void} */
function onWaiting(registration, offer) {
  const offerIt = () => {
    const { waiting } = registration;
    if (waiting && navigator.serviceWorker.controller) offer(() => waiting.postMessage({ type: "SKIP_WAITING" }));
  };
  registration.addEventListener("updatefound", () => registration.installing?.addEventListener("statechange", offerIt));
  offerIt();
}

/** Of the files it needs offline, those that the browser has lost. */
function mendFiles() {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = ({ data: count }) => count > 0 && notify("mended", { text: wordsFor("mended") });
  navigator.serviceWorker.controller?.postMessage({ type: "MEND" }, [port2]);
}
