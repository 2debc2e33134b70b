"""The chamber's water: the humidifier charged and filled up, the basin emptied."""

from __future__ import annotations

from core.chamber import humidifier
from core.daybook import water
from core.daybook.facts.chamber import CHAMBER, BasinEmptied, BasinKnown, HumidifierCharged, HumidifierFilled
from core.daybook.facts.fields import boxes
from core.quantities import DOSE_MASS, VOLUME, Amount
from core.refusals import OutOfRange
from core.sentence import Rounded, Sentence
from core.working import Figure
from web.entry_forms import EntryForm, Subject, Values, declare
from web.forms import typed
from web.journal import book
from web.screens.chamber.blueprint import of_chamber, screen
from web.visitor import reader


def _charged(values: Values, subject: Subject) -> HumidifierCharged:
    return HumidifierCharged(values["water_m3"], values["soda_kg_per_m3"] * values["water_m3"], values["tank_m3"])


def _charge(fact: HumidifierCharged, subject: Subject) -> tuple[Figure, ...]:
    return humidifier.charge(fact.water_m3, fact.soda_kg / fact.water_m3, tank_m3=fact.tank_m3)


def _said(fact: HumidifierCharged) -> Sentence:
    water = _water(fact.water_m3)
    if not fact.soda_kg:
        return Sentence("Humidifier charged: {water} of water", {"water": water})
    soda = Rounded(Amount(fact.soda_kg, DOSE_MASS))
    return Sentence("Humidifier charged: {water} of water with {soda} of baking soda", {"water": water, "soda": soda})


def _water(volume_m3: float) -> Rounded:
    return Rounded(Amount(volume_m3, VOLUME))


CHARGE = declare(
    EntryForm(
        HumidifierCharged,
        "Charge the humidifier",
        humidifier.CHARGE_INPUTS,
        _said,
        figures=_charge,
        fact=_charged,
        texts=lambda fact, how: {
            "water_m3": typed(fact.water_m3, VOLUME, how),
            "soda_kg_per_m3": typed(fact.soda_kg / fact.water_m3, humidifier.SODA_DOSE, how),
            "tank_m3": typed(fact.tank_m3, VOLUME, how),
        },
        save="Save the charge",
        correct="Correct this charge",
    )
)


def _filled(values: Values, subject: Subject) -> HumidifierFilled:
    """No more goes in, and no more stands in it, than the mark that was given with the last charge allows."""
    mark_m3 = water.tank_mark_m3(book())
    for key in ("water_m3", "now_holds_m3"):
        if mark_m3 is not None and (values[key] or 0.0) > mark_m3 * (1 + 1e-5):
            most = {"most": _water(mark_m3)}
            raise OutOfRange(key, Sentence("The tank is marked for at most {most}: fill it no higher.", most))
    return HumidifierFilled(**values)


FILL = declare(
    EntryForm(
        HumidifierFilled,
        "Fill the humidifier",
        boxes(HumidifierFilled),
        lambda fact: Sentence("Humidifier filled: {water} of water", {"water": _water(fact.water_m3)}),
        fact=_filled,
        save="Save the filling",
        correct="Correct this filling",
    )
)

BASIN = declare(
    EntryForm(
        BasinKnown,
        "How much the basin holds",
        boxes(BasinKnown),
        lambda fact: Sentence("The basin holds {water}", {"water": _water(fact.holds_m3)}),
        correct="Correct what the basin holds",
    )
)


def _emptied(values: Values, subject: Subject) -> BasinEmptied:
    holds_m3 = water.basin(book()).holds_m3
    if holds_m3 is not None and values["volume_m3"] > holds_m3 * (1 + 1e-5):
        most = {"most": _water(holds_m3)}
        raise OutOfRange(
            "volume_m3", Sentence("The basin holds {most} at most. Say on its page if it holds more.", most)
        )
    return BasinEmptied(**values)


EMPTY = declare(
    EntryForm(
        BasinEmptied,
        "Empty the basin",
        boxes(BasinEmptied),
        lambda fact: Sentence("Basin emptied: {water} of water", {"water": _water(fact.volume_m3)}),
        fact=_emptied,
        save="Save the emptying",
        correct="Correct this emptying",
    )
)


@screen.route("/chamber/charge", methods=["GET", "POST"])
def charge():
    """The tank and the strength are those of the last charge: only the water differs."""
    last = book().latest(CHAMBER, HumidifierCharged)
    texts = CHARGE.texts_of(last.fact, reader()) if last else {}
    return of_chamber(CHARGE, {key: text for key, text in texts.items() if key != "water_m3"})


@screen.route("/chamber/fill", methods=["GET", "POST"])
def fill():
    return of_chamber(FILL)


@screen.route("/chamber/basin", methods=["GET", "POST"])
def know_basin():
    last = book().latest(CHAMBER, BasinKnown)
    return of_chamber(BASIN, BASIN.texts_of(last.fact, reader()) if last else None)


@screen.route("/chamber/basin/empty", methods=["GET", "POST"])
def empty_basin():
    return of_chamber(EMPTY)
