"""What an instrument's standing correction does to every reading, in a sentence."""

from __future__ import annotations

from core.chamber.checks import NO_CORRECTION, Correction
from core.daybook.instrument_checks import QUANTITIES, Measured
from core.quantities import RATIO, TEMPERATURE, TEMPERATURE_DIFFERENCE, Amount
from core.sentence import Sentence


def correction_in_words(reading_of: Measured, correction: Correction) -> Sentence:
    """The correction now in force as a sentence that holds in either unit system."""
    quantity = QUANTITIES[reading_of]
    if correction.gain == 1.0:
        step = TEMPERATURE_DIFFERENCE if quantity == TEMPERATURE else quantity
        size = {"size": Amount(abs(correction.offset), step)}
        if not correction.offset:
            return Sentence(NO_CORRECTION)
        if correction.offset > 0:
            return Sentence("{size} is added to every reading.", size)
        return Sentence("{size} is taken off every reading.", size)
    if not correction.offset:
        return Sentence("Every reading is multiplied by {gain}.", {"gain": Amount(correction.gain, RATIO)})
    low, high = _ends(correction)
    amounts = {
        "low": Amount(low, quantity),
        "low_right": Amount(correction.apply(low), quantity),
        "high": Amount(high, quantity),
        "high_right": Amount(correction.apply(high), quantity),
    }
    return Sentence(
        "{low} read is {low_right}, {high} read is {high_right}, and in a straight line between and beyond.", amounts
    )


def _ends(correction: Correction) -> tuple[float, float]:
    low = 0.0 if correction.low_reading is None else correction.low_reading
    return low, low + 1.0 if correction.high_reading is None else correction.high_reading
