"""How a cook says a time."""

import math

from attrs import evolve

from core.quantities import HOURS_LEFT, Amount, DisplayUnit, Quantity
from core.sentence import Rounded
from core.units import HOUR, MINUTE

_IN_MINUTES = (DisplayUnit(HOUR, 0, from_value=1, then=MINUTE), DisplayUnit(MINUTE, 0))
HOURS_AND_MINUTES: Quantity = evolve(HOURS_LEFT, key="hours_and_minutes", metric=_IN_MINUTES, us=_IN_MINUTES)


def hours_and_minutes(seconds: float) -> Rounded:
    """Never more than there is: "5 h 20 min"."""
    minutes = max(0, math.floor(seconds / 60 + 1e-6))
    return Rounded(Amount(minutes * 60.0, HOURS_AND_MINUTES))
