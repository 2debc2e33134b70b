"""The two zips of bytecode that start in the tablet: Python's own library, and everything else.

Bytecode because compiling is what makes a plain start slow: under Node 1.0 s and 0.6 s for the app's imports, against
3.0-4.0 s and 3.5-3.9 s from source. Pyodide puts the library at /lib/python314.zip when given its address as
`stdLibURL`. The other zip is written to /lib/app.zip in `fsInit`, and `env: {PYTHONPATH: "/lib/app.zip"}` puts it on
sys.path before anything is imported. Both are documented options of `loadPyodide`.
"""

import io
import zipfile
from collections.abc import Iterator, Mapping
from importlib.metadata import distribution
from pathlib import Path, PurePosixPath

from building import environment, languages, licences, npm, routes, templates
from building.bytecode import add
from building.paths import BUILD, CORE, MODULES, PYODIDE, ROOT, WEB, shown
from building.running import Failed, step
from building.stamps import clear, content_hash, is_fresh, set_fresh

STDLIB = BUILD / "stdlib.zip"
APP = BUILD / "app.zip"
STDLIB_MOUNT = "/lib/python314.zip"  # where Pyodide looks for it
APP_MOUNT = "/lib/app.zip"  # where the worker writes it, named in PYTHONPATH
KEPT = ROOT / "building/stdlib_kept.txt"
FIRST = WEB / "browser/sitecustomize.py"
METHOD = "deflate"  # 3.2 MB on any host; stored is 9.4 MB where a host does not compress zips, and no faster to start
METADATA_WANTED = ("flask", "werkzeug")  # they ask for their own version at run time
BUILD_MODULE = '''"""Made by the build: which build this is, and where its static files lie."""

BUILD_ID = {!r}
ASSETS = {!r}
'''

Files = dict[str, bytes]


def stdlib() -> Path:
    return _compile("stdlib", _kept_stdlib(), STDLIB, STDLIB_MOUNT, "Python's library")


def app(build_id: str, assets: Mapping[str, str]) -> Path:
    """What others wrote, what we wrote, and which build this is: compiled apart, as they change apart."""
    parts = [
        _compile("packages", dict(_packages()), BUILD / "packages.zip", APP_MOUNT, "packages"),
        _compile("own", _own(), BUILD / "own.zip", APP_MOUNT, "core and web"),
    ]
    files = {name: data for part in parts for name, data in _contents(part).items()}
    APP.write_bytes(_zip(files | _build_module(build_id, assets), zipfile.ZIP_DEFLATED))
    return APP


def app_uncompiled(build_id: str, assets: Mapping[str, str]) -> bytes:
    """The same application from its sources: what the measurements hold the compiled one against."""
    files = _read(*_modules(), *templates.SOURCES.rglob("*.html"))
    return _zip(dict(_packages()) | files | _build_module(build_id, assets), zipfile.ZIP_DEFLATED)


def _own() -> Files:
    """core/ and web/, templates and routes as modules, catalogues, and what Python runs before all else."""
    made = dict((*templates.compiled(), *languages.compiled(), routes.written_down(), licences.written_down()))
    return _read(*_modules()) | made | {FIRST.name: FIRST.read_bytes()}


def _modules() -> Iterator[Path]:
    found = (path for folder in (CORE, WEB) for path in folder.rglob("*.py"))
    return (path for path in found if MODULES not in path.parents and path != FIRST)


def _read(*paths: Path) -> Files:
    return {shown(path): path.read_bytes() for path in paths}


def _build_module(build_id: str, assets: Mapping[str, str]) -> Files:
    return {"web/_build.py": BUILD_MODULE.format(build_id, dict(assets)).encode()}


def _kept_stdlib() -> Files:
    kept = [line.strip() for line in KEPT.read_text().splitlines() if line.strip() and not line.startswith("#")]
    with zipfile.ZipFile(PYODIDE / "python_stdlib.zip") as archive:
        there = set(archive.namelist())
        names = [_module_file(module, there) for module in kept]
        return {name: archive.read(name) for name in names}


def _module_file(module: str, there: set[str]) -> str:
    path = module.replace(".", "/")
    for name in (f"{path}/__init__.py", f"{path}.py"):
        if name in there:
            return name
    raise Failed(f"{module} in {shown(KEPT)} is not in Pyodide's library. Take the line out.")


def _packages() -> Iterator[tuple[str, bytes]]:
    for pin in environment.pins("app"):
        name = pin.partition("==")[0]
        found = distribution(name)
        for file in found.files or ():
            if _is_wanted(name.lower(), PurePosixPath(file)):
                yield PurePosixPath(file).as_posix(), Path(str(found.locate_file(file))).read_bytes()


def _is_wanted(package: str, path: PurePosixPath) -> bool:
    if path.parts[0].endswith(".dist-info"):
        return package in METADATA_WANTED and path.name == "METADATA"
    if package == "markupsafe":  # its fast half is native; the plain half does the same
        return path.name in ("__init__.py", "_native.py")
    return path.suffix == ".py" and not {"..", "tests"} & set(path.parts)


def _compile(name: str, files: Files, target: Path, mount: str, title: str) -> Path:
    sources = _zip(files)
    here = Path(__file__).parent
    inputs = content_hash(
        sources, METHOD, mount, here / "bytecode.py", here / "bytecode.mjs", WEB / "package-lock.json"
    )
    BUILD.mkdir(exist_ok=True)
    if is_fresh(name, inputs, [target]):
        return target
    with step(f"Compiling {title} ({len(files)} files)"):
        clear(name)
        source = BUILD / f"{name}-sources.zip"
        source.write_bytes(sources)
        remedy = f"{title[:1].upper()}{title[1:]} could not be compiled."
        npm.run_node(compile_command(source, target, mount), f"compile-{name}", remedy)
        set_fresh(name, inputs)
    return target


def compile_command(sources: Path, target: Path, mount: str) -> list[str | Path]:
    """Node's arguments. All but the library itself is compiled by a Python started from the compiled library.

    Only the library keeps its docstrings, for Pyodide reads some of them when it starts: half a megabyte less to fetch.
    """
    is_library = mount == STDLIB_MOUNT
    library = PYODIDE / "python_stdlib.zip" if is_library else STDLIB
    options = [METHOD] if is_library else [METHOD, "bare"]
    return [Path(__file__).parent / "bytecode.mjs", PYODIDE, library, sources, target, mount, *options]


def _zip(files: Files, method: int = zipfile.ZIP_STORED) -> bytes:
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as archive:
        for name in sorted(files):
            add(archive, name, files[name], method)
    return target.getvalue()


def _contents(path: Path) -> Files:
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist()}
