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
from core.daybook.facts.fields import boxes
from core.daybook.facts.instruments import (
    BoilingPointChecked,
    BuffersChecked,
    IcePointChecked,
    MassesChecked,
    SaltChecked,
    TwoSaltsChecked,
)
from core.daybook.instrument_checks import work_out
from core.quantities import DOSE_MASS, PH, RELATIVE_HUMIDITY, TEMPERATURE, Amount
from core.sentence import Message, Rounded, Said, Sentence, Value, in_a_row, said
from core.sources import SALT_WAIT, Source
from core.working import Figure
from web.entry_forms import EntryForm, Subject, declare


@frozen
class Way:
    """One way of checking. words: its button. how: what to do. kept: what the next check of this kind starts from.

    source: of what it says to do.
    """

    words: Message
    how: tuple[Said, ...]
    form: EntryForm
    kept: tuple[str, ...]
    source: Source | None = None


def _figures(fact: Any, subject: Subject) -> tuple[Figure, ...]:
    return () if subject.instrument is None else work_out(fact, subject.instrument.added).figures


def _form(kind: type[Any], title: Message, say: Callable[[Any], Sentence]) -> EntryForm:
    return declare(
        EntryForm(kind, title, boxes(kind), say, figures=_figures, save="Save the check", correct="Correct this check")
    )


def _of_temperature(text: Message) -> Callable[[IcePointChecked | BoilingPointChecked], Sentence]:
    return lambda fact: Sentence(text, {"reading": Rounded(Amount(fact.reading_c, TEMPERATURE))})


def _salt(fact: SaltChecked) -> Sentence:
    return Sentence("Checked: {over}", {"over": _over(fact.salt, fact.reading, fact.temperature_c)})


def _two_salts(fact: TwoSaltsChecked) -> Sentence:
    other = _over(fact.other_salt, fact.other_reading, fact.other_temperature_c)
    return _checked(_over(fact.salt, fact.reading, fact.temperature_c), other)


def _over(salt: str, reading: float, temperature_c: float) -> Sentence:
    read = {
        "reading": Rounded(Amount(reading, RELATIVE_HUMIDITY)),
        "salt": said(SALTS[salt].name) if salt in SALTS else salt,
        "temperature": Rounded(Amount(temperature_c, TEMPERATURE)),
    }
    return Sentence("{reading} over {salt} at {temperature}", read)


def _checked(*points: Value) -> Sentence:
    return Sentence("Checked: {points}", {"points": in_a_row(points)})


def _buffers(fact: BuffersChecked) -> Sentence:
    def point(reading: float, buffer: float) -> Sentence:
        read = {"reading": Rounded(Amount(reading, SHOWN)), "buffer": Rounded(Amount(buffer, PH))}
        return Sentence("{reading} mV in pH {buffer}" if fact.shows == "mv" else "{reading} in pH {buffer}", read)

    points = [point(fact.reading, fact.buffer), point(fact.other_reading, fact.other_buffer)]
    return _checked(*points, *([Sentence("cleaned before")] if fact.cleaned == "yes" else []))


def _masses(fact: MassesChecked) -> Sentence:
    def point(reading: float, mass: float) -> Sentence:
        read = {"reading": Rounded(Amount(reading, DOSE_MASS)), "mass": Rounded(Amount(mass, DOSE_MASS))}
        return Sentence("{reading} under {mass}", read)

    one = point(fact.reading_kg, fact.mass_kg)
    if fact.other_mass_kg is None or fact.other_reading_kg is None:
        return _checked(one)
    return _checked(one, point(fact.other_reading_kg, fact.other_mass_kg))


HOW_LONG = Sentence(
    "Once salt, box and sensor are equally warm, wait at least {small} with a small bare sensor, {bulky} with a bulky "
    "one.",
    {bulk: Rounded(Amount(seconds, WAIT)) for bulk, seconds in WAITS_S.items()},
)
_OF_SALTS = ("division", "apart_k", "bulk")
_TWO = ("salt", "other_salt", *_OF_SALTS)

ICE = _form(IcePointChecked, "Check in melting ice", _of_temperature("Checked in ice: {reading}"))
BOILING = _form(BoilingPointChecked, "Check in boiling water", _of_temperature("Checked in boiling water: {reading}"))
SALT = _form(SaltChecked, "Check over one salt", _salt)
TWO_SALTS = _form(TwoSaltsChecked, "Check over two salts", _two_salts)
BUFFERS = _form(BuffersChecked, "Check in two buffers", _buffers)
MASSES = _form(MassesChecked, "Check with weights", _masses)

_IN_A_BAG: Message = (
    "A hygrometer goes into it in a dry, tight bag, and takes its time (common practice; no published source)."
)
_OVER_TWO: Message = (
    "One after the other: save the first by itself when it is read, and its figures stand here when you come back."
)

WAYS: Mapping[str, Way] = {
    "ice": Way("In ice", (SLUSH, _IN_A_BAG), ICE, ("division_k",)),
    "boiling": Way("In boiling water", (ROLLING,), BOILING, ("altitude_m", "division_k")),
    "salt": Way("Over one salt", (WET_SAND, HOW_LONG), SALT, ("salt", *_OF_SALTS), SALT_WAIT),
    "salts": Way("Over two salts", (WET_SAND, HOW_LONG, _OVER_TWO), TWO_SALTS, _TWO, SALT_WAIT),
    "buffers": Way("In two buffers", (FRESH,), BUFFERS, ("shows", "buffer", "other_buffer")),
    "weights": Way("With weights", (TARE, SPAN), MASSES, ("mass_kg", "division_kg", "other_mass_kg")),
}
"""By the last part of the address."""
