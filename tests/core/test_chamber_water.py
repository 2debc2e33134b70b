"""The tank and the basin, by what was poured."""

from datetime import timedelta

import pytest

from core.daybook.book import Book
from core.daybook.due.chamber import chamber_due
from core.daybook.facts.chamber import CHAMBER, BasinEmptied, BasinKnown, HumidifierCharged, HumidifierFilled
from core.daybook.facts.preparation import KeptTask, PreparationBegun, TaskBegun, TaskDone
from core.daybook.water import EMPTY_TWICE, basin, most_drained, tank
from core.quantities import METRIC
from core.sentence import said as as_sentence
from tests.core.kitchen import DAY, NOON, Kitchen

LITRE = 1e-3
RUN = PreparationBegun("quat", 0.1, 2e-4, 0.004, tasks=(KeptTask("dry", "Leave it open.", 3600.0),))


@pytest.fixture
def book(kitchen: Kitchen) -> Book:
    """Charged with 6 L in a tank of 7, then 2 L every second day."""
    kitchen.note(HumidifierCharged(6 * LITRE, 0.08, 7 * LITRE), CHAMBER, at=0)
    kitchen.note(HumidifierFilled(2 * LITRE, 6 * LITRE), CHAMBER, at=2)
    kitchen.note(HumidifierFilled(2 * LITRE, 6 * LITRE), CHAMBER, at=4)
    return kitchen.book


def emptied(kitchen: Kitchen, *days_and_litres: tuple[float, float]) -> None:
    for day, litres in days_and_litres:
        kitchen.note(BasinEmptied(litres * LITRE), CHAMBER, at=day)


def said(kitchen: Kitchen, day: float) -> list[str]:
    return [line.words.say(METRIC) for line in chamber_due(kitchen.book, NOON + day * DAY)]


def told(kitchen: Kitchen, day: float) -> list[tuple[str, str]]:
    """With what was last known."""
    lines = chamber_due(kitchen.book, NOON + day * DAY)
    return [(line.words.say(METRIC), line.fact.say(METRIC)) for line in lines if line.fact is not None]


def test_a_tank_never_filled_is_none(kitchen: Kitchen):
    assert tank(kitchen.book) is None


def test_a_first_filling_only_starts_the_count(kitchen: Kitchen):
    kitchen.note(HumidifierCharged(6 * LITRE), CHAMBER)
    found = tank(kitchen.book)
    assert found is not None
    assert found.outlook is None
    assert "After two fillings" in as_sentence(found.why).say(METRIC)


def test_water_a_day_is_what_was_topped_up(book: Book):
    found = tank(book)
    assert found is not None
    assert found.outlook is not None
    assert found.outlook.rate.value * 86400 == pytest.approx(1 * LITRE)


def test_the_tank_runs_dry_from_the_level_it_was_filled_to(book: Book):
    found = tank(book)
    assert found is not None
    assert found.outlook is not None
    assert found.outlook.expected - (NOON + 10 * DAY) < timedelta(seconds=1)


@pytest.mark.parametrize(("day", "litres"), [(4, 6), (6, 4), (9.5, 0.5), (10, 0), (40, 0)])
def test_what_is_left_goes_at_the_usual_rate_and_is_never_less_than_nothing(book: Book, day: float, litres: float):
    found = tank(book)
    assert found is not None
    assert found.left_m3(NOON + day * DAY) == pytest.approx(litres * LITRE)


def test_without_a_rate_it_holds_what_was_filled(kitchen: Kitchen):
    kitchen.note(HumidifierCharged(6 * LITRE), CHAMBER)
    found = tank(kitchen.book)
    assert found is not None
    assert found.left_m3(NOON + 30 * DAY) == pytest.approx(6 * LITRE)


def test_a_filling_to_the_mark_counts_what_the_level_rose(kitchen: Kitchen):
    kitchen.note(HumidifierCharged(6 * LITRE, 0.0, 7 * LITRE), CHAMBER, at=0)
    kitchen.note(HumidifierFilled(3 * LITRE), CHAMBER, at=2)
    found = tank(kitchen.book)
    assert found is not None
    assert found.outlook is not None
    assert found.level_m3 == 7 * LITRE
    assert found.outlook.rate.value * 86400 == pytest.approx(1 * LITRE)


def test_charge_after_charge_is_a_filling_each(kitchen: Kitchen):
    kitchen.note(HumidifierCharged(5 * LITRE), CHAMBER, at=0)
    kitchen.note(HumidifierCharged(5 * LITRE), CHAMBER, at=5)
    found = tank(kitchen.book)
    assert found is not None
    assert found.outlook is not None
    assert found.outlook.rate.value * 86400 == pytest.approx(1 * LITRE)


def test_a_filling_taken_back_does_not_count(kitchen: Kitchen, book: Book):
    wrong = kitchen.note(HumidifierFilled(5 * LITRE, 6 * LITRE), CHAMBER, at=5)
    kitchen.take_back(wrong)
    assert tank(kitchen.book) == tank(book)


def test_a_preparation_run_starts_the_count_anew(kitchen: Kitchen, book: Book):
    kitchen.note(RUN, CHAMBER, at=5)
    assert tank(kitchen.book) is None


def test_only_the_last_pourings_are_counted(kitchen: Kitchen):
    for day in range(30):
        kitchen.note(HumidifierFilled((1 if day < 15 else 2) * LITRE, 6 * LITRE), CHAMBER, at=day)
    found = tank(kitchen.book)
    assert found is not None
    assert found.outlook is not None
    assert found.outlook.rate.value * 86400 == pytest.approx(2 * LITRE)


def test_a_basin_of_unknown_size_says_what_is_missing(kitchen: Kitchen):
    assert "how much the basin holds" in as_sentence(basin(kitchen.book).why).say(METRIC)


def test_a_basin_is_full_when_what_gathers_has_filled_it(kitchen: Kitchen):
    kitchen.note(BasinKnown(3 * LITRE), CHAMBER)
    emptied(kitchen, (1, 0.4), (2, 0.5), (3, 0.5))
    found = basin(kitchen.book)
    assert found.outlook is not None
    assert abs(found.outlook.expected - (NOON + 9 * DAY)) < timedelta(seconds=1)


def test_an_overflowing_basin_has_no_outlook_and_says_why(kitchen: Kitchen):
    emptied(kitchen, (1, 0.4), (2, 5.0))
    kitchen.note(BasinKnown(3 * LITRE), CHAMBER, at=3)
    assert "No more than it holds" in as_sentence(basin(kitchen.book).why).say(METRIC)


def test_a_dry_basin_has_no_outlook(kitchen: Kitchen):
    kitchen.note(BasinKnown(3 * LITRE), CHAMBER)
    emptied(kitchen, (1, 0), (2, 0))
    assert basin(kitchen.book).outlook is None


def test_the_most_that_was_drained_is_of_the_fastest_interval(kitchen: Kitchen):
    emptied(kitchen, (0, 0.4), (1, 0.3), (2, 0.9), (4, 1.0))
    assert most_drained(basin(kitchen.book).emptied) == pytest.approx((0.9 * LITRE, 86400))


@pytest.mark.parametrize("pourings", [(), ((0, 1.0),), ((0, 1.0), (0.1, 1.0)), ((0, 0.0), (1, 0.0))])
def test_too_little_drained_tells_nothing(kitchen: Kitchen, pourings):
    emptied(kitchen, *pourings)
    assert most_drained(basin(kitchen.book).emptied) is None


@pytest.mark.parametrize(("apart", "told"), [(0.25, True), (0.24999, False)])
def test_what_gathers_is_told_from_six_hours_on(kitchen: Kitchen, apart: float, told: bool):
    """Common practice; no published source."""
    emptied(kitchen, (0, 1.0), (apart, 1.0))
    assert (most_drained(basin(kitchen.book).emptied) is not None) is told


@pytest.mark.parametrize(("hours", "litres"), [(1.0, 0.9), (1.001, 0.5)])
def test_emptied_twice_within_an_hour_it_was_emptied_once(kitchen: Kitchen, hours: float, litres: float):
    emptied(kitchen, (0, 1.0), (1, 0.5), (1 + hours / 24, 0.4))
    found = most_drained(basin(kitchen.book).emptied)
    assert found is not None
    assert found[0] == pytest.approx(litres * LITRE)


def test_a_second_before_the_earliest_moment_it_is_not_yet_late(kitchen: Kitchen, book: Book):
    found = tank(book)
    assert found is not None
    assert found.outlook is not None
    earliest, second = found.outlook.earliest, timedelta(seconds=1)
    assert [line.late(earliest) for line in chamber_due(book, earliest)] == [True]
    assert [line.late(earliest - second) for line in chamber_due(book, earliest - second)] == [False]


@pytest.mark.parametrize(("sooner_s", "told"), [(0, 1), (1, 0)])
def test_water_is_told_six_days_ahead(kitchen: Kitchen, sooner_s: int, told: int):
    kitchen.note(BasinKnown(30 * LITRE), CHAMBER)
    emptied(kitchen, (1, 0.4), (2, 0.5), (3, 0.5))
    outlook = basin(kitchen.book).outlook
    assert outlook is not None
    moment = outlook.earliest - timedelta(days=6, seconds=sooner_s)
    assert len(chamber_due(kitchen.book, moment)) == told


def test_a_tank_without_a_mark_holds_what_its_first_filling_made_of_it(kitchen: Kitchen):
    kitchen.note(HumidifierCharged(6 * LITRE), CHAMBER)
    found = tank(kitchen.book)
    assert found is not None
    assert found.holds_m3 == 6 * LITRE


def test_it_was_filled_when_it_was_last_filled(book: Book):
    found = tank(book)
    assert found is not None
    assert found.filled_at == NOON + 4 * DAY


def test_a_basin_emptied_once_asks_for_the_second_time(kitchen: Kitchen):
    kitchen.note(BasinKnown(3 * LITRE), CHAMBER)
    emptied(kitchen, (1, 0.4))
    assert basin(kitchen.book).why == EMPTY_TWICE


def test_ten_emptyings_back_are_looked_at(kitchen: Kitchen):
    """Common practice; no published source."""
    emptied(kitchen, *((day, 0.4) for day in range(12)))
    found = basin(kitchen.book)
    assert [each.at for each in found.emptied] == [NOON + day * DAY for day in range(2, 12)]
    assert found.emptied_at == NOON + 11 * DAY


@pytest.mark.parametrize(("day", "counts"), [(1.0, False), (1.001, True)])
def test_what_was_filled_at_the_moment_a_run_began_was_emptied_by_it(kitchen: Kitchen, day: float, counts: bool):
    kitchen.note(HumidifierCharged(6 * LITRE), CHAMBER, at=day)
    kitchen.note(RUN, CHAMBER, at=1)
    assert (tank(kitchen.book) is not None) is counts


def test_the_line_is_due_at_the_earliest_moment(kitchen: Kitchen, book: Book):
    found = tank(book)
    assert found is not None
    assert found.outlook is not None
    assert chamber_due(book, NOON + 4 * DAY)[0].at == found.outlook.earliest


def test_what_is_far_off_is_not_told(kitchen: Kitchen):
    kitchen.note(BasinKnown(30 * LITRE), CHAMBER)
    emptied(kitchen, (1, 0.4), (2, 0.5), (3, 0.5))
    assert said(kitchen, 3) == []


@pytest.mark.parametrize(
    ("day", "fact"),
    [(8.6, "filled 6 Nov 2026, 12:00"), (20, "it may have run dry; filled 6 Nov 2026, 12:00")],
)
def test_the_last_filling_is_told_and_that_it_may_be_dry(kitchen: Kitchen, book: Book, day: float, fact: str):
    assert told(kitchen, day) == [("Fill the humidifier", fact)]


def test_a_humidifier_that_a_run_emptied_is_to_be_filled_from_its_end_on(kitchen: Kitchen, book: Book):
    run = kitchen.note(RUN, CHAMBER, at=5)
    kitchen.note(TaskDone("dry"), run, at=5.2)
    assert told(kitchen, 6) == [("Fill the humidifier", "empty since the chamber was prepared")]
    assert chamber_due(kitchen.book, NOON + 6 * DAY)[0].at == NOON + 5.2 * DAY
    kitchen.note(HumidifierFilled(6 * LITRE), CHAMBER, at=6)
    assert told(kitchen, 6) == []


def test_a_chamber_that_never_had_water_is_not_asked_for_any(kitchen: Kitchen):
    run = kitchen.note(RUN, CHAMBER, at=5)
    kitchen.note(TaskDone("dry"), run, at=5.2)
    assert told(kitchen, 6) == []


def test_the_last_emptying_is_told(kitchen: Kitchen):
    kitchen.note(BasinKnown(3 * LITRE), CHAMBER)
    emptied(kitchen, (1, 0.4), (2, 0.5), (3, 0.5))
    assert told(kitchen, 6) == [("Empty the basin", "emptied 5 Nov 2026, 12:00")]


def test_a_run_that_was_begun_wants_to_be_gone_on_with(kitchen: Kitchen):
    kitchen.note(RUN, CHAMBER, at=1)
    assert said(kitchen, 1.1) == ["Continue preparing the chamber"]
    assert told(kitchen, 1.1) == [("Continue preparing the chamber", "0 of 1 done")]


def test_a_run_that_stands_is_due_when_it_has_stood(kitchen: Kitchen):
    run = kitchen.note(RUN, CHAMBER, at=1)
    kitchen.note(TaskBegun("dry"), run, at=1)
    assert chamber_due(kitchen.book, NOON + 1 * DAY)[0].at == NOON + DAY + timedelta(hours=1)
