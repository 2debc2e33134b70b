"""A weight just typed: can that be so, or is it a slip, another piece's tag, or something amiss with the piece?

It is asked about, never refused: what the scale shows is what the scale shows.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from attrs import frozen

from core.dry.curve import Fit
from core.dry.forecast import expected_loss
from core.dry.shrink import WHOLE_GRAMS
from core.quantities import Amount
from core.sentence import Rounded, Sentence

ASKED_FROM = 3.5
"""Deviations from the forecast. Of honest weighings of simulated pieces fewer than one in a hundred lies so far off."""
FITS_WITHIN = 2.5
"""A neighbour's forecast fits when the weight is no further off it."""
OF_ITSELF = 0.003
"""Of the start weight: what string, mould or a wet casing add to the scale's own error."""


@frozen
class Expected:
    """What a piece should weigh now; spread_kg: with the scale's error."""

    mass_kg: float
    spread_kg: float
    last_kg: float

    def deviations(self, mass_kg: float) -> float:
        return (mass_kg - self.mass_kg) / self.spread_kg


def expected(fit: Fit, piece: int, at_s: float) -> Expected:
    """at_s: since hanging, not before its last weighing."""
    hung = fit.pieces[piece]
    loss, spread = expected_loss(fit, piece, at_s)
    off = math.hypot(spread, hung.error, OF_ITSELF) * hung.start_kg
    return Expected((1 - loss) * hung.start_kg, off, (1 - fit.last_known(piece).loss) * hung.start_kg)


def question(piece: str, mass_kg: float, others: Mapping[str, Expected], typed: Mapping[str, float]) -> Sentence | None:
    """What to ask about a weight as it is typed, or None.

    piece: its tag. others: what each hanging piece of the batch should weigh, this one too, by tag. typed: the weights
    already typed in this round, by tag.
    """
    own = others[piece]
    told = {
        "piece": piece,
        "typed": _grams(mass_kg),
        "expected": _grams(own.mass_kg),
        "last": _grams(own.last_kg),
    }
    for other, other_kg in typed.items():
        if other != piece and is_swapped(own, mass_kg, others[other], other_kg):
            return Sentence(
                "{piece} at {typed} and {other} at {earlier} fit the other way round. Were the two swapped?",
                {**told, "other": other, "earlier": _grams(other_kg)},
            )
    if abs(own.deviations(mass_kg)) < ASKED_FROM:
        return None
    fitting = [tag for tag, each in others.items() if tag != piece and abs(each.deviations(mass_kg)) < FITS_WITHIN]
    if fitting:
        nearest = min(fitting, key=lambda tag: abs(others[tag].deviations(mass_kg)))
        told["other"] = nearest
        return Sentence(
            "{typed} is what {other} should weigh; {piece} should weigh about {expected}. Is this {piece}?", told
        )
    if mass_kg > own.last_kg:
        return Sentence("{piece} gained: {last} last time, {typed} now. Check the scale, the tag and the digits.", told)
    if mass_kg < own.mass_kg:
        return Sentence(
            "{piece} lost much more than it did so far: about {expected} was expected, {typed} is typed. Check the "
            "digits and the tag.",
            told,
        )
    return Sentence(
        "{piece} lost less than it did so far: about {expected} was expected, {typed} is typed. Check the digits and "
        "the tag; if it is so, feel for a dry rim.",
        told,
    )


def is_swapped(one: Expected, one_kg: float, other: Expected, other_kg: float) -> bool:
    """Both orders compared: as typed hardly possible, the other way round likely."""
    as_typed = one.deviations(one_kg) ** 2 + other.deviations(other_kg) ** 2
    swapped = one.deviations(other_kg) ** 2 + other.deviations(one_kg) ** 2
    return as_typed > ASKED_FROM**2 and swapped < 2 * FITS_WITHIN**2 and as_typed - swapped > ASKED_FROM**2 / 2


def _grams(mass_kg: float) -> Rounded:
    return Rounded(Amount(round(mass_kg, 3), WHOLE_GRAMS))
