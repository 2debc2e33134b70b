"""A whole muscle's time in salt: when it is through, when it is turned next, and what of it is known in the end."""

from __future__ import annotations

from datetime import datetime, timedelta

from core.daybook.batch import Batch
from core.daybook.batch import Piece as Hung
from core.daybook.facts.ferment import FermentLogTaken
from core.daybook.salt_notes import Salting
from core.mix.salting import SLOW_M2_S, TYPICAL_M2_S, Piece, diffusivity, time_to
from core.mix.salting_rules import TURN_EVERY_DAYS
from core.release.salted import UNKNOWN, Salted


def piece_of(salting: Salting) -> Piece:
    begun = salting.begun
    sides = (begun.width_m, begun.length_m) if begun.shape == "block" else (None, None)
    return Piece(begun.shape, begun.thickness_m, *sides)


def equalised_at(salting: Salting, at_3_c: float = TYPICAL_M2_S) -> datetime:
    """When the centre has its share."""
    begun = salting.begun
    d_m2_s = diffusivity(begun.temperature_c, at_3_c)
    return salting.at + timedelta(seconds=time_to(piece_of(salting), begun.method, d_m2_s, begun.centre_share))


def surely_equalised_at(salting: Salting) -> datetime:
    """The same where salt moves as slowly as was ever published."""
    return equalised_at(salting, SLOW_M2_S)


def planned_end(salting: Salting) -> datetime:
    """The day it was meant to come out: as planned, or as computed."""
    planned_s = salting.begun.planned_s
    return equalised_at(salting) if planned_s is None else salting.at + timedelta(seconds=planned_s)


def next_turn(salting: Salting) -> datetime | None:
    """None where it comes out before it would be turned again."""
    last = salting.turned_at[-1] if salting.turned_at else salting.at
    turn = last + timedelta(days=TURN_EVERY_DAYS[salting.begun.method])
    return turn if turn < planned_end(salting) else None


def salted_of(batch: Batch, hung: Hung) -> Salted:
    """What the batch's entries tell of a piece that was hung from it.

    Its time in the cold ends with the entry that it came out, or when it was hung, whichever is first. The coldest and
    the warmest are as noted when it came out, or further out where any reading of that time was, on whatever it was
    read.
    """
    salting = batch.salting
    if salting is None:
        return UNKNOWN
    begun, ended = salting.begun, salting.ended
    until = None if salting.ended_at is None else min(salting.ended_at, hung.hung_at)
    read = _temperatures(batch, salting.at, until or hung.hung_at)
    noted = [] if ended is None else [each for each in (ended.coldest_c, ended.warmest_c) if each is not None]
    return Salted(
        method=begun.method,
        shape=begun.shape,
        thickness_m=begun.thickness_m,
        width_m=begun.width_m,
        length_m=begun.length_m,
        lasts_s=None if until is None else max((until - salting.at).total_seconds(), 0.0),
        rested_s=None if ended is None else ended.rested_s,
        coldest_c=None if ended is None or ended.coldest_c is None else min([*noted, *read]),
        warmest_c=None if ended is None or ended.warmest_c is None else max([*noted, *read]),
        way=begun.way,
        mass_kg=begun.mass_kg,
    )


def _temperatures(batch: Batch, since: datetime, until: datetime) -> list[float]:
    """Every one that was read in that time, and what the refrigerator was planned to be."""
    planned = [] if batch.salting is None else [batch.salting.begun.temperature_c]
    readings = ((each.at, each.temperature_c) for each in batch.readings if each.temperature_c is not None)
    logged = (
        (log.at + timedelta(seconds=at_s), warm_c)
        for log in batch.ferment.logs
        for at_s, warm_c in (*log.taken.points, *_highest(log.taken))
    )
    return [*planned, *(warm_c for at, warm_c in (*readings, *logged) if since <= at <= until)]


def _highest(taken: FermentLogTaken) -> list[tuple[float, float]]:
    """The highest reading stands beside the warmest point: it may have been averaged away."""
    return [(max(taken.points, key=lambda point: point[1])[0], taken.highest_c)]
