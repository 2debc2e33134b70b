"""Sums: every worksheet by itself, with no batch at all."""

from __future__ import annotations

from attrs import evolve
from flask import Blueprint, abort, make_response, render_template, request
from werkzeug.datastructures import MultiDict

from core.quantities import Reader
from core.refusals import Refusal, Refused
from core.verdict import Verdict
from core.working import Figure
from core.worksheet import Choice, Number, Worksheet
from core.worksheets import STAGES, WORKSHEETS, by_stage
from web.entry_forms import ASKED_ANEW
from web.forms import Form, from_request, typed
from web.kitchen import keep, texts_for
from web.screens.sought import is_found
from web.visitor import TEN_YEARS_S, reader

screen = Blueprint("sums", __name__)

USED, MOST_USED = "sums", 6
FIRST = ("cure-dose", "cure-ppm", "target-weight", "shrink", "moist-air", "degree-hours-left")


@screen.get("/sums")
def all_of_them():
    """Under their stages; a search narrows them to those whose words hold it."""
    sought = request.args.get("find", "").strip()[:60]
    found = {stage: [sheet for sheet in sheets if is_found(sheet, sought)] for stage, sheets in by_stage().items()}
    return render_template(
        "sums/all.html",
        stages={stage: sheets for stage, sheets in found.items() if sheets},
        heads=STAGES,
        sought=sought,
        used=[] if sought else [WORKSHEETS[name] for name in _used()],
    )


def _used() -> list[str]:
    """The sums opened last on this device, the newest first; on one that has opened few, those that most begin with."""
    opened = [name for name in request.cookies.get(USED, "").split("+") if name in WORKSHEETS]
    return [*opened, *(name for name in FIRST if name not in opened)][:MOST_USED]


@screen.route("/sums/<name>", methods=["GET", "POST"])
def one(name: str):
    sheet = WORKSHEETS.get(name) or abort(404)
    how = reader()
    typing, anew = "figures" in request.args, ASKED_ANEW in request.args
    if typing or anew or request.method == "POST":
        form = _sent(sheet, request.form if request.method == "POST" else request.args)
    else:
        texts = _defaults(sheet, how) | texts_for(sheet, how)
        form = Form("", sheet.drawn(texts), texts)
    try:
        figures, verdict = _answer(sheet, form, how)
    except Refused as refused:
        form = form.refused(refused)
        figures, verdict = (), None
    if typing:
        told = {"refusal": _worth_saying(form), "needed": form.needed}
        answer = make_response(render_template("figures.html", figures=figures, verdict=verdict, **told))
        if figures:
            keep(answer, sheet, sheet.read(form.readable(how), how))
        return answer
    shown = form if request.method == "POST" else evolve(form, refusals={})
    told = {"figures": figures, "verdict": verdict, "needed": form.needed}
    page = make_response(render_template("sums/one.html", sheet=sheet, form=shown, **told))
    page.status_code = 422 if shown.refusals else 200
    used = [name, *(each for each in _used() if each != name)]
    page.set_cookie(USED, "+".join(used[:MOST_USED]), max_age=TEN_YEARS_S, samesite="Lax")
    return page


def _sent(sheet: Worksheet, given: MultiDict[str, str]) -> Form:
    """The form as sent; what was typed into boxes that are not drawn now is carried along, and counts for nothing."""
    form = from_request(sheet.inputs, given, "")
    return evolve(form, inputs=sheet.drawn(form.texts))


def _answer(sheet: Worksheet, form: Form, how: Reader) -> tuple[tuple[Figure, ...], Verdict | None]:
    answer = sheet.answer(form.readable(how), how)
    return answer.figures, answer.verdict


def _worth_saying(form: Form) -> Refusal | None:
    """While one types, an empty box is no fault yet; the first filled one that cannot stand is told."""
    for field, sentence in form.refusals.items():
        if not field or form.text(field).strip():
            return Refusal(field, sentence)
    return None


def _defaults(sheet: Worksheet, how: Reader) -> dict[str, str]:
    return {each.key: _default(each, how) for each in sheet.inputs if each.default is not None}


def _default(each: Number | Choice, how: Reader) -> str:
    if isinstance(each, Choice):
        return each.default or ""
    return typed(each.default, each.quantity, how)
