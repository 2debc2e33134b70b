"""What happens to a whole muscle between the mixing table and the hook: it goes into salt, is turned, and comes out."""

from __future__ import annotations

from attrs import evolve, frozen

from core.daybook.facts.fields import asked
from core.mix import salting_sheets as sheets
from core.mix.salting import SaltingMethod, Shape, require_width
from core.quantities import DAYS, TEMPERATURE
from core.sentence import Message
from core.units import DAY_S
from core.worksheet import Number

PLANNED = Number("planned_s", "Days planned", DAYS, DAY_S, 400 * DAY_S, optional=True, help="Empty: as forecast.")
COLDEST = Number("coldest_c", "Coldest it was", TEMPERATURE, -20.0, 45.0, optional=True, help="All the time it lay.")
_WARMEST: Message = "Warmest it was"
WARMEST = evolve(COLDEST, key="warmest_c", label=_WARMEST)
RESTED = Number(
    "rested_s",
    "Rested without salt",
    DAYS,
    0.0,
    400 * DAY_S,
    optional=True,
    help="Of meat that lay in plenty of salt: the last of its days in the cold; 0 if it did not rest.",
)


@frozen
class SaltingBegun:
    """The thickest piece decides. planned_s: None where it lies as long as the reckoning says. temperature_c: of the
    refrigerator, as planned. way: a key of core.release.salted.WAYS, by which its days are told.

    centre_share: how much of its end the salt at the centre is to reach.
    """

    KIND = "salting-begun"

    method: SaltingMethod = asked(sheets.METHOD)
    shape: Shape = asked(sheets.SHAPE)
    thickness_m: float = asked(sheets.THICKNESS)
    temperature_c: float = asked(sheets.COLD)
    width_m: float | None = asked(sheets.WIDTH)
    length_m: float | None = asked(sheets.LENGTH_)
    centre_share: float = asked(sheets.SHARE, default=0.9)
    mass_kg: float | None = asked(sheets.PIECE_MASS_KG)
    planned_s: float | None = asked(PLANNED)
    way: str = "diffusion"

    def __attrs_post_init__(self) -> None:
        require_width(self.shape, self.width_m)


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
    rested_s: float | None = asked(RESTED)
    coldest_c: float | None = asked(COLDEST)
    warmest_c: float | None = asked(WARMEST)


Fact = SaltingBegun | PieceTurned | SaltingEnded
