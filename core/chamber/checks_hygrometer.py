"""A hygrometer over one saturated salt, or over two: what to add, which line to draw, and what stays unsure.

The salt's humidity holds at the salt's own temperature. A sensor 1 K warmer than the salt reads some 5 % too little,
more than most errors one looks for: an even temperature is the whole art.
"""

from __future__ import annotations

import math

from attrs import evolve, frozen

from core.chamber import hygrometer_boxes as box
from core.chamber.checks import (
    Check,
    Correction,
    Point,
    cannot_tell,
    checked,
    judge,
    say,
    through_one,
    through_two,
    to_add,
)
from core.chamber.checks_salts import SALTS, Salt, humidity_over, over_salt, uncertainty_over
from core.chamber.hygrometer_boxes import APART_K, TOLERANCE, Bulk
from core.quantities import HOURS, RATIO, RELATIVE_HUMIDITY, TEMPERATURE_DIFFERENCE, Amount, DisplayUnit
from core.refusals import OutOfRange
from core.saturation import saturation_pressure_pa
from core.sentence import Message, Rounded, Sentence, Value, listed, said
from core.sources import DEFINITION, GREENSPAN_UNCERTAINTY, SALT_WAIT
from core.units import HOUR_S, MINUTE
from core.working import Figure

LEAST_APART = 0.05
"""Readings over two salts closer than this draw no line worth having."""
ONE_POINT_REACH = 0.10  # how far from its point one check is taken to speak; common practice; no published source
WAITS_S: dict[Bulk, float] = {"small": 20 * 60.0, "bulky": HOUR_S}
WAIT_FOR: dict[Bulk, Message] = {
    "small": "For a small sensor, once salt and box are equally warm: {wait}",
    "bulky": "For a bulky sensor, once salt and box are equally warm: {wait}",
}
WAIT = evolve(
    HOURS,
    key="wait",
    metric=(DisplayUnit(MINUTE, 0),),
    us=(DisplayUnit(MINUTE, 0),),
    bare_metric=MINUTE,
    bare_us=MINUTE,
)

ONE_POINT = Sentence(
    "One point holds for readings within about {reach} of it (common practice; no published source). For 65 to 90 % "
    "check over table salt and potassium chloride.",
    {"reach": Amount(ONE_POINT_REACH, RELATIVE_HUMIDITY)},
)
WET_SAND = (
    "Salt wetted to a slush, with undissolved salt to be seen, in a small closed box with the sensor; neither touching "
    "the other, out of draught and sun, and read once it is steady."
)


@frozen
class Over:
    """A hygrometer's reading over a salt. salt: a key of SALTS. temperature_c: the salt's own. reading: 0 to 1."""

    salt: str
    temperature_c: float
    reading: float


def per_kelvin(humidity: float, temperature_c: float) -> float:
    """How much lower a sensor reads for each kelvin that it is warmer than the salt, as relative humidity 0 to 1."""
    above, below = (saturation_pressure_pa(temperature_c + half) for half in (0.5, -0.5))
    return humidity * math.log(above / below)


def salt_check(
    over: Over, tolerance: float = TOLERANCE, division: float = 0.001, apart_k: float = APART_K, bulk: Bulk = "bulky"
) -> Check:
    """One point: the same amount is added to every reading, which is held between 0 and 100 %.

    tolerance: relative humidity, above 0. division: the last digit shown. apart_k: the difference of temperature
    between salt and sensor that cannot be excluded, 0 to 5 K. Raises OutOfRange on "temperature_c" outside the salt's
    range, and on what is given.
    """
    _require(tolerance, division, apart_k)
    box.READING.check(over.reading)
    point = _point(_salt(over.salt, "salt"), over, division, apart_k)
    correction = through_one(point).within(0.0, 1.0)
    word = judge(correction.offset, tolerance)
    truth = over_salt(SALTS[over.salt], over.temperature_c)
    amounts = {
        "truth": Amount(point.truth, RELATIVE_HUMIDITY),
        "reading": Amount(over.reading, RELATIVE_HUMIDITY),
        "offset": Amount(correction.offset, RELATIVE_HUMIDITY),
    }
    offset = Figure(
        key="offset",
        name=to_add(word),
        value=correction.offset,
        quantity=RELATIVE_HUMIDITY,
        working=(
            Sentence(
                "What it should read − what it reads, in points of humidity: {truth} − {reading} = {offset}", amounts
            ),
            Sentence("No reading is put above 100 % or below 0 % by it."),
        ),
        source=DEFINITION,
        cautions=(
            *cannot_tell(point.uncertainty, Amount(tolerance, RELATIVE_HUMIDITY)),
            _apart_caution(point.truth, over.temperature_c),
            ONE_POINT,
            WET_SAND,
        ),
        low=correction.offset - point.uncertainty,
        high=correction.offset + point.uncertainty,
    )
    left = _left("uncertainty", over, point, division, apart_k)
    sentence = say(word, Amount(tolerance, RELATIVE_HUMIDITY))
    return checked(word, sentence, correction, (offset, truth, left, _wait(bulk)))


def salt_check_two(
    one: Over,
    other: Over,
    now: float | None = None,
    tolerance: float = TOLERANCE,
    division: float = 0.001,
    apart_k: float = APART_K,
    bulk: Bulk = "bulky",
) -> Check:
    """Two points: the straight line through both, which corrects readings between them and, less surely, beyond.

    now: a reading to correct, 0 to 1. The rest as `salt_check`. Raises OutOfRange on "other_reading" where the
    readings are less than 5 % apart, or run against the salts.
    """
    _require(tolerance, division, apart_k)
    box.READING.check(one.reading)
    box.OTHER_READING.check(other.reading)
    point = _point(_salt(one.salt, "salt"), one, division, apart_k)
    second = _point(_salt(other.salt, "other_salt"), other, division, apart_k, "other_temperature_c")
    _require_line(point, second)
    correction = through_two(point, second).within(0.0, 1.0)
    worst = max(abs(each.truth - each.reading) for each in (point, second))
    word = judge(worst, tolerance)
    figures = (
        *((_corrected_now(correction, now),) if now is not None else ()),
        *_line(correction, point, second),
        over_salt(SALTS[one.salt], one.temperature_c),
        over_salt(SALTS[other.salt], other.temperature_c, "other_truth", "other_temperature_c"),
        _left("uncertainty", one, point, division, apart_k),
        _left("other_uncertainty", other, second, division, apart_k),
        _wait(bulk),
    )
    first, *rest = figures
    caution = _apart_caution(point.truth, one.temperature_c)
    first = evolve(first, cautions=(*first.cautions, caution, WET_SAND))
    return checked(word, say(word, Amount(tolerance, RELATIVE_HUMIDITY)), correction, (first, *rest))


def _point(salt: Salt, over: Over, division: float, apart_k: float, field: str = "temperature_c") -> Point:
    truth = humidity_over(salt, over.temperature_c, field)
    table = uncertainty_over(salt, over.temperature_c, field)
    return Point(
        over.reading,
        truth,
        math.hypot(table, division / 2, apart_k * per_kelvin(truth, over.temperature_c)),
    )


def _salt(key: str, field: str) -> Salt:
    if key not in SALTS:
        raise OutOfRange(field, Sentence("The salt must be one of {salts}.", {"salts": listed(tuple(SALTS), "or")}))
    return SALTS[key]


def _require(tolerance: float, division: float, apart_k: float) -> None:
    box.TOLERANCE_INPUT.check(tolerance)
    box.DIVISION.check(division)
    box.APART.check(apart_k)


def _require_line(point: Point, second: Point) -> None:
    if abs(second.reading - point.reading) < LEAST_APART * (1 - 1e-9):
        raise OutOfRange(
            "other_reading",
            "The two readings must be at least 5 % apart: take two salts that lie farther from each other, or check "
            "over one.",
        )
    if (second.reading - point.reading) * (second.truth - point.truth) <= 0:
        raise OutOfRange(
            "other_reading",
            "The hygrometer must read more over the moister salt: see whether the two were swapped.",
        )


def _apart_caution(truth: float, temperature_c: float) -> Sentence:
    return Sentence(
        "Salt and sensor must be equally warm: a sensor {warmer} warmer than the salt reads {worth} too little here. "
        "Leave the box closed where the temperature does not change.",
        {
            "warmer": Amount(1.0, TEMPERATURE_DIFFERENCE),
            "worth": Rounded(Amount(per_kelvin(truth, temperature_c), RELATIVE_HUMIDITY)),
        },
    )


def _left(key: str, over: Over, point: Point, division: float, apart_k: float) -> Figure:
    name: Value = said(SALTS[over.salt].name)
    worth = apart_k * per_kelvin(point.truth, over.temperature_c)
    amounts = {
        "table": Amount(uncertainty_over(SALTS[over.salt], over.temperature_c), RELATIVE_HUMIDITY),
        "half": Amount(division / 2, RELATIVE_HUMIDITY),
        "apart": Amount(apart_k, TEMPERATURE_DIFFERENCE),
        "worth": Amount(worth, RELATIVE_HUMIDITY),
        "left": Amount(point.uncertainty, RELATIVE_HUMIDITY),
    }
    return Figure(
        key=key,
        name=Sentence("Remaining uncertainty at {salt}, either way", {"salt": name}),
        value=point.uncertainty,
        quantity=RELATIVE_HUMIDITY,
        working=(
            Sentence(
                "The table, {table}; half the last digit, {half}; {apart} between salt and sensor, {worth}.", amounts
            ),
            Sentence("Added as squares: √({table} ^ 2 + {half} ^ 2 + {worth} ^ 2) = {left}", amounts),
        ),
        source=GREENSPAN_UNCERTAINTY,
    )


def _line(correction: Correction, point: Point, second: Point) -> tuple[Figure, ...]:
    amounts = {
        "truth": Amount(point.truth, RELATIVE_HUMIDITY),
        "reading": Amount(point.reading, RELATIVE_HUMIDITY),
        "other_truth": Amount(second.truth, RELATIVE_HUMIDITY),
        "other_reading": Amount(second.reading, RELATIVE_HUMIDITY),
        "gain": Amount(correction.gain, RATIO),
        "offset": Amount(correction.offset, RELATIVE_HUMIDITY),
    }
    gain = Sentence("({other_truth} − {truth}) ÷ ({other_reading} − {reading}) = {gain}", amounts)
    offset = Sentence("{truth} − {gain} × {reading} = {offset}", amounts)
    return (
        Figure("gain", "Multiply every reading by", correction.gain, RATIO, (gain,), DEFINITION),
        Figure("offset", "Then add", correction.offset, RELATIVE_HUMIDITY, (gain, offset), DEFINITION),
    )


def _corrected_now(correction: Correction, now: float) -> Figure:
    box.NOW.check(now)
    corrected, unsure = correction.apply(now), correction.uncertainty_at(now)
    plain = correction.offset + correction.gain * now
    amounts = {
        "now": Amount(now, RELATIVE_HUMIDITY),
        "gain": Amount(correction.gain, RATIO),
        "offset": Amount(correction.offset, RELATIVE_HUMIDITY),
        "plain": Amount(plain, RELATIVE_HUMIDITY),
        "unsure": Amount(unsure, RELATIVE_HUMIDITY),
    }
    assert correction.low_reading is not None
    assert correction.high_reading is not None
    beyond = not correction.low_reading <= now <= correction.high_reading
    return Figure(
        key="corrected",
        name="The corrected reading",
        value=corrected,
        quantity=RELATIVE_HUMIDITY,
        working=(
            Sentence("{offset} + {gain} × {now} = {plain}", amounts),
            *((Sentence("Held between 0 and 100 %."),) if plain != corrected else ()),
            Sentence("Its remaining uncertainty, either way: {unsure}", amounts),
        ),
        source=DEFINITION,
        cautions=("It lies beyond the two salts: the farther, the less sure.",) if beyond else (),
        low=max(0.0, corrected - unsure),
        high=min(1.0, corrected + unsure),
    )


def _wait(bulk: Bulk) -> Figure:
    wait = Amount(WAITS_S[bulk], WAIT)
    return Figure(
        key="wait",
        name="Wait at least",
        value=wait.value,
        quantity=WAIT,
        working=(Sentence(WAIT_FOR[bulk], {"wait": wait}),),
        source=SALT_WAIT,
    )
