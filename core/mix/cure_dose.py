"""What a dose of curing salt makes of the meat, and which dose makes the parts per million wanted."""

from __future__ import annotations

from attrs import evolve

from core.mix.cure import HEAVIEST_KG, PPM, CureMix, basis, dose_making_kg, require_charge
from core.mix.cure_figures import ingoing, reckoned_by, share_figure
from core.mix.cure_notes import doubt
from core.mix.licence import Licence, require_allowed
from core.mix.limits import WEIGH_IT
from core.mix.measures import CURE_SHARE
from core.mix.rule import PART_IN, WHOLES, Rule
from core.mix.rules import Curing
from core.quantities import CURE_MASS, DOSE_MASS, FRACTION, PARTS_PER_MILLION, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from core.sources import DEFINITION
from core.working import Figure


def figures(charge: CureMix, how: Curing, licence: Licence | None = None) -> tuple[Figure, ...]:
    """What a charge makes.

    Returns nitrite, nitrite as ion, nitrate and its ion where there is some, both together where the rules count so,
    ascorbate where there is some, the cure's table salt and, where the other salt is known, all table salt.
    licence: the exception by which more than the rules allow may go in, up to its own figure. A charge over a limit
    that it does not lift, or over the ceiling that none lifts, raises OutOfRange on "dose".
    Source: FSIS Directive 7620.3, Processing Inspectors' Calculations Handbook, 1995, ch. 3.
    """
    require_charge(charge, how.method)
    require_allowed(charge, how, licence, field="dose")
    return ingoing(charge, how, licence)


def dosed(charge: CureMix, how: Curing, wanted_ppm: float, licence: Licence | None = None) -> CureMix:
    """The charge with so much of its first curing salt that all nitrite together is the wanted, as sodium nitrite.

    wanted_ppm: on what the rules divide by, the green weight or the whole raw mixture; 0 or more. licence: as in
    `figures`. Raises OutOfRange on "wanted" or "nitrite".
    """
    first = charge.doses[0].salt
    require_charge(charge, how.method)
    if not first.nitrite:
        raise OutOfRange("nitrite", "This curing salt brings no nitrite, so no weight of it makes the nitrite wanted.")
    if not 0 <= wanted_ppm < 1e6:
        raise OutOfRange("wanted", "The nitrite wanted must be 0 ppm or more, and less than 1,000,000 ppm.")
    cure_kg = dose_making_kg(charge, how.method, as_sodium_nitrite(how), wanted_ppm)
    if not cure_kg < HEAVIEST_KG:
        raise OutOfRange("wanted", "No weight of this curing salt brings so much nitrite into the meat this way.")
    made = charge.with_first(cure_kg)
    require_allowed(made, how, licence, field="wanted")
    return made


def dosed_for(charge: CureMix, how: Curing, wanted_ppm: float) -> tuple[Figure, ...]:
    """The curing salt to weigh, its share of the meat, then what `figures` returns. Raises as `dosed` does."""
    made = dosed(charge, how, wanted_ppm)
    cure_kg = made.doses[0].kg
    grams = Figure(
        key="cure",
        name="Curing salt to weigh",
        value=cure_kg,
        quantity=CURE_MASS,
        working=(_back(made, how, wanted_ppm),),
        source=reckoned_by(how),
        cautions=(WEIGH_IT, *doubt(made)),
    )
    if how.method in PART_IN:
        share = share_figure(
            "share", "Curing salt, of the brine", "Curing salt ÷ brine", cure_kg, made.pickle_kg, CURE_SHARE
        )
    else:
        share = share_figure(
            "share", "Curing salt, of the meat", "Curing salt ÷ meat", cure_kg, made.meat_kg, CURE_SHARE
        )
    return (grams, share, *ingoing(made, how))


def to_weigh(charge: CureMix) -> Figure:
    """The curing salt in grams, beside a dose thought of as a share or as ppm: it is grams that are weighed."""
    cure = Amount(charge.doses[0].kg, CURE_MASS)
    amounts = {
        "share": Amount(charge.doses[0].kg / charge.meat_kg, CURE_SHARE),
        "meat": Amount(charge.meat_kg, DOSE_MASS),
        "cure": cure,
    }
    step = Sentence("To the green weight: {share} × {meat} = {cure}", amounts)
    return Figure("cure", "Curing salt to weigh", cure.value, CURE_MASS, (step,), DEFINITION)


def as_sodium_nitrite(how: Curing) -> Rule:
    """A row that counts sodium nitrite alone, on what the rules divide by."""
    return evolve(how.held[0], substance="nitrite", counted="sodium")


BACK_BESIDE_THE_OTHER: Message = (
    "Curing salt that makes it {on_whole}, beside the other: "
    "({wanted} × {rest} − {share} × {other}) ÷ ({share} × {strength}) = {cure}"
)
BACK_COUNTED: Message = (
    "Curing salt that makes it {on_whole}, its own weight counted: "
    "({wanted} × {rest}) ÷ ({share} × {strength} − {wanted}) = {cure}"
)
BACK_COUNTED_BESIDE_THE_OTHER: Message = (
    "Curing salt that makes it {on_whole}, its own weight counted: "
    "({wanted} × {rest} − {share} × {other}) ÷ ({share} × {strength} − {wanted}) = {cure}"
)


def _back(made: CureMix, how: Curing, wanted_ppm: float) -> Sentence:
    """The formula turned round. Where the cure's own weight is part of the divisor, it is taken off on both sides."""
    first, *others = made.doses
    by = basis(made, how.method, how.held[0].on)
    other_kg = sum(dose.kg * dose.salt.strength("nitrite", "sodium") for dose in others)
    rest_kg = by.rest_kg + (sum(dose.kg for dose in others) if by.cures_count else 0.0)
    amounts = {
        "wanted": Amount(wanted_ppm * PPM, PARTS_PER_MILLION),
        "meat": Amount(made.meat_kg, DOSE_MASS),
        "rest": Amount(rest_kg, DOSE_MASS),
        "share": Amount(by.share, FRACTION),
        "other": Amount(other_kg, DOSE_MASS),
        "strength": Amount(first.salt.strength("nitrite", "sodium"), FRACTION),
        "cure": Amount(first.kg, CURE_MASS),
    }
    if not by.cures_count and not other_kg:
        return Sentence(
            "Nitrite wanted × green weight of meat ÷ nitrite in the cure: {wanted} × {meat} ÷ {strength} = {cure}",
            amounts,
        )
    counted = BACK_COUNTED_BESIDE_THE_OTHER if other_kg else BACK_COUNTED
    text = counted if by.cures_count else BACK_BESIDE_THE_OTHER
    return Sentence(text, {**amounts, "on_whole": Sentence(WHOLES[how.held[0].on])})
