"""A piece's first weight after it was hung: can it have lost so much? Nothing is known yet of how fast it dries.

Later weights are asked about by what it should weigh (`doubt.py`).
"""

from __future__ import annotations

from core.dry.shrink import WHOLE_GRAMS
from core.quantities import LOSS, Amount
from core.sentence import Rounded, Sentence
from core.units import DAY_S

AT_ONCE, PER_DAY = 0.03, 0.03
"""What drips off when it is hung, and three halves of what dries too fast early on: a stick as thin as a thumb may lose
so much. Common practice; no published source."""


def question(piece: str, start_kg: float, mass_kg: float, since_s: float) -> Sentence | None:
    """What to ask about it as it is typed, or None. piece: its tag. since_s: since it was hung, 0 or more."""
    lost, days = 1 - mass_kg / start_kg, max(0.0, since_s) / DAY_S
    if lost <= AT_ONCE + PER_DAY * days:
        return None
    return Sentence(
        "{piece} lost {lost} since it was hung at {start}: much for so short a time. Check the digits and the tag.",
        {
            "piece": piece,
            "lost": Rounded(Amount(lost, LOSS)),
            "start": Rounded(Amount(start_kg, WHOLE_GRAMS)),
        },
    )
