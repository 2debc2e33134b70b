"""What happens to a formula, and what is weighed of it for a batch.

A formula's fact is the whole formula: `core.mix.formula.Formula` says what its fields mean.
"""

from __future__ import annotations

from attrs import field, frozen
from attrs.validators import matches_re, optional

from core.daybook.facts.fields import above_zero, not_negative
from core.mix.formula import Formula


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
    mass_kg: float = field(validator=not_negative)
    wanted_kg: float = field(validator=not_negative)
    name: str = ""
    division_kg: float | None = field(default=None, validator=optional(above_zero))
    scale: str | None = None
    lot: str = ""


Fact = FormulaKept | FormulaChanged | IngredientWeighed
