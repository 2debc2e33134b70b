"""One declaration for each kind of entry: how it is asked for, drawn, checked, said in the log, and corrected.

The keys of its inputs are the fields of its fact, so a form turns into a fact and back without further words; a kind
that asks differently from what it keeps says how in `fact` and `texts`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import datetime, timedelta
from typing import Any
from urllib.parse import urlencode

import attrs
from attrs import frozen
from flask import redirect, render_template, request, url_for
from werkzeug.datastructures import MultiDict
from werkzeug.wrappers import Response

from core.daybook.batch import Batch
from core.daybook.book import Line
from core.daybook.corrections.figures import figures as corrected_figures
from core.daybook.corrections.readings import corrected
from core.daybook.entries import Entry
from core.daybook.facts import KINDS, Fact, Unreadable
from core.daybook.facts.fields import numbers
from core.daybook.instruments import Instrument
from core.daybook.piece import Piece
from core.quantities import Reader
from core.refusals import Refusal, Refused
from core.sentence import Message, Said, Sentence, said
from core.working import Figure
from core.worksheet import Number
from web.forms import (
    NOW,
    YESTERDAY,
    Form,
    Input,
    Moment,
    OptionalChoice,
    ReadWith,
    Ticks,
    Values,
    from_request,
    suggested,
    typed,
)
from web.instruments import ANOTHER, offer, shelf
from web.journal import book, fresh_id, record, sent_token
from web.routing import import_every_screen
from web.visitor import from_today, reader

MINUTE, HOUR, DAY = timedelta(minutes=1), timedelta(hours=1), timedelta(days=1)
KEPT_MOMENT = "at"
"""In the address of the next form of a round."""
ASKED_ANEW = "anew"
"""In the address of a form that is drawn in another shape, with what was typed."""


@frozen
class Subject:
    """What an entry is about, as far as there is one: its figures may depend on it. was: the fact that is corrected."""

    batch: Batch | None = None
    piece: Piece | None = None
    was: Fact | None = None
    instrument: Instrument | None = None


Asked = Input | ReadWith


def _nothing(fact: Any, subject: Subject) -> tuple[Figure, ...]:
    return ()


def reworded(values: Values, subject: Subject) -> Fact:
    """What is corrected, with other words: for a fact made elsewhere, whose form asks for its words only."""
    assert subject.was is not None
    return attrs.evolve(subject.was, **values)


@frozen
class EntryForm:
    """title heads the form; save is its button, correct heads a correction. say(fact): the log's sentence. digits: of
    an amount told exactly in it. figures: shown while typing; a Refusal raised there (a dose over the limit) refuses
    the entry.

    shape: the inputs where they depend on what is chosen in those named by `shaped_by`; every: all there can be. What
    was typed into boxes that are not drawn now is carried along and comes back with them. seldom: the keys of those
    that are folded until one holds something.
    """

    kind: type[Any]
    title: Message
    inputs: tuple[Asked, ...]
    say: Callable[[Any], Said]
    figures: Callable[[Any, Subject], tuple[Figure, ...]] = _nothing
    fact: Callable[[Values, Subject], Fact] | None = None
    texts: Callable[[Any, Reader], dict[str, str]] | None = None
    save: Message = "Save"
    correct: Message = "Correct this entry"
    hint: Said = ""
    shape: Callable[[Subject], tuple[Asked, ...]] | None = None
    shaped_by: tuple[str, ...] = ()
    every: tuple[Input, ...] = ()
    seldom: tuple[str, ...] = ()
    digits: int = 4

    @property
    def has_figures(self) -> bool:
        """Whether anything is worked out while one types."""
        return self.figures is not _nothing

    def make(self, values: Values, subject: Subject) -> Fact:
        return self.fact(values, subject) if self.fact else self.kind(**values)

    def texts_of(self, fact: Any, reader: Reader) -> dict[str, str]:
        """The fact as one would have typed it: where a correction starts from."""
        if self.texts:
            return self.texts(fact, reader)
        return {each.key: _typed(each, getattr(fact, each.key), reader) for each in self.inputs}

    def defaults(self, subject: Subject, reader: Reader) -> dict[str, str]:
        started = {each.key: _default(each, reader) for each in self.asked(subject)}
        return {key: text for key, text in started.items() if text is not None}

    def asked(self, subject: Subject) -> tuple[Input, ...]:
        """The inputs as they are drawn: a choice of the instruments that are kept, or no such choice at all."""
        inputs = self.shape(subject) if self.shape else self.inputs
        offered = (offer(each, self.kind, subject.was) if isinstance(each, ReadWith) else each for each in inputs)
        return tuple(each for each in offered if each is not None)


def _default(each: Input, reader: Reader) -> str | None:
    value = getattr(each, "default", None)
    return suggested(value, each.quantity, reader) if isinstance(each, Number) and value is not None else value


def _typed(input_: Asked, value: Any, reader: Reader) -> str:
    if isinstance(input_, Number):
        return typed(value, input_.quantity, reader)
    if isinstance(input_, ReadWith):
        return value or ANOTHER
    if isinstance(input_, OptionalChoice):
        return value or input_.none
    return " ".join(value) if isinstance(input_, Ticks) else str(value)


def typed_numbers(fact: Any, how: Reader) -> dict[str, str]:
    """Every number of the fact as one would type it into its box."""
    return {each.key: typed(getattr(fact, each.key), each.quantity, how) for each in numbers(fact.__class__)}


def write(
    declared: EntryForm,
    subject: Subject,
    *,
    about: str | None,
    back: str | Callable[[str], str],
    corrects: Line | None = None,
    start: Mapping[str, str] | None = None,
    filled: Mapping[str, str] | None = None,
    goes_on: bool = False,
    **context: Any,
) -> Response | str | tuple[str, int]:
    """The whole life of an entry's form: drawn, figured as one types, checked, recorded, and left for `back`.

    start: texts a new form begins with, over the declared defaults. filled: texts that the button pressed puts in, over
    what was typed. goes_on: whether `back` is the next of a round of such entries, which keeps the moment that was set.
    context: what its template wants besides.
    """
    how = reader()
    inputs = (*declared.asked(subject), Moment())
    if "figures" in request.args:
        return _figures_as_typed(declared, subject, from_request(inputs, request.args, ""), how)
    if request.method == "POST":
        form = _sent(declared, inputs, request.form, sent_token())
        form = attrs.evolve(form, texts={**form.texts, **(filled or {})})
        sent_before = book().line(form.token) if form.token in book() else None
        if sent_before is not None:
            subject = without(subject, sent_before)
        known = corrects or sent_before
        try:
            values, happened_at = _read(form, how, known.entry if known else None, again=sent_before is not None)
            fact = declared.make(values, subject)
            declared.figures(corrected(shelf(), fact, happened_at).fact, subject)
            written = record(
                fact,
                about=about,
                happened_at=happened_at,
                token=form.token,
                corrects=corrects.id if corrects else None,
            )
        except (Refusal, Refused) as refused:
            return _drawn(declared, subject, form.refused(refused), how, corrects, context), 422
        target = url_for("today.page") if from_today() else back(written) if callable(back) else back
        return redirect(with_saved(_with_moment(target, form) if goes_on else target, written), 303)
    texts = _answered(inputs, {**declared.defaults(subject, how), **(start or {})}, how)
    if goes_on and KEPT_MOMENT in request.args:
        texts["happened"] = request.args[KEPT_MOMENT]
    if corrects is not None:
        texts = {**declared.texts_of(corrects.fact, how), "happened": _minute(corrects.entry.happened_at)}
        texts = _answered(inputs, texts, how)
    if ASKED_ANEW in request.args:
        texts = {**declared.defaults(subject, how), **_sent(declared, inputs, request.args, "").texts}
    return _drawn(declared, subject, Form(fresh_id(), inputs, texts), how, corrects, context)


def _sent(declared: EntryForm, inputs: tuple[Input, ...], given: MultiDict[str, str], token: str) -> Form:
    """The form as sent, with what was typed into boxes of another shape."""
    return attrs.evolve(from_request((*inputs, *declared.every), given, token), inputs=inputs)


def _drawn(
    declared: EntryForm, subject: Subject, form: Form, how: Reader, corrects: Line | None, context: dict[str, Any]
) -> str:
    try:
        figures = _figures(declared, subject, form, how)
    except (Refusal, Refused):
        figures = ()
    if from_today():
        context["back_to"] = url_for("today.page")
    return render_template(
        context.pop("template", "entry.html"),
        declared=declared,
        form=form,
        figures=figures,
        subject=subject,
        corrects=corrects,
        **context,
    )


def _figures_as_typed(declared: EntryForm, subject: Subject, form: Form, how: Reader) -> str:
    """The figures of a form still being typed: what is missing is no fault yet, what is over a limit is told."""
    try:
        figures = _figures(declared, subject, form, how)
    except Refused:
        return render_template("figures.html", figures=(), refusal=None)
    except Refusal as refusal:
        return render_template("figures.html", figures=(), refusal=refusal)
    return render_template("figures.html", figures=figures, refusal=None)


def _read(form: Form, how: Reader, written: Entry | None, *, again: bool = False) -> tuple[Values, datetime]:
    """The values and the moment: that of what is written already, where it was left alone. The box holds minutes only,
    and nobody means to change the seconds. again: whether this very form has written it."""
    keeps = written is not None and _left_alone(form.text("happened"), written, again)
    texts = {key: text for key, text in form.texts.items() if not (keeps and key == "happened")}
    values: Values = attrs.evolve(form, texts=texts).read(how)
    present = values.pop("happened")
    return values, written.happened_at if keeps and written is not None else present


def _left_alone(text: str, written: Entry, again: bool) -> bool:
    """Whether the text says when it was written as having happened. "Now" in a correction is a new moment."""
    before = written.written_at - written.happened_at
    was_said = {NOW: before < MINUTE, YESTERDAY: abs(before - DAY) < HOUR + MINUTE}  # the clocks may have changed
    return text in ("", _minute(written.happened_at)) or (again and was_said.get(text, False))


def _figures(declared: EntryForm, subject: Subject, form: Form, how: Reader) -> tuple[Figure, ...]:
    """What the form as it stands comes to: its readings corrected, and what follows from them."""
    values, at = _read(form, how, None)
    found = corrected(shelf(), declared.make(values, subject), at)
    return (*declared.figures(found.fact, subject), *corrected_figures(found))


def _answered(inputs: tuple[Input, ...], texts: Mapping[str, str], how: Reader) -> dict[str, str]:
    """What the daybook itself puts into a box, or has kept, is not asked about where it is left alone."""
    unusual = {
        each.key: f"{texts[each.key]} {each.quantity.bare(how.system).symbol}"
        for each in inputs
        if isinstance(each, Number) and each.key in texts and each.asks(texts[each.key], how)
    }
    return {**texts, **unusual}


def _minute(moment: datetime) -> str:
    return moment.replace(tzinfo=None).isoformat(timespec="minutes")


def _with_moment(path: str, form: Form) -> str:
    """Now is no moment that was set."""
    text = form.text("happened")
    return path if text in ("", NOW) else f"{path}?{urlencode({KEPT_MOMENT: text})}"


def with_saved(path: str, entry_id: str) -> str:
    return f"{path}{'&' if '?' in path else '?'}saved={entry_id}"


_FORMS: dict[type[Any], EntryForm] = {}


def declare(form: EntryForm) -> EntryForm:
    _FORMS[form.kind] = form
    return form


def form_of(kind: type[Any]) -> EntryForm | None:
    """The form that writes facts of this kind, for the log and for corrections. Its screen may not be imported yet."""
    if kind not in _FORMS:
        import_every_screen()
    return _FORMS.get(kind)


def say(line: Line, how: Reader) -> str:
    """One sentence for the log, whatever the kind, its readings corrected; a withdrawn line is said as it was."""
    for entry in reversed(line.versions):
        form = form_of(type(entry.fact))
        if form is not None:
            found = corrected(shelf(), entry.fact, entry.happened_at)
            told = said(form.say(found.fact))
            for note in found.notes:
                told = Sentence("{told}, {note}", {"told": told, "note": note})
            return told.say(how, form.digits)
    if isinstance(line.fact, Unreadable):
        return _unreadable(line.fact).say(how)
    return said("Deleted" if line.withdrawn else "Written by a newer version of the daybook").say(how)


def _unreadable(fact: Unreadable) -> Sentence:
    kind = KINDS.get(fact.kind)
    form = form_of(kind) if kind else None
    told = Sentence("This entry cannot be read, and nothing is counted from it")
    return told if form is None else Sentence("{form}: {told}", {"form": said(form.title), "told": told})


def noted(told: Said, note: str) -> Sentence:
    """With what somebody noted beside it, where they did."""
    return Sentence("{told}: {note}", {"told": said(told), "note": note}) if note else said(told)


def subject_about(batch: Batch, line: Line) -> Subject:
    """The subject of an entry in a batch's log, for its correction."""
    about = line.entry.about
    piece = next((piece for piece in batch.pieces if about == piece.id != line.id), None)
    return Subject(batch, piece)


def without(subject: Subject, line: Line) -> Subject:
    """The same subject as if the line were not there: a weighing must not be compared with itself, nor a tag."""
    batch, piece = subject.batch, subject.piece
    if batch is not None:
        batch = attrs.evolve(batch, pieces=tuple(each for each in batch.pieces if each.id != line.id))
    if piece is not None:
        piece = attrs.evolve(piece, weighings=tuple(each for each in piece.weighings if each.line_id != line.id))
    return attrs.evolve(subject, batch=batch, piece=piece)


def path_of(batch: Batch) -> str:
    return url_for("batches.one", batch_id=batch.id)
