"""Weighing out: what the scale at hand shows of a dose, how far that may be out, and what is too small for it.

A display rounds by half a division when it is set to nothing and again under the load: a weight read off it is right to
one division. Its own error, found with a check mass, comes on top.
"""

from __future__ import annotations

import math

from attrs import evolve

from core.quantities import CURE_MASS, DOSE_MASS, FRACTION, Amount, Quantity
from core.refusals import OutOfRange
from core.sentence import Message, Rounded, Sentence, Value
from core.sources import DEFINITION
from core.traced import traced
from core.usual import SHOWN_KG
from core.working import Figure
from core.worksheet import Number

ALLOWED = 0.05
"""A dose is to be weighed to ±5 % of itself (common practice; no published source)."""
SLACK = 1e-9
STEPPED: Message = "{wanted} in steps of {division}, to the nearest: {aimed}"
STEPPED_DOWN: Message = "{wanted} in steps of {division}, down, for more would be the greater harm: {aimed}"
USUAL_DIVISION_KG = 0.001
DIVISION = Number(
    "division_kg",
    "The scale shows steps of",
    DOSE_MASS,
    1e-6,
    0.1,
    default=USUAL_DIVISION_KG,
    help="The smallest step of its last digit, for example 1 g or 0.1 g.",
    usual=SHOWN_KG,
)
HALVES = "The display rounds by half a division at nothing and half under the load: {division}."


def aim_kg(wanted_kg: float, division_kg: float, *, never_up: bool = False) -> float:
    """The wanted weight as the scale shows it; never_up for what must not be overdosed."""
    _require_division(division_kg)
    steps = wanted_kg / division_kg
    return (math.floor(steps + 1e-6) if never_up else math.floor(steps + 0.5)) * division_kg


def worst(wanted_kg: float, division_kg: float, *, never_up: bool = False) -> float:
    """How far the dose may be out at worst, as a share of it: by rounding what is aimed at, and by reading it."""
    if wanted_kg <= 0:
        return 0.0
    aimed = aim_kg(wanted_kg, division_kg, never_up=never_up)
    return (abs(aimed - wanted_kg) + division_kg) / wanted_kg


def weighable(wanted_kg: float, division_kg: float, *, never_up: bool = False) -> bool:
    return worst(wanted_kg, division_kg, never_up=never_up) <= ALLOWED * (1 + SLACK)


def finer_division_kg(wanted_kg: float) -> float:
    """The coarsest usual division, 1 or 0.1 or 0.01 g and so on, that weighs the dose whatever is rounded."""
    return 10.0 ** math.floor(math.log10(wanted_kg * ALLOWED / 2) + 1e-9)


def refuse_too_small(name: str, wanted_kg: float, division_kg: float, *, never_up: bool = False) -> None:
    """Guard: raises OutOfRange on "mass_kg" for a dose that this scale cannot weigh to ±5 %."""
    if not weighable(wanted_kg, division_kg, never_up=never_up):
        told = _too_small(wanted_kg, division_kg, never_up=never_up) | {"name": name}
        text = (
            "{name}: a scale that shows {shows} may be {out} out on {wanted}. Use one that shows {finer}, or a blend "
            "with salt."
        )
        raise OutOfRange("mass_kg", Sentence(text, told))


def _too_small(wanted_kg: float, division_kg: float, *, never_up: bool) -> dict[str, Value]:
    out = round(worst(wanted_kg, division_kg, never_up=never_up), 2)
    return {
        "shows": Amount(division_kg, DOSE_MASS),
        "out": Amount(out, FRACTION),
        "wanted": Rounded(Amount(wanted_kg, _measure(never_up=never_up)), 3),
        "finer": Amount(finer_division_kg(wanted_kg), DOSE_MASS),
    }


def _measure(*, never_up: bool) -> Quantity:
    return CURE_MASS if never_up else DOSE_MASS


def rounding(wanted_kg: float, division_kg: float, *, never_up: bool = False) -> tuple[Figure, ...]:
    """What to aim at on this scale, what that does to the dose, and how far it may be out at worst.

    wanted_kg: above 0. Raises OutOfRange on "wanted_kg" or "division_kg".
    """
    if not 0 < wanted_kg < math.inf:
        raise OutOfRange("wanted_kg", "The dose must weigh more than 0 g.")
    aimed = aim_kg(wanted_kg, division_kg, never_up=never_up)
    measure = _measure(never_up=never_up)
    amounts = {
        "wanted": Amount(wanted_kg, DOSE_MASS),
        "division": Amount(division_kg, DOSE_MASS),
        "aimed": Amount(aimed, measure),
    }
    wanted, division = traced("wanted", wanted_kg, DOSE_MASS), traced("division", division_kg, DOSE_MASS)
    change = traced("aimed", aimed, measure) / wanted - 1
    out = (traced("off", abs(aimed - wanted_kg), DOSE_MASS) + division) / wanted
    step = Sentence(STEPPED_DOWN if never_up else STEPPED, amounts)
    weigh = Figure("aim", "Weigh", aimed, measure, (step,), DEFINITION)
    if not weighable(wanted_kg, division_kg, never_up=never_up):
        text = "A scale that shows {shows} may be {out} out on {wanted}. Use one that shows {finer}."
        weigh = evolve(weigh, cautions=(Sentence(text, _too_small(wanted_kg, division_kg, never_up=never_up)),))
    return (
        weigh,
        change.figure("change", "What rounding does to the dose", FRACTION),
        out.figure("worst", "Out at worst", FRACTION, before=(Sentence(HALVES, amounts),)),
    )


def difference(wanted_kg: float, actual_kg: float) -> Figure:
    """The actual weight against the wanted one, as a share of it. wanted_kg above 0."""
    share = traced("actual", actual_kg, DOSE_MASS) / traced("wanted", wanted_kg, DOSE_MASS) - 1
    return share.figure("difference", "Difference from the list", FRACTION)


def _require_division(division_kg: float) -> None:
    if not 0 < division_kg <= 1:
        raise OutOfRange("division_kg", "What the scale shows must be more than 0 g and at most 1 kg.")
