"""Which test reaches which function of the core: measured once, a file of tests at a time, and kept under .build."""

import json
import sys
import time
from importlib import import_module
from pathlib import Path
from types import ModuleType
from typing import Any

from attrs import asdict, frozen
from coverage import Coverage, CoverageData

from building.mutants import child
from building.mutants.flow import functions_by_line
from building.paths import BUILD, LOGS, shown
from building.running import Failed
from building.stamps import content_hash

KEPT = BUILD / "mutants/reach"
ENOUGH_S = 600
ALL_PASSED, SOME_FAILED, NO_TESTS = 0, 1, 5
"""pytest's own words."""
ON_IMPORT, BEFORE_ANY = "on import", "before any test"


@frozen
class Test:
    name: str
    seconds: float
    functions: frozenset[tuple[str, str]]


@frozen
class TestFile:
    file: str
    tests: tuple[Test, ...]
    helpers: tuple[str, ...]
    """The other files of the tree's tests that it imports."""
    libraries: tuple[str, ...]
    before_any: frozenset[tuple[str, str]] = frozenset()
    """The functions that are run while the file itself is read; what they give is there for every test."""
    failing: tuple[str, ...] = ()
    """Tests that fail on the core as it is: they can tell nothing, and are left out."""


class Watching:
    """A pytest plugin: a context for each test, and the processor's time it takes, busy machine or not."""

    def __init__(self, watch: Coverage) -> None:
        self.watch = watch
        self.caches: list[Any] = []
        self.begun: dict[str, float] = {}
        self.seconds: dict[str, float] = {}
        self.failing: set[str] = set()

    def pytest_runtest_logstart(self, nodeid: str) -> None:
        self.watch.switch_context(nodeid)
        for cache in self.caches:
            cache.cache_clear()  # or only the first test would reach what fills it
        self.begun[nodeid] = time.process_time()

    def pytest_runtest_logreport(self, report: Any) -> None:
        if report.failed:
            self.failing.add(report.nodeid)

    def pytest_runtest_logfinish(self, nodeid: str) -> None:
        self.seconds[nodeid] = time.process_time() - self.begun[nodeid]


def measured(tree: Path, file: str, though_changed: bool = False) -> TestFile:
    """From what is kept, unless the tests or a file they reach have changed since and that matters."""
    kept = KEPT / f"{Path(file).stem}-{content_hash(file)[:8]}.json"
    if kept.is_file():
        record = json.loads(kept.read_text(encoding="utf-8"))
        if though_changed or record["inputs"] == _inputs(tree, record["reached"]):
            return _from_record(record["tests"])
    KEPT.mkdir(parents=True, exist_ok=True)
    kept.unlink(missing_ok=True)
    log = LOGS / "mutants-reach.log"
    status = child.in_child(lambda: _measure(tree, file, kept), tree, log, ENOUGH_S)
    if not kept.is_file():
        raise Failed(f"{file} cannot be run (status {status}). Mend that first; see {shown(log)}.")
    return _from_record(json.loads(kept.read_text(encoding="utf-8"))["tests"])


def _measure(tree: Path, file: str, kept: Path) -> int:
    sys.dont_write_bytecode = False  # the one time: the next runs start from what this one has compiled
    watch = Coverage(data_file=None, source=[str(tree / "core")], config_file=False, messages=False)
    watching = Watching(watch)
    watch.start()
    watch.switch_context(ON_IMPORT)
    watching.caches = _caches(tree)
    watch.switch_context(BEFORE_ANY)
    status = child.run_pytest([file], watching)
    watch.stop()
    if status not in (ALL_PASSED, SOME_FAILED, NO_TESTS):
        return status
    functions = _functions_by_test(watch.get_data(), tree)
    nothing: set[tuple[str, str]] = set()
    tests = [
        Test(name, seconds, frozenset(functions.get(name, nothing)))
        for name, seconds in watching.seconds.items()
        if name not in watching.failing
    ]
    ours, libraries = _imported(tree)
    helpers = tuple(each for each in ours if each.startswith("tests/"))
    tables = (path.relative_to(tree).as_posix() for path in (tree / file).parent.glob("*.csv"))
    reached = sorted({*helpers, *tables, *(each for test in tests for each, _ in test.functions)})
    before_any, failing = frozenset(functions.get(BEFORE_ANY, nothing)), tuple(sorted(watching.failing))
    found = asdict(TestFile(file, tuple(tests), helpers, libraries, before_any, failing))
    for each in (*found["tests"], found):
        key = "functions" if "functions" in each else "before_any"
        each[key] = sorted(each[key])
    record = {"inputs": _inputs(tree, reached), "reached": reached, "tests": found}
    kept.write_text(json.dumps(record), encoding="utf-8")
    return 0


def _caches(tree: Path) -> list[Any]:
    """The core read whole, and every cache at the top of one of its modules."""
    modules: list[ModuleType] = []
    for path in sorted((tree / "core").rglob("*.py")):
        name = path.relative_to(tree).with_suffix("").as_posix().replace("/", ".").removesuffix(".__init__")
        modules.append(import_module(name))
    return [each for module in modules for each in vars(module).values() if hasattr(each, "cache_clear")]


def _functions_by_test(data: CoverageData, tree: Path) -> dict[str, set[tuple[str, str]]]:
    found: dict[str, set[tuple[str, str]]] = {}
    for path in data.measured_files():
        file = Path(path).relative_to(tree).as_posix()
        names = functions_by_line(Path(path).read_text(encoding="utf-8"))
        for line, tests in data.contexts_by_lineno(path).items():
            for test in tests if line in names else ():
                found.setdefault(test, set()).add((file, names[line]))
    return found


def _imported(tree: Path) -> tuple[tuple[str, ...], tuple[str, ...]]:
    ours: list[str] = []
    libraries: list[str] = []
    for name, module in list(sys.modules.items()):
        path = getattr(module, "__file__", None)
        if path and Path(path).is_relative_to(tree):
            ours.append(Path(path).relative_to(tree).as_posix())
        elif path and not name.startswith(("building", "__")):
            libraries.append(name)
    return tuple(sorted(ours)), tuple(libraries)


def _inputs(tree: Path, files: list[str]) -> str:
    return content_hash(*(part for file in files for part in (file, _bytes(tree / file))))


def _bytes(path: Path) -> bytes:
    return path.read_bytes() if path.is_file() else b"\0absent"


def _from_record(record: dict[str, Any]) -> TestFile:
    tests = tuple(Test(each["name"], each["seconds"], _functions(each["functions"])) for each in record["tests"])
    before_any = _functions(record.get("before_any", []))
    failing = tuple(record.get("failing", ()))
    return TestFile(record["file"], tests, tuple(record["helpers"]), tuple(record["libraries"]), before_any, failing)


def _functions(pairs: list[list[str]]) -> frozenset[tuple[str, str]]:
    return frozenset((file, name) for file, name in pairs)
