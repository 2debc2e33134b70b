"""A note or a photo of a batch, of a piece or of the chamber."""

from __future__ import annotations

from flask import Blueprint, Response, abort, url_for

from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.note import MOST_WORDS, NoteTaken
from core.refusals import Missing
from core.sentence import Sentence
from web.entry_forms import EntryForm, Subject, Values, declare, path_of, write
from web.files import NoSuchFile, file_of
from web.forms import Words
from web.lookup import find_batch, find_piece
from web.photos import FILE_NAME, Photo

screen = Blueprint("notes", __name__)


def _taken(values: Values, subject: Subject) -> NoteTaken:
    if not values["words"] and values["photo"] is None:
        raise Missing("words", "Write something, or take a photo.")
    return NoteTaken(**values)


def _say(fact: NoteTaken) -> Sentence:
    if not fact.words:
        return Sentence("Photo")
    return Sentence("Photo: {words}" if fact.photo else "Note: {words}", {"words": fact.words})


NOTE = declare(
    EntryForm(
        NoteTaken,
        "Note or photo",
        (
            Words("words", "Note", MOST_WORDS, optional=True),
            Photo("photo", "Photo", help="It is made small first, and the place the camera wrote into it is left out."),
        ),
        _say,
        fact=_taken,
        texts=lambda fact, how: {"words": fact.words, "photo": fact.photo or ""},
        save="Save the note",
        correct="Correct this note",
    )
)


@screen.route("/batches/<batch_id>/note", methods=["GET", "POST"])
def of_batch(batch_id: str):
    batch = find_batch(batch_id)
    return write(NOTE, Subject(batch), about=batch.id, back=path_of(batch), back_to=path_of(batch))


@screen.route("/pieces/<piece_id>/note", methods=["GET", "POST"])
def of_piece(piece_id: str):
    batch, piece = find_piece(piece_id)
    back = url_for("release.piece", piece_id=piece.id)
    return write(NOTE, Subject(batch, piece), about=piece.id, back=back, back_to=back)


@screen.route("/chamber/note", methods=["GET", "POST"])
def of_chamber():
    back = url_for("chamber.page")
    return write(NOTE, Subject(), about=CHAMBER, back=back, back_to=back)


@screen.get("/photos/<name>")
def photo(name: str):
    try:
        return Response(file_of(name), mimetype="image/jpeg") if FILE_NAME.fullmatch(name) else abort(404)
    except NoSuchFile:
        abort(404)
