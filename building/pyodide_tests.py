"""How the core's tests are run inside the Pyodide that we ship, under Node. What is run lies in tests/pyodide."""

import json
import sys
import zipfile
from collections.abc import Iterator, Sequence
from importlib.metadata import distribution
from pathlib import Path

from building import npm
from building.paths import BUILD, DIST, PYODIDE, ROOT

HERE = ROOT / "tests/pyodide"
ONLY_FOR_TESTS = ("pytest", "pluggy", "iniconfig", "packaging", "Pygments")
PYTEST_ASKS_FOR = ("getpass", "tomllib")  # of Python's library; not shipped
EXTRACTED = BUILD / "pyodide-tests"
SETUP = BUILD / "pyodide-tests.json"


def suite_commands(pytest_arguments: Sequence[str], shares: int) -> list[list[str | Path]]:
    """The suite in so many shares: one interpreter uses one core."""
    _write_setup()
    run = [npm.node(), HERE / "run.mjs", SETUP, "suite.py"]
    return [[*run, f"{share}/{shares}", *pytest_arguments] for share in range(shares)]


def agreement_command() -> list[str | Path]:
    """The figures of every worksheet, computed here and in Pyodide, must be the same numbers."""
    _write_setup()
    return [sys.executable, HERE / "agreement.py", npm.node(), HERE / "run.mjs", SETUP]


def _write_setup() -> None:
    """Which shipped files to start from, and which of .venv's to lay beside them."""
    setup = {
        "root": str(ROOT),
        "pyodide": str(PYODIDE),
        "stdlib": str(_shipped("stdlib-*.zip")),
        "app": str(_shipped("app-*.zip")),
        "wasm": str(_shipped("pyodide-*/pyodide.asm.wasm")),
        "packages": [*_extracted(), *(pair for name in ONLY_FOR_TESTS for pair in _files(name))],
    }
    SETUP.write_text(json.dumps(setup))


def _shipped(pattern: str) -> Path:
    return next((DIST / "assets").glob(pattern))


def _extracted() -> Iterator[tuple[str, str]]:
    with zipfile.ZipFile(PYODIDE / "python_stdlib.zip") as archive:
        for name in archive.namelist():
            if name.endswith(".py") and name.removesuffix(".py").split("/")[0] in PYTEST_ASKS_FOR:
                yield name, archive.extract(name, EXTRACTED)


def _files(package: str) -> list[tuple[str, str]]:
    found = distribution(package)
    wanted = [
        file for file in found.files or () if file.suffix == ".py" or file.name in ("METADATA", "entry_points.txt")
    ]
    return [(file.as_posix(), str(found.locate_file(file))) for file in wanted if ".." not in file.parts]
