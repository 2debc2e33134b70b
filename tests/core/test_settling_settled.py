"""Settled since when, and how far it drifted after."""

import pytest

from core.chamber.settling.events import Event
from core.chamber.settling.settled import arrived, drift_a_day, settled_since, undisturbed
from core.chamber.settling.statistics import Band

BAND = Band(12.0, 1.0)


def minutes(count: int) -> list[float]:
    return [60.0 * place for place in range(count)]


def since(*values: float) -> float | None:
    return settled_since(minutes(len(values)), values, BAND)


def test_settled_from_the_start():
    assert since(12, 12.5, 11.5) == 0


def test_settled_after_the_pull_down():
    assert since(20, 16, 12.5, 12) == 120


def test_a_single_stray_reading_is_no_departure():
    assert since(20, 16, 12.5, 14, 12) == 120


def test_two_readings_outside_are_a_departure():
    assert since(20, 16, 12.5, 14, 14, 12) == 300


def test_a_log_that_ends_outside_is_not_settled():
    assert since(20, 12, 12, 14) is None


def test_a_log_that_never_gets_there_is_not_settled():
    assert since(20, 19, 18) is None


def test_what_a_defrost_lifts_does_not_count():
    calm = [True, True, True, False, False, True]
    assert settled_since(minutes(6), [20, 16, 12.5, 14, 14, 12], BAND, calm) == 120


def test_a_quarter_of_an_hour_after_an_event_is_not_calm_yet():
    event = Event("defrost", 600.0, 600.0, 1200.0, 1500.0, 11.0, 15.0)
    calm = undisturbed(minutes(60), [event])
    assert [index for index, is_calm in enumerate(calm) if not is_calm] == list(range(10, 40))


def test_it_arrives_with_the_first_reading_in_the_band():
    assert arrived(minutes(4), [20, 16, 12.5, 14], BAND) == 120


def test_it_never_arrives_where_no_reading_is_in_the_band():
    assert arrived(minutes(2), [20, 16], BAND) is None


def test_drift_is_the_slope_of_a_day():
    times_s = minutes(600)
    assert drift_a_day(times_s, [12 + at_s / 86_400 for at_s in times_s]) == pytest.approx(1)


def test_drift_wants_six_hours():
    assert drift_a_day(minutes(359), [12.0] * 359) is None
