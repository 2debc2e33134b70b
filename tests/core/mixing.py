"""The mixing table of the invented kitchen: a formula of plain numbers, kept, changed and weighed out."""

from __future__ import annotations

from typing import Any

from attrs import asdict, evolve

from core.daybook.facts.formula import FormulaChanged, FormulaKept, IngredientWeighed
from core.daybook.sheet import Sheet, sheet_of
from core.mix.formula import Formula, Ingredient, Meat
from tests.core.kitchen import Kitchen

FORMULA = Formula(
    "Juniper coarse",
    "fermented",
    (Meat("Shoulder", 0.8, 0.07, "10072", 8.0), Meat("Back fat", 0.2, 0.89, "10004", 3.0)),
    (Ingredient("Salt", "salt", 0.026), Ingredient("Cure", "cure", 0.0024, nitrite=0.0625)),
)
STRONG = evolve(FORMULA, ingredients=(Ingredient("Cure", "cure", 0.01, nitrite=0.0625),))
SOMEWHAT_STRONG = evolve(FORMULA, ingredients=(Ingredient("Cure", "cure", 0.003, nitrite=0.0625),))
"""187.5 ppm: over the limit of ground meat, below what an exception can allow."""


def fields(formula: Formula) -> dict[str, Any]:
    """Its fields but the note, which a test may give."""
    return {name: getattr(formula, name) for name in asdict(formula, recurse=False) if name != "note"}


class Table(Kitchen):
    """A kitchen with formulas."""

    def keep(self, formula: Formula = FORMULA, at: float = 0.0) -> str:
        return self.note(FormulaKept(**fields(formula)), at=at)

    def change(self, formula_id: str, at: float = 1.0, **changes: Any) -> str:
        return self.note(FormulaChanged(**fields(FORMULA) | changes), formula_id, at)

    def weigh_row(self, batch: str, key: str, mass_kg: float, at: float = 0.2) -> str:
        return self.note(IngredientWeighed(key, mass_kg, mass_kg), batch, at)

    def sheet(self, batch: str) -> Sheet:
        found = sheet_of(self.batch(batch))
        assert found is not None
        return found
