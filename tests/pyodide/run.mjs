// node run.mjs SETUP.json SCRIPT.py [argument ...]
// Starts the shipped Pyodide from the shipped zips, lays the tests beside it and runs a script of this folder there.
import { readFileSync, readdirSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";

const [setupFile, script, ...options] = process.argv.slice(2);
const setup = JSON.parse(readFileSync(setupFile, "utf8"));
const { loadPyodide } = await import(pathToFileURL(join(setup.pyodide, "pyodide.mjs")));
const lock = JSON.parse(readFileSync(join(setup.pyodide, "pyodide-lock.json"), "utf8"));
if (!readFileSync(setup.wasm).equals(readFileSync(join(setup.pyodide, "pyodide.asm.wasm")))) {
  throw new Error("The shipped engine is not the installed one. Build again.");
}

const TESTS = "/home/pyodide/tests";
const PACKAGES = "/home/pyodide/packages";
const pyodide = await loadPyodide({
  indexURL: setup.pyodide,
  stdLibURL: setup.stdlib,
  lockFileContents: { info: lock.info, packages: {} },
  packageBaseUrl: setup.pyodide,
  env: { PYTHONPATH: `/lib/app.zip:${PACKAGES}`, PYTHONDONTWRITEBYTECODE: "1" },
  fsInit: fill,
});
pyodide.globals.set("arguments", pyodide.toPy(options));
try {
  process.exitCode = pyodide.runPython(readFileSync(join(setup.root, "tests/pyodide", script), "utf8")) ?? 0;
} catch (error) {
  console.error(error.message); // not the engine's source, which Node would print with an uncaught error
  process.exitCode = 1;
}

async function fill(memory) {
  memory.writeFile("/lib/app.zip", readFileSync(setup.app));
  for (const [name, source] of setup.packages) put(memory, `${PACKAGES}/${name}`, source);
  lay(memory, join(setup.root, "tests/core"), `${TESTS}/core`);
  lay(memory, join(setup.root, "tests/pyodide"), `${TESTS}/pyodide`);
  lay(memory, join(setup.root, "tests/fixtures"), `${TESTS}/fixtures`);
  for (const file of ["pyproject.toml", "tests/__init__.py"]) put(memory, `/home/pyodide/${file}`, join(setup.root, file));
}

function lay(memory, folder, target) {
  for (const entry of readdirSync(folder)) {
    const source = join(folder, entry);
    if (!statSync(source).isDirectory()) put(memory, `${target}/${entry}`, source);
    else if (entry !== "__pycache__") lay(memory, source, `${target}/${entry}`);
  }
}

function put(memory, target, source) {
  memory.mkdirTree(dirname(target));
  memory.writeFile(target, readFileSync(source));
}
