"""Any entry by itself: corrected by a later one, taken back, or the last step undone. Nothing is overwritten."""

from __future__ import annotations

import re

import attrs
from flask import Blueprint, abort, redirect, render_template, request, url_for

from core.daybook.batch import Batch, fold
from core.daybook.book import Line
from core.daybook.devices import names
from core.daybook.entries import Entry
from core.daybook.facts import Withdrawn
from core.daybook.facts.batch import BatchStarted
from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.cure import RULES
from core.daybook.facts.device import DEVICES
from core.daybook.facts.formula import FormulaKept
from core.daybook.facts.instruments import InstrumentAdded
from core.daybook.facts.preparation import PreparationBegun
from core.daybook.formulas import fold_formula
from core.daybook.preparation import fold_run
from core.refusals import Refusal
from core.sentence import Sentence
from web.entry_forms import Subject, form_of, say, subject_about, with_saved, without, write
from web.instruments import shelf
from web.journal import NotSaved, book, record, sent_token
from web.visitor import reader

screen = Blueprint("entries", __name__)


@screen.route("/entries/<entry_id>/correct", methods=["GET", "POST"])
def correct(entry_id: str):
    line = _line(entry_id)
    declared = form_of(type(line.fact))
    batch = batch_of(line)
    instrument = shelf().find(line.entry.about)
    if declared is None or (batch is None and instrument is None and not _stands_alone(line)):
        abort(404)
    subject = (
        attrs.evolve(without(subject_about(batch, line), line), was=line.fact)
        if batch
        else Subject(was=line.fact, instrument=instrument)
    )
    back = home_of(line, batch)
    return write(
        declared,
        subject,
        about=line.entry.about,
        back=back,
        corrects=line,
        back_to=back,
        template="entries/correct.html",
        history=[(entry, say(Line((entry,)), reader()), written_by(entry)) for entry in line.versions],
    )


@screen.post("/entries/<entry_id>/withdraw")
def withdraw(entry_id: str):
    line = _line(entry_id)
    back = home_of(line, batch_of(line))
    if line.withdrawn:
        return redirect(with_saved(back, line.entry.id), 303)
    return _settle(line, attrs.evolve(line.entry, fact=Withdrawn()), back)


@screen.post("/entries/<entry_id>/undo")
def undo(entry_id: str):
    """Back to the version before the last; a line of one version is withdrawn."""
    line = _line(entry_id)
    back = local_path(request.form.get("back", "")) or url_for("today.page")
    token = sent_token()
    if token in book():  # the same tap twice must not undo the undo
        return redirect(with_saved(back, token), 303)
    before = line.versions[-2] if len(line.versions) > 1 else attrs.evolve(line.entry, fact=Withdrawn())
    return _settle(line, before, back)


def _settle(line: Line, as_it_was: Entry, back: str):
    """The line becomes again what the entry says, moment and all."""
    try:
        written = record(
            as_it_was.fact,
            about=line.entry.about,
            happened_at=as_it_was.happened_at,
            token=sent_token(),
            corrects=line.id,
        )
    except NotSaved as refusal:
        return _told(refusal), 503
    if isinstance(line.fact, BatchStarted) and isinstance(as_it_was.fact, Withdrawn):
        back = url_for("batches.all_of_them")  # its own page is gone
    if isinstance(line.fact, InstrumentAdded) and isinstance(as_it_was.fact, Withdrawn):
        back = url_for("chamber.instruments")
    if isinstance(line.fact, PreparationBegun) and isinstance(as_it_was.fact, Withdrawn):
        back = url_for("chamber.page")
    if isinstance(line.fact, FormulaKept) and isinstance(as_it_was.fact, Withdrawn):
        back = url_for("mix.formulas_page")
    return redirect(with_saved(back, written), 303)


def written_by(entry: Entry) -> Sentence | None:
    """Who wrote it and on which tablet, as far as either has a name."""
    told = {"writer": entry.by, "tablet": names(book()).get(entry.device, "")}
    if told["writer"] and told["tablet"]:
        return Sentence("{writer}, {tablet}", told)
    return Sentence("{writer}" if told["writer"] else "{tablet}", told) if any(told.values()) else None


def _told(refusal: Refusal) -> str:
    return render_template("not_saved.html", refusal=refusal)


def _line(entry_id: str) -> Line:
    return book().line(entry_id) if entry_id in book() else abort(404)


def batch_of(line: Line) -> Batch | None:
    """The batch the line belongs to: it begins it, is about it, or is about one of its pieces."""
    about = line.entry.about
    if about == CHAMBER or about not in book():
        return None
    begun = book().line(about)
    return fold(book(), begun.entry.about if begun.entry.about != about else about)


def _stands_alone(line: Line) -> bool:
    """It is about the chamber, a preparation run in it, a formula, the rules, or the tablets."""
    about = line.entry.about
    return (
        about in (CHAMBER, RULES, DEVICES)
        or fold_run(book(), about) is not None
        or fold_formula(book(), about) is not None
    )


def home_of(line: Line, batch: Batch | None) -> str:
    if batch is not None:
        return url_for("batches.one", batch_id=batch.id)
    if shelf().find(line.entry.about) is not None:
        return url_for("chamber.instrument", instrument_id=line.entry.about)
    for run_id in (line.entry.about, line.id):
        if fold_run(book(), run_id) is not None:
            return url_for("chamber.run", run_id=run_id)
    if fold_formula(book(), line.entry.about) is not None:
        return url_for("mix.formula", formula_id=line.entry.about)
    if line.entry.about == RULES:
        return url_for("mix.rules")
    if line.entry.about == DEVICES:
        return url_for("book.page")
    return url_for("chamber.page") if line.entry.about == CHAMBER else url_for("batches.all_of_them")


def local_path(path: str) -> str:
    """A path of this book without the mark of an earlier save; anything else is dropped. Our paths are plain words, so
    that nothing a browser would read otherwise ("//", "/\\", "/..") can pass."""
    path, _, query = path.partition("?")
    root = request.script_root
    if not path.startswith(root) or not re.fullmatch(r"/|(?:/[\w-]+)+", path[len(root) :], re.ASCII):
        return ""
    kept = "&".join(each for each in query.split("&") if each and each.isprintable() and not each.startswith("saved="))
    return f"{path}?{kept}" if kept else path
