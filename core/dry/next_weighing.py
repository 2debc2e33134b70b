"""When to weigh a piece next: once the scale will tell more than the forecast does, and before it may be done."""

from __future__ import annotations

import math
from typing import Literal

from attrs import evolve, frozen

from core.dry.curve import Fit, fit
from core.dry.doubt import OF_ITSELF, expected
from core.dry.forecast import expected_loss, forecast
from core.sentence import Message, Sentence
from core.units import DAY_S

Why = Literal["pace", "target", "long ago", "done"]
WHY: dict[Why, Message] = {
    "pace": "By then its weight tells more than the forecast does.",
    "target": "By then it may have lost its target.",
    "long ago": "A week without a weight is long enough to miss a rim going dry.",
    "done": "It has lost its target by weight.",
}
TEACHES = 1.0
"""So many times what a weight may be off must the forecast be unsure by, before a weight tells more."""
LONGEST_DAYS = 7
"""Common practice; no published source."""
SLOWED = 2.5
"""Deviations above what was expected at which a piece counts as slowed."""


@frozen
class NextWeighing:
    """at_s: since hanging."""

    at_s: float
    why: Why

    @property
    def says(self) -> Sentence:
        return Sentence(WHY[self.why])


def next_weighing(known: Fit, piece: int, target: float) -> NextWeighing:
    """The first whole day after its last weighing that there is a reason for."""
    last_s = known.last_known(piece).at_s
    found = forecast(known, piece, target)
    if found.is_there:
        return NextWeighing(last_s, "done")
    for days in range(1, LONGEST_DAYS):
        at_s = last_s + days * DAY_S
        if found.earliest_s is not None and found.earliest_s <= at_s:
            return NextWeighing(at_s, "target")
        if _unsure(known, piece, at_s) > TEACHES * math.hypot(known.pieces[piece].error, OF_ITSELF):
            return NextWeighing(at_s, "pace")
    return NextWeighing(last_s + LONGEST_DAYS * DAY_S, "long ago")


def _unsure(known: Fit, piece: int, at_s: float) -> float:
    """By how much the loss expected then is less sure than the one of the last weighing."""
    now_s = known.last_known(piece).at_s
    (_, then), (_, now) = (expected_loss(known, piece, each) for each in (at_s, now_s))
    return math.sqrt(max(then * then - now * now, 0.0)) if known.passed[piece] else then


def has_slowed(known: Fit, piece: int) -> bool:
    """Whether its last weighing is heavier than those before it, and its batch, let expect: a rim gone dry does that.

    False with fewer than three weighings.
    """
    hung = known.pieces[piece]
    weighings = sorted(hung.weighings)
    if len(weighings) < 3:
        return False
    before = evolve(hung, weighings=tuple(weighings[:-1]))
    others = [before if place == piece else each for place, each in enumerate(known.pieces)]
    at_s, mass_kg = weighings[-1]
    return expected(fit(others, known.air, mix=known.mix), piece, at_s).deviations(mass_kg) > SLOWED
