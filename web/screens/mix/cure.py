"""Mixing day: the cure, weighed, with what it makes of the meat. Which limit holds follows from the batch's kind."""

from __future__ import annotations

from attrs import evolve, frozen
from flask import redirect, request, url_for

from core.daybook.facts import CureWeighed
from core.mix import cure
from core.mix.cure_sheets import NITRATE, NITRITE, OTHER_SALT
from core.quantities import DOSE_MASS, FRACTION, Amount, Manner
from core.reading import read
from core.refusals import NotAQuantity, OutOfRange
from core.release.readiness import METHOD_OF
from core.working import Figure
from web.entry_forms import EntryForm, Subject, Values, declare, path_of, write
from web.finding import find_batch
from web.forms import typed
from web.journal import book
from web.screens.mix.blueprint import screen

USUAL_NITRITE = 0.0625
"""The strength most curing salts for sausage carry on their label; the form starts there."""

HEAVIEST_DOSE_KG = 100.0


@frozen
class Dose:
    """The cure as a per-cent of the meat or as a weight, whichever was typed: "0.25 %" or "31 g".

    Its value is (share, None) or (None, kilograms).
    """

    key: str = "dose"
    label: str = "Dose of the curing salt"
    help: str = "Per-cent of the meat (0.25 %) or a weight (31 g); 0 where you use none."
    unit: str = "% or g"

    def read(self, text: str, manner: Manner) -> tuple[float | None, float | None]:
        weighed = "cent" not in text.casefold() and any(sign.isalpha() for sign in text)
        quantity = DOSE_MASS if weighed else FRACTION
        try:
            value = read(text, quantity, manner, field=self.key, label=self.label)
        except NotAQuantity as refusal:
            sentence = f"{refusal.sentence.split('. ')[0]}. Enter a per-cent or a weight, for example 0.25 % or 31 g."
            raise NotAQuantity(self.key, sentence if not weighed else refusal.sentence) from None
        if value < 0:
            raise OutOfRange(self.key, "The dose cannot be less than nothing, for example 0.25 % or 31 g.")
        if value > (HEAVIEST_DOSE_KG if weighed else 1):
            raise OutOfRange(self.key, "The dose is a small part of the meat, for example 0.25 % or 31 g.")
        return (None, value) if weighed else (value, None)


def _fact(values: Values, subject: Subject) -> CureWeighed:
    share, mass_kg = values.pop("dose")
    assert subject.batch is not None
    return CureWeighed(cure_kg=mass_kg if share is None else share * subject.batch.meat_kg, **values)


def _figures(fact: CureWeighed, subject: Subject) -> tuple[Figure, ...]:
    assert subject.batch is not None
    salt = cure.CuringSalt(fact.nitrite, fact.nitrate)
    method = METHOD_OF[subject.batch.start.style]
    return cure.from_dose(subject.batch.meat_kg, fact.cure_kg, salt, method, fact.other_salt_kg)


def _say(fact: CureWeighed, how: Manner) -> str:
    if not fact.cure_kg:
        return "No curing salt used"
    strength = Amount(fact.nitrite, FRACTION).show(how)
    return f"Cure weighed: {Amount(fact.cure_kg, DOSE_MASS).show(how)} of {strength} nitrite salt"


CURE = declare(
    EntryForm(
        CureWeighed,
        "Weigh the cure",
        (
            Dose(),
            evolve(NITRITE, default=USUAL_NITRITE),
            NITRATE,
            OTHER_SALT,
        ),
        _say,
        figures=_figures,
        fact=_fact,
        texts=lambda fact, how: {
            "nitrite": typed(fact.nitrite, FRACTION, how),
            "nitrate": typed(fact.nitrate, FRACTION, how),
            "dose": Amount(fact.cure_kg, DOSE_MASS).show_exact(how),
            "other_salt_kg": typed(fact.other_salt_kg, DOSE_MASS, how),
        },
        save="Save the weighed cure",
    )
)


@screen.route("/batches/<batch_id>/cure", methods=["GET", "POST"])
def weigh_cure(batch_id: str):
    """A batch has one cure: weighed again, it corrects the first and is never taken for an addition."""
    batch = find_batch(batch_id)
    if batch.cure_line_id is not None and request.method == "GET" and "figures" not in request.args:
        return redirect(url_for("entries.correct", entry_id=batch.cure_line_id), 303)
    weighed = book().line(batch.cure_line_id) if batch.cure_line_id else None
    back = path_of(batch) if batch.formula is None else url_for("mix.sheet", batch_id=batch.id)
    return write(CURE, Subject(batch), about=batch.id, back=back, corrects=weighed, start=_asked(), back_to=back)


def _asked() -> dict[str, str]:
    """What a weighing sheet asks for: it opens this form with the dose and the strength of its own cure."""
    return {key: request.args[key] for key in ("dose", "nitrite", "nitrate", "other_salt_kg") if key in request.args}
