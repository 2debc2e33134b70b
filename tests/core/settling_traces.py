"""Traces and swings put together by hand, so that a limit of how they are read can be met to a hair."""

from __future__ import annotations

from collections.abc import Sequence

from core.chamber.settling.swing import Swing, Trace


def trace_of(
    values: Sequence[float],
    interval_s: float = 60.0,
    *,
    sigma: float = 0.0,
    step: float = 0.0,
    comes_down: bool = False,
    times_s: Sequence[float] = (),
) -> Trace:
    """With nothing smoothed: values are what they are."""
    at_s = tuple(times_s) or tuple(interval_s * place for place in range(len(values)))
    return Trace(at_s, tuple(values), tuple(values), interval_s, sigma, step, comes_down)


def swing_of(
    lower: float,
    upper: float,
    rising_s: float = 3600.0,
    falling_s: float = 900.0,
    turns: Sequence[tuple[int, bool]] = (),
) -> Swing:
    size = upper - lower
    return Swing(upper, lower, rising_s, falling_s, size / rising_s, size / falling_s, tuple(turns))


def legs(start: float, *pieces: tuple[int, float]) -> list[float]:
    """Straight from reading to reading: so many readings on to that value, and so on."""
    values = [start]
    for count, until in pieces:
        first = values[-1]
        values += [first + (until - first) * place / count for place in range(1, count + 1)]
    return values
