// Python in the worker: started from bytecode, spoken to through web/host.py.
import { asWasm, assetUrl, openAsset } from "./assets.js";
import { hostOf } from "./host.js";

const APP_ZIP = "/lib/app.zip";
const FILES = ["wasm", "stdlib", "app"];
/** @type {any} */
const LOCK_INFO = { abi_version: "2026_0", arch: "wasm32", platform: "emscripten_5_0_3", python: "3.14.2" };

/** Before anything else, so that the engine compiles while the zips are still being read. @type {() => Files} */
export function beginFetching() {
  const files = Object.fromEntries(FILES.map((name) => [name, openAsset(name)]));
  for (const file of Object.values(files)) file.catch(() => {}); // said where it is waited for
  return files;
}

/** Resolves to what web/host.py offers, in JavaScript's own types.
 * @type {(files: Files, maxTouchPoints: number) => Promise<Host>} */
export async function startPython(files, maxTouchPoints) {
  // A snapshot that this device made of its own started Python would be restored here, with a plain start if it fails.
  const pyodide = await startPlainly(files, maxTouchPoints);
  performance.mark("daybook:interpreter");
  return hostOf(pyodide);
}

/** @type {(files: Files, maxTouchPoints: number) => Promise<import("pyodide").PyodideInterface>} */
async function startPlainly(files, maxTouchPoints) {
  // Workers have none, and Pyodide tells an iPad by it at the moment its module is read.
  Object.defineProperty(navigator, "maxTouchPoints", { value: maxTouchPoints, configurable: true });
  const [{ loadPyodide }, engine] = await Promise.all([import("pyodide"), import("pyodide/pyodide.asm.mjs")]);
  const fetchBefore = self.fetch;
  self.fetch = (url) => fileNamed(files, `${url}`); // Pyodide would not look into CacheStorage
  try {
    const starting = loadPyodide({
      indexURL: assetUrl("pyodide"),
      stdLibURL: assetUrl("stdlib"),
      lockFileContents: { info: LOCK_INFO, packages: {} }, // spares a file; there are no packages to look up
      packageBaseUrl: assetUrl("pyodide"), // without it an address elsewhere would be made up
      env: { PYTHONPATH: APP_ZIP },
      createPyodideModule: engine.default,
      fsInit: async (memory) => memory.writeFile(APP_ZIP, new Uint8Array(await (await files.app).arrayBuffer())),
    });
    return await Promise.race([starting, failureOf(files)]); // Pyodide would only say that it cannot go on
  } finally {
    self.fetch = fetchBefore;
  }
}

/** @type {(files: Files) => Promise<never>} */
function failureOf(files) {
  return new Promise((_, reject) => Object.values(files).forEach((file) => file.catch(reject)));
}

/** @type {(files: Files, url: string) => Promise<Response>} */
async function fileNamed(files, url) {
  const name = FILES.find((each) => assetUrl(each) === new URL(url).href) ?? url;
  const response = await files[name];
  return name === "wasm" ? asWasm(response) : response;
}
