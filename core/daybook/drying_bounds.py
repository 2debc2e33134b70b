"""How fast a piece may dry, and how slowly, as the house holds to it; common practice where it set no bound."""

from __future__ import annotations

from core.daybook.book import Book
from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.drying import DryingBounded
from core.dry.haste import USUAL_BOUNDS, Bounds, Span


def drying_bounds(book: Book) -> Bounds:
    line = book.latest(CHAMBER, DryingBounded)
    return bounds_of(line.fact) if line is not None and isinstance(line.fact, DryingBounded) else USUAL_BOUNDS


def bounds_of(fact: DryingBounded) -> Bounds:
    usual = USUAL_BOUNDS
    return Bounds(
        _own(fact.early_least, fact.early_most, usual.early),
        _own(fact.middle_least, fact.middle_most, usual.middle),
        _own(fact.late_least, fact.late_most, usual.late),
    )


def _own(least: float | None, most: float | None, usual: Span) -> Span:
    return usual[0] if least is None else least, usual[1] if most is None else most
