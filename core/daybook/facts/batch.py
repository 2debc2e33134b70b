"""What happens to a batch and to its pieces, from the mixing table to the plate."""

from __future__ import annotations

from typing import Literal, get_args

from attrs import evolve, field, frozen
from attrs.validators import and_, deep_iterable, ge, in_, le, matches_re, optional

from core.daybook.facts.fields import above_zero, asked, celsius, finite, name, near, not_negative, ph_value, some_share
from core.daybook.facts.kept import KeptReason
from core.ferment.course import Place
from core.meat import LOSS_HELP, MOST_LOSS, USUAL_LOSS, Style
from core.mix import cure_boxes as cure
from core.mix.ions import ALKALIS, Alkali
from core.quantities import DAYS, LENGTH, LOSS, PH, PIECE_MASS, TEMPERATURE, WATER_ACTIVITY
from core.units import DAY_S
from core.usual import FERMENT_C
from core.worksheet import Number

MEAT = evolve(cure.MEAT, low=0.05, high=500.0)
TARGET_LOSS = Number("target_loss", "Loss to reach", LOSS, 0.05, 0.7, default=USUAL_LOSS, help=LOSS_HELP)
LEAST = Number(
    "least_s", "Least days hanging", DAYS, 0.0, 1000 * DAY_S, optional=True, help="Leave empty if you set none."
)
PIECE = Number("mass_kg", "Weight", PIECE_MASS, 0.01, 60.0)
HUNG = evolve(PIECE, key="start_kg", help="As it goes into the chamber; losses are counted from here.")
THICK = Number(
    "diameter_m",
    "Diameter or thickness",
    LENGTH,
    0.005,
    0.5,
    optional=True,
    help="Through its middle, the short way.",
)
BEFORE = evolve(PIECE, key="before_kg", label="Weight before")
AFTER = evolve(PIECE, key="after_kg", label="Weight of what hangs on")
ACTIVITY = Number("water_activity", "Water activity", WATER_ACTIVITY, 0.3, 1.0, help="Of a sample from the middle.")
MEAT_PH = Number("ph", "pH", PH, 3.0, 8.0, optional=True, help="Of the meat, not the room.")
MEAT_C = Number("temperature_c", "Temperature", TEMPERATURE, -10.0, 60.0, optional=True, usual=FERMENT_C)

Casing = Literal["natural", "collagen", "fibrous", "membrane", "none"]
CountedFrom = Literal["filled", "fermented"]
Went = Literal["thrown-away", "used-otherwise"]
Fate = Literal["eaten", "sold", "cut", "tested", "thrown-away"]


@frozen
class BatchStarted:
    """A batch is begun. Its entry's id is the batch's id. style: "fermented", "slow" or "whole-muscle".

    formula: the entry id of the version it is made by. scaled_by: "meat", "raw", "finished" or "casings"; scaled_to: to
    how many kilograms, or casings: such a batch weighs what that comes to.
    """

    KIND = "batch-started"

    name: str = field(validator=name)
    style: Style
    meat_kg: float = asked(MEAT, holds=near(MEAT))
    target_loss: float = asked(TARGET_LOSS, holds=and_(finite, ge(0.01), le(MOST_LOSS)))
    least_s: float | None = asked(LEAST)
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
    nitrite: float = asked(cure.NITRITE)
    nitrate: float = asked(cure.NITRATE, default=0.0)
    other_salt_kg: float | None = asked(cure.OTHER_SALT)
    rules: str = ""
    product: str = ""
    method: str = ""
    nitrite_of: Alkali = field(default="sodium", validator=in_(ALKALIS))
    nitrate_of: Alkali = field(default="sodium", validator=in_(ALKALIS))
    second_kg: float = asked(cure.SECOND_WEIGHED, default=0.0)
    second_nitrite: float | None = asked(cure.SECOND_LABEL, default=None)
    second_nitrate: float | None = asked(cure.SECOND_LABEL_NITRATE, default=None)
    accelerator_kg: float | None = asked(cure.ACCELERATOR_WEIGHED, default=None)
    water_kg: float | None = asked(cure.WATER, default=None)
    sugar_kg: float | None = asked(cure.SUGAR_WEIGHED)
    other_kg: float | None = asked(cure.OTHER)
    taken: float | None = asked(cure.TAKEN_UP, default=None)


@frozen
class Reading:
    """pH and temperature while it ferments; either may be missing. As read, before any correction.

    meter, thermometer: the instruments read on, by their ids. place: where the temperature was read; None (older
    entries) is beside the meat, which is the chamber.
    """

    KIND = "reading"

    ph: float | None = asked(MEAT_PH, holds=ph_value)
    temperature_c: float | None = asked(MEAT_C, holds=celsius)
    meter: str | None = None
    thermometer: str | None = None
    place: Place | None = None


@frozen
class PieceHung:
    """A piece is tagged and hung. Its entry's id is the piece's id; it is about its batch. scale: by its id.

    counted_from: of a piece that sours, whether start_kg was read when it was filled or after it fermented; None where
    nobody said. place: where in the chamber, in the words of whoever hung it.
    """

    KIND = "piece-hung"

    tag: str = field(validator=name)
    start_kg: float = asked(HUNG, holds=near(HUNG))
    scale: str | None = None
    diameter_m: float | None = asked(THICK)
    casing: Casing | None = None
    counted_from: CountedFrom | None = None
    place: str = ""


@frozen
class PieceWeighed:
    """mass_kg: as the scale showed it. scale: by its id."""

    KIND = "piece-weighed"

    mass_kg: float = asked(PIECE, holds=near(PIECE))
    scale: str | None = None


@frozen
class PieceCut:
    """A part is cut off, the rest hangs on. As the scale showed both. scale: by its id."""

    KIND = "piece-cut"

    before_kg: float = asked(BEFORE, holds=near(BEFORE))
    after_kg: float = asked(AFTER, holds=near(AFTER))
    scale: str | None = None


@frozen
class ActivityMeasured:
    """Water activity of a sample of the piece."""

    KIND = "activity-measured"

    water_activity: float = asked(ACTIVITY, holds=some_share)


@frozen
class PieceInspected:
    """A look, a sniff and a squeeze. signs: keys of core.release.readiness; empty means nothing wrong was found."""

    KIND = "piece-inspected"

    signs: tuple[str, ...] = field(default=(), validator=deep_iterable(matches_re("[a-z-]{1,40}")))
    note: str = ""


@frozen
class PieceTakenDown:
    """The end of a piece in the chamber, with the verdict that stood when it was taken down, and what that rested on.

    edition: of the rules that judged it. An entry without one, from before they were kept, has no reasons either. fate:
    what became of it; None where nobody said.
    """

    KIND = "piece-taken-down"

    verdict: str
    note: str = ""
    reasons: tuple[KeptReason, ...] = ()
    edition: str = ""
    fate: Fate | None = None


@frozen
class BatchEnded:
    """A batch of which nothing was hung is given up. went: what became of its meat."""

    KIND = "batch-ended"

    went: Went = field(validator=in_(get_args(Went)))
    note: str = ""


Fact = (
    BatchStarted
    | CureWeighed
    | Reading
    | PieceHung
    | PieceWeighed
    | PieceCut
    | ActivityMeasured
    | PieceInspected
    | PieceTakenDown
    | BatchEnded
)
