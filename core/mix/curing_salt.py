"""Curing salt: what its label says it is made of, and what no curing salt is."""

from __future__ import annotations

from attrs import evolve, frozen

from core.mix.ions import Alkali, Counted, Substance, factor
from core.quantities import FRACTION, Amount
from core.refusals import Missing, OutOfRange
from core.sentence import Sentence

STRONGEST_NITRITE = 0.10  # cures in print hold 0.4 to 6.25 %; ten is more than any, and far below pure nitrite
WEAKEST_NITRITE = 0.001  # below the weakest in print: a fraction typed as a per-cent lands here
COMPLETE_NITRITE = 0.01  # at or below it a cure is made to be all the salt, 20 to 30 g/kg; above, a concentrate
COMPLETE_SHARE = 0.01  # of the meat: a concentrate is used far below, a complete mix far above
IN_PRINT = ((0.004, 0.01), (0.056, 0.065))
"""Complete mixes and concentrates, as far as labels were read (common practice; no published source)."""
TENTH = (0.0056, 0.0065)
"""6.25 with its point a place too far left; 0.6 % may also be a complete mix, so it is doubted, not refused."""

STRENGTH = evolve(FRACTION, key="strength", example_metric="6.25 %", example_us="6.25 %")
DOSE = evolve(FRACTION, key="dose", example_metric="0.25 %", example_us="0.25 %")


NO_SECOND_NITRITE = "Enter the nitrite in the second curing salt: the per-cent on its label, or 0 if it has none."
NO_SECOND_NITRATE = "Enter the nitrate in the second curing salt: the per-cent on its label, or 0 if it has none."


@frozen
class CuringSalt:
    """What the label says: fractions of the salt's own weight, 0 to 1. The rest is taken to be table salt.

    nitrite, nitrate: the salts as the label says, sodium or potassium (nitrite_of, nitrate_of). other: sugar, spice and
    the like. Raises OutOfRange for what no curing salt is: a per-cent given as a fraction, pure nitrite, more than the
    whole.
    """

    nitrite: float
    nitrate: float = 0.0
    other: float = 0.0
    nitrite_of: Alkali = "sodium"
    nitrate_of: Alkali = "sodium"

    def __attrs_post_init__(self) -> None:
        for part in ("nitrite", "nitrate", "other"):
            if not 0 <= getattr(self, part) <= 1:  # a NaN fails this too
                raise OutOfRange(
                    part, "Each part of a curing salt must be between 0 and 100 % of it: 6.25 % is 0.0625."
                )
        if self.nitrite > STRONGEST_NITRITE:
            raise OutOfRange(
                "nitrite",
                Sentence(
                    "{strength} nitrite is not a curing salt: those hold 0.4 to 6.25 %, and stronger nitrite poisons "
                    "in amounts too small to weigh safely. Enter the per-cent on the label.",
                    {"strength": _percent(self.nitrite)},
                ),
            )
        if 0 < self.nitrite < WEAKEST_NITRITE:
            raise OutOfRange(
                "nitrite",
                Sentence(
                    "{strength} nitrite is weaker than any curing salt, which hold 0.4 to 6.25 %. Enter the per-cent "
                    "on the label: 6.25 for 6.25 %.",
                    {"strength": _percent(self.nitrite)},
                ),
            )
        if 0 < self.nitrate < WEAKEST_NITRITE:
            raise OutOfRange(
                "nitrate",
                Sentence(
                    "{strength} nitrate is weaker than any curing salt. Enter the per-cent on the label: 4 for 4 %.",
                    {"strength": _percent(self.nitrate)},
                ),
            )
        if self.nitrite + self.nitrate == 0:
            raise OutOfRange(
                "nitrite", "A curing salt holds nitrite, nitrate or both. Enter the per-cent on the label."
            )
        if self.nitrite + self.nitrate + self.other > 1 + 1e-9:
            raise OutOfRange("nitrate", "The parts of a curing salt cannot be more than 100 % together.")

    def strength(self, substance: Substance, counted: Counted) -> float:
        """Kilograms of nitrite or nitrate to a kilogram of this salt, as a rule counts them."""
        if substance == "nitrite":
            return self.nitrite * factor("nitrite", self.nitrite_of, counted)
        return self.nitrate * factor("nitrate", self.nitrate_of, counted)

    @property
    def concentrate(self) -> bool:
        return self.nitrite > COMPLETE_NITRITE

    @property
    def table_salt(self) -> float:
        return max(0.0, 1 - self.nitrite - self.nitrate - self.other)


def second_salt(nitrite: float | None, nitrate: float | None) -> CuringSalt:
    """A second curing salt by its label. What the label was not asked for is not known, and never 0.

    Raises Missing or OutOfRange on "second_nitrite" or "second_nitrate".
    """
    if nitrite is None:
        raise Missing("second_nitrite", NO_SECOND_NITRITE)
    if nitrate is None:
        raise Missing("second_nitrate", NO_SECOND_NITRATE)
    try:
        return CuringSalt(nitrite, nitrate)
    except OutOfRange as refusal:
        raise OutOfRange(f"second_{refusal.field}", refusal.said) from None


def _percent(fraction: float) -> Amount:
    return Amount(fraction, FRACTION)


def mistaken_for_another(salt: CuringSalt, share: float) -> Sentence | None:
    """A sentence where a concentrate is dosed like a complete home cure, or the other way round; else None.

    share: curing salt to meat, 0 or more. The two kinds differ by about twelve times.
    """
    if not salt.nitrite:
        return None
    told = {"strength": _percent(salt.nitrite)}
    if salt.concentrate and share > COMPLETE_SHARE * (1 + 1e-9):
        return Sentence(
            "Curing salt of {strength} nitrite is a concentrate, about 2.5 g to the kilogram; it is not all the salt.",
            told,
        )
    if not salt.concentrate and 0 < share < COMPLETE_SHARE / 2:
        return Sentence(
            "A cure of {strength} nitrite is a complete mix, made to be all the salt, 20 to 30 g to the kilogram; "
            "dosed like a concentrate it cures about twelve times too little. Look at its label.",
            told,
        )
    return None


def doubted(salt: CuringSalt) -> Sentence | None:
    """A sentence where the label may be misread by a point: a strength that no curing salt in print has; else None."""
    told = {"strength": _percent(salt.nitrite), "tenfold": _percent(salt.nitrite * 10)}
    if TENTH[0] <= salt.nitrite <= TENTH[1]:
        return Sentence(
            "{strength} nitrite is a tenth of what a concentrate holds. Look at the label again: if it says {tenfold}, "
            "this is ten times too much.",
            told,
        )
    if not salt.nitrite or any(low <= salt.nitrite <= high for low, high in IN_PRINT):
        return None
    return Sentence(
        "No curing salt in print holds {strength} nitrite: complete mixes hold 0.4 to 1 %, concentrates 5.6 to 6.5 %. "
        "Look at the label again; only a blend of your own may hold it.",
        told,
    )
