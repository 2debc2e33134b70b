"""When did the pH come down to 5.3, or when will it?

Between two readings a straight line; ahead of them a line through the last few, with its spread. A low reading that a
later one contradicts shows nothing until the pH is measured again, low, and low once more.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby, takewhile

from attrs import evolve, frozen

from core.meat import ACID_PH
from core.units import DAY_S, HOUR_S

BELIEVABLE_PH = (3.5, 8.0)  # practice: outside it the meter, not the meat, is at fault
RISES_AFTER_S = 14 * DAY_S
"""In a study of dry sausage the pH fell until day 14 and had risen by day 20 (KOSFA 36(3):300, table 2): before that
neither mould nor time explains a pH above 5.3 after one below it."""
CONTRADICTED_WITHIN_S = 48 * HOUR_S
"""Nor later, where the pH first came down within the two days before. Our own choice; no published source."""
CONFIRMED_BY = 2
"""Once contradicted, low readings count that follow each other: what one reading said, one reading unsaid."""
REMEASURED_S = 12 * HOUR_S
"""A single high pH between two low ones and two more, the latter within half a day of it, was misread: four against
one. Our own choice; no published source."""
METER_ERROR = 0.05  # practice: two readings of one piece differ by as much
FEWEST_FOR_A_LINE, MOST_FOR_A_LINE = 3, 5
SIGMAS = 2.0
"""Nineteen times out of twenty, were the fall a straight line."""
FARTHEST_S = RISES_AFTER_S
"""Ahead of the mean time of the readings: no fall lasts longer, so what lies beyond it is no answer."""


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
    """at_s: by a straight line through the last readings. latest_s: None where a later end is not known."""

    at_s: float
    earliest_s: float
    latest_s: float | None
    readings: int


@frozen
class Contradiction:
    """low: the first pH at 5.3 or below that a later one contradicts. high: that one.

    again: low again since, and not confirmed yet. outweighed: two high readings followed each other since. is_open:
    the last word is a single reading, so that only another one can tell.
    """

    low: Acid
    high: Acid
    again: Acid | None = None
    outweighed: bool = False
    is_open: bool = False


@frozen
class Fall:
    """When the pH came down to 5.3 for good, as far as that is shown, and which readings speak against each other."""

    crossing: Crossing | None = None
    contradiction: Contradiction | None = None


def believable(readings: Iterable[Acid]) -> list[Acid]:
    """In the order of time; of two at one moment the higher is last, and so contradicts the lower."""
    low, high = BELIEVABLE_PH
    return sorted((each for each in readings if low <= each.ph <= high), key=lambda each: (each.at_s, each.ph))


def fall(readings: Iterable[Acid]) -> Fall:
    """The first time the pH is 5.3 or lower and stays so; a rise long after (mould) takes nothing back.

    Once a low reading was contradicted, it takes two that follow each other.
    """
    ordered = _without_outvoted(believable(readings))
    found: Contradiction | None = None
    for start, end in _low_runs(ordered):
        high = ordered[end] if end < len(ordered) else None
        stays = high is None or _explained(ordered[start], high)
        if stays and (found is None or end - start >= CONFIRMED_BY):
            return Fall(_crossed(ordered, start), found)
        if found is None and high is not None:
            found = Contradiction(ordered[start], high)
        if found is not None:
            high_twice = len(_high_row(ordered, end)) >= CONFIRMED_BY
            again = ordered[start] if high is None else None
            found = evolve(found, again=again, outweighed=found.outweighed or high_twice, is_open=not high_twice)
    return Fall(None, found)


def _high_row(ordered: Sequence[Acid], start: int) -> list[Acid]:
    return list(takewhile(lambda each: each.ph > ACID_PH, ordered[start:]))


def _low_runs(ordered: Sequence[Acid]) -> Iterator[tuple[int, int]]:
    """From the first of each row of readings at 5.3 or below to the first above it that follows."""
    end = 0
    for is_low, row in groupby(ordered, lambda each: each.ph <= ACID_PH):
        start, end = end, end + len(list(row))
        if is_low:
            yield start, end


def _explained(low: Acid, high: Acid) -> bool:
    """Whether mould and time may have raised it so far."""
    return high.at_s >= RISES_AFTER_S and high.at_s - low.at_s > CONTRADICTED_WITHIN_S


def _without_outvoted(ordered: Sequence[Acid]) -> list[Acid]:
    return [each for index, each in enumerate(ordered) if not _outvoted(ordered, index)]


def _outvoted(ordered: Sequence[Acid], index: int) -> bool:
    high, before = ordered[index], ordered[:index][-CONFIRMED_BY:]
    after = ordered[index + 1 :][:CONFIRMED_BY]
    return (
        high.ph > ACID_PH
        and len(before) == len(after) == CONFIRMED_BY
        and all(each.ph <= ACID_PH for each in (*before, *after))
        and after[-1].at_s - high.at_s <= REMEASURED_S
    )


def _crossed(ordered: Sequence[Acid], index: int) -> Crossing:
    each, before = ordered[index], ordered[index - 1] if index else None
    if before is None:
        return Crossing(each.at_s, each.at_s, None)
    share = (before.ph - ACID_PH) / (before.ph - each.ph)
    return Crossing(before.at_s + share * (each.at_s - before.at_s), each.at_s, before.at_s)


def projection(readings: Iterable[Acid]) -> Projection | None:
    """Where a straight line through the last three to five readings of the fall comes down to 5.3.

    None with fewer than three readings since the highest, or while the pH does not fall, or so slowly that it would
    take longer than any fall lasts. The spread is that of the line, its readings scattering as they do and by 0.05 pH
    at the least. A low reading that was contradicted is no part of it.
    """
    ordered = believable(readings)
    if not ordered or ordered[-1].ph <= ACID_PH:
        return None
    falling = _falling([each for each in ordered if each.ph > ACID_PH])
    if len(falling) < FEWEST_FOR_A_LINE:
        return None
    count, last_s = len(falling), falling[-1].at_s
    mean_s, mean_ph = (math.fsum(each) / count for each in zip(*((one.at_s, one.ph) for one in falling), strict=True))
    spread = math.fsum((each.at_s - mean_s) ** 2 for each in falling)
    above_target = mean_ph - ACID_PH
    if not spread:
        return None
    slope = math.fsum((each.at_s - mean_s) * each.ph for each in falling) / spread
    if slope * FARTHEST_S > -above_target:
        return None
    left = math.fsum((each.ph - mean_ph - slope * (each.at_s - mean_s)) ** 2 for each in falling)
    error = SIGMAS * max(METER_ERROR, math.sqrt(left / (count - 2)))
    early, late = _where_the_band_ends(slope, above_target, error, count, spread)
    at_s = max(mean_s - above_target / slope, last_s)
    latest_s = None if late is None else max(mean_s + late, at_s)
    return Projection(at_s, max(last_s, mean_s + early), latest_s, count)


def _falling(ordered: Sequence[Acid]) -> Sequence[Acid]:
    """From the last of the highest readings on; of these the latest few."""
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
    far = math.sqrt(max(b * b - 4 * a * c, 0.0)) - b  # more than nothing: the line falls
    return 2 * c / far, far / (2 * a) if far < 2 * a * FARTHEST_S else None
