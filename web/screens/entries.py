"""Any entry by itself: put right by a later one, taken back, or the last step undone. Nothing is overwritten."""

from __future__ import annotations

from urllib.parse import urlsplit

from flask import Blueprint, abort, redirect, render_template, request, url_for

from core.daybook.batch import Batch, fold
from core.daybook.book import Line
from core.daybook.facts import CHAMBER, Fact, Withdrawn
from core.refusals import Refusal
from web.entry_forms import FORMS, Subject, say, subject_about, without, write
from web.journal import NotSaved, book, fresh_id, record
from web.visitor import manner

screen = Blueprint("entries", __name__)


@screen.route("/entries/<entry_id>/correct", methods=["GET", "POST"])
def correct(entry_id: str):
    line = _line(entry_id)
    declared = FORMS.get(type(_last_known(line)))
    if declared is None or line.withdrawn:
        abort(404)
    batch = _batch_of(line)
    subject = without(subject_about(batch, line), line) if batch else Subject()
    back = _home_of(line, batch)
    return write(
        declared,
        subject,
        about=line.entry.about,
        back=back,
        corrects=line,
        back_to=back,
        template="entries/correct.html",
        history=[(entry, say(Line((entry,)), manner())) for entry in line.versions],
    )


@screen.post("/entries/<entry_id>/withdraw")
def withdraw(entry_id: str):
    line = _line(entry_id)
    return _settle(line, Withdrawn(), _home_of(line, _batch_of(line)))


@screen.post("/entries/<entry_id>/undo")
def undo(entry_id: str):
    """Back to the version before the last; a line of one version is withdrawn."""
    line = _line(entry_id)
    before: Fact = line.versions[-2].fact if len(line.versions) > 1 else Withdrawn()
    return _settle(line, before, local_path(request.form.get("back", "")) or url_for("today.page"))


def _settle(line: Line, fact: Fact, back: str):
    try:
        written = record(
            fact,
            about=line.entry.about,
            happened_at=line.entry.happened_at,
            token=request.form.get("entry", "") or fresh_id(),
            corrects=line.id,
        )
    except NotSaved as refusal:
        return _told(refusal), 503
    return redirect(f"{back}{'&' if '?' in back else '?'}saved={written}", 303)


def _told(refusal: Refusal) -> str:
    return render_template("not_saved.html", refusal=refusal)


def _line(entry_id: str) -> Line:
    return book().line(entry_id) if entry_id in book() else abort(404)


def _last_known(line: Line) -> Fact:
    return next((entry.fact for entry in reversed(line.versions) if type(entry.fact) in FORMS), line.fact)


def _batch_of(line: Line) -> Batch | None:
    """The batch the line belongs to: it begins it, is about it, or is about one of its pieces."""
    about = line.entry.about
    if about == CHAMBER or about not in book():
        return None
    begun = book().line(about)
    return fold(book(), begun.entry.about if begun.entry.about != about else about)


def _home_of(line: Line, batch: Batch | None) -> str:
    if batch is not None:
        return url_for("batches.one", batch_id=batch.id)
    return url_for("chamber.page") if line.entry.about == CHAMBER else url_for("batches.all_of_them")


def local_path(path: str) -> str:
    """A path of this book without the mark of an earlier save; anything else is dropped."""
    parts = urlsplit(path)
    if parts.scheme or parts.netloc or not path.startswith("/"):
        return ""
    query = "&".join(each for each in parts.query.split("&") if each and not each.startswith("saved="))
    return f"{parts.path}?{query}" if query else parts.path
