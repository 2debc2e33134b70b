"""A whole muscle goes into salt, is turned, and comes out again."""

from __future__ import annotations

import attrs
from flask import redirect, request, url_for

from core.daybook.facts.fields import boxes
from core.daybook.facts.salting import PieceTurned, SaltingBegun, SaltingEnded
from core.daybook.salting import piece_of
from core.mix.salting import SALTING_METHODS, at_the_centre
from core.mix.salting_sheets import salting_figures
from core.quantities import DAYS, LENGTH, TEMPERATURE, Amount
from core.release.salted import THROUGH, WAYS
from core.sentence import Rounded, Sentence, said
from core.working import Figure
from core.worksheet import Choice
from web.entry_forms import EntryForm, Subject, declare, noted, path_of, write
from web.forms import Words
from web.journal import book
from web.lookup import find_batch
from web.screens.mix.blueprint import screen
from web.visitor import now


def _figures(fact: SaltingBegun, subject: Subject) -> tuple[Figure, ...]:
    return salting_figures(
        fact.method,
        fact.shape,
        fact.thickness_m,
        fact.width_m,
        fact.length_m,
        fact.temperature_c,
        fact.centre_share,
        fact.mass_kg,
    )


def _say(fact: SaltingBegun) -> Sentence:
    put = {
        "method": said(SALTING_METHODS[fact.method]),
        "thickness": Rounded(Amount(fact.thickness_m, LENGTH)),
        "cold": Rounded(Amount(fact.temperature_c, TEMPERATURE)),
    }
    told = Sentence("Put into salt, {method}: {thickness} thick, at {cold}", put)
    if fact.planned_s is None:
        return told
    return Sentence("{told}, for {planned}", {"told": told, "planned": Rounded(Amount(fact.planned_s, DAYS))})


SIZES = ("method", "shape", "thickness_m", "width_m", "length_m", "temperature_c", "centre_share", "mass_kg")
INTO_SALT = declare(
    EntryForm(
        SaltingBegun,
        "Put it into salt",
        (
            *boxes(SaltingBegun, *SIZES),
            Choice(
                "way", "Days by", WAYS, default="diffusion", help="What the verdict goes by in the end.", listed=True
            ),
            *boxes(SaltingBegun, "planned_s"),
        ),
        _say,
        figures=_figures,
        save="Put it into salt",
        correct="Correct the salting",
    )
)
TURN_IT = declare(
    EntryForm(
        PieceTurned,
        "Turn it",
        (Words("note", "Note", 200, optional=True, help="For example how much brine has drawn."),),
        lambda fact: noted("Turned", fact.note),
        save="It is turned",
    )
)


NOT_SURE = (
    "If salt moves slowly in it, the middle has too little yet. The verdict counts it as salted through only once that "
    "is sure; leave it longer, or let it rest in the cold."
)


def _centre(fact: SaltingEnded, subject: Subject) -> tuple[Figure, ...]:
    """How far the salt is when it comes out: a piece taken out early is told so, and taken out all the same."""
    salting = subject.batch.salting if subject.batch else None
    if salting is None:
        return ()
    lasted_s = ((salting.ended_at or now()) - salting.at).total_seconds()
    begun = salting.begun
    centre = at_the_centre(piece_of(salting), begun.method, begun.temperature_c, lasted_s, begun.centre_share)
    if centre.low is None or centre.low >= THROUGH:
        return (centre,)
    return (attrs.evolve(centre, cautions=(*centre.cautions, NOT_SURE)),)


def _ended_said(fact: SaltingEnded) -> Sentence:
    between = [Rounded(Amount(each, TEMPERATURE)) for each in (fact.coldest_c, fact.warmest_c) if each is not None]
    told = Sentence("Out of the salt")
    if len(between) == 2:
        told = Sentence("Out of the salt, it lay at {low} to {high}", {"low": between[0], "high": between[1]})
    elif between:
        told = Sentence("Out of the salt, it lay at {temperature}", {"temperature": between[0]})
    if fact.rested_s:
        rested = Rounded(Amount(fact.rested_s, DAYS))
        told = Sentence("{told}, the last {rested} of it without salt", {"told": told, "rested": rested})
    return noted(told, fact.note)


OUT_OF_SALT = declare(
    EntryForm(
        SaltingEnded,
        "Take it out of the salt",
        (
            *boxes(SaltingEnded, "coldest_c", "warmest_c", "rested_s"),
            Words("note", "Note", 200, optional=True),
        ),
        _ended_said,
        figures=_centre,
        save="It is out",
        hint="Write it when it leaves the cold; then tie it, weigh it and hang it. What you leave empty the verdict "
        "does not know, and it holds the piece.",
        correct="Correct when it came out",
    )
)


@screen.route("/batches/<batch_id>/salt", methods=["GET", "POST"])
def begin_salting(batch_id: str):
    """A batch goes into salt once: begun again, it corrects the first beginning."""
    batch = find_batch(batch_id)
    salting = batch.salting
    if salting is not None and request.method == "GET" and "figures" not in request.args:
        return redirect(url_for("entries.correct", entry_id=salting.line_id), 303)
    back = path_of(batch)
    begun = book().line(salting.line_id) if salting else None
    return write(INTO_SALT, Subject(batch), about=batch.id, back=back, back_to=back, corrects=begun)


@screen.route("/batches/<batch_id>/turn", methods=["GET", "POST"])
def turn(batch_id: str):
    batch = find_batch(batch_id)
    back = path_of(batch)
    return write(TURN_IT, Subject(batch), about=batch.id, back=back, back_to=back)


@screen.route("/batches/<batch_id>/unsalt", methods=["GET", "POST"])
def end_salting(batch_id: str):
    batch = find_batch(batch_id)
    hang = url_for("dry.hang", batch_id=batch.id)
    return write(OUT_OF_SALT, Subject(batch), about=batch.id, back=hang, back_to=path_of(batch))
