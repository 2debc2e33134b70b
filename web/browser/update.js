// The service worker, seen from the page: ready to work offline; a new version waits until it is asked for.
import { Workbox } from "workbox-window";
import { notify } from "./device.js";
import { base } from "./place.js";
import { wordsFor } from "./words.js";

/** Called when the daybook is open, so that the first visit's downloads do not compete with the start. */
export async function keepUpToDate() {
  if (!("serviceWorker" in navigator)) return;
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
  workbox.addEventListener("waiting", () => offer(() => workbox.messageSkipWaiting()));
  workbox.addEventListener("controlling", ({ isUpdate }) => {
    if (asked) location.reload();
    else if (isUpdate) offer(() => location.reload()); // taken in another tab
  });

  const registration = await workbox.register({ immediate: true });
  const look = () => registration?.update().catch(() => {}); // offline: later
  look();
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && look());
}
