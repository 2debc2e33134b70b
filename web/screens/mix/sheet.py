"""The weighing sheet: one row at a time, ticked off with wet hands; what the scale makes of it; what it leaves."""

from __future__ import annotations

from attrs import evolve
from flask import abort, redirect, render_template, request, url_for

from core.daybook.batch import Batch
from core.daybook.facts.formula import WEIGHED, IngredientWeighed
from core.daybook.formulas import formula_of
from core.daybook.sheet import Row, Sheet, costs, over_the_limit, sheet_of
from core.mix.weighing import DIVISION, aim_kg, difference, rounding, weighable
from core.quantities import DOSE_MASS, FRACTION, PIECE_MASS, Amount, Quantity
from core.refusals import Refusal
from core.sentence import Rounded, Sentence
from core.usual import as_typed
from core.working import Figure
from web.entry_forms import EntryForm, Subject, Values, declare, write
from web.forms import ReadWith, Words
from web.journal import book
from web.lookup import find_batch
from web.screens.mix.blueprint import screen
from web.screens.mix.cure import batch_figures
from web.screens.mix.formula_figures import curing_for
from web.screens.mix.scale_step import division_for, typed_division
from web.screens.mix.sheet_cure import cure_row
from web.visitor import now, reader


def _figures(fact: IngredientWeighed, subject: Subject) -> tuple[Figure, ...]:
    """How far it is from what was wanted, and what the scale cannot tell."""
    if not fact.wanted_kg:
        return ()
    found = difference(fact.wanted_kg, fact.mass_kg)
    division = fact.division_kg
    if division and not weighable(fact.wanted_kg, division):
        *_, out = rounding(fact.wanted_kg, division)
        share = {"share": Amount(round(out.value, 2), FRACTION)}
        told = Sentence("This scale may be {share} out on so little: a finer one shows more.", share)
        found = evolve(found, cautions=(told,))
    return (found,)


def _say(fact: IngredientWeighed) -> Sentence:
    weight = Rounded(Amount(fact.mass_kg, quantity_of(fact.key)))
    told = {"name": fact.name or fact.key, "weight": weight, "lot": fact.lot}
    return Sentence("Weighed {name}: {weight}, lot {lot}" if fact.lot else "Weighed {name}: {weight}", told)


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
            WEIGHED,
            ReadWith("scale", "Scale", ("scale",)),
            evolve(DIVISION, optional=True),
            Words("lot", "Lot", 40, optional=True, help="As on its packet."),
        ),
        _say,
        figures=_figures,
        fact=_corrected,
        save="Save and next",
        correct="Correct this weight",
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
    refusal = _shut(batch, found)
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
        printed_at=now(),
    )


def _cure(batch: Batch) -> tuple[tuple[Figure, ...], Refusal | None]:
    """What the cure that was weighed makes of the meat as weighed."""
    try:
        return batch_figures(batch), None
    except Refusal as refusal:
        return (), refusal


def _shut(batch: Batch, found: Sheet) -> Refusal | None:
    """Why there is no weighing sheet: the formula's cure is over the limit, and no exception was recorded."""
    return over_the_limit(batch, curing_for(found.formula))


@screen.route("/batches/<batch_id>/sheet/<key>", methods=["GET", "POST"])
def weigh_row(batch_id: str, key: str):
    """One row. Weighed again, it corrects the first and is never taken for an addition."""
    batch, found = find_sheet(batch_id)
    row = found.row(key) or abort(404)
    if _shut(batch, found) is not None:
        return redirect(path_of_row(batch, None), 303)
    if row.portion.role == "cure":
        return cure_row(batch, found, row)
    division = division_for(key)
    declared = _declared(row, division)
    weighed = book().line(row.line_id) if row.line_id else None
    aim, change, _ = rounding(row.wanted_kg, division) if row.wanted_kg else (None, None, None)
    return write(
        declared,
        Subject(batch, was=weighed.fact if weighed else None),
        about=batch.id,
        back=path_of_row(batch, found.next_after(key)),
        corrects=weighed,
        goes_on=True,
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

    return evolve(WEIGH_ROW, inputs=inputs, fact=fact)


def _as_wanted(row: Row, division_kg: float) -> dict[str, str]:
    """One tap: what the sheet asks for, as the scale at hand shows it."""
    if request.form.get("as") != "wanted":
        return {}
    how, quantity = reader(), quantity_of(row.key)
    aimed = aim_kg(row.wanted_kg, typed_division(request.form, division_kg)) or row.wanted_kg
    return {"mass_kg": as_typed(aimed, quantity, how), "mass_kg-unit": quantity.bare(how.system).symbol}
