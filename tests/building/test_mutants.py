"""The parts of `build.py test mutants`, on a module of a few lines; what is listed as equivalent is still there."""

import os
from pathlib import Path

import pytest
from attrs import evolve

from building.commands import ASKED_FOR, STAGES
from building.mutants import child, command, equivalent, reach, trial
from building.mutants import standing as standing_process
from building.mutants.changes import Change, changes_of
from building.mutants.choice import Chooser
from building.mutants.equivalent import Equivalent
from building.mutants.flow import defined_at, felt, functions_by_line, parts_of
from building.mutants.standing import ANEW, CAUGHT, SURVIVED, Standing
from building.paths import ROOT
from building.running import Failed

TOY = '''"""A toy."""

LEAST = 50


def enough(given, *, spare=0):
    """At least so much."""
    if given - spare < LEAST and not spare > 2.5:
        return False
    return True


def forgotten(given):
    return given * 2
'''
TEST = """
from core.toy import enough, forgotten

def test_the_limit_is_enough():
    assert enough(50) and not enough(49)
    assert forgotten
"""
forks = pytest.mark.skipif(not hasattr(os, "fork"), reason="this system cannot fork a process")


def made(before: str) -> list[str]:
    return [change.after for change in changes_of("core/toy.py", TOY) if change.before == before]


def change_to(after: str) -> Change:
    (found,) = [change for change in changes_of("core/toy.py", TOY) if change.after == after]
    return found


def test_a_limit_is_moved_by_one_and_by_a_hundredth():
    assert made("LEAST = 50") == ["LEAST = 49", "LEAST = 49.5", "LEAST = 51", "LEAST = 50.5"]


@pytest.mark.parametrize(
    "after",
    [
        "if given + spare < LEAST and not spare > 2.5:",
        "if given - spare <= LEAST and not spare > 2.5:",
        "if given - spare < LEAST or not spare > 2.5:",
        "if given - spare < LEAST and spare > 2.5:",
        "if given - spare < LEAST and not spare >= 2.5:",
        "if given - spare < LEAST and not spare > 2.525:",
        "if given - spare < LEAST and not spare > 2.475:",
        "if not (given - spare < LEAST and not spare > 2.5):",
    ],
)
def test_a_condition_is_changed_in_every_way(after: str):
    before = "if given - spare < LEAST and not spare > 2.5:"
    assert after in [" ".join(each.split()) for each in made(before)]


def test_the_star_that_parts_parameters_is_no_product():
    assert made("def enough(given, *, spare=0):") == [
        "def enough(given, *, spare=-1):",
        "def enough(given, *, spare=1):",
    ]


def test_a_changed_file_differs_in_that_place_alone():
    assert change_to("return given / 2").applied(TOY) == TOY.replace("given * 2", "given / 2")


def test_a_change_is_known_again_when_its_line_has_moved():
    moved = changes_of("core/toy.py", TOY.replace("LEAST = 50\n", "LEAST = 50\nMOST = 60\n"))
    assert change_to("return given / 2").key in {change.key for change in moved}


def test_a_line_belongs_to_the_function_whose_body_it_is_in():
    lines = functions_by_line(TOY)
    assert (lines.get(3), lines.get(6), lines[8], lines[14]) == (None, None, "enough", "forgotten")


def test_a_table_written_as_a_comprehension_is_the_one_name_it_is_kept_under():
    tables = "SQUARES = {n: n * n for n in range(9)}\nHALVES = [m / 2 for m, _ in SQUARES.items()]"
    assert [defined_at(tables, line) for line in (1, 2)] == [["SQUARES"], ["HALVES"]]


def test_a_constant_is_felt_where_it_is_used():
    where = felt(parts_of("core/toy.py", TOY), ("core/toy.py", ""), [("core/toy.py", "LEAST")])
    assert ("core/toy.py", "enough") in where.functions
    assert ("core/toy.py", "forgotten") not in where.functions


def test_a_constant_is_felt_through_what_is_computed_from_it_on_import():
    through = "from core.toy import enough\nTABLE = [enough(n) for n in range(3)]\ndef shown():\n    return TABLE\n"
    parts = [*parts_of("core/toy.py", TOY), *parts_of("core/table.py", through)]
    assert ("core/table.py", "shown") in felt(parts, ("core/toy.py", ""), [("core/toy.py", "LEAST")]).functions


@pytest.fixture
def chooser(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Chooser:
    monkeypatch.setattr(reach, "KEPT", tmp_path / "kept")
    monkeypatch.setattr(reach, "LOGS", tmp_path)
    monkeypatch.setattr(trial, "LOGS", tmp_path)
    monkeypatch.setattr(standing_process, "LOGS", tmp_path)
    tree = tmp_path / "tree"
    for name, text in {"core/__init__.py": "", "core/toy.py": TOY, "tests/test_toy.py": TEST}.items():
        (tree / name).parent.mkdir(parents=True, exist_ok=True)
        (tree / name).write_text(text)
    (tree / "pyproject.toml").write_text("[tool.pytest.ini_options]\n")
    return Chooser(tree, ["core/toy.py"], [reach.measured(tree, "tests/test_toy.py")])


@forks
def test_a_moved_limit_is_caught_and_the_copy_is_whole_again(chooser: Chooser):
    assert trial.is_caught(change_to("LEAST = 49"), chooser)
    assert (chooser.tree / "core/toy.py").read_text() == TOY


@forks
def test_a_change_that_no_test_asks_about_survives(chooser: Chooser):
    assert not trial.is_caught(change_to("return given / 2"), chooser)


@forks
def test_a_test_that_fails_anyway_is_named_and_left_out(chooser: Chooser):
    (chooser.tree / "tests/test_toy.py").write_text(TEST + "\ndef test_nonsense():\n    assert enough(1)\n")
    file = reach.measured(chooser.tree, "tests/test_toy.py")
    assert file.failing == ("tests/test_toy.py::test_nonsense",)
    assert [test.name for test in file.tests] == ["tests/test_toy.py::test_the_limit_is_enough"]


@forks
def test_what_does_not_end_is_ended(tmp_path: Path):
    def forever() -> int:
        while True:
            pass

    assert child.in_child(forever, tmp_path, tmp_path / "log", 0.1) == child.ENDED


def test_it_runs_only_when_it_is_named():
    assert "mutants" in ASKED_FOR
    assert "mutants" not in STAGES


def test_a_seed_draws_the_same_again():
    options = command.parsed(["core/release", "--count", "5", "--seed", "7"])
    assert command.drawn(options, ROOT) == command.drawn(options, ROOT)


def test_a_room_that_is_not_there_is_said_in_one_line():
    with pytest.raises(Failed, match=r"There is no core/nothing to change\."):
        command.drawn(command.parsed(["core/nothing"]), ROOT)


def test_every_change_listed_as_equivalent_is_still_there():
    gone = equivalent.no_longer_there(equivalent.listed())
    assert [f"{each.file} {each.within}: {each.before} → {each.after}" for each in gone] == []


def test_an_equivalent_whose_code_has_changed_is_found_out():
    stale = Equivalent("core/release/hurdles.py", "", "NO_SUCH = 1", "NO_SUCH = 2", "a made-up line")
    assert equivalent.no_longer_there([stale]) == [stale]


def test_every_equivalent_says_why():
    assert [each for each in equivalent.listed() if len(each.why.split()) < 4] == []


@forks
def test_one_that_has_read_all_tries_a_function_s_body_and_a_constant_in_memory(chooser: Chooser):
    drawn = [
        change_to("LEAST = 49"),
        change_to("return given / 2"),
        change_to("if given + spare < LEAST and not spare > 2.5:"),
    ]
    standing = Standing(drawn, chooser)
    try:
        assert [standing.ask(place) for place in range(3)] == [CAUGHT, SURVIVED, SURVIVED]
    finally:
        standing.end()


@forks
def test_what_is_computed_on_import_is_read_anew(chooser: Chooser):
    standing = Standing([change_to("def enough(given, *, spare=1):")], chooser)
    try:
        assert standing.ask(0) == ANEW
    finally:
        standing.end()


@forks
def test_a_constant_that_cannot_be_computed_with_the_change_is_read_anew_and_caught(chooser: Chooser):
    change = evolve(change_to("LEAST = 49"), new="1 // 0")
    standing = Standing([change], chooser)
    try:
        assert standing.ask(0) == ANEW
    finally:
        standing.end()
    assert trial.is_caught(change, chooser)


@pytest.mark.parametrize("room", command.PINNED)
def test_a_room_where_no_change_may_be_left_is_there(room: str):
    """A room that was renamed would be guarded no longer, and nobody would be told."""
    assert any(path.relative_to(ROOT).as_posix().startswith(room) for path in (ROOT / "core").rglob("*.py"))
