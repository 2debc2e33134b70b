"""What happens to a formula, and what is weighed of it for a batch.

A formula's fact is the whole formula: `core.mix.formula.Formula` says what its fields mean.
"""

from __future__ import annotations

from attrs import field, frozen
from attrs.validators import matches_re

from core.daybook.facts.fields import asked, not_negative
from core.mix.formula import Formula
from core.mix.weighing import DIVISION
from core.quantities import DOSE_MASS
from core.worksheet import Number

WEIGHED = Number("mass_kg", "Weighed", DOSE_MASS, 0.0, 1000.0)


@frozen
class FormulaKept(Formula):
    """A formula is begun. Its entry's id is the formula's id, and that of its first version."""

    KIND = "formula-kept"


@frozen
class FormulaChanged(Formula):
    """The next version, whole. It is about the formula; its entry's id is the version's."""

    KIND = "formula-changed"


@frozen
class IngredientWeighed:
    """One row of a batch's weighing sheet, as weighed. key: the row in the batch's version of the formula.

    wanted_kg: what the sheet asked for. division_kg: the step of the scale. scale: by its id. lot: as on the packet.
    """

    KIND = "ingredient-weighed"

    key: str = field(validator=matches_re("(meat|part)-[0-9]{1,3}"))
    wanted_kg: float = field(validator=not_negative)
    mass_kg: float = asked(WEIGHED, holds=not_negative)
    name: str = ""
    division_kg: float | None = asked(DIVISION, default=None)
    scale: str | None = None
    lot: str = ""


Fact = FormulaKept | FormulaChanged | IngredientWeighed
