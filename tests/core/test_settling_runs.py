"""Where a run begins and ends in a trace: by hand, each limit met to a hair.

Holds of sixty readings to 12 °C and runs of fifteen down to 10; a reading a minute. The swing is 2 K and its middle
11 °C, so the trace must go 0.4 K past that to count. A run's trace falls by 2.222 mK/s.
"""

from collections.abc import Sequence

import pytest

from core.chamber.settling.events import Event, Kind
from core.chamber.settling.runs import Run, find_runs, may_be_over
from core.chamber.settling.swing import Swing, Trace
from tests.core.settling_traces import legs, swing_of, trace_of

SWING = swing_of(10.0, 12.0, turns=[(0, False), (60, True)])
CYCLE = ((60, 12.0), (15, 10.0))


def event(kind: Kind, foot: float, top: float, ends: float) -> Event:
    return Event(kind, 60 * foot, 60 * foot, 60 * top, 60 * ends, 0.0, 0.0)


def runs_of(values: Sequence[float], events: Sequence[Event] = (), **kinds: float) -> list[tuple[float, ...]]:
    """Each run's crossings, peak and trough, in readings and °C."""
    trace = trace_of(values, sigma=kinds.get("sigma", 0.0), step=kinds.get("step", 0.0))
    return [
        (run.rises_s / 60, run.falls_s / 60, run.peak_s / 60, run.peak_c, run.trough_s / 60, run.trough_c)
        for run in find_runs(trace, SWING, events)
    ]


def test_runs_are_timed_at_the_middle_and_turn_at_peak_and_trough():
    values = legs(10.0, *[CYCLE[0], CYCLE[1]] * 2, (60, 12.0))
    assert runs_of(values) == [
        pytest.approx((30, 67.5, 60, 12, 75, 10)),
        pytest.approx((105, 142.5, 135, 12, 150, 10)),
    ]


def test_what_falls_before_the_trace_has_risen_by_a_band_is_no_run():
    assert [each[2] for each in runs_of(legs(11.21, (15, 12.0), (15, 10.0), *CYCLE, (60, 12.0)))] == [90]
    assert [each[2] for each in runs_of(legs(11.19, (15, 12.0), (15, 10.0), *CYCLE, (60, 12.0)))] == [15, 90]


@pytest.mark.parametrize(("foot_c", "falls"), [(10.79, 60 + 15 * 1 / 1.21), (10.81, 60 + 15 / 2)])
def test_a_run_that_hardly_passes_the_middle_is_timed_half_way(foot_c: float, falls: float):
    values = legs(10.0, (60, 12.0), (15, foot_c), (60, 12.0), (15, 10.0), (60, 12.0))
    assert runs_of(values)[0][1] == pytest.approx(falls)


@pytest.mark.parametrize(("peak_c", "rises"), [(11.21, 75 + 60 / 1.21), (11.19, 75 + 60 / 2)])
def test_so_is_a_hold_that_hardly_passes_it(peak_c: float, rises: float):
    values = legs(10.0, *CYCLE, (60, peak_c), (15, 10.0), (60, 12.0))
    assert runs_of(values)[1][0] == pytest.approx(rises)


@pytest.mark.parametrize(("step", "level"), [(0.39, 11.0), (0.4, 11.0), (0.5, 11.25), (0.8, 11.2)])
def test_a_trace_of_stairs_is_timed_at_the_edge_of_a_step(step: float, level: float):
    """From 10 °C: the edge nearest to 11 °C lies half a step above the step under it."""
    assert runs_of(legs(10.0, *CYCLE, (60, 12.0)), step=step)[0][:2] == pytest.approx(
        (30 * (level - 10), 60 + 7.5 * (12 - level))
    )


@pytest.mark.parametrize(
    ("foot_c", "kind", "ends", "count"),
    [(10.61, "door", 35, 1), (10.59, "door", 35, 2), (10.61, "door", 31, 1), (10.61, "door", 30, 2),
     (10.61, "defrost", 35, 2)],
)  # fmt: skip
def test_a_doors_warm_air_that_goes_by_itself_is_no_run(foot_c: float, kind: Kind, ends: float, count: int):
    """It was opened in a hold, and its warm air was greatest at reading 31."""
    values = legs(10.0, (30, 11.0), (1, 12.0), (6, foot_c), (60, 12.0), (15, 10.0), (60, 12.0))
    assert len(runs_of(values, [event(kind, 30, 31 if ends > 30 else 30, ends)])) == count


def cut(until_c: float, minutes: int, foot_c: float = 9.6) -> tuple[Trace, Swing]:
    """A log that ends so many minutes after its last foot; the foot before that is the usual one."""
    values = legs(foot_c, (60, 12.0), (15, 10.0), (60, 12.0), (15, 10.0))
    values += [values[-1] + until_c * at / max(1, minutes) for at in range(1, minutes + 1)]
    return trace_of(values), swing_of(10.0, 12.0, turns=[(0, False), (60, True)])


@pytest.mark.parametrize(("risen_k", "count"), [(0.119, 1), (0.121, 2)])
def test_the_last_run_is_over_once_the_trace_has_turned(risen_k: float, count: int):
    """By 0.06 of the swing. It would fall on by 0.367 K, to 9.633 °C, and so far it usually falls."""
    trace, swing = cut(risen_k, 2)
    assert len(find_runs(trace, swing)) == count


@pytest.mark.parametrize(
    ("sigma", "step", "risen_k", "count"),
    [(0.05, 0.0, 0.149, 1), (0.05, 0.0, 0.151, 2), (0.0, 0.2, 0.2019, 1), (0.0, 0.2, 0.2021, 2)],
)
def test_by_more_than_noise_or_a_step(sigma: float, step: float, risen_k: float, count: int):
    trace, swing = cut(risen_k, 2)
    assert len(find_runs(trace_of(trace.values, sigma=sigma, step=step), swing)) == count


@pytest.mark.parametrize(
    ("foot_c", "readings", "step", "count"),
    [(10.0, 2, 0.5, 2), (10.0, 1, 0.5, 1), (10.19, 2, 0.5, 2), (10.21, 2, 0.5, 1), (10.0, 2, 0.39, 1)],
)
def test_of_stairs_it_is_over_by_a_step_from_a_foot_that_is_as_low_as_usual_and_no_flicker(
    foot_c: float, readings: int, step: float, count: int
):
    """Within a tenth of the swing, and read twice there."""
    values = [*legs(10.0, *CYCLE, (60, 12.0), (15, foot_c)), *[foot_c] * (readings - 1), foot_c + step]
    trace = trace_of(values, step=step, sigma=0.2)
    assert len(find_runs(trace, SWING, (), 150.0)) == count


@pytest.mark.parametrize(("late_s", "count"), [(209, 1), (211, 2)])
def test_or_once_it_is_lower_than_within_a_run(late_s: float, count: int):
    """0.4 K above the usual foot it may fall on by 2.222 mK/s · (late + 15 s), give or take 45 s."""
    trace, swing = cut(0.0, 0)
    assert len(find_runs(trace, swing, (), late_s)) == count


@pytest.mark.parametrize(
    ("sigma", "late_s", "minutes", "may"),
    [(0.199, 165, 0, False), (0.201, 165, 0, True), (0.201, 345, 0, True), (0.201, 347, 0, False),
     (0.201, 165, 2, False)],
)  # fmt: skip
def test_where_noise_hides_for_how_long_the_log_may_end_with_a_run_more(
    sigma: float, late_s: float, minutes: int, may: bool
):
    """Noise of 0.2 K leaves more than three minutes open: 45 s and 1.5 · 0.2 K at 2.222 mK/s."""
    trace, swing = cut(0.7, minutes)
    assert may_be_over(trace_of(trace.values, sigma=sigma), swing, late_s) is may


def test_a_log_that_ends_in_a_hold_ends_no_run():
    trace = trace_of(legs(9.6, (60, 12.0), (15, 10.0), (60, 12.0)), sigma=0.25)
    assert not may_be_over(trace, swing_of(10.0, 12.0, turns=[(0, False), (60, True)]), 165.0)


@pytest.mark.parametrize(("ran", "count"), [(True, 1), (False, 2)])
def test_whether_it_ran_when_a_door_was_opened_can_be_said(ran: bool, count: int):
    values = legs(10.0, (60, 12.0), (10, 10.5), (3, 12.5), (15, 10.0), (60, 12.0))
    door = event("door", 70, 73, 80)
    assert len(find_runs(trace_of(values), SWING, [door], 150.0, {door: ran})) == count


@pytest.mark.parametrize(("part", "count"), [(0.7, 2), (1.0, 1)])
def test_by_a_part_of_the_band_more_is_a_run(part: float, count: int):
    """Up by 0.7 K: more than 0.56, and less than 0.8."""
    values = legs(10.0, (60, 12.0), (15, 10.0), (20, 10.7), (6, 10.0), (60, 10.3))
    assert len(find_runs(trace_of(values), SWING, part=part)) == count


def with_high_foot(cycles: int) -> list[float]:
    return legs(10.0, *CYCLE * 2, (60, 12.0), (15, 10.6), *CYCLE * (cycles - 3), (60, 12.0))


@pytest.mark.parametrize(("cycles", "count"), [(4, 4), (5, 4), (6, 5)])
def test_of_five_feet_one_that_is_too_high_is_none(cycles: int, count: int):
    """Of fewer there is no telling which is the usual one. It may fall on by 0.433 K, and is 0.6 K too high."""
    assert len(runs_of(with_high_foot(cycles))) == count


@pytest.mark.parametrize(
    ("onset_s", "kind", "count"),
    [(-600, "defrost", 6), (-601, "defrost", 5), (600, "defrost", 6), (601, "defrost", 5), (0, "door", 5)],
)
def test_but_not_where_a_defrost_begins(onset_s: float, kind: Kind, count: int):
    foot_s = 60 * (2 * 75 + 75)
    begins = Event(kind, foot_s, foot_s + onset_s, foot_s + 60, foot_s + 120, 10.6, 10.7)
    assert len(runs_of(with_high_foot(6), [begins])) == count


def test_across_a_hole_nothing_is_counted():
    values = legs(10.0, *CYCLE * 4, (60, 12.0))
    kept = [at for at in range(len(values)) if not 100 <= at < 200]
    trace = trace_of([values[at] for at in kept], times_s=[60.0 * at for at in kept])
    assert [run.peak_s / 60 for run in find_runs(trace, SWING)] == [60, 285]


def test_a_run_is_what_it_is_made_of():
    assert find_runs(trace_of(legs(10.0, *CYCLE, (60, 12.0))), SWING) == (Run(1800, 4050, 3600, 12, 4500, 10),)


def test_the_last_foot_of_all_is_one_however_high():
    """No peak after it is known yet."""
    assert len(runs_of(legs(10.0, *CYCLE * 5, (60, 12.0), (15, 10.6), (60, 12.0)))) == 6


@pytest.mark.parametrize(("minutes", "count"), [(2, 1), (3, 2)])
def test_where_a_trace_is_smoothed_its_very_end_tells_nothing(minutes: int, count: int):
    """A reading every half minute, smoothed over three: the last one is left out. It rises by 0.1 K a reading."""
    values = legs(9.6, (60, 12.0), (15, 10.0), (60, 12.0), (15, 10.0), (minutes, 10.0 + 0.1 * minutes))
    swing = swing_of(10.0, 12.0, turns=[(0, False), (60, True)])
    assert len(find_runs(trace_of(values, 30.0), swing, (), 30.0)) == count


def test_a_run_that_a_hole_cuts_off_is_not_the_logs_last():
    trace, swing = cut(0.0, 0)
    values = [*trace.values, *legs(10.0, (60, 12.0))]
    times_s = [*trace.times_s, *(trace.times_s[-1] + 3600 + 60 * at for at in range(61))]
    assert not may_be_over(trace_of(values, sigma=0.201, times_s=times_s), swing, 165.0)
