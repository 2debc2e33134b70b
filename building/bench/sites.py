"""The two sites that are measured side by side, both under .build: a build in between must not change one of them."""

import shutil
from pathlib import Path

from building import python_zips
from building import site as steps
from building.locking import alone
from building.paths import BUILD, DIST, MODULES, PYODIDE
from building.placing import Site

OURS = BUILD / "bench/ours"
AS_IT_COMES = BUILD / "bench/as-it-comes"
SCRIPTS = MODULES / ".cache/as-it-comes"  # under node_modules, where the bundler looks for what they import
ENGINE = ("pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "pyodide-lock.json")


def ours() -> Path:
    """A copy of dist/."""
    steps.build()
    shutil.rmtree(OURS, ignore_errors=True)
    return Path(shutil.copytree(DIST, OURS))


def as_it_comes() -> Path:
    """The same application and pages on npm's Pyodide as it comes: its own library, its lock file, sources in a zip."""
    site = Site()
    site.assets["pyodide"] = "assets/pyodide-as-it-comes/"
    for name in ENGINE:
        site.put_named(site.assets["pyodide"] + name, (PYODIDE / name).read_bytes())
    with alone():
        steps.add_static(site)
        site.put_hashed("app", "app.zip", python_zips.app_uncompiled("as it comes", site.assets))
        steps.add_pages(site, "as it comes", _scripts())
        AS_IT_COMES.parent.mkdir(parents=True, exist_ok=True)
        steps.write(site, AS_IT_COMES)
    return AS_IT_COMES


def _scripts() -> Path:
    shutil.rmtree(SCRIPTS, ignore_errors=True)
    shutil.copytree(steps.BROWSER, SCRIPTS)
    shutil.copyfile(Path(__file__).with_name("as_it_comes.js"), SCRIPTS / "python.js")
    return SCRIPTS
