"""What meat a batch is of, and what proves it free of trichinella."""

from __future__ import annotations

from typing import Any

import attrs
from flask import Blueprint, redirect, request, url_for

from core.daybook.facts.fields import boxes
from core.daybook.facts.meat import MeatNoted
from core.quantities import DAYS, TEMPERATURE, Amount, Reader
from core.refusals import OutOfRange
from core.release.cured_pork import METHODS
from core.release.frozen_pork import LAWS, MEASURED
from core.release.trichinella import KINDS, PROOFS, methods_for
from core.sentence import Message, Rounded, Sentence, said
from core.worksheet import Choice
from web.entry_forms import ASKED_ANEW, EntryForm, Subject, Values, declare, typed_numbers, write
from web.forms import Input, Words
from web.journal import book
from web.lookup import find_piece
from web.screens.mix.cure_shape import Kept

screen = Blueprint("trichinella", __name__)

NONE = "none"
NOTHING_YET: Message = "nothing yet"
KIND = Choice("kind", "What is in it", {**KINDS})
PROOF = Kept("proof", "Proof against trichinella", {NONE: NOTHING_YET, **PROOFS}, default=NONE)
LOT = Words("lot", "Lot", 60, optional=True, help="As on the paper of the test or the certificate.")
BY = Words("by", "Who says so", 120, optional=True, help="For example the meat inspection, with its number.")
MEASURED_WITH = Kept("measured", "Measured with", {**MEASURED}, default="product")
LAW = Kept("law", "By the tables of", {**LAWS}, default="both")
FROZEN = ("warmest_c", "lasted_s", "thick_m")
ASKED_OF_A_CURE = tuple(
    key for key in attrs.fields_dict(MeatNoted) if any(key in each.asks for each in METHODS.values())
)


def _chosen(subject: Subject, key: str, otherwise: str = "") -> str:
    """On the page, or in the entry that is corrected."""
    given = request.values.get(key)
    if given is not None:
        return given
    return str(getattr(subject.was, key, None) or otherwise)


def _method(subject: Subject) -> Kept:
    style = subject.batch.start.style if subject.batch else "fermented"
    ways = methods_for(style)
    return Kept("method", "Cured by", {**ways}, default=next(iter(ways)), listed=True)


def _shaped(subject: Subject) -> tuple[Input, ...]:
    kind, proof = _chosen(subject, "kind"), _chosen(subject, "proof", NONE)
    if kind not in ("pork", "game"):
        return (KIND,)
    if proof == "tested":
        return (KIND, PROOF, LOT, BY)
    if proof == "frozen":
        return (KIND, PROOF, MEASURED_WITH, LAW, *boxes(MeatNoted, *FROZEN))
    if proof != "cured":
        return (KIND, PROOF)
    ways = _method(subject)
    method = _chosen(subject, "method", ways.default or "")
    asked = METHODS[method].asks if method in ways.options else ()
    return (KIND, PROOF, ways, *boxes(MeatNoted, *(key for key in ASKED_OF_A_CURE if key in asked)))


def _fact(values: Values, subject: Subject) -> MeatNoted:
    proof = values.pop("proof", None)
    if values.get("kind") == "game" and proof in ("frozen", "cured"):
        raise OutOfRange("proof", "Neither cold nor salt is a proof for game: only a test is.")
    return MeatNoted(**values, proof=None if proof == NONE else proof)


def _texts(fact: MeatNoted, how: Reader) -> dict[str, str]:
    words = {key: str(value) for key, value in attrs.asdict(fact).items() if isinstance(value, str)}
    return {**words, **typed_numbers(fact, how), "proof": fact.proof or NONE}


def _say(fact: MeatNoted) -> Sentence:
    kind = said(KINDS[fact.kind])
    if fact.kind == "none":
        return Sentence("Meat: {kind}", {"kind": kind})
    if fact.proof is None:
        return Sentence("Meat: {kind}, no proof yet", {"kind": kind})
    told: dict[str, Any] = {"kind": kind, "proof": said(PROOFS[fact.proof])}
    if fact.proof == "tested" and fact.lot:
        return Sentence("Meat: {kind}; {proof}, lot {lot}", {**told, "lot": fact.lot})
    if fact.proof == "frozen" and fact.warmest_c is not None and fact.lasted_s is not None:
        told |= {"warm": Rounded(Amount(fact.warmest_c, TEMPERATURE)), "time": Rounded(Amount(fact.lasted_s, DAYS))}
        return Sentence("Meat: {kind}; {proof}: {time} at {warm}", told)
    if fact.proof == "cured" and fact.method in METHODS:
        return Sentence("Meat: {kind}; {proof}: {way}", {**told, "way": said(METHODS[fact.method].name)})
    return Sentence("Meat: {kind}; {proof}", told)


MEAT = declare(
    EntryForm(
        MeatNoted,
        "The meat, and trichinella",
        (KIND, PROOF),
        _say,
        fact=_fact,
        texts=_texts,
        save="Save it",
        correct="Correct what meat it is",
        hint="It holds for the whole batch. A sausage of several meats is as safe as the least safe of them.",
        shape=_shaped,
        shaped_by=("kind", "proof", "method"),
        every=(KIND, PROOF, LOT, BY, MEASURED_WITH, LAW, Kept("method", "method", {}), *boxes(MeatNoted)),
    )
)


@screen.route("/pieces/<piece_id>/meat", methods=["GET", "POST"])
def note(piece_id: str):
    """What meat it is is noted once: noted again, it corrects the first."""
    batch, piece = find_piece(piece_id)
    line = book().line(batch.meat_line_id) if batch.meat_line_id else None
    back = url_for("release.piece", piece_id=piece.id)
    if (
        line is not None
        and request.method == "GET"
        and ASKED_ANEW not in request.args
        and "figures" not in request.args
    ):
        return redirect(url_for("entries.correct", entry_id=line.id), 303)
    return write(MEAT, Subject(batch, piece), about=batch.id, back=back, back_to=back, corrects=line)
