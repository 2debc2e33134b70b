"""What is 0.0315 kg called on this reader's page, and in how many digits? SI inside; typed text is `core.reading`'s."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Literal

from attrs import evolve, frozen

from core.language import Message
from core.units import (
    CELSIUS,
    CELSIUS_HOUR,
    CM,
    CUP,
    DAY,
    FAHRENHEIT,
    FAHRENHEIT_HOUR,
    FAHRENHEIT_STEP,
    FLUID_OZ,
    FOOT,
    G_PER_KG,
    G_PER_M3,
    GALLON,
    GRAM,
    HECTOPASCAL,
    HOUR,
    INCH,
    INCH_MERCURY,
    J_PER_KG,
    KELVIN,
    KELVIN_SECOND,
    KELVIN_STEP,
    KG,
    KG_PER_KG,
    KG_PER_L,
    KG_PER_M3,
    KG_PER_MOL,
    KILOPASCAL,
    KJ_PER_KG,
    LB,
    LITRE,
    M3,
    METRE,
    MG,
    MINUTE,
    ML,
    MM,
    MOL_PER_KG,
    ONE,
    OZ,
    PASCAL,
    PER_SECOND,
    PERCENT,
    PERCENT_A_DAY,
    PINT,
    PPM,
    QUART,
    SALOMETER_DEGREE,
    SECOND,
    SQUARE_METRE_A_SECOND,
    SQUARE_MM_A_DAY,
    TBSP,
    TSP,
    WEEK,
    Unit,
)

System = Literal["metric", "us"]
DecimalMark = Literal[".", ","]
Rounds = Literal["nearest", "down", "up"]
NO_BREAK_SPACE = "\u00a0"
MOST_DECIMALS = 12
FLOAT_DUST = 1e-10
"""Of a number: what it may miss a whole step by and still be that step."""


@frozen
class Reader:
    """How this reader wants what is said: the unit system, the decimal mark, and the language by its ISO 639 code."""

    system: System = "metric"
    decimal: DecimalMark = "."
    language: str = "en"


METRIC = Reader()
US = Reader("us")


@frozen
class DisplayUnit:
    """Show in `unit` from this magnitude (in that unit) upwards, with this many decimals."""

    unit: Unit
    decimals: int
    from_value: float = 0.0
    then: Unit | None = None  # the smaller unit of a compound: 12 lb 4 oz
    also: Unit | None = None  # the same again in brackets: 31.0 g (1.09 oz)


@frozen
class Quantity:
    """A kind of reading. `article` and `noun` make its sentences: "a weight". `units[0]` is its SI unit.

    `metric` and `us` are ladders of rungs, coarsest first. `bare_metric`/`bare_us` give a number typed without a unit
    its meaning. `rounds` is the way a shown number leaves its digits out: "down" where more would be the greater harm.
    """

    key: str
    noun: Message
    units: tuple[Unit, ...]
    metric: tuple[DisplayUnit, ...]
    us: tuple[DisplayUnit, ...]
    bare_metric: Unit
    bare_us: Unit
    example_metric: str
    example_us: str
    trim: bool = False  # drop trailing zeros: what was typed as 12.4 is shown as 12.4
    least: int = 0  # decimals that stay all the same: pH 5.0
    rounds: Rounds = "nearest"

    @property
    def si(self) -> str:
        return self.units[0].symbol

    def bare(self, system: System) -> Unit:
        return self.bare_us if system == "us" else self.bare_metric

    def example(self, reader: Reader) -> str:
        text = self.example_us if reader.system == "us" else self.example_metric
        return text.replace(".", reader.decimal)

    def ladder(self, system: System) -> tuple[DisplayUnit, ...]:
        return self.us if system == "us" else self.metric


@frozen
class Amount:
    """A value in SI with its kind."""

    value: float
    quantity: Quantity

    def show(self, reader: Reader = METRIC) -> str:
        """Rounded to what the evidence usually carries: "156 ppm", "1 250 g", "12 lb 4 oz"."""
        if not math.isfinite(self.value):
            return "—"
        rung = self._rung(reader.system)
        if rung.then is not None:
            return self._compound(rung, rung.then, reader)
        shown = self._with_unit(rung.unit, rung.decimals, reader, self.quantity.trim)
        if rung.also is not None:
            decimals = _decimals_for(rung.also.from_si(self.value), 3)
            shown += f" ({self._with_unit(rung.also, decimals, reader, False)})"
        return shown

    def show_exact(self, reader: Reader = METRIC, significant: int = 6, unit: Unit | None = None) -> str:
        """For the working: the same unit or a given one, at least so many significant digits, no trailing zeros."""
        if not math.isfinite(self.value):
            return "—"
        unit = unit or self.unit(reader.system)
        return self._with_unit(unit, _decimals_for(unit.from_si(self.value), significant), reader, True)

    def unit(self, system: System) -> Unit:
        """The unit that it is shown in."""
        return self._rung(system).unit

    def _rung(self, system: System) -> DisplayUnit:
        """The first rung that the value reaches once rounded by the rung below: 9.9996 kg is 10 kg, not 10 000 g."""
        ladder = self.quantity.ladder(system)
        for rung, below in pairwise(ladder):
            rounded = below.unit.to_si(self.rounded(below.unit, below.decimals))
            if abs(rung.unit.from_si(rounded)) >= rung.from_value * (1 - 1e-12):
                return rung
        return ladder[-1]

    def rounded(self, unit: Unit, decimals: int) -> float:
        """In this unit, by the way its quantity rounds. What is a whole step but for a float's last digits stays it."""
        value = unit.from_si(self.value)
        if self.quantity.rounds == "nearest":
            return round(value, decimals)
        step = 10.0**decimals
        whole = round(value * step)
        if abs(value * step - whole) > abs(whole) * FLOAT_DUST:
            whole = (math.floor if self.quantity.rounds == "down" else math.ceil)(value * step)
        return whole / step

    def _with_unit(self, unit: Unit, decimals: int, reader: Reader, trim: bool) -> str:
        text = show_number(self.rounded(unit, decimals), decimals, reader, trim=trim, least=self.quantity.least)
        return f"{text} {unit.symbol}" if unit.symbol else text

    def _compound(self, rung: DisplayUnit, then: Unit, reader: Reader) -> str:
        """12 lb 4 oz; the carry is taken after rounding, so 15.96 oz is never shown beside a pound it completes."""
        per = round(rung.unit.factor / then.factor)
        small = self.rounded(then, rung.decimals)
        whole, rest = divmod(abs(small), per)
        minus = "\u2212" if small < 0 else ""
        parts = [f"{show_number(whole, 0, reader)} {rung.unit.symbol}"]
        if round(rest, rung.decimals):
            parts.append(f"{show_number(rest, rung.decimals, reader, trim=True)} {then.symbol}")
        return minus + " ".join(parts)


def _decimals_for(value: float, significant: int) -> int:
    if value == 0:
        return 0
    return min(MOST_DECIMALS, max(0, significant - 1 - math.floor(math.log10(abs(value)))))


def show_number(value: float, decimals: int, reader: Reader = METRIC, *, trim: bool = False, least: int = 0) -> str:
    """A bare number: thousands parted by a no-break space, the reader's decimal mark, a true minus, a leading zero."""
    text = f"{abs(value):,.{decimals}f}"
    if trim and "." in text:
        whole, part = text.split(".")
        part = part.rstrip("0").ljust(min(least, decimals), "0")
        text = f"{whole}.{part}" if part else whole
    minus = "\u2212" if value < 0 and any(digit in text for digit in "123456789") else ""
    return minus + text.replace(",", NO_BREAK_SPACE).replace(".", reader.decimal)


def never_up(quantity: Quantity) -> Quantity:
    """The same kind of reading where more would be the greater harm."""
    return evolve(quantity, rounds="down")


def _each(
    key: str,
    noun: Message,
    units: tuple[Unit, ...],
    metric: DisplayUnit,
    us: DisplayUnit,
    examples: tuple[str, str],
    trim: bool = False,
) -> Quantity:
    """A quantity shown in one unit in each system, which is also what a bare number means."""
    return Quantity(key, noun, units, (metric,), (us,), metric.unit, us.unit, *examples, trim)


def _same(
    key: str, noun: Message, units: tuple[Unit, ...], rung: DisplayUnit, example: str, *, trim: bool = False
) -> Quantity:
    """A quantity that both unit systems show alike."""
    return _each(key, noun, units, rung, rung, (example, example), trim=trim)


MASS = Quantity(
    key="mass",
    noun="a weight",
    units=(KG, GRAM, MG, LB, OZ),
    metric=(
        DisplayUnit(KG, 3, from_value=10),
        DisplayUnit(GRAM, 0, from_value=100),
        DisplayUnit(GRAM, 1, from_value=10),
        DisplayUnit(GRAM, 2),
    ),
    us=(DisplayUnit(LB, 1, from_value=1, then=OZ), DisplayUnit(OZ, 2)),
    bare_metric=KG,
    bare_us=LB,
    example_metric="12.4 kg",
    example_us="12 lb 4 oz",
    trim=True,
)
PIECE_MASS = evolve(  # a piece on the kitchen scale: grams are what the scale shows
    MASS,
    key="piece_mass",
    metric=(DisplayUnit(GRAM, 1),),
    bare_metric=GRAM,
    example_metric="1250 g",
    example_us="2 lb 12 oz",
)
DOSE_MASS = Quantity(  # what is weighed on the fine scale; grams stay in sight in both systems
    key="dose_mass",
    noun="a weight",
    units=MASS.units,
    metric=(DisplayUnit(GRAM, 0, from_value=1000), DisplayUnit(GRAM, 1, from_value=10), DisplayUnit(GRAM, 2)),
    us=(
        DisplayUnit(GRAM, 0, from_value=1000, also=OZ),
        DisplayUnit(GRAM, 1, from_value=10, also=OZ),
        DisplayUnit(GRAM, 2, also=OZ),
    ),
    bare_metric=GRAM,
    bare_us=GRAM,
    example_metric="31 g",
    example_us="31 g",
)
CURE_MASS = evolve(never_up(DOSE_MASS), key="cure_mass")
"""A dose of curing salt: what is shown, weighed and typed in again is never more than what was worked out."""
VOLUME = Quantity(
    key="volume",
    noun="a volume",
    units=(M3, LITRE, ML, GALLON, QUART, PINT, CUP, FLUID_OZ, TBSP, TSP),
    metric=(DisplayUnit(LITRE, 2, from_value=1), DisplayUnit(ML, 0, from_value=100), DisplayUnit(ML, 1)),
    us=(DisplayUnit(QUART, 2, from_value=0.25), DisplayUnit(TBSP, 2, from_value=1), DisplayUnit(TSP, 2)),
    bare_metric=LITRE,
    bare_us=QUART,
    example_metric="5.7 L",
    example_us="6 qt",
    trim=True,
)
TEMPERATURE = _each(
    "temperature",
    "a temperature",
    (CELSIUS, FAHRENHEIT),
    DisplayUnit(CELSIUS, 1),
    DisplayUnit(FAHRENHEIT, 1),
    ("12.5 °C", "55 °F"),
)
TEMPERATURE_DIFFERENCE = _each(
    "temperature_difference",
    "a difference of temperature",
    (KELVIN_STEP, FAHRENHEIT_STEP),
    DisplayUnit(KELVIN_STEP, 1),
    DisplayUnit(FAHRENHEIT_STEP, 1),
    ("2 K", "4 °F"),
)
DEGREE_HOURS = _each(
    "degree_hours",
    "a number of degree-hours",
    (KELVIN_SECOND, CELSIUS_HOUR, FAHRENHEIT_HOUR),
    DisplayUnit(CELSIUS_HOUR, 0),
    DisplayUnit(FAHRENHEIT_HOUR, 0),
    ("550 °C·h", "990 °F·h"),
)
DIFFUSIVITY = _same(
    "diffusivity",
    "a diffusivity",
    (SQUARE_METRE_A_SECOND, SQUARE_MM_A_DAY),
    DisplayUnit(SQUARE_MM_A_DAY, 1),
    "17 mm² a day",
)
PRESSURES = (PASCAL, HECTOPASCAL, KILOPASCAL, INCH_MERCURY)
PRESSURE = _each(
    "pressure",
    "a pressure",
    PRESSURES,
    DisplayUnit(HECTOPASCAL, 1),
    DisplayUnit(INCH_MERCURY, 2),
    ("1013 hPa", "29.92 inHg"),
    trim=True,
)
ALTITUDE = _each(
    "altitude", "a height", (METRE, FOOT), DisplayUnit(METRE, 0), DisplayUnit(FOOT, 0), ("300 m", "1000 ft")
)
LENGTHS = (METRE, MM, CM, INCH, FOOT)
LENGTH = _each("length", "a length", LENGTHS, DisplayUnit(MM, 0), DisplayUnit(INCH, 2), ("60 mm", "2.5 in"), trim=True)

# For the working of formulas that are fitted in these units, so that the numbers put in give the number got out.
CELSIUS_TEMPERATURE = _same("celsius_temperature", "a temperature", (CELSIUS,), DisplayUnit(CELSIUS, 1), "12.5 °C")
ABSOLUTE_TEMPERATURE = _same("absolute_temperature", "a temperature", (KELVIN,), DisplayUnit(KELVIN, 2), "285.65 K")

FRACTION = _same("fraction", "a per-cent", (ONE, PERCENT), DisplayUnit(PERCENT, 2), "2.5 %", trim=True)
LOSS = _same("loss", "a per-cent", (ONE, PERCENT), DisplayUnit(PERCENT, 1), "35 %")
LOSS_RATE = _same(
    "loss_rate", "a loss per day", (PER_SECOND, PERCENT_A_DAY), DisplayUnit(PERCENT_A_DAY, 2), "0.8 % a day"
)
RELATIVE_HUMIDITY = _same("relative_humidity", "a humidity", (ONE, PERCENT), DisplayUnit(PERCENT, 1), "80 %", trim=True)
PARTS_PER_MILLION = _same("ppm", "parts per million", (ONE, PPM, PERCENT), DisplayUnit(PPM, 0), "156 ppm")
PH = evolve(_same("ph", "a pH", (ONE,), DisplayUnit(ONE, 2), "5.1", trim=True), least=1)
WATER_ACTIVITY = _same("water_activity", "a water activity", (ONE,), DisplayUnit(ONE, 3), "0.89")
COUNT = _same("count", "a number", (ONE,), DisplayUnit(ONE, 0), "4")
RATIO = _same("ratio", "a ratio", (ONE,), DisplayUnit(ONE, 3), "1.5", trim=True)
DAYS = _same("days", "a time", (SECOND, MINUTE, HOUR, DAY, WEEK), DisplayUnit(DAY, 1), "21 d", trim=True)
HOURS = _same("hours", "a time", (SECOND, MINUTE, HOUR, DAY), DisplayUnit(HOUR, 1), "36 h", trim=True)
HOURS_LEFT = evolve(HOURS, key="hours_left", rounds="down")
"""A time that is left: what is shown is never over."""
VAPOUR_PRESSURE = _same(
    "vapour_pressure", "a pressure", (PASCAL, HECTOPASCAL, KILOPASCAL), DisplayUnit(PASCAL, 0), "352 Pa"
)
HUMIDITY_RATIO = _same(
    "humidity_ratio", "a humidity ratio", (KG_PER_KG, G_PER_KG), DisplayUnit(G_PER_KG, 2), "7.4 g/kg"
)
ABSOLUTE_HUMIDITY = _same(
    "absolute_humidity", "an absolute humidity", (KG_PER_M3, G_PER_M3), DisplayUnit(G_PER_M3, 2), "9 g/m³"
)
SUGAR_DOSE = _same("sugar_dose", "a dose", (ONE, G_PER_KG, PERCENT), DisplayUnit(G_PER_KG, 1), "5 g/kg", trim=True)
SALOMETER = _same(
    "salometer", "a salometer reading", (ONE, SALOMETER_DEGREE), DisplayUnit(SALOMETER_DEGREE, 0), "60 degrees"
)
DENSITY = _same("density", "a density", (KG_PER_M3, KG_PER_L), DisplayUnit(KG_PER_L, 3), "1.07 kg/L")
ENTHALPY = _same("enthalpy", "an enthalpy", (J_PER_KG, KJ_PER_KG), DisplayUnit(KJ_PER_KG, 1), "30 kJ/kg")
MOLAR_MASS = _same("molar_mass", "a molar mass", (KG_PER_MOL,), DisplayUnit(KG_PER_MOL, 3), "0.018 kg/mol", trim=True)
MOLALITY = _same("molality", "a molality", (MOL_PER_KG,), DisplayUnit(MOL_PER_KG, 3), "0.174 mol/kg")
