"""Entries: ids in the order of time, records there and back, garbage refused."""

import json
import uuid
from datetime import UTC, datetime, timedelta, timezone

import pytest
from attrs import evolve

from core.daybook.entries import Entry, NotAnEntry, entry_id, from_record, is_entry_id, to_record
from core.daybook.facts import KINDS, KNOWN, Unknown, Withdrawn, kind_of
from core.daybook.facts.air_log import AirLogTaken
from core.daybook.facts.batch import (
    ActivityMeasured,
    BatchEnded,
    BatchStarted,
    CureWeighed,
    PieceCut,
    PieceHung,
    PieceInspected,
    PieceTakenDown,
    PieceWeighed,
    Reading,
)
from core.daybook.facts.chamber import (
    AirRead,
    BasinEmptied,
    BasinKnown,
    CapacityStated,
    HumidifierCharged,
    HumidifierFilled,
    SetPointsChosen,
)
from core.daybook.facts.cure import HouseRule, LicensedException
from core.daybook.facts.device import DeviceNamed
from core.daybook.facts.drying import DryingBounded
from core.daybook.facts.ferment import DeviationDecided, FermentationBegun, FermentLogTaken
from core.daybook.facts.formula import FormulaChanged, FormulaKept, IngredientWeighed
from core.daybook.facts.kept import KeptAmount, KeptReason
from core.daybook.facts.meat import MeatNoted
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
from core.mix.formula import Ingredient, Meat
from tests.core import kept_proof, workshop
from tests.core.kitchen import NOON, fresh

WRITTEN = {
    "name": "Juniper coarse",
    "style": "fermented",
    "meats": (Meat("Shoulder", 0.8, 0.0714, "10072"), Meat("Back fat", 0.2, 0.8869, "10004", 3.5)),
    "ingredients": (Ingredient("Salt", "salt", 0.026), Ingredient("Cure", "cure", 0.0019, True, 0.0625)),
    "cautions": ("Mind the pH.",),
}
FACTS = [
    BatchStarted("Juniper coarse", "fermented", 12.4, 0.35, 21.0),
    BatchStarted("Loin", "whole-muscle", 2.0, 0.4),
    BatchStarted("Stick", "fermented", 2.0, 0.4, formula="x", scaled_by="casings", scaled_to=12.0),
    FormulaKept(**WRITTEN),
    FormulaChanged(**WRITTEN, casing_diameter_m=0.055, note="finer"),
    IngredientWeighed("part-2", 0.0236, 0.0235, "Cure", 0.001, "x", "L 7"),
    CureWeighed(0.031, 0.0625, 0.04, 0.31),
    CureWeighed(
        0.24, 0.0625, rules="ca", product="meat", method="pump", nitrate_of="potassium", water_kg=10.0, taken=0.1
    ),
    HouseRule("us", 120e-6, 0.0, "what we are used to"),
    LicensedException("a trial under supervision", "the county's meat office, letter 12", "Ana"),
    Reading(5.1, 22.0),
    Reading(None, 22.0),
    Reading(5.2, 23.0, place="core"),
    BatchStarted("Alder", "slow", 5.0, 0.4),
    FermentationBegun("canada", 24.0),
    FermentationBegun(),
    FermentLogTaken("0" * 64, "chamber", (0.0, 3600.0), (22.0, 23.5), 24.0, 3600.0, 61, "shelf"),
    DeviationDecided("keep", "Ana", "clean", "toxin, two pieces", "report 12"),
    SaltingBegun("weighed", "slab", 0.05, 3.0, centre_share=0.95, mass_kg=1.8, planned_s=14.0 * 86400),
    SaltingBegun("excess", "block", 0.12, 3.0, 0.2, 0.3),
    PieceTurned("the brine is up"),
    SaltingEnded(),
    MeatNoted("none"),
    MeatNoted("pork", "tested", "P-7", "the meat inspection"),
    MeatNoted("pork", "frozen", warmest_c=-18.0, lasted_s=21.0 * 86400, thick_m=0.1),
    MeatNoted("pork", "cured", method="sausage-1", grind_m=0.008, dried_c=11.0, bare="yes", unwashed="yes"),
    BatchEnded("used-otherwise", "into the soup"),
    AirRead(12.5, 0.78),
    AirLogTaken(
        "0" * 64, 3600.0, (0.0, 7200.0), (12.5, 13.0), (13.0, 14.5), (3600.0, 1800.0), 9, (0.78, None), "shelf", "x"
    ),
    DryingBounded(early_most=2e-7, late_least=0.0),
    AirRead(12.5),
    PieceHung("J-1", 1.25),
    PieceWeighed(0.8),
    PieceCut(0.8, 0.4),
    ActivityMeasured(0.891),
    PieceInspected(("smell", "slime"), "at the string"),
    PieceInspected(),
    PieceTakenDown("ready", "to the table"),
    PieceTakenDown(
        "hold",
        reasons=(KeptReason("acid", None), KeptReason("loss", False, (KeptAmount("lost", 0.31, "loss"),))),
        edition="2026-11",
    ),
    HumidifierCharged(0.00568, 0.0828, 0.0066),
    HumidifierFilled(0.002),
    HumidifierFilled(0.002, 0.004),
    BasinKnown(0.003),
    BasinEmptied(0.0012),
    SetPointsChosen(12.8, 0.8, 0.5, 0.03, "drying", "dry-practice", 0.2, 0.97, 2.0, 0.06),
    SetPointsChosen(12.8, 0.8),
    CapacityStated(1.2e-8, 0.5),
    PreparationListKept((KeptTask("wash"), KeptTask("own-1", "Look at the seals.", 60.0))),
    PreparationBegun(
        "quat", 0.1, 2e-4, 0.004, descaled=True, others=("detergent",), tasks=(KeptTask("wash", "Wash."),)
    ),
    TaskBegun("contact"),
    TaskDone("contact", in_short=True),
    PreparationEnded("the stock was empty"),
    *workshop.FACTS,
    kept_proof.RUN,
    DeviceNamed("0a1b2c3d4e5f6071", "Kitchen"),
    NoteTaken("Mould on the left.", "0" * 64),
    AirRead(12.5, 0.78, "x"),
    Reading(5.1, 22.0, "x", "y"),
    PieceHung("J-1", 1.25, "x"),
    PieceWeighed(0.8, "x"),
    Withdrawn(),
    Unknown("ripeness-felt", {"thumb": 3, "words": ["firm", None], "deep": {"kept": True}}),
]
PIECE_WEIGHED = PieceWeighed(0.8)
every_fact = pytest.mark.parametrize("fact", FACTS, ids=kind_of)
GARBAGE = {
    "a number": 5,
    "nothing": None,
    "a list": [1],
    "an empty record": {},
    "no fact": {"fact": None},
}
SPOILT = {
    "id no UUID": {"id": "mine"},
    "id in capitals": {"id": "01A2138B-1620-7C23-A1D4-5AB52D4A3D83"},
    "id in braces": {"id": "{01a2138b-1620-7c23-a1d4-5ab52d4a3d83}"},
    "id a number": {"id": 7},
    "about a list": {"about": ["chamber"]},
    "kind a list": {"kind": ["reading"]},
    "kind a number": {"kind": 7},
    "fact a list of pairs": {"fact": [["mass_kg", 1.0]]},
    "moment without offset": {"happened_at": "2026-11-02T12:00:00"},
    "moment no moment": {"happened_at": "noon"},
    "moment before any kitchen's clock": {"written_at": "0001-01-01T00:00:00+01:00"},
    "moment at the end of the calendar": {"written_at": "9999-12-31T23:00:00-01:00"},
    "corrects a list": {"corrects": ["x"]},
    "corrects no id": {"corrects": "that one"},
    "clock before the first": {"clock": -1},
    "clock a text": {"clock": "7"},
    "clock true": {"clock": True},
    "clock nothing": {"clock": None},
    "clock beyond what a browser counts": {"clock": 2**53},
    "device with a capital": {"device": "Kitchen"},
    "device a number": {"device": 7},
    "by nobody": {"by": None},
    "by a name without end": {"by": "a" * 61},
    "weight a text": {"fact": {"mass_kg": "0.8"}},
    "weight true": {"fact": {"mass_kg": True}},
    "weight missing": {"fact": {}},
    "weight nothing": {"fact": {"mass_kg": None}},
    "weight negative": {"fact": {"mass_kg": -0.8}},
    "weight without end": {"fact": {"mass_kg": float("inf")}},
    "weight no number": {"fact": {"mass_kg": float("nan")}},
    "weight too long for a number": {"fact": {"mass_kg": 10**400}},
}


def an_entry(fact=PIECE_WEIGHED, **changes) -> Entry:
    key = fresh(NOON)
    return evolve(Entry(key, key, NOON, NOON + timedelta(seconds=3), fact), **changes)


def test_an_id_is_a_version_7_uuid():
    assert uuid.UUID(entry_id(NOON, bytes(10))).version == 7


def test_an_id_has_the_standard_variant():
    assert uuid.UUID(entry_id(NOON, b"\xff" * 10)).variant == uuid.RFC_4122


def test_an_id_tells_its_millisecond():
    moment = NOON + timedelta(milliseconds=123)
    assert uuid.UUID(entry_id(moment, bytes(10))).int >> 80 == int(moment.timestamp() * 1000)


def test_an_id_of_a_later_millisecond_is_greater():
    assert entry_id(NOON, b"\xff" * 10) < entry_id(NOON + timedelta(milliseconds=1), bytes(10))


def test_ids_follow_the_moment_and_not_the_wall_clock():
    one_zone_east = NOON.astimezone(timezone(timedelta(hours=2))) - timedelta(minutes=1)
    assert entry_id(one_zone_east, b"\xff" * 10) < entry_id(NOON, bytes(10))


def test_ids_of_one_moment_differ_by_their_chance():
    assert len({entry_id(NOON, number.to_bytes(10, "big")) for number in range(1000)}) == 1000


def test_an_id_is_known_as_one():
    assert is_entry_id(fresh(NOON))


@pytest.mark.parametrize("text", ["", "mine", "01A2138B-1620-7C23-A1D4-5AB52D4A3D83", None, 7, ["x"]])
def test_what_is_no_id_is_known_as_none(text):
    assert not is_entry_id(text)


def test_every_kind_of_fact_is_tried_here():
    assert {type(fact) for fact in FACTS} == {*KNOWN, Unknown}


def test_kinds_are_named_in_small_letters_with_hyphens():
    assert kind_of(PieceTakenDown) == "piece-taken-down"


def test_every_kind_is_found_by_its_name():
    assert [KINDS[kind_of(cls)] for cls in KNOWN] == list(KNOWN)


@every_fact
def test_a_record_gives_the_entry_back(fact):
    entry = an_entry(fact)
    assert from_record(to_record(entry)) == entry


@every_fact
def test_a_record_survives_a_file(fact):
    record = to_record(an_entry(fact))
    assert to_record(from_record(json.loads(json.dumps(record)))) == json.loads(json.dumps(record))


def test_a_correction_keeps_what_it_corrects():
    entry = an_entry(corrects=fresh(NOON))
    assert from_record(to_record(entry)) == entry


def test_an_entry_that_corrects_nothing_does_not_say_so():
    assert "corrects" not in to_record(an_entry())


@pytest.mark.parametrize(
    "kept", [{}, {"clock": 2**53 - 1, "device": "0a" * 8}, {"clock": 1, "by": "Ana"}, {"by": "a" * 60}]
)
def test_who_wrote_it_where_and_when_in_the_order_survives(kept: dict[str, object]):
    entry = an_entry(**kept)
    assert from_record(to_record(entry)) == entry


def test_an_entry_from_before_there_was_a_clock_is_read():
    record = {key: value for key, value in to_record(an_entry()).items() if key not in ("clock", "device")}
    entry = from_record(record)
    assert (entry.clock, entry.device, entry.by) == (0, "", "")


def test_an_entry_that_says_nothing_of_them_has_no_clock_tablet_or_name():
    key = fresh(NOON)
    entry = Entry(key, key, NOON, NOON, PIECE_WEIGHED)
    assert (entry.clock, entry.device, entry.by) == (0, "", "")


def test_a_whole_number_in_a_file_is_read_as_a_weight():
    record = {**to_record(an_entry()), "fact": {"mass_kg": 1}}
    assert from_record(record).fact == PieceWeighed(1.0)


def test_a_kind_of_a_newer_version_is_kept_to_the_letter():
    record = {**to_record(an_entry()), "kind": "ripeness-felt", "fact": {"thumb": 3, "deep": {"a": [1, None]}}}
    assert to_record(from_record(record)) == record


def test_a_field_of_a_newer_version_is_no_hindrance():
    record = {**to_record(an_entry()), "fact": {"mass_kg": 0.8, "held_by": "the left hand"}}
    assert from_record(record).fact == PieceWeighed(0.8)


def test_a_field_that_was_added_later_takes_its_default():
    record = {**to_record(an_entry()), "kind": "piece-inspected", "fact": {}}
    assert from_record(record).fact == PieceInspected()


def test_a_reading_of_another_zone_keeps_its_offset():
    moment = datetime(2026, 11, 2, 12, tzinfo=timezone(-timedelta(hours=9, minutes=30)))
    assert from_record(to_record(an_entry(happened_at=moment))).happened_at.utcoffset() == moment.utcoffset()


@pytest.mark.parametrize("which", ["happened_at", "written_at"])
def test_a_moment_without_its_offset_is_refused(which: str):
    with pytest.raises(ValueError, match=f"{which} needs its UTC offset"):
        an_entry(**{which: datetime(2026, 11, 2, 12)})  # noqa: DTZ001


@pytest.mark.parametrize("year", [1970, 2999])
def test_a_moment_of_the_first_and_the_last_year_is_taken(year: int):
    assert an_entry(happened_at=datetime(year, 6, 1, tzinfo=UTC)).happened_at.year == year


@pytest.mark.parametrize("year", [1969, 3000])
def test_a_moment_of_no_kitchens_clock_is_refused(year: int):
    with pytest.raises(ValueError, match="happened_at must be between 1970 and 2999"):
        an_entry(happened_at=datetime(year, 6, 1, tzinfo=UTC))


@pytest.mark.parametrize("clock", [-1, 2**53])
def test_a_clock_that_is_no_whole_number_of_json_is_refused(clock: int):
    with pytest.raises(ValueError, match="clock"):
        an_entry(clock=clock)


def test_the_latest_clock_and_the_longest_names_are_taken():
    found = an_entry(clock=2**53 - 1, device="z" * 32, by="x" * 60)
    assert from_record(to_record(found)) == found


@pytest.mark.parametrize("long", [{"device": "z" * 33}, {"by": "x" * 61}])
def test_a_longer_name_is_refused(long: dict[str, str]):
    with pytest.raises(ValueError, match=next(iter(long))):
        an_entry(**long)


@pytest.mark.parametrize(("clock", "first"), [(0, "b"), (7, "a")])
def test_the_moment_orders_only_entries_from_before_there_was_a_clock(clock: int, first: str):
    later = an_entry(id="a", clock=clock, written_at=NOON + timedelta(hours=1))
    earlier = an_entry(id="b", clock=clock, written_at=NOON)
    assert min(later, earlier, key=lambda entry: entry.written).id == first


@pytest.mark.parametrize("garbage", GARBAGE.values(), ids=GARBAGE)
def test_garbage_is_no_entry(garbage):
    with pytest.raises(NotAnEntry):
        from_record(garbage)


@pytest.mark.parametrize("spoilt", SPOILT.values(), ids=SPOILT)
def test_a_spoilt_record_is_no_entry(spoilt):
    with pytest.raises(NotAnEntry):
        from_record({**to_record(an_entry()), **spoilt})


def test_a_name_that_is_none_is_not_read_as_a_word():
    with pytest.raises(NotAnEntry):
        from_record({**to_record(an_entry()), "kind": "piece-hung", "fact": {"tag": None, "start_kg": 1.0}})


def test_signs_that_could_break_a_sentence_are_refused():
    with pytest.raises(NotAnEntry):
        from_record({**to_record(an_entry()), "kind": "piece-inspected", "fact": {"signs": ["{nitrite}"]}})


def test_what_cannot_be_read_is_said_in_a_short_sentence():
    with pytest.raises(NotAnEntry) as caught:
        from_record({"kind": "x" * 100_000})
    assert str(caught.value) == "This record cannot be read: {'kind': '" + "x" * 70
