"""What became of the bacteria of the raw meat: not growing is not dying, and nothing here shows that they died.

No process is taken for met: of those whose reduction was read the conditions were not, and of those whose conditions
were read the reduction was not.
"""

from __future__ import annotations

from functools import cache

from core.quantities import COUNT, DAYS, LENGTH, PH, RATIO, TEMPERATURE, WATER_ACTIVITY, Amount
from core.sentence import Sentence
from core.sources import CFIA_OPTIONS, GD_2023_KILLED
from core.units import DAY_S, FAHRENHEIT
from core.verdict import Reason

_TEST = Sentence(
    "Ask a laboratory that tests food which samples show it, or follow a process validated for your sausage."
)


@cache
def what_was_killed() -> tuple[Reason, ...]:
    return (_by_drying(), _by_heat(), _by_holding())


def _by_drying() -> Reason:
    amounts = {
        "five": Amount(5, COUNT),
        "three": Amount(3, COUNT),
        "two": Amount(2, COUNT),
        "dry": Amount(0.85, WATER_ACTIVITY),
        "long": Amount(55 * DAY_S, DAYS),
        "short": Amount(17 * DAY_S, DAYS),
    }
    text = Sentence(
        "Salmonella and E. coli killed by {five} log, Listeria by {three}: not known. In one study wide sausage came "
        "to {five} log at a water activity of {dry} after about {long}, thin sausage after about {short} only to {two} "
        "or {three}.",
        amounts,
    )
    return Reason("killed-drying", text, None, GD_2023_KILLED, _TEST)


def _by_heat() -> Reason:
    amounts = {
        "ferment": Amount(36.0, TEMPERATURE),
        "ph": Amount(5.0, PH),
        "wide": Amount(0.055, LENGTH),
        "heat": Amount(FAHRENHEIT.to_si(128), TEMPERATURE),
        "ratio": Amount(1.6, RATIO),
    }
    text = Sentence(
        "E. coli by Canada’s option with heat: not known. Fermented at {ferment} to pH {ph}, at most {wide} wide, an "
        "hour at {heat}, dried to a moisture-to-protein of {ratio}; by how much that kills was not read.",
        amounts,
    )
    return Reason("killed-heat", text, None, CFIA_OPTIONS, _TEST)


def _by_holding() -> Reason:
    amounts = {
        "ferment": Amount(FAHRENHEIT.to_si(90), TEMPERATURE),
        "ph": Amount(4.6, PH),
        "wide": Amount(0.055, LENGTH),
        "held": Amount(6 * DAY_S, DAYS),
    }
    text = Sentence(
        "E. coli by Canada’s option with holding: not known. To pH {ph}, at most {wide} wide, held {held} at {ferment};"
        " by how much that kills was not read.",
        amounts,
    )
    return Reason("killed-holding", text, None, CFIA_OPTIONS, _TEST)
