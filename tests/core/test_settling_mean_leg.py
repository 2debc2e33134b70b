"""The mean of many runs: from legs whose beginning and length are known to the second."""

from __future__ import annotations

import math

import pytest

from core.chamber.settling.mean_leg import Leg, Look, look_around, mean_leg, points
from core.chamber.settling.swing import Trace
from tests.core.settling_traces import trace_of

LEGS = 6
PERIOD_S = 5000.0


def blurred(at_s: float, lag_s: float) -> float:
    """A ramp of 1 K/s from 0 s on behind two equal lags: by the textbook, t − 2 τ + (t + 2 τ) e^(−t/τ)."""
    return 0.0 if at_s <= 0 else at_s - 2 * lag_s + (at_s + 2 * lag_s) * math.exp(-at_s / lag_s)


def leaped(at_s: float, lag_s: float, leap_s: float) -> float:
    """A leap by 1 K with a time constant of its own behind two equal lags, by partial fractions."""
    if at_s <= 0:
        return 0.0
    slow = (leap_s / (leap_s - lag_s)) ** 2
    lag = 1 - slow + (slow / leap_s + (1 - slow) / lag_s) * at_s
    return 1 - slow * math.exp(-at_s / leap_s) - lag * math.exp(-at_s / lag_s)


def trace(lasts_s: float, lag_s: float, leap_k: float = 0.0, leap_s: float = 400.0, interval_s: float = 40.0) -> Trace:
    """Runs that begin every 5000 s, at 2000 s first: falling by 2 mK/s in them, rising by 0.5 mK/s between."""
    values: list[float] = []
    for place in range(round((LEGS + 1) * PERIOD_S / interval_s)):
        at_s = place * interval_s
        value_c = 12 + 0.0005 * at_s
        for run in range(LEGS):
            for turn_s, way in ((2000 + run * PERIOD_S, -1), (2000 + run * PERIOD_S + lasts_s, 1)):
                value_c += way * 0.0025 * blurred(at_s - turn_s, lag_s)
                value_c += way * leap_k * leaped(at_s - turn_s, lag_s, leap_s)
        values.append(value_c)
    return trace_of(values, interval_s)


def legs_of(lasts_s: float) -> list[Leg]:
    """As the trace is seen to turn: late, and their middle by the lag and half of it."""
    begins_s = [2000 + run * PERIOD_S for run in range(LEGS)]
    return [Leg(at_s + 100, at_s + lasts_s / 2 + 217, at_s + lasts_s + 300) for at_s in begins_s]


@pytest.mark.parametrize(("lasts_s", "lag_s"), [(400.0, 40.0), (900.0, 100.0), (2000.0, 180.0)])
def test_a_run_is_timed_to_some_seconds_though_coil_and_probe_are_late(lasts_s: float, lag_s: float):
    legs = legs_of(lasts_s)
    found = mean_leg(trace(lasts_s, lag_s), legs, look_around(legs, 4000.0, 0.5))
    assert found.lasts_s == pytest.approx(lasts_s, abs=12)
    assert found.begins_s == pytest.approx(-lasts_s / 2 - 217, abs=50)
    assert found.give_s >= 0.03 * lasts_s


@pytest.mark.parametrize("lag_s", [120.0])
def test_and_though_the_air_leaps_after_each_turn(lag_s: float):
    legs = legs_of(900.0)
    found = mean_leg(trace(900.0, lag_s, 0.4, 500.0), legs, look_around(legs, 4000.0, 0.5))
    assert found.lasts_s == pytest.approx(900, abs=10)
    assert found.give_s >= 72


def test_how_far_to_look_around_is_the_middle_of_all():
    legs = [Leg(0, 100, 220), Leg(1000, 1120, 1230), Leg(2000, 2150, 2300)]
    assert look_around(legs, 1000, 0.7) == Look(-120, 120, 700, 120)


@pytest.mark.parametrize(
    ("half_s", "longer_s", "outside_s", "inside_s"),
    [(1490, 2900, 1450, 1490), (1510, 3100, 1500, 1500), (1500, 3000, 1500, 1500)],
)
def test_not_further_than_25_min(half_s: float, longer_s: float, outside_s: float, inside_s: float):
    assert look_around([Leg(0, half_s, 2 * half_s)], longer_s, 0.5) == Look(-half_s, half_s, outside_s, inside_s)


@pytest.mark.parametrize(("inside_s", "is_one"), [(449, False), (450, True), (451, True)])
def test_turns_whose_surroundings_meet_are_seen_as_one(inside_s: float, is_one: bool):
    look = Look(-500, 400, 700, inside_s)
    assert (look.is_one, look.before_s, look.after_s) == (is_one, 1200, 1100)


def test_of_stairs_only_the_steps_count():
    stairs = trace_of([12.0, 12.0, 11.5, 11.5, 11.0], step=0.5)
    assert list(points(stairs, 0, 5)) == [(90, 11.75), (210, 11.25)]
    assert list(points(stairs, 1, 3)) == [(90, 11.75)]
    assert list(points(trace_of([12.0, 12.0, 11.5], step=0.1), 1, 3)) == [(60, 12.0), (120, 11.5)]
