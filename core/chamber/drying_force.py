"""How hard does this air dry, in a word?

The steps are our own, common practice; no published source. They are laid so that the printed programmes fall apart
by what they are for: resting a ham faint to gentle, slow sausage gentle, salami moderate, sour sausage brisk, a
ham far on hard.
"""

from __future__ import annotations

import math

from attrs import frozen

from core.quantities import VAPOUR_PRESSURE, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from core.sources import COMMON_PRACTICE

SOURCE = COMMON_PRACTICE


@frozen
class Grade:
    """One step of the scale. from_pa: the drying force from which it holds; to_pa: up to which."""

    word: Message
    meaning: Message
    from_pa: float
    to_pa: float

    @property
    def span(self) -> Sentence:
        """The step as a sentence: "100 Pa to 200 Pa"."""
        amounts = {"low": Amount(self.from_pa, VAPOUR_PRESSURE), "high": Amount(self.to_pa, VAPOUR_PRESSURE)}
        if math.isinf(self.from_pa):
            return Sentence("below {high}", amounts)
        return Sentence("{low} and more" if math.isinf(self.to_pa) else "{low} to {high}", amounts)


_STEPS: tuple[tuple[Message, Message, float], ...] = (
    ("none", "the surface takes up water; it stays wet, and slime and mould follow", -math.inf),
    ("faint", "for fermenting; a drying piece stays moist in it", 0.0),
    ("gentle", "for the first weeks and for thick pieces", 100.0),
    ("moderate", "for drying once the surface has set", 200.0),
    ("brisk", "for sausage that is sour or nearly done; a fresh surface may harden", 350.0),
    ("hard", "for hams far on, or some hours of warmth; else a crust forms and keeps the water in", 500.0),
)
_ENDS = (*(start for _, _, start in _STEPS[1:]), math.inf)
SCALE = tuple(Grade(word, meaning, start, end) for (word, meaning, start), end in zip(_STEPS, _ENDS, strict=True))


def grade(force_pa: float) -> Grade:
    """The step of the scale that a drying force falls on. Raises OutOfRange for what is no number."""
    if not math.isfinite(force_pa):
        raise OutOfRange("force", "The drying force must be a number.")
    return next(each for each in reversed(SCALE) if force_pa >= each.from_pa)
