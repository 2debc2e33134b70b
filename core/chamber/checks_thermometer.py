"""A thermometer in melting ice and in boiling water: is it right, and by how much is it not?"""

from __future__ import annotations

import math

from attrs import evolve

from core.air import station_pressure
from core.air_sheets import ALTITUDE_INPUT
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
from core.quantities import (
    CELSIUS_TEMPERATURE,
    PRESSURE,
    RATIO,
    TEMPERATURE,
    TEMPERATURE_DIFFERENCE,
    Amount,
)
from core.refusals import OutOfRange
from core.sentence import Rounded, Said, Sentence
from core.sources import BOILING_LINE, DEFINITION, FOOD_PROBE, ICE_POINT
from core.traced import traced
from core.usual import MELTING_C, SHOWN_K
from core.vapour import STANDARD_PA
from core.working import Figure
from core.worksheet import Number

TOLERANCE_K = 1.0
"""A food probe's: ±1 °C, or ±2 °F where it shows only Fahrenheit. Source: Cal. Health and Safety Code 114159."""
WEATHER_PA = 2000.0  # what weather moves the pressure by, either way, from the mean of the height

_BOILING = (99.9743, 28.0166, 2.4059, 0.1982)
"""Powers of ln(p ÷ 101.325 kPa). Our fit to the saturation line of IAPWS-95, 60 to 110 kPa, within 0.0001 K."""

SLUSH = (
    "Crushed ice of clean water, with water to fill the gaps and no more: at least 5 cm (2 in) of the stem in it, not "
    "touching the vessel, stirred, and read after half a minute or more, once it is steady."
)
ROLLING = "Clean water at a rolling boil, the stem at least 5 cm (2 in) deep and not touching the pot. Mind the steam."


READING_IN_ICE = Number("reading_c", "Thermometer reads", TEMPERATURE, -30.0, 50.0, usual=MELTING_C)
HOT = evolve(TEMPERATURE, key="hot", example_metric="99.5 °C", example_us="211 °F")
READING_IN_BOILING = Number("reading_c", "Thermometer reads", HOT, 50.0, 150.0)
PLACE_ALTITUDE = evolve(ALTITUDE_INPUT, key="altitude_m", default=None)
PLACE_PRESSURE = Number(
    "pressure_pa",
    "Air pressure at the place",
    PRESSURE,
    60e3,
    110e3,
    optional=True,
    help="From a barometer that is not set to sea level. It overrides the altitude.",
)
TOLERANCE = Number(
    "tolerance_k",
    "Tolerance, either way",
    TEMPERATURE_DIFFERENCE,
    0.01,
    20.0,
    default=TOLERANCE_K,
    help=Sentence(
        "A food probe’s is {probe}. {source} For air thermometers {air} is quoted (from memory).",
        {
            "probe": Amount(TOLERANCE_K, TEMPERATURE_DIFFERENCE),
            "source": FOOD_PROBE.cite(),
            "air": Amount(1.5, TEMPERATURE_DIFFERENCE),
        },
    ),
)
DIVISION = Number("division_k", "Last digit it shows", TEMPERATURE_DIFFERENCE, 0.0, 5.0, default=0.1, usual=SHOWN_K)


def boiling_point_c(pressure_pa: float) -> float:
    """Where clean water boils, in °C.

    pressure_pa: the air's own pressure at the place, 60 to 110 kPa; not reduced to sea level. Raises OutOfRange.
    Within 0.0001 K of IAPWS-95 (CoolProp).
    """
    PLACE_PRESSURE.check(pressure_pa)
    return _boils_at_c(pressure_pa)


def _boils_at_c(pressure_pa: float) -> float:
    log = math.log(pressure_pa / STANDARD_PA)
    return sum(factor * log**power for power, factor in enumerate(_BOILING))


def ice_point(reading_c: float, tolerance_k: float = TOLERANCE_K, division_k: float = 0.1) -> Check:
    """The thermometer in melting ice, which is 0 °C at any height.

    reading_c: −30 to 50 °C. tolerance_k: above 0. division_k: the last digit it shows. Its check gives the correction
    (the same amount everywhere), the error and what remains unsure. Raises OutOfRange.
    """
    READING_IN_ICE.check(reading_c)
    truth = Figure(
        "truth", "Melting ice", 0.0, TEMPERATURE, (Sentence("Ice melts at 0 °C, 32 °F, at any height"),), ICE_POINT
    )
    return _check(reading_c, truth, 0.0, tolerance_k, division_k, (SLUSH,))


def boiling_point(
    reading_c: float,
    altitude_m: float | None = None,
    pressure_pa: float | None = None,
    tolerance_k: float = TOLERANCE_K,
    division_k: float = 0.1,
) -> Check:
    """The thermometer in boiling water.

    reading_c: 50 to 150 °C. pressure_pa: as read at the place, 60 to 110 kPa; it goes before altitude_m, −500 to
    4000 m; with neither, sea level. From the height alone the boiling point is unsure by what weather does.
    Otherwise as `ice_point`. Raises OutOfRange.
    """
    READING_IN_BOILING.check(reading_c)
    if pressure_pa is not None:
        return _check(reading_c, boiling(pressure_pa), 0.0, tolerance_k, division_k, (ROLLING,))
    worked_out = station_pressure(PLACE_ALTITUDE.check(altitude_m or 0.0))
    truth = boiling(worked_out.value, WEATHER_PA)
    assert truth.low is not None
    unsure_k = truth.value - truth.low
    weather = Sentence(
        "The altitude gives only the mean pressure: weather moves the boiling point by {unsure} either way. "
        "A barometer that is not set to sea level is more exact.",
        {"unsure": Rounded(Amount(unsure_k, TEMPERATURE_DIFFERENCE))},
    )
    return _check(reading_c, truth, unsure_k, tolerance_k, division_k, (weather, ROLLING), (worked_out,))


def boiling(pressure_pa: float, unsure_pa: float = 0.0) -> Figure:
    """The boiling point as a figure; with unsure_pa it carries the range that the pressure leaves open."""
    boils_c = boiling_point_c(pressure_pa)
    amounts = {
        "pressure": Amount(pressure_pa, PRESSURE),
        "standard": Amount(STANDARD_PA, PRESSURE),
        "log": Amount(math.log(pressure_pa / STANDARD_PA), RATIO),
        "boils": Amount(boils_c, CELSIUS_TEMPERATURE),
    } | {f"factor{power}": Amount(factor, RATIO) for power, factor in enumerate(_BOILING)}
    formula = "{factor0} + {factor1} × ({log}) + {factor2} × ({log}) ^ 2 + {factor3} × ({log}) ^ 3 = {boils}"
    return Figure(
        key="truth",
        name="Boiling point here",
        value=boils_c,
        quantity=TEMPERATURE,
        working=(Sentence("ln({pressure} ÷ {standard}) = {log}", amounts), Sentence(formula, amounts)),
        source=BOILING_LINE,
        low=_boils_at_c(pressure_pa - unsure_pa) if unsure_pa else None,
        high=_boils_at_c(pressure_pa + unsure_pa) if unsure_pa else None,
    )


def both_points(one: Check, other: Check) -> Correction:
    """The line through a check in ice and one in boiling water, in whichever order: for one used far from either."""
    return through_two(_point(one), _point(other))


def _point(check: Check) -> Point:
    reading = check.correction.low_reading
    if reading is None:
        raise OutOfRange("reading_c", "The check holds no reading to draw a line through.")
    return Point(reading, check.correction.apply(reading), check.correction.uncertainty)


def _check(
    reading_c: float,
    truth: Figure,
    unsure_k: float,
    tolerance_k: float,
    division_k: float,
    cautions: tuple[Said, ...],
    more: tuple[Figure, ...] = (),
) -> Check:
    TOLERANCE.check(tolerance_k)
    DIVISION.check(division_k)
    correction = through_one(Point(reading_c, truth.value, math.hypot(unsure_k, division_k / 2)))
    tolerance = Amount(tolerance_k, TEMPERATURE_DIFFERENCE)
    word = judge(correction.offset, tolerance_k)
    amounts = {
        "unsure": Amount(unsure_k, TEMPERATURE_DIFFERENCE),
        "half": Amount(division_k / 2, TEMPERATURE_DIFFERENCE),
        "left": Amount(correction.uncertainty, TEMPERATURE_DIFFERENCE),
    }
    offset = (traced("truth", truth.value, TEMPERATURE) - traced("reading", reading_c, TEMPERATURE)).figure(
        "offset",
        to_add(word),
        TEMPERATURE_DIFFERENCE,
        "What it should read − what it reads",
        cautions=(*cannot_tell(correction.uncertainty, tolerance), *cautions),
        low=correction.offset - correction.uncertainty,
        high=correction.offset + correction.uncertainty,
    )
    left = Figure(
        key="uncertainty",
        name="Remaining uncertainty, either way",
        value=correction.uncertainty,
        quantity=TEMPERATURE_DIFFERENCE,
        working=(
            Sentence("The known point, {unsure}, and half the last digit, {half}, added as squares:", amounts),
            Sentence("√({unsure} ^ 2 + {half} ^ 2) = {left}", amounts),
        ),
        source=DEFINITION,
    )
    return checked(word, say(word, tolerance), correction, (offset, truth, left, *more))
