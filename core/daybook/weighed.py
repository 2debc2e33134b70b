"""What was weighed out for a batch, row by row of its formula, and the meat block that follows from it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime

from attrs import frozen

from core.daybook.book import Line
from core.daybook.corrections.readings import CorrectedReading, corrected
from core.daybook.facts.formula import IngredientWeighed
from core.daybook.instruments import Shelf
from core.mix.formula import Formula


@frozen
class Weighed:
    """A row as weighed, its mass corrected where its scale was checked; `reading` then tells what it showed."""

    at: datetime
    line_id: str
    fact: IngredientWeighed
    reading: CorrectedReading | None = None


def weighed_rows(shelf: Shelf, lines: Iterable[Line]) -> dict[str, Weighed]:
    """By the keys of the rows; of one weighed twice the later counts. lines: oldest first."""
    found: dict[str, Weighed] = {}
    for line in lines:
        if isinstance(line.fact, IngredientWeighed):
            row = corrected(shelf, line.fact, line.entry.happened_at)
            found[line.fact.key] = Weighed(line.entry.happened_at, line.id, row.fact, row.of("mass"))
    return found


def block_kg(formula: Formula | None, weighed: Mapping[str, Weighed]) -> float | None:
    """The meats together; None until every one of them is weighed."""
    keys = [f"meat-{at}" for at, _ in enumerate(formula.meats, 1)] if formula is not None else []
    if not keys or not all(key in weighed for key in keys):
        return None
    return sum(weighed[key].fact.mass_kg for key in keys)
