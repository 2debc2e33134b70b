"""The weighing sheet: one row at a time, ticked off with wet hands; what the scale makes of it; what it leaves."""

from __future__ import annotations

from typing import Any

from attrs import evolve
from flask import abort, redirect, render_template, request, url_for
from werkzeug.wrappers import Response

from core.daybook.batch import Batch
from core.daybook.facts import IngredientWeighed, kind_of
from core.daybook.facts.instruments import MassesChecked
from core.daybook.formulas import formula_of
from core.daybook.sheet import Row, Sheet, costs, over_the_limit, sheet_of
from core.mix.blend import Blend, blend_for, preblend
from core.mix.curing_salt import STRENGTH
from core.mix.weighing import aim_kg, difference, refuse_too_small, rounding, weighable
from core.quantities import DOSE_MASS, PIECE_MASS, Amount, Manner, Quantity
from core.reading import read
from core.refusals import Refusal
from core.working import Figure
from core.worksheet import Number
from web.entry_forms import EntryForm, Subject, Values, declare, write
from web.finding import find_batch
from web.forms import ReadWith, Words, typed
from web.instruments import shelf
from web.journal import book
from web.screens.mix.blueprint import screen
from web.screens.mix.cure import CURE
from web.visitor import manner, now

HEAVIEST_KG = 1000.0
USUAL_DIVISION_KG = 0.001
DIVISION = Number(
    "division_kg",
    "The scale shows steps of",
    DOSE_MASS,
    1e-6,
    0.1,
    default=USUAL_DIVISION_KG,
    help="The step of its last digit: 1 g, 0.1 g.",
)


def _mass(quantity: Quantity) -> Number:
    return Number("mass_kg", "Weighed", quantity, 0.0, HEAVIEST_KG)


def _figures(fact: IngredientWeighed, subject: Subject) -> tuple[Figure, ...]:
    """How far it is from what was wanted, and what the scale cannot tell."""
    if not fact.wanted_kg:
        return ()
    found = difference(fact.wanted_kg, fact.mass_kg)
    division = fact.division_kg
    if division and not weighable(fact.wanted_kg, division):
        words = f"This scale may be {_percent(fact.wanted_kg, division)} out on so little: a finer one tells more."
        found = evolve(found, cautions=(words,))
    return (found,)


def _percent(wanted_kg: float, division_kg: float) -> str:
    *_, out = rounding(wanted_kg, division_kg)
    return f"{out.value * 100:.0f} %"


def _say(fact: IngredientWeighed, how: Manner) -> str:
    lot = f", lot {fact.lot}" if fact.lot else ""
    return f"Weighed {fact.name or fact.key}: {Amount(fact.mass_kg, quantity_of(fact.key)).show(how)}{lot}"


def quantity_of(key: str) -> Quantity:
    """Meats as a kitchen scale shows them; the rest in grams in either system."""
    return PIECE_MASS if key.startswith("meat-") else DOSE_MASS


def _corrected(values: Values, subject: Subject) -> IngredientWeighed:
    assert isinstance(subject.was, IngredientWeighed)
    return evolve(subject.was, **values)


WEIGH_ROW = declare(
    EntryForm(
        IngredientWeighed,
        "Weigh",
        (
            _mass(DOSE_MASS),
            ReadWith("scale", "Scale", ("scale",)),
            evolve(DIVISION, optional=True),
            Words("lot", "Lot", 40, optional=True, help="As on its packet."),
        ),
        _say,
        figures=_figures,
        fact=_corrected,
        save="Save and next",
    )
)


def find_sheet(batch_id: str) -> tuple[Batch, Sheet]:
    batch = find_batch(batch_id)
    found = sheet_of(batch)
    return (batch, found) if found is not None else abort(404)


def path_of_row(batch: Batch, row: Row | None) -> str:
    """The row's own page; the sheet where there is none left."""
    if row is None:
        return url_for("mix.sheet", batch_id=batch.id)
    return url_for("mix.weigh_row", batch_id=batch.id, key=row.key)


@screen.get("/batches/<batch_id>/sheet")
def sheet(batch_id: str):
    batch, found = find_sheet(batch_id)
    refusal = over_the_limit(batch)
    cure, cure_refusal = _cure(batch)
    return render_template(
        "mix/sheet.html",
        batch=batch,
        sheet=found,
        refusal=refusal,
        cure=cure,
        cure_refusal=cure_refusal,
        cost=costs(found) if refusal is None else (),
        next_row=found.next_after(None),
        formula_id=formula_of(book(), batch.start.formula),
        quantity_of=quantity_of,
        printed_at=now(),
    )


def _cure(batch: Batch) -> tuple[tuple[Figure, ...], Refusal | None]:
    """What the cure that was weighed makes of the meat as weighed."""
    if batch.cure is None:
        return (), None
    try:
        return CURE.figures(batch.cure, Subject(batch)), None
    except Refusal as refusal:
        return (), refusal


@screen.route("/batches/<batch_id>/sheet/<key>", methods=["GET", "POST"])
def weigh_row(batch_id: str, key: str):
    """One row. Weighed again, it corrects the first and is never taken for an addition."""
    batch, found = find_sheet(batch_id)
    row = found.row(key) or abort(404)
    if over_the_limit(batch) is not None:
        return redirect(path_of_row(batch, None), 303)
    if row.portion.role == "cure":
        return _cure_row(batch, found, row)
    division = _division_kg(key)
    declared = _declared(row, division)
    weighed = book().line(row.line_id) if row.line_id else None
    aim, change, _ = rounding(row.wanted_kg, division) if row.wanted_kg else (None, None, None)
    return write(
        declared,
        Subject(batch, was=weighed.fact if weighed else None),
        about=batch.id,
        back=path_of_row(batch, found.next_after(key)),
        corrects=weighed,
        filled=_as_wanted(row, division),
        back_to=path_of_row(batch, None),
        template="mix/weigh_row.html",
        sheet=found,
        row=row,
        quantity=quantity_of(key),
        aim=aim,
        change=change,
    )


def _declared(row: Row, division_kg: float) -> EntryForm:
    mass, scale, _, lot = WEIGH_ROW.inputs
    inputs = (evolve(mass, quantity=quantity_of(row.key)), scale, evolve(DIVISION, default=division_kg), lot)

    def fact(values: Values, subject: Subject) -> IngredientWeighed:
        return IngredientWeighed(key=row.key, wanted_kg=row.wanted_kg, name=row.name, **values)

    return evolve(WEIGH_ROW, title=f"Weigh {row.name}", inputs=inputs, fact=fact)


def _as_wanted(row: Row, division_kg: float) -> dict[str, str]:
    """One tap: what the sheet asks for, as the scale at hand shows it."""
    if request.form.get("as") != "wanted":
        return {}
    how, quantity = manner(), quantity_of(row.key)
    aimed = aim_kg(row.wanted_kg, _typed_division(request.form, division_kg)) or row.wanted_kg
    return {"mass_kg": typed(aimed, quantity, how), "mass_kg-unit": quantity.bare(how.system).symbol}


def _typed_division(given: Any, otherwise_kg: float) -> float:
    text = f"{given.get('division_kg', '')} {given.get('division_kg-unit', '')}".strip()
    try:
        return DIVISION.check(read(text, DOSE_MASS, manner()))
    except Refusal:
        return otherwise_kg


def _division_kg(key: str) -> float:
    """The step of the scale that was last used for such a row; else of a scale that was checked; else 1 g."""
    is_meat = key.startswith("meat-")
    for entry_id in reversed(book().beginnings(kind_of(IngredientWeighed))):
        fact = book().line(entry_id).fact
        if isinstance(fact, IngredientWeighed) and fact.division_kg and fact.key.startswith("meat-") is is_meat:
            return fact.division_kg
    checked = [division for each in shelf().in_use() if (division := _checked_division(each))]
    return (max if is_meat else min)(checked, default=USUAL_DIVISION_KG)


def _checked_division(instrument: Any) -> float | None:
    check = instrument.main_check(now()) if instrument.kind == "scale" else None
    return check.line.fact.division_kg if check and isinstance(check.line.fact, MassesChecked) else None


def _cure_row(batch: Batch, found: Sheet, row: Row) -> Response | str:
    """The cure is weighed on its own form. Here: what this scale makes of it, and the way out where it cannot."""
    how = manner()
    division = _typed_division(request.args, _division_kg(row.key))
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
            too_small = Refusal("division_kg", f"{refusal.sentence} {no_blend.sentence}")
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
        back_to=path_of_row(batch, None),
    )


def _blend(found: Sheet, row: Row, division_kg: float) -> Blend:
    return blend_for(row.wanted_kg, found.salt_kg, division_kg)


def _cure_path(batch: Batch, found: Sheet, dose_kg: float, strength: float) -> str:
    """The cure's own form, begun with the dose; a blend is a weaker curing salt."""
    cure, how = found.formula.cure, manner()
    assert cure is not None
    start = {
        "dose": Amount(dose_kg, DOSE_MASS).show_exact(how).replace("\u00a0", ""),
        "nitrite": typed(cure.nitrite * strength, STRENGTH, how),
        "nitrate": typed(cure.nitrate * strength, STRENGTH, how),
        "other_salt_kg": typed(_salt_kg(found, dose_kg * (1 - strength)), DOSE_MASS, how),
    }
    return url_for("mix.weigh_cure", batch_id=batch.id, **start)


def _salt_kg(found: Sheet, blended_kg: float) -> float:
    """The plain salt that goes in besides: as weighed, or as asked for less what a blend brings."""
    rows = [row for row in found.rows if row.portion.role == "salt"]
    if rows and all(row.actual_kg is not None for row in rows):
        return sum(row.actual_kg or 0.0 for row in rows)
    return max(0.0, found.salt_kg - blended_kg)
