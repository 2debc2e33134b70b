"""Noise where a cycle has few readings: corners then fill the second differences, and they say nothing of noise.

What swings regularly between two levels is no noise, however much its neighbours differ.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from core.chamber.settling.trace import percentile, turns_within

FEWEST_A_PERIOD, MOST_A_PERIOD = 4, 12
"""Readings to a cycle: with fewer, noise turns as often; with more, most second differences have no corner in them."""
LEAST_NOISE = 0.05
"""Of the spread: a quarter of what hides a swing. Less noise than that is never hidden by corners."""
FEWEST_PERIODS = 10
REGULAR = 0.35
"""Of the usual period: between its quartiles. Of noise alone periods differ more than twice as much."""
ENOUGH = 1000
"""Readings to see by whether a trace is regular."""


def without_corners(sigma: float, values: Sequence[float], step: float) -> float:
    """sigma: standard deviation of the noise, by second differences. Less where short regular cycles account for it."""
    ordered = sorted(values[:ENOUGH])
    low, middle, high = (percentile(ordered, share) for share in (0.1, 0.5, 0.9))
    swings_by = min(high - low, 2 * (middle - low))
    least = max(LEAST_NOISE * swings_by, step / 12**0.5)
    if sigma <= least:
        return sigma
    return least if swings_by > 0 and _is_regular(values[:ENOUGH], 0.5 * swings_by) else sigma


def _is_regular(values: Sequence[float], least: float) -> bool:
    peaks = [index for index, is_peak in turns_within(values, 0, len(values), least) if is_peak]
    periods = sorted(after - before for before, after in pairwise(peaks))
    if len(periods) < FEWEST_PERIODS:
        return False
    usual = percentile(periods, 0.5)
    is_short = FEWEST_A_PERIOD <= usual <= MOST_A_PERIOD
    return is_short and percentile(periods, 0.75) - percentile(periods, 0.25) <= REGULAR * usual
