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
from core.sentence import Message, Sentence
from core.sources import DEFINITION, Source
from core.traced import traced
from core.working import Figure

Route = Literal["meat", "raw", "finished", "casings"]
ROUTES: Mapping[Route, Message] = {
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
    raw = traced("finished", finished_kg, MASS) / (1 - traced("loss", formula.target_loss, FRACTION))
    return _from_raw(formula, raw.value, (raw.line(MASS, "Finished ÷ (1 − loss) = raw"),))


def by_casings(
    formula: Formula, count: float, diameter_m: float, length_m: float, density: float = casings.MIX_DENSITY
) -> Scaled:
    """As many casings of one size. Raises OutOfRange on what `casings.fill_kg` refuses."""
    filled = casings.fill(count, diameter_m, length_m, density)
    return _from_raw(formula, filled.value, filled.working, filled.source, filled.cautions)


def _require(field: str, label: Message, mass_kg: float) -> None:
    if not 0 < mass_kg < HEAVIEST_KG:
        told = {"label": Sentence(label), "most": Amount(HEAVIEST_KG, MASS)}
        raise OutOfRange(field, Sentence("{label} must be more than 0 and less than {most}.", told))


def _from_raw(
    formula: Formula,
    raw_kg: float,
    before: tuple[Sentence, ...],
    source: Source = DEFINITION,
    cautions: tuple[Sentence, ...] = (),
) -> Scaled:
    meat = traced("raw", raw_kg, MASS) / traced("per_meat", balance.raw(formula).total, RATIO)
    step = meat.line(MASS, "Raw weight ÷ what hangs for each part of meat")
    return _scaled(formula, meat.value, (*before, step), source, cautions)


def _scaled(
    formula: Formula,
    meat_kg: float,
    steps: tuple[Sentence, ...],
    source: Source = DEFINITION,
    cautions: tuple[Sentence, ...] = (),
) -> Scaled:
    rows = portions(formula, meat_kg)
    meat = Figure("meat", "Meat and fat", meat_kg, MASS, (*steps, *_rows(rows, meat_kg)), source, cautions)
    hung = _hung(formula, meat_kg)
    finished = _finished(formula, hung.value)
    return Scaled(meat_kg, hung.value, finished.value, rows, (meat, hung, finished))


def _rows(rows: tuple[Portion, ...], meat_kg: float) -> tuple[Sentence, ...]:
    meat = traced("meat", meat_kg, MASS)
    masses = ((row, traced("share", row.share, FRACTION) * meat) for row in rows)
    return tuple(
        mass.line(never_up(MASS) if row.role == "cure" else MASS, "{name}", {"name": row.name}) for row, mass in masses
    )


def _hung(formula: Formula, meat_kg: float) -> Figure:
    hung = traced("meat", meat_kg, MASS) * traced("total", balance.raw(formula).total, RATIO)
    words = "Meat × what hangs for each part of meat"
    return hung.figure(
        "raw", "Raw weight, as it is hung", MASS, words, cautions=(BRINE_APART,) if formula.brined else ()
    )


def _finished(formula: Formula, hung_kg: float) -> Figure:
    finished = traced("raw", hung_kg, MASS) * (1 - traced("loss", formula.target_loss, FRACTION))
    return finished.figure("finished", "Weight when done", MASS, "Raw × (1 − loss)")
