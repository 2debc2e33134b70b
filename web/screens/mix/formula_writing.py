"""Writing a formula: from nothing, from an example or from a version. Every saving is a version of its own."""

from __future__ import annotations

from typing import Any

import attrs
from attrs import evolve, frozen
from flask import abort, redirect, render_template, request, url_for

from core.daybook.facts.formula import FormulaChanged, FormulaKept
from core.daybook.formulas import FormulaLine
from core.mix.examples import example
from core.mix.formula import Formula
from core.mix.formula_boxes import FAT_WANTED
from core.quantities import Reader
from core.refusals import Refusal, Refused
from core.sentence import Message, Sentence
from core.working import Figure
from web.entry_forms import ASKED_ANEW, with_saved
from web.journal import book, fresh_id, record, sent_token
from web.screens.mix import formula_rows as rows
from web.screens.mix.blueprint import screen
from web.screens.mix.formula import find_formula
from web.screens.mix.formula_figures import cure_figures, fat
from web.visitor import now, reader


@frozen
class Writing:
    """What is being written. kept: the formula it is to be the next version of. start: what it was begun from."""

    kept: FormulaLine | None
    start: Formula | None

    @property
    def title(self) -> Sentence:
        return Sentence("Change {formula}", {"formula": self.kept.name}) if self.kept else Sentence("New formula")

    @property
    def back_to(self) -> str:
        return url_for("mix.formula", formula_id=self.kept.id) if self.kept else url_for("mix.formulas_page")

    @property
    def cautions(self) -> tuple[str, ...]:
        """They stay with a formula, whatever is changed in it."""
        return self.start.cautions if self.start else ()

    @property
    def warnings(self) -> tuple[Message, ...]:
        return self.start.warnings if self.start else ()

    @property
    def action(self) -> str:
        """Where the form is sent: to itself, still knowing what it was begun from."""
        begun: dict[str, Any] = {key: request.args[key] for key in ("example", "version") if key in request.args}
        return url_for(str(request.endpoint), **request.view_args or {}, **begun)


@screen.route("/formulas/new", methods=["GET", "POST"])
def new_formula():
    begun = example(request.args.get("example", ""))
    return _write(Writing(None, begun.formula if begun else None))


@screen.route("/formulas/<formula_id>/change", methods=["GET", "POST"])
def change_formula(formula_id: str):
    """From the version in use, or from the older one that is asked for."""
    kept = find_formula(formula_id)
    version = kept.version(request.args.get("version", "")) or kept.current
    return _write(Writing(kept, version.formula))


def _write(writing: Writing):
    how = reader()
    if "figures" in request.args:
        figures, refusal = _figures(writing, rows.draft(request.args, ""), how)
        return render_template("figures.html", figures=figures, refusal=refusal)
    if ASKED_ANEW in request.args:
        return _drawn(writing, rows.draft(request.args, fresh_id()), how)
    if request.method == "GET":
        return _drawn(writing, rows.draft(_begun(writing, how), fresh_id()), how)
    drawn = rows.draft(request.form, sent_token())
    try:
        if do := request.form.get("do"):
            texts, focus = _texts_after(do, drawn, how)
            return _drawn(writing, rows.draft(texts, drawn.form.token), how, focus)
        written = _keep(writing.kept, rows.read_formula(drawn, how, writing.cautions), drawn.form.token)
    except (Refusal, Refused) as refused:
        return _drawn(writing, evolve(drawn, form=drawn.form.refused(refused)), how), 422
    formula_id = writing.kept.id if writing.kept else written
    return redirect(with_saved(url_for("mix.formula", formula_id=formula_id), written), 303)


def _begun(writing: Writing, how: Reader) -> dict[str, str]:
    if writing.start is not None:
        return rows.texts_of(writing.start, how)
    return rows.with_row(rows.with_row(rows.NEW, "meat", how), "part", how)


def _keep(kept: FormulaLine | None, given: Formula, token: str) -> str:
    """One version; sent twice it is the first one's moment that counts, and so the same entry."""
    fields = {each.name: getattr(given, each.name) for each in attrs.fields(Formula)}
    at = book().entry(token).happened_at if token in book() else now()
    if kept is None:
        return record(FormulaKept(**fields), about=None, happened_at=at, token=token)
    return record(FormulaChanged(**fields), about=kept.id, happened_at=at, token=token)


def _texts_after(do: str, drawn: rows.Draft, how: Reader) -> tuple[dict[str, str], str]:
    """A row more or less, or other shares: nothing is saved, what was typed stays. The texts, and the box to go to."""
    texts = drawn.form.texts
    match do.partition("-"):
        case ("add", _, ("meat" | "part" | "cure") as kind):
            added = rows.with_row(texts, kind, how)
            return added, next(key for key in added if key not in texts and key.endswith("-name"))
        case ("remove", _, prefix):
            return rows.without_row(texts, prefix), ""
        case ("whole", _, _):
            return rows.with_shares_made_whole(drawn, how), ""
        case ("fat", _, _):
            return rows.with_shares_for_fat(drawn, how), "wanted"
        case _:
            abort(400)


def _drawn(writing: Writing, drawn: rows.Draft, how: Reader, focus: str = "") -> str:
    figures, refusal = _figures(writing, drawn, how)
    return render_template(
        "mix/formula_form.html",
        writing=writing,
        drawn=drawn,
        form=drawn.form,
        head=rows.HEAD,
        seldom=rows.SELDOM,
        note=rows.NOTE,
        wanted=FAT_WANTED,
        figures=figures,
        refusal=refusal,
        focus=focus,
    )


def _figures(writing: Writing, drawn: rows.Draft, how: Reader) -> tuple[tuple[Figure, ...], Refusal | None]:
    """What it comes to as far as it is typed; what is missing is no fault yet."""
    try:
        given = rows.read_formula(drawn, how, writing.cautions)
    except Refused:
        return (), None
    figures, refusal = cure_figures(given)
    return (*figures, fat(given)), refusal
