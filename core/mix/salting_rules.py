"""What the trade goes by, days for each kilogram or inch, and the least days the law asks of hams and shoulders."""

from __future__ import annotations

import math
from typing import Literal

from attrs import frozen

from core.quantities import COUNT, DAYS, FRACTION, LENGTH, MASS, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence, Value
from core.sources import (
    CFR_COUNTRY_HAM,
    CFR_DRY_CURED_HAM,
    CFR_HAM_SALTING,
    COMMON_PRACTICE,
    EU_PICKLED_HAM,
    FARM_PORK,
    KEMP_1968,
    VT_458_223,
    Source,
)
from core.units import DAY_S, INCH_M, POUND_KG
from core.working import Figure

Cut = Literal["ham", "shoulder"]
CUTS: dict[str, Message] = {"ham": "ham", "shoulder": "shoulder"}
Product = Literal["country", "dry-cured"]
PRODUCTS: dict[str, Message] = {"country": "country ham or shoulder", "dry-cured": "dry-cured ham or shoulder"}

TURN_EVERY_DAYS: dict[str, float] = {"weighed": 2.0, "excess": 7.0}
"""A bag is turned, salted meat is overhauled: taken out, rubbed again where bare and put back. Common practice."""


@frozen
class ByMass:
    """Days for a kilogram, beginning with `first`."""

    key: str
    name: Message
    days_a_kg: float
    words: Message
    source: Source
    first: float = 0.0
    low_days_a_kg: float | None = None
    cautions: tuple[Message, ...] = ()


HAM_METHOD_3: tuple[Message, ...] = (
    "Only under all of the method’s conditions: a mixture of at least 70 % salt, on the meat all that time; then rest, "
    "until salting and rest together are 2 days a pound and 40 days at least; at 2 to 7 °C (35 to 45 °F) for the first "
    "1½ days a pound, then no warmer than 16 °C (60 °F); in a bag at least 6 lb of salt to 100 lb; and dried after it "
    "by the method’s own table.",
    "The days go by the heaviest ham of the lot.",
)
"""Former 9 CFR 318.10(c)(3)(iv), method 3, and its general rules."""
BY_MASS = (
    ByMass("rule_dry_lb", "Dry salt, by weight", 1.5 / POUND_KG, "1½ days a pound", VT_458_223),
    ByMass(
        "rule_ham_method",
        "Dry salt, US ham method 3",
        1.5 / POUND_KG,
        "1½ days a pound, 28 at least",
        CFR_HAM_SALTING,
        cautions=HAM_METHOD_3,
    ),
    ByMass(
        "rule_ham_rest",
        "Salting and rest, US ham method 3",
        2 / POUND_KG,
        "2 days a pound, 40 at least",
        CFR_HAM_SALTING,
        cautions=HAM_METHOD_3,
    ),
    ByMass("rule_kentucky", "Country ham, Kentucky", 2 / POUND_KG, "2 days a pound", KEMP_1968),
    ByMass("rule_pickle", "Sweet pickle", 4 / POUND_KG, "3½ to 4 days a pound", FARM_PORK, 0.0, 3.5 / POUND_KG),
    ByMass("rule_jambon", "Salted ham without nitrite, EU", 1.0, "3 days and 1 a kilogram", EU_PICKLED_HAM, 3.0),
)
LEAST_OF: dict[str, float] = {"rule_ham_method": 28.0, "rule_ham_rest": 40.0}
DAYS_AN_INCH = 7.0


def by_rule(mass_kg: float | None, thickness_m: float | None) -> tuple[Figure, ...]:
    """Days in salt by each rule that the weight or the thickness lets one use.

    mass_kg: above 0, at most 60. thickness_m: above 0, at most 1. Raises OutOfRange on either.
    """
    figures: list[Figure] = []
    if thickness_m is not None:
        if not 0 < thickness_m <= 1:
            raise OutOfRange("thickness_m", "The thickness must be more than 0 and at most 1 m (39 in).")
        figures.append(_by_inch(thickness_m))
    if mass_kg is not None:
        if not 0 < mass_kg <= 60:
            raise OutOfRange("mass_kg", "The weight must be more than 0 and at most 60 kg (132 lb).")
        figures.extend(_by_mass(mass_kg, rule) for rule in BY_MASS)
    return tuple(figures)


def _by_inch(thickness_m: float) -> Figure:
    days_s = DAYS_AN_INCH * thickness_m / INCH_M * DAY_S
    amounts = {"thick": Amount(thickness_m, LENGTH), "days": Amount(days_s, DAYS)}
    step = Sentence("7 days an inch of thickness: {thick} → {days}", amounts)
    return Figure("rule_inch", "Dry salt, by thickness", days_s, DAYS, (step,), VT_458_223)


def _by_mass(mass_kg: float, rule: ByMass) -> Figure:
    days = max(rule.first + rule.days_a_kg * mass_kg, LEAST_OF.get(rule.key, 0.0))
    amounts = {"mass": Amount(mass_kg, MASS), "days": Amount(days * DAY_S, DAYS)}
    step = Sentence("{rule}: {mass} → {days}", {"rule": Sentence(rule.words), **amounts})
    low = None if rule.low_days_a_kg is None else rule.low_days_a_kg * mass_kg * DAY_S
    high = None if low is None else days * DAY_S
    return Figure(rule.key, rule.name, days * DAY_S, DAYS, (step,), rule.source, rule.cautions, low, high)


# 9 CFR 319.106(c)(5)-(6).
SALT_AND_EQUALISE_DAYS: dict[Cut, float] = {"ham": 45.0, "shoulder": 25.0}
IN_ALL_DAYS: dict[tuple[Product, Cut], float] = {
    ("country", "ham"): 70.0,
    ("country", "shoulder"): 50.0,
    ("dry-cured", "ham"): 55.0,
    ("dry-cured", "shoulder"): 40.0,
}
LEAST_SALT = 0.04
LEAST_BRINE = 0.10
NOT_SAFETY: Message = (
    "These are what the US asks before it may be called so. They do not show that it is safe or keeps without cold "
    "(FSIS-GD-2023-0002, p. 48)."
)
FROM_MEMORY: Message = (
    "The total for dry-cured ham and shoulder is from memory, not checked: read the rule before you rely on it."
)
WARMEST: Message = "It must not be warmer than 35 °C (95 °F) inside while it dries, but in its natural climate."
LOCAL: Message = "The law where you are, and a food-safety authority, come before this figure."


def minimums(cut: Cut, product: Product, salted_s: float, in_all_s: float) -> tuple[Figure, ...]:
    """What is still to go of the least days in salt and rest, and of the least days in all. Both 0 or more, in seconds.

    Raises OutOfRange on "salted_s" or "in_all_s".
    """
    for field, given in (("salted_s", salted_s), ("in_all_s", in_all_s)):
        if not 0 <= given < math.inf:
            raise OutOfRange(field, "The days cannot be less than nothing.")
    if in_all_s < salted_s:
        raise OutOfRange("in_all_s", "The days in all hold the days in salt: they cannot be fewer.")
    salted = _least(
        "salt_to_go", "Salting and rest, still to go", SALT_AND_EQUALISE_DAYS[cut], salted_s, CFR_COUNTRY_HAM
    )
    remembered = product == "dry-cured"
    of_all = CFR_DRY_CURED_HAM if remembered else CFR_COUNTRY_HAM
    in_all = _least("days_to_go", "In all, still to go", IN_ALL_DAYS[product, cut], in_all_s, of_all)
    memory = (FROM_MEMORY,) if remembered else ()
    return _cautioned(salted, (NOT_SAFETY, LOCAL)), _cautioned(in_all, (*memory, WARMEST))


def _least(key: str, name: Message, least_days: float, had_s: float, source: Source) -> Figure:
    left_s = max(0.0, least_days * DAY_S - had_s)
    amounts = {"least": Amount(least_days * DAY_S, DAYS), "had": Amount(had_s, DAYS), "left": Amount(left_s, DAYS)}
    words = "{least} at the least, {had} had: {left} to go"
    return Figure(key, name, left_s, DAYS, (Sentence(words, amounts),), source)


def _cautioned(each: Figure, cautions: tuple[Message, ...]) -> Figure:
    return Figure(each.key, each.name, each.value, each.quantity, each.working, each.source, cautions)


HAS_BRINE: Message = (
    "Made without nitrite or nitrate it must have 10 % brine or a water activity of at most 0.92: this has it."
)
TOO_LITTLE_BRINE: Message = (
    "Made without nitrite or nitrate it must have 10 % brine or a water activity of at most 0.92: this has too little "
    "brine."
)


def brine_strength(salt: float, water: float) -> Figure:
    """Salt as a share of salt and water in the finished ham. salt, water: shares of its weight, above 0.

    Raises OutOfRange on "salt" or "water".
    """
    if not 0 < salt < 1:
        raise OutOfRange("salt", "The salt must be more than 0 and less than 100 %.")
    if not 0 < water < 1:
        raise OutOfRange("water", "The water must be more than 0 and less than 100 %.")
    strength = salt / (salt + water)
    amounts = {"salt": Amount(salt, FRACTION), "water": Amount(water, FRACTION), "brine": Amount(strength, FRACTION)}
    enough = strength >= LEAST_BRINE * (1 - 1e-9)
    cautions: list[Message] = [HAS_BRINE if enough else TOO_LITTLE_BRINE]
    if salt < LEAST_SALT * (1 - 1e-9):
        cautions.append("Country ham must hold at least 4 % salt inside; this has less.")
    step = Sentence("Salt ÷ (salt + water): {salt} ÷ ({salt} + {water}) = {brine}", amounts)
    return Figure("brine", "Brine strength", strength, FRACTION, (step,), CFR_COUNTRY_HAM, tuple(cautions))


def turns(reader: str, planned_days: float) -> Figure:
    """How often to turn or overhaul it."""
    every = Amount(TURN_EVERY_DAYS[reader] * DAY_S, DAYS)
    count = Amount(max(0, math.ceil(planned_days / TURN_EVERY_DAYS[reader]) - 1), COUNT)
    what = Sentence(
        "Turn the bag over" if reader == "weighed" else "Overhaul it: rub salt where it is bare, and put it back"
    )
    told: dict[str, Value] = {"what": what, "every": every, "count": count}
    step = Sentence(
        "{what} every {every}, {count} time in all", told, plural="{what} every {every}, {count} times in all"
    )
    return Figure("turn_every", "Turn it every", every.value, DAYS, (step,), COMMON_PRACTICE)
