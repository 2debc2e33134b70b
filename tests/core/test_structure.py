"""The house keeps its storeys: who imports whom, and what the core does without."""

import ast
from pathlib import Path

import pytest

import core

FOLDER = Path(core.__file__).parent
MODULES = {
    ".".join(["core", *path.relative_to(FOLDER).with_suffix("").parts]): ast.parse(path.read_text("utf-8"))
    for path in sorted(FOLDER.rglob("*.py"))
}
if not MODULES:
    pytest.skip("only bytecode is here", allow_module_level=True)
every_module = pytest.mark.parametrize("name", MODULES)

STAGES = ("chamber", "mix", "ferment", "dry", "release")
ASKED_BY_RELEASE = {"dry", "ferment", "mix"}
AIR = {"core.air", "core.water", "core.saturation", "core.vapour"}
GROUND = {
    "core",
    *(f"core.{name}" for name in ("meat", "densities", "working", "quantities", "units", "roots")),
    *(f"core.{name}" for name in ("language", "numbers_within", "sentence")),
    *(f"core.{name}" for name in ("reading", "sources", "refusals", "usual", "verdict", "worksheet")),
}
ABOVE = {"core.worksheets", "core.command_line", "core.command_options", "core.__main__"}
"""What gathers the stages' single sums and prints them."""

NEITHER_CLOCK_NOR_CHANCE_NOR_FILE_NOR_NETWORK = {
    *("time", "random", "secrets", "os", "io", "pathlib", "tempfile", "shutil", "glob", "fileinput", "sqlite3"),
    *("socket", "ssl", "http", "urllib", "asyncio", "subprocess", "threading", "multiprocessing", "ctypes"),
    *("importlib", "pkgutil", "pickle", "js", "pyodide", "flask", "werkzeug", "jinja2", "web"),
}
NOT_CALLED = {"open", "exec", "eval", "compile", "input", "print", "breakpoint", "__import__"}
NOT_ASKED = {"now", "today", "utcnow", "uuid1", "uuid4", "uuid6", "uuid7", "urandom"}
AT_THE_COMMAND_LINE = {"core.__main__"}
"""Reads standard input and prints; it is no part of what the screens import."""
READS_WHAT_SHIPS_WITH_IT = {"core.shipped"}


def imports(name: str) -> set[str]:
    """Full names of what a module imports; "from core import air" is core.air."""
    found: set[str] = set()
    for node in ast.walk(MODULES[name]):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{name} imports by dots"
            inner = {f"{node.module}.{alias.name}" for alias in node.names}
            found |= {each for each in inner if each in MODULES} or {str(node.module)}
    return found


def of_core(name: str) -> set[str]:
    return {each for each in imports(name) if each.split(".")[0] == "core"}


def stage_of(name: str) -> str | None:
    parts = name.split(".")
    return parts[1] if len(parts) > 1 and parts[1] in STAGES else None


def called(name: str) -> set[str]:
    functions = [node.func for node in ast.walk(MODULES[name]) if isinstance(node, ast.Call)]
    return {func.id for func in functions if isinstance(func, ast.Name)}


def asked(name: str) -> set[str]:
    functions = [node.func for node in ast.walk(MODULES[name]) if isinstance(node, ast.Call)]
    return {func.attr for func in functions if isinstance(func, ast.Attribute)}


def test_the_whole_core_is_looked_at():
    assert {"core.daybook.book", "core.release.readiness", "core.working"} <= set(MODULES)


@every_module
def test_has_a_docstring(name: str):
    assert ast.get_docstring(MODULES[name]) or not MODULES[name].body


@every_module
def test_imports_no_clock_chance_file_network_or_web(name: str):
    tops = {each.split(".")[0] for each in imports(name)}
    assert name in READS_WHAT_SHIPS_WITH_IT or not tops & NEITHER_CLOCK_NOR_CHANCE_NOR_FILE_NOR_NETWORK


@every_module
def test_calls_nothing_that_reads_files_or_runs_text(name: str):
    assert name in AT_THE_COMMAND_LINE or not called(name) & NOT_CALLED


@every_module
def test_asks_neither_the_clock_nor_chance(name: str):
    assert not asked(name) & NOT_ASKED


@pytest.mark.parametrize("name", [name for name in MODULES if name in GROUND])
def test_the_ground_knows_only_itself(name: str):
    assert of_core(name) <= GROUND


@pytest.mark.parametrize("name", [name for name in MODULES if name in AIR])
def test_air_and_water_know_only_the_ground(name: str):
    assert of_core(name) <= GROUND | AIR


@pytest.mark.parametrize("name", [name for name in MODULES if stage_of(name)])
def test_a_stage_knows_no_other_stage_but_those_that_release_asks(name: str):
    own = stage_of(name)
    others = {stage_of(each) for each in of_core(name)} - {own, None}
    assert others <= (ASKED_BY_RELEASE if own == "release" else set())


@pytest.mark.parametrize("name", [name for name in MODULES if stage_of(name)])
def test_a_stage_knows_neither_daybook_nor_register(name: str):
    assert not {each for each in of_core(name) if each.startswith("core.daybook") or each in ABOVE}


@pytest.mark.parametrize("name", [name for name in MODULES if name.startswith("core.daybook")])
def test_the_daybook_knows_no_register(name: str):
    assert not of_core(name) & ABOVE


@pytest.mark.parametrize("name", [name for name in MODULES if name in ABOVE or name.endswith("_sheets")])
def test_the_single_sums_know_no_daybook(name: str):
    assert not {each for each in of_core(name) if each.startswith("core.daybook")}


def reached(*names: str) -> set[str]:
    """All that these import, and what that imports."""
    found: set[str] = set()
    waiting = set(names)
    while waiting:
        found |= waiting
        waiting = {each for name in waiting for each in of_core(name) if each in MODULES} - found
    return found


def test_what_today_judges_by_imports_neither_a_reader_of_logs_nor_the_proof_of_a_chamber():
    """They are half of the core: its first screen would wait for them."""
    due = {name for name in MODULES if name.startswith("core.daybook.due.")}
    assert not {"core.chamber.logs.reading", "core.chamber.settling.analysis"} & reached(*due)
