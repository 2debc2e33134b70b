"""The second step: how a file is read. Its first rows under the guess, its questions, and each column to be changed."""

from __future__ import annotations

from typing import Any, cast

from flask import abort, redirect, render_template, request, url_for
from werkzeug.datastructures import MultiDict

from core.chamber.logs import Layout, answer, change, check, preview_times
from core.chamber.logs.column import ROLE_WORDS, UNITS_FOR, Column
from core.chamber.logs.naming import called
from core.chamber.logs.scales import SCALES
from core.daybook.proofs import logged_at
from core.refusals import Refusal, Refused
from core.sentence import Message, Said, Sentence, Value, as_typed, said
from web.screens.chamber.blueprint import screen
from web.screens.chamber.proofs.drafts import Draft, DraftFile, find_draft
from web.visitor import reader

NOT_KNOWN: Message = "not known"
UNIT_NOT_KNOWN: Message = "unit not known"
AS_WRITTEN: Message = "as each cell says"
UNIT_WORDS: dict[str, Said] = {
    **{unit: as_typed(unit) if len(unit) < 3 else scale.words for unit, scale in SCALES.items()},
    "written": AS_WRITTEN,
}
LONGEST_PROBE = 40


@screen.route("/chamber/proofs/drafts/<draft_id>/files/<int:at>", methods=["GET", "POST"])
def lay_out(draft_id: str, at: int):
    draft = find_draft(draft_id)
    file = _file(draft, at)
    if request.method == "GET":
        return _page(draft, at, file.layout, {})
    if request.form.get("do") == "leave":
        draft.leave_out(at)
        return redirect(_next(draft), 303)
    layout, refusals = _as_told(file, request.form)
    is_settled = request.form.get("do") != "look" and not refusals
    if is_settled:
        try:
            check(layout)
        except Refused as refused:
            shown = {question.about for question in file.layout.questions}
            refusals = {
                _field(each.field): each.said
                for each in refused.refusals
                if each.field in shown or each.field not in {question.about for question in layout.questions}
            }  # a question that only these answers opened is not yet one left out
            is_settled = False
    draft.lay_out(at, layout, is_settled=is_settled)
    if is_settled:
        return redirect(_next(draft), 303)
    page = _page(draft, at, layout, refusals)
    return page if not refusals else (page, 422)


def _file(draft: Draft, at: int) -> DraftFile:
    return draft.files[at] if at < len(draft.files) else abort(404)


def _next(draft: Draft) -> str:
    at = draft.first_unsettled
    if draft.then and at is None:
        return draft.then
    if not draft.files:
        return url_for("chamber.new_proof", draft=draft.id)
    if at is None:
        return url_for("chamber.set_proof", draft_id=draft.id)
    return url_for("chamber.lay_out", draft_id=draft.id, at=at)


def _page(draft: Draft, at: int, layout: Layout, refusals: dict[str, Sentence]) -> str:
    times = [each for each in preview_times(layout) if each == each]
    is_dated = layout.times.kind != "elapsed"
    return render_template(
        "chamber/proofs/layout.html",
        draft=draft,
        at=at,
        file=draft.files[at],
        layout=layout,
        first_time=Sentence("{at}", {"at": logged_at(times[0])}) if times and is_dated else None,
        refusals=refusals,
        repeated=[each.about for each in layout.questions if refusals.get(f"q-{each.about}") == each.sentence],
        roles=ROLE_WORDS,
        units_of=UNITS_FOR,
        unit_words=UNIT_WORDS,
        guess_of=_words,
        called=called,
    )


def _words(column: Column) -> Sentence:
    """What a column is taken for, in a word or two."""
    role = said(ROLE_WORDS.get(column.role, NOT_KNOWN))
    if column.role not in UNITS_FOR:
        return role
    told: dict[str, Value] = {"role": role, "unit": said(UNIT_WORDS.get(column.unit, UNIT_NOT_KNOWN))}
    if not column.probe:
        return Sentence("{role}, {unit}", told)
    return Sentence("{role}, {unit}, {probe}", told | {"probe": called(column.probe)})


def _as_told(file: DraftFile, sent: MultiDict[str, str]) -> tuple[Layout, dict[str, Sentence]]:
    """The layout with the answers and changes sent; what does not fit is a sentence by its field."""
    layout, refusals = file.layout, dict[str, Sentence]()
    drawn = layout
    for question in drawn.questions:
        key = sent.get(f"q-{question.about}", "")
        if not key or question.about not in {each.about for each in layout.questions}:
            continue  # an answer before it may have settled it
        try:
            layout = answer(file.data, layout, question.about, key)
        except Refusal as refusal:
            refusals[f"q-{question.about}"] = refusal.said
    if drawn.decimal != layout.decimal:  # all columns are seen anew: what was sent of the old ones says nothing
        return layout, refusals
    for index, column in enumerate(drawn.columns):
        try:
            layout = _changed(file.data, layout, index, column, sent)
        except Refusal as refusal:
            refusals[f"role-{index + 1}"] = refusal.said
    return layout, refusals


def _changed(data: bytes, layout: Layout, index: int, drawn: Column, sent: MultiDict[str, str]) -> Layout:
    """Only what differs from what was drawn is a change by hand."""
    number = index + 1
    role = cast(Any, sent.get(f"role-{number}", ""))
    if role and role != drawn.role:
        layout = change(data, layout, index, role=role)
    unit = cast(Any, sent.get(f"unit-{number}", ""))
    if unit and unit != drawn.unit and unit in UNITS_FOR.get(layout.columns[index].role, ()):
        layout = change(data, layout, index, unit=unit)
    probe = " ".join(sent.get(f"probe-{number}", "").split())[:LONGEST_PROBE]
    if probe and probe not in (drawn.probe, called(drawn.probe).say(reader())):
        layout = change(data, layout, index, probe=probe)
    return layout


def _field(name: str) -> str:
    """Where on the page a refusal of the layout stands."""
    kind, _, number = name.partition(" ")
    return f"q-{name}" if kind in _WHOLE or (kind in _OF_A_COLUMN and number) else ""


_WHOLE = ("order", "decimal", "elapsed", "month", "count", "clocks", "loss")
_OF_A_COLUMN = ("role", "unit", "nothing", "beside")
