// The end of a timed step is heard. A browser lets a page sound only after a tap: the one that starts the time.

const BEEPS = 6;
const BEEP_S = 0.25;
const EVERY_S = 0.5;
const PITCH_HZ = 880;
const LOUDNESS = 0.4;
const SHAKE_MS = [400, 200, 400, 200, 400];

/** @type {AudioContext | undefined} */
let sound;
/** @type {{ until: string, timer: ReturnType<typeof setTimeout> } | undefined} */
let waiting;

/** A form with data-rings starts a time: its tap is the one leave to sound, and the moment to ask for notices. */
export function askToRing() {
  document.addEventListener("submit", ({ target }) => {
    if (target instanceof HTMLFormElement && "rings" in target.dataset) allow();
  });
}

function allow() {
  sound ??= "AudioContext" in window ? new AudioContext() : undefined;
  sound?.resume();
  if ("Notification" in window && Notification.permission === "default") Notification.requestPermission();
}

/** It rings on any page of the daybook, once. until: as <time-left> has it. words: what was timed, and that it is over.
 * @type {(until: string, title: string, words: string) => void} */
export function ringAt(until, title, words) {
  const milliseconds = Date.parse(until) - Date.now();
  if (waiting?.until === until || !(milliseconds > 0)) return;
  clearTimeout(waiting?.timer);
  waiting = { until, timer: setTimeout(() => ring(title, words), milliseconds) };
}

/** The time is shown no longer. Another page lets it ring; the page of its run shows that it was undone or cut short. */
export function callOff() {
  setTimeout(() => {
    if (!document.querySelector("[data-run]") || document.querySelector("time-left")) return;
    clearTimeout(waiting?.timer);
    waiting = undefined;
  }, 0); // after the swap, when the new page is whole
}

/** @type {(title: string, words: string) => void} */
function ring(title, words) {
  waiting = undefined;
  beep();
  navigator.vibrate?.(SHAKE_MS);
  if ("Notification" in window && Notification.permission === "granted") tell(title, words);
}

function beep() {
  if (!sound) return;
  sound.resume(); // a look away may have put it to sleep
  const oscillator = sound.createOscillator();
  const loudness = sound.createGain();
  const start = sound.currentTime + 0.05;
  loudness.gain.value = 0;
  for (let at = 0; at < BEEPS; at += 1) {
    loudness.gain.setValueAtTime(LOUDNESS, start + at * EVERY_S);
    loudness.gain.setValueAtTime(0, start + at * EVERY_S + BEEP_S);
  }
  oscillator.frequency.value = PITCH_HZ;
  oscillator.connect(loudness).connect(sound.destination);
  oscillator.start(start);
  oscillator.stop(start + BEEPS * EVERY_S);
}

/** On Android only a service worker may show one. @type {(title: string, words: string) => Promise<void>} */
async function tell(title, words) {
  const registration = await navigator.serviceWorker?.getRegistration();
  await registration?.showNotification(title, { body: words, tag: "time", requireInteraction: true });
}
