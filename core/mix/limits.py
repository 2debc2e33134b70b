"""The limits a dose is held to, and what the neighbours' rules say of the same dose.

Everything is in parts per million of the sodium salt on the green weight of the meat, unless it says ion.
"""

from __future__ import annotations

from attrs import frozen

from core.mix.cure import CureMix, basis
from core.mix.ions import (
    ION_IN_POTASSIUM_NITRATE,
    ION_IN_POTASSIUM_NITRITE,
    ION_IN_SODIUM_NITRATE,
    ION_IN_SODIUM_NITRITE,
)
from core.mix.rule import WHOLE, Method
from core.mix.rules import Curing, rules_for
from core.mix.rules_ca import LEAST_PPM, MOST_PPM
from core.mix.rules_us import FINISHED_PPM
from core.sentence import Message, Sentence

SLACK = 5e-4
"""Limits are inclusive, and held to the precision of the weights they are printed in: the rule says ¼ oz to 100 lb, and
an ounce weighed out as 28.35 g is 0.002 % more than one. One part in 2000 is far below what any kitchen scale tells."""


@frozen
class Limit:
    """What 9 CFR 424.21(c) allows for one method: the US rules' own two rows, side by side."""

    nitrite_ppm: float
    nitrate_ppm: float


def _us(method: Method) -> Limit:
    most = {row.substance: row.most_ppm or 0.0 for row in rules_for("us", "meat", method)}
    return Limit(most["nitrite"], most["nitrate"])


_METHODS: tuple[Method, ...] = ("comminuted", "dry-rub", "dry-salting", "immersion", "pick-up", "pump")
LIMITS: dict[Method, Limit] = {method: _us(method) for method in _METHODS}

EU_NITRITE_ION_PPM = 80.0  # Reg. (EU) 2023/2108, row 08.3.1, not heat-treated, from 9 October 2025
EU_NITRATE_ION_PPM = 90.0
US_FINISHED_PPM = FINISHED_PPM  # 9 CFR 424.21(c): nitrite left in the finished product
CANADA_MOST_PPM = MOST_PPM  # nitrite and nitrate together, on the whole raw mixture
CANADA_LEAST_PPM = (
    LEAST_PPM  # with at least 2.5 % salt, in fermented meat (CFIA 2020, quoted in FSIS-GD-2023-0002, p. 38)
)
CANADA_LEAST_SALT = 0.025
BOTULISM_LEAST_PPM = 50.0  # FSIS-GD-2023-0002, p. 38: 50 ppm of nitrite, or a water activity of at most 0.92

WEIGH_IT: Message = "Nitrite can poison: weigh the curing salt, never spoon it, and keep it apart from table salt."
LABEL_FIRST: Message = "The label of your curing salt and the law where you are come before this figure."
EU_NITRITE_IS_STRICTER: Message = (
    "The EU is stricter: since 9 October 2025 it allows 80 mg/kg counted as nitrite ion, about 120 ppm as "
    "sodium nitrite, in meat that is not heat-treated (Reg. (EU) 2023/2108; some traditional products have "
    "rows of their own; counted here on the green weight)."
)
CANADA_IS_STRICTER: Message = (
    "Canada is stricter: nitrite and nitrate together may be at most 200 ppm, counted on the whole raw mixture."
)
US_LEAVES_LESS: Message = (
    "In the US no more than 200 ppm of nitrite may be left in the finished product, whatever went in; only a "
    "laboratory can show it (9 CFR 424.21(c))."
)
US_BACON_IS_LOWER: Message = (
    "Bacon has lower limits of its own (9 CFR 424.22(b)) and takes no nitrate (9 CFR 424.21(c)) in the US."
)
NOT_COUNTED_ON: Message = (
    "Below 50 ppm nitrite is not counted on against botulism; the water activity must then come down to 0.92 "
    "or less (FSIS-GD-2023-0002, p. 38). Ask a food-safety authority before drying with so little."
)
CANADA_ASKS_FOR_MORE: Message = (
    "Canada asks for at least 100 ppm of nitrite and nitrate on the whole raw mixture, with at least 2.5 % "
    "salt, in fermented meat (CFIA 2020, quoted in FSIS-GD-2023-0002, p. 38)."
)
EU_NITRATE_IS_STRICTER: Message = (
    "The EU is stricter: since 9 October 2025 it allows 90 mg/kg counted as nitrate ion, about 123 ppm as sodium "
    "nitrate, in meat that is not heat-treated (Reg. (EU) 2023/2108; some traditional products have rows of their "
    "own; counted here on the green weight)."
)


def within(ppm: float, limit_ppm: float) -> bool:
    return ppm <= limit_ppm * (1 + SLACK)


def reaches(ppm: float, least_ppm: float) -> bool:
    return ppm >= least_ppm * (1 - SLACK)


@frozen
class _GoingIn:
    """A charge as each neighbour counts it. nitrite, nitrate: ppm of the sodium salts on the green weight. both: as
    weighed, on the whole raw mixture."""

    nitrite: float
    nitrate: float
    both: float


def _going_in(charge: CureMix, method: Method) -> _GoingIn:
    green, mixture = basis(charge, method, "meat"), basis(charge, method, "mixture")
    both_kg = charge.substance_kg("nitrite", "weighed") + charge.substance_kg("nitrate", "weighed")
    return _GoingIn(
        nitrite=green.ppm(charge, charge.substance_kg("nitrite", "sodium")),
        nitrate=green.ppm(charge, charge.substance_kg("nitrate", "sodium")),
        both=mixture.ppm(charge, both_kg),
    )


def nitrite_cautions(charge: CureMix, how: Curing) -> tuple[Sentence, ...]:
    """What to say beside a dose that its own rules allow: what the others would say, and where it is weak.

    Each is counted its own way: by Canada on the whole raw mixture, by the others on the green weight.
    """
    said, ppm = [Sentence(WEIGH_IT), Sentence(LABEL_FIRST)], _going_in(charge, how.method)
    nitrite_ppm = ppm.nitrite
    if how.rules != "eu" and nitrite_ppm * ION_IN_SODIUM_NITRITE > EU_NITRITE_ION_PPM:
        said.append(Sentence(EU_NITRITE_IS_STRICTER))
    if how.rules != "ca" and not within(ppm.both, CANADA_MOST_PPM):
        said.append(Sentence(CANADA_IS_STRICTER))
    if how.rules == "us" and not within(nitrite_ppm, US_FINISHED_PPM):
        said.append(Sentence(US_LEAVES_LESS))
    if how.rules == "us" and how.product == "meat" and how.method in WHOLE:
        said.append(Sentence(US_BACON_IS_LOWER))
    if how.product == "home-mix" and not within(nitrite_ppm, LIMITS[how.method].nitrite_ppm):
        said.append(Sentence("For an inspected plant the limit would be lower (9 CFR 424.21(c))."))
    return (*said, *_weak_dose_cautions(ppm))


def _weak_dose_cautions(ppm: _GoingIn) -> tuple[Sentence, ...]:
    if not reaches(ppm.nitrite, BOTULISM_LEAST_PPM):
        return (Sentence(NOT_COUNTED_ON),)
    if not reaches(ppm.both, CANADA_LEAST_PPM):
        return (Sentence(CANADA_ASKS_FOR_MORE),)
    return ()


def nitrate_cautions(charge: CureMix, how: Curing) -> tuple[Sentence, ...]:
    nitrate_ppm = _going_in(charge, how.method).nitrate
    if how.rules == "eu" or nitrate_ppm * ION_IN_SODIUM_NITRATE <= EU_NITRATE_ION_PPM:
        return ()
    return (Sentence(EU_NITRATE_IS_STRICTER),)


__all__ = [
    "BOTULISM_LEAST_PPM",
    "CANADA_LEAST_PPM",
    "CANADA_LEAST_SALT",
    "CANADA_MOST_PPM",
    "EU_NITRATE_ION_PPM",
    "EU_NITRITE_ION_PPM",
    "ION_IN_POTASSIUM_NITRATE",
    "ION_IN_POTASSIUM_NITRITE",
    "ION_IN_SODIUM_NITRATE",
    "ION_IN_SODIUM_NITRITE",
    "LABEL_FIRST",
    "LIMITS",
    "SLACK",
    "US_FINISHED_PPM",
    "WEIGH_IT",
    "Limit",
    "Method",
    "nitrate_cautions",
    "nitrite_cautions",
    "within",
]
