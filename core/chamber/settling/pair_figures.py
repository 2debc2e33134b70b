"""Two probes' difference as figures that show their working."""

from __future__ import annotations

from core.chamber.settling.mapping import Pair
from core.chamber.settling.measures import FINE_DIFFERENCE
from core.chamber.settling.plain_figure import plain
from core.language import Message
from core.sources import DEFINITION
from core.working import Figure

NAMES: dict[str, Message] = {
    "mean": "Mean difference",
    "deviation": "Standard deviation",
    "lowest": "Least",
    "highest": "Greatest",
    "low_5": "5 % of the time below",
    "high_95": "5 % of the time above",
}
"""By the names of a Spread."""


def pair_figures(pair: Pair) -> tuple[Figure, ...]:
    """The first less the second, over the readings they share in time."""
    text: Message = "First less second at each moment both were logged, weighed by the time it covers: {value}"
    return tuple(
        plain(key, name, getattr(pair.difference, key), FINE_DIFFERENCE, text, DEFINITION)
        for key, name in NAMES.items()
    )
