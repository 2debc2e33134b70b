"""A reading put right: what the instrument showed, what that stands for, and by which check."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any, cast

from attrs import evolve, frozen

from core.chamber.sensors import Correction
from core.chamber.sensors_hygrometer import ONE_POINT_REACH
from core.daybook.facts import AirRead, IngredientWeighed, PieceHung, PieceWeighed, Reading
from core.daybook.instrument_checks import QUANTITIES, Measured
from core.daybook.instruments import Checked, Instrument, Shelf
from core.quantities import CELSIUS_TEMPERATURE, METRIC, RATIO, TEMPERATURE, TEMPERATURE_DIFFERENCE, Amount, Quantity
from core.sources import DEFINITION
from core.working import Figure, Step


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


@frozen
class PutRight:
    """raw: as shown, value: what it stands for, both SI. The check is the one in force when it was read."""

    raw: float
    value: float
    measured: Measured
    at: datetime
    instrument: Instrument
    check: Checked

    @property
    def quantity(self) -> Quantity:
        return QUANTITIES[self.measured]

    @property
    def proves_nothing(self) -> bool:
        """Read on an instrument that had failed its check."""
        return self.check.failed

    @property
    def is_changed(self) -> bool:
        """Whether the reader sees a difference."""
        shown, put_right = (Amount(each, self.quantity).show(METRIC) for each in (self.raw, self.value))
        return shown != put_right

    @property
    def check_name(self) -> str:
        """ "salt check of 3 Nov"; with its year where that is another than the reading's."""
        at = self.check.at
        year = f" {at.year}" if at.year != self.at.year else ""
        return f"{self.check.by} of {at.day} {at:%b}{year}"

    @property
    def note(self) -> Step | None:
        """A few words to stand beside the value; none where it is as it was read."""
        if self.proves_nothing:
            return Step(f"proves nothing: {plain(self.instrument.name)} failed its {self.check_name}")
        return next(iter(_corrected([self])), None) if self.is_changed else None


def _corrected(readings: Sequence[PutRight]) -> tuple[Step, ...]:
    if not readings:
        return ()
    each = (f"{{{reading.measured}}} ({reading.check_name})" for reading in readings)
    raw = {str(reading.measured): Amount(reading.raw, reading.quantity) for reading in readings}
    return (Step(f"corrected from {' and '.join(each)}", raw),)


@frozen
class Right:
    """A fact with its readings put right, and what became of each that was read on a checked instrument."""

    fact: Any
    readings: tuple[PutRight, ...] = ()

    def of(self, measured: Measured) -> PutRight | None:
        return next((each for each in self.readings if each.measured == measured), None)

    @property
    def notes(self) -> tuple[Step, ...]:
        """Those of all its readings, what was corrected in one: "corrected from 12 °C (…) and 72 % (…)"."""
        corrected = [each for each in self.readings if each.is_changed]
        failed = (each.note for each in self.readings if each.proves_nothing)
        return (*_corrected(corrected), *(note for note in failed if note is not None))

    @property
    def figures(self) -> tuple[Figure, ...]:
        """One for each reading that the check changes or spoils."""
        return tuple(figure(each) for each in self.readings if each.note is not None)


AS_READ = Right(None)
"""Nothing was read on a checked instrument."""


def put_right(shelf: Shelf, fact: Any, at: datetime) -> Right:
    """The fact as it would have been with perfect instruments. One that holds no readings stays as it is."""
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
        return _as_read(reading)
    correction = reading.check.correction
    assert correction is not None
    unsure = correction.uncertainty_at(reading.raw)
    return Figure(
        key=f"{reading.measured}_right",
        name=f"{NAMES[reading.measured]}, put right",
        value=reading.value,
        quantity=reading.quantity,
        working=(Step(f"{plain(reading.instrument.name)}: {reading.check_name}."), *working(reading)),
        source=DEFINITION,
        cautions=_cautions(reading, correction),
        low=_held(correction, reading.value - unsure),
        high=_held(correction, reading.value + unsure),
    )


def _held(correction: Correction, value: float) -> float:
    """The value held between what the correction's world allows."""
    return evolve(correction, offset=0.0, gain=1.0).apply(value)


def _as_read(reading: PutRight) -> Figure:
    name = plain(reading.instrument.name)
    return Figure(
        key=f"{reading.measured}_right",
        name=f"{NAMES[reading.measured]}, as read",
        value=reading.raw,
        quantity=reading.quantity,
        working=(Step(f"{name} failed its {reading.check_name}: no correction makes such a reading true."),),
        source=DEFINITION,
        cautions=(f"{reading.instrument.name} failed its {reading.check_name}: this reading proves nothing.",),
    )


def working(reading: PutRight) -> tuple[Step, ...]:
    """The sum that puts the reading right."""
    correction = reading.check.correction
    assert correction is not None
    plain_value = correction.offset + correction.gain * reading.raw
    held = (Step("Held within what can be."),) if plain_value != reading.value else ()
    if correction.gain == 1.0:
        return (_added(reading, correction, plain_value), *held)
    unit = CELSIUS_TEMPERATURE if reading.measured == "temperature" else reading.quantity
    amounts = {
        "raw": Amount(reading.raw, unit),
        "gain": Amount(correction.gain, RATIO),
        "offset": Amount(abs(correction.offset), unit),
        "value": Amount(plain_value, unit),
    }
    if not correction.offset:
        return (Step("{gain} × {raw} = {value}", amounts), *held)
    sign = "−" if correction.offset < 0 else "+"
    return (Step(f"{{gain}} × {{raw}} {sign} {{offset}} = {{value}}", amounts), *held)


def _added(reading: PutRight, correction: Correction, value: float) -> Step:
    step = TEMPERATURE_DIFFERENCE if reading.quantity == TEMPERATURE else reading.quantity
    sign = "−" if correction.offset < 0 else "+"
    amounts = {
        "raw": Amount(reading.raw, reading.quantity),
        "offset": Amount(abs(correction.offset), step),
        "value": Amount(value, reading.quantity),
    }
    return Step(f"{{raw}} {sign} {{offset}} = {{value}}", amounts)


def _cautions(reading: PutRight, correction: Correction) -> tuple[str, ...]:
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


def plain(name: str) -> str:
    """A name may hold braces; in a step they would be taken for an amount."""
    return name.replace("{", "{{").replace("}", "}}")


def correction_in_words(reading_of: Measured, correction: Correction) -> Step:
    """The correction now in force as a sentence that holds in either unit system."""
    quantity = QUANTITIES[reading_of]
    if correction.gain == 1.0:
        step = TEMPERATURE_DIFFERENCE if quantity == TEMPERATURE else quantity
        size = {"size": Amount(abs(correction.offset), step)}
        if not correction.offset:
            return Step("It reads right: nothing is added.")
        if correction.offset > 0:
            return Step("{size} is added to every reading.", size)
        return Step("{size} is taken off every reading.", size)
    if not correction.offset:
        return Step("Every reading is multiplied by {gain}.", {"gain": Amount(correction.gain, RATIO)})
    low, high = _ends(correction)
    amounts = {
        "low": Amount(low, quantity),
        "low_right": Amount(correction.apply(low), quantity),
        "high": Amount(high, quantity),
        "high_right": Amount(correction.apply(high), quantity),
    }
    return Step(
        "{low} read is {low_right}, {high} read is {high_right}, and in a straight line between and beyond.", amounts
    )


def _ends(correction: Correction) -> tuple[float, float]:
    low = 0.0 if correction.low_reading is None else correction.low_reading
    return low, low + 1.0 if correction.high_reading is None else correction.high_reading
