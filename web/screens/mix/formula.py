"""Formulas: the list, and one with what it comes to, in any of its versions."""

from __future__ import annotations

from typing import Any

from flask import abort, render_template, request

from core.daybook.batch import batches
from core.daybook.facts.formula import FormulaChanged, FormulaKept
from core.daybook.formulas import FormulaLine, fold_formula, formulas, version_at
from core.mix.balance import PARTS
from core.mix.composition import CUTS
from core.mix.examples import EXAMPLES
from core.mix.formula import ROLES, Formula
from core.quantities import LOSS
from core.reading import read
from core.refusals import Refusal
from core.sentence import Message
from web.entry_forms import EntryForm, declare, noted, reworded
from web.forms import Words, typed
from web.journal import book
from web.screens.mix.blueprint import screen
from web.screens.mix.formula_figures import cost_figures, cure_figures, fat, made_of
from web.visitor import reader

_CORRECTED = (
    "A corrected word stays in this version. Another dose or another meat is a new version: change the formula."
)


def _declared(kind: type[Any], told: Message) -> EntryForm:
    """The log's words for a version. Its correction changes its words only; the sums of batches rest on the rest."""
    return declare(
        EntryForm(
            kind,
            "Formula",
            (Words("name", "Name", example="Juniper coarse"), Words("note", "Note", 400, optional=True)),
            lambda fact: noted(told, fact.name),
            fact=reworded,
            hint=_CORRECTED,
        )
    )


KEPT = _declared(FormulaKept, "Formula kept")
CHANGED = _declared(FormulaChanged, "Formula changed")


def find_formula(formula_id: str) -> FormulaLine:
    return fold_formula(book(), formula_id) or abort(404)


@screen.get("/formulas")
def formulas_page():
    return render_template("mix/formulas.html", formulas=formulas(book()), examples=EXAMPLES)


@screen.get("/formulas/<formula_id>")
def formula(formula_id: str):
    """The version in use, or the older one that is asked for."""
    kept = find_formula(formula_id)
    asked = request.args.get("version", "")
    version = (version_at(book(), kept, asked) or abort(404)) if asked else kept.current
    loss, text, refusal = _loss(version.formula)
    try:
        made, refusal = made_of(version.formula, loss), refusal
    except Refusal as too_much:
        made, refusal = (), too_much
    return render_template(
        "mix/formula.html",
        kept=kept,
        version=version,
        formula=version.formula,
        cure=cure_figures(version.formula),
        fat=fat(version.formula),
        made=made,
        loss=loss,
        loss_text=text,
        refusal=refusal,
        cost=cost_figures(version.formula) if made else (),
        made_with=_made_with(kept),
        roles=ROLES,
        cuts=CUTS,
        part_names=PARTS,
    )


def _loss(given: Formula) -> tuple[float, str, Refusal | None]:
    """The loss that the balance is asked for: typed, or the formula's own."""
    how, text = reader(), request.args.get("loss", "")
    if not text.strip():
        return given.target_loss, typed(given.target_loss, LOSS, how), None
    try:
        return read(text, LOSS, how, field="loss", label="Loss"), text, None
    except Refusal as refusal:
        return given.target_loss, text, refusal


def _made_with(kept: FormulaLine) -> list[tuple[Any, int]]:
    """Batches made with it and the number of their version, newest first."""
    numbers = {entry_id: version.number for version in kept.versions for entry_id in version.entries}
    return [(each, numbers[each.start.formula]) for each in batches(book()) if each.start.formula in numbers]
