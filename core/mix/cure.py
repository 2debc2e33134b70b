"""How many parts per million does a dose of curing salt make? What went in, and which part of it counts.

Every method of curing is one and the same fraction: ppm = share × substance ÷ (rest + curing salts). For ground and
rubbed meat the share is 1 and the rest is the meat; for pumped meat the share is the pump and the rest is the brine;
for meat in brine to the end the rest is meat and brine.

How to ask: `how = Curing("eu", "not-heated", "comminuted", on=day)` (`core.mix.rules`; `products_for` lists what may be
chosen), `charge` a `CureMix`. Then `figures(charge, how)`, `dosed(charge, how, wanted_ppm)` and `dosed_for` of
`core.mix.cure_dose`, and `largest_kg(charge, how)` and `check_limits(charge, how)` of `core.mix.limit_check`: every row
with its ppm.
"""

from __future__ import annotations

import math

from attrs import evolve, field, frozen

from core.mix.curing_salt import CuringSalt
from core.mix.ions import Counted, Substance
from core.mix.rule import PART_IN, WET, Base, Method, Rule
from core.quantities import FRACTION, Amount
from core.refusals import Missing, OutOfRange
from core.sentence import Message, Sentence

PPM = 1e-6
HEAVIEST_KG = 10_000.0
LEAST_TAKEN = 0.01  # common practice; no published source; 0.2 for 20 % lands below, and would let in a hundredfold
MOST_TAKEN = 1.0
"""A piece takes up its own weight of brine at the very most."""

NO_PUMP: Message = "Enter the pump: brine in the meat to its green weight, for example 10 %."
NO_PICK_UP: Message = "Enter the pick-up: brine in the meat to its green weight, for example 10 %."
NO_PUMP_AT_ALL: Message = (
    "A pump of {taken} is none: brine in the meat is at least 1 % of its green weight. If {hundredfold} is meant, "
    "enter that."
)
NO_PICK_UP_AT_ALL: Message = (
    "A pick-up of {taken} is none: brine in the meat is at least 1 % of its green weight. If {hundredfold} is meant, "
    "enter that."
)


@frozen
class Dose:
    salt: CuringSalt
    kg: float


@frozen
class CureMix:
    """Kilograms. meat_kg: green weight. other_salt_kg: table salt besides the cure's own, None where not known.

    water_kg and the rest are in the brine where there is one, else in the mix. taken: brine that stays in the meat, to
    its green weight: the pump or the pick-up.
    """

    meat_kg: float
    doses: tuple[Dose, ...] = field(converter=tuple[Dose, ...])
    other_salt_kg: float | None = None
    water_kg: float = 0.0
    sugar_kg: float = 0.0
    other_kg: float = 0.0
    accelerator_kg: float = 0.0
    taken: float | None = None

    @property
    def cure_kg(self) -> float:
        return sum(dose.kg for dose in self.doses)

    @property
    def own_salt_kg(self) -> float:
        return sum(dose.kg * dose.salt.table_salt for dose in self.doses)

    @property
    def besides_kg(self) -> float:
        """All that is neither meat nor curing salt."""
        salt = self.other_salt_kg or 0.0
        return salt + self.water_kg + self.sugar_kg + self.other_kg + self.accelerator_kg

    @property
    def pickle_kg(self) -> float:
        return self.besides_kg + self.cure_kg

    def substance_kg(self, substance: Substance, counted: Counted) -> float:
        return sum(dose.kg * dose.salt.strength(substance, counted) for dose in self.doses)

    def with_first(self, cure_kg: float) -> CureMix:
        """The same with another weight of its first curing salt."""
        first, *others = self.doses
        return evolve(self, doses=(evolve(first, kg=cure_kg), *others))


@frozen
class Basis:
    """share: of what is in the brine. rest_kg: what it is divided by, but for the curing salts, unless cures_count."""

    share: float
    rest_kg: float
    cures_count: bool

    def divisor_kg(self, charge: CureMix) -> float:
        return self.rest_kg + (charge.cure_kg if self.cures_count else 0.0)

    def ppm(self, charge: CureMix, substance_kg: float) -> float:
        return self.share * substance_kg / self.divisor_kg(charge) / PPM


def basis(charge: CureMix, method: Method, on: Base) -> Basis:
    if method in PART_IN:
        taken = charge.taken or 0.0
        return Basis(taken if on == "meat" else taken / (1 + taken), charge.besides_kg, True)
    if method == "immersion":
        return Basis(1.0, charge.meat_kg + charge.besides_kg, True)
    return Basis(1.0, charge.meat_kg + (charge.besides_kg if on == "mixture" else 0.0), on == "mixture")


def require_charge(charge: CureMix, method: Method) -> None:
    """Guard: raises OutOfRange or Missing on the field that cannot stand for this method."""
    if not 0 < charge.meat_kg < HEAVIEST_KG:
        raise OutOfRange("meat_kg", "The meat must weigh more than 0 g and less than 10 000 kg.")
    if not all(0 <= dose.kg < HEAVIEST_KG for dose in charge.doses):
        raise OutOfRange("dose", "The curing salt must weigh 0 g or more.")
    if charge.other_salt_kg is not None and not 0 <= charge.other_salt_kg < HEAVIEST_KG:
        raise OutOfRange("other_salt_kg", "The other salt must weigh 0 g or more.")
    for key in ("water_kg", "sugar_kg", "other_kg", "accelerator_kg"):
        if not 0 <= getattr(charge, key) < HEAVIEST_KG:
            raise OutOfRange(key, "It must weigh 0 g or more.")
    if method in WET and not charge.water_kg > 0:
        raise Missing("water_kg", "Enter the water of the brine, for example 10 kg.")
    if method in PART_IN and charge.taken is None:
        raise Missing("taken", NO_PUMP if method == "pump" else NO_PICK_UP)
    if charge.taken is not None and not 0 < charge.taken <= MOST_TAKEN:
        raise OutOfRange("taken", "Brine in the meat must be more than 0 and at most 100 % of its green weight.")
    if charge.taken is not None and charge.taken < LEAST_TAKEN * (1 - 1e-9):
        raise OutOfRange("taken", _too_little_taken(charge.taken, method))


def _too_little_taken(taken: float, method: Method) -> Sentence:
    told = {"taken": Amount(taken, FRACTION), "hundredfold": Amount(taken * 100, FRACTION)}
    return Sentence(NO_PUMP_AT_ALL if method == "pump" else NO_PICK_UP_AT_ALL, told)


def counted_kg(charge: CureMix, rule: Rule) -> float:
    """What a rule counts, by its own reckoning."""
    if rule.substance == "accelerator":
        return charge.accelerator_kg
    return sum(charge.substance_kg(substance, rule.counted) for substance in rule.substances)


def made_ppm(charge: CureMix, method: Method, rule: Rule) -> float:
    return basis(charge, method, rule.on).ppm(charge, counted_kg(charge, rule))


def dose_making_kg(charge: CureMix, method: Method, rule: Rule, ppm: float) -> float:
    """The weight of the first curing salt at which the rule counts so many ppm, the others as they are.

    0 where the others alone make more; infinite where no weight of it ever makes as many.
    """
    by = basis(charge, method, rule.on)
    first, *others = charge.doses
    strength = sum(first.salt.strength(substance, rule.counted) for substance in rule.substances)
    other = counted_kg(charge.with_first(0.0), rule)
    other_cures_kg = sum(dose.kg for dose in others) if by.cures_count else 0.0
    wanted = ppm * PPM
    gain = by.share * strength - (wanted if by.cures_count else 0.0)
    short = wanted * (by.rest_kg + other_cures_kg) - by.share * other
    if short <= 0:
        return 0.0
    return short / gain if gain > 0 else math.inf
