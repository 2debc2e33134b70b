"""DEVELOPERS.md's picture of the house is tied to the files: what it names is there, and each room is in it."""

import re
from pathlib import PurePath

from building.paths import ROOT

PAGE = (ROOT / "DEVELOPERS.md").read_text()
PICTURE = PAGE.partition("## The house")[2].split("```")[1]
PATH = re.compile(r"[\w-]+(?:/[\w.-]*)+|[\w-]+\.(?:py|md)\b")
ROOMS = ("building", "core", "docs", "tests", "web")


def kept() -> frozenset[PurePath]:
    """Every file of the house, and every folder."""
    found = (each for room in ROOMS for each in (ROOT / room).rglob("*"))
    there = {each.relative_to(ROOT) for each in found if not {"__pycache__", "node_modules"} & {*each.parts}}
    return frozenset(there | {PurePath(room) for room in ROOMS} | {PurePath("build.py")})


HOLDS = kept()


def drawn() -> list[tuple[str, PurePath | None]]:
    """What the picture names, and where that is: under the room it is drawn in, or from the root; None for nowhere."""
    room, found = PurePath(), list[tuple[str, PurePath | None]]()
    for line in PICTURE.strip().splitlines():
        for name in PATH.findall(line):
            if line.startswith(name) and name.endswith("/"):
                room = PurePath(name)
            found.append((name, _place(name, room)))
    return found


def _place(name: str, room: PurePath) -> PurePath | None:
    tried = (room / name, PurePath(name), room / f"{name}.py")
    return next((each for each in tried if each in HOLDS), None)


PLACES = frozenset(place for _, place in drawn())


def test_all_that_it_names_is_there():
    assert [name for name, place in drawn() if place is None] == []


def test_it_names_what_one_finds_first():
    assert {PurePath("core/verdict.py"), PurePath("web/host.py"), PurePath("tests/published")} <= PLACES


def test_each_room_is_in_it():
    rooms = {each for each in HOLDS if len(each.parts) == 2 and (ROOT / each).is_dir()}
    rooms = {each for each in rooms if each.parts[0] in ("core", "web", "tests", "docs")}
    assert sorted(str(each) for each in rooms - PLACES) == []


def test_each_file_that_stands_in_core_or_web_itself_is_in_it():
    files = {each for each in HOLDS if each.suffix == ".py" and each.parent in (PurePath("core"), PurePath("web"))}
    assert sorted(str(each) for each in files - PLACES if not each.name.startswith("__")) == []


def test_every_path_that_the_page_names_is_there():
    """Whole paths in code marks, `core/mix/cure.py`, throughout the page."""
    paths = re.findall(r"`((?:core|web|tests|building|docs)/[\w./-]+?)/?`", PAGE)
    assert [path for path in paths if PurePath(path) not in HOLDS] == []


def test_a_name_that_is_not_there_is_found_out():
    assert _place("nowhere.py", PurePath("core")) is None
