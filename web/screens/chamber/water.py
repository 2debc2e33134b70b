"""The humidifier's water."""

from __future__ import annotations

from core.chamber import humidifier
from core.daybook.facts import CHAMBER, HumidifierCharged
from core.quantities import DOSE_MASS, VOLUME, Amount, Manner
from core.working import Figure
from web.entry_forms import EntryForm, Subject, Values, declare
from web.forms import typed
from web.journal import book
from web.screens.chamber.blueprint import of_chamber, screen
from web.visitor import manner


def _charged(values: Values, subject: Subject) -> HumidifierCharged:
    return HumidifierCharged(values["water_m3"], values["soda_kg_per_m3"] * values["water_m3"], values["tank_m3"])


def _charge(fact: HumidifierCharged, subject: Subject) -> tuple[Figure, ...]:
    return humidifier.charge(fact.water_m3, fact.soda_kg / fact.water_m3, tank_m3=fact.tank_m3)


def _said(fact: HumidifierCharged, how: Manner) -> str:
    soda = f" with {Amount(fact.soda_kg, DOSE_MASS).show(how)} of baking soda" if fact.soda_kg else ""
    return f"Humidifier charged: {Amount(fact.water_m3, VOLUME).show(how)} of water{soda}"


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
    )
)


@screen.route("/chamber/charge", methods=["GET", "POST"])
def charge():
    """The tank and the strength are those of the last charge: only the water differs."""
    last = book().latest(CHAMBER, HumidifierCharged)
    texts = CHARGE.texts_of(last.fact, manner()) if last else {}
    return of_chamber(CHARGE, {key: text for key, text in texts.items() if key != "water_m3"})
