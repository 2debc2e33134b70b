// node bytecode.mjs PYODIDE_FOLDER STDLIB.zip SOURCES.zip TARGET.zip MOUNT METHOD [bare]
// Compiles a zip of Python sources with the very interpreter that will run them: bytecode.py, inside Pyodide.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const [folder, stdlib, sources, target, mount, method, bare] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(join(folder, "pyodide.mjs")));
// A fixed hash seed, a fresh interpreter for each zip: the order of sets and of interned names reaches the bytecode.
const pyodide = await loadPyodide({ indexURL: folder, stdLibURL: stdlib, env: { PYTHONHASHSEED: "0", PYTHONNODEBUGRANGES: "1" } });
pyodide.FS.writeFile("/home/pyodide/bytecode.py", readFileSync(new URL("bytecode.py", import.meta.url)));
pyodide.FS.writeFile("/sources.zip", readFileSync(sources));
pyodide.globals.set("mount", mount);
pyodide.globals.set("deflate", method === "deflate");
pyodide.globals.set("docstrings", bare !== "bare");
try {
  pyodide.runPython(`
from pathlib import Path
from bytecode import compiled_zip
Path("/target.zip").write_bytes(compiled_zip(Path("/sources.zip").read_bytes(), mount, deflate=deflate, docstrings=docstrings))
`);
  writeFileSync(target, pyodide.FS.readFile("/target.zip"));
} catch (error) {
  console.error(error.message); // not the engine's source, which Node would print with an uncaught error
  process.exitCode = 1;
}
