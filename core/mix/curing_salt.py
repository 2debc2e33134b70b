"""Curing salt: what its label says it is made of, and what no curing salt is."""

from __future__ import annotations

from attrs import evolve, frozen

from core.quantities import FRACTION, Amount
from core.refusals import OutOfRange

STRONGEST_NITRITE = 0.10  # cures in print hold 0.4 to 6.25 %; ten is more than any, and far below pure nitrite
WEAKEST_NITRITE = 0.001  # below the weakest in print: a fraction typed as a per-cent lands here

STRENGTH = evolve(FRACTION, key="strength", example_metric="6.25 %", example_us="6.25 %")
DOSE = evolve(FRACTION, key="dose", example_metric="0.25 %", example_us="0.25 %")


@frozen
class CuringSalt:
    """What the label says: fractions of the salt's own weight, 0 to 1. The rest is taken to be table salt.

    nitrite, nitrate: as sodium nitrite and sodium nitrate. other: sugar, spice and the like.
    Raises OutOfRange for what no curing salt is: a per-cent given as a fraction, pure nitrite, more than the whole.
    """

    nitrite: float
    nitrate: float = 0.0
    other: float = 0.0

    def __attrs_post_init__(self) -> None:
        for part in ("nitrite", "nitrate", "other"):
            if not 0 <= getattr(self, part) <= 1:  # a NaN fails this too
                raise OutOfRange(
                    part, "Each part of a curing salt must be between 0 and 100 % of it: 6.25 % is 0.0625."
                )
        if self.nitrite > STRONGEST_NITRITE:
            raise OutOfRange(
                "nitrite",
                f"{_percent(self.nitrite)} nitrite is not a curing salt: those hold 0.4 to 6.25 %, and stronger "
                "nitrite poisons in amounts too small to weigh safely. Enter the per-cent on the label.",
            )
        if 0 < self.nitrite < WEAKEST_NITRITE:
            raise OutOfRange(
                "nitrite",
                f"{_percent(self.nitrite)} nitrite is weaker than any curing salt, which hold 0.4 to 6.25 %. Enter the "
                "per-cent on the label: 6.25 for 6.25 %.",
            )
        if self.nitrite + self.nitrate == 0:
            raise OutOfRange(
                "nitrite", "A curing salt holds nitrite, nitrate or both. Enter the per-cent on the label."
            )
        if self.nitrite + self.nitrate + self.other > 1 + 1e-9:
            raise OutOfRange("nitrate", "The parts of a curing salt cannot be more than 100 % together.")

    @property
    def table_salt(self) -> float:
        return max(0.0, 1 - self.nitrite - self.nitrate - self.other)


def _percent(fraction: float) -> str:
    return Amount(fraction, FRACTION).show_exact()
