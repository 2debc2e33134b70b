"""The limits that the house sets itself, as its entries tell them."""

from __future__ import annotations

from datetime import datetime

from core.daybook.book import Book
from core.daybook.facts.cure import HouseRule
from core.mix.cure import PPM
from core.mix.rules import HouseLimit


def in_ppm(share: float | None) -> float | None:
    """A share of the meat as its rules have it; None stays None."""
    return None if share is None else share / PPM


def house_limits(book: Book, at: datetime | None = None) -> tuple[HouseLimit, ...]:
    """The house's own limits as they stood: the last one of each rule set."""
    latest: dict[str, HouseLimit] = {}
    for line in book.of_kind("house-rule"):
        fact = line.fact
        if isinstance(fact, HouseRule) and (at is None or line.entry.happened_at <= at):
            latest[fact.rules] = HouseLimit(fact.rules, in_ppm(fact.nitrite), in_ppm(fact.nitrate))
    return tuple(latest.values())
