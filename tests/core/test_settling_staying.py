"""How long it has stayed in its band, as far as readings show it: since when, what share, what is missing."""

import pytest

from core.chamber.settling.statistics import Band
from core.chamber.settling.staying import Stay, stay

BAND = Band(12.0, 1.0)
INSIDE, OUTSIDE = 12.0, 14.0
SHOWN_S = 90.0


def minutes(count: int) -> list[float]:
    return [60.0 * place for place in range(count)]


def of(*pieces: tuple[int, float]) -> Stay:
    """So many minutes of each value."""
    values = [value for count, value in pieces for _ in range(count)]
    return stay(minutes(len(values)), values, BAND, SHOWN_S)


def without(first: int, end: int, values: list[float]) -> Stay:
    times_s = minutes(len(values))
    return stay(times_s[:first] + times_s[end:], values[:first] + values[end:], BAND, SHOWN_S)


def test_settled_from_the_start():
    assert of((100, INSIDE)).since_s == 0


def test_settled_after_the_pull_down():
    assert of((50, OUTSIDE), (100, INSIDE)).since_s == 50 * 60


def test_a_reading_outside_costs_the_time_to_both_its_neighbours():
    assert of((100, INSIDE), (1, OUTSIDE), (100, INSIDE)).inside == pytest.approx(1 - 2 / 200)


def test_a_reading_that_is_missing_costs_the_same():
    assert without(100, 101, [INSIDE] * 201).inside == of((100, INSIDE), (1, OUTSIDE), (100, INSIDE)).inside


@pytest.mark.parametrize(("readings", "stays"), [(14, True), (15, False)])
def test_a_quarter_of_an_hour_outside_is_a_departure(readings: int, stays: bool):
    found = of((600, INSIDE), (readings, OUTSIDE), (600, INSIDE))
    assert (found.since_s == 0) is stays


@pytest.mark.parametrize(("readings", "stays"), [(14, True), (15, False)])
def test_so_is_a_quarter_of_an_hour_without_a_reading(readings: int, stays: bool):
    assert (without(600, 600 + readings, [INSIDE] * 1200).since_s == 0) is stays


@pytest.mark.parametrize(("readings", "stays"), [(3, True), (4, False)])
def test_a_twentieth_of_the_time_may_be_outside(readings: int, stays: bool):
    """Of 100 minutes four are outside or on the way there; then five."""
    cycle = ((97 - readings, INSIDE), (readings, OUTSIDE), (3, INSIDE))
    found = of(*cycle * 30)
    assert found.since_s is not None
    assert (found.since_s == 0) is stays


def test_it_stays_since_the_earliest_moment_that_holds_for_all_that_follows():
    restless = ((20, INSIDE), (10, OUTSIDE)) * 40
    since_s = of(*restless, (2000, INSIDE)).since_s
    assert since_s is not None
    assert 880 * 60 < since_s <= 900 * 60


def test_a_log_that_ends_outside_does_not_stay():
    assert of((600, INSIDE), (20, OUTSIDE)).since_s is None


def test_a_log_that_never_gets_there_does_not_stay():
    assert of((600, OUTSIDE)).since_s is None


def test_what_a_defrost_lifts_is_left_out():
    values = [INSIDE] * 300 + [OUTSIDE] * 30 + [INSIDE] * 300
    calm = [value == INSIDE for value in values]
    found = stay(minutes(630), values, BAND, SHOWN_S, calm)
    assert (found.since_s, found.inside) == (0, 1)


def test_where_hardly_any_time_is_undisturbed_nothing_is_shown():
    calm = [place % 10 < 7 for place in range(600)]
    assert stay(minutes(600), [INSIDE] * 600, BAND, SHOWN_S, calm).since_s != 0


def test_the_longest_hole_is_measured_also_where_the_window_begins_within_it():
    found = without(120, 2820, [INSIDE] * 2880)
    assert found.lately.longest_hole_s == 2701 * 60


def test_the_share_outside_is_that_of_the_readings():
    assert of(*((15, INSIDE), (5, OUTSIDE)) * 40).lately.outside == pytest.approx(0.25, abs=0.01)
