"""How warm was it, all told? The one temperature that ages a piece as much as all that it went through."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from core.quantities import TEMPERATURE
from core.refusals import OutOfRange, require_between
from core.saturation import KELVIN_AT_ZERO_C

HEAT_K = 10_000.0
"""ΔH ÷ R of USP <1160>: 83.144 kJ/mol."""


def mean_kinetic_c(spans: Sequence[tuple[float, float]]) -> float:
    """spans: temperature in °C, −50 to 80, and how long it lasted, in seconds, 0 or more. Raises OutOfRange.

    Source: USP <1160>; uneven spans weigh by their length. Say over which time it was taken: a long one hides a warm
    month.
    """
    whole = sum(lasts_s for _, lasts_s in spans)
    if not whole > 0:
        raise OutOfRange("lasts_1", "The time must be more than 0.")
    for celsius, lasts_s in spans:
        require_between("temperature_1", "Temperature", celsius, -50.0, 80.0, TEMPERATURE)
        if lasts_s < 0:
            raise OutOfRange("lasts_1", "The time must be more than 0.")
    warmest = max(celsius for celsius, _ in spans) + KELVIN_AT_ZERO_C
    rates = (
        lasts_s / whole * math.exp(HEAT_K / warmest - HEAT_K / (celsius + KELVIN_AT_ZERO_C))
        for celsius, lasts_s in spans
    )
    return HEAT_K / (HEAT_K / warmest - math.log(sum(rates))) - KELVIN_AT_ZERO_C


def above_s(course: Sequence[tuple[float, float]], line_c: float) -> float:
    """How long it was warmer than the line. course: seconds and °C, by time, straight between two of them."""
    found = 0.0
    for (from_s, one_c), (to_s, other_c) in pairwise(course):
        warmest, coldest = max(one_c, other_c), min(one_c, other_c)
        if coldest >= line_c:
            share = 1.0 if warmest > line_c else 0.0
        else:
            share = max(warmest - line_c, 0.0) / (warmest - coldest) if warmest > coldest else 0.0
        found += share * (to_s - from_s)
    return found
