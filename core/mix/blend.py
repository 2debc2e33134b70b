"""A dose too small for the scale: the cure is blended with salt, and a larger weight of the blend is taken.

Two weighings then carry an error, of the cure into the blend and of the blend into the meat. The blend is made large
enough that both together stay within ±5 %.
"""

from __future__ import annotations

import math

from attrs import evolve, frozen

from core.mix.weighing import ALLOWED, SLACK, finer_division_kg, weighable
from core.quantities import CURE_MASS, DOSE_MASS, FRACTION, Amount, Quantity
from core.refusals import OutOfRange
from core.sentence import Message, Rounded, Sentence
from core.sources import COMMON_PRACTICE, DEFINITION
from core.working import Figure

STEP = 10
"""The cure of a blend goes up by so many divisions: a number that is easily weighed."""
MOST_TRIES = 2000
SALT_IN_BLEND = evolve(DOSE_MASS, key="salt_in_blend", rounds="up")
"""Less salt would make the blend stronger than the dose wants."""
KEEP_APART: Message = (
    "The blend is a curing salt, not table salt: label it with its nitrite, keep it apart, and count its salt."
)
MIX_WELL: Message = (
    "Mix it long and dry. Grains of different size part again: stir it again before each use "
    "(common practice; no published source)."
)


@frozen
class Blend:
    """cure_kg and salt_kg make it; take_kg of it is the dose for this batch, in which lie taken_salt_kg of salt."""

    cure_kg: float
    salt_kg: float
    take_kg: float
    worst: float

    @property
    def strength(self) -> float:
        """Curing salt in the blend, 0 to 1."""
        return self.cure_kg / (self.cure_kg + self.salt_kg)

    @property
    def dose_kg(self) -> float:
        return self.take_kg * self.strength

    @property
    def taken_salt_kg(self) -> float:
        return self.take_kg - self.dose_kg


def blend_for(dose_kg: float, salt_kg: float, division_kg: float) -> Blend:
    """The least blend from which the dose can be weighed to ±5 % on a scale of this division, and no more than it.

    dose_kg: curing salt wanted. salt_kg: the batch's plain salt, the most that the blend may bring along. Raises
    OutOfRange on "salt_kg" where even all of the salt makes no weight that this scale can weigh.
    """
    _require(dose_kg, salt_kg, division_kg)
    take_kg = math.floor((dose_kg + salt_kg) / division_kg + 1e-6) * division_kg
    if take_kg > dose_kg:
        for steps in range(1, MOST_TRIES):
            found = _blend(dose_kg, take_kg, division_kg, steps * STEP)
            if found.worst <= ALLOWED * (1 + SLACK):
                return found
    raise OutOfRange(
        "salt_kg",
        Sentence(
            "Even with all of its salt the dose weighs only {all}, too little for a scale that shows {shows}. Use one "
            "that shows {finer}, or make a larger batch.",
            {
                "all": Rounded(Amount(dose_kg + salt_kg, CURE_MASS), 3),
                "shows": Rounded(Amount(division_kg, CURE_MASS), 3),
                "finer": Amount(finer_division_kg(dose_kg), CURE_MASS),
            },
        ),
    )


def _blend(dose_kg: float, take_kg: float, division_kg: float, cure_divisions: int) -> Blend:
    cure_kg = cure_divisions * division_kg
    salt_kg = math.ceil(cure_kg * (take_kg / dose_kg - 1) / division_kg - 1e-6) * division_kg
    total = cure_kg + salt_kg
    # The worst is one division too much cure, too little salt and too much blend; or all three the other way.
    most = (take_kg + division_kg) * (cure_kg + division_kg) / total
    least = (take_kg - division_kg) * (cure_kg - division_kg) / total
    return Blend(cure_kg, salt_kg, take_kg, max(most - dose_kg, dose_kg - least) / dose_kg)


def _require(dose_kg: float, salt_kg: float, division_kg: float) -> None:
    if not 0 < dose_kg < 1000:
        raise OutOfRange("dose_kg", "The curing salt wanted must weigh more than 0 g and less than 1000 kg.")
    if not 0 <= salt_kg < 1000:
        raise OutOfRange("salt_kg", "The salt must weigh 0 g or more and less than 1000 kg.")
    if not 0 < division_kg <= 1:
        raise OutOfRange("division_kg", "What the scale shows must be more than 0 g and at most 1 kg.")


def preblend(dose_kg: float, salt_kg: float, division_kg: float) -> tuple[Figure, ...]:
    """How to make the blend and how much of it to take: the take first. Raises OutOfRange as `blend_for`."""
    made = blend_for(dose_kg, salt_kg, division_kg)
    amounts = {
        "dose": Amount(dose_kg, DOSE_MASS),
        "all": Amount(dose_kg + salt_kg, DOSE_MASS),
        "salt": Amount(salt_kg, DOSE_MASS),
        "division": Amount(division_kg, DOSE_MASS),
        "cure": Amount(made.cure_kg, CURE_MASS),
        "blended": Amount(made.salt_kg, SALT_IN_BLEND),
        "total": Amount(made.cure_kg + made.salt_kg, DOSE_MASS),
        "strength": Amount(made.strength, FRACTION),
        "take": Amount(made.take_kg, CURE_MASS),
        "made": Amount(made.dose_kg, CURE_MASS),
        "left": Amount(max(0.0, salt_kg - made.taken_salt_kg), DOSE_MASS),
        "brought": Amount(made.taken_salt_kg, DOSE_MASS),
        "worst": Amount(made.worst, FRACTION),
    }
    needless = (
        ("This scale can weigh the dose as it is: no blend is needed.",)
        if weighable(dose_kg, division_kg, never_up=True)
        else ()
    )
    return (
        _figure(
            "take",
            "Take of the blend",
            made.take_kg,
            CURE_MASS,
            (KEEP_APART, *needless),
            Sentence("Curing salt + salt of the batch, at most: {dose} + {salt} = {all}", amounts),
            Sentence("Down to what the scale shows: {take}", amounts),
            Sentence("Curing salt in it: {take} × {strength} = {made}", amounts),
        ),
        _figure(
            "blend_cure",
            "Curing salt into the blend",
            made.cure_kg,
            CURE_MASS,
            (MIX_WELL,),
            Sentence(
                "The least, in steps of ten divisions, with which both weighings stay within ±5 %: {cure}", amounts
            ),
        ),
        _figure(
            "blend_salt",
            "Salt into the blend",
            made.salt_kg,
            SALT_IN_BLEND,
            (),
            Sentence("{cure} × ({take} ÷ {dose} − 1), up to what the scale shows: {blended}", amounts),
            Sentence("Curing salt in the blend: {cure} ÷ {total} = {strength}", amounts),
        ),
        _figure(
            "salt_left",
            "Plain salt still to weigh",
            amounts["left"].value,
            DOSE_MASS,
            (),
            Sentence("Salt of the batch less what the blend brings: {salt} − {brought} = {left}", amounts),
        ),
        _figure(
            "blend_worst",
            "Out at worst",
            made.worst,
            FRACTION,
            (),
            Sentence("Every weighing one division out, all the same way ({division}): {worst}", amounts),
        ),
    )


def _figure(
    key: str, name: Message, value: float, quantity: Quantity, cautions: tuple[Message, ...], *steps: Sentence
) -> Figure:
    source = COMMON_PRACTICE if key == "blend_cure" else DEFINITION
    return Figure(key, name, value, quantity, steps, source, cautions)
