"""An entry is corrected by a later one: both are kept, the later counts."""

from datetime import datetime

import attrs
import pytest

from core.daybook.book import Line
from core.daybook.entries import to_record
from core.daybook.facts import Withdrawn
from core.daybook.facts.batch import (
    PieceWeighed,
)
from core.daybook.facts.chamber import (
    CHAMBER,
)
from core.quantities import METRIC
from tests.web.conftest import MORNING, Visitor
from tests.web.weighing import mass, weighed
from web.entry_forms import say


def test_a_correction_counts_and_keeps_both(visitor: Visitor):
    _, key = weighed(visitor)
    visitor.fill(f"/entries/{key}/correct", mass_kg="900")
    assert [entry.fact for entry in visitor.book.line(key).versions] == [PieceWeighed(1.0), PieceWeighed(0.9)]


def test_a_correction_shows_what_was_written_before(visitor: Visitor):
    _, key = weighed(visitor, "950")
    visitor.fill(f"/entries/{key}/correct", mass_kg="900")
    assert visitor.get(f"/entries/{key}/correct").texts("span", "words") == ["Weighed: 950 g", "Weighed: 900 g"]


def test_a_correction_starts_from_the_last_one(visitor: Visitor):
    _, key = weighed(visitor)
    visitor.fill(f"/entries/{key}/correct", mass_kg="900")
    assert visitor.get(f"/entries/{key}/correct").typed("mass_kg") == "900"


def test_the_log_marks_what_was_corrected(visitor: Visitor):
    _, key = weighed(visitor)
    assert "corrected" in visitor.fill(f"/entries/{key}/correct", mass_kg="900").texts("em")


def test_a_correction_keeps_the_second_it_happened(visitor: Visitor):
    _, key = weighed(visitor)
    before = visitor.book.line(key).entry.happened_at
    visitor.wait(days=2, seconds=31)
    visitor.fill(f"/entries/{key}/correct", mass_kg="900")
    assert visitor.book.line(key).entry.happened_at == before


def test_a_correction_with_another_time_moves_it(visitor: Visitor):
    _, key = weighed(visitor)
    visitor.fill(f"/entries/{key}/correct", happened="2026-11-01T07:30")
    assert visitor.book.line(key).entry.happened_at == datetime(2026, 11, 1, 7, 30, tzinfo=MORNING.tzinfo)


def test_a_time_left_alone_is_no_fault_even_where_the_clock_went_back(visitor: Visitor):
    _, key = weighed(visitor)
    visitor.wait(hours=-1)
    assert visitor.fill(f"/entries/{key}/correct", mass_kg="900").status == 200
    assert mass(visitor, key) == 0.9


def test_the_last_correction_counts_even_where_the_clock_went_back(visitor: Visitor):
    _, key = weighed(visitor)
    visitor.fill(f"/entries/{key}/correct", mass_kg="900")
    visitor.wait(days=-400)
    visitor.fill(f"/entries/{key}/correct", mass_kg="950")
    assert mass(visitor, key) == pytest.approx(0.95)


def test_of_two_forms_drawn_the_one_saved_last_counts(visitor: Visitor):
    _, key = weighed(visitor)
    left_open = visitor.get(f"/entries/{key}/correct").form("/correct")
    visitor.wait(minutes=5)
    visitor.fill(f"/entries/{key}/correct", mass_kg="900")
    visitor.wait(minutes=5)
    visitor.send(left_open, mass_kg="950")
    assert mass(visitor, key) == pytest.approx(0.95)


def test_a_piece_can_be_corrected_under_its_own_tag(visitor: Visitor):
    piece = visitor.hang(visitor.cured_and_acid(), "J-1", "1250").split("/")[-1]
    assert visitor.fill(f"/entries/{piece}/correct", start_kg="1260").status == 200
    assert visitor.fact(piece).start_kg == pytest.approx(1.26)


def test_a_piece_cannot_be_corrected_to_the_tag_of_another(visitor: Visitor):
    batch = visitor.cured_and_acid()
    visitor.hang(batch, "J-1")
    piece = visitor.hang(batch, "J-2").split("/")[-1]
    assert "another tag" in visitor.fill(f"/entries/{piece}/correct", tag="j-1").beside("tag")


def test_a_note_corrected_after_taking_down_passes_no_other_verdict(visitor: Visitor):
    _, piece = visitor.dried()
    visitor.fill(f"{piece}/inspect", found="sound")
    down = visitor.fill(f"{piece}/take-down", note="to the tabel").saved
    visitor.fill(f"{piece}/inspect", signs="slime")
    visitor.fill(f"/entries/{down}/correct", note="to the table")
    assert (visitor.fact(down).verdict, visitor.fact(down).note) == ("ready", "to the table")


def test_a_refused_correction_keeps_what_was_typed(visitor: Visitor):
    _, key = weighed(visitor)
    page = visitor.fill(f"/entries/{key}/correct", mass_kg="much")
    assert (page.status, page.typed("mass_kg")) == (422, "much")
    assert mass(visitor, key) == 1.0


def test_the_same_correction_sent_twice_is_one(visitor: Visitor):
    _, key = weighed(visitor)
    form = visitor.get(f"/entries/{key}/correct").form("/correct")
    for _ in range(2):
        visitor.send(form, mass_kg="900")
    assert len(visitor.book.line(key).versions) == 2


def test_what_was_taken_back_cannot_be_corrected(visitor: Visitor):
    _, key = weighed(visitor)
    visitor.post(f"/entries/{key}/withdraw")
    assert visitor.get(f"/entries/{key}/correct").status == 404


def test_an_entry_of_a_batch_taken_back_cannot_be_corrected(visitor: Visitor):
    batch = visitor.start_batch()
    cure = visitor.cure(batch)
    visitor.post(f"/entries/{batch.split('/')[-1]}/withdraw")
    assert visitor.get(f"/entries/{cure}/correct").status == 404


@pytest.mark.parametrize("what", ["correct", "withdraw", "undo"])
def test_an_unknown_entry_is_not_here(visitor: Visitor, what: str):
    path = f"/entries/01a2138b-1620-7c23-a1d4-5ab52d4a3d83/{what}"
    page = visitor.get(path) if what == "correct" else visitor.post(path)
    assert page.status == 404


def test_an_entry_of_a_newer_version_cannot_be_corrected_here(visitor: Visitor):
    key = visitor.fill("/chamber/air", temperature_c="12").saved
    entry = visitor.book.line(key).entry
    newer = {**to_record(attrs.evolve(entry, id=key[:-1] + ("0" if key[-1] != "0" else "1"))), "kind": "ripeness-felt"}
    visitor.book.learn([newer | {"corrects": key}])
    assert visitor.get(f"/entries/{key}/correct").status == 404
    assert visitor.get("/chamber").status == 200


def test_an_entry_only_of_a_newer_version_is_said_to_be_one(visitor: Visitor):
    key = visitor.fill("/chamber/air", temperature_c="12").saved
    newer = {**to_record(visitor.book.line(key).entry), "id": key[:-1] + ("0" if key[-1] != "0" else "1")}
    visitor.book.learn([newer | {"kind": "ripeness-felt", "about": CHAMBER}])
    assert "Written by a newer version of the daybook" in visitor.get("/chamber").texts("span", "words")


def test_a_line_has_one_sentence_whatever_it_holds(visitor: Visitor):
    _, key = weighed(visitor)
    line = visitor.book.line(key)
    with visitor.app.test_request_context():
        assert say(Line((*line.versions, attrs.evolve(line.entry, fact=Withdrawn()))), METRIC) == say(line, METRIC)


def test_a_time_before_the_clock_change_keeps_the_offset_of_its_day(visitor: Visitor):
    typed = {"temperature_c": "12", "happened": "2026-10-20T08:00"}
    then = {"Daybook-Now": MORNING.isoformat(), "Daybook-Then": "2026-10-20T08:00:00.000+02:00"}
    visitor.client.post("/chamber/air", data=typed, headers=then)
    (entry,) = visitor.book.records()
    assert entry["happened_at"] == "2026-10-20T08:00:00+02:00"


def test_an_offset_that_belongs_to_another_moment_is_not_taken(visitor: Visitor):
    typed = {"temperature_c": "12", "happened": "2026-10-20T08:00"}
    then = {"Daybook-Now": MORNING.isoformat(), "Daybook-Then": "2026-10-21T08:00:00.000+02:00"}
    visitor.client.post("/chamber/air", data=typed, headers=then)
    (entry,) = visitor.book.records()
    assert entry["happened_at"] == f"2026-10-20T08:00:00{MORNING.isoformat()[-6:]}"
