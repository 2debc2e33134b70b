// A link within the page that leads to what is folded unfolds it.

export function openWhatIsLedTo() {
  document.addEventListener("click", ({ target }) => {
    const link = /** @type {Element} */ (target).closest?.('a[href^="#"]');
    const fold = link && document.getElementById(/** @type {HTMLAnchorElement} */ (link).hash.slice(1));
    if (fold instanceof HTMLDetailsElement) fold.open = true;
  });
}
