"""The compressor's rhythm: how often it starts, how long it runs and holds, how fast the chamber cools and warms.

Only cycles that no defrost and no door disturbs are measured.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Sequence
from itertools import pairwise
from operator import mul

from attrs import frozen

from core.chamber.settling.broken_runs import PROBE_IS_LATE_S, falls_by_s
from core.chamber.settling.disturbances import Disturbances, disturbances
from core.chamber.settling.events import Event
from core.chamber.settling.mean_leg import Leg, Look, MeanLeg, look_around, mean_leg
from core.chamber.settling.runs import Run
from core.chamber.settling.swing import CannotSee, Swing, Trace
from core.chamber.settling.trace import percentile
from core.sentence import Message, Sentence

FEWEST_RUNS = 3
MID_PART = 0.36
LOOKS, COARSE_LOOKS = (0.7, 0.45), (0.9, 0.75)
"""How much of the legs before and after is looked at: less where that leaves too few. Stairs need most."""
EARLY, LATE, SLOWS_DOWN = (0.2, 0.55), (0.55, 0.9), 1.1
MIDDLE, LAST, SLOWS_LAST = (0.4, 0.65), (0.65, 0.9), 1.15
"""Parts of a hold; and a time constant that grows so much from the one to the other is not one."""
FIRST, AS_QUICK = 8, (0.86, 1.12)
"""The first of so many cycles; its time constant in parts of that of the second half, where walls hide nothing."""
ENOUGH_SPANS = 150
"""Of a log of months a part tells the slope as well as all of it."""
AS_LOW = 0.04
"""Of the swing."""
WIDEST_RANGE, A_POINT = 0.25, 0.11
"""Of the period: a share of the time known no better than that is not known; one known as well as that is shown
as one value, any other, and any of stairs, only as a range. So nine of ten single values are within 0.03 (seen in
simulated chambers)."""
BETWEEN_READINGS = 0.25
"""Of the time between two: where a run turns is not known better, however many are laid over one another."""
WARMS_APART = Sentence(
    "The warming time constant is not known: the holds do not warm at one pace throughout, as where air and wall "
    "warm apart."
)
TOO_COARSE: Message = (
    "How long the compressor runs is not known: the readings are too coarse or too noisy for so small a swing. "
    "Log in finer steps, or more often."
)


@frozen
class Cycle:
    """From the middle of one run to the middle of the next, undisturbed."""

    before: Run
    after: Run

    @property
    def lasts_s(self) -> float:
        return self.after.falls_s - self.before.falls_s


@frozen
class Rhythm:
    """The mean cycle. Times in s, speeds in K/s, all above 0; holds_low_s, holds_high_s: a tenth is shorter, longer.

    warming_s: time constant towards the room, None where the room's temperature is not known, or air and wall warm
    apart. passed_k: how much lower than its usual foot the first pull-down went. is_share_sure: whether run_share may
    be shown as one value; else only the range from run_share_low to run_share_high.
    """

    cycles: tuple[Cycle, ...]
    period_s: float
    cools_s: float
    cools_low_s: float
    cools_high_s: float
    holds_s: float
    holds_low_s: float
    holds_high_s: float
    cools_by_s: float
    warms_by_s: float
    highest_c: float
    lowest_c: float
    passed_k: float
    warming_s: float | None
    room_c: float | None
    late_s: float
    is_share_sure: bool

    @property
    def warming_why_not(self) -> Sentence | None:
        return WARMS_APART if self.warming_s is None and self.room_c is not None else None

    @property
    def starts_an_hour(self) -> float:
        return 3600 / self.period_s

    @property
    def run_share(self) -> float:
        return self.cools_s / self.period_s

    @property
    def run_share_low(self) -> float:
        return self.cools_low_s / self.period_s

    @property
    def run_share_high(self) -> float:
        return self.cools_high_s / self.period_s

    @property
    def swing_k(self) -> float:
        return self.highest_c - self.lowest_c


def rhythm_of(
    trace: Trace, swing: Swing, runs: Sequence[Run], events: Sequence[Event], room_c: float | None = None
) -> Rhythm:
    """Raises CannotSee where fewer than three runs, or two cycles, are undisturbed."""
    disturbed = disturbances(trace, events)
    both = (Cycle(before, after) for before, after in pairwise(runs))
    cycles = tuple(cycle for cycle in both if disturbed.spare(cycle.before.rises_s, cycle.after.falls_s))
    if len(cycles) < FEWEST_RUNS - 1:
        raise CannotSee(
            "log", "Hardly a cycle is undisturbed by doors and defrosts: leave the chamber shut for longer."
        )
    periods = sorted(cycle.lasts_s for cycle in cycles)
    period_s = sum(periods) / len(periods)
    timed = _timed(trace, swing, runs, cycles, period_s, disturbed)
    cools_s, give_s = timed.cools_s, timed.give_s + BETWEEN_READINGS * trace.interval_s
    cools_low_s, cools_high_s = max(0.0, cools_s - give_s), min(period_s, cools_s + give_s)
    if (cools_high_s - cools_low_s) / period_s > WIDEST_RANGE:
        raise CannotSee("log", TOO_COARSE)
    return Rhythm(
        cycles=cycles,
        period_s=period_s,
        cools_s=cools_s,
        cools_low_s=cools_low_s,
        cools_high_s=cools_high_s,
        holds_s=period_s - cools_s,
        holds_low_s=percentile(periods, 0.1) - cools_s,
        holds_high_s=percentile(periods, 0.9) - cools_s,
        cools_by_s=-_slope(trace, _mid_runs(cycles)),
        warms_by_s=_slope(trace, _mid_holds(cycles)),
        highest_c=percentile(sorted(cycle.after.peak_c for cycle in cycles), 0.5),
        lowest_c=percentile(sorted(cycle.after.trough_c for cycle in cycles), 0.5),
        passed_k=_passed(trace, swing, runs),
        warming_s=_warming_of_one(trace, cycles, room_c),
        room_c=room_c,
        late_s=timed.late_s,
        is_share_sure=not trace.is_coarse and cools_high_s - cools_low_s <= A_POINT * period_s,
    )


@frozen
class _Timed:
    """cools_s: how long the compressor runs, give or take. late_s: for how long the trace falls on when it stops."""

    cools_s: float
    give_s: float
    late_s: float


def _timed(
    trace: Trace, swing: Swing, runs: Sequence[Run], cycles: Sequence[Cycle], period_s: float, disturbed: Disturbances
) -> _Timed:
    """The shorter of run and hold is fitted: it is the straighter."""
    stairs_s = _stairs_s(trace, swing)
    if swing.falling_s <= swing.rising_s:
        legs = _run_legs(trace, swing, runs)
        mean = _fitted(trace, legs, swing.rising_s, disturbed)
        late_s = _late_s(trace, swing, [(run, run.falls_s + mean.begins_s + mean.lasts_s) for run in runs])
        return _Timed(mean.lasts_s, mean.give_s + stairs_s, late_s)
    mean = _fitted(trace, _hold_legs(trace, swing, cycles), swing.falling_s, disturbed)
    late_s = _late_s(trace, swing, [(cycle.before, cycle.after.rises_s + mean.begins_s) for cycle in cycles])
    return _Timed(period_s - mean.lasts_s, mean.give_s + stairs_s, late_s)


def _run_legs(trace: Trace, swing: Swing, runs: Sequence[Run]) -> list[Leg]:
    next_s = [*(run.rises_s for run in runs[1:]), trace.times_s[-1]]
    return [
        Leg(_leaves(trace, swing, run.peak_s, run.falls_s), run.falls_s, _leaves(trace, swing, run.trough_s, until_s))
        for run, until_s in zip(runs, next_s, strict=True)
    ]


def _hold_legs(trace: Trace, swing: Swing, cycles: Sequence[Cycle]) -> list[Leg]:
    return [
        Leg(
            _leaves(trace, swing, cycle.before.trough_s, cycle.after.rises_s),
            cycle.after.rises_s,
            _leaves(trace, swing, cycle.after.peak_s, cycle.after.falls_s),
        )
        for cycle in cycles
    ]


def _late_s(trace: Trace, swing: Swing, ends: Sequence[tuple[Run, float]]) -> float:
    """ends: runs, and when each stops. For how long the trace then falls on, at its pace."""
    if trace.is_coarse:
        return PROBE_IS_LATE_S
    late_s: list[float] = []
    for run, stops_s in ends:
        peak, stop = bisect_left(trace.times_s, run.peak_s), bisect_left(trace.times_s, stops_s)
        by_s = falls_by_s(trace, swing, peak, max(peak, min(stop, len(trace.times_s) - 1)))
        if by_s > 0:
            late_s.append((trace.at(stops_s) - run.trough_c) / by_s)
    return max(0.0, percentile(sorted(late_s), 0.5)) if late_s else PROBE_IS_LATE_S


def _leaves(trace: Trace, swing: Swing, turn_s: float, until_s: float) -> float:
    """The last reading that is still as low, or as high, as the turn: where a trace creeps to its foot, that is hours
    later than its lowest reading."""
    turn, last = bisect_left(trace.times_s, turn_s), bisect_left(trace.times_s, until_s)
    near = max(2 * trace.sigma, AS_LOW * swing.size)
    values, level = trace.smoothed, trace.smoothed[turn]
    return trace.times_s[max((at for at in range(turn, last) if abs(values[at] - level) <= near), default=turn)]


def _stairs_s(trace: Trace, swing: Swing) -> float:
    """A trace of stairs turns somewhere on its highest and lowest step: half the time it takes over one, at both."""
    if not trace.is_coarse:
        return 0.0
    return trace.step * (1 / swing.rises_by_s + 1 / swing.falls_by_s) / 2


def _fitted(trace: Trace, legs: Sequence[Leg], longer_s: float, disturbed: Disturbances) -> MeanLeg:
    """The mean of the legs, the shorter ones; those between them last about `longer_s`."""
    for share in COARSE_LOOKS if trace.is_coarse else LOOKS:
        look = look_around(legs, longer_s, share)
        alone = [leg for leg in legs if _is_alone(trace, leg, look, disturbed)]
        if len(alone) >= FEWEST_RUNS:
            return mean_leg(trace, alone, look)
    raise CannotSee("log", "Hardly a run is undisturbed by doors and defrosts: leave the chamber shut for longer.")


def _is_alone(trace: Trace, leg: Leg, look: Look, disturbed: Disturbances) -> bool:
    first_s, last_s = leg.middle_s - look.before_s, leg.middle_s + look.after_s
    return trace.times_s[0] < first_s and last_s < trace.times_s[-1] and disturbed.spare(first_s, last_s)


def _passed(trace: Trace, swing: Swing, runs: Sequence[Run]) -> float:
    if not trace.comes_down or not runs:
        return 0.0
    return max(0.0, swing.lower - min(trace.smoothed[: bisect_left(trace.times_s, runs[0].rises_s) + 1]))


def _warming_of_one(trace: Trace, cycles: Sequence[Cycle], room_c: float | None) -> float | None:
    """Time constant of the chamber towards the room, where air and wall warm as one: None where they do not.

    Apart, a hold slows down, or the first ones, with walls still warm, are quicker than those that follow. The wall's
    own constant then hides: what the air does late in a hold is still a third mass's, and the fan's heat is in it.
    """
    if room_c is None:
        return None
    whole_s, *parts_s = (
        _warming(trace, spans, room_c)
        for spans in (
            _mid_holds(cycles),
            *(_parts_of_holds(cycles, *part) for part in (EARLY, LATE, MIDDLE, LAST)),
            _mid_holds(cycles[: max(1, len(cycles) // FIRST)]),
            _mid_holds(cycles[len(cycles) // 2 :]),
        )
    )
    known_s = [each for each in parts_s if each is not None]
    if whole_s is None or len(known_s) < len(parts_s):
        return None
    early_s, late_s, middle_s, last_s, first_s, rest_s = known_s
    is_one = late_s < SLOWS_DOWN * early_s and last_s < SLOWS_LAST * middle_s
    return whole_s if is_one and AS_QUICK[0] < first_s / rest_s < AS_QUICK[1] else None


def _parts_of_holds(cycles: Sequence[Cycle], first: float, last: float) -> list[tuple[float, float]]:
    lasts = ((cycle.before.trough_s, cycle.after.peak_s - cycle.before.trough_s) for cycle in cycles)
    return [(from_s + first * lasts_s, from_s + last * lasts_s) for from_s, lasts_s in lasts]


def _warming(trace: Trace, spans: Sequence[tuple[float, float]], room_c: float) -> float | None:
    """Seconds in which the distance to the room would fall to 1/e, from the slope of its logarithm."""

    def farness(value: float) -> float:
        return -math.log(max(room_c - value, 0.1))

    by_s = _slope(trace, spans, farness)
    return 1 / by_s if by_s > 0 else None


def _mid_holds(cycles: Sequence[Cycle]) -> list[tuple[float, float]]:
    halves = ((cycle, MID_PART * (cycle.after.peak_s - cycle.before.trough_s)) for cycle in cycles)
    return [(cycle.after.rises_s - half_s, cycle.after.rises_s + half_s) for cycle, half_s in halves]


def _mid_runs(cycles: Sequence[Cycle]) -> list[tuple[float, float]]:
    halves = ((cycle, MID_PART * (cycle.after.trough_s - cycle.after.peak_s)) for cycle in cycles)
    return [(cycle.after.falls_s - half_s, cycle.after.falls_s + half_s) for cycle, half_s in halves]


def _slope(trace: Trace, spans: Sequence[tuple[float, float]], shown: Callable[[float], float] = float) -> float:
    """Of one line through all spans, each about its own mean: change a second of what is shown. 0 where none is."""
    above = below = 0.0
    for from_s, until_s in spans[:: 1 + len(spans) // ENOUGH_SPANS]:
        first, end = bisect_left(trace.times_s, from_s), bisect_left(trace.times_s, until_s)
        if end - first < 3:
            first, end = max(0, first - 1), min(len(trace.times_s), end + 1)
        times_s = trace.times_s[first:end]
        values = list(map(shown, trace.values[first:end]))
        mean_s, mean = sum(times_s) / len(times_s), sum(values) / len(values)
        since_s = [at_s - mean_s for at_s in times_s]
        above += sum(map(mul, since_s, [value - mean for value in values]))
        below += sum(map(mul, since_s, since_s))
    return above / below if below else 0.0
