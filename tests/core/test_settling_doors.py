"""Whether the compressor ran when a door was opened: by hand, each limit met to a hair.

The chamber of these rows cools by 0.1 K a minute from 12 to 10 °C and warms in half the time; a reading a minute. When
it stops after `late_s`, the trace falls on for that long and a quarter of a minute, at its pace.
"""

import pytest

from core.chamber.settling.broken_runs import (
    NOT_COOLING,
    Broken,
    bridged,
    broken,
    doubtful_doors,
    falls_by_s,
    opens,
    ran_on,
)
from core.chamber.settling.events import Event, Kind
from core.chamber.settling.swing import Swing, Trace
from tests.core.settling_traces import legs, swing_of, trace_of

FALLS_BY_S = 0.1 / 60


def event(kind: Kind, foot: int, top: int, ends: int) -> Event:
    return Event(kind, 60.0 * foot, 60.0 * foot, 60.0 * top, 60.0 * ends, 0.0, 0.0)


def opened(minutes: int, sigma: float = 0.0, step: float = 0.0) -> tuple[Trace, Swing, Event]:
    """A door, so many minutes after a peak: 2 K within three minutes, and gone in ten."""
    low = 12 - 0.1 * minutes
    values = legs(10.0, (10, 12.0), (20, 10.0), (10, 12.0), (minutes, low), (3, low + 2), (10, low), (30, low))
    foot = 40 + minutes
    turns = [(0, False), (10, True), (30, False), (40, True)]
    swing = swing_of(10.0, 12.0, 600.0, 1200.0, turns)
    return trace_of(values, sigma=sigma, step=step), swing, event("door", foot, foot + 3, foot + 13)


@pytest.mark.parametrize(("first", "top", "at"), [(0, 7, 3), (4, 7, 4), (5, 7, 5), (0, 4, 2), (2, 2, 2)])
def test_a_door_opens_at_the_lowest_reading_within_three_minutes_before_its_steepest(first: int, top: int, at: int):
    values = [10.5, 10.2, 10.1, 10.3, 10.4, 11.0, 13.0, 13.5]
    assert opens(trace_of(values), event("door", first, top, 7)) == at


@pytest.mark.parametrize(
    ("first", "at", "by_k"), [(0, 6, 0.45), (0, 4, 0.25), (0, 3, 0.2), (4, 6, 0.55), (6, 6, 2 / 15), (6, 7, 0.0)]
)
def test_how_fast_it_falls_is_seen_over_four_minutes(first: int, at: int, by_k: float):
    values = [12.0, 11.9, 11.7, 11.4, 11.0, 10.5, 9.9, 10.5]
    assert falls_by_s(trace_of(values), swing_of(10, 12), first, at) == pytest.approx(by_k / 60)


def test_of_stairs_only_the_usual_pace_is_known():
    assert falls_by_s(trace_of([12.0, 11.5, 10.0], step=0.4), swing_of(10, 12), 0, 2) == pytest.approx(2 / 900)
    assert falls_by_s(trace_of([12.0, 11.5, 10.0], step=0.39), swing_of(10, 12), 0, 2) == pytest.approx(1 / 60)


@pytest.mark.parametrize(
    ("minutes", "late_s", "higher_k", "is_doubtful"),
    [(10, 150, 0.725, False), (16, 150, 0.125, False), (17, 150, 0.025, True), (17, 119, 0.0766667, False),
     (17, 121, 0.0733333, True), (18, 149, -0.0733333, True), (18, 151, -0.0766667, False), (4, 897, 0.08, False)],
)  # fmt: skip
def test_a_run_has_ended_where_the_trace_is_as_low_as_it_can_be_then(
    minutes: int, late_s: float, higher_k: float, is_doubtful: bool
):
    trace, swing, door = opened(minutes)
    found = broken(trace, swing, opens(trace, door), late_s)
    assert (found.higher_k, found.unsure_k, found.by_s) == pytest.approx((higher_k, 0.075, FALLS_BY_S))
    assert (found.is_doubtful, found.is_cooling) == (is_doubtful, higher_k > 0)


@pytest.mark.parametrize(
    ("sigma", "step", "unsure_k"), [(0.02, 0.1, 0.105), (0.02, 0.39, 0.105), (0.02, 0.4, 0.315), (0.2, 0.4, 0.375)]
)
def test_noise_and_stairs_leave_more_open(sigma: float, step: float, unsure_k: float):
    trace, swing, door = opened(17, sigma, step)
    assert broken(trace, swing, opens(trace, door), 150.0).unsure_k == pytest.approx(unsure_k)


@pytest.mark.parametrize(
    ("minutes", "sigma", "size", "is_cooling"),
    [(2, 0.0, 1.99, True), (2, 0.0, 2.01, False), (3, 0.099, 2.0, True), (3, 0.101, 2.0, False)],
)
def test_who_has_fallen_by_less_than_a_tenth_or_noise_has_hardly_begun(
    minutes: int, sigma: float, size: float, is_cooling: bool
):
    trace, swing, door = opened(minutes, sigma)
    found = broken(trace, swing_of(10.0, 10.0 + size, turns=swing.turns), opens(trace, door), 150.0)
    assert found.is_cooling is is_cooling
    assert is_cooling or found == NOT_COOLING


@pytest.mark.parametrize(("size", "is_whole"), [(1.99, True), (2.01, False)])
def test_a_run_is_one_once_it_has_come_down_by_a_fifth_of_the_swing(size: float, is_whole: bool):
    trace, swing, door = opened(4)
    found = broken(trace, swing_of(10.0, 10.0 + size, turns=swing.turns), opens(trace, door), 150.0)
    assert found.is_whole is is_whole


@pytest.mark.parametrize(
    ("risen_k", "sigma", "is_cooling"),
    [(0.079, 0.0, True), (0.081, 0.0, False), (0.099, 0.05, True), (0.101, 0.05, False)],
)
def test_a_foot_that_the_trace_has_hardly_risen_from_is_the_doors_own(risen_k: float, sigma: float, is_cooling: bool):
    values = legs(10.0, (10, 12.0), (20, 10.0), (10, 12.0), (10, 11.0), (2, 11.0 + risen_k))
    turns = [(0, False), (10, True), (30, False), (40, True), (50, False)]
    found = broken(trace_of(values, sigma=sigma), swing_of(10.0, 12.0, turns=turns), 52, 150.0)
    assert found.is_cooling is is_cooling


def test_the_usual_foot_is_that_of_five_or_six_before_and_five_after():
    """Feet at 0.00, 0.01, 0.02 …, tops at 2: of the eleven turns before the run's peak and after, the middle foot."""
    values = [value for place in range(30) for value in (0.01 * place, 2.0)]
    turns = [(at, at % 2 == 1) for at in range(60)]
    found = broken(trace_of(values), swing_of(0.0, 2.0, turns=turns), 30, 0.0)
    by_s = (2 - 0.15) / 60
    assert found.higher_k == pytest.approx(-15 * by_s)


@pytest.mark.parametrize(("unsure_k", "is_noise"), [(0.29, False), (0.31, True)])
def test_noise_leaves_more_than_three_minutes_open(unsure_k: float, is_noise: bool):
    assert Broken(0.0, unsure_k, FALLS_BY_S, True).is_noise is is_noise


@pytest.mark.parametrize(
    ("minutes", "cools_s", "late_s", "are"),
    [(2, 314, 150, True), (2, 315, 150, False), (2, 316, 150, False),
     (4, 195, 150, False), (4, 196, 150, True), (4, 194, 150, False), (4, 374, 150, True),
     (4, 376, 150, False), (4, 374, 149, False)],
)  # fmt: skip
def test_of_a_brief_run_only_its_time_tells_whether_it_ended(minutes: int, cools_s: float, late_s: float, are: bool):
    trace, swing, door = opened(minutes)
    assert doubtful_doors(trace, swing, [door], late_s, cools_s) == ((door,) if are else ())


def test_where_it_is_not_known_how_long_runs_last_only_the_trace_tells():
    trace, swing, door = opened(4)
    assert not doubtful_doors(trace, swing, [door], 150.0, None)
    trace, swing, door = opened(17)
    assert doubtful_doors(trace, swing, [event("defrost", 5, 8, 9), door], 150.0, None) == (door,)
    assert not doubtful_doors(trace, swing, [event("defrost", 57, 60, 70)], 150.0, None)


def feet_at(
    high_k: float, pace_k: float, before: tuple[float, ...], after: tuple[float, ...]
) -> tuple[Trace, list[int]]:
    """Feet ten minutes apart, one of them that high, reached at that pace a minute."""
    values: list[float] = []
    for foot in (*before, 10 + high_k, *after):
        values += legs(foot + 4 * pace_k, (4, foot), (5, 12.0))
    return trace_of(values), [4 + 10 * place for place in range(len(before) + 1 + len(after))]


@pytest.mark.parametrize(
    ("high_k", "pace_k", "late_s", "on"),
    [(0.49, 0.02, 150, False), (0.51, 0.02, 150, True),
     (0.51, 0.2, 105, True), (0.49, 0.2, 90, False), (0.51, 0.2, 110, False),
     (0.86, 0.6, 150, False), (0.87, 0.6, 150, True)],
)  # fmt: skip
def test_a_foot_a_quarter_of_the_swing_too_high_and_more_than_it_falls_on_is_none(
    high_k: float, pace_k: float, late_s: float, on: bool
):
    """It falls on for `late_s` and 45 s, at twice the usual pace at the most: 4.444 mK/s · 195 s = 0.867 K."""
    trace, feet = feet_at(high_k, pace_k, (10.0,) * 3, (10.0,) * 3)
    assert ran_on(trace, swing_of(10.0, 12.0), trace.values, feet, 3, late_s) is on


@pytest.mark.parametrize(
    ("before", "after", "on"),
    [((9.0,) + (10.0,) * 3 + (10.3,) * 2, (9.0,) * 3, True), ((9.0,) * 2 + (10.3,) * 3, (9.0,) * 3, False),
     ((9.0,) * 3, (10.0,) * 3 + (10.3,) * 3, True), ((9.0,) * 3, (10.0,) * 2 + (10.3,) * 3, False),
     ((), (10.0,), True), ((10.0,), (), True), ((), (10.3,), False)],
)  # fmt: skip
def test_a_foot_is_held_against_five_before_or_five_after_whichever_are_higher(
    before: tuple[float, ...], after: tuple[float, ...], on: bool
):
    trace, feet = feet_at(0.6, 0.02, before, after)
    assert ran_on(trace, swing_of(10.0, 12.0), trace.values, feet, len(before), 150.0) is on


@pytest.mark.parametrize(
    ("sigma", "step", "on"),
    [(0.17, 0.0, True), (0.19, 0.0, False), (0.0, 0.39, True), (0.0, 0.48, True), (0.0, 0.52, False)],
)
def test_noise_or_a_step_may_lift_a_foot(sigma: float, step: float, on: bool):
    """Of stairs the pace is the usual one: 2.222 mK/s · (late 0 + 45 s) = 0.1 K."""
    trace, feet = feet_at(0.6, 0.4, (10.0,) * 3, (10.0,) * 3)
    late_s = 0.0 if step else 8.5
    assert (
        ran_on(trace_of(trace.values, sigma=sigma, step=step), swing_of(10.0, 12.0), trace.values, feet, 3, late_s)
        is on
    )


def test_without_doors_and_defrosts_the_trace_is_left_as_it_is():
    trace, swing, _ = opened(10)
    assert bridged(trace, swing, [], 150.0) == trace.values


@pytest.mark.parametrize(("minutes", "until"), [(10, 13), (14, 13)])
def test_a_doors_warm_air_is_taken_out_of_a_run(minutes: int, until: int):
    """As long as it lasts, and until the trace is as low as it was; then the trace is its own."""
    trace, swing, door = opened(minutes)
    low, foot = 12 - 0.1 * minutes, 40 + minutes
    wanted = [*trace.values[:foot], *[low] * until, *trace.values[foot + until :]]
    assert list(bridged(trace, swing, [door], 150.0)) == pytest.approx(wanted)


def test_a_door_opened_after_a_run_is_left_in():
    trace, swing, door = opened(19)
    assert list(bridged(trace, swing, [door], 150.0)) == list(trace.values)


@pytest.mark.parametrize(
    ("fell_k", "sigma", "is_a_run"), [(0.81, 0.0, True), (0.79, 0.0, False), (0.91, 0.3, True), (0.89, 0.3, False)]
)
def test_a_run_that_a_defrost_ends_comes_down_as_low_as_any(fell_k: float, sigma: float, is_a_run: bool):
    values = legs(10.0, (10, 12.0), (10, 12.0 - fell_k), (20, 16.0), (20, 10.0))
    trace, swing = trace_of(values, sigma=sigma), swing_of(10.0, 12.0, 600.0, 1200.0)
    low = 11 - max(0.4, 3 * sigma)
    found = bridged(trace, swing, [event("defrost", 20, 40, 50)], 150.0)
    assert found[20] == pytest.approx(low if is_a_run else 12.0 - fell_k)
    assert (*found[:20], *found[21:]) == (*values[:20], *values[21:])


@pytest.mark.parametrize(("rests", "is_a_run"), [(23, True), (24, True), (25, False)])
def test_a_run_that_ended_longer_ago_than_one_lasts_is_not_the_defrosts(rests: int, is_a_run: bool):
    """A run lasts 20 min: the peak is sought for 24."""
    values = legs(10.0, (1, 12.0), (1, 11.0), (rests - 1, 11.0), (20, 16.0), (20, 10.0))
    found = bridged(trace_of(values), swing_of(10.0, 12.0, 600.0, 1200.0), [event("defrost", rests + 1, 44, 60)], 150.0)
    assert (found[rests + 1] < 11.0) is is_a_run


def test_what_fell_before_an_earlier_defrost_was_over_is_not_seen_twice():
    values = legs(10.0, (1, 12.0), (9, 11.0), (10, 11.0), (20, 16.0), (20, 10.0))
    both = [event("defrost", 0, 1, 10), event("defrost", 20, 40, 60)]
    assert bridged(trace_of(values), swing_of(10.0, 12.0, 600.0, 1200.0), both, 150.0)[20] == 11.0
    assert bridged(trace_of(values), swing_of(10.0, 12.0, 600.0, 1200.0), both[1:], 150.0)[20] == pytest.approx(10.6)


def test_a_door_opened_soon_after_a_foot_breaks_no_run():
    values = legs(12.0, (20, 10.0), (4, 10.1), (3, 12.0), (30, 10.5))
    swing = swing_of(10.0, 12.0, turns=[(0, True), (20, False)])
    assert not doubtful_doors(trace_of(values), swing, [event("door", 24, 27, 40)], 150.0, 200.0)


@pytest.mark.parametrize(("interval_s", "by_k"), [(240 / 4.49, 0.25), (240 / 4.51, 0.24)])
def test_four_minutes_are_the_nearest_number_of_readings(interval_s: float, by_k: float):
    values = [12.0, 11.8, 11.6, 11.3, 11.05, 10.8]
    fell = falls_by_s(trace_of(values, interval_s), swing_of(10, 12), 0, 5)
    assert fell * interval_s == pytest.approx(by_k)


@pytest.mark.parametrize(("interval_s", "at"), [(180 / 3.49, 3), (180 / 3.51, 2)])
def test_so_are_three(interval_s: float, at: int):
    values = [10.5, 10.2, 10.1, 10.3, 10.4, 11.0, 13.0, 13.5]
    door = Event("door", 0.0, 0.0, 7 * interval_s, 7 * interval_s, 0.0, 0.0)
    assert opens(trace_of(values, interval_s), door) == at


def test_a_smoothed_trace_falls_on_for_longer():
    """Three readings of half a minute are one smoothed value: (30 + 60) s / 4 more."""
    values = legs(10.0, (20, 12.0), (40, 10.0), (20, 12.0), (20, 11.0), (3, 13.0))
    swing = swing_of(10.0, 12.0, turns=[(0, False), (20, True), (60, False), (80, True)])
    found = broken(trace_of(values, 30.0), swing, 100, 150.0)
    assert found.higher_k == pytest.approx(1 - FALLS_BY_S * 172.5)


def test_a_peak_that_a_log_begins_with_is_the_top_of_a_run_too():
    values = legs(12.0, (1, 11.0), (4, 11.0), (20, 16.0))
    found = bridged(trace_of(values), swing_of(10.0, 12.0, 600.0, 1200.0), [event("defrost", 5, 25, 25)], 150.0)
    assert found[5] == pytest.approx(10.6)


def test_what_a_defrost_heats_at_once_is_no_top_of_a_run():
    values = legs(11.0, (20, 11.0), (1, 16.0), (20, 10.0))
    found = bridged(trace_of(values), swing_of(10.0, 12.0, 600.0, 1200.0), [event("defrost", 20, 21, 30)], 150.0)
    assert list(found) == values


@pytest.mark.parametrize(
    ("falling_s", "rests", "is_a_run"),
    [
        (1224.5, 24, True),
        (1224.5, 25, False),
        (1225.5, 25, True),
        (1225.5, 26, False),
        (60.0, 2, True),
        (60.0, 3, False),
    ],
)
def test_the_top_is_sought_for_a_run_and_a_fifth_and_for_two_readings_at_least(
    falling_s: float, rests: int, is_a_run: bool
):
    values = legs(10.0, (1, 12.0), (1, 11.0), (rests - 1, 11.0), (20, 16.0), (20, 10.0))
    swing = swing_of(10.0, 12.0, 600.0, falling_s)
    found = bridged(trace_of(values), swing, [event("defrost", rests + 1, rests + 21, rests + 30)], 150.0)
    assert (found[rests + 1] < 11.0) is is_a_run
