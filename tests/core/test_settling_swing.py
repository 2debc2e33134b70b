"""How a trace usually swings: what is refused, what a turn is, and how far noise and steps reach, each by hand."""

import math
from typing import Any

import pytest

from core.chamber.settling.swing import (
    CannotSee,
    Swing,
    Trace,
    arrives_at,
    half_band,
    require_steps,
    sigma_of,
    trace_of,
    usual_swing,
)
from core.chamber.settling.trace import step, turns_within

WAVE = [0.0, 1.0, 2.0, 3.0, 4.0, 3.0, 2.0, 1.0]
"""Eight readings, as many as a cycle needs; four up, four down."""


def wave(cycles: int = 6, high: float = 13.0, low: float = 11.0) -> list[float]:
    return [low + (high - low) * each / 4 for each in WAVE * cycles]


def quick(readings: int) -> list[float]:
    """Eight cycles of so many readings: up at once, and down."""
    return [11.0, *(13 - 2 * place / (readings - 1) for place in range(readings - 1))] * 8


def trace(values: list[float], interval_s: float = 60.0, sigma: float = 0.0, step: float = 0.1) -> Trace:
    times_s = tuple(1000.0 + interval_s * place for place in range(len(values)))
    return Trace(times_s, tuple(values), tuple(values), interval_s, sigma, step, comes_down=False)


def refused(made: Any) -> str:
    with pytest.raises(CannotSee) as told:
        made()
    return told.value.sentence


def test_a_wave_swings_between_its_turns():
    found = usual_swing(trace(wave()))
    assert (found.upper, found.lower, found.size, found.middle) == (13.0, 11.0, 2.0, 12.0)
    assert (found.rising_s, found.falling_s, found.period_s) == (240.0, 240.0, 480.0)
    assert (found.rises_by_s, found.falls_by_s) == (2 / 240, 2 / 240)
    assert found.turns == tuple((at, at % 8 == 4) for at in range(4, 48, 4))


def test_the_usual_peak_is_that_a_quarter_is_below_and_the_usual_foot_the_middle_one():
    """Peaks 13, 13, 14, 17, 17; feet 10.5, 11, 11, 11, 11.25: defrosts and doors only ever lift a peak."""
    values: list[float] = []
    for peak, foot in ((13, 11), (17, 10.5), (13, 11.25), (17, 11), (14, 11)):
        low = values[-1] if values else 11.0
        values += [low + (peak - low) * part / 4 for part in range(1, 5)]
        values += [peak + (foot - peak) * part / 6 for part in range(1, 7)]
    found = usual_swing(trace([11.0, *values, 12.5, 13.5, 14.0]))
    assert (found.upper, found.lower) == (13.0, 11.0)
    assert (found.rising_s, found.falling_s) == (240.0, 360.0)
    assert (found.rises_by_s, found.falls_by_s) == (2 / 240, 2 / 360)


@pytest.mark.parametrize(("count", "why"), [(15, "There are 15 readings"), (16, "")])
def test_sixteen_readings_are_looked_at(count: int, why: str):
    values = [12.0] * count
    if why:
        assert why in refused(lambda: trace_of([60.0 * n for n in range(count)], values))
    else:
        assert len(trace_of([60.0 * n for n in range(count)], values).values) == 16


@pytest.mark.parametrize(("after", "is_seen"), [(16, True), (15, False)])
def test_a_trace_that_arrives_at_its_end_is_not_looked_at(after: int, is_seen: bool):
    """It comes down for as long as it stays down, and one reading less: its usual level is where it stays."""
    values = [30.0 - n for n in range(after - 1)] + [10.0] * after
    times_s = [60.0 * n for n in range(len(values))]
    if is_seen:
        assert trace_of(times_s, values).values[-16:] == (10.0,) * 16
    else:
        assert "only at its end" in refused(lambda: trace_of(times_s, values))


@pytest.mark.parametrize(
    ("values", "comes_down", "readings"),
    [
        ([20.0, *wave()], True, 48), ([13.5, *wave()], True, 49), ([12.0, *wave()], False, 49),
        ([5.0, *wave()[2:]], False, 46), ([20.0, 15.01, 15.0, *wave()], True, 49),
    ],
)  # fmt: skip
def test_a_trace_begins_where_its_cycles_do(values: list[float], comes_down: bool, readings: int):
    """The first cycles may reach a swing above the usual peak: to 15."""
    found = trace_of([60.0 * n for n in range(len(values))], values)
    assert (found.comes_down, len(found.values)) == (comes_down, readings)


@pytest.mark.parametrize(("values", "at"), [([9.0, 5.0, 4.0, 3.0], 1), ([3.0, 4.0, 5.0, 9.0], 2), ([4.0, 4.0], 0)])
def test_it_arrives_at_its_middle_value_from_either_side(values: list[float], at: int):
    assert arrives_at(values) == at


@pytest.mark.parametrize(
    ("interval_s", "smoothed_s"),
    [(10.0, 80.0), (18.0, 72.0), (22.5, 90.0), (30.0, 60.0), (45.0, 90.0), (46.0, 0.0), (60.0, 0.0), (300.0, 0.0)],
)
def test_quick_readings_are_smoothed_over_a_minute_and_a_half(interval_s: float, smoothed_s: float):
    """An odd number of readings: 9, 5, 5, 3, 3 and 1."""
    assert trace(wave(), interval_s).smoothed_s == smoothed_s
    found = trace_of([interval_s * n for n in range(161)], [0.0] * 80 + [1.0] + [0.0] * 80)
    assert found.smoothed[80] == pytest.approx(1 / (smoothed_s / interval_s + 1))


@pytest.mark.parametrize(
    ("at_s", "value"), [(1000.0, 11.0), (1030.0, 11.25), (1060.0, 11.5), (1225.0, 12.875), (0.0, 11.0), (9999.0, 11.5)]
)
def test_a_trace_is_straight_between_its_readings(at_s: float, value: float):
    assert trace(wave()).at(at_s) == pytest.approx(value)


def test_a_part_of_two_readings_shows_nothing():
    times_s = (0.0, 60.0, 600.0, 660.0, 720.0)
    found = Trace(times_s, (12.0,) * 5, (12.0,) * 5, 60.0, 0.0, 0.1, comes_down=False)
    assert (found.parts, found.stretches()) == ([(0, 2), (2, 5)], [(2, 5)])


@pytest.mark.parametrize(("lasts_s", "least", "samples"), [(89.0, 1, 1), (91.0, 1, 2), (0.0, 1, 1), (60.0, 3, 3)])
def test_a_time_in_readings(lasts_s: float, least: int, samples: int):
    assert trace(wave()).samples(lasts_s, least) == samples


@pytest.mark.parametrize(
    ("values", "sigma"),
    [
        ([0.0, 1.0] * 8, 1.4826 * 4 / math.sqrt(6)),
        ([0.0, 0.0, 0.0, 1.0, 1.0, 1.0] * 4, 1 / math.sqrt(12)),
        ([12.0] * 9, 0.0),
    ],
)
def test_of_what_a_step_accounts_for_no_more_is_noise(values: list[float], sigma: float):
    """Most second differences of the second trace are ±1: 1.4826 ÷ √6 is 0.605 of a step; rounding leaves 0.289."""
    assert sigma_of(values, step(values)) == pytest.approx(sigma)


@pytest.mark.parametrize(("interval_s", "is_slow"), [(303.0, False), (303.1, True)])
def test_a_reading_every_five_minutes_is_the_slowest(interval_s: float, is_slow: bool):
    """And a hundredth more."""
    slow = trace(wave(), interval_s)
    if is_slow:
        assert "is too slow" in refused(lambda: usual_swing(slow))
    else:
        assert usual_swing(slow).period_s == 8 * interval_s


@pytest.mark.parametrize(("sigma", "is_noise"), [(0.3332, False), (0.3334, True)])
def test_noise_of_a_sixth_of_the_spread_hides_cycles(sigma: float, is_noise: bool):
    """Of this wave a tenth is below 11 and above 13 in all: P10 11.0, P90 13.0."""
    noisy = trace(wave(8), sigma=sigma)
    if is_noise:
        assert "jump about" in refused(lambda: usual_swing(noisy))
    else:
        assert usual_swing(noisy).size == 2.0


@pytest.mark.parametrize(("step", "is_seen"), [(1.98, True), (1.9802, False)])
def test_a_swing_of_one_step_is_no_turn(step: float, is_seen: bool):
    stairs = trace(wave(8), step=step)
    if is_seen:
        assert usual_swing(stairs).size == 2.0
    else:
        assert "Fewer than three cycles" in refused(lambda: usual_swing(stairs))


@pytest.mark.parametrize(("low", "turns"), [(12.001, 0), (11.999, 2)])
def test_a_wave_of_half_the_usual_one_is_a_turn(low: float, turns: int):
    """At the top of one of them it falls to half and rises again."""
    values = [*wave(6), 11.0, 12.0, 13.0, low, 13.0, 12.0, *wave(6)]
    assert len(usual_swing(trace(values)).turns) - len(usual_swing(trace(wave(13))).turns) == turns


@pytest.mark.parametrize(("cycles", "is_seen"), [(4, True), (3, False)])
def test_three_peaks_and_three_feet_are_the_fewest(cycles: int, is_seen: bool):
    """The first foot is the log's beginning, and the last peak ends no cycle."""
    few = trace(wave(cycles))
    if is_seen:
        assert usual_swing(few).period_s == 480.0
    else:
        assert "Fewer than three cycles" in refused(lambda: usual_swing(few))


@pytest.mark.parametrize(("step", "fewest"), [(0.1, 5), (0.4, 6)])
def test_a_cycle_wants_five_readings_and_one_of_stairs_six(step: float, fewest: int):
    slow, enough = (trace(quick(readings), step=step) for readings in (fewest - 1, fewest))
    assert f"fewer than {fewest} times" in refused(lambda: usual_swing(slow))
    assert usual_swing(enough).period_s == 60.0 * fewest


def swing(size: float) -> Swing:
    return Swing(11.0 + size, 11.0, 240.0, 240.0, 0.01, 0.01)


@pytest.mark.parametrize(
    ("size", "step", "is_refused"),
    [(1.5, 0.5, False), (1.49, 0.5, True), (1.2, 0.4, False), (1.19, 0.4, True), (1.0, 0.399, False)],
)
def test_a_swing_of_three_coarse_steps_is_measured(size: float, step: float, is_refused: bool):
    stairs = trace(wave(), step=step)
    if is_refused:
        assert f"swings by {size:.3g} K" in refused(lambda: require_steps(stairs, swing(size)))
    else:
        require_steps(stairs, swing(size))


@pytest.mark.parametrize(
    ("size", "sigma", "step", "half"), [(2.0, 0.1, 0.1, 0.4), (2.0, 0.2, 0.1, 0.6), (2.0, 0.1, 1.0, 0.51)]
)
def test_how_far_from_the_middle_counts(size: float, sigma: float, step: float, half: float):
    assert half_band(trace(wave(), sigma=sigma, step=step), swing(size)) == pytest.approx(half)


@pytest.mark.parametrize(
    ("values", "turns"),
    [
        ([0, 1, 0, 1, 0], [(1, True), (2, False), (3, True)]), ([1, 0, 1, 0], [(1, False), (2, True)]),
        ([0, 2, 1.5, 3, 0], [(3, True)]), ([0, 0.5, 0], []), ([0, 2, 2, 1, 2], [(1, True), (3, False)]),
        ([2, 0, 0, 1, 0], [(1, False), (3, True)]), ([0, 1, 2], []),
    ],
)  # fmt: skip
def test_a_turn_is_known_once_the_trace_has_moved_away(values: list[float], turns: list[tuple[int, bool]]):
    assert list(turns_within(values, 0, len(values), 1.0)) == turns


def test_turns_are_sought_in_a_part_only():
    values = [0, 9, 0, 1, 0, 1, 0, 9, 0]
    assert list(turns_within(values, 2, 7, 1.0)) == [(3, True), (4, False), (5, True)]


def slope(begin_c: float, end_c: float, readings: int = 20) -> list[float]:
    return [begin_c + (end_c - begin_c) * part / readings for part in range(readings)]


@pytest.mark.parametrize(("sigma", "is_noise"), [(0.2680, False), (0.2681, True)])
def test_the_spread_is_what_lies_between_the_tenth_and_the_ninetieth_of_a_hundred(sigma: float, is_noise: bool):
    """97 values from 11 to 13, each four times: 156 ÷ 97 from tenth to ninetieth, of which a sixth is 0.26804."""
    noisy = trace([11 + 2 * (1 - abs(1 - (2 * n / 97 % 1) * 2)) for n in range(388)], sigma=sigma)
    if is_noise:
        assert "jump about" in refused(lambda: usual_swing(noisy))
    else:
        usual_swing(noisy)


@pytest.mark.parametrize(("falls_k", "turns"), [(0.899, 20), (0.901, 22)])
def test_what_a_turn_is_does_not_grow_with_warm_air_that_stayed_long(falls_k: float, turns: int):
    """A tenth is below 11.2 and half below 12.1, however warm the warmest tenth: what is half of twice 0.9 turns it."""
    top = [13.0, 13 - falls_k / 2, 13 - falls_k, 13 - falls_k / 2]
    once = [*slope(11, 13), *slope(13, 11)]
    values = [
        *once * 8,
        *slope(11, 13),
        *top,
        *slope(13, 11),
        *slope(11, 13),
        13.0,
        *[20.0] * 60,
        *once[20:],
        *once[:20],
    ]
    assert len(usual_swing(trace(values)).turns) == turns


def test_two_peaks_on_either_side_of_a_gap_are_no_leg():
    """Six gaps, and three cycles whole."""
    parts = [wave(2)] * 3 + [wave(1)] * 4
    times_s = [6000.0 * part + 60 * at for part, values in enumerate(parts) for at in range(len(values))]
    values = tuple(value for part in parts for value in part)
    found = usual_swing(Trace(tuple(times_s), values, values, 60.0, 0.0, 0.1, comes_down=False))
    assert (found.rising_s, found.falling_s) == (240.0, 240.0)


@pytest.mark.parametrize(
    ("interval_s", "readings", "told"),
    [
        (600.0, 8, "a reading every 10 min is too slow"), (600.0, 8, "Log every 5 min or oftener"),
        (60.0, 4, "they seem to last 4 min, and a reading every 1 min shows"),
        (30.0, 4, "they seem to last 2 min, and a reading every 30 s shows"),
    ],
)  # fmt: skip
def test_what_was_logged_too_slowly_is_told_its_times(interval_s: float, readings: int, told: str):
    slow = trace(quick(readings), interval_s)
    assert told in refused(lambda: usual_swing(slow))
