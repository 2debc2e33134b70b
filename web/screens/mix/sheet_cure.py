"""The cure's row of a weighing sheet: it is weighed on its own form, and here one sees whether the scale can."""

from __future__ import annotations

from typing import Any

from flask import render_template, request, url_for

from core.daybook.batch import Batch
from core.daybook.sheet import Row, Sheet
from core.mix.blend import Blend, blend_for, preblend
from core.mix.curing_salt import STRENGTH
from core.mix.formula import Role
from core.mix.formula_cure import method_of
from core.mix.weighing import DIVISION, aim_kg, refuse_too_small, rounding
from core.quantities import CURE_MASS, DOSE_MASS, MASS, Amount
from core.refusals import Refusal
from core.sentence import Sentence
from core.working import Figure
from web.forms import typed
from web.screens.mix.cure_shape import strength_said
from web.screens.mix.scale_step import division_for, typed_division
from web.visitor import reader


def cure_row(batch: Batch, found: Sheet, row: Row) -> str:
    """The cure is weighed on its own form. Here: what this scale makes of it, and the way out where it cannot."""
    how = reader()
    division = typed_division(request.args, division_for(row.key))
    too_small = blend = None
    figures: tuple[Figure, ...] = rounding(row.wanted_kg, division, never_up=True) if row.wanted_kg else ()
    way_out: tuple[Figure, ...] = ()
    try:
        refuse_too_small(row.name, row.wanted_kg, division, never_up=True)
    except Refusal as refusal:
        too_small = refusal
        try:
            way_out, blend = preblend(row.wanted_kg, found.salt_kg, division), _blend(found, row, division)
        except Refusal as no_blend:
            both = {"too_small": refusal.said, "no_blend": no_blend.said}
            too_small = Refusal("division_kg", Sentence("{too_small} {no_blend}", both))
    return render_template(
        "mix/cure_row.html",
        batch=batch,
        sheet=found,
        row=row,
        division=typed(division, DOSE_MASS, how),
        declared=DIVISION,
        figures=figures,
        too_small=too_small,
        way_out=way_out,
        blend=blend,
        weigh=_cure_path(batch, found, aim_kg(row.wanted_kg, division, never_up=True), 1.0),
        weigh_blend=_cure_path(batch, found, blend.take_kg, blend.strength) if blend else "",
        back_to=url_for("mix.sheet", batch_id=batch.id),
    )


def _blend(found: Sheet, row: Row, division_kg: float) -> Blend:
    return blend_for(row.wanted_kg, found.salt_kg, division_kg)


def _cure_path(batch: Batch, found: Sheet, dose_kg: float, strength: float) -> str:
    """The cure's own form, begun with the dose; a blend is a weaker curing salt."""
    cure, how = found.formula.cure, reader()
    assert cure is not None
    start: dict[str, Any] = {
        "dose": Amount(dose_kg, CURE_MASS).show_exact(how).replace("\u00a0", ""),
        "nitrite": strength_said(cure.nitrite * strength, how),
        "nitrate": typed(cure.nitrate * strength, STRENGTH, how),
        "other_salt_kg": typed(_salt_kg(found, dose_kg * (1 - strength)), DOSE_MASS, how),
        "method": method_of(found.formula),
    }
    if found.formula.brined:
        start |= {"water_kg": typed(_mass_kg(found, "water"), MASS, how)}
        start |= {"sugar_kg": typed(_mass_kg(found, "sugar"), DOSE_MASS, how)}
    return url_for("mix.weigh_cure", batch_id=batch.id, **start)


def _mass_kg(found: Sheet, role: Role) -> float:
    return sum(
        row.wanted_kg if row.actual_kg is None else row.actual_kg for row in found.rows if row.portion.role == role
    )


def _salt_kg(found: Sheet, blended_kg: float) -> float:
    """The plain salt that goes in besides: as weighed, or as asked for less what a blend brings."""
    rows = [row for row in found.rows if row.portion.role == "salt"]
    if rows and all(row.actual_kg is not None for row in rows):
        return sum(row.actual_kg or 0.0 for row in rows)
    return max(0.0, found.salt_kg - blended_kg)
