"""The humidity's own rhythm: how far it swings with each compressor run, and how often the humidifier works."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence
from itertools import pairwise
from operator import sub

from attrs import frozen

from core.chamber.settling.events import Event
from core.chamber.settling.humid_air import HumidAir
from core.chamber.settling.rhythm import Cycle
from core.chamber.settling.swing import FEWEST_A_PERIOD, SMOOTHED_S
from core.chamber.settling.trace import noise, percentile, smooth, step

SAME_RHYTHM = 0.15
CLIMB_S = 240.0
SLOWEST_TO_TELL_S = 150.0
"""A spell of fog lasts some minutes: a slower log shows some spells and misses others."""
FEWEST_STEPS = 3
"""A swing of fewer of the logger's steps is known to within a third or less."""
FULL_CLIMB = 0.97
"""A humidifier that works for a thirtieth of the time or more shows its full climb there."""


@frozen
class HumidRhythm:
    """swing: of relative humidity in one compressor cycle, 0 to 1; None without cycles, or lost in the logger's step.

    bursts_an_hour: rises of the vapour pressure, which in an empty chamber only the humidifier brings about; None, and
    why, where they cannot be told. follows: whether it works once for each compressor run.
    """

    swing: float | None
    bursts_an_hour: float | None
    follows: bool
    why_not: str = ""


def humid_rhythm(air: HumidAir, cycles: Sequence[Cycle], events: Sequence[Event] = ()) -> HumidRhythm:
    """events: doors and defrosts, whose vapour is not the humidifier's."""
    swing = _swing(air, cycles)
    if len(air.times_s) < 2 * FEWEST_A_PERIOD:
        return HumidRhythm(swing, None, False, "There are too few humidities to see the humidifier work.")
    if air.lasts_s[-1] > SLOWEST_TO_TELL_S:
        why_not = "How often the humidifier works cannot be told from so few readings: log every 2 min or oftener."
        return HumidRhythm(swing, None, False, why_not)
    begun_s = _bursts(air, events)
    gaps_s = sorted(after_s - before_s for before_s, after_s in pairwise(begun_s))
    if len(gaps_s) < 2:
        return HumidRhythm(swing, None, False, "The vapour pressure shows no bursts that stand out from its noise.")
    mean_s = (begun_s[-1] - begun_s[0]) / len(gaps_s)
    usual_s = percentile(sorted(cycle.lasts_s for cycle in cycles), 0.5) if cycles else 0.0
    follows = bool(cycles) and abs(percentile(gaps_s, 0.5) / usual_s - 1) < SAME_RHYTHM
    return HumidRhythm(swing, 3600 / mean_s, follows)


def _bursts(air: HumidAir, events: Sequence[Event]) -> list[float]:
    """When the vapour pressure began to climb as fast as it does when the humidifier works."""
    begun_s: list[float] = []
    usual_s = air.lasts_s[-1]
    few = round(CLIMB_S / usual_s)
    vapour = smooth(air.vapour_pa, math.floor(SMOOTHED_S / usual_s) // 2 * 2 + 1)
    climbs = list(map(sub, vapour[few:], vapour))
    full = percentile(sorted(climbs), FULL_CLIMB)
    if full < 6 * noise(air.vapour_pa):
        return []
    slow, fast = 0.2 * full, 0.5 * full
    is_climbing = True  # the first burst may have begun before the log
    for at_s, climb in zip(air.times_s, climbs, strict=False):
        if is_climbing:
            is_climbing = climb > slow
        elif climb > fast:
            is_climbing = True
            if not any(event.starts_s - CLIMB_S < at_s < event.ends_s for event in events):
                begun_s.append(at_s)
    return begun_s


def _swing(air: HumidAir, cycles: Sequence[Cycle]) -> float | None:
    spans: list[float] = []
    for cycle in cycles:
        first = bisect_left(air.times_s, cycle.before.falls_s)
        end = bisect_left(air.times_s, cycle.after.falls_s)
        if end - first >= FEWEST_A_PERIOD:
            within = air.humidities[first:end]
            spans.append(max(within) - min(within))
    swing = percentile(sorted(spans), 0.5) if spans else 0.0
    return swing if swing > FEWEST_STEPS * step(air.humidities) else None
