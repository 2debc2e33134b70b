"""How much meat, and so how much of everything: by the meat on the table, by raw mass, by finished mass, by casings.

Every way ends in the weight of the meat block; the formula is the same whichever way was taken.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from attrs import frozen

from core.mix import balance, casings
from core.mix.formula import Formula, Portion, portions
from core.quantities import FRACTION, MASS, RATIO, Amount, never_up
from core.refusals import OutOfRange
from core.sentence import Sentence
from core.sources import DEFINITION, Source
from core.working import Figure

Route = Literal["meat", "raw", "finished", "casings"]
ROUTES: Mapping[Route, str] = {
    "meat": "By the meat on the table",
    "raw": "By the raw weight wanted",
    "finished": "By the finished weight wanted",
    "casings": "By the casings at hand",
}
HEAVIEST_KG = 10_000.0
BRINE_APART = "The brine is weighed besides and stays in the tub."


@frozen
class Scaled:
    """A formula at a size. hung_kg: what hangs at first; finished_kg: after the loss to reach."""

    meat_kg: float
    hung_kg: float
    finished_kg: float
    portions: tuple[Portion, ...]
    figures: tuple[Figure, ...]


def by_meat(formula: Formula, meat_kg: float) -> Scaled:
    """meat_kg: the meat block, meats and fats together. Raises OutOfRange on "meat_kg"."""
    _require("meat_kg", "The meat", meat_kg)
    step = Sentence("As it lies on the table: {meat}", {"meat": Amount(meat_kg, MASS)})
    return _scaled(formula, meat_kg, (step,))


def by_raw(formula: Formula, raw_kg: float) -> Scaled:
    """raw_kg: what is to hang at first. Raises OutOfRange on "raw_kg"."""
    _require("raw_kg", "The raw weight", raw_kg)
    return _from_raw(formula, raw_kg, ())


def by_finished(formula: Formula, finished_kg: float) -> Scaled:
    """finished_kg: what is to be left after the formula's loss. Raises OutOfRange on "finished_kg"."""
    _require("finished_kg", "The finished weight", finished_kg)
    loss = formula.target_loss
    raw_kg = finished_kg / (1 - loss)
    step = Sentence(
        "Finished ÷ (1 − loss) = raw: {finished} ÷ (1 − {loss}) = {raw}",
        {"finished": Amount(finished_kg, MASS), "loss": Amount(loss, FRACTION), "raw": Amount(raw_kg, MASS)},
    )
    return _from_raw(formula, raw_kg, (step,))


def by_casings(
    formula: Formula, count: float, diameter_m: float, length_m: float, density: float = casings.MIX_DENSITY
) -> Scaled:
    """As many casings of one size. Raises OutOfRange on what `casings.fill_kg` refuses."""
    filled = casings.fill(count, diameter_m, length_m, density)
    return _from_raw(formula, filled.value, filled.working, filled.source, filled.cautions)


def _require(field: str, label: str, mass_kg: float) -> None:
    if not 0 < mass_kg < HEAVIEST_KG:
        raise OutOfRange(field, f"{label} must be more than 0 g and less than 10 000 kg.")


def _from_raw(
    formula: Formula,
    raw_kg: float,
    before: tuple[Sentence, ...],
    source: Source = DEFINITION,
    cautions: tuple[str, ...] = (),
) -> Scaled:
    per_meat = balance.raw(formula).total
    meat_kg = raw_kg / per_meat
    step = Sentence(
        "Raw weight ÷ what hangs for each part of meat: {raw} ÷ {per_meat} = {meat}",
        {"raw": Amount(raw_kg, MASS), "per_meat": Amount(per_meat, RATIO), "meat": Amount(meat_kg, MASS)},
    )
    return _scaled(formula, meat_kg, (*before, step), source, cautions)


def _scaled(
    formula: Formula,
    meat_kg: float,
    steps: tuple[Sentence, ...],
    source: Source = DEFINITION,
    cautions: tuple[str, ...] = (),
) -> Scaled:
    rows = portions(formula, meat_kg)
    hung_kg = meat_kg * balance.raw(formula).total
    finished_kg = hung_kg * (1 - formula.target_loss)
    meat = Figure("meat", "Meat and fat", meat_kg, MASS, (*steps, *_rows(rows, meat_kg)), source, cautions)
    return Scaled(meat_kg, hung_kg, finished_kg, rows, (meat, _hung(formula, meat_kg), _finished(formula, hung_kg)))


def _rows(rows: tuple[Portion, ...], meat_kg: float) -> tuple[Sentence, ...]:
    return tuple(
        Sentence(
            "{name}: {share} × {meat} = {mass}",
            {
                "name": row.name,
                "share": Amount(row.share, FRACTION),
                "meat": Amount(meat_kg, MASS),
                "mass": Amount(row.mass_kg, never_up(MASS) if row.role == "cure" else MASS),
            },
        )
        for row in rows
    )


def _hung(formula: Formula, meat_kg: float) -> Figure:
    total = balance.raw(formula).total
    amounts = {
        "meat": Amount(meat_kg, MASS),
        "total": Amount(total, RATIO),
        "hung": Amount(meat_kg * total, MASS),
    }
    step = Sentence("Meat × what hangs for each part of meat: {meat} × {total} = {hung}", amounts)
    cautions = (BRINE_APART,) if formula.brined else ()
    return Figure("raw", "Raw weight, as it is hung", meat_kg * total, MASS, (step,), DEFINITION, cautions)


def _finished(formula: Formula, hung_kg: float) -> Figure:
    loss = formula.target_loss
    finished = Amount(hung_kg * (1 - loss), MASS)
    amounts = {"raw": Amount(hung_kg, MASS), "loss": Amount(loss, FRACTION), "finished": finished}
    step = Sentence("Raw × (1 − loss): {raw} × (1 − {loss}) = {finished}", amounts)
    return Figure("finished", "Weight when done", finished.value, MASS, (step,), DEFINITION)
