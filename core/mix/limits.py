"""How much nitrite and nitrate may go in, by whose rule, and what the neighbours' rules say of the same dose.

Everything is in parts per million of the sodium salt on the green weight of the meat, unless it says ion.
"""

from __future__ import annotations

from typing import Literal

from attrs import frozen

from core.sources import CFR_424_21C, Source

Method = Literal["comminuted", "dry-rub"]

# Molar masses from the standard atomic weights N 14.007, O 15.999, Na 22.98976928, K 39.0983.
NITRITE_ION_MOLAR = 14.007 + 2 * 15.999
NITRATE_ION_MOLAR = 14.007 + 3 * 15.999
SODIUM_MOLAR = 22.98976928
POTASSIUM_MOLAR = 39.0983
ION_IN_SODIUM_NITRITE = NITRITE_ION_MOLAR / (NITRITE_ION_MOLAR + SODIUM_MOLAR)
ION_IN_POTASSIUM_NITRITE = NITRITE_ION_MOLAR / (NITRITE_ION_MOLAR + POTASSIUM_MOLAR)
ION_IN_SODIUM_NITRATE = NITRATE_ION_MOLAR / (NITRATE_ION_MOLAR + SODIUM_MOLAR)
ION_IN_POTASSIUM_NITRATE = NITRATE_ION_MOLAR / (NITRATE_ION_MOLAR + POTASSIUM_MOLAR)

OUNCES_IN_100_LB = 1600
SLACK = 5e-4
"""Limits are inclusive, and held to the precision of the weights they are printed in: the rule says ¼ oz to 100 lb, and
an ounce weighed out as 28.35 g is 0.002 % more than one. One part in 2000 is far below what any kitchen scale tells."""


@frozen
class Limit:
    """What 9 CFR 424.21(c) allows for one method. It prints ounces to 100 lb; parts per million follow from them."""

    meat: str
    nitrite_words: str
    nitrite_ppm: float
    nitrate_words: str
    nitrate_ppm: float
    source: Source = CFR_424_21C


LIMITS: dict[Method, Limit] = {
    "comminuted": Limit(
        meat="chopped meat",
        nitrite_words="¼ oz to 100 lb",
        nitrite_ppm=0.25 / OUNCES_IN_100_LB * 1e6,
        nitrate_words="2¾ oz to 100 lb",
        nitrate_ppm=2.75 / OUNCES_IN_100_LB * 1e6,
    ),
    "dry-rub": Limit(
        meat="dry-cured meat",
        nitrite_words="1 oz to 100 lb",
        nitrite_ppm=1 / OUNCES_IN_100_LB * 1e6,
        nitrate_words="3½ oz to 100 lb",
        nitrate_ppm=3.5 / OUNCES_IN_100_LB * 1e6,
    ),
}

EU_NITRITE_ION_PPM = 80.0  # Reg. (EU) 2023/2108, row 08.3.1, not heat-treated, from 9 October 2025
EU_NITRATE_ION_PPM = 90.0
US_FINISHED_PPM = 200.0  # 9 CFR 424.21(c): nitrite left in the finished product
CANADA_MOST_PPM = 200.0  # nitrite and nitrate together, on the whole raw mixture
CANADA_LEAST_PPM = 100.0  # with at least 2.5 % salt, in fermented meat (CFIA 2020, quoted in FSIS-GD-2023-0002, p. 38)
CANADA_LEAST_SALT = 0.025
BOTULISM_LEAST_PPM = 50.0  # FSIS-GD-2023-0002, p. 38: 50 ppm of nitrite, or a water activity of at most 0.92

WEIGH_IT = "Nitrite can poison: weigh the curing salt, never spoon it, and keep it apart from table salt."
LABEL_FIRST = "The label of your curing salt and the law where you are come before this figure."


def within(ppm: float, limit_ppm: float) -> bool:
    return ppm <= limit_ppm * (1 + SLACK)


def nitrite_cautions(nitrite_ppm: float, nitrate_ppm: float, method: Method) -> tuple[str, ...]:
    """What to say beside a dose that the US limit allows."""
    said = [WEIGH_IT, LABEL_FIRST]
    if nitrite_ppm * ION_IN_SODIUM_NITRITE > EU_NITRITE_ION_PPM:
        said.append(
            "The EU is stricter: since 9 October 2025 it allows 80 mg/kg counted as nitrite ion, about 120 ppm as "
            "sodium nitrite, in meat that is not heat-treated (Reg. (EU) 2023/2108; some traditional products have "
            "rows of their own)."
        )
    if not within(nitrite_ppm + nitrate_ppm, CANADA_MOST_PPM):
        said.append(
            "Canada is stricter: nitrite and nitrate together may be at most 200 ppm, counted on the whole raw mixture."
        )
    if not within(nitrite_ppm, US_FINISHED_PPM):
        said.append(
            "In the US no more than 200 ppm of nitrite may be left in the finished product, whatever went in; only a "
            "laboratory can show it (9 CFR 424.21(c))."
        )
    if method == "dry-rub":
        said.append("Bacon has lower limits of its own and takes no nitrate in the US (9 CFR 424.22(b)).")
    return (*said, *_weak_dose_cautions(nitrite_ppm, nitrate_ppm))


def _weak_dose_cautions(nitrite_ppm: float, nitrate_ppm: float) -> tuple[str, ...]:
    if nitrite_ppm < BOTULISM_LEAST_PPM * (1 - SLACK):
        return (
            "Below 50 ppm nitrite is not counted on against botulism; the water activity must then come down to 0.92 "
            "or less (FSIS-GD-2023-0002, p. 38). Ask a food-safety authority before drying with so little.",
        )
    if nitrite_ppm + nitrate_ppm < CANADA_LEAST_PPM * (1 - SLACK):
        return (
            "Canada asks for at least 100 ppm of nitrite and nitrate, with at least 2.5 % salt, in fermented meat "
            "(CFIA 2020, quoted in FSIS-GD-2023-0002, p. 38).",
        )
    return ()


def nitrate_cautions(nitrate_ppm: float) -> tuple[str, ...]:
    if nitrate_ppm * ION_IN_SODIUM_NITRATE <= EU_NITRATE_ION_PPM:
        return ()
    return (
        "The EU is stricter: since 9 October 2025 it allows 90 mg/kg counted as nitrate ion, about 123 ppm as sodium "
        "nitrate, in meat that is not heat-treated (Reg. (EU) 2023/2108; some traditional products have rows of their "
        "own).",
    )
