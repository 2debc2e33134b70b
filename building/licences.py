"""What others wrote and we ship, each with the text of its licence out of its own package; built into the app's page of
licences. A package whose licence is not known here fails the build: somebody has to read it first."""

import json
import re
from collections.abc import Iterator
from importlib.metadata import Distribution, distribution
from pathlib import Path
from pprint import pformat
from typing import Any

from building import environment
from building.paths import MODULES, ROOT, WEB
from building.running import Failed

TEXT = '''"""Made by the build: see building/licences.py."""

LICENCES = {}
'''
KNOWN = frozenset({"MIT", "BSD-2-Clause", "BSD-3-Clause", "BSD-0-Clause", "ISC", "MPL-2.0", "OFL-1.1", "PSF-2.0"})
"""Read, and what they ask for is done: their texts are shipped, and the MPL's says where the source is."""
SAID_IN_WORDS = {"MIT License": "MIT", "BSD License": "BSD-3-Clause"}
"""How a package says it that names its licence in words only."""
NOT_SHIPPED = re.compile("@types/|ws$")
"""Asked for by what we ship, and in none of our files: types, and what is for Node alone."""
DRAWN_IN = ("@fontsource-variable/atkinson-hyperlegible-next", "@fontsource-variable/source-serif-4")
NO_TEXT = {"pyodide": MODULES / "axe-core/LICENSE"}
"""A package without the text of its licence, and another's file that holds the same text."""
PYTHON = "Python's own library, within pyodide"

Licence = tuple[str, str, str]
"""Name and version, the licence's short name, its text."""


def written_down() -> tuple[str, bytes]:
    return "web/_licences.py", TEXT.format(pformat(list(every()), width=120)).encode()


def every() -> Iterator[Licence]:
    """Ours first. Raises Failed."""
    yield "Curing Daybook", "MIT", (ROOT / "LICENSE").read_text(encoding="utf-8")
    for pin in environment.pins("app"):
        yield _of_python(distribution(pin.partition("==")[0]))
    yield PYTHON, "PSF-2.0", _of_python(distribution("typing_extensions"))[2]  # its text is Python's own
    for name in sorted({*_asked_for(json.loads((WEB / "package.json").read_text())), *DRAWN_IN}):
        yield _of_npm(name, MODULES / name)


def _of_python(found: Distribution) -> Licence:
    name, version = found.metadata["Name"], found.version
    return f"{name} {version}", known(name, _named(found)), _text(name, _files(found))


def _named(found: Distribution) -> str:
    """As the package says it: by a short name, or in words."""
    for field in ("License-Expression", "License"):
        if field in found.metadata and found.metadata[field] in KNOWN:
            return found.metadata[field]
    said = [line.rpartition(" :: ")[2] for line in found.metadata.get_all("Classifier") or [] if "License" in line]
    return next((SAID_IN_WORDS[each] for each in said if each in SAID_IN_WORDS), found.metadata["License-Expression"])


def _files(found: Distribution) -> list[Path]:
    inside = (each for each in found.files or () if ".dist-info" in each.parts[0])
    return [Path(str(found.locate_file(each))) for each in inside if re.match("LICEN[CS]E|COPYING|NOTICE", each.name)]


def _of_npm(name: str, folder: Path) -> Licence:
    said: dict[str, Any] = json.loads((folder / "package.json").read_text(encoding="utf-8"))
    files = sorted(each for each in folder.iterdir() if re.match("LICEN[CS]E|COPYING|NOTICE", each.name, re.IGNORECASE))
    text = _text(name, files or [NO_TEXT[name]] if name in NO_TEXT else files)
    if said.get("license") == "MPL-2.0":
        text = f"Its source: {said['repository']['url'].removeprefix('git+')}\n\n{text}"
    return f"{name} {said['version']}", known(name, said.get("license")), text


def known(name: str, licence: object) -> str:
    if licence not in KNOWN:
        raise Failed(
            f"{name} is under {licence}. Read it and name it in building/licences.py, or leave the package out."
        )
    return str(licence)


def _text(name: str, files: list[Path]) -> str:
    if not files:
        raise Failed(
            f"{name} ships no text of its licence. Name one in building/licences.py, or leave the package out."
        )
    return "\n\n".join(each.read_text(encoding="utf-8").strip() for each in files)


def _asked_for(package: dict[str, Any]) -> set[str]:
    """With what they ask for in turn, as far as it comes into our files."""
    found: set[str] = set()
    for name in package.get("dependencies", {}):
        if not NOT_SHIPPED.match(name):
            found |= {name, *_asked_for(json.loads((MODULES / name / "package.json").read_text(encoding="utf-8")))}
    return found
