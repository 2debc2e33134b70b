"""When a share of the time is told, and when a time constant: by hand, each limit met to a hair."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

import pytest
from attrs import evolve

from core.chamber.series import Series
from core.chamber.settling.events import Event
from core.chamber.settling.rhythm import WARMS_APART, Cycle, Rhythm, rhythm_of
from core.chamber.settling.runs import Run, find_runs
from core.chamber.settling.swing import CannotSee, Swing, Trace, trace_of, usual_swing
from tests.core.analysed import compressor_of
from tests.core.rhythm_logs import logged

ROOM_C, READINGS, TAU_S = 20.0, 100, 26_889.0
Paces = Sequence[tuple[float, float]]
"""Until which part of a hold, and how many times TAU_S its time constant is there."""
EVEN: Paces = ((1.0, 1.0),)


def hold(paces: Paces, readings: int = READINGS) -> list[float]:
    """So many minutes from 10 °C towards the room."""
    values, log_k = [10.0], math.log(ROOM_C - 10)
    for at in range(1, readings + 1):
        factor = next(factor for until, factor in paces if at <= readings * until + 1e-9)
        log_k -= 60 / (TAU_S * factor)
        values.append(ROOM_C - math.exp(log_k))
    return values


def rhythm(*holds: Paces, room_c: float | None = ROOM_C, readings: int = READINGS) -> Rhythm:
    values: list[float] = []
    for paces in (EVEN, *holds):
        values += hold(paces, readings)
        peak = values[-1]
        values += [peak + (10 - peak) * at / 15 for at in range(1, 15)]
    values += hold(EVEN)[:50]
    found = compressor_of(Series("low", [60.0 * at for at in range(len(values))], values), room_c).rhythm
    assert found is not None
    return found


def test_the_time_constant_of_even_holds_is_theirs():
    assert rhythm(*[EVEN] * 6).warming_s == pytest.approx(TAU_S, rel=1e-9)


@pytest.mark.parametrize(
    ("paces", "is_told"),
    [
        # from a fifth to 0.55 of a hold, and from there to 0.9: a tenth slower
        (((0.55, 1.0), (1.0, 1.099)), True),
        (((0.55, 1.0), (1.0, 1.101)), False),
        (((0.2, 0.7), (0.55, 1.0), (0.9, 1.099), (1.0, 2.0)), True),
        (((0.2, 0.7), (0.55, 1.0), (0.9, 1.101), (1.0, 2.0)), False),
        # from 0.4 to 0.65, and from there to 0.9: 0.15 slower
        (((0.4, 1.1), (0.65, 1.0), (1.0, 1.149)), True),
        (((0.4, 1.1), (0.65, 1.0), (1.0, 1.151)), False),
        (((0.4, 1.1), (0.65, 1.0), (0.9, 1.149), (1.0, 2.0)), True),
        (((0.4, 1.1), (0.65, 1.0), (0.9, 1.151), (1.0, 2.0)), False),
        # quicker late than early is one pace
        (((0.55, 1.0), (1.0, 0.9)), True),
    ],
)
def test_a_hold_that_slows_down_has_no_single_time_constant(paces: Paces, is_told: bool):
    found = rhythm(*[paces] * 6)
    assert (found.warming_s is not None) is is_told
    assert found.warming_why_not == (None if is_told else WARMS_APART)


TENTH_SLOWER: Paces = ((0.55, 1.0), (1.0, 1.097))
LAST_SLOWER: Paces = ((0.4, 1.1), (0.65, 1.0), (1.0, 1.145))


@pytest.mark.parametrize(
    ("lasts", "paces", "minute", "factor", "is_told"),
    [
        (100, TENTH_SLOWER, 19, 0.5, True), (100, TENTH_SLOWER, 20, 0.5, False), (100, TENTH_SLOWER, 53, 0.5, False),
        (100, TENTH_SLOWER, 54, 0.5, True),
        (100, TENTH_SLOWER, 54, 20.0, True), (100, TENTH_SLOWER, 55, 20.0, False), (100, TENTH_SLOWER, 88, 20.0, False),
        (100, TENTH_SLOWER, 89, 20.0, True),
        (100, LAST_SLOWER, 39, 0.5, True), (100, LAST_SLOWER, 40, 0.5, False), (100, LAST_SLOWER, 63, 0.5, False),
        (100, LAST_SLOWER, 64, 0.5, True),
        (100, LAST_SLOWER, 64, 20.0, True), (100, LAST_SLOWER, 65, 20.0, False), (100, LAST_SLOWER, 88, 20.0, False),
        (100, LAST_SLOWER, 89, 20.0, True),
        (101, TENTH_SLOWER, 20, 0.5, True), (101, TENTH_SLOWER, 21, 0.5, False), (101, TENTH_SLOWER, 54, 0.5, False),
        (101, TENTH_SLOWER, 55, 20.0, True), (101, TENTH_SLOWER, 56, 20.0, False), (101, TENTH_SLOWER, 89, 20.0, False),
        (101, LAST_SLOWER, 41, 0.5, False), (101, LAST_SLOWER, 64, 0.5, False),
        (101, LAST_SLOWER, 65, 20.0, True), (101, LAST_SLOWER, 66, 20.0, False), (101, LAST_SLOWER, 89, 20.0, False),
    ],
)  # fmt: skip
def test_one_odd_minute_within_a_part_of_a_hold_tells_and_one_beside_it_does_not(
    lasts: int, paces: Paces, minute: int, factor: float, is_told: bool
):
    """Quicker in the earlier part, or slower in the later, by so little as keeps the two from being one pace. The
    reading at a part's end is no longer of it."""
    ends = [(until, each) for until, each in paces if until <= minute / lasts]
    usual = next(each for until, each in paces if until > minute / lasts)
    odd = (*ends, (minute / lasts, usual), ((minute + 1) / lasts, factor), *paces[len(ends) :])
    assert (rhythm(*[odd] * 6, readings=lasts).warming_s is not None) is is_told


@pytest.mark.parametrize(("factor", "is_told"), [(0.859, False), (0.861, True), (1.119, True), (1.121, False)])
@pytest.mark.parametrize(("count", "first"), [(16, 2), (15, 1), (7, 1)])
def test_nor_have_holds_of_which_the_first_are_quicker(factor: float, is_told: bool, count: int, first: int):
    """The first eighth of all, one at the least, against the second half."""
    uneven = [((1.0, factor),)] * first + [((1.0, 0.95),)] * (count // 2 - first) + [EVEN] * (count - count // 2)
    found = rhythm(*uneven)
    assert len(found.cycles) == count
    assert (found.warming_s is not None) is is_told


def test_without_the_rooms_temperature_nothing_is_said_of_it():
    found = rhythm(*[EVEN] * 4, room_c=None)
    assert (found.warming_s, found.warming_why_not) == (None, None)


def test_a_room_colder_than_the_chamber_warms_nothing():
    assert rhythm(*[EVEN] * 4, room_c=5.0).warming_s is None


def test_what_follows_from_the_mean_cycle():
    run = Run(0, 1000, 900, 12, 1500, 10)
    found = Rhythm(
        cycles=(), period_s=4000.0, cools_s=1000.0, cools_low_s=800.0, cools_high_s=1100.0, holds_s=3000.0,
        holds_low_s=2900.0, holds_high_s=3100.0, cools_by_s=0.002, warms_by_s=0.001, highest_c=12.5, lowest_c=10.0,
        passed_k=0.0, warming_s=None, room_c=None, late_s=150.0, is_share_sure=True,
    )  # fmt: skip
    assert (found.run_share, found.run_share_low, found.run_share_high) == (0.25, 0.2, 0.275)
    assert (found.starts_an_hour, found.swing_k) == (0.9, 2.5)
    assert Cycle(run, evolve(run, falls_s=5500)).lasts_s == 4500


def plain(**changes: float) -> tuple[Trace, Swing, tuple[Run, ...]]:
    """The plain log of the rows: its period 5073.75 s, its run 904.5 s, give or take 51.188 s and a quarter reading."""
    log_ = logged("plain")
    trace = trace_of(log_.times_s, log_.temperatures_c)
    swing = usual_swing(trace)
    return evolve(trace, **changes), swing, find_runs(trace, swing)


@pytest.mark.parametrize(("interval_s", "is_told"), [(60, True), (908, True), (915, False)])
def test_a_share_is_told_by_itself_where_it_is_known_to_a_ninth(interval_s: float, is_told: bool):
    """0.11 of the period is 558.11 s: 2 · (51.188 + 911.48 / 4) s."""
    trace, swing, runs = plain(interval_s=interval_s)
    found = rhythm_of(trace, swing, runs, [])
    assert found.is_share_sure is is_told
    assert found.cools_high_s - found.cools_s == pytest.approx(51.1881 + interval_s / 4, abs=0.001)


@pytest.mark.parametrize(("both_s", "is_known"), [(618, True), (621, False)])
def test_a_share_known_no_better_than_to_a_quarter_is_not_known(both_s: float, is_known: bool):
    """Of stairs: half the time over a step at either turn. A quarter of the period is 1268.44 s: 2 · (619.2 + 15) s."""
    trace, swing, runs = plain(step=0.4)
    swing = evolve(swing, rises_by_s=0.4 / (both_s + 100), falls_by_s=0.4 / (both_s - 100))
    if is_known:
        found = rhythm_of(trace, swing, runs, [])
        assert (found.cools_high_s - found.cools_low_s) / 2 == pytest.approx(both_s + 15)
        assert not found.is_share_sure
    else:
        with pytest.raises(CannotSee, match="too coarse or too noisy"):
            rhythm_of(trace, swing, runs, [])


@pytest.mark.parametrize(("count", "cycles"), [(4, 3), (3, 2)])
def test_three_runs_are_a_rhythm(count: int, cycles: int):
    trace, swing, runs = plain()
    assert len(rhythm_of(trace, swing, runs[:count], []).cycles) == cycles


def test_two_are_none():
    trace, swing, runs = plain()
    with pytest.raises(CannotSee, match="Hardly a cycle"):
        rhythm_of(trace, swing, runs[:2], [])


def test_a_door_spoils_the_cycles_it_is_in():
    """From before one peak to the foot two runs on."""
    trace, swing, runs = plain()
    at_s = trace.times_s[len(trace.times_s) // 2]
    door = Event("door", at_s, at_s, at_s + 120, at_s + 300, 11.0, 13.0)
    found = rhythm_of(trace, swing, runs, [door])
    spoilt = [at_s < cycle.after.falls_s and cycle.before.rises_s < at_s + 1200 for cycle in found.cycles]
    assert not any(spoilt)
    assert len(found.cycles) == len(runs) - 1 - sum(
        at_s < after.falls_s and before.rises_s < at_s + 1200 for before, after in pairwise(runs)
    )


@pytest.mark.parametrize(("comes_down", "passed"), [(True, 0.25), (False, 0.0)])
def test_how_far_the_first_pull_down_passes_the_usual_foot(comes_down: bool, passed: float):
    trace, swing, runs = plain()
    deep = (swing.lower - 0.25, *trace.smoothed[1:])
    found = rhythm_of(evolve(trace, smoothed=deep, comes_down=comes_down), swing, runs, [])
    assert found.passed_k == pytest.approx(passed)


def test_what_comes_after_the_first_run_began_is_no_pull_down():
    trace, swing, runs = plain()
    at = trace.times_s.index(runs[0].trough_s)
    deep = (*trace.smoothed[:at], swing.lower - 0.25, *trace.smoothed[at + 1 :])
    found = rhythm_of(evolve(trace, smoothed=deep, comes_down=True), swing, runs, [])
    assert found.passed_k < 0.1
