// uPlot asks Intl for the browser's language as soon as it is read, and dies of one that is none: a bare Linux says "C".
// Imported before it.

try {
  new Intl.NumberFormat(navigator.language);
} catch {
  Object.defineProperty(navigator, "language", { value: "en-GB", configurable: true });
}
