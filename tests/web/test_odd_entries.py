"""One bad entry, read in or lying in the store, costs its own line, which is told, and never the page."""

import json
from typing import Any

import pytest

from core.daybook.facts.batch import BatchStarted, CureWeighed, PieceHung, PieceWeighed
from core.daybook.facts.chamber import CHAMBER, AirRead, BasinEmptied, BasinKnown
from core.daybook.facts.cure import RULES, HouseRule
from core.daybook.facts.ferment import FermentLogTaken
from core.daybook.facts.note import NoteTaken
from core.daybook.facts.preparation import PreparationBegun
from core.daybook.facts.salting import SaltingBegun
from tests.core.kitchen import Kitchen
from tests.web.conftest import Visitor
from web import copied


class Odd(Kitchen):
    """A batch that dries and a chamber that was read, to which something odd is added."""

    def __init__(self) -> None:
        super().__init__()
        self.batch = self.begin(meat_kg=12.0, target_loss=0.35)
        self.note(CureWeighed(0.03, 0.0625), self.batch)
        self.hung = self.hang(self.batch, start_kg=1.2)
        self.weigh(self.hung, 1.0, at=9)
        self.loin = self.note(BatchStarted("Loin", "whole-muscle", 2.0, 0.4))
        self.note(AirRead(12.5, 0.78), CHAMBER, at=9)
        self.note(BasinKnown(0.003), CHAMBER)
        self.note(BasinEmptied(0.001), CHAMBER, at=3)
        self.pages = ["/", "/batches", "/chamber", "/yours", "/yours/record", f"/batches/{self.batch}"]
        self.pages += [f"/batches/{self.loin}", f"/pieces/{self.hung}", "/formulas", "/formulas/new", "/chamber/load"]

    def odd(self, told: Any, about: str | None, /, **changes: Any) -> dict[str, Any]:
        """The record of what is told, with what of it is altered afterwards."""
        self.note(told, about, at=10)
        of_fact = {key: value for key, value in changes.items() if key in self.records[-1]["fact"]}
        rest = {key: value for key, value in changes.items() if key not in of_fact}
        self.records[-1] |= {"fact": self.records[-1]["fact"] | of_fact} | rest
        return self.records[-1]


SALTED = SaltingBegun("excess", "block", 0.12, 3.0, 0.2, 0.3)
RUN = PreparationBegun("quat", 0.1, 2e-4, 0.004)
LOG = FermentLogTaken("0" * 64, "core", (0.0, 3600.0), (22.0, 23.0), 23.0, 3600.0, 61)
NAME = "x" * 100_000
ODD: dict[str, tuple[Any, str | None, dict[str, Any]]] = {
    "a rule set nobody knows": (CureWeighed(0.03, 0.0625), "batch", {"rules": "atlantis"}),
    "a house rule of such a set": (HouseRule("us", 1e-4), RULES, {"rules": "atlantis"}),
    "an agent nobody knows": (RUN, CHAMBER, {"agent": "seawater"}),
    "air without water": (AirRead(12.0, 0.5), CHAMBER, {"humidity": 0}),
    "air colder than the sum": (AirRead(12.0, 0.5), CHAMBER, {"temperature_c": -35.0}),
    "salting below freezing": (SALTED, "loin", {"temperature_c": -5.0}),
    "a block without its width": (SALTED, "loin", {"width_m": None}),
    "hardly any weight": (PieceWeighed(1.0), "piece", {"mass_kg": 1e-300}),
    "a piece of hardly any weight": (PieceHung("J-9", 1.0), "batch", {"start_kg": 1e-300}),
    "nothing to lose": (BatchStarted("Loin", "slow", 2.0, 0.4), None, {"target_loss": 0}),
    "a basin of hardly any water": (BasinEmptied(0.001), CHAMBER, {"volume_m3": 1e-300}),
    "a basin like a pond": (BasinEmptied(0.001), CHAMBER, {"volume_m3": 1.0}),
    "a log of thirty thousand years": (LOG, "batch", {"times_s": [0.0, 9e11]}),
    "the year 3000": (AirRead(12.0, 0.5), CHAMBER, {"happened_at": "3000-01-01T12:00:00+01:00"}),
    "no moment": (AirRead(12.0, 0.5), CHAMBER, {"happened_at": None, "written_at": 7}),
    "a name of 100 kB": (BatchStarted("Loin", "slow", 2.0, 0.4), None, {"name": NAME}),
    "a note of 100 kB": (NoteTaken("Mould"), CHAMBER, {"words": NAME}),
    "a fact that is a list": (AirRead(12.0, 0.5), CHAMBER, {"fact": [1, 2]}),
    "the last clock there is": (AirRead(12.0, 0.5), CHAMBER, {"clock": 2**53 - 1}),
}
STILL_READ = (
    *(
        "a rule set nobody knows",
        "an agent nobody knows",
        "air colder than the sum",
        "air without water",
        "the last clock there is",
    ),
    *("a basin of hardly any water", "a basin like a pond"),
)
"""From a newer version, or beyond what a sum takes: the entry stands, and the pages do without the sum."""
every_odd = pytest.mark.parametrize("name", ODD)


def with_odd(name: str) -> tuple[Odd, dict[str, Any]]:
    kitchen = Odd()
    fact, about, changes = ODD[name]
    subject = {"batch": kitchen.batch, "piece": kitchen.hung, "loin": kitchen.loin}.get(about or "", about)
    return kitchen, kitchen.odd(fact, subject, **changes)


@every_odd
def test_no_page_breaks_over_an_odd_entry_in_the_store(visitor: Visitor, name: str):
    kitchen, _ = with_odd(name)
    visitor.book.learn(json.loads(json.dumps(kitchen.records)))
    visitor.wait(days=14)
    assert [(path, page.status) for path in kitchen.pages if (page := visitor.get(path)).status != 200] == []


@pytest.mark.parametrize("name", [name for name in ODD if name not in STILL_READ])
def test_what_cannot_be_read_is_kept_as_it_came_and_told(visitor: Visitor, name: str):
    kitchen, bad = with_odd(name)
    page = visitor.read_in(a_copy_of(kitchen.records))
    assert "1 entry of the file cannot be read here: it is kept as it came" in page.text
    assert [each for each in visitor.book.records() if each["id"] == bad["id"]] == [json.loads(json.dumps(bad))]


def a_copy_of(records: list[Any]) -> str:
    return json.dumps({"format": copied.FORMAT, "version": 1, "entries": records})


def test_an_entry_that_cannot_be_read_is_told_where_it_stands_and_on_the_books_page(visitor: Visitor):
    kitchen, _ = with_odd("the year 3000")
    visitor.book.learn(kitchen.records)
    page = visitor.get("/chamber")
    told = "Read the chamber's air: This entry cannot be read, and nothing is counted from it"
    assert told in page.texts("span", "words")
    assert "1 entry in this book cannot be read, and nothing is counted from it." in visitor.get("/yours").text


def test_an_entry_that_cannot_be_read_hides_nothing_that_was_read_before_it(visitor: Visitor):
    kitchen, _ = with_odd("the year 3000")
    visitor.book.learn(kitchen.records)
    assert "78" in visitor.get("/chamber").text


def test_a_correction_that_cannot_be_read_leaves_the_line_as_it_was(visitor: Visitor):
    kitchen = Odd()
    kitchen.odd(PieceWeighed(0.9), kitchen.hung, mass_kg=1e-300, corrects=kitchen.records[3]["id"])
    visitor.book.learn(kitchen.records)
    assert visitor.fact(kitchen.records[3]["id"]) == PieceWeighed(1.0)


@pytest.mark.parametrize("nothing", [{}, None, 7, [], {"id": "mine"}, {"id": ["x"], "about": "y", "kind": "z"}])
def test_what_is_no_entry_at_all_stops_nothing_and_is_told(visitor: Visitor, nothing: Any):
    kitchen = Odd()
    visitor.book.learn([nothing, *kitchen.records])
    assert len(visitor.book) == len(kitchen.records)
    assert "1 entry in this book cannot be read" in visitor.get("/").text
    assert visitor.fill("/chamber/air", temperature_c="12").status == 200


def test_after_the_last_clock_there_is_one_can_still_write(visitor: Visitor):
    kitchen, _ = with_odd("the last clock there is")
    visitor.book.learn(kitchen.records)
    assert visitor.fill("/chamber/air", temperature_c="12").status == 200


def test_two_entries_of_one_id_in_one_file_are_told_and_the_first_is_taken(visitor: Visitor):
    kitchen = Odd()
    twin = kitchen.records[3] | {"fact": {"mass_kg": 0.5}}
    page = visitor.read_in(a_copy_of([*kitchen.records, twin]))
    assert "1 entry stood twice in the file, with different content" in page.text
    assert visitor.fact(twin["id"]) == PieceWeighed(1.0)


def test_the_same_entry_twice_in_one_file_is_no_trouble(visitor: Visitor):
    kitchen = Odd()
    page = visitor.read_in(a_copy_of([*kitchen.records, kitchen.records[3]]))
    assert "stood twice" not in page.text


def test_no_second_cure_is_asked_for_where_the_first_cannot_be_read(visitor: Visitor):
    kitchen = Kitchen()
    batch = kitchen.begin()
    kitchen.cure(batch)
    kitchen.records[-1]["fact"] = {"cure_kg": "a pinch"}
    visitor.read_in(a_copy_of(kitchen.records))
    assert "Weigh the cure" not in visitor.get("/").text
    assert "Look up the cure of Juniper coarse in its log" in visitor.get("/").text
    assert "Weigh no second cure: twice the nitrite poisons." in visitor.get(f"/batches/{batch}").text
