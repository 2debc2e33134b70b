"""A reading put right: what the instrument showed, what that stands for, by which check, and for which warmth."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any, cast

from attrs import evolve, frozen

from core.chamber.checks import Correction
from core.chamber.checks_hygrometer import ONE_POINT_REACH
from core.daybook.compensation import Compensation, compensate
from core.daybook.facts import AirRead, IngredientWeighed, PieceHung, PieceWeighed, Reading
from core.daybook.instrument_checks import QUANTITIES, Measured
from core.daybook.instruments import Checked, Instrument, Shelf
from core.quantities import CELSIUS_TEMPERATURE, METRIC, RATIO, TEMPERATURE, TEMPERATURE_DIFFERENCE, Amount, Quantity
from core.sentence import Sentence
from core.sources import DEFINITION, NERNST
from core.working import Figure


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
    IngredientWeighed: (ReadOn("mass_kg", "scale", "mass"),),
}
NAMES: Mapping[Measured, str] = {"temperature": "Temperature", "humidity": "Humidity", "ph": "pH", "mass": "Weight"}
_CORRECTED: Mapping[Measured, str] = {
    "temperature": "Corrected temperature",
    "humidity": "Corrected humidity",
    "ph": "Corrected pH",
    "mass": "Corrected weight",
}


@frozen
class PutRight:
    """raw: as shown, value: what it stands for, both SI. The check is the one in force when it was read, None where
    there was none and only the warmth of the sample was made up for."""

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
        """The check's, where it puts anything right."""
        return None if self.check is None else self.check.applied

    @property
    def by_check(self) -> float:
        """The value after the check, before the compensation."""
        return self.value if self.compensation is None else self.compensation.before

    @property
    def is_changed(self) -> bool:
        """Whether the reader sees a difference."""
        shown, put_right = (Amount(each, self.quantity).show(METRIC) for each in (self.raw, self.value))
        return shown != put_right

    @property
    def check_name(self) -> str:
        """ "salt check of 3 Nov"; with its year where that is another than the reading's."""
        if self.check is None:
            return "no check"
        at = self.check.at
        year = f" {at.year}" if at.year != self.at.year else ""
        return f"{self.check.by} of {at.day} {at:%b}{year}"

    @property
    def note(self) -> Sentence | None:
        """A few words to stand beside the value; none where it is as it was read."""
        if self.proves_nothing:
            named = {"instrument": self.instrument.name, "check": self.check_name}
            return Sentence("proves nothing: {instrument} failed its {check}", named)
        if self.is_changed:
            return next(iter(_corrected([self])), None)
        return self.compensation.said if self.compensation is not None and self.compensation.why_not else None

    @property
    def reasons(self) -> Sentence:
        """What changed it: "buffer check of 2 Nov; taken at 24 °C in the meat"."""
        check = Sentence("{check}", {"check": self.check_name})
        if self.compensation is None:
            return check
        if self.correction is None:
            return self.compensation.said
        return Sentence("{check}; {compensation}", {"check": check, "compensation": self.compensation.said})

    @property
    def shown(self) -> Amount:
        """As it was read."""
        return Amount(self.raw, self.quantity)


def _corrected(readings: Sequence[PutRight]) -> tuple[Sentence, ...]:
    if not readings:
        return ()
    told = [Sentence("{raw} ({why})", {"raw": reading.shown, "why": reading.reasons}) for reading in readings]
    if len(told) == 1:
        return (Sentence("corrected from {one}", {"one": told[0]}),)
    return (Sentence("corrected from {one} and {other}", {"one": told[0], "other": told[1]}),)


@frozen
class Right:
    """A fact with its readings put right, and what became of each that a check or a compensation speaks of."""

    fact: Any
    readings: tuple[PutRight, ...] = ()

    def of(self, measured: Measured) -> PutRight | None:
        return next((each for each in self.readings if each.measured == measured), None)

    @property
    def notes(self) -> tuple[Sentence, ...]:
        """Those of all its readings, what was corrected in one: "corrected from 12 °C (…) and 72 % (…)"."""
        corrected = [each for each in self.readings if each.is_changed]
        others = (each.note for each in self.readings if not each.is_changed)
        return (*_corrected(corrected), *(note for note in others if note is not None))

    @property
    def figures(self) -> tuple[Figure, ...]:
        """One for each reading that is changed or spoilt."""
        return tuple(figure(each) for each in self.readings if each.note is not None)


AS_READ = Right(None)
"""Nothing was read on a checked instrument."""


def put_right(shelf: Shelf, fact: Any, at: datetime) -> Right:
    """The fact as it would have been with perfect instruments. One that holds no readings stays as it is."""
    right = _by_checks(shelf, fact, at)
    return _compensated(right, shelf, at) if isinstance(fact, Reading) else right


def _compensated(right: Right, shelf: Shelf, at: datetime) -> Right:
    """The pH made up for the temperature it was read at, once both are put right by their checks."""
    fact: Reading = right.fact
    meter = shelf.find(fact.meter)
    was, warmth = right.of("ph"), right.of("temperature")
    if fact.ph is None or meter is None or (was is not None and was.proves_nothing):
        return right
    check, raw = (None, fact.ph) if was is None else (was.check, was.raw)
    trusted = warmth is None or not warmth.proves_nothing
    found = compensate(meter, check, fact.ph, fact.temperature_c, beside=fact.place != "core", trusted=trusted)
    if found is None:
        return right
    of_ph = PutRight(raw, found.value, "ph", at, meter, check, found)
    others = (each for each in right.readings if each.measured != "ph")
    return Right(evolve(fact, ph=found.value), (of_ph, *others))


def _by_checks(shelf: Shelf, fact: Any, at: datetime) -> Right:
    readings: list[PutRight] = []
    for read in READ_ON.get(cast("type[Any]", type(fact)), ()):
        raw: float | None = getattr(fact, read.field)
        instrument = shelf.find(getattr(fact, read.instrument))
        check = instrument.in_force(read.measured, at) if instrument is not None else None
        if raw is None or instrument is None or check is None:
            continue
        value = raw if check.applied is None else check.applied.apply(raw)
        try:
            fact = evolve(fact, **{read.field: value})
        except ValueError:  # no weight, no temperature: what a line gives far from its points
            value = raw
        readings.append(PutRight(raw, value, read.measured, at, instrument, check))
    return Right(fact, tuple(readings))


def figure(reading: PutRight) -> Figure:
    """The value with its working, and what to beware of."""
    if reading.proves_nothing:
        return _spoilt(reading)
    low, high = _range(reading)
    compensation = reading.compensation
    left_alone = compensation is not None and not reading.is_changed
    return Figure(
        key=f"{reading.measured}_right",
        name=f"{NAMES[reading.measured]}, as read" if left_alone else _CORRECTED[reading.measured],
        value=reading.value,
        quantity=reading.quantity,
        working=(*working(reading), *(compensation.working if compensation is not None else ())),
        source=DEFINITION if compensation is None or compensation.why_not else NERNST,
        cautions=(*_cautions(reading), *(compensation.cautions if compensation is not None else ())),
        low=low,
        high=high,
    )


def _range(reading: PutRight) -> tuple[float, float] | tuple[None, None]:
    """What the check is sure of; a compensation alone knows none."""
    correction = reading.correction
    if correction is None:
        return None, None
    ratio = 1.0 if reading.compensation is None else reading.compensation.ratio
    unsure = correction.uncertainty_at(reading.raw) * ratio
    return _held(correction, reading.value - unsure), _held(correction, reading.value + unsure)


def _held(correction: Correction, value: float) -> float:
    """The value held between what the correction's world allows."""
    return evolve(correction, offset=0.0, gain=1.0).apply(value)


def _spoilt(reading: PutRight) -> Figure:
    named = {"instrument": reading.instrument.name, "check": reading.check_name}
    return Figure(
        key=f"{reading.measured}_right",
        name=f"{NAMES[reading.measured]}, as read",
        value=reading.raw,
        quantity=reading.quantity,
        working=(Sentence("{instrument} failed its {check}: no correction makes such a reading true.", named),),
        source=DEFINITION,
        cautions=(f"{reading.instrument.name} failed its {reading.check_name}: this reading proves nothing.",),
    )


def working(reading: PutRight) -> tuple[Sentence, ...]:
    """The sum by which the check puts the reading right; none where it does not."""
    correction = reading.correction
    if correction is None:
        return ()
    head = Sentence("{instrument}: {check}.", {"instrument": reading.instrument.name, "check": reading.check_name})
    plain_value = correction.offset + correction.gain * reading.raw
    held = (Sentence("Held within what can be."),) if plain_value != reading.by_check else ()
    if correction.gain == 1.0:
        return (head, _added(reading, correction, plain_value), *held)
    unit = CELSIUS_TEMPERATURE if reading.measured == "temperature" else reading.quantity
    amounts = {
        "raw": Amount(reading.raw, unit),
        "gain": Amount(correction.gain, RATIO),
        "offset": Amount(abs(correction.offset), unit),
        "value": Amount(plain_value, unit),
    }
    if not correction.offset:
        return (head, Sentence("{gain} × {raw} = {value}", amounts), *held)
    sign = "−" if correction.offset < 0 else "+"
    return (head, Sentence(f"{{gain}} × {{raw}} {sign} {{offset}} = {{value}}", amounts), *held)


def _added(reading: PutRight, correction: Correction, value: float) -> Sentence:
    step = TEMPERATURE_DIFFERENCE if reading.quantity == TEMPERATURE else reading.quantity
    sign = "−" if correction.offset < 0 else "+"
    amounts = {
        "raw": Amount(reading.raw, reading.quantity),
        "offset": Amount(abs(correction.offset), step),
        "value": Amount(value, reading.quantity),
    }
    return Sentence(f"{{raw}} {sign} {{offset}} = {{value}}", amounts)


def _cautions(reading: PutRight) -> tuple[str, ...]:
    correction = reading.correction
    if correction is None:
        return ()
    old = reading.instrument.is_old(reading.at) and reading.measured == reading.instrument.measures[0]
    far = (
        reading.measured == "humidity"
        and correction.high_reading is None
        and correction.low_reading is not None
        and abs(reading.raw - correction.low_reading) > ONE_POINT_REACH
    )
    name = reading.instrument.name
    return (
        *((f"The {reading.check_name} is old by now: check {name} again.",) if old else ()),
        *((f"It lies far from the one salt {name} was checked over: check it over two.",) if far else ()),
    )
