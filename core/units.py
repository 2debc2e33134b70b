"""Units of measure: exact factors to SI, and how each may be typed."""

from __future__ import annotations

from attrs import frozen

DAY_S, HOUR_S = 86_400.0, 3600.0


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


# Factors: international pound 0.45359237 kg and US gallon 231 in³, exact by definition (NIST SP 811, app. B).
POUND_KG = 0.45359237
INCH_M = 0.0254
GALLON_M3 = 231 * INCH_M**3
QUART_M3 = GALLON_M3 / 4

KG = Unit("kg", 1.0, ("kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"))
# "gr" is left out: a gram in one kitchen, a grain (65 mg) in another.
GRAM = Unit("g", 1e-3, ("g", "gram", "grams", "gramme", "grammes"))
MG = Unit("mg", 1e-6, ("mg",))
LB = Unit("lb", POUND_KG, ("lb", "lbs", "#", "pound", "pounds"))
OZ = Unit("oz", POUND_KG / 16, ("oz", "ounce", "ounces"))

M3 = Unit("m³", 1.0, ("m3",))
LITRE = Unit("L", 1e-3, ("l", "ltr", "litre", "litres", "liter", "liters"))
ML = Unit("ml", 1e-6, ("ml", "cc", "cm3", "cm³", "millilitre", "millilitres", "milliliter", "milliliters"))
GALLON = Unit("gal", GALLON_M3, ("gal", "gallon", "gallons"))
QUART = Unit("qt", QUART_M3, ("qt", "qts", "quart", "quarts"))
PINT = Unit("pt", QUART_M3 / 2, ("pt", "pint", "pints"))
CUP = Unit("cup", QUART_M3 / 4, ("cup", "cups"))
FLUID_OZ = Unit("fl oz", QUART_M3 / 32, ("fl oz", "floz", "fl. oz", "fluid ounce", "fluid ounces"))
TBSP = Unit("tbsp", QUART_M3 / 64, ("tbsp", "tbs", "tablespoon", "tablespoons"))
TSP = Unit("tsp", QUART_M3 / 192, ("tsp", "teaspoon", "teaspoons"))

ONE = Unit("", 1.0)
PERCENT = Unit("%", 1e-2, ("%", "percent", "per cent", "per-cent", "pct"))
PPM = Unit("ppm", 1e-6, ("ppm", "mg/kg"))

CELSIUS = Unit("°C", 1.0, ("°c", "℃", "c", "deg c", "degc", "celsius"))
FAHRENHEIT = Unit("°F", 5 / 9, ("°f", "℉", "f", "deg f", "degf", "fahrenheit"), shift=-160 / 9)
KELVIN = Unit("K", 1.0, ("k",))
KELVIN_STEP = Unit("K", 1.0, ("k", "°c", "c"))
FAHRENHEIT_STEP = Unit("°F", 5 / 9, ("°f", "f"))
KELVIN_SECOND = Unit("K s", 1.0)
CELSIUS_HOUR = Unit("°C·h", 3600.0, ("°c·h", "°c h", "°ch", "c·h", "c h", "ch"))
FAHRENHEIT_HOUR = Unit("°F·h", 2000.0, ("°f·h", "°f h", "°fh", "f·h", "f h", "fh"))
SQUARE_METRE_A_SECOND = Unit("m²/s", 1.0, ("m2/s",))
SQUARE_MM_A_DAY = Unit("mm² a day", 1e-6 / 86400, ("mm²/d", "mm2/d", "mm² a day"))

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
PER_SECOND = Unit("1/s", 1.0)
PERCENT_A_DAY = Unit("% a day", 0.01 / 86400, ("%/d", "%/day", "% a day", "% per day", "%"))

KG_PER_KG = Unit("kg/kg", 1.0, ("kg/kg",))
G_PER_KG = Unit("g/kg", 1e-3, ("g/kg",))
KG_PER_L = Unit("kg/L", 1e3, ("kg/l", "g/ml", "g/cm3", "g/cm³"))
SALOMETER_DEGREE = Unit("degrees", 1e-2, ("degree", "degrees", "deg", "°", "° salometer"))
KG_PER_M3 = Unit("kg/m³", 1.0, ("kg/m3",))
G_PER_M3 = Unit("g/m³", 1e-3, ("g/m3",))
J_PER_KG = Unit("J/kg", 1.0, ("j/kg",))
KJ_PER_KG = Unit("kJ/kg", 1e3, ("kj/kg",))
KG_PER_MOL = Unit("kg/mol", 1.0)
MOL_PER_KG = Unit("mol/kg", 1.0, ("mol/kg",))
