"""Checking an instrument against a known point: may its readings be believed, and how are they corrected?

The raw reading is what is written down; a `Correction` is applied when it is shown, so that both are always known.
The instruments themselves are in the modules beside this one.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Literal

from attrs import Attribute, evolve, field, frozen
from attrs.validators import optional

from core.quantities import Amount
from core.refusals import OutOfRange
from core.sentence import Message, Rounded, Sentence
from core.working import Figure

Word = Literal["accept", "adjust", "clean", "replace"]

NO_CORRECTION = "No correction needed."
"""Where every reading is multiplied by 1 and nothing is added."""
REPLACE_AT = 3.0
"""Tolerances. An error so large is a fault and not a drift (common practice; no published source)."""


def _finite(_instance: object, attribute: Attribute[float], value: float) -> None:
    if not math.isfinite(value):
        raise ValueError(f"{attribute.name} is not a number")


def _above_nothing(_instance: object, attribute: Attribute[float], value: float) -> None:
    if not value or not math.isfinite(value):
        raise ValueError(f"{attribute.name} must be a number other than 0")


def _half_width(instance: object, attribute: Attribute[float], value: float) -> None:
    _finite(instance, attribute, value)
    if value < 0:
        raise ValueError(f"{attribute.name} must be 0 or more")


@frozen
class Point:
    """A known point: what the instrument read there, what it should have read, how far that truth is sure."""

    reading: float
    truth: float
    uncertainty: float = 0.0


@frozen
class Correction:
    """How later readings are corrected: offset + gain × reading. All in the instrument's own unit.

    uncertainty: half-width of the corrected value at `low_reading`; high_uncertainty: at `high_reading`; where there is
    no second point the first holds everywhere. least, most: what the instrument's world cannot go beyond: 0 and 1 for a
    humidity. Plain numbers, so that an entry can keep it as JSON.
    """

    offset: float = field(validator=_finite)
    gain: float = field(default=1.0, validator=_above_nothing)
    uncertainty: float = field(default=0.0, validator=_half_width)
    low_reading: float | None = field(default=None, validator=optional(_finite))
    high_reading: float | None = field(default=None, validator=optional(_finite))
    high_uncertainty: float | None = field(default=None, validator=optional(_half_width))
    least: float | None = field(default=None, validator=optional(_finite))
    most: float | None = field(default=None, validator=optional(_finite))

    @property
    def is_none(self) -> bool:
        return self.gain == 1.0 and not self.offset

    def apply(self, reading: float) -> float:
        """The corrected reading; never below `least` nor above `most`."""
        corrected = self.offset + self.gain * reading
        if self.least is not None:
            corrected = max(corrected, self.least)
        return corrected if self.most is None else min(corrected, self.most)

    def uncertainty_at(self, reading: float) -> float:
        """How far the corrected reading may be out, either way. Beyond the two points it grows with the distance."""
        if self.low_reading is None or self.high_reading is None or self.high_uncertainty is None:
            return self.uncertainty
        along = (reading - self.low_reading) / (self.high_reading - self.low_reading)
        return math.hypot((1 - along) * self.uncertainty, along * self.high_uncertainty)

    def within(self, least: float, most: float) -> Correction:
        return evolve(self, least=least, most=most)


def through_one(point: Point) -> Correction:
    """The same amount is added to every reading."""
    return Correction(point.truth - point.reading, uncertainty=point.uncertainty, low_reading=point.reading)


def through_two(one: Point, other: Point) -> Correction:
    """The straight line through both points, in whichever order. Raises OutOfRange where it would stand upright."""
    low, high = sorted((one, other), key=lambda point: point.reading)
    if low.reading == high.reading:
        raise OutOfRange("other_reading", "The two readings must differ: a line needs two points.")
    if low.truth == high.truth:
        raise OutOfRange("other_reading", "The two known points must differ: a line needs two points.")
    gain = (high.truth - low.truth) / (high.reading - low.reading)
    return Correction(
        offset=low.truth - gain * low.reading,
        gain=gain,
        uncertainty=low.uncertainty,
        low_reading=low.reading,
        high_reading=high.reading,
        high_uncertainty=high.uncertainty,
    )


@frozen
class Check:
    """What a check comes to. sentence: the word, why, and what to do now. figures: the first carries the sentence."""

    word: Word
    sentence: Sentence
    correction: Correction
    figures: tuple[Figure, ...]


def checked(word: Word, sentence: Sentence, correction: Correction, figures: tuple[Figure, ...]) -> Check:
    """A check whose first figure says what it came to."""
    first, *rest = figures
    said = evolve(first, cautions=(sentence, *first.cautions))
    return Check(word, sentence, correction, (said, *rest))


def judge(error: float, tolerance: float) -> Word:
    """The bound itself is accepted; one part in 10⁹ over it is still the bound, as typed."""
    size = abs(error) / (1 + 1e-9)
    return "accept" if size <= tolerance else "adjust" if size <= REPLACE_AT * tolerance else "replace"


JUDGED: Mapping[Word, Message] = {
    "accept": "Accept: it is within the tolerance of ±{tolerance}.",
    "adjust": (
        "Adjust: it is outside the tolerance of ±{tolerance}. Adjust the instrument, or let the correction be applied."
    ),
    "replace": (
        "Replace: it is more than three times outside the tolerance of ±{tolerance}. That is a fault, not a drift."
    ),
}


def say(word: Word, tolerance: Amount) -> Sentence:
    """The sentence of the plain three-way judgement."""
    return Sentence(JUDGED[word], {"tolerance": tolerance})


TO_ADD: Message = "Add to every reading"
NOT_ADDED: Message = "What it should read − what it reads"


def to_add(word: Word) -> Message:
    """What a check's offset is called: only an instrument that is to be adjusted has its readings corrected."""
    return TO_ADD if word == "adjust" else NOT_ADDED


def cannot_tell(uncertainty: float, tolerance: Amount) -> tuple[Sentence, ...]:
    """A caution where the check itself is less sure than what is asked of the instrument; else none."""
    if uncertainty <= tolerance.value:
        return ()
    unsure = Sentence(
        "This check is itself uncertain by {unsure}, more than the tolerance: it finds only coarser faults.",
        {"unsure": Rounded(Amount(uncertainty, tolerance.quantity))},
    )
    return (unsure,)


def is_old(checked_at: datetime, now: datetime, interval: timedelta) -> bool:
    """Whether the check lies further back than the interval. A check exactly as old as the interval still holds."""
    return now - checked_at > interval
