// In the place of web/browser/python.js: npm's Pyodide as it comes, and the application from its sources.
import { loadPyodide } from "pyodide";
import { assetUrl, openAsset } from "./assets.js";
import { hostOf } from "./host.js";

const APP_ZIP = "/lib/app.zip";

export function beginFetching() {
  return openAsset("app");
}

export async function startPython(app, maxTouchPoints) {
  Object.defineProperty(navigator, "maxTouchPoints", { value: maxTouchPoints, configurable: true });
  const pyodide = await loadPyodide({
    indexURL: assetUrl("pyodide"),
    env: { PYTHONPATH: APP_ZIP },
    fsInit: async (memory) => memory.writeFile(APP_ZIP, new Uint8Array(await (await app).arrayBuffer())),
  });
  performance.mark("daybook:interpreter");
  return hostOf(pyodide);
}
