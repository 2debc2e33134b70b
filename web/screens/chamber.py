"""The chamber: its air, and the humidifier's charge."""

from __future__ import annotations

from flask import Blueprint, render_template, request, url_for

from core.air import moist_air
from core.chamber import humidifier
from core.daybook.facts import CHAMBER, AirRead, HumidifierCharged
from core.quantities import DOSE_MASS, RELATIVE_HUMIDITY, TEMPERATURE, VOLUME, Amount, Manner
from core.working import Figure
from core.worksheet import Number
from web.entry_forms import EntryForm, Subject, Values, declare, say, write
from web.forms import typed
from web.journal import book
from web.visitor import manner

screen = Blueprint("chamber", __name__)

LATEST_LINES = 50
"""A chamber is read for years: its page shows this many lines of the log until all are asked for."""


def _air(fact: AirRead, how: Manner) -> str:
    humidity = "" if fact.humidity is None else f", {Amount(fact.humidity, RELATIVE_HUMIDITY).show(how)}"
    return f"Air: {Amount(fact.temperature_c, TEMPERATURE).show(how)}{humidity}"


def air_figures(fact: AirRead, subject: Subject | None = None) -> tuple[Figure, ...]:
    return () if fact.humidity is None else moist_air(fact.temperature_c, fact.humidity)


AIR = declare(
    EntryForm(
        AirRead,
        "Read the chamber's air",
        (
            Number("temperature_c", "Temperature", TEMPERATURE, -20, 60),
            Number("humidity", "Relative humidity", RELATIVE_HUMIDITY, 0.01, 1, optional=True),
        ),
        _air,
        figures=air_figures,
        save="Save the reading",
    )
)


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


@screen.get("/chamber")
def page():
    shown = len(book()) + 1 if "all" in request.args else LATEST_LINES
    lines, air = book().about(CHAMBER), book().latest(CHAMBER, AirRead)
    return render_template(
        "chamber/page.html",
        air=air,
        figures=air_figures(air.fact) if air else (),
        charge=book().latest(CHAMBER, HumidifierCharged),
        log=[(line, say(line, manner())) for line in reversed(lines[-shown:])],
        hidden=len(lines[:-shown]),
    )


@screen.route("/chamber/charge", methods=["GET", "POST"])
def charge():
    """The tank and the strength are those of the last charge: only the water differs."""
    last = book().latest(CHAMBER, HumidifierCharged)
    texts = CHARGE.texts_of(last.fact, manner()) if last else {}
    return _of_chamber(CHARGE, {key: text for key, text in texts.items() if key != "water_m3"})


@screen.route("/chamber/air", methods=["GET", "POST"])
def read_air():
    return _of_chamber(AIR)


def _of_chamber(declared: EntryForm, start: dict[str, str] | None = None):
    back = url_for("chamber.page")
    return write(declared, Subject(), about=CHAMBER, back=back, back_to=back, start=start)
