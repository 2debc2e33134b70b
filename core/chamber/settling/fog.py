"""How often the humidifier works: climbs of the vapour pressure, counted at least and at most.

Two things blur the count. A spell of fog within a run may not climb at all, for the coil takes what it gives; one that
goes on through a run climbs twice, before and after. Readings in coarse steps climb by themselves.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from itertools import islice
from operator import sub

from attrs import frozen

from core.chamber.settling.events import Event
from core.chamber.settling.humid_air import HumidAir
from core.chamber.settling.runs import Run
from core.chamber.settling.swing import CannotSee, width_of
from core.chamber.settling.trace import noise, percentile, smooth, step
from core.saturation import WARMEST_C, saturation_in_air_pa
from core.vapour import STANDARD_PA

CLIMB_S = 240.0
FULL_CLIMB = 0.97
"""A humidifier that works for a thirtieth of the time or more shows its full climb there."""
FEWEST_STEPS, ABOVE_NOISE = 5.0, 6.0
"""A climb of fewer of the logger's steps may be theirs."""
AT_FIRST_S, AT_LAST_S = 360.0, 300.0
"""Before a run and after it: so near, a climb that ended and one that begins may be the same spell of fog."""
BROKEN_OFF = 0.5
"""Of the full climb: what falls so much less steeply from one moment on has fog in it."""
GIVE = 0.05
A_POINT, WIDEST = 1.25, 1.65
"""Most ÷ least: up to the first a single value is shown, up to the second a range (seen in simulated chambers)."""
TOO_COARSE = (
    "How often the humidifier works is not known: the readings are too coarse for what it adds. Log the temperature "
    "in steps of 0.1 K and the humidity in steps of 0.1 %."
)
NO_BURSTS = "The vapour pressure shows no bursts that stand out from its noise."
HIDDEN = (
    "How often the humidifier works is not known: runs of the compressor, doors and defrosts hide some of its spells "
    "and part others in two."
)


@frozen
class Climb:
    begins_s: float
    ends_s: float


@frozen
class _Pace:
    """How strict a climb is judged: it begins above `fast`, and is over at `slow`, both in parts of the full one."""

    slow: float
    fast: float


USUAL, STRICT, LENIENT = _Pace(0.2, 0.5), _Pace(0.3, 0.6), _Pace(0.12, 0.4)


@frozen
class Work:
    """Spells of fog an hour: as counted, at least, at most. begun_s: those counted."""

    an_hour: float
    low: float
    high: float
    begun_s: tuple[float, ...]

    @property
    def is_sure(self) -> bool:
        """Whether one value may be shown; else only the range from low to high."""
        return self.high <= A_POINT * self.low


def work_of(air: HumidAir, runs: Sequence[Run] = (), events: Sequence[Event] = ()) -> Work:
    """events: doors and defrosts, whose vapour is not the humidifier's. Raises CannotSee where it cannot be seen."""
    usual_s = air.lasts_s[-1]
    few = round(CLIMB_S / usual_s)
    vapour = smooth(air.vapour_pa, width_of(usual_s))
    by = list(map(sub, islice(vapour, few, None), vapour))
    full = percentile(sorted(by), FULL_CLIMB)
    if full < ABOVE_NOISE * noise(air.vapour_pa):
        raise CannotSee("log", NO_BURSTS)
    if full < FEWEST_STEPS * _rounding_pa(air):
        raise CannotSee("log", TOO_COARSE)
    widest = _spans(by, full, LENIENT)
    every = _climbs(air, widest)
    plain = _undisturbed(_climbs(air, _within(by, full, USUAL, widest)), events)
    surely = _undisturbed(_climbs(air, _within(by, full, STRICT, widest)), events)
    if len(plain) < 3:
        raise CannotSee("log", NO_BURSTS)
    first_s, last_s = plain[0].begins_s, plain[-1].begins_s
    counts = [len(plain), *(_between(each, first_s, last_s) for each in (surely, every))]
    least, most = min(counts) - _joined(plain, runs), max(counts) + _hidden(air, by, BROKEN_OFF * full, plain, runs)
    hours = (last_s - first_s) / 3600
    low, high = (1 - GIVE) * (least - 1) / hours, (1 + GIVE) * (most - 1) / hours
    if high > WIDEST * low:
        raise CannotSee("log", HIDDEN)
    return Work((len(plain) - 1) / hours, low, high, tuple(climb.begins_s for climb in plain))


def _rounding_pa(air: HumidAir) -> float:
    """What one step of both columns makes of the vapour pressure."""
    step_k, count = step(air.temperatures_c), len(air.times_s)
    warm_c = min(sum(air.temperatures_c) / count, WARMEST_C - step_k)
    full_pa, more_pa = (saturation_in_air_pa(each, STANDARD_PA) for each in (warm_c, warm_c + step_k))
    return (more_pa - full_pa) * sum(air.humidities) / count + full_pa * step(air.humidities)


Indices = list[tuple[int, int]]


def _spans(by: Sequence[float], full: float, pace: _Pace) -> Indices:
    """Where it climbs: the first reading that is fast, and the first after it that is slow. What climbs when the log
    begins may have begun before."""
    slow, fast = pace.slow * full, pace.fast * full
    begun = next((at for at, climb in enumerate(by) if climb <= slow), len(by))
    return _spans_from(by, begun, len(by), slow, fast)


def _within(by: Sequence[float], full: float, pace: _Pace, widest: Indices) -> Indices:
    """The same by a stricter pace: only within what climbs by the most lenient need be looked at."""
    slow, fast = pace.slow * full, pace.fast * full
    return [span for begun, end in widest for span in _spans_from(by, begun, end, slow, fast)]


def _spans_from(by: Sequence[float], first: int, end: int, slow: float, fast: float) -> Indices:
    found: Indices = []
    begun = -1
    for at in range(first, end):
        if begun >= 0:
            if by[at] <= slow:
                found.append((begun, at))
                begun = -1
        elif by[at] > fast:
            begun = at
    if begun >= 0:
        found.append((begun, end))
    return found


def _climbs(air: HumidAir, spans: Indices) -> list[Climb]:
    return [Climb(air.times_s[begun], air.times_s[end]) for begun, end in spans]


def _undisturbed(climbs: Sequence[Climb], events: Sequence[Event]) -> list[Climb]:
    return [
        climb
        for climb in climbs
        if not any(event.starts_s - CLIMB_S < climb.begins_s < event.ends_s for event in events)
    ]


def _between(climbs: Sequence[Climb], first_s: float, last_s: float) -> int:
    return sum(first_s - CLIMB_S <= climb.begins_s <= last_s + CLIMB_S for climb in climbs)


def _joined(climbs: Sequence[Climb], runs: Sequence[Run]) -> int:
    """Climbs that a run may only have interrupted."""
    begun_s = [climb.begins_s for climb in climbs]
    joined = 0
    for run in runs:
        after = bisect_right(begun_s, run.peak_s)
        if 0 < after < len(climbs) and begun_s[after] < run.trough_s + AT_LAST_S:
            joined += run.peak_s - AT_FIRST_S < climbs[after - 1].ends_s < run.trough_s
    return joined


def _hidden(air: HumidAir, by: Sequence[float], least: float, climbs: Sequence[Climb], runs: Sequence[Run]) -> int:
    """Runs in which the vapour pressure falls less steeply from some moment on, though it does not climb."""
    begun_s = [climb.begins_s for climb in climbs]
    few = round(CLIMB_S / air.lasts_s[-1])
    hidden = 0
    for run in runs:
        first, last = bisect_left(air.times_s, run.peak_s), bisect_left(air.times_s, run.trough_s)
        end = min(last - 2 * few, len(by) - few)
        steeper = max(map(sub, by[first + few : end + few], by[first:end]), default=0.0)
        after = bisect_right(begun_s, run.peak_s)
        is_seen = after < len(begun_s) and begun_s[after] < run.trough_s + AT_LAST_S
        hidden += steeper > least and not is_seen
    return hidden
