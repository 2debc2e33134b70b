"""Flows, powers and films as the chamber's figures show them."""

from __future__ import annotations

from core.quantities import DisplayUnit, Quantity
from core.units import DAY, DAY_S, GALLON_M3, HOUR, HOUR_S, INCH_M, MINUTE, QUART_M3, SECOND, Unit

M3_PER_SECOND = Unit("m³/s", 1.0)
LITRE_A_DAY = Unit("L a day", 1e-3 / DAY_S, ("l/d", "l/day", "l a day", "l per day", "litres a day", "liters a day"))
QUART_A_DAY = Unit("qt a day", QUART_M3 / DAY_S, ("qt/d", "qt/day", "qt a day", "quarts a day"))
PINT_A_DAY = Unit("pt a day", QUART_M3 / 2 / DAY_S, ("pt/d", "pt/day", "pt a day", "pints a day", "pints per day"))
GALLON_A_DAY = Unit("gal a day", GALLON_M3 / DAY_S, ("gal/d", "gal/day", "gal a day"))
WATER_A_DAY = Quantity(
    "water_a_day",
    "water a day",
    (M3_PER_SECOND, LITRE_A_DAY, QUART_A_DAY, PINT_A_DAY, GALLON_A_DAY),
    (DisplayUnit(LITRE_A_DAY, 2),),
    (DisplayUnit(QUART_A_DAY, 2),),
    LITRE_A_DAY,
    QUART_A_DAY,
    "0.5 L a day",
    "0.5 qt a day",
    trim=True,
)

KG_PER_SECOND = Unit("kg/s", 1.0)
GRAM_AN_HOUR = Unit("g/h", 1e-3 / HOUR_S, ("g/hr", "g an hour", "g per hour", "grams an hour"))
MOISTURE = Quantity(  # grams an hour in both systems: a cook in the US weighs the basin in grams too
    "moisture",
    "a flow of water",
    (KG_PER_SECOND, GRAM_AN_HOUR),
    (DisplayUnit(GRAM_AN_HOUR, 2),),
    (DisplayUnit(GRAM_AN_HOUR, 2),),
    GRAM_AN_HOUR,
    GRAM_AN_HOUR,
    "4.2 g/h",
    "4.2 g/h",
)

WATT = Unit("W", 1.0, ("w", "watt", "watts"))
POWER = Quantity(
    "power", "a power", (WATT,), (DisplayUnit(WATT, 1),), (DisplayUnit(WATT, 1),), WATT, WATT, "3 W", "3 W"
)

_LASTS = (
    DisplayUnit(DAY, 1, from_value=2),
    DisplayUnit(HOUR, 1, from_value=2),
    DisplayUnit(MINUTE, 0, from_value=2),
    DisplayUnit(SECOND, 0),
)
LASTING = Quantity("lasting", "a time", (SECOND, MINUTE, HOUR, DAY), _LASTS, _LASTS, HOUR, HOUR, "36 h", "36 h", True)

SQUARE_METRE_FILM = Unit("W/(m² K)", 1.0, ("w/m2k", "w/m²k", "w/(m2 k)", "w/(m2k)"))
FILM = Quantity(
    "film",
    "a film coefficient",
    (SQUARE_METRE_FILM,),
    (DisplayUnit(SQUARE_METRE_FILM, 1),),
    (DisplayUnit(SQUARE_METRE_FILM, 1),),
    SQUARE_METRE_FILM,
    SQUARE_METRE_FILM,
    "12",
    "12",
    trim=True,
)

METRE_A_SECOND = Unit("m/s", 1.0, ("m/sec", "m per s"))
FOOT_A_MINUTE = Unit("ft/min", 12 * INCH_M / 60, ("fpm", "ft/minute", "feet a minute"))
AIR_SPEED = Quantity(
    "air_speed",
    "a speed of air",
    (METRE_A_SECOND, FOOT_A_MINUTE),
    (DisplayUnit(METRE_A_SECOND, 2),),
    (DisplayUnit(FOOT_A_MINUTE, 0),),
    METRE_A_SECOND,
    FOOT_A_MINUTE,
    "0.3 m/s",
    "60 ft/min",
    trim=True,
)

FLUX_UNIT = Unit("kg/(m² s)", 1.0)
GRAM_A_SQUARE_METRE_HOUR = Unit("g/(m² h)", 1e-3 / HOUR_S)
FLUX = Quantity(
    "flux",
    "a flow of water from a surface",
    (FLUX_UNIT, GRAM_A_SQUARE_METRE_HOUR),
    (DisplayUnit(GRAM_A_SQUARE_METRE_HOUR, 1),),
    (DisplayUnit(GRAM_A_SQUARE_METRE_HOUR, 1),),
    GRAM_A_SQUARE_METRE_HOUR,
    GRAM_A_SQUARE_METRE_HOUR,
    "16 g/(m² h)",
    "16 g/(m² h)",
)

CUBIC_METRE = Unit("m³", 1.0, ("m3",))
ROOM_LITRE = Unit("L", 1e-3, ("l", "litre", "litres", "liter", "liters"))
CUBIC_FOOT = Unit("ft³", (12 * INCH_M) ** 3, ("ft3", "cu ft", "cubic feet"))
ROOM = Quantity(
    "room",
    "a volume of air",
    (CUBIC_METRE, ROOM_LITRE, CUBIC_FOOT),
    (DisplayUnit(CUBIC_METRE, 2, from_value=10), DisplayUnit(ROOM_LITRE, 0)),
    (DisplayUnit(CUBIC_FOOT, 1),),
    ROOM_LITRE,
    CUBIC_FOOT,
    "500 L",
    "18 ft³",
    trim=True,
)

AREA_FOR_MASS = Unit("m²/kg", 1.0, ("m2/kg",))
SURFACE_OF_A_KILO = Quantity(
    "surface_of_a_kilo",
    "a surface",
    (AREA_FOR_MASS,),
    (DisplayUnit(AREA_FOR_MASS, 4),),
    (DisplayUnit(AREA_FOR_MASS, 4),),
    AREA_FOR_MASS,
    AREA_FOR_MASS,
    "0.0635",
    "0.0635",
)
