"""A corrected reading: what the instrument showed, what it is after the check in force and at its temperature."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any, cast

from attrs import evolve, frozen

from core.chamber.checks import Correction
from core.daybook.corrections.compensation import Compensation, compensate
from core.daybook.facts.batch import PieceCut, PieceHung, PieceWeighed, Reading
from core.daybook.facts.chamber import AirRead
from core.daybook.facts.formula import IngredientWeighed
from core.daybook.instrument_checks import QUANTITIES, Measured
from core.daybook.instruments import Checked, Instrument, Shelf
from core.quantities import METRIC, Amount, Quantity
from core.sentence import Sentence, Value, day_and_month


@frozen
class ReadOn:
    """Which field of a fact holds a reading, and which holds the instrument it was read on."""

    field: str
    instrument: str
    measured: Measured


READ_ON: Mapping[type[Any], tuple[ReadOn, ...]] = {
    AirRead: (ReadOn("temperature_c", "instrument", "temperature"), ReadOn("humidity", "instrument", "humidity")),
    Reading: (ReadOn("ph", "meter", "ph"), ReadOn("temperature_c", "thermometer", "temperature")),
    PieceHung: (ReadOn("start_kg", "scale", "mass"),),
    PieceWeighed: (ReadOn("mass_kg", "scale", "mass"),),
    PieceCut: (ReadOn("before_kg", "scale", "mass"), ReadOn("after_kg", "scale", "mass")),
    IngredientWeighed: (ReadOn("mass_kg", "scale", "mass"),),
}


@frozen
class CorrectedReading:
    """raw: as shown, value: corrected, both SI. The check is the one in force when it was read, None where there was
    none and the pH was only compensated for the temperature of the sample."""

    raw: float
    value: float
    measured: Measured
    at: datetime
    instrument: Instrument
    check: Checked | None
    compensation: Compensation | None = None

    @property
    def quantity(self) -> Quantity:
        return QUANTITIES[self.measured]

    @property
    def proves_nothing(self) -> bool:
        """Read on an instrument that had failed its check."""
        return self.check is not None and self.check.failed

    @property
    def correction(self) -> Correction | None:
        """The check's, where it corrects anything."""
        return None if self.check is None else self.check.correction

    @property
    def by_check(self) -> float:
        """The value after the check, before the compensation."""
        return self.value if self.compensation is None else self.compensation.before

    @property
    def is_changed(self) -> bool:
        """Whether the reader sees a difference."""
        shown, as_corrected = (Amount(each, self.quantity).show(METRIC) for each in (self.raw, self.value))
        return shown != as_corrected

    @property
    def check_name(self) -> Sentence:
        """ "salt check of 3 Nov"; with its year where that is another than the reading's."""
        if self.check is None:
            return Sentence("no check")
        at = self.check.at.date()
        day = day_and_month(at) if at.year == self.at.year else at
        return Sentence("{check} of {day}", {"check": Sentence(self.check.by), "day": day})

    @property
    def note(self) -> Sentence | None:
        """A few words to stand beside the value; none where it is as it was read."""
        if self.proves_nothing:
            named: dict[str, Value] = {"instrument": self.instrument.name, "check": self.check_name}
            return Sentence("proves nothing: {instrument} failed its {check}", named)
        if self.is_changed:
            return next(iter(_told([self])), None)
        return self.compensation.said if self.compensation is not None and self.compensation.why_not else None

    @property
    def reasons(self) -> Sentence:
        """What changed it: "buffer check of 2 Nov; taken at 24 °C in the meat"."""
        if self.compensation is None:
            return self.check_name
        if self.correction is None:
            return self.compensation.said
        return Sentence("{check}; {compensation}", {"check": self.check_name, "compensation": self.compensation.said})

    @property
    def shown(self) -> Amount:
        """As it was read."""
        return Amount(self.raw, self.quantity)


def _told(readings: Sequence[CorrectedReading]) -> tuple[Sentence, ...]:
    if not readings:
        return ()
    told = [Sentence("{raw} ({why})", {"raw": reading.shown, "why": reading.reasons}) for reading in readings]
    if len(told) == 1:
        return (Sentence("corrected from {one}", {"one": told[0]}),)
    return (Sentence("corrected from {one} and {other}", {"one": told[0], "other": told[1]}),)


@frozen
class CorrectedFact:
    """A fact with its readings corrected, and what became of each that a check or a compensation speaks of."""

    fact: Any
    readings: tuple[CorrectedReading, ...] = ()

    def of(self, measured: Measured) -> CorrectedReading | None:
        return next((each for each in self.readings if each.measured == measured), None)

    @property
    def notes(self) -> tuple[Sentence, ...]:
        """Those of all its readings, what was corrected in one: "corrected from 12 °C (…) and 72 % (…)"."""
        corrected = [each for each in self.readings if each.is_changed]
        others = (each.note for each in self.readings if not each.is_changed)
        return (*_told(corrected), *(note for note in others if note is not None))


AS_READ = CorrectedFact(None)
"""Nothing was read on a checked instrument."""


def corrected(shelf: Shelf, fact: Any, at: datetime) -> CorrectedFact:
    """The fact as it would have been with perfect instruments. One that holds no readings stays as it is."""
    found = _by_checks(shelf, fact, at)
    return _compensated(found, shelf, at) if isinstance(fact, Reading) else found


def _compensated(checked: CorrectedFact, shelf: Shelf, at: datetime) -> CorrectedFact:
    """The pH compensated for the temperature it was read at, once both are corrected by their checks."""
    fact: Reading = checked.fact
    meter = shelf.find(fact.meter)
    was, temperature = checked.of("ph"), checked.of("temperature")
    if fact.ph is None or meter is None or (was is not None and was.proves_nothing):
        return checked
    check, raw = (None, fact.ph) if was is None else (was.check, was.raw)
    trusted = temperature is None or not temperature.proves_nothing
    found = compensate(meter, check, fact.ph, fact.temperature_c, beside=fact.place != "core", trusted=trusted)
    if found is None:
        return checked
    of_ph = CorrectedReading(raw, found.value, "ph", at, meter, check, found)
    others = (each for each in checked.readings if each.measured != "ph")
    return CorrectedFact(evolve(fact, ph=found.value), (of_ph, *others))


def _by_checks(shelf: Shelf, fact: Any, at: datetime) -> CorrectedFact:
    readings: list[CorrectedReading] = []
    for read in READ_ON.get(cast("type[Any]", type(fact)), ()):
        raw: float | None = getattr(fact, read.field)
        instrument = shelf.find(getattr(fact, read.instrument))
        check = instrument.in_force(read.measured, at) if instrument is not None else None
        if raw is None or instrument is None or check is None:
            continue
        value = raw if check.correction is None else check.correction.apply(raw)
        try:
            fact = evolve(fact, **{read.field: value})
        except ValueError:  # no weight, no temperature: what a line gives far from its points
            value = raw
        readings.append(CorrectedReading(raw, value, read.measured, at, instrument, check))
    return CorrectedFact(fact, tuple(readings))
