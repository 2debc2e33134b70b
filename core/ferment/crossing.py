"""When did the pH come down to 5.3, or when will it?

Between two readings a straight line; ahead of them a line through the last few, with its spread.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from attrs import frozen

from core.ferment.rules import TARGET_PH

BELIEVABLE_PH = (3.5, 8.0)  # practice: outside it the meter, not the meat, is at fault
CONTRADICTED_WITHIN_S = 48 * 3600.0
"""A pH that is above 5.3 again two days later was misread, or another piece: mould needs longer to raise it."""
METER_ERROR = 0.05  # practice: two readings of one piece differ by as much
FEWEST_FOR_A_LINE, MOST_FOR_A_LINE = 3, 5
SIGMAS = 2.0
"""Nineteen times out of twenty, were the fall a straight line."""


@frozen
class Acid:
    """One pH of the meat. at_s: seconds from the start of the clock, negative before it."""

    at_s: float
    ph: float


@frozen
class Crossing:
    """by_s: the first reading that shows it. after_s: the last one that did not; None where the first shows it.

    at_s: between the two, by a straight line.
    """

    at_s: float
    by_s: float
    after_s: float | None


@frozen
class Projection:
    """at_s: by a straight line through the last readings. latest_s: None where a later end cannot be told."""

    at_s: float
    earliest_s: float
    latest_s: float | None
    readings: int


def believable(readings: Iterable[Acid]) -> list[Acid]:
    low, high = BELIEVABLE_PH
    return sorted((each for each in readings if low <= each.ph <= high), key=lambda each: (each.at_s, -each.ph))


def crossing(readings: Iterable[Acid]) -> Crossing | None:
    """The first time the pH is 5.3 or lower and stays so; a rise long after (mould) takes nothing back."""
    ordered = believable(readings)
    for index, each in enumerate(ordered):
        if each.ph > TARGET_PH or _contradicted(ordered, index):
            continue
        before = ordered[index - 1] if index else None
        if before is None:
            return Crossing(each.at_s, each.at_s, None)
        share = (before.ph - TARGET_PH) / (before.ph - each.ph)
        return Crossing(before.at_s + share * (each.at_s - before.at_s), each.at_s, before.at_s)
    return None


def _contradicted(ordered: Sequence[Acid], index: int) -> bool:
    if index + 1 == len(ordered):
        return False
    after = ordered[index + 1]
    return after.ph > TARGET_PH and after.at_s - ordered[index].at_s <= CONTRADICTED_WITHIN_S


def projection(readings: Iterable[Acid]) -> Projection | None:
    """Where a straight line through the last three to five readings of the fall comes down to 5.3.

    None with fewer than three readings since the highest, or while the pH does not fall. The spread is that of the
    line, its readings scattering as they do and by 0.05 pH at the least.
    """
    falling = _falling(believable(readings))
    if len(falling) < FEWEST_FOR_A_LINE or falling[-1].ph <= TARGET_PH:
        return None
    count = len(falling)
    mean_s, mean_ph = (math.fsum(each) / count for each in zip(*((one.at_s, one.ph) for one in falling), strict=True))
    spread = math.fsum((each.at_s - mean_s) ** 2 for each in falling)
    if not spread:
        return None
    slope = math.fsum((each.at_s - mean_s) * (each.ph - mean_ph) for each in falling) / spread
    if slope >= 0:
        return None
    left = math.fsum((each.ph - mean_ph - slope * (each.at_s - mean_s)) ** 2 for each in falling)
    error = SIGMAS * max(METER_ERROR, math.sqrt(left / (count - 2)))
    above_target = mean_ph - TARGET_PH
    early, late = _where_the_band_ends(slope, above_target, error, count, spread)
    last_s = falling[-1].at_s
    at_s = max(mean_s - above_target / slope, last_s)
    latest_s = None if late is None else max(mean_s + late, at_s)
    return Projection(at_s, max(last_s, min(mean_s + early, at_s)), latest_s, count)


def _falling(ordered: Sequence[Acid]) -> Sequence[Acid]:
    """From the last of the highest readings on; of these the latest few."""
    if not ordered:
        return ()
    highest = max(each.ph for each in ordered)
    start = max(index for index, each in enumerate(ordered) if each.ph == highest)
    return ordered[start:][-MOST_FOR_A_LINE:]


def _where_the_band_ends(
    slope: float, above_target: float, error: float, count: int, spread: float
) -> tuple[float, float | None]:
    """Seconds from the mean time at which the line's band crosses the target: (above + slope x)² = error² (1/n + x²/S).

    Where the slope itself may be nothing, the later end lies at infinity.
    """
    a = slope**2 - error**2 / spread
    b, c = 2 * slope * above_target, above_target**2 - error**2 / count
    inside = b * b - 4 * a * c
    if a <= 0:
        root = math.sqrt(max(inside, 0.0))
        roots = [x for x in ((-b + root) / (2 * a), (-b - root) / (2 * a)) if x > 0] if a else [-c / b]
        return (min(roots, default=0.0), None)
    root = math.sqrt(max(inside, 0.0))
    return (-b - root) / (2 * a), (-b + root) / (2 * a)
