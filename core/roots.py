"""Where something begins to be so, or a function crosses zero: found by closing in on it, here and nowhere else."""

from __future__ import annotations

from collections.abc import Callable


def begins(is_past: Callable[[float], bool], low: float, high: float) -> float:
    """The first number from low to high of which it is so; from there on it must stay so. It is halved until no number
    lies between; where it is so of none, high."""
    while low < (middle := (low + high) / 2) < high:
        low, high = (low, middle) if is_past(middle) else (middle, high)
    return high


def zero_of(rises: Callable[[float], float], low: float, high: float) -> float:
    """Where a rising function crosses zero between low and high, to 1e-9: false position, the Illinois way.

    Quicker than halving where each step costs much, as the air's do.
    """
    at_low, at_high = rises(low), rises(high)
    if at_low >= 0:
        return low
    if at_high <= 0:
        return high
    kept = 0
    for _ in range(100):
        middle = high - at_high * (high - low) / (at_high - at_low)
        at_middle = rises(middle)
        if abs(at_middle) < 1e-14 or high - low < 1e-9:
            return middle
        if at_middle < 0:
            low, at_low = middle, at_middle
            at_high = at_high / 2 if kept == 1 else at_high
            kept = 1
        else:
            high, at_high = middle, at_middle
            at_low = at_low / 2 if kept == -1 else at_low
            kept = -1
    return (low + high) / 2
