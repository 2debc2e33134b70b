// What web/host.py offers, in JavaScript's own types.

/** @param {import("pyodide").PyodideInterface} pyodide */
export function hostOf(pyodide) {
  const host = pyodide.pyimport("web.host");
  return {
    /** @type {(base: string, build: string) => string} */
    start: (base, build) => host.start(base, build),
    /** @type {() => number} */
    warm: () => host.warm(),
    /** @type {(entries: string) => number} */
    learn: (entries) => host.learn(entries),
    /** bytes: undefined when the device holds no such file. @type {(sha: string, bytes: Bytes | undefined) => void} */
    give: (sha, bytes) => host.give(sha, bytes),
    /** request: {method, path, headers, body, refused}. Returns {status, headers, entries, files, body} or {wants}.
     * @type {(asking: Asking) => Said} */
    answer({ body, refused = null, ...head }) {
      const proxy = host.answer(JSON.stringify({ ...head, refused }), body);
      try {
        const [answered, bytes, contents] = proxy.toJs();
        const { files = [], ...said } = JSON.parse(answered);
        const withBytes = (/** @type {string} */ sha, /** @type {number} */ at) => ({ sha, bytes: contents[at] });
        return { ...said, files: files.map(withBytes), body: bytes };
      } finally {
        proxy.destroy();
      }
    },
  };
}
