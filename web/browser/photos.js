// Photos: what is chosen in input[data-photo] is drawn anew, small, before it is sent; <kept-photo src alt> shows one that
// is kept. What stands in the element is told where its file is not there.

const LONGEST = 1600; // pixels along the longer edge
const QUALITY = 0.85;

export function takePhotos() {
  document.addEventListener("change", ({ target }) => {
    if (target instanceof HTMLInputElement && target.dataset.photo !== undefined && target.files?.[0]) take(target, target.files[0]);
  });
  customElements.define("kept-photo", KeptPhoto);
}

/** Nothing can be sent meanwhile: it would be the picture as the camera wrote it.
 * @type {(input: HTMLInputElement, chosen: File) => Promise<void>} */
async function take(input, chosen) {
  const buttons = [...(input.form?.querySelectorAll("button") ?? [])];
  for (const button of buttons) button.disabled = true;
  const held = new DataTransfer();
  try {
    held.items.add(new File([await drawnAnew(chosen)], "photo.jpg", { type: "image/jpeg" }));
  } catch {
    held.items.add(new File([], chosen.name)); // the application says what is wrong with it
  }
  input.files = held.files;
  for (const button of buttons) button.disabled = false;
}

/** Upright, and with nothing beside the picture. @type {(chosen: File) => Promise<Blob>} */
async function drawnAnew(chosen) {
  const picture = await createImageBitmap(chosen, { imageOrientation: "from-image" });
  const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const drawing = /** @type {CanvasRenderingContext2D} */ (canvas.getContext("2d"));
  drawing.fillStyle = "white"; // what shows through it, where it has holes
  drawing.fillRect(0, 0, canvas.width, canvas.height);
  drawing.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((resolve, reject) =>
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("It could not be drawn."))), "image/jpeg", QUALITY),
  );
}

export class KeptPhoto extends HTMLElement {
  static observedAttributes = ["src"];
  #image = new Image();
  #seen = new IntersectionObserver((all) => all.some((each) => each.isIntersecting) && this.shown()); // not in a shut fold
  #url = "";
  /** @type {Promise<void> | undefined} */
  #showing;

  constructor() {
    super();
    this.#image.part.add("picture");
    this.attachShadow({ mode: "open" }).append(this.#image); // where a morph of the page does not reach it
  }

  connectedCallback() {
    this.#seen.observe(this);
  }

  disconnectedCallback() {
    this.#seen.disconnect();
    URL.revokeObjectURL(this.#url);
  }

  attributeChangedCallback() {
    if (!this.#showing) return;
    this.#showing = undefined;
    this.shown();
  }

  /** Until it stands there, or the word that it does not. */
  shown() {
    return (this.#showing ??= this.#show());
  }

  async #show() {
    const src = this.getAttribute("src") ?? "";
    this.#seen.disconnect();
    URL.revokeObjectURL(this.#url);
    this.#image.alt = this.getAttribute("alt") ?? "";
    const response = await window.daybook.send(new URL(src, location.href).href, { headers: { Accept: "*/*" } });
    if (src !== this.getAttribute("src")) return;
    if (response.ok) this.#url = URL.createObjectURL(await response.blob());
    if (response.ok) this.#image.src = this.#url;
    this.shadowRoot?.replaceChildren(response.ok ? this.#image : document.createElement("slot"));
    if (response.ok) await this.#image.decode();
  }
}
