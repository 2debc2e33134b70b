"""What a logged trace is like before anything is read into it: its noise, its step, its range; and how it is smoothed.

σ from the median of second differences is blind to slow change and to single corners. Source: reference rule,
σ = 1.4826 × MAD(second differences) ÷ √6.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import accumulate, pairwise

MAD_TO_SIGMA = 1.4826  # of a normal distribution
SECOND_DIFFERENCE = math.sqrt(6)  # noise in x[i−1] − 2 x[i] + x[i+1], in parts of the noise of x


def noise(values: Sequence[float]) -> float:
    """Standard deviation of the noise of single readings."""
    second = [after - 2 * here + before for before, here, after in zip(values, values[1:], values[2:], strict=False)]
    if not second:
        return 0.0
    second.sort()
    middle = len(second) // 2
    below, above = second[:middle], second[middle:]
    below.reverse()  # each half then rises away from the middle: two runs are sorted at once
    away = [above[0] - each for each in below] + [each - above[0] for each in above]
    return MAD_TO_SIGMA * _median(away) / SECOND_DIFFERENCE


def step(values: Sequence[float]) -> float:
    """The logger's step: the smallest difference between two values that occur; 0 where all are equal."""
    there = sorted(set(values))
    return min((round(high - low, 6) for low, high in pairwise(there) if high - low > 1e-6), default=0.0)


def percentile(ordered: Sequence[float], share: float) -> float:
    """Of values in order: linear between neighbours."""
    place = share * (len(ordered) - 1)
    low = math.floor(place)
    high = min(low + 1, len(ordered) - 1)
    return ordered[low] + (place - low) * (ordered[high] - ordered[low])


def smooth(values: Sequence[float], width: int) -> list[float]:
    """Mean of `width` neighbours, an odd number; at the ends of as many as there are on both sides."""
    half = min(width // 2, (len(values) - 1) // 2)
    if half < 1:
        return list(values)
    sums = [0.0, *accumulate(values)]
    size = len(values)
    inner = [(high - low) / (2 * half + 1) for low, high in zip(sums, sums[2 * half + 1 :], strict=False)]
    head = [(sums[2 * at + 1]) / (2 * at + 1) for at in range(half)]
    tail = [(sums[size] - sums[size - 2 * at - 1]) / (2 * at + 1) for at in reversed(range(half))]
    return head + inner + tail


def turns_within(values: Sequence[float], first: int, end: int, least: float) -> Iterator[tuple[int, bool]]:
    """Those from `first` to before `end`; the last one is known only once the trace has moved away from it."""
    high = low = first
    going = 0
    for index in range(first, end):
        value = values[index]
        if value > values[high]:
            high = index
        if value < values[low]:
            low = index
        if going >= 0 and value <= values[high] - least:
            if going:
                yield high, True
            going, low = -1, index
            high = index
        elif going <= 0 and value >= values[low] + least:
            if going:
                yield low, False
            going, high = 1, index
            low = index


def _median(values: list[float]) -> float:
    ordered = sorted(values)
    return ordered[len(ordered) // 2]
