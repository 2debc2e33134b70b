"""Several pieces hung at once: a weight each, tags in series, the rest said once for all of them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime

from attrs import evolve, frozen
from flask import Blueprint, redirect, render_template, request, url_for
from werkzeug.datastructures import MultiDict

from core.daybook.batch import Batch
from core.daybook.facts.batch import HUNG, PieceHung
from core.daybook.tags import series
from core.quantities import Reader
from core.refusals import Missing, NotAQuantity, OutOfRange, Refusal, Refused
from core.sentence import Sentence
from core.worksheet import Number
from web.entry_forms import ASKED_ANEW, path_of, with_saved
from web.forms import Form, Input, Moment, ReadWith, Values, Words, from_request
from web.instruments import offer
from web.journal import book, fresh_id, record, sent_token
from web.lookup import find_batch
from web.screens.dry import HANG, like_the_last
from web.visitor import reader

screen = Blueprint("several", __name__)

FIRST_ROWS, MOST_ROWS = 6, 30
FIRST_TAG = Words("tag", "First tag", 20, example="F-1", help="The next are numbered after it: F-1, F-2, F-3.")


@frozen
class Drawn:
    """A row of it: the tag that its piece gets, and the id that its entry gets, so that sent twice it is one entry."""

    tag: str
    box: Number
    token: str


@screen.route("/batches/<batch_id>/hang/several", methods=["GET", "POST"])
def hang_several(batch_id: str):
    batch, how = find_batch(batch_id), reader()
    if request.method == "GET" and ASKED_ANEW not in request.args:
        return _drawn(batch, Form(fresh_id(), _inputs(FIRST_ROWS), like_the_last(batch)), {})
    sent = request.form if request.method == "POST" else request.args
    rows = min(MOST_ROWS, max(1, sum(key.startswith("token-") for key in sent)) + FIRST_ROWS * ("more" in sent))
    form = from_request(_inputs(rows), sent, sent_token() if request.method == "POST" else sent.get("entry", ""))
    if request.method == "GET" or "more" in sent:
        return _drawn(batch, form, sent)
    try:
        written = _hang(batch, form, how, sent)
    except (Refusal, Refused) as refused:
        return _drawn(batch, form.refused(refused), sent), 422
    return redirect(with_saved(path_of(batch), written), 303)


def _inputs(rows: int) -> tuple[Input, ...]:
    """The first tag, a weight for each row, and what `HANG` asks besides; of a scale only where one is kept."""
    weights = tuple(evolve(HUNG, key=f"start_kg-{at}", optional=True, help="") for at in range(1, rows + 1))
    besides = (each for each in HANG.inputs if each.key not in (FIRST_TAG.key, HUNG.key))
    offered = (offer(each, PieceHung, None) if isinstance(each, ReadWith) else each for each in besides)
    return (FIRST_TAG, *weights, *(each for each in offered if each is not None), Moment())


def _weights(form: Form) -> list[Number]:
    return [each for each in form.inputs if isinstance(each, Number) and each.key.startswith("start_kg-")]


def _drawn(batch: Batch, form: Form, sent: Mapping[str, str]) -> str:
    weights = _weights(form)
    tags = series(form.text("tag"), len(weights))
    rows = [
        Drawn(tag, each, sent.get(f"token-{each.key}") or fresh_id()) for tag, each in zip(tags, weights, strict=True)
    ]
    besides = [each for each in form.inputs if each not in weights and each is not FIRST_TAG]
    return render_template(
        "dry/several.html",
        batch=batch,
        form=form,
        first=FIRST_TAG,
        rows=rows,
        seldom=[each for each in besides if each.key in HANG.seldom],
        rest=[each for each in besides if each.key not in HANG.seldom],
        back=url_for("dry.hang", batch_id=batch.id),
        most=MOST_ROWS,
    )


def _hang(batch: Batch, form: Form, how: Reader, sent: MultiDict[str, str]) -> str:
    """All of them or none; returns the id of the last. Raises Refused with a sentence for each box."""
    values: Values = form.read(how)
    weights = _weights(form)
    tags = dict(zip((each.key for each in weights), series(values.pop("tag"), len(weights)), strict=True))
    typed = {each.key: values.pop(each.key) for each in weights}
    hung = {key: mass_kg for key, mass_kg in typed.items() if mass_kg is not None}
    if not hung:
        raise Missing(weights[0].key, "Enter the weight of at least one piece.")
    tokens = {key: sent.get(f"token-{key}") or fresh_id() for key in hung}
    _check_tags(batch, {key: tags[key] for key in hung}, set(tokens.values()))
    moment = _first_sent(tokens.values()) or values["happened"]
    del values["happened"]
    return [
        record(
            PieceHung(tag=tags[key], start_kg=mass_kg, **values), about=batch.id, happened_at=moment, token=tokens[key]
        )
        for key, mass_kg in hung.items()
    ][-1]


def _first_sent(tokens: Iterable[str]) -> datetime | None:
    """When these very rows were hung, if the form was sent before: sent again it hangs them then, and so once."""
    return next((book().entry(each).happened_at for each in tokens if each in book()), None)


def _check_tags(batch: Batch, tags: dict[str, str], written: set[str]) -> None:
    """written: the ids that these very rows get: a piece that bears one was hung when the form was sent before."""
    if not all(tags.values()):
        raise NotAQuantity("tag", "A tag that several are numbered after ends in a number, for example F-1.")
    taken = {piece.tag.casefold() for piece in batch.pieces if piece.id not in written}
    double = next((tag for tag in tags.values() if tag.casefold() in taken), None)
    if double is not None:
        told = Sentence("There is a piece {tag} already. Give the first one another tag.", {"tag": double})
        raise OutOfRange("tag", told)
