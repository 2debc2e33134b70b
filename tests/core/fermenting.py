"""Readings of a fermentation in hours, for the tests of core.ferment."""

from core.ferment.course import TemperatureReading, course
from core.ferment.crossing import Acid
from core.ferment.degree_hours import total
from core.units import CELSIUS_HOUR

H = 3600.0


def acids(*pairs: tuple[float, float]) -> tuple[Acid, ...]:
    return tuple(Acid(hours * H, ph) for hours, ph in pairs)


def warm(*pairs: tuple[float, float], place="chamber") -> tuple[TemperatureReading, ...]:
    return tuple(TemperatureReading(hours * H, warm_c, place) for hours, warm_c in pairs)


def every_12_h(until_h: float, warm_c: float = 24.0, place="chamber") -> tuple[TemperatureReading, ...]:
    return warm(*((hours, warm_c) for hours in range(0, int(until_h) + 1, 12)), place=place)


def kept(
    temperatures: tuple[TemperatureReading, ...], until_h: float, base_c: float = 15.6, planned_c: float | None = None
) -> float:
    """°C·h above the base."""
    return CELSIUS_HOUR.from_si(total(course(temperatures, until_h * H, planned_c), base_c))
