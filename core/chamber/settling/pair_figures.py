"""Two probes' difference as figures that show their working."""

from __future__ import annotations

from core.chamber.settling.mapping import Pair
from core.chamber.settling.measures import FINE_DIFFERENCE
from core.quantities import Amount
from core.sentence import Sentence
from core.sources import DEFINITION
from core.working import Figure


def pair_figures(pair: Pair) -> tuple[Figure, ...]:
    """The first less the second, over the readings they share in time."""
    spread = pair.difference
    words = "First less second at each moment both were logged, weighed by the time it covers"
    named = (
        ("mean", "Mean difference", spread.mean),
        ("deviation", "Standard deviation", spread.deviation),
        ("lowest", "Least", spread.lowest),
        ("highest", "Greatest", spread.highest),
        ("low_5", "5 % of the time below", spread.low_5),
        ("high_95", "5 % of the time above", spread.high_95),
    )
    return tuple(
        Figure(
            key,
            name,
            value,
            FINE_DIFFERENCE,
            (Sentence(words + ": {value}", {"value": Amount(value, FINE_DIFFERENCE)}),),
            DEFINITION,
        )
        for key, name, value in named
    )
