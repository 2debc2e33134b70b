"""Hanging and drying: tag and weigh each piece, one at a time, and see what it has lost."""

from __future__ import annotations

from attrs import evolve
from flask import Blueprint, redirect, url_for

from core.daybook.ahead import should_weigh, weighed_in_round
from core.daybook.batch import Batch
from core.daybook.facts.batch import PieceCut, PieceHung, PieceWeighed
from core.daybook.facts.fields import boxes
from core.daybook.piece import Piece
from core.daybook.tags import next_tag, tag_order
from core.dry import first_weighing, shrink
from core.dry.doubt import question
from core.quantities import LENGTH, PIECE_MASS, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Rounded, Sentence, Value, in_a_row, listed
from core.working import Figure
from web.entry_forms import EntryForm, Subject, Values, declare, path_of, write
from web.forms import OptionalChoice, ReadWith, Words
from web.journal import book
from web.lookup import find_batch, find_piece
from web.visitor import now, reader

screen = Blueprint("dry", __name__)

_SCALE = ReadWith("scale", "Scale", ("scale",))
CASINGS: dict[str, Message] = {
    "natural": "natural casing",
    "collagen": "collagen casing",
    "fibrous": "fibrous casing",
    "membrane": "membrane bag",
    "none": "no casing",
}
COUNTED_FROM: dict[str, Message] = {"filled": "when it was filled", "fermented": "after it fermented"}
WEIGHED_WHEN: dict[str, Message] = {"filled": "weighed when it was filled", "fermented": "weighed after it fermented"}
NOT_SAID = "not-said"


def _open(key: str, label: Message, options: dict[str, Message], explained: Message = "") -> OptionalChoice:
    """A choice that nobody has to make: what nobody said stays not known."""
    return OptionalChoice(key, label, {NOT_SAID: "not said", **options}, NOT_SAID, explained, NOT_SAID)


_PIECE = (
    *boxes(PieceHung, "diameter_m"),
    _open("casing", "Casing", CASINGS),
    Words("place", "Place in the chamber", 40, optional=True),
)
_COUNTED_FROM = _open("counted_from", "This weight was read", COUNTED_FROM, "Losses are counted from it.")


def _weighed(mass_kg: float) -> Rounded:
    return Rounded(Amount(mass_kg, PIECE_MASS))


def _hung(values: Values, subject: Subject) -> PieceHung:
    assert subject.batch is not None
    tag = values["tag"].casefold()
    if any(piece.tag.casefold() == tag for piece in subject.batch.pieces):
        told = Sentence("There is a piece {tag} already. Give this one another tag.", {"tag": values["tag"]})
        raise OutOfRange("tag", told)
    return PieceHung(**values)


HANG = declare(
    EntryForm(
        PieceHung,
        "Hang a piece",
        (
            Words("tag", "Tag", 20, example="J-1", help="What is written on its tag."),
            *boxes(PieceHung, "start_kg"),
            *_PIECE,
            _COUNTED_FROM,
            _SCALE,
        ),
        lambda fact: Sentence("Hung {tag}: {weight}", {"tag": fact.tag, "weight": _weighed(fact.start_kg)}),
        figures=lambda fact, subject: _target(fact, subject),
        fact=_hung,
        save="Save and next piece",
        seldom=("diameter_m", "casing", "place", "counted_from"),
        correct="Correct this piece",
    )
)


def _target(fact: PieceHung, subject: Subject) -> tuple[Figure, ...]:
    if subject.batch is None:
        return ()
    return (shrink.target_weight(fact.start_kg, subject.batch.start.target_loss),)


def _shrunk(fact: PieceWeighed, subject: Subject) -> tuple[Figure, ...]:
    if subject.piece is None:
        return ()
    assert subject.batch is not None
    target = subject.batch.start.target_loss
    start_kg = subject.piece.start_kg
    lost = shrink.loss(start_kg, fact.mass_kg)
    asked = None if subject.was is not None else _question(subject.batch, subject.piece, fact.mass_kg)
    if asked is not None:
        lost = evolve(lost, cautions=(asked, *lost.cautions))
    return (lost, shrink.remaining(start_kg, fact.mass_kg, target))


def _question(batch: Batch, piece: Piece, mass_kg: float) -> Sentence | None:
    """Whether it can be so, by what it and its neighbours should weigh; the first time by what can dry in that time."""
    if not piece.weighings:
        return first_weighing.question(piece.tag, piece.start_kg, mass_kg, (now() - piece.hung_at).total_seconds())
    should = should_weigh(book(), batch, now())
    return question(piece.tag, mass_kg, should, weighed_in_round(batch, now())) if piece.tag in should else None


WEIGH = declare(
    EntryForm(
        PieceWeighed,
        "Weigh",
        (*boxes(PieceWeighed), _SCALE),
        lambda fact: Sentence("Weighed: {weight}", {"weight": _weighed(fact.mass_kg)}),
        figures=_shrunk,
        save="Save and next",
        correct="Correct this weight",
    )
)


def _cut(values: Values, subject: Subject) -> PieceCut:
    if values["after_kg"] >= values["before_kg"]:
        raise OutOfRange("after_kg", "What hangs on must weigh less than the piece before the cut.")
    return PieceCut(**values)


def _what_is_left(fact: PieceCut, subject: Subject) -> tuple[Figure, ...]:
    """The loss by the weight before, and from what it is counted now."""
    if subject.piece is None:
        return ()
    start_kg = subject.piece.start_kg
    return (shrink.loss(start_kg, fact.before_kg), shrink.start_of_rest(start_kg, fact.before_kg, fact.after_kg))


CUT = declare(
    EntryForm(
        PieceCut,
        "Cut a part off",
        (*boxes(PieceCut), _SCALE),
        lambda fact: Sentence(
            "A part cut off: {before}, {after} hangs on",
            {"before": _weighed(fact.before_kg), "after": _weighed(fact.after_kg)},
        ),
        figures=_what_is_left,
        fact=_cut,
        save="Save the cut",
        correct="Correct this cut",
        hint="The cut face dries faster than the rest: cover it. Common practice; no published source.",
    )
)


@screen.route("/pieces/<piece_id>/cut", methods=["GET", "POST"])
def cut(piece_id: str):
    batch, piece = find_piece(piece_id)
    back = url_for("release.piece", piece_id=piece.id)
    return write(CUT, Subject(batch, piece), about=piece.id, back=back, back_to=back)


@screen.route("/batches/<batch_id>/hang", methods=["GET", "POST"])
def hang(batch_id: str):
    batch = find_batch(batch_id)
    return write(
        HANG,
        Subject(batch),
        about=batch.id,
        back=url_for("dry.hang", batch_id=batch_id),
        back_to=path_of(batch),
        template="dry/hang.html",
        start=like_the_last(batch),
        goes_on=True,
        hanging=_hanging(batch),
    )


def hung_as(piece: Piece) -> Sentence | None:
    """What was said of it when it was hung: its thickness, its casing, its place."""
    said_of: list[Value] = [] if piece.hung.diameter_m is None else [Rounded(Amount(piece.hung.diameter_m, LENGTH))]
    for key, words in ((piece.hung.casing, CASINGS), (piece.hung.counted_from, WEIGHED_WHEN)):
        said_of += [] if key is None else [Sentence(words[key])]
    if piece.hung.place:
        said_of.append(piece.hung.place)
    return Sentence("{facts}", {"facts": in_a_row(said_of)}) if said_of else None


def like_the_last(batch: Batch) -> dict[str, str]:
    """The next tag in the series of the one hung last, and all that this was asked for besides its weight."""
    hung = sorted(batch.pieces, key=lambda piece: (piece.hung_at, piece.id))
    tag = next_tag([piece.tag for piece in hung])
    if not hung:
        return {"tag": tag}
    texts = HANG.texts_of(hung[-1].hung, reader())
    return {"tag": tag, **{key: texts[key] for key in ("diameter_m", "casing", "place", "counted_from")}}


def _hanging(batch: Batch) -> Sentence | None:
    if not batch.pieces:
        return None
    pieces = [Sentence("{tag} {weight}", {"tag": each.tag, "weight": _weighed(each.start_kg)}) for each in batch.pieces]
    return Sentence("Hanging already: {pieces}", {"pieces": listed(pieces)})


@screen.get("/batches/<batch_id>/weigh")
def weigh_next(batch_id: str):
    """The piece that has waited longest for the scale."""
    batch = find_batch(batch_id)
    return redirect(_next_to_weigh(batch, None), 303)


@screen.route("/pieces/<piece_id>/weigh", methods=["GET", "POST"])
def weigh(piece_id: str):
    batch, piece = find_piece(piece_id)
    return write(
        WEIGH,
        Subject(batch, piece),
        about=piece.id,
        back=_next_to_weigh(batch, piece),
        back_to=path_of(batch),
        template="dry/weigh.html",
        goes_on=True,
        todo=[each for each in batch.hanging if not _weighed_today(each)],
    )


def _next_to_weigh(batch: Batch, just_weighed: Piece | None) -> str:
    """Of those not weighed today the next by its tag, and one that was skipped at the end; the batch page when all are.

    Where nothing was weighed just now, the one that has waited longest.
    """
    others = [each for each in batch.hanging if just_weighed is None or each.id != just_weighed.id]
    waiting = [each for each in others if not _weighed_today(each)]
    if just_weighed is None:
        found = min(waiting or others, key=lambda each: (each.weighed_at.date(), tag_order(each.tag)), default=None)
    else:
        after = tag_order(just_weighed.tag)
        found = min(waiting, key=lambda each: (tag_order(each.tag) < after, tag_order(each.tag)), default=None)
    return path_of(batch) if found is None else url_for("dry.weigh", piece_id=found.id)


def _weighed_today(piece: Piece) -> bool:
    return bool(piece.weighings) and piece.weighed_at.date() == now().date()
