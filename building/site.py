"""dist/: static files for any web host, under any path. The same sources give the same bytes."""

import gzip
import json
import shutil
import tomllib
from pathlib import Path

from building import esbuild, python_zips
from building.paths import BUILD, DIST, MODULES, PYODIDE, ROOT, WEB, shown
from building.placing import Site
from building.policy import CONTENT_SECURITY_POLICY
from building.running import step
from building.stamps import clear, content_hash, is_fresh, set_fresh

STATIC = WEB / "static"
BROWSER = WEB / "browser"
SHELL = WEB / "shell.html"
MANIFEST = WEB / "manifest.webmanifest"
PRECACHED = BUILD / "precached.json"
PYODIDE_FILES = ("pyodide.asm.mjs", "pyodide.asm.wasm")


def version() -> str:
    return tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["version"]


def build() -> None:
    """Make dist/ unless it is there and nothing it is made from has changed."""
    build_id = content_hash(*_sources())[:16]
    if is_fresh("site", build_id, [DIST / "sw.js"]):
        return
    clear("site")
    BUILD.mkdir(exist_ok=True)
    site = _gather(build_id)
    with step("Writing dist"):
        _write(site)
    set_fresh("site", build_id)


def _sources() -> list[Path]:
    """Everything that decides what is in dist/."""
    web = [path for path in WEB.rglob("*") if MODULES not in path.parents]
    ours = [*web, *(ROOT / "core").rglob("*.py"), *(ROOT / "building").glob("*.*"), ROOT / "pyproject.toml"]
    return sorted(path for path in ours if path.is_file() and "__pycache__" not in path.parts)


def _gather(build_id: str) -> Site:
    site = Site()
    _add_static(site)
    shown_by_app = dict(site.assets)
    words = {"build_id": build_id, "policy": CONTENT_SECURITY_POLICY, "version": version()}
    site.put_hashed("stdlib", "stdlib.zip", python_zips.stdlib().read_bytes())
    site.put_hashed("app", "app.zip", python_zips.app(_build_module(build_id, shown_by_app)).read_bytes())
    site.put_folder("pyodide", "pyodide", {name: (PYODIDE / name).read_bytes() for name in PYODIDE_FILES})
    site.assets["wasm"] = site.assets["pyodide"] + "pyodide.asm.wasm"
    with step("Bundling scripts"):
        _add_script(site, "worker", build_id)
        _add_script(site, "page", build_id)
        _add_text(site, MANIFEST, "manifest.webmanifest", words)
        _add_text(site, SHELL, "index.html", words)
        _add_service_worker(site, build_id)
    return site


def _add_static(site: Site) -> None:
    sheets = sorted(STATIC.glob("*.css"))
    if sheets:
        site.put_hashed("style", "style.css", esbuild.style(sheets))
    for path in sorted(STATIC.rglob("*")):
        if path.is_file() and path not in sheets:
            name = path.relative_to(STATIC).as_posix()
            site.put_hashed(name, name, path.read_bytes())


def _build_module(build_id: str, assets: dict[str, str]) -> str:
    return f'"""Made by the build: which build this is, and where its static files lie."""\n\nBUILD_ID = {build_id!r}\nASSETS = {assets!r}\n'


def _add_script(site: Site, name: str, build_id: str) -> None:
    source = BROWSER / f"{name}.js"
    if _is_there(source):
        site.put_hashed(name, f"{name}.js", esbuild.script(source, {"ASSETS": site.assets, "BUILD_ID": build_id}))


def _add_text(site: Site, source: Path, target: str, words: dict[str, str]) -> None:
    if _is_there(source):
        site.put_named(target, site.fill(source.read_text(encoding="utf-8"), words).encode())


def _add_service_worker(site: Site, build_id: str) -> None:
    """Last, as it lists all the others. It is not in its own list: the browser keeps it by itself."""
    source = BROWSER / "service_worker.js"
    if _is_there(source):
        values = {"ASSETS": site.assets, "BUILD_ID": build_id, "PRECACHE": site.precached}
        site.files["sw.js"] = esbuild.script(source, values, kind="iife")  # not every browser takes a module here


def _is_there(source: Path) -> bool:
    if not source.exists():
        print(f"  left out: {shown(source)} is not there", flush=True)
    return source.exists()


def _write(site: Site) -> None:
    shutil.rmtree(DIST, ignore_errors=True)
    for path, data in site.files.items():
        target = DIST / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(data)
    PRECACHED.write_text(json.dumps([entry["url"] for entry in site.precached] + ["sw.js"]))


def first_visit_bytes() -> int:
    """What a first visit transfers, each file gzipped where that makes it smaller."""
    paths = [DIST / url for url in json.loads(PRECACHED.read_text())]
    contents = [path.read_bytes() for path in paths if path.exists()]
    return sum(min(len(data), len(gzip.compress(data, 9))) for data in contents)


def summary() -> str:
    files = [path for path in DIST.rglob("*") if path.is_file()]
    return f"{len(files)} files, {sum(path.stat().st_size for path in files) / 1e6:.1f} MB"
