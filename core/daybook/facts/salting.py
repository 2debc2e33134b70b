"""What happens to a whole muscle between the mixing table and the hook: it goes into salt, is turned, and comes out."""

from __future__ import annotations

from attrs import field, frozen
from attrs.validators import and_, ge, in_, le, optional

from core.daybook.facts.fields import above_zero, celsius, finite, not_negative, share
from core.mix.salting import SALTING_METHODS, SHAPES, SaltingMethod, Shape

side = and_(finite, ge(0.001), le(1))


@frozen
class SaltingBegun:
    """The thickest piece decides. planned_s: None where it lies as long as the reckoning says. temperature_c: of the
    refrigerator, as planned. way: a key of core.release.salted.WAYS, by which its days are told.

    centre_share: how much of its end the salt at the centre is to reach.
    """

    KIND = "salting-begun"

    method: SaltingMethod = field(validator=in_(tuple(SALTING_METHODS)))
    shape: Shape = field(validator=in_(tuple(SHAPES)))
    thickness_m: float = field(validator=side)
    temperature_c: float = field(validator=celsius)
    width_m: float | None = field(default=None, validator=optional(side))
    length_m: float | None = field(default=None, validator=optional(side))
    centre_share: float = field(default=0.9, validator=share)
    mass_kg: float | None = field(default=None, validator=optional(above_zero))
    planned_s: float | None = field(default=None, validator=optional(above_zero))
    way: str = "diffusion"


@frozen
class PieceTurned:
    """Turned over in its bag, or overhauled in its salt."""

    KIND = "piece-turned"

    note: str = ""


@frozen
class SaltingEnded:
    """Out of the salt, rinsed or brushed off, rested, and ready to be hung.

    rested_s: the last of its time, without salt about it. coldest_c, warmest_c: of all that time. None is not known.
    """

    KIND = "salting-ended"

    note: str = ""
    rested_s: float | None = field(default=None, validator=optional(not_negative))
    coldest_c: float | None = field(default=None, validator=optional(celsius))
    warmest_c: float | None = field(default=None, validator=optional(celsius))


Fact = SaltingBegun | PieceTurned | SaltingEnded
