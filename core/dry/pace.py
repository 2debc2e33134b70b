"""Time as drying counts it: an hour of warm, dry air moves a piece further than one of cold, humid air.

Each stretch of the chamber's air counts by its drying force on the piece as it then is, the piece's water activity at
that loss times the saturation pressure less the air's vapour pressure, against the force of the air that comes last.
Where the air never changes, this is the time by the clock.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from functools import cache
from itertools import pairwise

from attrs import frozen

from core.dry.activity import Mix, activity_at, loss_for
from core.saturation import saturation_in_air_pa
from core.vapour import STANDARD_PA

MIDDLING = Mix(water=0.58, salt=0.028)
"""A dry sausage with 2.8 % salt, where the formula is not known. Common practice; no published source."""
MUSCLE = Mix(water=0.72, salt=0.035, ferments=False)
"""A lean whole muscle, where nothing more is known. Common practice; no published source."""
LEAST_FORCE = 0.01
"""Of saturation: a piece in air as moist as itself still evens out within, but hardly dries."""
PROTEIN_KEEPS = 0.03
"""Of the start weight: by so much a piece ends short of what its brine alone would give. Our own, not measured."""
_LEAST_HUMIDITY, _MOST_HUMIDITY = 0.70, 0.98


@frozen
class Air:
    """The chamber's air from a moment on. from_s: since the batch was hung. −20 to 60 °C. humidity: 0 to 1."""

    from_s: float
    temperature_c: float
    humidity: float


UNKNOWN_AIR = Air(0.0, 12.0, 0.78)
"""What is taken where no air is known: the same all the time. Common practice; no published source."""


@frozen
class Known:
    """A weighing: when, since hanging, and the share of the start weight lost by then."""

    at_s: float
    loss: float


def air_at(air: Sequence[Air], at_s: float) -> Air:
    """air: by time, one at least; before the first it counts as the first."""
    return air[max(0, bisect_right([each.from_s for each in air], at_s) - 1)]


def force_pa(air: Air, loss: float, mix: Mix = MIDDLING) -> float:
    """Between the piece, evenly dried to this loss, and the air; never quite nothing."""
    return max(surface_activity(loss, mix) - air.humidity, LEAST_FORCE) * saturation_in_air_pa(
        air.temperature_c, STANDARD_PA
    )


def surface_activity(loss: float, mix: Mix = MIDDLING) -> float:
    """Water activity of the piece, evenly dried to this loss; to the nearest hundredth of it."""
    known = _activities(mix)
    return known[min(max(round(loss * 100), 0), len(known) - 1)]


def end_in(air: Air, mix: Mix = MIDDLING) -> float:
    """The loss at which the piece is in balance with the air: this air takes no more. Most likely; it may miss 0.05."""
    return loss_for(mix, humidity_of(air), min(max(air.temperature_c, 0.0), 40.0)) - PROTEIN_KEEPS


def humidity_of(air: Air) -> float:
    """In whole per cent, within what the isotherm of brine tells."""
    return min(max(round(air.humidity, 2), _LEAST_HUMIDITY), _MOST_HUMIDITY)


def equal_times(
    air: Sequence[Air], known: Sequence[Known], mix: Mix = MIDDLING, hung_s: float = 0.0
) -> tuple[float, ...]:
    """For each weighing the time that the last air would have taken to bring the piece there. known: by time."""
    times: list[float] = []
    passed = 0.0
    for before, after in pairwise((Known(hung_s, 0.0), *known)):
        middle = (before.loss + after.loss) / 2
        for start_s, end_s, each in _stretches(air, before.at_s, after.at_s):
            passed += (end_s - start_s) * _against_last(air, each, middle, mix)
        times.append(passed)
    return tuple(times)


def by_the_clock(air: Sequence[Air], now: Known, longer_s: float, target: float, mix: Mix = MIDDLING) -> float:
    """When the last air's time has gone on for so much longer: seconds since hanging. target: the loss to come to."""
    at_s, left_s = now.at_s, max(longer_s, 0.0)
    middle = (now.loss + max(target, now.loss)) / 2
    for change in air:
        if change.from_s <= at_s:
            continue
        pace = _against_last(air, air_at(air, at_s), middle, mix)
        if left_s <= (change.from_s - at_s) * pace:
            return at_s + left_s / pace
        left_s -= (change.from_s - at_s) * pace
        at_s = change.from_s
    return at_s + left_s


def longer(air: Sequence[Air], now: Known, until_s: float, mix: Mix = MIDDLING) -> float:
    """The last air's time from a weighing until a moment, the inverse of `by_the_clock`."""
    spans = _stretches(air, now.at_s, max(until_s, now.at_s))
    return sum((end_s - start_s) * _against_last(air, each, now.loss, mix) for start_s, end_s, each in spans)


def _against_last(air: Sequence[Air], each: Air, loss: float, mix: Mix) -> float:
    last = air[-1]
    return 1.0 if each is last else force_pa(each, loss, mix) / force_pa(last, loss, mix)


@cache
def _activities(mix: Mix) -> tuple[float, ...]:
    return tuple(activity_at(mix, place / 100) for place in range(int((mix.water - 0.03) * 100)))


def _stretches(air: Sequence[Air], from_s: float, to_s: float) -> list[tuple[float, float, Air]]:
    edges = [from_s, *(each.from_s for each in air if from_s < each.from_s < to_s), to_s]
    return [(start, end, air_at(air, start)) for start, end in pairwise(edges)]
