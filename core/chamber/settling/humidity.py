"""The humidity's own rhythm: how far it swings with each compressor run, and how often the humidifier works."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from itertools import pairwise

from attrs import frozen

from core.chamber.settling.events import Event
from core.chamber.settling.fog import Work, work_of
from core.chamber.settling.humid_air import HumidAir
from core.chamber.settling.rhythm import Cycle
from core.chamber.settling.runs import Run
from core.chamber.settling.swing import FEWEST_A_PERIOD, CannotSee, width_of
from core.chamber.settling.trace import percentile, smooth, step
from core.sentence import Message, Sentence

SAME_RHYTHM = 0.15
SLOWEST_TO_TELL_S = 150.0
"""A spell of fog lasts some minutes: a slower log shows some spells and misses others."""
FEWEST_STEPS = 3
"""A swing of fewer of the logger's steps is known to within a third or less."""


@frozen
class Swing:
    """Of relative humidity in one compressor cycle, 0 to 1: half of them more. Its top and its foot are each known to
    half a step of the logger."""

    size: float
    give: float


FEW_HUMIDITIES: Message = "There are too few humidities to see the humidifier work."
TOO_SLOW: Message = "How often the humidifier works is not known from so few readings: log every 2 min or oftener."


@frozen
class HumidRhythm:
    """swing: None without cycles, or lost in the logger's step. work: how often the humidifier works; None, and why,
    where that is not known. follows: whether it works once for each compressor run.
    """

    swing: Swing | None
    work: Work | None
    follows: bool
    why_not: Sentence | None = None


def humid_rhythm(
    air: HumidAir, cycles: Sequence[Cycle], events: Sequence[Event] = (), runs: Sequence[Run] = ()
) -> HumidRhythm:
    """events: doors and defrosts, whose vapour is not the humidifier's."""
    swing = _swing(air, cycles)
    if len(air.times_s) < 2 * FEWEST_A_PERIOD:
        return HumidRhythm(swing, None, False, Sentence(FEW_HUMIDITIES))
    if air.lasts_s[-1] > SLOWEST_TO_TELL_S:
        return HumidRhythm(swing, None, False, Sentence(TOO_SLOW))
    try:
        work = work_of(air, runs, events)
    except CannotSee as reason:
        return HumidRhythm(swing, None, False, reason.said)
    gaps_s = sorted(after_s - before_s for before_s, after_s in pairwise(work.begun_s))
    usual_s = percentile(sorted(cycle.lasts_s for cycle in cycles), 0.5) if cycles else 0.0
    follows = bool(cycles) and abs(percentile(gaps_s, 0.5) / usual_s - 1) < SAME_RHYTHM
    return HumidRhythm(swing, work, follows)


def _swing(air: HumidAir, cycles: Sequence[Cycle]) -> Swing | None:
    """Of the readings smoothed, where they come fast: of many the highest and the lowest are noise."""
    humidities = smooth(air.humidities, width_of(air.lasts_s[-1]))
    spans: list[float] = []
    for cycle in cycles:
        first = bisect_left(air.times_s, cycle.before.falls_s)
        end = bisect_left(air.times_s, cycle.after.falls_s)
        if end - first >= FEWEST_A_PERIOD:
            within = humidities[first:end]
            spans.append(max(within) - min(within))
    size, give = percentile(sorted(spans), 0.5) if spans else 0.0, step(air.humidities)
    return Swing(size, give) if size > FEWEST_STEPS * give else None
