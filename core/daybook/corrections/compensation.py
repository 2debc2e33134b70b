"""A pH read on a meter that does not compensate by itself, compensated with the temperature read along with it."""

from __future__ import annotations

from attrs import frozen

from core.chamber.ph_temperature import (
    COLDEST_C,
    ELECTRODE_ONLY,
    HIGHEST_PH,
    LOWEST_PH,
    WARMEST_C,
    compensated_ph,
    compensation,
)
from core.daybook.facts.instruments import BuffersChecked
from core.daybook.instruments import Checked, Instrument
from core.quantities import PH, RATIO, TEMPERATURE, TEMPERATURE_DIFFERENCE, Amount
from core.refusals import Refusal
from core.saturation import KELVIN_AT_ZERO_C
from core.sentence import Message, Said, Sentence

NO_TEMPERATURE = Sentence("no temperature")
NOT_TRUSTED = Sentence("its thermometer failed its check")
OUT_OF_RANGE = Sentence(
    "outside {coldest} to {warmest} or pH {least} to {most}",
    {
        "coldest": Amount(COLDEST_C, TEMPERATURE),
        "warmest": Amount(WARMEST_C, TEMPERATURE),
        "least": Amount(LOWEST_PH, RATIO),
        "most": Amount(HIGHEST_PH, RATIO),
    },
)
READ_IT_TOO = Sentence(
    "Read the temperature of the meat with the pH: at pH 5, {off} make {by} pH.",
    {"off": Amount(10.0, TEMPERATURE_DIFFERENCE), "by": Amount(0.07, PH)},
)
BESIDE = Sentence(
    "The temperature was read beside the meat: at pH 5, each {off} that the meat is off make {by} pH.",
    {"off": Amount(5.0, TEMPERATURE_DIFFERENCE), "by": Amount(0.03, PH)},
)


@frozen
class Compensation:
    """before: the pH as shown, or as the check of its meter corrected it. value: what it is at sample_c.

    by_buffers: the meter stands as warm as its buffers were, whatever its dial says: they set the slope.
    why_not: why it was left as it is, None where it was not.
    """

    before: float
    value: float
    stands_at_c: float
    by_buffers: bool
    sample_c: float | None
    beside: bool
    why_not: Sentence | None = None

    @property
    def ratio(self) -> float:
        """By how much a distance from pH 7, and what is unsure of it, grew."""
        if self.why_not or self.sample_c is None:
            return 1.0
        return (self.stands_at_c + KELVIN_AT_ZERO_C) / (self.sample_c + KELVIN_AT_ZERO_C)

    @property
    def said(self) -> Sentence:
        """For a note."""
        if self.why_not is not None or self.sample_c is None:
            return Sentence("not compensated: {why}", {"why": self.why_not or NO_TEMPERATURE})
        words: Message = "taken at {taken} beside the meat" if self.beside else "taken at {taken} in the meat"
        return Sentence(words, {"taken": Amount(self.sample_c, TEMPERATURE)})

    @property
    def working(self) -> tuple[Sentence, ...]:
        if self.why_not or self.sample_c is None:
            return (Sentence("The meter does not compensate, and this pH is {said}.", {"said": self.said}),)
        buffers = Sentence("Its buffers were at {stands}.", {"stands": Amount(self.stands_at_c, TEMPERATURE)})
        return (*((buffers,) if self.by_buffers else ()), *compensation(self.before, self.sample_c, self.stands_at_c))

    @property
    def cautions(self) -> tuple[Said, ...]:
        if self.why_not:
            return (READ_IT_TOO,)
        return (*((BESIDE,) if self.beside else ()), ELECTRODE_ONLY)


def stands_at_c(meter: Instrument, check: Checked | None) -> float | None:
    """The temperature whose slope the meter takes: that of the buffers of the check in force where it corrects, else
    what the meter is set to. None where it compensates by itself."""
    if meter.kind != "ph-meter" or meter.added.stands_at_c is None:
        return None
    buffers = buffers_c(check)
    return meter.added.stands_at_c if buffers is None else buffers


def buffers_c(check: Checked | None) -> float | None:
    """How warm the buffers were, on average, of a check that corrects the pH shown; else None."""
    if check is None or check.correction is None or not isinstance(check.line.fact, BuffersChecked):
        return None
    return (check.line.fact.temperature_c + check.line.fact.other_temperature_c) / 2


def compensate(
    meter: Instrument, check: Checked | None, ph: float, sample_c: float | None, *, beside: bool, trusted: bool
) -> Compensation | None:
    """What becomes of a pH that its check has corrected already; None where the meter compensates by itself.

    trusted: whether the thermometer that read sample_c had not failed its own check.
    """
    stands = stands_at_c(meter, check)
    if stands is None:
        return None
    value, why_not = ph, None if trusted else NOT_TRUSTED
    if sample_c is None:
        why_not = NO_TEMPERATURE
    elif trusted:
        try:
            value = compensated_ph(ph, sample_c, stands)
        except Refusal:
            why_not = OUT_OF_RANGE
    return Compensation(ph, value, stands, buffers_c(check) is not None, sample_c, beside, why_not)
