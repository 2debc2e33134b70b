"""The step of the scale at hand: as typed, or as it was last used, or as it was checked."""

from __future__ import annotations

from collections.abc import Mapping

from core.daybook.facts import kind_of
from core.daybook.facts.formula import IngredientWeighed
from core.daybook.facts.instruments import MassesChecked
from core.daybook.instruments import Instrument
from core.mix.weighing import DIVISION, USUAL_DIVISION_KG
from core.quantities import DOSE_MASS
from core.reading import read
from core.refusals import Refusal
from web.instruments import shelf
from web.journal import book
from web.visitor import now, reader


def typed_division(given: Mapping[str, str], otherwise_kg: float) -> float:
    text = f"{given.get('division_kg', '')} {given.get('division_kg-unit', '')}".strip()
    try:
        return DIVISION.check(read(text, DOSE_MASS, reader()))
    except Refusal:
        return otherwise_kg


def division_for(key: str) -> float:
    """The step of the scale that was last used for such a row; else of a scale that was checked; else 1 g."""
    is_meat = key.startswith("meat-")
    for entry_id in reversed(book().beginnings(kind_of(IngredientWeighed))):
        fact = book().line(entry_id).fact
        if isinstance(fact, IngredientWeighed) and fact.division_kg and fact.key.startswith("meat-") is is_meat:
            return fact.division_kg
    checked = [division for each in shelf().in_use() if (division := _checked_division(each))]
    return (max if is_meat else min)(checked, default=USUAL_DIVISION_KG)


def _checked_division(instrument: Instrument) -> float | None:
    check = instrument.main_check(now()) if instrument.kind == "scale" else None
    return check.line.fact.division_kg if check and isinstance(check.line.fact, MassesChecked) else None
