"""What meat a batch is of, and what proves it free of trichinella."""

from __future__ import annotations

from attrs import field, frozen
from attrs.validators import in_, optional

from core.daybook.facts.fields import asked
from core.quantities import DAYS, LENGTH, TEMPERATURE
from core.release import cured_readings as cured
from core.release.frozen_pork import LAWS, MEASURED, Law, Measured
from core.release.trichinella import KINDS, PROOFS, Kind, Proof
from core.units import DAY_S
from core.usual import FROZEN_C
from core.worksheet import Number

WARMEST = Number(
    "warmest_c",
    "Warmest it was frozen",
    TEMPERATURE,
    -60.0,
    40.0,
    optional=True,
    help="In all the time that counts.",
    usual=FROZEN_C,
)
LASTED = Number("lasted_s", "Time frozen", DAYS, 0.0, 3650 * DAY_S, optional=True, help="Once it was so cold.")
THICK = Number(
    "thick_m", "Thickness frozen", LENGTH, 0.005, 1.0, optional=True, help="Of the piece, the layer or the box."
)


def _reading(key: str) -> float | None:
    box = cured.BOXES[key]
    assert isinstance(box, Number)
    return asked(box)


@frozen
class MeatNoted:
    """kind: "none", "pork" or "game". proof: "tested", "frozen", "cured" or None. lot, by: as on the paper.

    method: a key of core.release.cured_pork.METHODS. The rest as in core.release.cured_readings; what the batch itself
    tells, its salt and its days, is not asked here.
    """

    KIND = "meat-noted"

    kind: Kind = field(validator=in_(KINDS))
    proof: Proof | None = field(default=None, validator=optional(in_(PROOFS)))
    lot: str = ""
    by: str = ""
    measured: Measured = field(default="product", validator=in_(MEASURED))
    law: Law = field(default="both", validator=in_(LAWS))
    warmest_c: float | None = asked(WARMEST)
    lasted_s: float | None = asked(LASTED)
    thick_m: float | None = asked(THICK)
    method: str = ""
    grind_m: float | None = _reading("grind_m")
    across_m: float | None = _reading("across_m")
    deep_m: float | None = _reading("deep_m")
    held_s: float | None = _reading("held_s")
    held_c: float | None = _reading("held_c")
    smoked_s: float | None = _reading("smoked_s")
    smoked_c: float | None = _reading("smoked_c")
    hot_s: float | None = _reading("hot_s")
    hot_c: float | None = _reading("hot_c")
    rise_s: float | None = _reading("rise_s")
    heaviest_kg: float | None = _reading("heaviest_kg")
    mix_salt: float | None = _reading("mix_salt")
    contact_s: float | None = _reading("contact_s")
    rest_s: float | None = _reading("rest_s")
    lay_c: float | None = _reading("lay_c")
    lay_most_c: float | None = _reading("lay_most_c")
    overhauled: float | None = _reading("overhauled")
    soaked_s: float | None = _reading("soaked_s")
    soaked_c: float | None = _reading("soaked_c")
    brine: float | None = _reading("brine")
    dried_c: float | None = _reading("dried_c")
    bare: str = asked(cured.CHOICES[0], default="not-known")
    unwashed: str = asked(cured.CHOICES[1], default="not-known")
    scheduled: str = asked(cured.CHOICES[2], default="not-known")


Fact = MeatNoted
