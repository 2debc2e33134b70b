// What web/host.py offers, in JavaScript's own types.

export function hostOf(pyodide) {
  const host = pyodide.pyimport("web.host");
  return {
    start: (base, build) => host.start(base, build),
    warm: () => host.warm(),
    learn: (entries) => host.learn(entries),
    /** bytes: undefined when the device holds no such file. */
    give: (sha, bytes) => host.give(sha, bytes),
    /** request: {method, path, headers, body, refused}. Returns {status, headers, entries, files, body} or {wants}. */
    answer({ body, refused = null, ...head }) {
      const proxy = host.answer(JSON.stringify({ ...head, refused }), body);
      try {
        const [answered, bytes, contents] = proxy.toJs();
        const { files = [], ...said } = JSON.parse(answered);
        return { ...said, files: files.map((sha, at) => ({ sha, bytes: contents[at] })), body: bytes };
      } finally {
        proxy.destroy();
      }
    },
  };
}
