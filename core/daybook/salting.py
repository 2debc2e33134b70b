"""A whole muscle's time in salt: when it is through, when it is turned next."""

from __future__ import annotations

from datetime import datetime, timedelta

from core.daybook.salt_notes import Salting
from core.mix.salting import SLOW_M2_S, TYPICAL_M2_S, Piece, diffusivity, time_to
from core.mix.salting_rules import TURN_EVERY_DAYS


def piece_of(salting: Salting) -> Piece:
    begun = salting.begun
    sides = (begun.width_m, begun.length_m) if begun.shape == "block" else (None, None)
    return Piece(begun.shape, begun.thickness_m, *sides)


def equalised_at(salting: Salting, at_3_c: float = TYPICAL_M2_S) -> datetime:
    """When the centre has its share."""
    begun = salting.begun
    d_m2_s = diffusivity(begun.temperature_c, at_3_c)
    return salting.at + timedelta(seconds=time_to(piece_of(salting), begun.manner, d_m2_s, begun.centre_share))


def surely_equalised_at(salting: Salting) -> datetime:
    """The same where salt moves as slowly as was ever published."""
    return equalised_at(salting, SLOW_M2_S)


def planned_end(salting: Salting) -> datetime:
    """The day it was meant to come out: as planned, or as reckoned."""
    days = salting.begun.planned_days
    return equalised_at(salting) if days is None else salting.at + timedelta(days=days)


def next_turn(salting: Salting) -> datetime | None:
    """None where it comes out before it would be turned again."""
    last = salting.turned_at[-1] if salting.turned_at else salting.at
    turn = last + timedelta(days=TURN_EVERY_DAYS[salting.begun.manner])
    return turn if turn < planned_end(salting) else None
