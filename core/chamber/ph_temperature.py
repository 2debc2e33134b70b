"""The millivolts of a glass electrode grow with its absolute temperature. What is a pH worth that was read warmer or
colder than a meter stands which does not compensate for it?
"""

from __future__ import annotations

from core.chamber.checks_ph import NEUTRAL_PH
from core.quantities import ABSOLUTE_TEMPERATURE, PH, TEMPERATURE, Amount
from core.refusals import require_between
from core.saturation import KELVIN_AT_ZERO_C
from core.sentence import Message, Sentence
from core.sources import NERNST
from core.working import Figure

COLDEST_C, WARMEST_C = 0.0, 60.0
LOWEST_PH, HIGHEST_PH = 2.0, 12.0
"""Beyond them a glass electrode errs in other ways; within them no temperature takes a pH off the scale."""

ELECTRODE_ONLY: Message = "This corrects the electrode. What temperature does to the meat's own pH is another matter."
CENTRED = "It takes the electrode to be centred at pH 7, as most are made (from memory); two buffers show if it is."


def compensated_ph(shown: float, sample_c: float, stands_at_c: float) -> float:
    """The pH of a sample at sample_c, read on a meter that takes it to be at stands_at_c.

    shown: pH 2 to 12; both temperatures 0 to 60 °C. Raises OutOfRange outside. Source: Nernst; turned about pH 7.
    """
    require_between("shown", "The pH shown", shown, LOWEST_PH, HIGHEST_PH, PH)
    require_between("sample", "The sample's temperature", sample_c, COLDEST_C, WARMEST_C, TEMPERATURE)
    require_between("stands_at", "The temperature the meter is set to", stands_at_c, COLDEST_C, WARMEST_C, TEMPERATURE)
    ratio = (stands_at_c + KELVIN_AT_ZERO_C) / (sample_c + KELVIN_AT_ZERO_C)
    return NEUTRAL_PH + (shown - NEUTRAL_PH) * ratio


def compensation(shown: float, sample_c: float, stands_at_c: float) -> tuple[Sentence, ...]:
    """The working of `compensated_ph`, with its range and its refusals."""
    amounts = {
        "shown": Amount(shown, PH),
        "sample": Amount(sample_c, TEMPERATURE),
        "stands": Amount(stands_at_c, TEMPERATURE),
        "sample_kelvin": Amount(sample_c + KELVIN_AT_ZERO_C, ABSOLUTE_TEMPERATURE),
        "stands_kelvin": Amount(stands_at_c + KELVIN_AT_ZERO_C, ABSOLUTE_TEMPERATURE),
        "ph": Amount(compensated_ph(shown, sample_c, stands_at_c), PH),
    }
    return (
        Sentence("Taken at {sample}, with the meter set to {stands}:", amounts),
        Sentence("7 + ({shown} − 7) × {stands_kelvin} ÷ {sample_kelvin} = {ph}", amounts),
    )


def compensated(shown: float, sample_c: float, stands_at_c: float) -> tuple[Figure, ...]:
    """The pH compensated for temperature, and how much that made. Arguments and refusals as `compensated_ph`."""
    ph = compensated_ph(shown, sample_c, stands_at_c)
    amounts = {"shown": Amount(shown, PH), "ph": Amount(ph, PH), "change": Amount(ph - shown, PH)}
    return (
        Figure(
            key="ph",
            name="pH, compensated for temperature",
            value=ph,
            quantity=PH,
            working=compensation(shown, sample_c, stands_at_c),
            source=NERNST,
            cautions=(ELECTRODE_ONLY, CENTRED),
        ),
        Figure(
            key="change",
            name="Change by the compensation",
            value=ph - shown,
            quantity=PH,
            working=(Sentence("{ph} − {shown} = {change}", amounts),),
            source=NERNST,
        ),
    )
