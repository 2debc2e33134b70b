"""What happens to a batch and to its pieces, from the mixing table to the plate."""

from __future__ import annotations

from attrs import field, frozen
from attrs.validators import and_, deep_iterable, gt, in_, le, matches_re, min_len, optional

from core.daybook.facts.fields import above_zero, celsius, finite, not_negative, ph_value, share
from core.daybook.facts.kept import KeptReason
from core.ferment.course import Place
from core.meat import Style
from core.mix.ions import ALKALIS, Alkali


@frozen
class BatchStarted:
    """A batch is begun. Its entry's id is the batch's id. style: "fermented", "slow" or "whole-muscle".

    formula: the entry id of the version it is made by. scaled_by: "meat", "raw", "finished" or "casings"; scaled_to: to
    how many kilograms, or casings.
    """

    KIND = "batch-started"

    name: str = field(validator=min_len(1))
    style: Style
    meat_kg: float = field(validator=above_zero)
    target_loss: float = field(validator=share)
    least_s: float | None = field(default=None, validator=optional(not_negative))
    formula: str | None = None
    scaled_by: str | None = None
    scaled_to: float | None = field(default=None, validator=optional(above_zero))


@frozen
class CureWeighed:
    """The curing salt that went in, 0 kg where none was used. Fractions of the curing salt by its label.

    rules, product, method: keys of `core.mix.rules`; empty in older entries, which means the US chart for the batch's
    kind. nitrite_of, nitrate_of: which salts the label names, sodium or potassium. second_…: a second curing salt,
    its parts None where its label is not known: then what went in is not known either.
    water_kg, sugar_kg and the salts are in the brine where there is one. other_kg: all else in the mix. taken: brine
    that stays in the meat to its green weight, the pump or the pick-up.
    """

    KIND = "cure-weighed"

    cure_kg: float = field(validator=not_negative)
    nitrite: float = field(validator=share)
    nitrate: float = field(default=0.0, validator=share)
    other_salt_kg: float | None = field(default=None, validator=optional(not_negative))
    rules: str = ""
    product: str = ""
    method: str = ""
    nitrite_of: Alkali = field(default="sodium", validator=in_(ALKALIS))
    nitrate_of: Alkali = field(default="sodium", validator=in_(ALKALIS))
    second_kg: float = field(default=0.0, validator=not_negative)
    second_nitrite: float | None = field(default=None, validator=optional(share))
    second_nitrate: float | None = field(default=None, validator=optional(share))
    accelerator_kg: float | None = field(default=None, validator=optional(not_negative))
    water_kg: float | None = field(default=None, validator=optional(not_negative))
    sugar_kg: float | None = field(default=None, validator=optional(not_negative))
    other_kg: float | None = field(default=None, validator=optional(not_negative))
    taken: float | None = field(default=None, validator=optional(share))


@frozen
class Reading:
    """pH and temperature while it ferments; either may be missing. As read, before any correction.

    meter, thermometer: the instruments read on, by their ids. place: where the temperature was read; None (older
    entries) is beside the meat, which is the chamber.
    """

    KIND = "reading"

    ph: float | None = field(default=None, validator=optional(ph_value))
    temperature_c: float | None = field(default=None, validator=optional(celsius))
    meter: str | None = None
    thermometer: str | None = None
    place: Place | None = None


@frozen
class PieceHung:
    """A piece is tagged and hung. Its entry's id is the piece's id; it is about its batch. scale: by its id."""

    KIND = "piece-hung"

    tag: str = field(validator=min_len(1))
    start_kg: float = field(validator=above_zero)
    scale: str | None = None


@frozen
class PieceWeighed:
    """mass_kg: as the scale showed it. scale: by its id."""

    KIND = "piece-weighed"

    mass_kg: float = field(validator=above_zero)
    scale: str | None = None


@frozen
class ActivityMeasured:
    """Water activity of a sample of the piece."""

    KIND = "activity-measured"

    water_activity: float = field(validator=and_(finite, gt(0), le(1)))


@frozen
class PieceInspected:
    """A look, a sniff and a squeeze. signs: keys of core.release.readiness; empty means nothing wrong was found."""

    KIND = "piece-inspected"

    signs: tuple[str, ...] = field(default=(), validator=deep_iterable(matches_re("[a-z-]{1,40}")))
    note: str = ""


@frozen
class PieceTakenDown:
    """The end of a piece in the chamber, with the verdict that stood when it was taken down, and what that rested on.

    edition: of the rules that judged it. An entry without one, from before they were kept, has no reasons either.
    """

    KIND = "piece-taken-down"

    verdict: str
    note: str = ""
    reasons: tuple[KeptReason, ...] = ()
    edition: str = ""


Fact = (
    BatchStarted | CureWeighed | Reading | PieceHung | PieceWeighed | ActivityMeasured | PieceInspected | PieceTakenDown
)
