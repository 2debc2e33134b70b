"""How a correction is shown: a corrected reading as a figure with its working; what a check does to all readings."""

from __future__ import annotations

from collections.abc import Mapping

from attrs import evolve

from core.chamber.checks import NO_CORRECTION, Correction
from core.chamber.checks_hygrometer import ONE_POINT_REACH
from core.daybook.corrections.readings import CorrectedFact, CorrectedReading
from core.daybook.instrument_checks import QUANTITIES, Measured
from core.quantities import CELSIUS_TEMPERATURE, RATIO, TEMPERATURE, TEMPERATURE_DIFFERENCE, Amount
from core.sentence import Message, Sentence, Value
from core.sources import DEFINITION, NERNST
from core.working import Figure

NAMES: Mapping[Measured, Message] = {"temperature": "Temperature", "humidity": "Humidity", "ph": "pH", "mass": "Weight"}
_AS_READ: Mapping[Measured, Message] = {
    "temperature": "Temperature, as read",
    "humidity": "Humidity, as read",
    "ph": "pH, as read",
    "mass": "Weight, as read",
}
_CORRECTED: Mapping[Measured, Message] = {
    "temperature": "Corrected temperature",
    "humidity": "Corrected humidity",
    "ph": "Corrected pH",
    "mass": "Corrected weight",
}


def figures(corrected: CorrectedFact) -> tuple[Figure, ...]:
    """One for each reading that is changed or spoilt."""
    return tuple(figure(each) for each in corrected.readings if each.note is not None)


def figure(reading: CorrectedReading) -> Figure:
    """The value with its working, and what to beware of."""
    if reading.proves_nothing:
        return _spoilt(reading)
    low, high = _range(reading)
    compensation = reading.compensation
    left_alone = compensation is not None and not reading.is_changed
    return Figure(
        key=f"{reading.measured}_corrected",
        name=_AS_READ[reading.measured] if left_alone else _CORRECTED[reading.measured],
        value=reading.value,
        quantity=reading.quantity,
        working=(*working(reading), *(compensation.working if compensation is not None else ())),
        source=DEFINITION if compensation is None or compensation.why_not else NERNST,
        cautions=(*_cautions(reading), *(compensation.cautions if compensation is not None else ())),
        low=low,
        high=high,
    )


def _range(reading: CorrectedReading) -> tuple[float, float] | tuple[None, None]:
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


def _spoilt(reading: CorrectedReading) -> Figure:
    named: dict[str, Value] = {"instrument": reading.instrument.name, "check": reading.check_name}
    return Figure(
        key=f"{reading.measured}_corrected",
        name=_AS_READ[reading.measured],
        value=reading.raw,
        quantity=reading.quantity,
        working=(Sentence("{instrument} failed its {check}: no correction makes such a reading true.", named),),
        source=DEFINITION,
        cautions=(Sentence("{instrument} failed its {check}: this reading proves nothing.", named),),
    )


def working(reading: CorrectedReading) -> tuple[Sentence, ...]:
    """The sum by which the check corrects the reading; none where it does not."""
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
    less: Message = "{gain} × {raw} − {offset} = {value}"
    more: Message = "{gain} × {raw} + {offset} = {value}"
    return (head, Sentence(less if correction.offset < 0 else more, amounts), *held)


def _added(reading: CorrectedReading, correction: Correction, value: float) -> Sentence:
    step = TEMPERATURE_DIFFERENCE if reading.quantity == TEMPERATURE else reading.quantity
    less: Message = "{raw} − {offset} = {value}"
    more: Message = "{raw} + {offset} = {value}"
    amounts = {
        "raw": Amount(reading.raw, reading.quantity),
        "offset": Amount(abs(correction.offset), step),
        "value": Amount(value, reading.quantity),
    }
    return Sentence(less if correction.offset < 0 else more, amounts)


def _cautions(reading: CorrectedReading) -> tuple[Sentence, ...]:
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
    named: dict[str, Value] = {"check": reading.check_name, "name": reading.instrument.name}
    is_old = Sentence("The {check} is old by now: check {name} again.", named)
    is_far = Sentence("It lies far from the one salt {name} was checked over: check it over two.", named)
    return (*((is_old,) if old else ()), *((is_far,) if far else ()))


def correction_in_words(reading_of: Measured, correction: Correction) -> Sentence:
    """The correction now in force as a sentence that holds in either unit system."""
    quantity = QUANTITIES[reading_of]
    if correction.gain == 1.0:
        step = TEMPERATURE_DIFFERENCE if quantity == TEMPERATURE else quantity
        size = {"size": Amount(abs(correction.offset), step)}
        if not correction.offset:
            return Sentence(NO_CORRECTION)
        if correction.offset > 0:
            return Sentence("{size} is added to every reading.", size)
        return Sentence("{size} is taken off every reading.", size)
    if not correction.offset:
        return Sentence("Every reading is multiplied by {gain}.", {"gain": Amount(correction.gain, RATIO)})
    low, high = _ends(correction)
    amounts = {
        "low": Amount(low, quantity),
        "low_corrected": Amount(correction.apply(low), quantity),
        "high": Amount(high, quantity),
        "high_corrected": Amount(correction.apply(high), quantity),
    }
    return Sentence(
        "{low} read is {low_corrected}, {high} read is {high_corrected}, and in a straight line between and beyond.",
        amounts,
    )


def _ends(correction: Correction) -> tuple[float, float]:
    low = 0.0 if correction.low_reading is None else correction.low_reading
    return low, low + 1.0 if correction.high_reading is None else correction.high_reading
