"""dist/: static files for any web host, under any path. The same sources give the same bytes."""

import gzip
import json
import shutil
import tomllib
from html import escape
from pathlib import Path

from building import esbuild, faces, languages, python_zips
from building.locking import alone
from building.paths import BUILD, DIST, MODULES, PYODIDE, ROOT, WEB, shown
from building.placing import Site
from building.policy import CONTENT_SECURITY_POLICY
from building.running import Failed, step
from building.stamps import clear, content_hash, is_fresh, set_fresh
from core.language import ENGLISH

STATIC = WEB / "static"
BROWSER = WEB / "browser"
SHELL = WEB / "shell.html"
MANIFEST = WEB / "manifest.webmanifest"
ASIDE = BUILD / "dist"
PRECACHED = BUILD / "precached.json"
CHARSET = '<meta charset="utf-8">'
WASM = "pyodide.asm.wasm"


def version() -> str:
    return tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["version"]


def build() -> None:
    """Make dist/ unless it is there and nothing it is made from has changed."""
    with alone():
        build_id = content_hash(*_sources())[:16]
        if is_fresh("site", build_id, [DIST / "sw.js"]):
            return
        clear("site")
        site = _gather(build_id)
        with step("Writing dist"):
            write(site, DIST)
        PRECACHED.write_text(json.dumps([entry["url"] for entry in site.precached] + ["sw.js"]))
        set_fresh("site", build_id)


def _sources() -> list[Path]:
    """Everything that decides what is in dist/."""
    web = [path for path in WEB.rglob("*") if MODULES not in path.parents]
    ours = [*web, *(ROOT / "core").rglob("*.py"), *(ROOT / "building").glob("*.*"), ROOT / "pyproject.toml"]
    return sorted(path for path in ours if path.is_file() and "__pycache__" not in path.parts)


def _gather(build_id: str) -> Site:
    """In the order in which they name each other: a file's hash is known before it is named."""
    site = Site()
    site.put_hashed("stdlib", "stdlib.zip", python_zips.stdlib().read_bytes())
    add_static(site)
    site.put_hashed("app", "app.zip", python_zips.app(build_id, site.assets).read_bytes())
    with step("Bundling scripts"):
        site.put_in_folder("wasm", "pyodide", WASM, (PYODIDE / WASM).read_bytes())
        add_pages(site, build_id)
    return site


def add_pages(site: Site, build_id: str, scripts: Path = BROWSER) -> None:
    """What names the files gathered before. scripts: the folder of what we write in JavaScript."""
    _add_script(site, "worker", build_id, scripts)
    _add_script(site, "chart", build_id, scripts)
    _add_script(site, "page", build_id, scripts)
    words = languages.words_of_scripts()[ENGLISH] | {"build_id": build_id, "version": version()}
    site.put_named("manifest.webmanifest", site.fill(_text(MANIFEST), words, shown(MANIFEST)).encode())
    escaped = {key: escape(text) for key, text in words.items()}
    site.put_named("index.html", site.fill(_shell(), escaped, shown(SHELL)).encode())
    # Last, as it lists all the others. It is not in its own list: the browser keeps it by itself.
    values = {"BUILD_ID": build_id, "ASSETS": site.assets, "PRECACHE": site.precached}
    site.files["sw.js"] = esbuild.script(scripts / "service_worker.js", values, kind="iife")


def add_static(site: Site) -> None:
    faces.add_faces(site)
    sheets = sorted(STATIC.glob("*.css"))
    site.put_hashed("style", "style.css", faces.named_as_placed(esbuild.style(sheets), site))
    for path in sorted(STATIC.rglob("*")):
        if path.is_file() and path not in sheets:
            name = path.relative_to(STATIC).as_posix()
            site.put_hashed(name, name, path.read_bytes())


def _add_script(site: Site, name: str, build_id: str, scripts: Path) -> None:
    values = {"BUILD_ID": build_id, "ASSETS": site.assets, "SIZES": site.sizes, "WORDS": languages.words_of_scripts()}
    site.put_hashed(name, f"{name}.js", esbuild.script(scripts / f"{name}.js", values))


def _shell() -> str:
    """The page, with what it may do said in it: a static host may not send the header."""
    policy = f'<meta http-equiv="Content-Security-Policy" content="{CONTENT_SECURITY_POLICY}">'
    text = _text(SHELL)
    if text.count(CHARSET) != 1:
        raise Failed(f"{shown(SHELL)} must hold {CHARSET} once: the policy goes after it.")
    return text.replace(CHARSET, f"{CHARSET}\n    {policy}")


def _text(path: Path) -> str:
    if not path.exists():
        raise Failed(f"{shown(path)} is missing. Restore it from the repository.")
    return path.read_text(encoding="utf-8")


def write(site: Site, folder: Path) -> None:
    """Aside first and then in one move: what is being served is never half a site."""
    shutil.rmtree(ASIDE, ignore_errors=True)
    for path, data in site.files.items():
        target = ASIDE / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(data)
    shutil.rmtree(folder, ignore_errors=True)
    ASIDE.rename(folder)


def first_visit_bytes() -> int:
    """What a first visit transfers, each file gzipped where that makes it smaller."""
    paths = [DIST / url for url in json.loads(PRECACHED.read_text())]
    contents = [path.read_bytes() for path in paths if path.exists()]
    return sum(min(len(data), len(gzip.compress(data, 9))) for data in contents)


def summary() -> str:
    files = [path for path in DIST.rglob("*") if path.is_file()]
    return f"{len(files)} files, {sum(path.stat().st_size for path in files) / 1e6:.1f} MB"
