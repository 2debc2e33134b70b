"""What was noted of a whole muscle's time in salt, folded from the batch's lines."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime

from attrs import evolve, frozen

from core.daybook.book import Line
from core.daybook.facts.salting import PieceTurned, SaltingBegun, SaltingEnded


@frozen
class Salting:
    """begun: as the last of its beginnings tells it. turned_at: oldest first. ended_at: None while it lies in salt.
    ended: what was noted when it came out."""

    at: datetime
    line_id: str
    begun: SaltingBegun
    turned_at: tuple[datetime, ...] = ()
    ended_at: datetime | None = None
    ended: SaltingEnded | None = None


def salting_of(lines: Iterable[Line]) -> Salting | None:
    """None where no salting was noted. What was noted before it began belongs to none."""
    there = list(lines)
    begun = next((line for line in reversed(there) if isinstance(line.fact, SaltingBegun)), None)
    if begun is None or not isinstance(begun.fact, SaltingBegun):
        return None
    at = begun.entry.happened_at
    later = [line for line in there if line.entry.happened_at >= at]
    ended = [(line.entry.happened_at, line.fact) for line in later if isinstance(line.fact, SaltingEnded)]
    turned = tuple(line.entry.happened_at for line in later if isinstance(line.fact, PieceTurned))
    return Salting(at, begun.id, begun.fact, turned, *(_ended(ended) if ended else (None, None)))


def _ended(noted: list[tuple[datetime, SaltingEnded]]) -> tuple[datetime, SaltingEnded]:
    """It comes out once. Noted twice, it was out with the first; whatever was noted of its cold counts, and the longer
    rest."""
    coldest = [fact.coldest_c for _, fact in noted if fact.coldest_c is not None]
    warmest = [fact.warmest_c for _, fact in noted if fact.warmest_c is not None]
    rested = [fact.rested_s for _, fact in noted if fact.rested_s is not None]
    first_at, first = noted[0]
    return first_at, evolve(
        first,
        coldest_c=min(coldest, default=None),
        warmest_c=max(warmest, default=None),
        rested_s=max(rested, default=None),
    )
