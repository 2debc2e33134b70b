"""Any entry by itself: corrected from what was typed, deleted, undone; and nothing of it outside the book."""

import re
from datetime import datetime

import attrs
import pytest

from core.daybook.book import Line
from core.daybook.entries import to_record
from core.daybook.facts import KINDS, KNOWN, Withdrawn
from core.daybook.facts.batch import (
    ActivityMeasured,
    CureWeighed,
    PieceCut,
    PieceInspected,
    PieceTakenDown,
    PieceWeighed,
    Reading,
)
from core.daybook.facts.chamber import (
    CHAMBER,
    AirRead,
    BasinEmptied,
    BasinKnown,
    CapacityStated,
    HumidifierCharged,
    HumidifierFilled,
    SetPointsChosen,
)
from core.daybook.facts.cure import RULES, HouseRule, LicensedException
from core.daybook.facts.device import DEVICES, DeviceNamed
from core.daybook.facts.ferment import DeviationDecided, FermentationBegun, FermentLogTaken
from core.daybook.facts.formula import FormulaChanged, FormulaKept, IngredientWeighed
from core.daybook.facts.instruments import InstrumentAdded, InstrumentRecalibrated, InstrumentRetired
from core.daybook.facts.kept import KeptAmount, KeptReason
from core.daybook.facts.note import NoteTaken
from core.daybook.facts.preparation import (
    KeptTask,
    PreparationBegun,
    PreparationEnded,
    PreparationListKept,
    TaskBegun,
    TaskDone,
)
from core.daybook.facts.salting import PieceTurned, SaltingBegun, SaltingEnded
from core.daybook.preparation_list import tasks_for
from core.quantities import METRIC, US
from tests.core import kept_proof, workshop
from tests.core.kitchen import Kitchen
from tests.core.mixing import FORMULA, fields
from tests.web.conftest import MORNING, Visitor, alike
from web.entry_forms import form_of, say

NO_FORM = {Withdrawn}


def _chamber(kitchen: Kitchen) -> None:
    """One entry of each kind about the chamber's water, set-points, load and preparation."""
    kitchen.note(HumidifierFilled(0.0012345678, 0.0023456789), CHAMBER)
    kitchen.note(BasinKnown(0.0034567891), CHAMBER)
    kitchen.note(BasinEmptied(0.0011234567), CHAMBER)
    kitchen.note(CapacityStated(1.2345678e-8, 0.51234567), CHAMBER)
    kitchen.note(
        SetPointsChosen(12.3456, 0.8123, 0.51, 0.031, "drying", "dry-us", 0.2134, 0.9712, 2.13, 0.0612), CHAMBER
    )
    kitchen.note(PreparationListKept((KeptTask("own-1", "Look at the seal.", 61.0),)), CHAMBER)
    start = PreparationBegun(
        "quat", 0.101234, 1.512345e-4, 0.0041234, ph=7.1234, contact_s=61.5, descaled=True, others=("acid",)
    )
    run = kitchen.note(attrs.evolve(start, tasks=tasks_for(start, ())), CHAMBER)
    kitchen.note(TaskBegun("contact", "Keep it wet."), run)
    kitchen.note(TaskDone("contact", "Keep it wet."), run, at=0.1)
    kitchen.note(PreparationEnded("the stock was empty"), run, at=0.2)


@pytest.fixture
def walked(visitor: Visitor) -> dict[type, str]:
    """One entry of every kind, by its kind, with figures that no unit system shows in round numbers."""
    kitchen = Kitchen()
    batch = kitchen.begin(meat_kg=12.3456789, target_loss=1 / 3, least_s=21.5 * 86400)
    kitchen.note(CureWeighed(0.0301234567, 0.062345678, 0.0012345678, 0.3171717), batch)
    formula = kitchen.note(FormulaKept(**fields(FORMULA), note="Mince it cold."))
    kitchen.note(FormulaChanged(**fields(FORMULA)), formula)
    kitchen.note(IngredientWeighed("part-1", 0.0125, 0.0123456789, "Salt", 1.234567e-4, lot="L 7"), batch)
    kitchen.note(HouseRule("us", 123.456789e-6, 1234.56789e-6, "our own"), RULES)
    kitchen.note(
        LicensedException("a trial", "letter 12", "Ana", "food act, section 9", "nitrite", 187.654321e-6), batch
    )
    kitchen.note(Reading(5.1371371, 22.3737373), batch)
    kitchen.note(AirRead(12.3456789, 0.78912345), CHAMBER)
    kitchen.note(FermentationBegun("canada", 23.4567891), batch)
    kitchen.note(FermentLogTaken("a" * 64, "core", (0.0, 3600.0), (22.5, 23.25), 23.5, 3600.0, 61, "shelf"), batch)
    kitchen.note(DeviationDecided("keep", "Ana", "clean", "toxin, two pieces", "report 12"), batch, at=2)
    block = SaltingBegun("excess", "block", 0.1234567, 2.3456789, 0.2345678, 0.3456789, 0.9123456, 1.8765432, 2.9e6)
    kitchen.note(block, batch)
    kitchen.note(PieceTurned("much brine"), batch)
    kitchen.note(SaltingEnded("brushed off", 5.4321 * 86400, 2.3456789, 4.1234567), batch)
    kitchen.note(HumidifierCharged(0.0056781234, 0.0765432109, 0.0067890123), CHAMBER)
    _chamber(kitchen)
    kitchen.note(kept_proof.RUN, CHAMBER)
    kitchen.note(DeviceNamed("0a1b2c3d4e5f6071", "Kitchen"), DEVICES)
    kitchen.note(NoteTaken("Mould on the left."), CHAMBER)
    piece = kitchen.hang(batch, start_kg=0.0345678901)  # 0.0762 lb: few digits before the point
    kitchen.weigh(piece, 0.0234567891, at=3)
    kitchen.note(PieceCut(0.0234567891, 0.0212345678), piece, at=3.5)
    kitchen.note(ActivityMeasured(0.8912345), piece, at=4)
    kitchen.note(PieceInspected(("slime",), "at the string"), piece, at=5)
    kitchen.note(
        PieceTakenDown(
            "discard", "thrown away", (KeptReason("loss", True, (KeptAmount("lost", 0.4123456, "loss"),)),), "2026-11"
        ),
        piece,
        at=6,
    )
    for kind, checks in workshop.CHECKS.items():
        instrument = kitchen.note(InstrumentAdded(kind, kind, 30.5 * 86400))
        for fact in (*checks, InstrumentRecalibrated("calibrated"), InstrumentRetired("broken")):
            kitchen.note(fact, instrument, at=7)
    visitor.book.learn(kitchen.records)
    visitor.wait(days=40)
    return {KINDS[record["kind"]]: record["id"] for record in kitchen.records}


every_kind = pytest.mark.parametrize(
    "kind", [kind for kind in KNOWN if kind not in NO_FORM], ids=lambda kind: kind.__name__
)


def weighed(visitor: Visitor, weight: str = "1000") -> tuple[str, str]:
    """A piece's path and the id of its weighing."""
    piece = visitor.hang(visitor.cured_and_acid())
    return piece, visitor.fill(f"{piece}/weigh", mass_kg=weight).saved


def mass(visitor: Visitor, key: str) -> float:
    return visitor.fact(key).mass_kg


def test_every_kind_but_the_taking_back_has_a_form():
    assert {kind for kind in KNOWN if form_of(kind)} == set(KNOWN) - NO_FORM


@every_kind
@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize("decimal", ["point", "comma"])
def test_a_correction_saved_without_a_change_changes_nothing(visitor: Visitor, walked, kind, units: str, decimal: str):
    before = visitor.book.line(walked[kind]).entry
    visitor.settings(units=units, decimal=decimal)
    page = visitor.fill(f"/entries/{walked[kind]}/correct")
    after = visitor.book.line(walked[kind]).entry
    assert page.status == 200
    assert len(visitor.book.line(walked[kind]).versions) == 2
    assert alike(after.fact, before.fact, rel=1e-5)
    assert after.happened_at == before.happened_at


@every_kind
def test_a_correction_starts_without_refusals(visitor: Visitor, walked, kind):
    page = visitor.get(f"/entries/{walked[kind]}/correct")
    assert (page.status, page.texts("p", "refusal")) == (200, [])


@every_kind
@pytest.mark.parametrize("reader", [METRIC, US], ids=["metric", "us"])
def test_every_kind_is_said_in_the_log(visitor: Visitor, walked, kind, reader):
    with visitor.app.test_request_context():
        assert say(visitor.book.line(walked[kind]), reader)


@every_kind
def test_every_kind_can_be_taken_back_and_brought_back(visitor: Visitor, walked, kind):
    before = visitor.book.line(walked[kind]).entry
    page = visitor.post(f"/entries/{walked[kind]}/withdraw")
    assert page.status == 200
    assert visitor.book.line(walked[kind]).withdrawn
    again = visitor.send(page.form("/undo"))
    after = visitor.book.line(walked[kind]).entry
    assert again.status == 200
    assert (after.fact, after.happened_at) == (before.fact, before.happened_at)


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


def test_a_saved_entry_is_told_with_its_time_and_an_undo(visitor: Visitor):
    batch = visitor.start_batch()
    page = visitor.fill(f"{batch}/reading", ph="5.6")
    assert page.texts("div", "saved")[0].startswith("Saved 08:00 Read: pH 5.6")
    assert "Undo" in page.texts("button")


def test_an_undo_takes_a_new_entry_back(visitor: Visitor):
    batch = visitor.start_batch()
    page = visitor.fill(f"{batch}/reading", ph="5.6")
    undone = visitor.send(page.form("/undo"))
    assert visitor.book.line(page.saved).withdrawn
    assert undone.path.startswith(batch)
    assert undone.texts("div", "saved")[0].startswith("Undone")


def test_an_undo_of_an_undo_brings_it_back(visitor: Visitor):
    batch = visitor.start_batch()
    page = visitor.fill(f"{batch}/reading", ph="5.6")
    visitor.send(visitor.send(page.form("/undo")).form("/undo"))
    assert visitor.fact(page.saved).ph == 5.6


def test_an_undo_of_a_correction_gives_the_old_weight(visitor: Visitor):
    _, key = weighed(visitor)
    page = visitor.fill(f"/entries/{key}/correct", mass_kg="900")
    visitor.send(page.form("/undo"))
    assert mass(visitor, key) == 1.0


def test_an_undo_of_a_correction_gives_the_old_time(visitor: Visitor):
    _, key = weighed(visitor)
    before = visitor.book.line(key).entry.happened_at
    page = visitor.fill(f"/entries/{key}/correct", happened="2026-11-01T07:30")
    visitor.send(page.form("/undo"))
    assert visitor.book.line(key).entry.happened_at == before


def test_an_undo_of_an_undone_correction_gives_the_new_weight_again(visitor: Visitor):
    _, key = weighed(visitor)
    page = visitor.fill(f"/entries/{key}/correct", mass_kg="900")
    visitor.send(visitor.send(page.form("/undo")).form("/undo"))
    assert mass(visitor, key) == 0.9


def test_the_same_undo_sent_twice_does_not_undo_itself(visitor: Visitor):
    batch = visitor.start_batch()
    page = visitor.fill(f"{batch}/reading", ph="5.6")
    form = page.form("/undo")
    for _ in range(2):
        assert visitor.send(form).status == 200
    assert visitor.book.line(page.saved).withdrawn


def test_taking_back_twice_is_one_taking_back(visitor: Visitor):
    _, key = weighed(visitor)
    pages = [visitor.post(f"/entries/{key}/withdraw") for _ in range(2)]
    visitor.send(pages[-1].form("/undo"))
    assert mass(visitor, key) == 1.0


def test_undoing_a_new_batch_leads_to_a_page_that_is_there(visitor: Visitor):
    page = visitor.get("/batches/new").form("/new")
    started = visitor.send(page, name="Juniper", style="slow", meat_kg="2", target_loss="35")
    undone = visitor.send(started.form("/undo"))
    assert (undone.status, undone.path.partition("?")[0]) == (200, "/batches")


def test_a_restored_batch_is_there_again(visitor: Visitor):
    batch = visitor.start_batch()
    page = visitor.post(f"/entries/{batch.split('/')[-1]}/withdraw")
    visitor.send(page.form("/undo"))
    assert visitor.get(batch).status == 200


def test_what_was_deleted_is_struck_in_the_log(visitor: Visitor):
    batch = visitor.start_batch()
    key = visitor.fill(f"{batch}/reading", ph="5.6").saved
    page = visitor.post(f"/entries/{key}/withdraw")
    assert page.texts("li", "withdrawn")[0].removesuffix(" Restore").endswith("deleted")


def test_a_deletion_is_said_in_the_history(visitor: Visitor):
    _, key = weighed(visitor)
    visitor.send(visitor.post(f"/entries/{key}/withdraw").form("/undo"))
    assert visitor.get(f"/entries/{key}/correct").texts("span", "words")[1] == "Deleted"


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


ELSEWHERE = [
    *("//evil.example", "https://evil.example/x", "\\\\evil.example", "/\\evil.example", "////evil.example/x"),
    *("/\t/evil.example", "//[evil", "javascript:alert(1)", "/../evil", "/%2e%2e/evil", "/batches/../../evil", "evil"),
    *("/a\r\nLocation: https://evil.example", "///evil.example", "/;@evil.example", "/batches#//evil.example", ""),
]


@pytest.mark.parametrize("back", ELSEWHERE)
@pytest.mark.parametrize("root", ["", "/sub"])
def test_a_way_back_never_leads_out_of_the_book(visitor: Visitor, back: str, root: str):
    key = visitor.fill("/chamber/air", temperature_c="12").saved
    for path in (f"/entries/{key}/undo", "/settings"):
        answer = visitor.client.post(
            path,
            data={"back": back},
            environ_overrides={"SCRIPT_NAME": root},
            headers={"Daybook-Now": MORNING.isoformat()},
        )
        assert re.fullmatch(rf"{root}/(saved=|\?saved=[\w-]+)?", answer.headers["Location"])


def test_a_way_back_outside_the_books_own_path_is_dropped(visitor: Visitor):
    answer = visitor.client.post("/settings", data={"back": "/neighbour"}, environ_overrides={"SCRIPT_NAME": "/sub"})
    assert answer.headers["Location"] == "/sub/"


def test_a_way_back_keeps_its_query_but_not_the_old_mark(visitor: Visitor):
    answer = visitor.client.post("/settings", data={"back": "/sums?find=salt&saved=x"})
    assert answer.headers["Location"] == "/sums?find=salt"


def test_a_query_with_a_line_break_is_dropped(visitor: Visitor):
    answer = visitor.client.post("/settings", data={"back": "/sums?find=a\r\nX: y"})
    assert answer.headers["Location"] == "/sums"


def test_a_line_has_one_sentence_whatever_it_holds(visitor: Visitor):
    _, key = weighed(visitor)
    line = visitor.book.line(key)
    with visitor.app.test_request_context():
        assert say(Line((*line.versions, attrs.evolve(line.entry, fact=Withdrawn()))), METRIC) == say(line, METRIC)


def test_what_was_taken_back_can_be_brought_back_from_the_log(visitor: Visitor):
    key = visitor.fill("/chamber/air", temperature_c="13", humidity="78").saved
    visitor.post(f"/entries/{key}/withdraw")
    visitor.send(visitor.get("/chamber").form("/undo"))
    assert not visitor.book.line(key).withdrawn


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
