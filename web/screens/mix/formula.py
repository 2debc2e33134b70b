"""Formulas: the list, one with what it comes to, and writing one, whose every saving is a version of its own."""

from __future__ import annotations

from typing import Any

import attrs
from attrs import evolve
from flask import abort, redirect, render_template, request, url_for

from core.daybook.batch import batches
from core.daybook.facts import FormulaChanged, FormulaKept
from core.daybook.formulas import FormulaLine, fold_formula, formulas
from core.mix.balance import PARTS
from core.mix.composition import CUTS
from core.mix.examples import EXAMPLES, example
from core.mix.formula import ROLES, Formula
from core.quantities import LOSS, Manner
from core.reading import read
from core.refusals import Refusal, Refused
from web.entry_forms import EntryForm, declare, with_saved
from web.forms import Words, typed
from web.journal import book, fresh_id, record, sent_token
from web.screens.mix import formula_rows as rows
from web.screens.mix.blueprint import screen
from web.screens.mix.formula_figures import cost_figures, cure_figures, fat, made_of
from web.visitor import manner, now

_CORRECTED = (
    "A word put right stays in this version. Another dose or another meat is a new version: change the formula."
)


def _declared(kind: type[Any], said: str) -> EntryForm:
    """The log's words for a version. Its correction puts right its words only; the sums of batches rest on the rest."""
    return declare(
        EntryForm(
            kind,
            "Formula",
            (Words("name", "Name", example="Juniper coarse"), Words("note", "Note", 400, optional=True)),
            lambda fact, how: f"{said}: {fact.name}",
            fact=lambda values, subject: evolve(subject.was, **values),
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
    version = (kept.version(asked) or abort(404)) if asked else kept.current
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
    how, text = manner(), request.args.get("loss", "")
    if not text.strip():
        return given.target_loss, typed(given.target_loss, LOSS, how), None
    try:
        return read(text, LOSS, how, field="loss", label="Loss"), text, None
    except Refusal as refusal:
        return given.target_loss, text, refusal


def _made_with(kept: FormulaLine) -> list[tuple[Any, int]]:
    """Batches made with it and the number of their version, newest first."""
    numbers = {version.id: version.number for version in kept.versions}
    return [(each, numbers[each.start.formula]) for each in batches(book()) if each.start.formula in numbers]


@screen.route("/formulas/new", methods=["GET", "POST"])
def new_formula():
    """From nothing, or from an example of ours."""
    begun = example(request.args.get("example", ""))
    start = begun.formula if begun else None
    return _write(None, start, url_for("mix.formulas_page"), "New formula")


@screen.route("/formulas/<formula_id>/change", methods=["GET", "POST"])
def change_formula(formula_id: str):
    """The next version, from the one in use or from the older one that is asked for."""
    kept = find_formula(formula_id)
    asked = kept.version(request.args.get("version", "")) or kept.current
    back = url_for("mix.formula", formula_id=kept.id)
    return _write(kept, asked.formula, back, f"Change {asked.formula.name}")


def _write(kept: FormulaLine | None, start: Formula | None, back: str, title: str):
    how = manner()
    cautions = start.cautions if start else ()
    if "figures" in request.args:
        return _as_typed(rows.draft(request.args, ""), how, cautions)
    if request.method == "GET":
        texts = rows.texts_of(start, how) if start else rows.with_row(rows.with_row(rows.NEW, "meat", how), "part", how)
        return _drawn(rows.draft(texts, fresh_id()), how, cautions, back, title)
    drawn = rows.draft(request.form, sent_token())
    if do := request.form.get("do"):
        return _rearranged(do, drawn, how, cautions, back, title)
    try:
        written = _keep(kept, rows.read_formula(drawn, how, cautions), drawn.form.token)
    except (Refusal, Refused) as refused:
        return _drawn(evolve(drawn, form=drawn.form.refused(refused)), how, cautions, back, title), 422
    formula_id = kept.id if kept else written
    return redirect(with_saved(url_for("mix.formula", formula_id=formula_id), written), 303)


def _keep(kept: FormulaLine | None, given: Formula, token: str) -> str:
    """One version; sent twice it is the first one's moment that counts, and so the same entry."""
    fields = {each.name: getattr(given, each.name) for each in attrs.fields(Formula)}
    at = book().entry(token).happened_at if token in book() else now()
    if kept is None:
        return record(FormulaKept(**fields), about=None, happened_at=at, token=token)
    return record(FormulaChanged(**fields), about=kept.id, happened_at=at, token=token)


def _rearranged(do: str, drawn: rows.Draft, how: Manner, cautions: tuple[str, ...], back: str, title: str):
    """A row more or less, or other shares: nothing is saved, and what was typed stays."""
    try:
        texts, focus = _texts_after(do, drawn, how)
    except (Refusal, Refused) as refused:
        return _drawn(evolve(drawn, form=drawn.form.refused(refused)), how, cautions, back, title), 422
    return _drawn(rows.draft(texts, drawn.form.token), how, cautions, back, title, focus)


def _texts_after(do: str, drawn: rows.Draft, how: Manner) -> tuple[dict[str, str], str]:
    """The texts, and the box to go to."""
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


def _drawn(drawn: rows.Draft, how: Manner, cautions: tuple[str, ...], back: str, title: str, focus: str = "") -> str:
    figures, refusal = _figures(drawn, how, cautions)
    return render_template(
        "mix/formula_form.html",
        title=title,
        drawn=drawn,
        form=drawn.form,
        head=rows.HEAD,
        note=rows.NOTE,
        wanted=rows.WANTED,
        figures=figures,
        refusal=refusal,
        cautions=cautions,
        back_to=back,
        focus=focus,
        action=_action(),
    )


def _action() -> str:
    """Where the form is sent: to itself, still knowing what it was begun from."""
    begun = {key: request.args[key] for key in ("example", "version") if key in request.args}
    return url_for(str(request.endpoint), **request.view_args or {}, **begun)


def _as_typed(drawn: rows.Draft, how: Manner, cautions: tuple[str, ...]) -> str:
    figures, refusal = _figures(drawn, how, cautions)
    return render_template("figures.html", figures=figures, refusal=refusal)


def _figures(drawn: rows.Draft, how: Manner, cautions: tuple[str, ...]):
    """What it comes to as far as it is typed; what is missing is no fault yet."""
    try:
        given = rows.read_formula(drawn, how, cautions)
    except Refused:
        return (), None
    figures, refusal = cure_figures(given)
    return (fat(given), *figures), refusal
