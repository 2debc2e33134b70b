"""Dew point, vapour pressure and deficit of every reading: the formulas of `core.vapour` through a table.

A month of two probes is 86 400 readings; a root for each would take seconds on a tablet. Between entries ¼ K apart the
logarithm of the saturation pressure is a straight line to 1 part in 100 000.
"""

from __future__ import annotations

import math
from array import array
from bisect import bisect_left
from collections.abc import Sequence
from operator import mul, sub

from attrs import frozen

from core.chamber.series import Series, held_s
from core.saturation import COLDEST_C, WARMEST_C, saturation_in_air_pa
from core.vapour import STANDARD_PA

STEP_K = 0.25


@frozen(eq=False)
class HumidAir:
    """The readings of one probe that have a humidity. dew_points_c: NaN for air that dews below −40 °C.

    lasts_s: for how long each reading stands.
    """

    times_s: Sequence[float]
    lasts_s: Sequence[float]
    temperatures_c: Sequence[float]
    humidities: Sequence[float]
    vapour_pa: Sequence[float]
    deficits_pa: Sequence[float]
    dew_points_c: Sequence[float]


def humid_air(series: Series, pressure_pa: float = STANDARD_PA) -> HumidAir | None:
    """None where the probe has no hygrometer, or one reading of it: that lasts no time. What was read outside −40 to
    60 °C is left out: the formula ends there.

    deficits are against a surface of pure water as warm as the air, in Pa. Within 0.001 K and 0.1 Pa of core.vapour.
    """
    times_s, temperatures_c, humidities = series.humid()
    if len(times_s) and (min(temperatures_c) < COLDEST_C or max(temperatures_c) > WARMEST_C):
        rows = [
            row for row in zip(times_s, temperatures_c, humidities, strict=True) if COLDEST_C <= row[1] <= WARMEST_C
        ]
        times_s, temperatures_c, humidities = (array("d", [row[place] for row in rows]) for place in range(3))
    if len(times_s) < 2:
        return None
    table = _log_saturation(pressure_pa)
    saturated = {value: _saturated_pa(table, value) for value in set(temperatures_c)}
    full = array("d", map(saturated.__getitem__, temperatures_c))
    vapour = array("d", map(mul, full, humidities))
    dews = {there: _dew_point(table, there) for there in set(vapour)}
    return HumidAir(
        times_s,
        series.held_s if times_s is series.times_s else held_s(times_s),
        temperatures_c,
        humidities,
        vapour,
        deficits_pa=array("d", map(sub, full, vapour)),
        dew_points_c=array("d", map(dews.__getitem__, vapour)),
    )


def _log_saturation(pressure_pa: float) -> list[float]:
    count = round((WARMEST_C - COLDEST_C) / STEP_K) + 1
    return [math.log(saturation_in_air_pa(COLDEST_C + place * STEP_K, pressure_pa)) for place in range(count)]


def _saturated_pa(table: Sequence[float], at_c: float) -> float:
    place = (at_c - COLDEST_C) / STEP_K
    below = min(int(place), len(table) - 2)
    return math.exp(table[below] + (place - below) * (table[below + 1] - table[below]))


def _dew_point(table: Sequence[float], vapour_pa: float) -> float:
    if vapour_pa <= 0:
        return math.nan
    log = math.log(vapour_pa)
    if log < table[0]:
        return math.nan
    above = min(max(1, bisect_left(table, log)), len(table) - 1)
    return COLDEST_C + STEP_K * (above - 1 + (log - table[above - 1]) / (table[above] - table[above - 1]))
