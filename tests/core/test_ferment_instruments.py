"""What was read on an instrument that had failed its check carries no fermentation; a high pH still speaks against."""

import pytest

from core.daybook.due.ferment import IN_TIME, READ_EVERY
from core.daybook.facts.batch import Reading
from core.daybook.facts.ferment import DeviationDecided, FermentationBegun, FermentLogTaken
from core.daybook.fermenting import FermentationClock, clock_start, fermentation_of, judged
from core.ferment.course import Place, TemperatureReading
from core.ferment.crossing import Acid
from core.ferment.rules import RULES, RuleKey
from tests.core.kitchen import DAY
from tests.core.workshop import Workshop, day

HOUR = 1 / 24
SECOND = HOUR / 3600
H = 3600.0
US_BASE = RULES["us"].base_c


@pytest.fixture
def shop() -> Workshop:
    return Workshop()


@pytest.fixture
def batch(shop: Workshop) -> str:
    key = shop.begin(at=1)
    shop.cure(key, at=1)
    shop.note(FermentationBegun("us", None), key, at=1)
    return key


def clocked(shop: Workshop, batch: str, at: float = 3) -> FermentationClock:
    found = judged(shop.batch(batch), day(at))
    assert found is not None
    return found


def failed_meter(shop: Workshop) -> str:
    meter = shop.add("ph-meter", "Pen")
    shop.buffers(meter, seven=7.0, four=4.9, at=0.5)
    return meter


def failed_thermometer(shop: Workshop) -> str:
    thermometer = shop.add("thermometer", "Dial")
    shop.ice(thermometer, 9.0, at=0.5)
    return thermometer


def read_through(shop: Workshop, batch: str, thermometer: str | None = None) -> None:
    for hours in (0, 12, 24):
        shop.note(Reading(None, 20.0, thermometer=thermometer), batch, at=1 + hours * HOUR)


@pytest.mark.parametrize(("fails", "word"), [(True, "running"), (False, "passed")])
def test_a_low_ph_on_a_meter_that_had_failed_shows_nothing(shop: Workshop, batch: str, fails: bool, word: str):
    meter = failed_meter(shop) if fails else shop.add("ph-meter", "Pen")
    read_through(shop, batch)
    shop.note(Reading(5.8, None), batch, at=1)
    shop.note(Reading(5.1, None, meter=meter), batch, at=2)
    assert clocked(shop, batch, 2.1).judged.word == word


def test_a_high_ph_on_a_meter_that_had_failed_still_contradicts(shop: Workshop, batch: str):
    read_through(shop, batch)
    shop.note(Reading(5.1, None), batch, at=1.5)
    shop.note(Reading(5.31, None, meter=failed_meter(shop)), batch, at=2)
    assert clocked(shop, batch, 2.1).judged.measure_again


def test_just_at_the_target_a_failed_meter_speaks_neither_way(shop: Workshop, batch: str):
    shop.note(Reading(5.3, None, meter=failed_meter(shop)), batch, at=2)
    assert fermentation_of(shop.batch(batch)).phs == ()


@pytest.mark.parametrize(("fails", "word"), [(True, "unknown"), (False, "passed")])
def test_temperatures_on_a_thermometer_that_had_failed_are_none(shop: Workshop, batch: str, fails: bool, word: str):
    read_through(shop, batch, failed_thermometer(shop) if fails else shop.add("thermometer", "Dial"))
    shop.note(Reading(5.1, None), batch, at=2)
    found = clocked(shop, batch).judged
    assert found.word == word
    assert ([each.text for each in found.outcome.why] == ["No temperature was read."]) is fails


def log(thermometer: str | None, place: str = "chamber") -> FermentLogTaken:
    times_s, warm_c = (0.0, 3600.0, 7200.0), (20.0, 22.0, 21.0)
    return FermentLogTaken("0" * 64, place, times_s, warm_c, 23.0, 7200.0, 120, "shelf", thermometer)  # type: ignore[arg-type]


def logged(shop: Workshop, batch: str) -> tuple[TemperatureReading, ...]:
    return fermentation_of(shop.batch(batch)).temperatures


def test_a_log_of_an_unchecked_thermometer_counts_as_it_is_with_its_highest_reading(shop: Workshop, batch: str):
    shop.note(log(shop.add("thermometer", "Shelf"), "core"), batch, at=1 + 2 * HOUR)
    points = ((2, 20.0), (3, 22.0), (4, 21.0), (3, 23.0))
    found = logged(shop, batch)
    assert [(each.at_s / H, each.temperature_c, each.place) for each in found] == [
        (pytest.approx(at_h), warm_c, "core") for at_h, warm_c in points
    ]


def test_a_log_on_an_instrument_nobody_knows_counts_as_it_is(shop: Workshop, batch: str):
    shop.note(log("nobody"), batch, at=1)
    assert max(each.temperature_c for each in logged(shop, batch)) == 23


def test_a_log_is_corrected_by_the_check_that_stood_when_it_began_its_highest_too(shop: Workshop, batch: str):
    thermometer = shop.add("thermometer", "Shelf")
    shop.ice(thermometer, 1.0, at=0.5)
    shop.note(log(thermometer), batch, at=1)
    assert [each.temperature_c for each in logged(shop, batch)] == pytest.approx([19.0, 21.0, 20.0, 22.0])


def test_a_log_on_a_thermometer_that_had_failed_is_none(shop: Workshop, batch: str):
    shop.note(log(failed_thermometer(shop)), batch, at=1)
    assert logged(shop, batch) == ()


def test_a_thermometer_that_fails_later_may_have_failed_then(shop: Workshop, batch: str):
    thermometer = shop.add("thermometer", "Shelf")
    shop.note(log(thermometer), batch, at=1)
    assert len(logged(shop, batch)) == 4
    shop.ice(thermometer, 9.0, at=1.5)
    assert logged(shop, batch) == ()


def test_a_check_passed_after_the_log_vouches_for_it(shop: Workshop, batch: str):
    thermometer = shop.add("thermometer", "Shelf")
    shop.note(log(thermometer), batch, at=1)
    shop.ice(thermometer, 0.0, at=1.5)
    shop.ice(thermometer, 9.0, at=1.6)
    assert len(logged(shop, batch)) == 4


@pytest.mark.parametrize("hours", [1, 2 - 1 / 3600, 2])
def test_a_check_passed_while_it_logged_does_not_vouch_for_the_rest(shop: Workshop, batch: str, hours: float):
    thermometer = shop.add("thermometer", "Shelf")
    shop.note(log(thermometer), batch, at=1)
    shop.ice(thermometer, 0.0, at=1 + hours * HOUR)
    shop.ice(thermometer, 9.0, at=1.5)
    assert logged(shop, batch) == ()


def test_the_seconds_count_from_the_start_of_the_clock(shop: Workshop, batch: str):
    shop.note(Reading(5.8, 20.0), batch, at=1 - HOUR)
    shop.note(Reading(5.6, 21.0, place="core"), batch, at=1 + 2 * HOUR)
    known = fermentation_of(shop.batch(batch))
    assert known.phs == (Acid(pytest.approx(-H), 5.8), Acid(pytest.approx(2 * H), 5.6))  # type: ignore[arg-type]
    assert [(each.temperature_c, each.place) for each in known.temperatures] == [(20.0, "chamber"), (21.0, "core")]


def test_it_is_read_twice_a_day_and_an_hour_before_the_last_safe_moment():
    assert (READ_EVERY, IN_TIME) == (DAY / 2, DAY / 24)


def started_at(
    shop: Workshop, begun: float, ph: float | None, warm_c: float | None, read: float = 3 - HOUR, rule: RuleKey = "us"
) -> float:
    """The day its clock runs from. Begun on day 1, read an hour before day 3, the start noted on the day given."""
    batch = shop.begin(at=1)
    shop.note(Reading(ph, warm_c), batch, at=read)
    shop.note(FermentationBegun(rule, None), batch, at=begun)
    return (clock_start(shop.batch(batch)) - day(0)) / DAY


@pytest.mark.parametrize(
    ("rule", "warm_c", "starts"),
    [
        ("us", US_BASE, 3.5),
        ("us", US_BASE + 1e-9, 3 - HOUR),
        ("canada", 15.6, 3.5),
        ("canada", 15.6 + 1e-9, 3 - HOUR),
    ],
)
def test_a_start_noted_late_runs_from_the_first_reading_that_was_warm(
    shop: Workshop, rule: RuleKey, warm_c: float, starts: float
):
    assert started_at(shop, 3.5, None, warm_c, rule=rule) == pytest.approx(starts)


def test_a_warm_reading_at_the_beginning_itself_is_in_it_and_one_before_is_not(shop: Workshop):
    assert started_at(shop, 3.5, None, 24.0, read=1) == pytest.approx(1)
    assert started_at(shop, 3.5, None, 24.0, read=1 - SECOND) == pytest.approx(3.5)


@pytest.mark.parametrize(("ph", "starts"), [(5.301, 3.5), (5.3, 1.0)])
def test_a_start_noted_after_it_was_sour_runs_from_the_beginning_of_the_batch(shop: Workshop, ph: float, starts: float):
    assert started_at(shop, 3.5, ph, None) == pytest.approx(starts)


@pytest.mark.parametrize(
    ("read", "starts"),
    [(1, 3.5), (1 + SECOND, 1.0), (3.5 - HOUR - SECOND, 1.0), (3.5 - HOUR, 3.5), (3.5, 3.5), (3.5 + SECOND, 3.5)],
)
def test_sour_only_after_the_beginning_and_an_hour_before_the_noted_start(shop: Workshop, read: float, starts: float):
    assert started_at(shop, 3.5, 5.2, None, read=read) == pytest.approx(starts)


@pytest.mark.parametrize("noted", [True, False])
def test_whether_the_start_was_noted_is_known(shop: Workshop, noted: bool):
    batch = shop.begin(at=1)
    if noted:
        shop.note(FermentationBegun("us", None), batch, at=2)
    assert fermentation_of(shop.batch(batch)).start_noted is noted


def test_a_log_that_grew_warm_before_the_noted_start_starts_the_clock_at_that_point(shop: Workshop):
    batch = shop.begin(at=1)
    warming = FermentLogTaken("ab" * 32, "chamber", (0.0, 6 * H, 12 * H), (10.0, 12.0, 20.0), 20.0, 12 * H, 3)
    shop.note(warming, batch, at=2)
    shop.note(FermentationBegun("us", None), batch, at=4)
    assert clock_start(shop.batch(batch)) == day(2.5)


def test_warm_and_sour_in_one_reading_it_runs_from_that(shop: Workshop):
    assert started_at(shop, 3.5, 5.2, 24.0) == pytest.approx(3 - HOUR)


@pytest.mark.parametrize(("begun", "starts"), [(3 - SECOND, 3 - SECOND), (3, 3), (3 + SECOND, 3 - HOUR)])
def test_a_reading_within_the_hour_before_is_of_a_chamber_warmed_up(shop: Workshop, begun: float, starts: float):
    assert started_at(shop, begun, None, 24.0) == pytest.approx(starts)


def test_warm_days_before_a_start_noted_late_are_counted(shop: Workshop):
    batch = shop.begin(at=1)
    for half_days in range(9):
        shop.note(Reading(None, 30.0), batch, at=1 + half_days / 2)
    shop.note(Reading(5.2, None), batch, at=4.9)
    shop.note(FermentationBegun("us", 30.0), batch, at=5)
    shop.note(Reading(5.1, 30.0), batch, at=5.2)
    assert clocked(shop, batch, at=6).judged.word == "over"


def test_a_second_start_does_not_hide_what_was_before_it(shop: Workshop, batch: str):
    shop.note(Reading(None, 30.0), batch, at=1.25)
    shop.note(FermentationBegun("us", None), batch, at=4)
    assert clock_start(shop.batch(batch)) == day(1.25)


def a_log(shop: Workshop, batch: str, warm_c: float, later_s: float, place: Place = "chamber") -> None:
    """A point an hour for two days, from so much after the batch's start."""
    times_s = tuple(H * hour for hour in range(48))
    fact = FermentLogTaken("ab" * 32, place, times_s, (warm_c,) * 48, warm_c, times_s[-1], 48)
    shop.note(fact, batch, at=1 + later_s / (24 * H))


@pytest.mark.parametrize("cool_first", [False, True])
def test_of_two_logs_of_one_place_the_warmer_counts(shop: Workshop, batch: str, cool_first: bool):
    shop.note(Reading(5.9), batch, at=1)
    shop.note(Reading(5.7), batch, at=2.9)
    for warm_c, later_s in [(14.0, 1800.0), (24.0, 0.0)][:: 1 if cool_first else -1]:
        a_log(shop, batch, warm_c, later_s)
    found = clocked(shop, batch, at=2.9).judged.sum
    assert found is not None
    assert found.value == pytest.approx((24 - 140 / 9) * 1.9 * 24 * H, rel=1e-3)


def test_a_cool_reading_beside_a_warm_log_takes_nothing_from_it(shop: Workshop, batch: str):
    a_log(shop, batch, 24.0, 0.0)
    shop.note(Reading(5.9), batch, at=1)
    before = clocked(shop, batch, at=2.9).judged.sum
    shop.note(Reading(None, 12.0), batch, at=1.9)
    after = clocked(shop, batch, at=2.9).judged.sum
    assert before is not None
    assert after is not None
    assert after.value == pytest.approx(before.value)


def test_a_log_of_the_core_says_nothing_of_the_chamber(shop: Workshop, batch: str):
    a_log(shop, batch, 24.0, 0.0, "core")
    shop.note(Reading(None, 12.0), batch, at=1.9)
    assert TemperatureReading(0.9 * 24 * H, 12.0, "chamber") in fermentation_of(shop.batch(batch)).temperatures


BESIDE = FermentLogTaken("cd" * 32, "chamber", (0.0, H, 3 * H, 5 * H), (20.0, 22.0, 30.0, 21.0), 33.0, 5 * H, 60)


@pytest.mark.parametrize(
    ("hours", "counts_c"),
    [
        *((-SECOND * 24, 10.0), (0.0, 20.0), (0.5, 21.0), (1.0, 22.0), (2.0, 26.0), (3.0, 30.0)),
        *((4.0, 27.0), (5.0, 21.0), (5 + SECOND * 24, 10.0)),
    ],
)
def test_a_cool_reading_counts_as_the_log_beside_it(shop: Workshop, batch: str, hours: float, counts_c: float):
    """By the line between its points; of the fourth hour from its highest reading, 33 °C, down to 21."""
    shop.note(BESIDE, batch, at=1)
    shop.note(Reading(None, 10.0), batch, at=1 + hours * HOUR)
    assert fermentation_of(shop.batch(batch)).temperatures[0].temperature_c == pytest.approx(counts_c)


def test_a_warmer_reading_counts_as_it_is(shop: Workshop, batch: str):
    shop.note(BESIDE, batch, at=1)
    shop.note(Reading(None, 27.0), batch, at=1 + 2 * HOUR)
    assert fermentation_of(shop.batch(batch)).temperatures[0].temperature_c == 27


def test_between_two_single_readings_a_log_says_how_warm_it_was(shop: Workshop, batch: str):
    shop.note(Reading(None, 40.0), batch, at=1 - HOUR)
    shop.note(BESIDE, batch, at=1)
    shop.note(Reading(None, 40.0), batch, at=1 + 6 * HOUR)
    found = fermentation_of(shop.batch(batch)).temperatures[2:]
    assert [each.temperature_c for each in found] == [20.0, 22.0, 30.0, 21.0, 33.0]


def test_a_decision_counts_from_the_start_of_the_clock(shop: Workshop, batch: str):
    assert fermentation_of(shop.batch(batch)).decided_s == 0
    shop.note(DeviationDecided("keep", "the district", "clean"), batch, at=3)
    assert fermentation_of(shop.batch(batch)).decided_s == 2 * 24 * H


def test_corrected_to_the_base_itself_it_has_no_last_safe_moment(shop: Workshop):
    """16.1 °C less half a degree is a little more than 15.6 °C in floating point: the limit would be reached in
    forty million million years, a day no calendar has."""
    batch, thermometer = shop.begin(at=1), shop.add("thermometer", "Dial")
    shop.ice(thermometer, 0.5, at=0.5)
    shop.note(FermentationBegun("canada", None), batch, at=1)
    shop.note(Reading(5.8, 16.1, thermometer=thermometer), batch, at=1)
    found = clocked(shop, batch, 1.1)
    assert 15.6 < found.fermentation.temperatures[0].temperature_c < 15.6 + 1e-12
    assert found.last_safe is None
