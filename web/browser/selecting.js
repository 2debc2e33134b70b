// What a number box holds is selected when one comes to it: to type is to replace it. A second tap sets the caret.

/** @type {Field | undefined} */
let came; // by a tap that has not ended yet: its end sets a caret, over what was selected
/** @type {Element | null} */
let left = null; // where one was when one looked away: coming back there is no coming to it

export function selectWhatIsThere() {
  document.addEventListener("focusin", ({ target }) => isNumber(target) && select(target));
  document.addEventListener("click", ({ target }) => {
    if (target === came && came?.selectionStart === came?.selectionEnd) came?.select();
    came = undefined;
  });
  document.addEventListener("keydown", () => (came = undefined), true);
  addEventListener("blur", ({ target }) => target === window && (left = document.activeElement));
}

/** @type {(box: Field) => void} */
function select(box) {
  const isBack = box === left;
  left = null;
  if (isBack || !box.value) return;
  came = box;
  box.select();
}

/** @type {(node: unknown) => node is Field} */
function isNumber(node) {
  return node instanceof Element && node.matches("input[data-number]");
}
