"""Where the daybook draws its lines: what a fact may hold, when a line is due, what counts; each from both sides."""

from datetime import UTC, datetime, timedelta

import attrs
import pytest

from core.chamber.checks import Correction
from core.daybook import evidence
from core.daybook.batch import fold, open_and_finished, open_batches
from core.daybook.corrections.figures import correction_in_words
from core.daybook.due.chamber import chamber_due
from core.daybook.due.instruments import instruments_due
from core.daybook.due.salt import of_salt
from core.daybook.entries import Entry, entry_id, is_entry_id
from core.daybook.facts.batch import (
    ActivityMeasured,
    BatchStarted,
    CureWeighed,
    PieceHung,
    PieceTakenDown,
    PieceWeighed,
    Reading,
)
from core.daybook.facts.chamber import CHAMBER, BasinEmptied, CapacityStated, SetPointsChosen
from core.daybook.facts.cure import LicensedException
from core.daybook.facts.ferment import DeviationDecided, FermentLogTaken
from core.daybook.facts.fields import above_zero, celsius, not_negative, ph_value, share
from core.daybook.facts.instruments import (
    BoilingPointChecked,
    IcePointChecked,
    InstrumentAdded,
    SaltChecked,
    TwoSaltsChecked,
)
from core.daybook.facts.preparation import TIMER, PreparationBegun
from core.daybook.facts.proofs import ProofFile, ProofProbe, ProofResult, ProofRun
from core.daybook.facts.salting import PieceTurned, SaltingBegun
from core.daybook.instruments import Shelf
from core.daybook.load import burden, capacity, hanging
from core.daybook.preparation_list import LONGEST_LIST, LONGEST_TEXT
from core.daybook.proofs import logged_at
from core.quantities import METRIC
from core.sentence import Sentence
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.workshop import Workshop, day

PER_DAY = 1 / 86_400
ANY = attrs.fields(BatchStarted).meat_kg


@pytest.fixture
def shop() -> Workshop:
    return Workshop()


def fits(validator, value) -> bool:
    try:
        validator(None, ANY, value)
    except (ValueError, TypeError):
        return False
    return True


@pytest.mark.parametrize(
    ("validator", "inside", "outside"),
    [
        (above_zero, (1e-9, 9.999e11), (0.0, -1e-9, 1e12, float("nan"))),
        (not_negative, (0.0, 9.999e11), (-1e-9, 1e12, float("nan"))),
        (share, (0.0, 1.0), (-1e-9, 1.0001)),
        (ph_value, (0.0, 14.0), (-1e-9, 14.001)),
        (celsius, (-59.999, 149.999), (-60.0, 150.0)),
        (attrs.fields(SaltingBegun).thickness_m.validator, (0.005, 1.0), (0.004999, 1.001)),
        (attrs.fields(ActivityMeasured).water_activity.validator, (1e-9, 1.0), (0.0, 1.001)),
        (attrs.fields(BoilingPointChecked).altitude_m.validator, (-500.0, 4000.0, None), (-500.1, 4000.1)),
        (attrs.fields(FermentLogTaken).readings.validator, (2,), (1,)),
        (attrs.fields(ProofProbe).file.validator, (0,), (-1,)),
        (attrs.fields(ProofRun).humidity_half.validator, (0.005, 0.5, None), (0.0049, 0.501, -0.5)),
        (attrs.fields(ProofRun).temperature_half_k.validator, (0.1, 10.0), (0.0, 0.099, 10.1)),
    ],
)
def test_what_a_fact_may_hold(validator, inside, outside):
    assert all(fits(validator, value) for value in inside)
    assert not any(fits(validator, value) for value in outside)


@pytest.mark.parametrize(
    ("kind", "name"),
    [
        (BatchStarted, "name"), (PieceHung, "tag"), (LicensedException, "why"),
        (LicensedException, "authority"), (LicensedException, "decided_by"), (DeviationDecided, "decided_by"),
        (InstrumentAdded, "name"), (ProofProbe, "name"), (ProofRun, "name"), (ProofRun, "files"), (ProofRun, "probes"),
    ],
)  # fmt: skip
def test_a_name_is_one_sign_at_least(kind: type, name: str):
    field = getattr(attrs.fields(kind), name)
    assert fits(field.validator, "x")
    assert not fits(field.validator, "")


@pytest.mark.parametrize(
    ("kind", "name", "default"),
    [
        (IcePointChecked, "division_k", 0.1), (BoilingPointChecked, "division_k", 0.1),
        (SaltChecked, "division", 0.001), (TwoSaltsChecked, "division", 0.001),
        (PreparationBegun, "stock_kg_m3", 1000.0),
        (SetPointsChosen, "surface_activity", 0.97), (SaltingBegun, "centre_share", 0.9), (CureWeighed, "nitrate", 0.0),
        (CureWeighed, "second_kg", 0.0), (ProofRun, "utc_offset_s", 0.0),
    ],
)  # fmt: skip
def test_what_an_older_entry_does_not_say_is_taken_to_be_so(kind: type, name: str, default: float):
    assert getattr(attrs.fields(kind), name).default == default


@pytest.mark.parametrize(
    ("digits", "fits_"), [("0" * 64, True), ("0" * 63, False), ("0" * 65, False), ("A" + "0" * 63, False)]
)
def test_a_file_is_known_by_64_digits(digits: str, fits_: bool):
    assert fits(attrs.fields(ProofFile).sha256.validator, digits) is fits_
    assert fits(attrs.fields(FermentLogTaken).file.validator, digits) is fits_


@pytest.mark.parametrize(("points", "fits_"), [(120, True), (121, False)])
def test_an_outline_has_120_points(points: int, fits_: bool):
    assert fits(attrs.fields(ProofResult).outline.validator, ((0.0, 12.0),) * points) is fits_


@pytest.mark.parametrize(("year", "fits_"), [(1970, True), (1969, False), (2999, True), (3000, False)])
def test_an_entry_is_of_the_years_1970_to_2999(year: int, fits_: bool):
    moment = datetime(year, 6, 1, tzinfo=UTC)

    def made() -> bool:
        try:
            Entry("x", "x", moment, NOON, Reading(5.0))
        except ValueError:
            return False
        return True

    assert made() is fits_


def test_an_id_is_a_uuid_of_version_7_from_its_milliseconds_and_its_chance():
    """RFC 9562, section 5.7: 48 bits of Unix time in ms, version 7, 12 bits, variant 10, 62 bits."""
    moment = datetime(2026, 11, 2, 12, 0, 0, 123_000, tzinfo=UTC)
    milliseconds = round(moment.timestamp() * 1000)
    assert entry_id(moment, b"\xff" * 10) == _uuid(milliseconds, "7fff-bfff-ffffffffffff")
    assert entry_id(moment, b"\x00" * 11) == _uuid(milliseconds, "7000-8000-000000000000")
    assert entry_id(moment, bytes(range(1, 11))) == _uuid(milliseconds, "7102-8304-05060708090a")
    assert is_entry_id(entry_id(moment, bytes(10)))


def _uuid(milliseconds: int, rest: str) -> str:
    digits = f"{milliseconds:012x}"
    return f"{digits[:8]}-{digits[8:]}-{rest}"


def lines_of(shop: Workshop, at: float) -> list[str]:
    lines = instruments_due(Shelf(shop.book).in_use(), day(at))
    return [f"{line.words.say(METRIC)}: {line.fact.say(METRIC)}" for line in lines if line.fact is not None]


@pytest.mark.parametrize(("at", "is_told"), [(23.0, True), (22.999, False)])
def test_a_check_is_told_a_week_ahead(shop: Workshop, at: float, is_told: bool):
    meter = shop.add("thermometer", "Larder", check_every_s=30 * 86_400.0)
    shop.note(IcePointChecked(0.0), meter, 0.0)
    assert bool(lines_of(shop, at)) is is_told


@pytest.mark.parametrize(
    ("at", "words"),
    [
        (0.9, "today"), (1.0, "1 day ago"), (1.9, "1 day ago"), (2.0, "2 days ago"), (60.9, "60 days ago"),
        (61.0, "2 months ago"), (76.0, "2 months ago"), (77.0, "3 months ago"),
    ],
)  # fmt: skip
def test_how_long_ago_a_check_was_is_said_in_days_then_in_months(shop: Workshop, at: float, words: str):
    """A month is 30.44 days."""
    meter = shop.add("thermometer", "Larder", check_every_s=3600.0)
    shop.note(IcePointChecked(0.0), meter, 0.0)
    assert lines_of(shop, at) == [f"Check the thermometer Larder: last checked {words}"]


def drained(kitchen: Kitchen, litres: float, days: float) -> None:
    kitchen.note(BasinEmptied(0.0), CHAMBER, at=0)
    kitchen.note(BasinEmptied(litres / 1000), CHAMBER, at=days)


@pytest.mark.parametrize(
    ("kilograms", "word"),
    [(15.999, "carries it"), (16.001, "near its limit"), (20.0, "near its limit"), (20.001, "overloaded")],
)
def test_four_fifths_of_what_it_carries_are_near_its_limit(kitchen: Kitchen, kilograms: float, word: str):
    kitchen.note(CapacityStated(rated_m3_s=0.2e-3 * PER_DAY), CHAMBER)
    assert burden(kilograms, 0.01 * PER_DAY, capacity(kitchen.book), None).word == word


@pytest.mark.parametrize(("kilograms", "word"), [(20.0, "near its limit"), (20.001, "more than it has shown")])
def test_a_basin_has_shown_no_more_than_it_holds(kitchen: Kitchen, kilograms: float, word: str):
    drained(kitchen, 0.2, 1)
    assert burden(kilograms, 0.01 * PER_DAY, capacity(kitchen.book), None).word == word


@pytest.mark.parametrize(("days", "rate"), [(3.999, 0.015), (4.0, 0.01)])
def test_a_piece_is_young_for_four_days(kitchen: Kitchen, days: float, rate: float):
    kitchen.hang(kitchen.begin(), start_kg=2.0, at=2)
    found = hanging(open_batches(kitchen.book), NOON + (2 + days) * DAY)
    assert found is not None
    assert found.loss_per_s == pytest.approx(rate * PER_DAY)


@pytest.mark.parametrize(("minutes", "mass_kg"), [(60, 0.94), (59, 1.0)])
def test_two_weighings_are_two_an_hour_apart(kitchen: Kitchen, minutes: float, mass_kg: float):
    piece = kitchen.hang(kitchen.begin(), start_kg=1.0, at=0)
    kitchen.weigh(piece, 0.94, at=5)
    kitchen.weigh(piece, 0.93, at=5 + minutes / 1440)
    found = hanging(open_batches(kitchen.book), NOON + 6 * DAY)
    assert found is not None
    since = minutes / 1440 if mass_kg == 0.94 else 5 + minutes / 1440
    of_the_start = min((mass_kg - 0.93) / since, 0.1)
    assert found.loss_per_s == pytest.approx(of_the_start / 0.93 * PER_DAY, rel=1e-6)


def test_the_latest_cure_counts_and_is_named(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.cure(batch, at=0)
    latest = kitchen.note(CureWeighed(0.02, 0.0625), batch, 1)
    found = kitchen.batch(batch)
    assert (found.cure, found.cure_line_id, found.cured_at) == (CureWeighed(0.02, 0.0625), latest, NOON + DAY)


def test_the_latest_weighing_counts(kitchen: Kitchen):
    batch = kitchen.begin()
    piece = kitchen.hang(batch, start_kg=1.0, at=2)
    for at, mass_kg in ((5, 0.9), (7, 0.8), (9, 0.7)):
        kitchen.weigh(piece, mass_kg, at=at)
    found = kitchen.piece(batch, piece)
    assert (found.mass_kg, found.weighed_at, found.loss) == (0.7, NOON + 9 * DAY, pytest.approx(0.3))


@pytest.mark.parametrize(("at", "loss"), [(6.0, 0.2), (6.0001, None), (5.0, 0.2), (4.9, 0.2)])
def test_a_sample_goes_by_the_weighing_after_it_or_of_the_day_before(kitchen: Kitchen, at: float, loss: float | None):
    batch = kitchen.begin()
    piece = kitchen.hang(batch, start_kg=1.0, at=2)
    kitchen.weigh(piece, 0.8, at=5)
    kitchen.note(ActivityMeasured(0.9), piece, at)
    (sample,) = kitchen.piece(batch, piece).activities
    assert sample.most_loss == (loss and pytest.approx(loss))


@pytest.mark.parametrize(("hours", "said"), [(1.0, False), (1.001, True)])
def test_an_entry_may_be_an_hour_ahead_of_the_clock(kitchen: Kitchen, hours: float, said: bool):
    batch = kitchen.begin()
    piece = kitchen.hang(batch, at=2)
    kitchen.weigh(piece, 0.9, at=5)
    folded = kitchen.batch(batch)
    told = evidence._doubtful_entries(folded, NOON + 5 * DAY - timedelta(hours=hours))
    assert ("ahead" in told) is said


def test_finished_batches_are_told_from_open_ones(kitchen: Kitchen):
    done, left = kitchen.begin("done"), kitchen.begin("left")
    kitchen.note(PieceTakenDown("ready"), kitchen.hang(done), at=9)
    kitchen.hang(left)
    still_open, finished = open_and_finished(kitchen.book)
    assert ([each.id for each in still_open], [each.id for each in finished]) == ([left], [done])
    assert [each.id for each in open_batches(kitchen.book)] == [left]
    assert fold(kitchen.book, "x") is None


@pytest.mark.parametrize(
    ("correction", "words"),
    [
        (Correction(0.5), "0.5 K is added to every reading."),
        (Correction(1e-6), "0.000001 K is added to every reading."),
        (Correction(-0.5), "0.5 K is taken off every reading."),
        (Correction(0.0), "No correction needed."),
        (Correction(0.0, 1.01), "Every reading is multiplied by 1.01."),
        (
            Correction(-0.1, 1.01, low_reading=10.0, high_reading=90.0),
            "10 °C read is 10 °C, 90 °C read is 90.8 °C, and in a straight line between and beyond.",
        ),
        (
            Correction(-0.1, 1.01),
            "0 °C read is −0.1 °C, 1 °C read is 0.91 °C, and in a straight line between and beyond.",
        ),
    ],
)
def test_a_correction_is_said_by_what_it_does(correction: Correction, words: str):
    assert correction_in_words("temperature", correction).say(METRIC).replace("\u2212", "−") == words


def test_a_list_of_tasks_has_its_ends():
    """Our own: entered here a second time."""
    assert (LONGEST_TEXT, LONGEST_LIST, TIMER.high) == (200, 60, 172_800)


@pytest.mark.parametrize(
    ("at_s", "words"), [(0.0, "1 Jan 1970, 00:00"), (1_793_714_700.0, "3 Nov 2026, 14:05"), (59.9, "1 Jan 1970, 00:00")]
)
def test_a_moment_of_a_log_is_said_by_its_own_clock(at_s: float, words: str):
    assert Sentence("{at}", {"at": logged_at(at_s)}).say(METRIC) == words


def test_a_turned_piece_and_an_empty_chamber_ask_for_nothing(kitchen: Kitchen):
    kitchen.note(PieceTurned(), kitchen.begin(style="whole-muscle"), 1)
    assert chamber_due(kitchen.book, NOON + DAY) == []


def test_a_weighing_is_more_than_nothing():
    with pytest.raises(ValueError, match="mass_kg"):
        PieceWeighed(0.0)


@pytest.mark.parametrize(("salted", "word"), [("weighed", "Turn"), ("excess", "Overhaul")])
def test_a_bag_is_turned_and_what_lies_in_salt_is_overhauled(kitchen: Kitchen, salted, word: str):
    batch = kitchen.begin("Loin", style="whole-muscle")
    kitchen.cure(batch)
    kitchen.note(SaltingBegun(salted, "slab", 0.05, 3.0), batch, 1)
    assert [each.words.say(METRIC) for each in of_salt(kitchen.batch(batch), NOON) if each.task == "turn"] == [
        f"{word} Loin in its salt"
    ]
