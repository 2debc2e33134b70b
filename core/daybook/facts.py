"""What can happen in the kitchen, one record a kind. It never changes; `core.daybook.entries` says when it happened.

Values are SI. A kind's name in the journal is its class name in small letters with hyphens: `PieceWeighed` is
"piece-weighed". Once entries of a kind exist its fields may be added to (with a default), never renamed.
"""

from __future__ import annotations

import re
from typing import Any

from attrs import Attribute, field, frozen
from attrs.validators import and_, deep_iterable, ge, gt, le, lt, matches_re, min_len, optional

from core.release.readiness import Style

CHAMBER = "chamber"
"""The `about` of everything that belongs to the chamber itself."""


def _finite(_instance: object, attribute: Attribute[float], value: float) -> None:
    if not -1e12 < value < 1e12:  # a NaN fails this too
        raise ValueError(f"{attribute.name} is not a number")


_above_zero = and_(_finite, gt(0))
_share = and_(_finite, ge(0), le(1))
_ph = and_(_finite, ge(0), le(14))
_celsius = and_(_finite, gt(-60), lt(150))


@frozen
class BatchStarted:
    """A batch is begun. Its entry's id is the batch's id. style: "fermented" or "whole-muscle"."""

    name: str = field(validator=min_len(1))
    style: Style
    meat_kg: float = field(validator=_above_zero)
    target_loss: float = field(validator=_share)
    least_days: float | None = field(default=None, validator=optional(and_(_finite, ge(0))))


@frozen
class CureWeighed:
    """The curing salt that went in, 0 kg where none was used. Fractions of the curing salt by its label."""

    cure_kg: float = field(validator=and_(_finite, ge(0)))
    nitrite: float = field(validator=_share)
    nitrate: float = field(default=0.0, validator=_share)
    other_salt_kg: float | None = field(default=None, validator=optional(and_(_finite, ge(0))))


@frozen
class Reading:
    """pH and temperature of the meat while it ferments; either may be missing."""

    ph: float | None = field(default=None, validator=optional(_ph))
    temperature_c: float | None = field(default=None, validator=optional(_celsius))


@frozen
class AirRead:
    """Temperature and relative humidity of the chamber's air."""

    temperature_c: float = field(validator=_celsius)
    humidity: float | None = field(default=None, validator=optional(_share))


@frozen
class PieceHung:
    """A piece is tagged and hung. Its entry's id is the piece's id; it is about its batch."""

    tag: str = field(validator=min_len(1))
    start_kg: float = field(validator=_above_zero)


@frozen
class PieceWeighed:
    mass_kg: float = field(validator=_above_zero)


@frozen
class ActivityMeasured:
    """Water activity of a sample of the piece."""

    water_activity: float = field(validator=and_(_finite, gt(0), le(1)))


@frozen
class PieceInspected:
    """A look, a sniff and a squeeze. signs: keys of core.release.readiness; empty means nothing wrong was found."""

    signs: tuple[str, ...] = field(default=(), validator=deep_iterable(matches_re("[a-z-]{1,40}")))
    note: str = ""


@frozen
class PieceTakenDown:
    """The end of a piece in the chamber, with the verdict that stood when it was taken down."""

    verdict: str
    note: str = ""


@frozen
class HumidifierCharged:
    water_m3: float = field(validator=_above_zero)
    soda_kg: float = field(default=0.0, validator=and_(_finite, ge(0)))
    tank_m3: float | None = field(default=None, validator=optional(_above_zero))


@frozen
class Withdrawn:
    """Takes back the entry it corrects: it was a mistake and nothing stands in its place."""


@frozen
class Unknown:
    """A kind this version does not know, from a newer daybook. Kept as it came, so that no export loses it."""

    kind: str
    fields: dict[str, Any]


Fact = (
    BatchStarted
    | CureWeighed
    | Reading
    | AirRead
    | PieceHung
    | PieceWeighed
    | ActivityMeasured
    | PieceInspected
    | PieceTakenDown
    | HumidifierCharged
    | Withdrawn
    | Unknown
)

KNOWN: tuple[type[Any], ...] = (
    BatchStarted,
    CureWeighed,
    Reading,
    AirRead,
    PieceHung,
    PieceWeighed,
    ActivityMeasured,
    PieceInspected,
    PieceTakenDown,
    HumidifierCharged,
    Withdrawn,
)


def kind_of(fact: Fact | type[Any]) -> str:
    """The kind's name in the journal: "piece-weighed"."""
    if isinstance(fact, Unknown):
        return fact.kind
    cls = fact if isinstance(fact, type) else type(fact)
    return re.sub(r"(?<!^)(?=[A-Z])", "-", cls.__name__).lower()


KINDS: dict[str, type[Any]] = {kind_of(cls): cls for cls in KNOWN}
