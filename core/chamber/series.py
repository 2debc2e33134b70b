"""What one probe logged: times, temperatures and, where it has them, humidities."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import compress
from operator import lt, sub

from attrs import field, frozen

from core.refusals import OutOfRange

LONGEST_GAP = 3.0
"""A reading stands for the time until the next, but for no longer than this many logging intervals."""


def _numbers(given: Iterable[float]) -> tuple[float, ...]:
    return tuple(given)


def _maybe_numbers(given: Iterable[float | None] | None) -> tuple[float | None, ...] | None:
    return None if given is None else tuple(given)


@frozen
class Series:
    """times_s: strictly rising, from any beginning. temperatures_c: −60 to 100. humidities: 0 to 1, None where missing.

    humidities is None altogether for a probe that has no hygrometer. Raises OutOfRange where these do not fit.
    """

    probe: str
    times_s: tuple[float, ...] = field(converter=_numbers)
    temperatures_c: tuple[float, ...] = field(converter=_numbers)
    humidities: tuple[float | None, ...] | None = field(default=None, converter=_maybe_numbers)

    def __attrs_post_init__(self) -> None:
        _require_rising(self)
        _require_readings(self)

    def __len__(self) -> int:
        return len(self.times_s)

    @property
    def lasts_s(self) -> float:
        return self.times_s[-1] - self.times_s[0]

    def only(self, kept: Sequence[bool]) -> Series:
        """The readings kept; all of them where fewer than two would be left."""
        if sum(kept) < 2:
            return self
        humidities = None if self.humidities is None else compress(self.humidities, kept)
        return Series(self.probe, compress(self.times_s, kept), compress(self.temperatures_c, kept), humidities)

    def humid(self) -> tuple[tuple[float, ...], tuple[float, ...], tuple[float, ...]]:
        """Times, temperatures and humidities of the readings that have a humidity."""
        if self.humidities is None:
            return (), (), ()
        if None not in self.humidities:
            return self.times_s, self.temperatures_c, tuple(each for each in self.humidities if each is not None)
        rows = [
            (at_s, warm_c, humidity)
            for at_s, warm_c, humidity in zip(self.times_s, self.temperatures_c, self.humidities, strict=True)
            if humidity is not None
        ]
        return tuple(row[0] for row in rows), tuple(row[1] for row in rows), tuple(row[2] for row in rows)


def series_of(
    probe: str, times_s: Iterable[float], temperatures_c: Iterable[float], humidities: Iterable[float] | None = None
) -> Series:
    """From columns in which a NaN stands for what was not measured; rows without a temperature are left out."""
    if humidities is None:
        rows = [(at_s, warm_c, None) for at_s, warm_c in zip(times_s, temperatures_c, strict=True) if warm_c == warm_c]
    else:
        rows = [
            (at_s, warm_c, humidity if humidity == humidity else None)
            for at_s, warm_c, humidity in zip(times_s, temperatures_c, humidities, strict=True)
            if warm_c == warm_c
        ]
    humid = [humidity for _, _, humidity in rows]
    is_dry = all(humidity is None for humidity in humid)
    return Series(probe, [row[0] for row in rows], [row[1] for row in rows], None if is_dry else humid)


def interval_s(times_s: Sequence[float]) -> float:
    """The usual time between two readings: the median."""
    steps = list(map(sub, times_s[1:], times_s))
    if steps.count(steps[0]) > len(steps) / 2:  # then it is the median, and nothing need be sorted
        return steps[0]
    return sorted(steps)[len(steps) // 2]


def stretches(times_s: Sequence[float]) -> list[tuple[int, int]]:
    """Runs of readings without a gap, as first index and one past the last."""
    longest_s = LONGEST_GAP * interval_s(times_s)
    starts = [index for index, step_s in enumerate(map(sub, times_s[1:], times_s), 1) if step_s > longest_s]
    return list(zip([0, *starts], [*starts, len(times_s)], strict=True))


def held_s(times_s: Sequence[float]) -> list[float]:
    """For how long each reading stands: until the next, at most the longest gap; the last for one usual interval."""
    usual_s = interval_s(times_s)
    longest_s = LONGEST_GAP * usual_s
    return [step_s if step_s < longest_s else longest_s for step_s in map(sub, times_s[1:], times_s)] + [usual_s]


def _require_rising(series: Series) -> None:
    times_s = series.times_s
    if len(times_s) < 2:
        raise OutOfRange("log", f"{series.probe} has fewer than two readings: there is nothing to look at.")
    if not all(map(math.isfinite, times_s)) or not all(map(lt, times_s, times_s[1:])):
        raise OutOfRange("log", f"The times of {series.probe} must rise from reading to reading.")


def _require_readings(series: Series) -> None:
    warm = series.temperatures_c
    if len(warm) != len(series) or not all(map(math.isfinite, warm)):
        raise OutOfRange("log", f"{series.probe} must have one temperature for each time.")
    if min(warm) < -60 or max(warm) > 100:
        raise OutOfRange("log", f"A temperature of {series.probe} is not between −60 and 100 °C (−76 and 212 °F).")
    if series.humidities is None:
        return
    humid = [each for each in series.humidities if each is not None]
    if len(series.humidities) != len(series) or not all(map(math.isfinite, humid)):
        raise OutOfRange("log", f"{series.probe} must have one humidity, or none, for each time.")
    if humid and (min(humid) < 0 or max(humid) > 1):
        raise OutOfRange("log", f"A humidity of {series.probe} is not between 0 and 100 %.")
