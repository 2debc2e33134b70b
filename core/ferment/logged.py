"""A logger's readings brought down to a few hundred points that add up to the same degree-hours, or a little more."""

from __future__ import annotations

import math
from collections.abc import Sequence

from attrs import frozen

from core.refusals import OutOfRange

BASE_C = 15.55
"""Just below either base. What lies under it counts nothing, so it must not cool the means of what lies above."""


@frozen
class Summary:
    """times_s: from the first reading. highest_c: of all readings."""

    times_s: tuple[float, ...]
    temperatures_c: tuple[float, ...]
    highest_c: float
    lasts_s: float
    readings: int


def summarised(times_s: Sequence[float], temperatures_c: Sequence[float], most: int) -> Summary:
    """At most so many points, joined by straight lines: the first, the last, and the mean of each stretch between.

    times_s: strictly rising, two at least. most: 4 or more. Raises OutOfRange on "file". The longest gap of the log
    stays a gap, for no point is made where nothing was read.
    """
    if len(times_s) < 2:
        raise OutOfRange("file", "This log has fewer than two temperatures: there is nothing to add up.")
    start_s = times_s[0]
    since = [at_s - start_s for at_s in times_s]
    highest_c, lasts_s = max(temperatures_c), since[-1]
    if len(since) <= most:
        return Summary(tuple(since), tuple(temperatures_c), highest_c, lasts_s, len(since))
    if highest_c > BASE_C:
        temperatures_c = [max(each, BASE_C) for each in temperatures_c]
    middles = [point for point in _means(since, temperatures_c, most - 2) if 0 < point[0] < lasts_s]
    points = [(0.0, temperatures_c[0]), *middles, (lasts_s, temperatures_c[-1])]
    return Summary(tuple(at for at, _ in points), tuple(warm for _, warm in points), highest_c, lasts_s, len(since))


def _means(times_s: Sequence[float], temperatures_c: Sequence[float], stretches: int) -> list[tuple[float, float]]:
    """Mean time and mean warmth of each stretch of equal length that holds a reading."""
    long_s = times_s[-1] / stretches
    members: dict[int, list[int]] = {}
    for index, at_s in enumerate(times_s):
        members.setdefault(min(int(at_s / long_s), stretches - 1), []).append(index)

    def mean(column: Sequence[float], one: list[int]) -> float:
        return math.fsum(column[each] for each in one) / len(one)

    return [(mean(times_s, one), mean(temperatures_c, one)) for one in members.values()]
