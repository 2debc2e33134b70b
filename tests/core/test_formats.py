"""A journal of every format there has been is read and folded as on the day it was written.

tests/fixtures/formats/1.json holds every kind of its day twice: with every optional field set, and with none in it. It
is never edited; a journal with the kinds that came later is laid beside it. 1.read.json says what each of its facts is.
"""

import json
from pathlib import Path
from typing import Any

import attrs
import pytest

from core.daybook.batch import batches
from core.daybook.book import Book
from core.daybook.devices import names
from core.daybook.entries import from_record, to_record
from core.daybook.facts import KNOWN, kind_of
from core.daybook.facts.batch import PieceTakenDown, PieceWeighed
from core.daybook.facts.chamber import CHAMBER, AirRead
from core.daybook.facts.instruments import BuffersChecked
from core.daybook.facts.note import NoteTaken
from core.daybook.facts.proofs import ProofRun
from core.daybook.formulas import formulas
from core.daybook.house import house_limits
from core.daybook.instruments import Shelf
from core.daybook.kept_verdict import told
from core.daybook.kept_words import FROM_A_NEWER_DAYBOOK, named_figures, said
from core.daybook.preparation import latest_run
from core.daybook.preparation_list import kept, words_of
from core.daybook.proofs import runs
from core.daybook.set_points import set_points
from core.quantities import METRIC

FORMATS = Path(__file__).parent.parent / "fixtures/formats"
FIRST, SECOND = (json.loads((FORMATS / name).read_text("utf-8"))["entries"] for name in ("1.json", "2.json"))
ENTRIES: list[dict[str, Any]] = [*FIRST, *SECOND]
READ = {each["id"]: each["fact"] for each in json.loads((FORMATS / "1.read.json").read_text("utf-8"))}
BOOK = Book(FIRST)


def _options(kind: type[Any]) -> set[str]:
    return {each.name for each in attrs.fields(kind) if each.default is not attrs.NOTHING}


@pytest.mark.parametrize("kind", KNOWN, ids=kind_of)
def test_every_kind_stands_in_them_with_all_its_fields_and_with_the_least(kind: type[Any]):
    facts = [set(each["fact"]) for each in ENTRIES if each["kind"] == kind_of(kind)]
    assert {each.name for each in attrs.fields(kind)} in facts
    assert any(not fact & _options(kind) for fact in facts)


@pytest.mark.parametrize("record", ENTRIES, ids=lambda record: f"{record['clock']}-{record['kind']}")
def test_each_entry_is_read_as_on_its_day(record: dict[str, Any]):
    """What it bears is kept to the letter, and what it does not bear means the same."""
    written = to_record(from_record(record))
    assert {key: each for key, each in written.items() if key != "fact"} == {
        key: each for key, each in record.items() if key != "fact"
    }
    assert written["fact"].items() >= READ.get(record["id"], record["fact"]).items()


def test_a_note_is_what_was_noted():
    book = Book(ENTRIES)
    (noted,) = (line.fact for batch in batches(book) for line in batch.lines if isinstance(line.fact, NoteTaken))
    assert (noted.words, noted.photo and noted.photo[:8]) == ("The casings were soaked overnight.", "3f786850")


def test_its_batches_are_what_they_were():
    found = {each.name: (each.stage, each.meat_kg, len(each.pieces)) for each in batches(BOOK)}
    assert found == {"Alder": ("mix", 5.0, 0), "Loin": ("dry", 2.0, 0), "Juniper coarse": ("release", 12.4, 2)}


def test_its_pieces_weigh_what_they_weighed():
    (salami,) = (each for each in batches(BOOK) if each.name == "Juniper coarse")
    first, second = salami.pieces
    assert (first.mass_kg, first.loss) == (0.8, pytest.approx(0.36))
    assert second.mass_kg == pytest.approx(0.79, abs=0.0005)  # the other tablet's correction, by the check of its scale


def test_its_cut_pieces_lost_what_they_lost():
    batch = next(each for each in batches(Book(SECOND)) if each.name == "Hawthorn")
    assert [(each.tag, each.mass_kg, each.loss) for each in batch.pieces] == [
        ("H-1", 0.575, pytest.approx(1 - 1.15 / 1.5)),
        ("H-2", 0.9, pytest.approx(1 - 1.2 / 1.4)),
    ]


def test_a_correction_by_another_tablet_counts_by_its_clock():
    weighed = next(each["id"] for each in ENTRIES if each["kind"] == "piece-weighed" and each["fact"].get("scale"))
    line = BOOK.line(weighed)
    assert (line.fact, line.entry.device, line.entry.by) == (
        PieceWeighed(0.79, next(each.id for each in Shelf(BOOK).all() if each.name == "Fine")),
        "ffeeddccbbaa9988",
        "Ben",
    )


def test_what_was_taken_back_stays_so():
    latest = BOOK.latest(CHAMBER, AirRead)
    assert latest is not None
    assert latest.fact == AirRead(13.2, 0.79, next(each.id for each in Shelf(BOOK).all() if each.name == "Larder"))


def test_its_verdict_says_what_it_rested_on():
    down = [from_record(each).fact for each in ENTRIES if each["kind"] == kind_of(PieceTakenDown)]
    reasons = told(down[1].reasons)
    assert [(each.name != "", each.met) for each in reasons] == [(True, None), (True, False)]
    assert [(name, amount.show(METRIC)) for name, amount in reasons[1].amounts] == [("lost", "31.0 %")]


def test_its_proof_says_its_sentences_and_figures():
    second, first = (each.fact for each in runs(BOOK))
    assert isinstance(first, ProofRun)
    assert isinstance(second, ProofRun)
    result = second.result
    assert (first.result.settled, result.settled) == (False, True)
    sentences = [said(each) for each in (*result.because, *result.advice, *result.corrected)]
    assert FROM_A_NEWER_DAYBOOK not in sentences
    assert [each.names for each in sentences] == [
        ("probe", "drift", "most"),
        ("apart",),
        ("probe", "by", "check", "at"),
    ]
    assert [(key, amount.show(METRIC)) for key, amount in named_figures(result.figures)] == [("mean", "13.02 °C")]


def test_its_run_says_its_tasks():
    run = latest_run(BOOK)
    assert run is not None
    assert [each.key for each in run.tasks] == ["mix", "own-1"]
    assert set(run.tasks[0].text.names) == {"agent", "strength", "least"}
    assert words_of(run.tasks[1].kept).say(METRIC) == "Look at the seals."
    assert [each.key for each in kept(BOOK)] == ["wash", "own-1", "dry"]


def test_its_chamber_formulas_house_and_tablets_stand():
    chosen = set_points(BOOK)
    assert chosen is not None
    assert (chosen.fact.temperature_c, chosen.fact.humidity) == (12.8, 0.78)  # type: ignore[union-attr]
    assert {each.name for each in formulas(BOOK)} == {"Alder", "Juniper coarse"}
    assert [each.nitrite_ppm for each in house_limits(BOOK)] == [pytest.approx(120)]
    assert names(BOOK) == {"0a1b2c3d4e5f6071": "Kitchen"}


def test_its_instruments_are_corrected_as_they_were():
    shelf = {each.name: each for each in Shelf(BOOK).all()}
    moment = from_record(next(each for each in ENTRIES if each["kind"] == kind_of(BuffersChecked))).happened_at
    assert shelf["Bench"].in_force("ph", moment) is not None
    assert {name for name, each in shelf.items() if each.retired_at} == {"Old", "Spare"}
