"""Quantities: what a reading means and how it is best shown. SI inside; conversion happens only here.

What is 0.0315 kg called on this reader's page, and in how many digits? Reading typed text is `core.reading`.
"""

from __future__ import annotations

import math
from typing import Literal

from attrs import field, frozen

System = Literal["metric", "us"]
DecimalMark = Literal[".", ","]
NO_BREAK_SPACE = "\u00a0"


@frozen
class Manner:
    """How this reader wants quantities: the unit system, and the decimal mark."""

    system: System = "metric"
    decimal: DecimalMark = "."


METRIC = Manner()
US = Manner("us")


@frozen
class Unit:
    """`si = value * factor + shift`. `spellings` are what may be typed, compared without case where no two collide."""

    symbol: str
    factor: float
    spellings: tuple[str, ...] = ()
    shift: float = 0.0

    def to_si(self, value: float) -> float:
        return value * self.factor + self.shift

    def from_si(self, value: float) -> float:
        return (value - self.shift) / self.factor


@frozen
class Rung:
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
    its meaning; None where no unit is ever typed (pH).
    """

    key: str
    noun: str
    units: tuple[Unit, ...]
    metric: tuple[Rung, ...]
    us: tuple[Rung, ...]
    bare_metric: Unit
    bare_us: Unit
    example_metric: str
    example_us: str
    trim: bool = field(default=False)  # drop trailing zeros: what was typed as 12.4 is shown as 12.4

    @property
    def si(self) -> str:
        return self.units[0].symbol

    def bare(self, system: System) -> Unit:
        return self.bare_us if system == "us" else self.bare_metric

    def example(self, manner: Manner) -> str:
        text = self.example_us if manner.system == "us" else self.example_metric
        return text.replace(".", manner.decimal)

    def ladder(self, system: System) -> tuple[Rung, ...]:
        return self.us if system == "us" else self.metric


@frozen
class Amount:
    """A value in SI with its kind."""

    value: float
    quantity: Quantity

    def show(self, manner: Manner = METRIC) -> str:
        """Rounded to what the evidence usually carries: "156 ppm", "1 250 g", "12 lb 4 oz"."""
        if not math.isfinite(self.value):
            return "—"
        rung = self._rung(manner.system)
        if rung.then is not None:
            return _compound(self.value, rung, rung.then, manner)
        shown = _with_unit(rung.unit.from_si(self.value), rung.decimals, rung.unit, manner, self.quantity.trim)
        if rung.also is not None:
            bracket = rung.also.from_si(self.value)
            shown += f" ({_with_unit(bracket, _decimals_for(bracket, 3), rung.also, manner, False)})"
        return shown

    def show_exact(self, manner: Manner = METRIC) -> str:
        """For the working: the same unit, at least six significant digits, trailing zeros dropped."""
        if not math.isfinite(self.value):
            return "—"
        unit = self._rung(manner.system).unit
        value = unit.from_si(self.value)
        return _with_unit(value, _decimals_for(value, 6), unit, manner, True)

    def _rung(self, system: System) -> Rung:
        ladder = self.quantity.ladder(system)
        for rung in ladder[:-1]:
            # Half of the last shown digit below the step already rounds up to it: 999.6 g is 1 000 g, not 1000.
            if abs(rung.unit.from_si(self.value)) >= rung.from_value - 1e-12:
                return rung
        return ladder[-1]


def _decimals_for(value: float, significant: int) -> int:
    if value == 0:
        return 0
    return max(0, significant - 1 - math.floor(math.log10(abs(value))))


def _with_unit(value: float, decimals: int, unit: Unit, manner: Manner, trim: bool) -> str:
    text = show_number(value, decimals, manner, trim=trim)
    return f"{text} {unit.symbol}" if unit.symbol else text


def show_number(value: float, decimals: int, manner: Manner = METRIC, *, trim: bool = False) -> str:
    """A bare number: thousands parted by a no-break space, the reader's decimal mark, a true minus, a leading zero."""
    text = f"{abs(value):,.{decimals}f}"
    if trim and "." in text:
        text = text.rstrip("0").rstrip(".")
    minus = "\u2212" if value < 0 and any(digit in text for digit in "123456789") else ""
    return minus + text.replace(",", NO_BREAK_SPACE).replace(".", manner.decimal)


def _compound(value: float, rung: Rung, then: Unit, manner: Manner) -> str:
    """12 lb 4 oz; the carry is taken after rounding, so 15.96 oz is never shown beside a pound it completes."""
    per = round(rung.unit.factor / then.factor)
    small = round(abs(value) / then.factor, rung.decimals)
    whole, rest = divmod(small, per)
    minus = "\u2212" if value < 0 and small else ""
    parts = [f"{show_number(whole, 0, manner)} {rung.unit.symbol}"]
    if round(rest, rung.decimals):
        parts.append(f"{show_number(rest, rung.decimals, manner, trim=True)} {then.symbol}")
    return minus + " ".join(parts)


# Factors: international pound 0.45359237 kg and US gallon 231 in³, exact by definition (NIST SP 811, app. B).
POUND_KG = 0.45359237
INCH_M = 0.0254
GALLON_M3 = 231 * INCH_M**3
QUART_M3 = GALLON_M3 / 4

KG = Unit("kg", 1.0, ("kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"))
GRAM = Unit("g", 1e-3, ("g", "gr", "gram", "grams", "gramme", "grammes"))
MG = Unit("mg", 1e-6, ("mg",))
LB = Unit("lb", POUND_KG, ("lb", "lbs", "lb.", "#", "pound", "pounds"))
OZ = Unit("oz", POUND_KG / 16, ("oz", "oz.", "ounce", "ounces"))

M3 = Unit("m³", 1.0, ("m3", "m³"))
LITRE = Unit("L", 1e-3, ("l", "ltr", "litre", "litres", "liter", "liters"))
ML = Unit("ml", 1e-6, ("ml", "cc", "millilitre", "millilitres", "milliliter", "milliliters"))
GALLON = Unit("gal", GALLON_M3, ("gal", "gallon", "gallons"))
QUART = Unit("qt", QUART_M3, ("qt", "qts", "quart", "quarts"))
PINT = Unit("pt", QUART_M3 / 2, ("pt", "pint", "pints"))
CUP = Unit("cup", QUART_M3 / 4, ("cup", "cups"))
FLUID_OZ = Unit("fl oz", QUART_M3 / 32, ("fl oz", "floz", "fl. oz.", "fluid ounce", "fluid ounces"))
TBSP = Unit("tbsp", QUART_M3 / 64, ("tbsp", "tbs", "tablespoon", "tablespoons"))
TSP = Unit("tsp", QUART_M3 / 192, ("tsp", "teaspoon", "teaspoons"))

ONE = Unit("", 1.0)
PERCENT = Unit("%", 1e-2, ("%", "percent", "per cent", "per-cent", "pct"))
PPM = Unit("ppm", 1e-6, ("ppm", "mg/kg"))

CELSIUS = Unit("°C", 1.0, ("°c", "c", "ºc", "deg c", "degc", "celsius"))
FAHRENHEIT = Unit("°F", 5 / 9, ("°f", "f", "ºf", "deg f", "degf", "fahrenheit"), shift=-160 / 9)
KELVIN_STEP = Unit("K", 1.0, ("k", "°c", "c"))
FAHRENHEIT_STEP = Unit("°F", 5 / 9, ("°f", "f"))

PASCAL = Unit("Pa", 1.0, ("pa",))
HECTOPASCAL = Unit("hPa", 100.0, ("hpa", "mbar", "mb"))
KILOPASCAL = Unit("kPa", 1000.0, ("kpa",))
INCH_MERCURY = Unit("inHg", 3386.389, ("inhg", "in hg", '"hg'))  # conventional, NIST SP 811 app. B.8

METRE = Unit("m", 1.0, ("m", "metre", "metres", "meter", "meters"))
MM = Unit("mm", 1e-3, ("mm",))
CM = Unit("cm", 1e-2, ("cm",))
FOOT = Unit("ft", 12 * INCH_M, ("ft", "'", "foot", "feet"))
INCH = Unit("in", INCH_M, ("in", '"', "inch", "inches"))

SECOND = Unit("s", 1.0, ("s", "sec", "second", "seconds"))
MINUTE = Unit("min", 60.0, ("min", "minute", "minutes"))
HOUR = Unit("h", 3600.0, ("h", "hr", "hrs", "hour", "hours"))
DAY = Unit("d", 86400.0, ("d", "day", "days"))
WEEK = Unit("wk", 7 * 86400.0, ("wk", "week", "weeks"))

KG_PER_KG = Unit("kg/kg", 1.0, ("kg/kg",))
G_PER_KG = Unit("g/kg", 1e-3, ("g/kg",))
KG_PER_M3 = Unit("kg/m³", 1.0, ("kg/m3", "kg/m³"))
G_PER_M3 = Unit("g/m³", 1e-3, ("g/m3", "g/m³"))
J_PER_KG = Unit("J/kg", 1.0, ("j/kg",))
KJ_PER_KG = Unit("kJ/kg", 1e3, ("kj/kg",))
MOL_PER_KG = Unit("mol/kg", 1.0, ("mol/kg",))


def _same(key: str, noun: str, units: tuple[Unit, ...], rung: Rung, example: str, *, trim: bool = False) -> Quantity:
    """A quantity that both unit systems show alike."""
    return Quantity(key, noun, units, (rung,), (rung,), rung.unit, rung.unit, example, example, trim)


MASS = Quantity(
    key="mass",
    noun="a weight",
    units=(KG, GRAM, MG, LB, OZ),
    metric=(Rung(KG, 3, from_value=10), Rung(GRAM, 0, from_value=100), Rung(GRAM, 1, from_value=10), Rung(GRAM, 2)),
    us=(Rung(LB, 1, from_value=1, then=OZ), Rung(OZ, 2)),
    bare_metric=KG,
    bare_us=LB,
    example_metric="12.4 kg",
    example_us="12 lb 4 oz",
    trim=True,
)
PIECE_MASS = Quantity(  # a piece on the kitchen scale: grams are what the scale shows
    key="piece_mass",
    noun="a weight",
    units=MASS.units,
    metric=(Rung(GRAM, 1),),
    us=MASS.us,
    bare_metric=GRAM,
    bare_us=LB,
    example_metric="1250 g",
    example_us="2 lb 12 oz",
    trim=True,
)
DOSE_MASS = Quantity(  # what is weighed on the fine scale; grams stay in sight in both systems
    key="dose_mass",
    noun="a weight",
    units=MASS.units,
    metric=(Rung(GRAM, 0, from_value=1000), Rung(GRAM, 1, from_value=10), Rung(GRAM, 2)),
    us=(Rung(GRAM, 0, from_value=1000, also=OZ), Rung(GRAM, 1, from_value=10, also=OZ), Rung(GRAM, 2, also=OZ)),
    bare_metric=GRAM,
    bare_us=GRAM,
    example_metric="31 g",
    example_us="31 g",
)
VOLUME = Quantity(
    key="volume",
    noun="a volume",
    units=(M3, LITRE, ML, GALLON, QUART, PINT, CUP, FLUID_OZ, TBSP, TSP),
    metric=(Rung(LITRE, 2, from_value=1), Rung(ML, 0, from_value=100), Rung(ML, 1)),
    us=(Rung(QUART, 2, from_value=0.25), Rung(TBSP, 2, from_value=1), Rung(TSP, 2)),
    bare_metric=LITRE,
    bare_us=QUART,
    example_metric="5.7 L",
    example_us="6 qt",
    trim=True,
)
TEMPERATURE = Quantity(
    key="temperature",
    noun="a temperature",
    units=(CELSIUS, FAHRENHEIT),
    metric=(Rung(CELSIUS, 1),),
    us=(Rung(FAHRENHEIT, 1),),
    bare_metric=CELSIUS,
    bare_us=FAHRENHEIT,
    example_metric="12.5 °C",
    example_us="55 °F",
)
TEMPERATURE_DIFFERENCE = Quantity(
    key="temperature_difference",
    noun="a difference of temperature",
    units=(KELVIN_STEP, FAHRENHEIT_STEP),
    metric=(Rung(KELVIN_STEP, 1),),
    us=(Rung(FAHRENHEIT_STEP, 1),),
    bare_metric=KELVIN_STEP,
    bare_us=FAHRENHEIT_STEP,
    example_metric="2 K",
    example_us="4 °F",
)
PRESSURE = Quantity(
    key="pressure",
    noun="a pressure",
    units=(PASCAL, HECTOPASCAL, KILOPASCAL, INCH_MERCURY),
    metric=(Rung(HECTOPASCAL, 1),),
    us=(Rung(INCH_MERCURY, 2),),
    bare_metric=HECTOPASCAL,
    bare_us=INCH_MERCURY,
    example_metric="1013 hPa",
    example_us="29.92 inHg",
    trim=True,
)
ALTITUDE = Quantity(
    key="altitude",
    noun="a height",
    units=(METRE, FOOT),
    metric=(Rung(METRE, 0),),
    us=(Rung(FOOT, 0),),
    bare_metric=METRE,
    bare_us=FOOT,
    example_metric="300 m",
    example_us="1000 ft",
)
LENGTH = Quantity(
    key="length",
    noun="a length",
    units=(METRE, MM, CM, INCH, FOOT),
    metric=(Rung(MM, 0),),
    us=(Rung(INCH, 2),),
    bare_metric=MM,
    bare_us=INCH,
    example_metric="60 mm",
    example_us="2.5 in",
    trim=True,
)

FRACTION = _same("fraction", "a per-cent", (ONE, PERCENT), Rung(PERCENT, 2), "2.5 %", trim=True)
LOSS = _same("loss", "a per-cent", (ONE, PERCENT), Rung(PERCENT, 1), "35 %")
RELATIVE_HUMIDITY = _same("relative_humidity", "a humidity", (ONE, PERCENT), Rung(PERCENT, 1), "80 %", trim=True)
PARTS_PER_MILLION = _same("ppm", "parts per million", (ONE, PPM, PERCENT), Rung(PPM, 0), "156 ppm")
PH = _same("ph", "a pH", (ONE,), Rung(ONE, 2), "5.1", trim=True)
WATER_ACTIVITY = _same("water_activity", "a water activity", (ONE,), Rung(ONE, 3), "0.89")
COUNT = _same("count", "a number", (ONE,), Rung(ONE, 0), "4")
RATIO = _same("ratio", "a ratio", (ONE,), Rung(ONE, 3), "1.5", trim=True)
DAYS = _same("days", "a time", (SECOND, MINUTE, HOUR, DAY, WEEK), Rung(DAY, 1), "21 d", trim=True)
HOURS = _same("hours", "a time", (SECOND, MINUTE, HOUR, DAY), Rung(HOUR, 1), "36 h", trim=True)
VAPOUR_PRESSURE = _same("vapour_pressure", "a pressure", (PASCAL, HECTOPASCAL, KILOPASCAL), Rung(PASCAL, 0), "352 Pa")
HUMIDITY_RATIO = _same("humidity_ratio", "a humidity ratio", (KG_PER_KG, G_PER_KG), Rung(G_PER_KG, 2), "7.4 g/kg")
ABSOLUTE_HUMIDITY = _same(
    "absolute_humidity", "an absolute humidity", (KG_PER_M3, G_PER_M3), Rung(G_PER_M3, 2), "9 g/m³"
)
ENTHALPY = _same("enthalpy", "an enthalpy", (J_PER_KG, KJ_PER_KG), Rung(KJ_PER_KG, 1), "30 kJ/kg")
MOLALITY = _same("molality", "a molality", (MOL_PER_KG,), Rung(MOL_PER_KG, 3), "0.174 mol/kg")
