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
from core.quantities import DOSE_MASS, PH, RELATIVE_HUMIDITY, TEMPERATURE, Amount
from core.sentence import Rounded, Said, Sentence, said
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


def _form(kind: type[Any], title: str, say: Callable[[Any], Said]) -> EntryForm:
    return declare(
        EntryForm(kind, title, boxes(kind), say, figures=_figures, save="Save the check", correct="Correct this check")
    )


def _read(value_c: float) -> Rounded:
    return Rounded(Amount(value_c, TEMPERATURE))


def _over(salt: str, reading: float, temperature_c: float) -> Sentence:
    name = said(SALTS[salt].name) if salt in SALTS else salt
    read = {"reading": Rounded(Amount(reading, RELATIVE_HUMIDITY)), "temperature": _read(temperature_c)}
    return Sentence("{reading} over {salt} at {temperature}", {"salt": name, **read})


def _one_salt(fact: SaltChecked) -> Sentence:
    return _checked(_over(fact.salt, fact.reading, fact.temperature_c))


def _two_salts(fact: TwoSaltsChecked) -> Sentence:
    one = _over(fact.salt, fact.reading, fact.temperature_c)
    return _checked(one, _over(fact.other_salt, fact.other_reading, fact.other_temperature_c))


def _buffers(fact: BuffersChecked) -> Sentence:
    def read(reading: float, buffer: float) -> Sentence:
        told = {"reading": Rounded(Amount(reading, SHOWN)), "buffer": Rounded(Amount(buffer, PH))}
        return Sentence("{reading} mV in pH {buffer}" if fact.shows == "mv" else "{reading} in pH {buffer}", told)

    told = _checked(read(fact.reading, fact.buffer), read(fact.other_reading, fact.other_buffer))
    return Sentence("{checked}, cleaned before", {"checked": told}) if fact.cleaned == "yes" else told


def _masses(fact: MassesChecked) -> Sentence:
    def read(reading: float, mass: float) -> Sentence:
        told = {"reading": Rounded(Amount(reading, DOSE_MASS)), "mass": Rounded(Amount(mass, DOSE_MASS))}
        return Sentence("{reading} under {mass}", told)

    one = read(fact.reading_kg, fact.mass_kg)
    if fact.other_mass_kg is None or fact.other_reading_kg is None:
        return _checked(one)
    return _checked(one, read(fact.other_reading_kg, fact.other_mass_kg))


def _checked(one: Sentence, other: Sentence | None = None) -> Sentence:
    if other is None:
        return Sentence("Checked: {one}", {"one": one})
    return Sentence("Checked: {one}, {other}", {"one": one, "other": other})


_SMALL, _BULKY = (Amount(WAITS_S[bulk], WAIT).show() for bulk in ("small", "bulky"))
HOW_LONG = (
    f"Once salt, box and sensor are equally warm, wait at least {_SMALL} with a small bare sensor, {_BULKY} with a "
    f"bulky one. {SALT_WAIT.cite()}"
)
_OF_SALTS = ("division", "apart_k", "bulk")

ICE = _form(
    IcePointChecked,
    "Check in melting ice",
    lambda fact: Sentence("Checked in ice: {reading}", {"reading": _read(fact.reading_c)}),
)
BOILING = _form(
    BoilingPointChecked,
    "Check in boiling water",
    lambda fact: Sentence("Checked in boiling water: {reading}", {"reading": _read(fact.reading_c)}),
)
SALT = _form(SaltChecked, "Check over one salt", _one_salt)
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
