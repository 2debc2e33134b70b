"""A scale under one check mass or two: how far is it out, and what is the least it may be trusted to weigh?"""

from __future__ import annotations

from collections.abc import Mapping

from attrs import evolve

from core.chamber.checks import NO_CORRECTION, Check, Correction, Point, Word, checked, judge, through_two
from core.quantities import DOSE_MASS, FRACTION, RATIO, Amount
from core.refusals import Missing, OutOfRange
from core.sentence import Message, Sentence
from core.sources import DEFINITION
from core.usual import SHOWN_KG
from core.working import Figure
from core.worksheet import Number

ALLOWED_SHARE = 0.005
"""Half a per-cent of the mass, or one division where that is more (common practice; no published source)."""
SHARES = (0.02, 0.05)
HEAVIEST_KG = 999.999

TARE = "Scale warm and level, out of draught, set to zero before; a check mass is only as good as its own class."
SPAN = "Check near what you weigh: with the cure's few grams on a scale for grams, with meat on one for kilograms."


MASS = Number("mass_kg", "Check mass", DOSE_MASS, 1e-6, HEAVIEST_KG)
READING = Number("reading_kg", "Scale reads", DOSE_MASS, 1e-6, HEAVIEST_KG)
DIVISION = Number("division_kg", "Last digit it shows", DOSE_MASS, 1e-6, 1.0, default=1e-4, usual=SHOWN_KG)
OTHER_MASS = evolve(MASS, key="other_mass_kg", label="Second check mass", optional=True)
OTHER_READING = evolve(READING, key="other_reading_kg", label="Scale reads under it", optional=True)


def scale_check(
    mass_kg: float,
    reading_kg: float,
    division_kg: float,
    other_mass_kg: float | None = None,
    other_reading_kg: float | None = None,
) -> Check:
    """The scale's straight-line error: through the tared zero and one mass, or through two masses.

    All in kilograms; masses and readings above 0, division above 0 and no more than a mass. Gives the error at each
    mass, the factor, and the least weight that is right to ±2 % and to ±5 % as the scale stands, uncorrected: left out
    where its error alone is more. Raises OutOfRange, or Missing where only half of the second mass is given.
    """
    _require(mass_kg, reading_kg, division_kg)
    point = Point(reading_kg, mass_kg, division_kg / 2)
    second = _second(mass_kg, reading_kg, division_kg, other_mass_kg, other_reading_kg)
    correction = through_two(second or Point(0.0, 0.0, division_kg / 2), point)
    if correction.gain <= 0:
        raise OutOfRange("other_reading_kg", "The heavier mass must read more: see whether the two were swapped.")
    points = (point, second) if second else (point,)
    word = _worst(points, division_kg)
    figures = (
        _error(point, "", _out_of_reach(correction, division_kg)),
        *((_error(second, "other_"),) if second else ()),
        _factor(word, correction, points),
        *_offset(correction, second),
        *(figure for share in SHARES for figure in _smallest(correction, division_kg, share)),
    )
    sentence = Sentence(JUDGED[word], {"division": Amount(division_kg, DOSE_MASS)})
    return checked(word, sentence, correction, figures)


def smallest_kg(correction: Correction, division_kg: float, share: float) -> float | None:
    """The least weight that reads right to ± share of itself, or None where none does.

    The display rounds by half a division at the tare and again under the load; both are taken at their worst, and the
    found error as it stands.
    """
    at_zero, per_mass = _as_it_stands(correction)
    if per_mass >= share * (1 - 1e-9):
        return None
    return (division_kg + at_zero) / (share - per_mass)


def _as_it_stands(correction: Correction) -> tuple[float, float]:
    """Size of the error at zero, in kilograms, and of the error to the kilogram."""
    return abs(correction.offset / correction.gain), abs(1 / correction.gain - 1)


def _require(mass_kg: float, reading_kg: float, division_kg: float) -> None:
    MASS.check(mass_kg)
    READING.check(reading_kg)
    DIVISION.check(division_kg)
    if division_kg > mass_kg:
        raise OutOfRange("division_kg", "The last digit must be no more than the check mass.")


def _second(
    mass_kg: float, reading_kg: float, division_kg: float, other_mass_kg: float | None, other_reading_kg: float | None
) -> Point | None:
    if other_mass_kg is None and other_reading_kg is None:
        return None
    if other_mass_kg is None:
        raise Missing("other_mass_kg", "Enter what the second check mass weighs, or leave its reading empty as well.")
    if other_reading_kg is None:
        raise Missing("other_reading_kg", "Enter what the scale showed under the second mass, or leave its mass empty.")
    OTHER_MASS.check(other_mass_kg)
    OTHER_READING.check(other_reading_kg)
    if other_mass_kg == mass_kg:
        raise OutOfRange("other_mass_kg", "The second check mass must differ from the first.")
    if other_reading_kg == reading_kg:
        raise OutOfRange("other_reading_kg", "The second reading must differ from the first.")
    return Point(other_reading_kg, other_mass_kg, division_kg / 2)


def allowed_kg(mass_kg: float, division_kg: float) -> float:
    return max(division_kg, ALLOWED_SHARE * mass_kg)


def _worst(points: tuple[Point, ...], division_kg: float) -> Word:
    words = {judge(point.reading - point.truth, allowed_kg(point.truth, division_kg)) for point in points}
    order: tuple[Word, ...] = ("replace", "adjust", "accept")
    return next(word for word in order if word in words)


JUDGED: Mapping[Word, Message] = {
    "accept": (
        "Accept: it is within one division ({division}) or 0.5 % of the mass, whichever is more (common practice; no "
        "published source)."
    ),
    "adjust": (
        "Adjust: it is outside one division ({division}) or 0.5 % of the mass, whichever is more (common practice; no "
        "published source). Set it with its own calibrating mass, or let the correction be applied."
    ),
    "replace": (
        "Replace: it is more than three times outside one division ({division}) or 0.5 % of the mass, whichever is "
        "more (common practice; no published source)."
    ),
}


def _out_of_reach(correction: Correction, division_kg: float) -> tuple[Sentence, ...]:
    return tuple(
        Sentence(
            "As it stands its error alone is more than {share}: no weight is right to that as read.",
            {"share": Amount(share, FRACTION)},
        )
        for share in SHARES
        if smallest_kg(correction, division_kg, share) is None
    )


def _error(point: Point, prefix: str, cautions: tuple[Sentence, ...] = ()) -> Figure:
    amounts = {
        "reading": Amount(point.reading, DOSE_MASS),
        "mass": Amount(point.truth, DOSE_MASS),
        "error": Amount(point.reading - point.truth, DOSE_MASS),
        "share": Amount(point.reading / point.truth - 1, FRACTION),
    }
    return Figure(
        key=f"{prefix}error",
        name="Error under the second mass" if prefix else "Error under the check mass",
        value=point.reading - point.truth,
        quantity=DOSE_MASS,
        working=(
            Sentence("{reading} − {mass} = {error}", amounts),
            Sentence("Of the mass: {error} ÷ {mass} = {share}", amounts),
        ),
        source=DEFINITION,
        cautions=cautions if prefix else (*cautions, Sentence(TARE), Sentence(SPAN)),
    )


def _factor(word: Word, correction: Correction, points: tuple[Point, ...]) -> Figure:
    amounts = {"gain": Amount(correction.gain, RATIO)}
    for prefix, point in zip(("", "other_"), points, strict=False):
        amounts |= {
            f"{prefix}mass": Amount(point.truth, DOSE_MASS),
            f"{prefix}reading": Amount(point.reading, DOSE_MASS),
        }
    step = (
        Sentence("({other_mass} − {mass}) ÷ ({other_reading} − {reading}) = {gain}", amounts)
        if len(points) == 2
        else Sentence("{mass} ÷ {reading} = {gain}", amounts)
    )
    needed = correction.gain != 1 or correction.offset != 0
    cautions = () if needed else (NO_CORRECTION,)
    name = "Multiply every reading by" if word == "adjust" else "What it should read ÷ what it reads"
    return Figure("gain", name, correction.gain, RATIO, (step,), DEFINITION, cautions)


def _offset(correction: Correction, second: Point | None) -> tuple[Figure, ...]:
    if second is None:
        return ()
    amounts = {
        "mass": Amount(second.truth, DOSE_MASS),
        "gain": Amount(correction.gain, RATIO),
        "reading": Amount(second.reading, DOSE_MASS),
        "offset": Amount(correction.offset, DOSE_MASS),
    }
    step = Sentence("{mass} − {gain} × {reading} = {offset}", amounts)
    return (Figure("offset", "Then add", correction.offset, DOSE_MASS, (step,), DEFINITION),)


def _smallest(correction: Correction, division_kg: float, share: float) -> tuple[Figure, ...]:
    least_kg = smallest_kg(correction, division_kg, share)
    if least_kg is None:
        return ()
    at_zero, per_mass = _as_it_stands(correction)
    percent = round(share * 100)
    amounts = {
        "division": Amount(division_kg, DOSE_MASS),
        "zero": Amount(at_zero, DOSE_MASS),
        "share": Amount(share, FRACTION),
        "error": Amount(per_mass, FRACTION),
        "least": Amount(least_kg, DOSE_MASS),
    }
    return (
        Figure(
            key=f"smallest_{percent}",
            name=Sentence("Least it weighs to ±{share}", {"share": amounts["share"]}),
            value=least_kg,
            quantity=DOSE_MASS,
            working=(
                Sentence(
                    "The display rounds by half a division at the tare and half under the load: {division}.", amounts
                ),
                Sentence(
                    "The error it was found with is {zero} at nothing and {error} of the weight, as it stands.", amounts
                ),
                Sentence("({division} + {zero}) ÷ ({share} − {error}) = {least}", amounts),
            ),
            source=DEFINITION,
        ),
    )
