// What web/host.py offers, in JavaScript's own types.

export function hostOf(pyodide) {
  const host = pyodide.pyimport("web.host");
  return {
    start: (base, build) => host.start(base, build),
    learn: (entries) => host.learn(entries),
    /** request: {method, path, headers, body, refused}. Returns {status, headers, entries, body}. */
    answer({ body, refused = null, ...head }) {
      const proxy = host.answer(JSON.stringify({ ...head, refused }), body);
      try {
        const [answered, bytes] = proxy.toJs();
        return { ...JSON.parse(answered), body: bytes };
      } finally {
        proxy.destroy();
      }
    },
  };
}
