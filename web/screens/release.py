"""Release: a piece's verdict with its reasons, the evidence that settles it, and taking it down."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from typing import Any

import attrs
from attrs import frozen
from flask import Blueprint, redirect, render_template, request, url_for

from core.daybook.batch import Batch
from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import ActivityMeasured, PieceInspected, PieceTakenDown
from core.daybook.facts.fields import boxes
from core.daybook.kept_verdict import ToldReason, keep_reasons, told
from core.daybook.piece import Piece
from core.daybook.piece_warmth import piece_warmth
from core.quantities import WATER_ACTIVITY, Amount
from core.refusals import Missing, OutOfRange
from core.release.readiness import EDITION, SIGNS, judge
from core.release.reason_names import amount_name
from core.sentence import Message, Rounded, Sentence, listed, said
from core.verdict import Reason, Verdict
from web.entry_forms import EntryForm, Subject, Values, declare, noted, say, write
from web.forms import OptionalChoice, Ticks, Words
from web.journal import book, sent_token
from web.lookup import find_piece
from web.screens.dry import hung_as
from web.visitor import now, reader

screen = Blueprint("release", __name__)


def _activity(fact: ActivityMeasured) -> Sentence:
    measured = Rounded(Amount(fact.water_activity, WATER_ACTIVITY))
    return Sentence("Water activity measured: {activity}", {"activity": measured})


ACTIVITY = declare(
    EntryForm(
        ActivityMeasured,
        "Water activity",
        boxes(ActivityMeasured),
        _activity,
        save="Save the measurement",
        correct="Correct this water activity",
    )
)


SETTLED_BY: dict[str, str] = {
    "signs": "release.inspect",
    "loss": "dry.weigh",
    "trichinella": "trichinella.note",
    **dict.fromkeys(("shelf-stable", "listeria", "slow-dry", "botulism"), "release.measure"),
}
"""The view where a reason that is not met can be met, by its key."""
NEEDS_A_METER = frozenset({"shelf-stable", "listeria", "slow-dry"})


def _settled_by(verdict: Verdict) -> str:
    """The view of what is to be done now; empty where it is done for the whole batch."""
    first = verdict.first_unmet
    if first is None or verdict.word == "discard":
        return "release.take_down"
    return SETTLED_BY.get(first.key, "")


def _inspected(fact: PieceInspected) -> Sentence:
    signs = [said(SIGNS[sign]) for sign in fact.signs if sign in SIGNS]
    if signs:
        found = Sentence("Inspected, found: {signs}", {"signs": listed(signs)})
    else:
        found = Sentence("Inspected: nothing wrong found")
    return Sentence("{found} ({note})", {"found": found, "note": fact.note}) if fact.note else found


def _looked(values: Values, subject: Subject) -> PieceInspected:
    """That a piece is sound is said by its own button: an untouched form says nothing."""
    is_sound, signs = request.form.get("found") == "sound", values["signs"]
    if is_sound and signs:
        raise OutOfRange("signs", "You ticked a sign of spoilage: untick it if the piece is sound.")
    if not is_sound and not signs and subject.was is None:
        raise Missing("signs", "Tick what is wrong. If nothing is, press “Sound”.")
    return PieceInspected(**values)


INSPECT = declare(
    EntryForm(
        PieceInspected,
        "Look, smell, squeeze",
        (
            Ticks("signs", "What is wrong", SIGNS, help="Look at it, smell it, squeeze it. Tick what you find."),
            Words("note", "Note", 200, optional=True),
        ),
        _inspected,
        fact=_looked,
        save="Save the inspection",
        correct="Correct this inspection",
    )
)


def _took_down(values: Values, subject: Subject) -> PieceTakenDown:
    was = subject.was if subject.was is not None else _sent_before()
    if isinstance(was, PieceTakenDown):  # corrected later or sent twice it passes no other verdict
        return attrs.evolve(was, **values)
    assert subject.batch is not None
    assert subject.piece is not None
    verdict = judge(evidence_for(subject.batch, subject.piece, now()))
    return PieceTakenDown(verdict.word, values["note"], keep_reasons(verdict), EDITION, values["fate"])


def _taken_down(fact: Any) -> Sentence:
    words = Sentence("Taken down, verdict {verdict}", {"verdict": said(fact.verdict)})
    if fact.fate in FATES:
        words = Sentence("{words}, {fate}", {"words": words, "fate": said(FATES[fact.fate])})
    return noted(words, fact.note)


def _sent_before() -> object:
    """What this very form has already written, if it was sent before."""
    token = sent_token()
    return book().line(token).fact if token in book() else None


FATES: dict[str, Message] = {
    "eaten": "to the table",
    "sold": "sold",
    "cut": "cut up",
    "tested": "for a test",
    "thrown-away": "thrown away",
}
TAKE_DOWN = declare(
    EntryForm(
        PieceTakenDown,
        "Take it down",
        (
            OptionalChoice("fate", "Where it goes", FATES),
            Words("note", "Note", 120, optional=True),
        ),
        _taken_down,
        fact=_took_down,
        save="Take it down",
        hint="The verdict of this moment is kept with it.",
    )
)


def verdict_of(batch: Batch, piece: Piece, moment: datetime) -> Verdict:
    return judge(evidence_for(batch, piece, moment))


GROUPS: dict[Message, tuple[str, ...]] = {
    "The look": ("sign", "contradiction"),
    "The meat": ("trichinella",),
    "Souring and salting": ("acid", "degree-hours", "warm-days", "slow-salt", "slow-cure", "salt", "taken-up"),
    "Drying and keeping": ("loss", "days", "shelf-stable", "listeria", "slow-dry", "botulism"),
    "The cure": ("",),
}
"""How the reasons of a verdict begin, by what they are about; the last takes what is left."""
BESIDE: dict[Message, tuple[str, ...]] = {
    "By whose rules it keeps": ("keeps-",),
    "What may still grow": ("grows-",),
    "What was killed": ("killed-",),
}
Groups = list[tuple[Message, list[Reason]]]


def _grouped(reasons: Iterable[Reason], groups: dict[Message, tuple[str, ...]] = GROUPS) -> Groups:
    """In the order of the verdict: the group of what is seen to first stands first."""
    found: dict[Message, list[Reason]] = {}
    for each in reasons:
        group: Message = next(name for name, keys in groups.items() if each.key.startswith(keys))
        found.setdefault(group, []).append(each)
    return list(found.items())


@frozen
class RestedOn:
    words: Sentence
    met: bool | None


def _named(key: str, amount: Rounded) -> Sentence:
    name = amount_name(key)
    return (
        Sentence("{name} {amount}", {"name": name, "amount": amount})
        if name
        else Sentence("{amount}", {"amount": amount})
    )


def _rested_on(reason: ToldReason) -> RestedOn:
    """A reason of a verdict that was passed earlier, with the amounts it was told with."""
    name = said(reason.name)
    amounts = [_named(key, Rounded(each)) for key, each in reason.amounts]
    if not amounts:
        return RestedOn(name, reason.met)
    return RestedOn(Sentence("{reason}: {amounts}", {"reason": name, "amounts": listed(amounts)}), reason.met)


@screen.get("/pieces/<piece_id>")
def piece(piece_id: str):
    batch, piece = find_piece(piece_id)
    down = piece.taken_down
    verdict = None if down else verdict_of(batch, piece, now())
    return render_template(
        "release/piece.html",
        batch=batch,
        piece=piece,
        verdict=verdict,
        meat_is_safe=verdict is not None and any(each.key == "trichinella" and each.met for each in verdict.reasons),
        grouped=_grouped,
        beside=_grouped(verdict.beside, BESIDE) if verdict else (),
        settled_by=_settled_by(verdict) if verdict else "",
        no_meter=verdict is not None and any(each.key in NEEDS_A_METER for each in verdict.missing),
        hung_as=hung_as(piece),
        warmth=piece_warmth(book(), piece, now()),
        rested_on=[_rested_on(each) for each in told(down.reasons)] if down else (),
        log=[(line, say(line, reader())) for line in reversed(piece.lines)],
    )


@screen.route("/pieces/<piece_id>/activity", methods=["GET", "POST"])
def measure(piece_id: str):
    return _about_piece(ACTIVITY, piece_id, template="release/activity.html")


@screen.route("/pieces/<piece_id>/inspect", methods=["GET", "POST"])
def inspect(piece_id: str):
    return _about_piece(INSPECT, piece_id, template="release/inspect.html")


@screen.route("/pieces/<piece_id>/take-down", methods=["GET", "POST"])
def take_down(piece_id: str):
    """Once is enough: what came of a piece that is down already is corrected, not said again."""
    _, piece = find_piece(piece_id)
    if piece.taken_down is not None and request.method == "GET" and "figures" not in request.args:
        line = next(line for line in piece.lines if isinstance(line.fact, PieceTakenDown))
        return redirect(url_for("entries.correct", entry_id=line.id), 303)
    return _about_piece(TAKE_DOWN, piece_id)


def _about_piece(declared: EntryForm, piece_id: str, template: str = "entry.html"):
    batch, piece = find_piece(piece_id)
    back = url_for("release.piece", piece_id=piece.id)
    return write(declared, Subject(batch, piece), about=piece.id, back=back, back_to=back, template=template)
