"""The forms of checking an instrument: what it read at a known point, and what that comes to, as one types."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from attrs import frozen

from core.chamber.checks_hygrometer import WAIT, WAITS_S, WET_SAND
from core.chamber.checks_ph import FRESH, SHOWN
from core.chamber.checks_salts import SALTS
from core.chamber.checks_scale import SPAN, TARE
from core.chamber.checks_thermometer import ROLLING, SLUSH
from core.daybook.facts import (
    BoilingPointChecked,
    BuffersChecked,
    IcePointChecked,
    MassesChecked,
    SaltChecked,
    TwoSaltsChecked,
)
from core.daybook.facts.fields import boxes
from core.daybook.instrument_checks import work_out
from core.quantities import DOSE_MASS, PH, RELATIVE_HUMIDITY, TEMPERATURE, Amount, Reader
from core.sources import SALT_WAIT
from core.working import Figure
from web.entry_forms import EntryForm, Subject, declare


@frozen
class Way:
    """One way of checking. words: its button. how: what to do. kept: what the next check of this kind starts from."""

    words: str
    how: str
    form: EntryForm
    kept: tuple[str, ...]


def _figures(fact: Any, subject: Subject) -> tuple[Figure, ...]:
    return () if subject.instrument is None else work_out(fact, subject.instrument.added).figures


def _form(kind: type[Any], title: str, say: Callable[[Any, Reader], str]) -> EntryForm:
    return declare(
        EntryForm(kind, title, boxes(kind), say, figures=_figures, save="Save the check", correct="Correct this check")
    )


def _read(value: float, how: Reader) -> str:
    return Amount(value, TEMPERATURE).show(how)


def _over(salt: str, reading: float, temperature_c: float, how: Reader) -> str:
    name = SALTS[salt].name if salt in SALTS else salt
    return (
        f"{Amount(reading, RELATIVE_HUMIDITY).show(how)} over {name} at {Amount(temperature_c, TEMPERATURE).show(how)}"
    )


def _two_salts(fact: TwoSaltsChecked, how: Reader) -> str:
    one = _over(fact.salt, fact.reading, fact.temperature_c, how)
    return f"Checked: {one}, {_over(fact.other_salt, fact.other_reading, fact.other_temperature_c, how)}"


def _buffers(fact: BuffersChecked, how: Reader) -> str:
    def shown(reading: float, buffer: float) -> str:
        unit = " mV" if fact.shows == "mv" else ""
        return f"{Amount(reading, SHOWN).show(how)}{unit} in pH {Amount(buffer, PH).show(how)}"

    cleaned = ", cleaned before" if fact.cleaned == "yes" else ""
    return f"Checked: {shown(fact.reading, fact.buffer)}, {shown(fact.other_reading, fact.other_buffer)}{cleaned}"


def _masses(fact: MassesChecked, how: Reader) -> str:
    def shown(reading: float, mass: float) -> str:
        return f"{Amount(reading, DOSE_MASS).show(how)} under {Amount(mass, DOSE_MASS).show(how)}"

    two = fact.other_mass_kg is not None and fact.other_reading_kg is not None
    second = f", {shown(fact.other_reading_kg or 0.0, fact.other_mass_kg or 0.0)}" if two else ""
    return f"Checked: {shown(fact.reading_kg, fact.mass_kg)}{second}"


_SMALL, _BULKY = (Amount(WAITS_S[bulk], WAIT).show() for bulk in ("small", "bulky"))
HOW_LONG = (
    f"Once salt, box and sensor are equally warm, wait at least {_SMALL} with a small bare sensor, {_BULKY} with a "
    f"bulky one. {SALT_WAIT.cite()}"
)
_OF_SALTS = ("division", "apart_k", "bulk")

ICE = _form(IcePointChecked, "Check in melting ice", lambda fact, how: f"Checked in ice: {_read(fact.reading_c, how)}")
BOILING = _form(
    BoilingPointChecked,
    "Check in boiling water",
    lambda fact, how: f"Checked in boiling water: {_read(fact.reading_c, how)}",
)
SALT = _form(
    SaltChecked,
    "Check over one salt",
    lambda fact, how: f"Checked: {_over(fact.salt, fact.reading, fact.temperature_c, how)}",
)
TWO_SALTS = _form(TwoSaltsChecked, "Check over two salts", _two_salts)
BUFFERS = _form(BuffersChecked, "Check in two buffers", _buffers)
MASSES = _form(MassesChecked, "Check with weights", _masses)

_IN_ICE = (
    f"{SLUSH} A hygrometer goes into it in a dry, tight bag, and takes its time (common practice; no published source)."
)
_OVER_TWO = (
    "One after the other: save the first by itself when it is read, and its figures stand here when you come back."
)

WAYS: Mapping[str, Way] = {
    "ice": Way("In ice", _IN_ICE, ICE, ("division_k",)),
    "boiling": Way("In boiling water", ROLLING, BOILING, ("altitude_m", "division_k")),
    "salt": Way("Over one salt", f"{WET_SAND} {HOW_LONG}", SALT, ("salt", *_OF_SALTS)),
    "salts": Way("Over two salts", f"{WET_SAND} {HOW_LONG} {_OVER_TWO}", TWO_SALTS, ("salt", "other_salt", *_OF_SALTS)),
    "buffers": Way("In two buffers", FRESH, BUFFERS, ("shows", "buffer", "other_buffer")),
    "weights": Way("With weights", f"{TARE} {SPAN}", MASSES, ("mass_kg", "division_kg", "other_mass_kg")),
}
"""By the last part of the address."""
