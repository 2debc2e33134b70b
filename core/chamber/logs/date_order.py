"""Day or month first: which orders fit a file's dates, and which of them is the likelier."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from itertools import pairwise

from core.chamber.logs.column import Order
from core.chamber.logs.moments import WEEKDAY, day_of

_YEAR_FIRST = re.compile(WEEKDAY + r"[0-9]{4}[-./ ]")


def orders_that_fit(dates: Iterable[tuple[str, int]], mark: str) -> tuple[Order, ...]:
    """The orders of day, month and year that fit; `dates` are the file's distinct dates and how many rows have each.

    A row or two that only one order can read may be broken, so it takes three, or all, to rule the other out.
    """
    dates = list(dates)
    if mark in ("", "a"):
        return ("ymd",)
    four_first = sum(rows for text, rows in dates if starts_with_a_year(text))
    possible: tuple[Order, ...] = ("ymd",) if four_first * 2 > sum(rows for _, rows in dates) else ("dmy", "mdy", "ymd")
    days: dict[Order, list[float]] = {}
    read: dict[Order, int] = {}
    for order in possible:
        days[order] = [day_of(text, order, mark) for text, _ in dates]
        read[order] = sum(rows for (_, rows), day in zip(dates, days[order], strict=True) if not math.isnan(day))
    most = max(read.values())
    fitting: tuple[Order, ...] = tuple(
        order for order in possible if read[order] and most - read[order] < max(3, most / 1000)
    )
    fitting = _without_yearly_steps(fitting, days)
    return fitting[:1] if _mean_the_same([days[order] for order in fitting]) else fitting


def _without_yearly_steps(orders: tuple[Order, ...], days: dict[Order, list[float]]) -> tuple[Order, ...]:
    """13-06-25, 14-06-25: no log holds one day of each year. This tells a year from a day, never a day from a month."""
    steps: dict[Order, float] = {}
    for order in orders:
        known = sorted({day for day in days[order] if not math.isnan(day)})
        steps[order] = min((b - a for a, b in pairwise(known)), default=0.0)
    kept: tuple[Order, ...] = tuple(order for order in orders if steps[order] < 300)
    return kept or orders


def starts_with_a_year(text: str) -> bool:
    """Whether a date begins with four digits: its order is then year, month, day."""
    return _YEAR_FIRST.match(text) is not None


def _mean_the_same(days: list[list[float]]) -> bool:
    return all(a == b for other in days[1:] for a, b in zip(days[0], other, strict=True))


def likelier_order(dates: Iterable[tuple[str, int]], orders: tuple[Order, ...], mark: str) -> Order:
    """The order in which the file's days lie closest together: worth saying, not enough to decide."""
    if len(orders) < 2:
        return ""
    spans: dict[Order, float] = {}
    for order in orders:
        days = [day for text, _ in dates if not math.isnan(day := day_of(text, order, mark))]
        spans[order] = max(days) - min(days)
    least = min(spans.values())
    close: list[Order] = [order for order in orders if spans[order] == least]
    return close[0] if len(close) == 1 else ""
