"""When had it settled, and how far did it drift after?

Settled as DIN 12880:2007 ends the heat-up: from the first reading after which the probe stays within the limit
deviation. A single reading outside is not a departure, and what a defrost or a door lifts is told apart. For all probes
together it is the last one's time: so IEC 60068-3-5 has it for stabilisation.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from operator import mul

from core.chamber.settling.disturbances import AFTER_EVENT_S
from core.chamber.settling.events import Event
from core.chamber.settling.statistics import Band

DAY_S = 86_400.0
LEAST_STEADY_S = 6 * 3600.0
"""Less than this tells neither drift nor fluctuation of a chamber whose compressor runs once in hours (practice)."""


def undisturbed(times_s: Sequence[float], events: Sequence[Event]) -> list[bool]:
    """For each reading, whether no defrost and no door's warm air is in it, nor was within a quarter of an hour."""
    calm = [True] * len(times_s)
    for event in events:
        first = bisect_left(times_s, event.starts_s)
        end = bisect_left(times_s, event.ends_s + AFTER_EVENT_S)
        calm[first:end] = [False] * (end - first)
    return calm


def settled_since(
    times_s: Sequence[float], values: Sequence[float], band: Band, calm: Sequence[bool] | None = None
) -> float | None:
    """The time of the first reading after the last departure; None where the log ends outside the band.

    A departure is two readings or more outside, one after the other. calm: which readings count; None means all.
    """
    low, high = band.low, band.high
    outside_after = False
    for index in range(len(values) - 1, -1, -1):
        is_outside = not low <= values[index] <= high and (calm is None or calm[index])
        if is_outside and (outside_after or index == len(values) - 1):
            last = index + outside_after
            return times_s[last + 1] if last + 1 < len(values) else None
        outside_after = is_outside
    return times_s[0]


def arrived(times_s: Sequence[float], values: Sequence[float], band: Band) -> float | None:
    """The time of the first reading within the band."""
    return next((at_s for at_s, value in zip(times_s, values, strict=True) if band.holds(value)), None)


def drift_a_day(times_s: Sequence[float], values: Sequence[float], calm: Sequence[bool] | None = None) -> float | None:
    """Slope of the straight line through the calm readings, a day. None for less than six hours of them."""
    if calm is not None:
        kept = [index for index, is_calm in enumerate(calm) if is_calm]
        times_s, values = [times_s[index] for index in kept], [values[index] for index in kept]
    if len(times_s) < 2 or times_s[-1] - times_s[0] < LEAST_STEADY_S:
        return None
    count = len(times_s)
    mean_s, mean = sum(times_s) / count, sum(values) / count
    since_s = [at_s - mean_s for at_s in times_s]
    above = sum(map(mul, since_s, [value - mean for value in values]))
    return DAY_S * above / sum(map(mul, since_s, since_s))
