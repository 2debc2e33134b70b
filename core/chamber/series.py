"""What one probe logged: times, temperatures and humidities, as columns of numbers in which a NaN was not measured.

One record from the logger's file to the verdict: a log of months is read, corrected and looked at without a copy.
"""

from __future__ import annotations

import math
from array import array
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from functools import cached_property
from itertools import compress, islice
from operator import eq, lt, sub
from typing import Any, cast

from attrs import Converter, evolve, field, frozen

from core.chamber.checks import Correction
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence

GAP = 1.5
"""A pause longer than this many usual intervals is a gap."""
LONGEST_GAP = 3.0
"""A reading holds until the next, but for no longer than this many logging intervals."""
COLDEST_C, WARMEST_C = -60.0, 120.0
NO_TEMPERATURE: Message = "A temperature of {probe} is not between {low} and {high}."
NO_HUMIDITY: Message = "A humidity of {probe} is not between {low} and {high}."


def _column(given: array[float] | Iterable[float | None]) -> array[float]:
    if isinstance(given, array):
        return cast("array[float]", given)
    return array("d", [math.nan if each is None else each for each in given])


def _humidities(given: array[float] | Iterable[float | None] | None, series: Any) -> array[float]:
    return array("d", [math.nan]) * len(series) if given is None else _column(given)


@frozen(eq=False)
class Series:
    """times_s: strictly rising. temperatures_c: −60 to 120. humidities: 0 to 1, None for no hygrometer.

    Raises OutOfRange on "log" where these do not fit.
    """

    probe: str
    times_s: array[float] = field(converter=_column)
    temperatures_c: array[float] = field(converter=_column)
    humidities: array[float] = field(default=None, converter=Converter(_humidities, takes_self=True))

    def __attrs_post_init__(self) -> None:
        _require_rising(self)
        _require_readings(self)

    def __len__(self) -> int:
        return len(self.times_s)

    @property
    def lasts_s(self) -> float:
        return self.times_s[-1] - self.times_s[0]

    @cached_property
    def interval_s(self) -> float:
        """The usual time between two readings, 0 where there is one only."""
        return interval_s(self.times_s) if len(self) > 1 else 0.0

    @cached_property
    def held_s(self) -> list[float]:
        """For how long each reading stands, as `held_s` has it."""
        return held_s(self.times_s, self.interval_s)

    @cached_property
    def gaps(self) -> tuple[tuple[float, float], ...]:
        """Last reading before and first after each."""
        longest_s = GAP * self.interval_s
        steps = enumerate(map(sub, islice(self.times_s, 1, None), self.times_s))
        return tuple((self.times_s[at], self.times_s[at + 1]) for at, step_s in steps if step_s > longest_s)

    @cached_property
    def has_humidity(self) -> bool:
        return any(map(eq, self.humidities, self.humidities))

    def only(self, kept: Iterable[bool]) -> Series:
        kept = list(kept)
        columns = (self.times_s, self.temperatures_c, self.humidities)
        return Series(self.probe, *(array("d", compress(column, kept)) for column in columns))

    def warm(self) -> Series:
        """The readings that have a temperature."""
        if not math.isnan(sum(self.temperatures_c)):
            return self
        return self.only(map(eq, self.temperatures_c, self.temperatures_c))

    def humid(self) -> tuple[array[float], array[float], array[float]]:
        """Times, temperatures and humidities of the readings that have a humidity."""
        measured = self
        if math.isnan(sum(self.humidities)):
            measured = self.only(map(eq, self.humidities, self.humidities))
        return measured.times_s, measured.temperatures_c, measured.humidities

    def between(self, from_s: float | None, until_s: float | None) -> Series:
        """The part of it, both ends included; None leaves that end as it is."""
        first = 0 if from_s is None else bisect_left(self.times_s, from_s)
        end = len(self) if until_s is None else bisect_right(self.times_s, until_s)
        if (first, end) == (0, len(self)):
            return self
        return Series(self.probe, self.times_s[first:end], self.temperatures_c[first:end], self.humidities[first:end])

    def corrected(self, temperature: Correction | None, humidity: Correction | None) -> Series:
        """With the corrections of the instrument that logged it: its own scale in °C, and 0 to 1."""
        if temperature is None and humidity is None:
            return self
        return evolve(
            self,
            temperatures_c=_corrected(self.temperatures_c, temperature),
            humidities=_corrected(self.humidities, humidity and humidity.within(0.0, 1.0)),
        )


def _corrected(values: array[float], correction: Correction | None) -> array[float]:
    return values if correction is None else array("d", map(correction.apply, values))


def interval_s(times_s: Sequence[float]) -> float:
    """The usual time between two readings: the median."""
    steps = list(map(sub, islice(times_s, 1, None), times_s))
    if steps.count(steps[0]) > len(steps) / 2:  # then it is the median, and nothing need be sorted
        return steps[0]
    return sorted(steps)[len(steps) // 2]


def stretches(times_s: Sequence[float], usual_s: float | None = None) -> list[tuple[int, int]]:
    """Runs of readings without a gap, as first index and one past the last."""
    longest_s = LONGEST_GAP * (interval_s(times_s) if usual_s is None else usual_s)
    steps = list(map(sub, islice(times_s, 1, None), times_s))
    if max(steps, default=0.0) <= longest_s:
        return [(0, len(times_s))]
    starts = [index for index, step_s in enumerate(steps, 1) if step_s > longest_s]
    return list(zip([0, *starts], [*starts, len(times_s)], strict=True))


def held_s(times_s: Sequence[float], usual_s: float | None = None) -> list[float]:
    """For how long each reading stands: until the next, at most the longest gap; the last for one usual interval."""
    usual_s = interval_s(times_s) if usual_s is None else usual_s
    longest_s = LONGEST_GAP * usual_s
    steps = list(map(sub, islice(times_s, 1, None), times_s))
    if max(steps, default=0.0) > longest_s:
        steps = [min(step_s, longest_s) for step_s in steps]
    return [*steps, usual_s]


def _require_rising(series: Series) -> None:
    times_s = series.times_s
    is_rising = all(map(lt, times_s, islice(times_s, 1, None)))  # a NaN is neither less nor more
    if not is_rising or not all(map(math.isfinite, (*times_s[:1], *times_s[-1:]))):
        raise OutOfRange(
            "log", Sentence("The times of {probe} must rise from reading to reading.", {"probe": series.probe})
        )


def _require_readings(series: Series) -> None:
    if not len(series) == len(series.temperatures_c) == len(series.humidities):
        text: Message = "{probe} must have one temperature and one humidity, or none, for each time."
        raise OutOfRange("log", Sentence(text, {"probe": series.probe}))
    coldest, warmest = Amount(COLDEST_C, TEMPERATURE), Amount(WARMEST_C, TEMPERATURE)
    _require_within(series, series.temperatures_c, coldest, warmest, NO_TEMPERATURE)
    none, all_of_it = Amount(0.0, RELATIVE_HUMIDITY), Amount(1.0, RELATIVE_HUMIDITY)
    _require_within(series, series.humidities, none, all_of_it, NO_HUMIDITY)


def _require_within(series: Series, values: array[float], low: Amount, high: Amount, text: Message) -> None:
    there = {value for value in set(values) if value == value}  # loggers round: these are few
    if there and not low.value <= min(there) <= max(there) <= high.value:
        raise OutOfRange("log", Sentence(text, {"probe": series.probe, "low": low, "high": high}))
