"""What the house holds to while pieces dry."""

from __future__ import annotations

from attrs import evolve, frozen

from core.daybook.facts.fields import asked
from core.quantities import LOSS_RATE
from core.units import DAY_S
from core.worksheet import Number

MOST_A_DAY = 0.5 / DAY_S
EARLY_LEAST = Number("early_least", "First third: slow below", LOSS_RATE, 0.0, MOST_A_DAY, optional=True)
EARLY_MOST = evolve(EARLY_LEAST, key="early_most", label="First third: too fast above")
MIDDLE_LEAST = evolve(EARLY_LEAST, key="middle_least", label="Second third: slow below")
MIDDLE_MOST = evolve(EARLY_LEAST, key="middle_most", label="Second third: too fast above")
LATE_LEAST = evolve(EARLY_LEAST, key="late_least", label="Last third: slow below")
LATE_MOST = evolve(EARLY_LEAST, key="late_most", label="Last third: too fast above")


@frozen
class DryingBounded:
    """The house's own bounds on the loss of a day, in each third of the way to the target, as shares of the start
    weight a second. None: what is common practice. The latest holds, whole."""

    KIND = "drying-bounded"

    early_least: float | None = asked(EARLY_LEAST)
    early_most: float | None = asked(EARLY_MOST)
    middle_least: float | None = asked(MIDDLE_LEAST)
    middle_most: float | None = asked(MIDDLE_MOST)
    late_least: float | None = asked(LATE_LEAST)
    late_most: float | None = asked(LATE_MOST)


Fact = DryingBounded
