"""One change tried: written into the copy, the tests that reach it run until one fails, the copy made whole again."""

import os
import shutil
from collections.abc import Generator
from contextlib import contextmanager
from pathlib import Path

import pytest

from building.mutants import child
from building.mutants.changes import Change
from building.mutants.choice import Chooser, Round
from building.paths import BUILD, LOGS, ROOT, shown
from building.running import Failed

TREE = BUILD / "mutants/tree"
COPIED = ("core", "tests", "docs", "web", "pyproject.toml", "DEVELOPERS.md", "README.md")
LEFT = shutil.ignore_patterns("__pycache__", "node_modules", ".hypothesis", "*.pyc")
LEAST_S = 8
TIMES_LONGER = 3
SECOND_NS = 1_000_000_000
NO_TESTS = 5
"""pytest's word for having found none."""


class InOrder:
    """A pytest plugin that runs a round's tests in its order and no other."""

    def __init__(self, tests: Round) -> None:
        self.places = {test.name: place for place, test in enumerate(tests.tests)}

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        items[:] = sorted(
            (item for item in items if item.nodeid in self.places), key=lambda item: self.places[item.nodeid]
        )


def copy_tree() -> Path:
    """What is tested, as it is now. What was compiled of it before is kept, and not used where a file has changed."""
    for name in COPIED:
        source = ROOT / name
        if source.is_dir():
            shutil.copytree(source, TREE / name, ignore=LEFT, dirs_exist_ok=True)
        else:
            shutil.copy2(source, TREE / name)
    for path in TREE.rglob("*"):
        if path.is_file() and path.suffix != ".pyc" and not (ROOT / path.relative_to(TREE)).is_file():
            path.unlink()
    return TREE


def is_caught(change: Change, chooser: Chooser) -> bool:
    """Whether a test fails, or does not come to an end, with the change made."""
    with _made(change, chooser.tree):
        return any(_fails(tests, chooser.tree) for tests in chooser.rounds(change))


def _fails(tests: Round, tree: Path) -> bool:
    limit = LEAST_S + TIMES_LONGER * tests.seconds
    log = LOGS / "mutants-trial.log"
    status = child.in_child(lambda: child.run_pytest(tests.files, InOrder(tests), "-x"), tree, log, limit)
    if status == child.BROKEN:
        raise Failed(f"The tests could not be run. See {shown(log)}.")
    return status not in (0, NO_TESTS)


@contextmanager
def _made(change: Change, tree: Path) -> Generator[None]:
    place = tree / change.file
    source, status = place.read_text(encoding="utf-8"), place.stat()
    try:
        place.write_text(change.applied(source), encoding="utf-8")
        later_ns = status.st_mtime_ns + 2 * SECOND_NS
        os.utime(place, ns=(status.st_atime_ns, later_ns))  # of one size and one second, the old would pass for the new
        yield
    finally:
        place.write_text(source, encoding="utf-8")
        os.utime(place, ns=(status.st_atime_ns, status.st_mtime_ns))  # so that what was compiled of it still counts
