"""A batch of a formula: by which measure it is scaled, what that comes to before it is begun, and the beginning."""

from __future__ import annotations

from collections.abc import Mapping

from attrs import evolve
from flask import abort, render_template, url_for

from core.daybook.facts.batch import MEAT, BatchStarted
from core.daybook.formulas import FormulaLine, Version
from core.mix import casings, scaling
from core.mix.formula import Formula
from core.mix.formula_boxes import FINISHED, RAW
from core.mix.scaling import ROUTES, Route, Scaled
from core.quantities import LENGTH, MASS, Amount
from core.sentence import Message, Rounded, Sentence
from core.working import Figure
from core.worksheet import Number
from web.entry_forms import EntryForm, Subject, Values, write
from web.forms import Input, Words, typed
from web.screens.mix.blueprint import screen
from web.screens.mix.formula import find_formula
from web.screens.mix.formula_figures import cure_figures
from web.visitor import reader

NAME = Words("name", "Name", example="Juniper coarse", help="What you will call it in the cellar.")
AMOUNTS: Mapping[Route, tuple[Number, ...]] = {
    "meat": (evolve(MEAT, label="Meat and fat on the table", help="The green weight of all of it."),),
    "raw": (RAW,),
    "finished": (FINISHED,),
    "casings": casings.BOXES,
}
EVERY: tuple[Route, ...] = tuple(ROUTES)
WORDS: Mapping[Route, Message] = {
    "meat": "You have the meat: everything else follows from its weight.",
    "raw": "So much is to hang in the chamber at first.",
    "finished": "So much is to be left when it is done.",
    "casings": "So many casings of one size are to be filled.",
}


def _scale(formula: Formula, by: Route, values: Values) -> Scaled:
    match by:
        case "meat":
            return scaling.by_meat(formula, **values)
        case "raw":
            return scaling.by_raw(formula, **values)
        case "finished":
            return scaling.by_finished(formula, **values)
        case "casings":
            return scaling.by_casings(formula, **values)


def _say(fact: BatchStarted) -> Sentence:
    told = {"name": fact.name, "meat": Rounded(Amount(fact.meat_kg, MASS))}
    return Sentence("Batch begun: {name}, {meat} of meat", told)


def declared(version: Version, by: Route) -> EntryForm:
    """The form for one way of scaling. What a fact was reached by is kept beside it, for its figures."""
    formula, reached = version.formula, dict[BatchStarted, Scaled]()

    def begin(values: Values, subject: Subject) -> BatchStarted:
        name, to = values.pop("name"), AMOUNTS[by][0].key
        scaled = _scale(formula, by, values)
        fact = BatchStarted(
            name=name,
            style=formula.style,
            meat_kg=scaled.meat_kg,
            target_loss=formula.target_loss,
            least_s=formula.least_s,
            formula=version.id,
            scaled_by=by,
            scaled_to=values[to],
        )
        reached[fact] = scaled
        return fact

    def figures(fact: BatchStarted, subject: Subject) -> tuple[Figure, ...]:
        return reached[fact].figures

    inputs: tuple[Input, ...] = (NAME, *AMOUNTS[by])
    return EntryForm(BatchStarted, ROUTES[by], inputs, _say, figures=figures, fact=begin, save="Begin and weigh out")


@screen.get("/formulas/<formula_id>/batch")
def make_batch(formula_id: str):
    """Which way it is to be scaled."""
    kept = find_formula(formula_id)
    offered: list[Route] = [
        by for by in ROUTES if not (by == "casings" and kept.current.formula.style == "whole-muscle")
    ]
    return render_template("mix/make_batch.html", kept=kept, routes=[(by, ROUTES[by], WORDS[by]) for by in offered])


@screen.route("/formulas/<formula_id>/batch/<by>", methods=["GET", "POST"])
def batch_by(formula_id: str, by: str):
    kept = find_formula(formula_id)
    if by not in EVERY:
        abort(404)
    return write(
        declared(kept.current, by),
        Subject(),
        about=None,
        back=lambda written: url_for("mix.sheet", batch_id=written),
        start=_start(kept, by),
        back_to=url_for("mix.make_batch", formula_id=kept.id),
        template="mix/batch_by.html",
        kept=kept,
        refusal=cure_figures(kept.current.formula)[1],
    )


def _start(kept: FormulaLine, by: Route) -> dict[str, str]:
    formula, how = kept.current.formula, reader()
    start = {"name": formula.name}
    if by == "casings":
        start |= {
            "diameter_m": typed(formula.casing_diameter_m, LENGTH, how),
            "length_m": typed(formula.casing_length_m, LENGTH, how),
        }
    return start
