"""Mixing day: the cure, weighed, with what it makes of the meat under the rules the maker chose."""

from __future__ import annotations

from attrs import evolve
from flask import redirect, request, url_for

from core.daybook.batch import Batch
from core.daybook.curing import Cured, charge_of, cured, curing_of, licence_of
from core.daybook.facts.batch import CureWeighed
from core.daybook.house import house_limits
from core.mix.brine import brine_figures
from core.mix.cure_dose import dosed, to_weigh
from core.mix.dose_box import Asked, Dose
from core.mix.rule import METHODS, WET
from core.mix.rules import RULE_SETS, Curing
from core.quantities import CURE_MASS, FRACTION, MASS, Amount, Reader
from core.refusals import OutOfRange
from core.release.evidence import METHOD_OF
from core.sentence import Rounded, Said, Sentence, said
from core.working import Figure
from web.entry_forms import EntryForm, Subject, Values, declare, path_of, typed_numbers, write
from web.forms import typed
from web.journal import book
from web.lookup import find_batch
from web.screens.mix.blueprint import screen
from web.screens.mix.cure_shape import EVERY, SHAPED_BY, also_of, shape_of, shaped

STARTING = (
    "dose",
    "nitrite",
    "nitrate",
    "other_salt_kg",
    "water_kg",
    "sugar_kg",
    "rules",
    "method",
    "product",
    "taken",
)


def _fact(values: Values, subject: Subject) -> CureWeighed:
    assert subject.batch is not None
    shape = shape_of(subject)
    values.pop("also", None)
    dose: Asked = values.pop("dose")
    chosen = {"rules": shape.rules, "method": shape.method, "product": shape.product} | {
        key: values.pop(key) for key in ("rules", "method", "product") if key in values
    }
    if _as_before(subject, chosen):
        chosen = {}
    return _dosed(CureWeighed(cure_kg=dose.kg or 0.0, **chosen, **values), dose, subject)


def _dosed(fact: CureWeighed, dose: Asked, subject: Subject) -> CureWeighed:
    """With the weight that was asked for as a share of the meat, or as the nitrite to be made."""
    batch = subject.batch
    assert batch is not None
    if dose.share is not None:
        return evolve(fact, cure_kg=dose.share * batch.meat_kg)
    if dose.ppm is None:
        return fact
    try:
        made = dosed(charge_of(fact, batch.meat_kg), _how(fact, subject), dose.ppm, licence_of(batch))
    except OutOfRange as refusal:
        raise OutOfRange("dose" if refusal.field == "wanted" else refusal.field, refusal.said) from None
    return evolve(fact, cure_kg=made.doses[0].kg)


def _as_before(subject: Subject, chosen: dict[str, str]) -> bool:
    """An older entry that names no rules goes on naming none while it means the same."""
    was, batch = subject.was, subject.batch
    if not isinstance(was, CureWeighed) or was.rules or batch is None:
        return False
    return chosen == {"rules": "us", "method": METHOD_OF[batch.start.style], "product": "meat"}


def _figures(fact: CureWeighed, subject: Subject) -> tuple[Figure, ...]:
    batch = subject.batch
    assert batch is not None
    return figures_of(Cured(charge_of(fact, batch.meat_kg), _how(fact, subject), licence_of(batch)))


def _how(fact: CureWeighed, subject: Subject) -> Curing:
    assert subject.batch is not None
    return curing_of(fact, subject.batch.start.style, shape_of(subject).day, house_limits(book()))


def figures_of(cure: Cured) -> tuple[Figure, ...]:
    """What the cure makes; and the brine it is in, where there is one."""
    made = (*cure.figures(), to_weigh(cure.charge))
    return (*made, *brine_figures(cure.charge)) if cure.how.method in WET else made


def batch_figures(batch: Batch) -> tuple[Figure, ...]:
    """Of the cure as it stands in the batch. Raises a Refusal where it is over a limit without an exception."""
    cure = cured(batch)
    return () if cure is None else figures_of(cure)


def _say(fact: CureWeighed) -> Said:
    if not fact.cure_kg:
        return Sentence("No curing salt used")
    weighed = {"cure": Rounded(Amount(fact.cure_kg, CURE_MASS)), "strength": Rounded(Amount(fact.nitrite, FRACTION))}
    told = Sentence("Cure weighed: {cure} of {strength} nitrite salt", weighed)
    if fact.second_kg:
        second = Rounded(Amount(fact.second_kg, CURE_MASS))
        told = Sentence("{told} and {second} of a second one", {"told": told, "second": second})
    if fact.method in WET:
        wet = {"water": Rounded(Amount(fact.water_kg or 0.0, MASS)), "method": said(METHODS[fact.method])}
        told = Sentence("{told} in {water} of water, {method}", {"told": told, **wet})
    if fact.rules in ("", "us"):
        return told
    if fact.rules not in RULE_SETS:
        return Sentence("{told}; by rules that are not known here", {"told": told})
    return Sentence("{told}; rules of {rules}", {"told": told, "rules": said(RULE_SETS[fact.rules].name)})


def _texts(fact: CureWeighed, how: Reader) -> dict[str, str]:
    cures = ("second_kg", "accelerator_kg")
    texts = {
        **typed_numbers(fact, how),
        "also": " ".join(also_of(fact)),
        "dose": Amount(fact.cure_kg, CURE_MASS).show_exact(how),
        "nitrite_of": fact.nitrite_of,
        "nitrate_of": fact.nitrate_of,
        **{key: typed(getattr(fact, key), CURE_MASS, how) for key in cures},
    }
    chosen = {"rules": fact.rules or "us", "method": fact.method, "product": fact.product or "meat"}
    return {**texts, **{key: value for key, value in chosen.items() if value}}


CURE = declare(
    EntryForm(
        CureWeighed,
        "Weigh the cure",
        tuple(each for each in EVERY if isinstance(each, Dose) or each.key in ("nitrite", "nitrate", "other_salt_kg")),
        _say,
        figures=_figures,
        fact=_fact,
        texts=_texts,
        save="Save the weighed cure",
        shape=shaped,
        shaped_by=SHAPED_BY,
        every=EVERY,
        correct="Correct this cure",
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
    subject = Subject(batch, was=weighed.fact if weighed else None)
    return write(
        CURE,
        subject,
        about=batch.id,
        back=back,
        corrects=weighed,
        start=_asked(),
        back_to=back,
        template="mix/cure.html",
    )


def _asked() -> dict[str, str]:
    """What a weighing sheet asks for: it opens this form with the dose and the strength of its own cure."""
    return {key: request.args[key] for key in STARTING if key in request.args}
