"""A batch's weighing sheet: each row of its version of the formula, what it asks for, and what was weighed.

The meats come first: once all of them are weighed, everything else is asked for on what they really weigh.
"""

from __future__ import annotations

from datetime import datetime

from attrs import evolve, frozen

from core.daybook.batch import Batch
from core.daybook.corrections.readings import CorrectedReading
from core.daybook.curing import licence_of
from core.daybook.facts.batch import CureWeighed
from core.mix import balance
from core.mix.cost import Bought, cost
from core.mix.formula import Formula, Portion, portions
from core.mix.formula_cure import over_limit
from core.mix.rules import Curing
from core.refusals import Refusal
from core.working import Figure

ALIKE = 1e-9


@frozen
class Row:
    """line_id: of what was weighed; None while it is not."""

    portion: Portion
    actual_kg: float | None = None
    line_id: str | None = None
    at: datetime | None = None
    lot: str = ""
    reading: CorrectedReading | None = None

    @property
    def key(self) -> str:
        return self.portion.key

    @property
    def name(self) -> str:
        return self.portion.name

    @property
    def wanted_kg(self) -> float:
        return self.portion.mass_kg

    @property
    def done(self) -> bool:
        return self.line_id is not None

    @property
    def difference(self) -> float | None:
        """Of the wanted weight; None where nothing was weighed or wanted."""
        if self.actual_kg is None or self.wanted_kg <= 0:
            return None
        return self.actual_kg / self.wanted_kg - 1


@frozen
class Sheet:
    formula: Formula
    meat_kg: float
    rows: tuple[Row, ...]

    def row(self, key: str) -> Row | None:
        return next((row for row in self.rows if row.key == key), None)

    @property
    def done(self) -> int:
        return sum(row.done for row in self.rows)

    @property
    def complete(self) -> bool:
        return self.done == len(self.rows)

    @property
    def salt_kg(self) -> float:
        """The plain salt asked for."""
        return sum(row.wanted_kg for row in self.rows if row.portion.role == "salt")

    def next_after(self, key: str | None) -> Row | None:
        """The next row still to weigh, in the order of the sheet and round again; None when all are."""
        keys = [row.key for row in self.rows]
        at = keys.index(key) if key in keys else 0
        around = (*self.rows[at:], *self.rows[:at])
        return next((row for row in around if not row.done and row.key != key), None)


def sheet_of(batch: Batch) -> Sheet | None:
    """The sheet as it stands, or None for a batch that was begun without a formula."""
    formula = batch.formula
    if formula is None:
        return None
    meats = tuple(each for each in portions(formula, batch.start.meat_kg) if each.role == "meat")
    others = tuple(each for each in portions(formula, batch.meat_kg) if each.role != "meat")
    asked = (*meats, *_as_the_cure_is(formula, others, batch.cure))
    return Sheet(formula, batch.meat_kg, tuple(_row(batch, portion) for portion in asked))


def _as_the_cure_is(formula: Formula, others: tuple[Portion, ...], cure: CureWeighed | None) -> tuple[Portion, ...]:
    """A cure of another strength, a blend perhaps, is asked for by its nitrite, and the salt it brings is taken off.

    Beside a second curing salt the formula's own stays asked for as it stands: no one row tells what both make.
    """
    meant = formula.cure
    if cure is None or meant is None or cure.cure_kg <= 0 or not meant.nitrite or not cure.nitrite or cure.second_kg:
        return others
    if abs(cure.nitrite - meant.nitrite) <= ALIKE:
        return others
    asked = next(each for each in others if each.role == "cure")
    more_salt_kg = cure.cure_kg * (1 - cure.nitrite - cure.nitrate) - asked.mass_kg * meant.curing_salt.table_salt
    salt_kg = sum(each.mass_kg for each in others if each.role == "salt")
    of_role: dict[str, float] = {
        "cure": meant.nitrite / cure.nitrite,
        "salt": max(0.0, 1 - more_salt_kg / salt_kg) if salt_kg else 1.0,
    }
    return tuple(evolve(each, mass_kg=each.mass_kg * of_role.get(each.role, 1.0)) for each in others)


def _row(batch: Batch, portion: Portion) -> Row:
    if portion.role == "cure":
        if batch.cure is None:
            return Row(portion)
        moment = next(line.entry.happened_at for line in batch.lines if line.id == batch.cure_line_id)
        return Row(portion, batch.cure.cure_kg, batch.cure_line_id, moment)
    weighed = batch.weighed.get(portion.key)
    if weighed is None:
        return Row(portion)
    fact = weighed.fact
    return Row(portion, fact.mass_kg, weighed.line_id, weighed.at, fact.lot, weighed.reading)


def over_the_limit(batch: Batch, how: Curing | None = None) -> Refusal | None:
    """What is wrong with the cure that the batch's formula asks for; None within the limit or the exception's figure.

    how: by whose rules, or the US chart by the formula's kind.
    """
    return None if batch.formula is None else over_limit(batch.formula, how, batch.meat_kg, licence_of(batch))


def costs(sheet: Sheet) -> tuple[Figure, ...]:
    """By what was weighed, and by what is asked for where nothing was yet. Loss as the formula has it."""
    bought = [
        Bought(row.name, row.wanted_kg if row.actual_kg is None else row.actual_kg, row.portion.price_per_kg)
        for row in sheet.rows
    ]
    if sheet.formula.brined:
        raw_kg = sheet.meat_kg * balance.raw(sheet.formula).total
    else:
        raw_kg = sum(each.mass_kg for each in bought)
    return cost(bought, raw_kg, raw_kg * (1 - sheet.formula.target_loss))
