"""Curing salt: how many parts per million of nitrite a dose makes, and how many grams make the parts wanted.

Counted as sodium nitrite and sodium nitrate, going in, on the green weight of the meat block: not on the finished
weight, and not on water, salt or spice.
"""

from __future__ import annotations

import math

from core.mix.curing_salt import CuringSalt
from core.mix.limits import (
    CANADA_LEAST_SALT,
    ION_IN_SODIUM_NITRITE,
    LIMITS,
    WEIGH_IT,
    Limit,
    Method,
    nitrate_cautions,
    nitrite_cautions,
    within,
)
from core.quantities import DOSE_MASS, FRACTION, PARTS_PER_MILLION, RATIO, Amount, Quantity
from core.refusals import OutOfRange
from core.sources import DEFINITION, FSIS_7620_3
from core.working import Figure, Step

# Meat stands in grams beside the cure in every line of working, so that each line can be checked as it is printed.
PPM = 1e-6
METHODS = {
    "comminuted": "ground or chopped meat: sausage",
    "dry-rub": "rubbed on a whole piece: dry cured",
}
HEAVIEST_KG = 10_000.0


def nitrite_ppm(meat_kg: float, cure_kg: float, salt: CuringSalt) -> float:
    """Parts per million of sodium nitrite going in, on the green weight. The bare formula: no limit is held to it."""
    return cure_kg * salt.nitrite / meat_kg / PPM


def nitrate_ppm(meat_kg: float, cure_kg: float, salt: CuringSalt) -> float:
    """Parts per million of sodium nitrate going in, on the green weight. The bare formula: no limit is held to it."""
    return cure_kg * salt.nitrate / meat_kg / PPM


def from_dose(
    meat_kg: float, cure_kg: float, salt: CuringSalt, method: Method, other_salt_kg: float | None = None
) -> tuple[Figure, ...]:
    """What a weighed dose makes.

    meat_kg: green weight of the meat block, above 0. cure_kg: 0 or more. other_salt_kg: table salt added besides.
    Returns nitrite, nitrite as ion, nitrate where there is some, the cure's table salt and, where other_salt_kg is
    given, all table salt. Raises OutOfRange on "dose" the limit of 9 CFR 424.21(c) for the
    method, naming the dose that makes the limit.
    Source: FSIS Directive 7620.3, Processing Inspectors' Calculations Handbook, 1995, ch. 3.
    """
    _require_meat(meat_kg)
    if not 0 <= cure_kg < HEAVIEST_KG:
        raise OutOfRange("dose", "The curing salt must weigh 0 g or more.")
    if other_salt_kg is not None and not 0 <= other_salt_kg < HEAVIEST_KG:
        raise OutOfRange("other_salt_kg", "The other salt must weigh 0 g or more.")
    require_within_limit(meat_kg, cure_kg, salt, method, field="dose")
    return _ingoing(meat_kg, cure_kg, salt, method, other_salt_kg)


def dose_for(
    meat_kg: float,
    wanted_ppm: float,
    salt: CuringSalt,
    method: Method,
    other_salt_kg: float | None = None,
) -> tuple[Figure, ...]:
    """The curing salt that makes the wanted nitrite: the inverse of `from_dose`.

    wanted_ppm: sodium nitrite on the green weight, 0 or more. Returns the curing salt, its share of the meat, then what
    `from_dose` returns. Raises OutOfRange on "wanted" above the limit, on "nitrite" where the salt has none to give.
    """
    _require_meat(meat_kg)
    if not salt.nitrite:
        raise OutOfRange("nitrite", "This curing salt brings no nitrite, so no weight of it makes the nitrite wanted.")
    if not 0 <= wanted_ppm < 1e6:
        raise OutOfRange("wanted", "The nitrite wanted must be 0 ppm or more.")
    cure_kg = wanted_ppm * PPM * meat_kg / salt.nitrite
    require_within_limit(meat_kg, cure_kg, salt, method, field="wanted")
    meat, cure = Amount(meat_kg, DOSE_MASS), Amount(cure_kg, DOSE_MASS)
    cautions = (WEIGH_IT,)
    grams = Figure(
        key="cure",
        name="Curing salt to weigh",
        value=cure_kg,
        quantity=DOSE_MASS,
        working=(
            Step(
                "Nitrite wanted × green weight of meat ÷ nitrite in the cure: {wanted} × {meat} ÷ {strength} = {cure}",
                {
                    "wanted": Amount(wanted_ppm * PPM, PARTS_PER_MILLION),
                    "meat": meat,
                    "strength": Amount(salt.nitrite, FRACTION),
                    "cure": cure,
                },
            ),
        ),
        source=FSIS_7620_3,
        cautions=cautions,
    )
    share = _share("share", "Curing salt, of the meat", "Curing salt ÷ meat", cure_kg, meat_kg)
    return (grams, share, *_ingoing(meat_kg, cure_kg, salt, method, other_salt_kg))


def require_within_limit(meat_kg: float, cure_kg: float, salt: CuringSalt, method: Method, *, field: str) -> None:
    """Guard: a dose over the limit is refused with what it makes, what the limit is and which dose makes it."""
    limit = LIMITS[method]
    checks = (
        ("nitrite", nitrite_ppm(meat_kg, cure_kg, salt), limit.nitrite_ppm, limit.nitrite_words),
        ("nitrate", nitrate_ppm(meat_kg, cure_kg, salt), limit.nitrate_ppm, limit.nitrate_words),
    )
    for name, ppm, limit_ppm, words in checks:
        if not within(ppm, limit_ppm):
            most = largest_dose_kg(meat_kg, salt, limit)
            raise OutOfRange(
                field,
                f"This makes {_ppm(ppm)} of {name}; the limit for {limit.meat} is {_ppm(limit_ppm)} ({words}, "
                f"9 CFR 424.21(c)), which {_rounded_down(most, 1e-5).show_exact()} of this curing salt makes "
                f"({_percent_down(most / meat_kg)} of the meat).",
            )


def largest_dose_kg(meat_kg: float, salt: CuringSalt, limit: Limit) -> float:
    """The weight of curing salt that reaches the nitrite or the nitrate limit, whichever comes first."""
    by_nitrite = limit.nitrite_ppm / salt.nitrite if salt.nitrite else math.inf
    by_nitrate = limit.nitrate_ppm / salt.nitrate if salt.nitrate else math.inf
    return min(by_nitrite, by_nitrate) * PPM * meat_kg


def _require_meat(meat_kg: float) -> None:
    if not 0 < meat_kg < HEAVIEST_KG:
        raise OutOfRange("meat_kg", "The meat must weigh more than 0 g and less than 10 000 kg.")


def _ingoing(
    meat_kg: float, cure_kg: float, salt: CuringSalt, method: Method, other_salt_kg: float | None
) -> tuple[Figure, ...]:
    limit = LIMITS[method]
    nitrite, nitrate = nitrite_ppm(meat_kg, cure_kg, salt), nitrate_ppm(meat_kg, cure_kg, salt)
    own_salt_kg = cure_kg * salt.table_salt
    figures = [
        Figure(
            key="nitrite",
            name="Nitrite going in",
            value=nitrite * PPM,
            quantity=PARTS_PER_MILLION,
            working=_working("nitrite", salt.nitrite, meat_kg, cure_kg, limit),
            source=FSIS_7620_3,
            cautions=nitrite_cautions(nitrite, nitrate, method),
        ),
        _ion(nitrite),
        Figure(
            key="nitrate",
            name="Nitrate going in",
            value=nitrate * PPM,
            quantity=PARTS_PER_MILLION,
            working=_working("nitrate", salt.nitrate, meat_kg, cure_kg, limit),
            source=FSIS_7620_3,
            cautions=nitrate_cautions(nitrate),
        ),
        _share(
            "cure_salt",
            "Table salt the cure brings, of the meat",
            "Table salt in the cure ÷ meat",
            own_salt_kg,
            meat_kg,
        ),
    ]
    if other_salt_kg is not None:
        figures.append(_total_salt(meat_kg, own_salt_kg, other_salt_kg))
    return tuple(figure for figure in figures if figure.key != "nitrate" or salt.nitrate)


def _working(name: str, strength: float, meat_kg: float, cure_kg: float, limit: Limit) -> tuple[Step, ...]:
    part = Amount(cure_kg * strength, DOSE_MASS)
    words, limit_ppm = (
        (limit.nitrite_words, limit.nitrite_ppm) if name == "nitrite" else (limit.nitrate_words, limit.nitrate_ppm)
    )
    return (
        Step(
            f"Curing salt × its {name} = sodium {name}: {{cure}} × {{strength}} = {{part}}",
            {"cure": Amount(cure_kg, DOSE_MASS), "strength": Amount(strength, FRACTION), "part": part},
        ),
        Step(
            f"Sodium {name} ÷ green weight of meat: {{part}} ÷ {{meat}} = {{made}}",
            {
                "part": part,
                "meat": Amount(meat_kg, DOSE_MASS),
                "made": Amount(cure_kg * strength / meat_kg, PARTS_PER_MILLION),
            },
        ),
        Step(
            f"Limit for {limit.meat}, 9 CFR 424.21(c): {words} = {{limit}}",
            {"limit": Amount(limit_ppm * PPM, PARTS_PER_MILLION)},
        ),
    )


def _ion(nitrite: float) -> Figure:
    ion = nitrite * ION_IN_SODIUM_NITRITE * PPM
    return Figure(
        key="nitrite_ion",
        name="The same, as nitrite ion",
        value=ion,
        quantity=PARTS_PER_MILLION,
        working=(
            Step(
                "Sodium nitrite × molar mass of the ion ÷ molar mass of the salt: {made} × {part} = {ion}",
                {
                    "made": Amount(nitrite * PPM, PARTS_PER_MILLION),
                    "part": Amount(ION_IN_SODIUM_NITRITE, RATIO),
                    "ion": Amount(ion, PARTS_PER_MILLION),
                },
            ),
        ),
        source=DEFINITION,
    )


def _share(key: str, name: str, words: str, part_kg: float, meat_kg: float) -> Figure:
    share = Amount(part_kg / meat_kg, FRACTION)
    amounts = {"part": Amount(part_kg, DOSE_MASS), "meat": Amount(meat_kg, DOSE_MASS), "share": share}
    return Figure(key, name, share.value, FRACTION, (Step(words + ": {part} ÷ {meat} = {share}", amounts),), DEFINITION)


def _total_salt(meat_kg: float, own_kg: float, other_kg: float) -> Figure:
    total = Amount((own_kg + other_kg) / meat_kg, FRACTION)
    low = (
        "Canada asks for at least 2.5 % salt in fermented meat (CFIA 2020, quoted in FSIS-GD-2023-0002, p. 38)."
        if total.value < CANADA_LEAST_SALT * (1 - 1e-9)
        else ""
    )
    return Figure(
        key="total_salt",
        name="All table salt, of the meat",
        value=total.value,
        quantity=FRACTION,
        working=(
            Step(
                "(Table salt in the cure + other salt) ÷ meat: ({own} + {other}) ÷ {meat} = {total}",
                {
                    "own": Amount(own_kg, DOSE_MASS),
                    "other": Amount(other_kg, DOSE_MASS),
                    "meat": Amount(meat_kg, DOSE_MASS),
                    "total": total,
                },
            ),
        ),
        source=DEFINITION,
        cautions=(low,) if low else (),
    )


def _ppm(ppm: float) -> str:
    return Amount(ppm * PPM, PARTS_PER_MILLION).show_exact()


def _percent_down(fraction: float) -> str:
    return _rounded_down(fraction, 1e-5, FRACTION).show_exact()


def _rounded_down(value: float, step: float, quantity: Quantity = DOSE_MASS) -> Amount:
    """Never up: the dose a refusal names must itself pass. Five digits survive being shown in six."""
    if value > 0:
        step = max(step, 10.0 ** (math.floor(math.log10(value)) - 4))
    return Amount(math.floor(value / step + 1e-6) * step, quantity)
