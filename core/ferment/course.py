"""How warm was it at every moment? From single readings to a line without holes, erring on the warm side.

Readings up to half a day apart are joined by a straight line. Over a longer gap the warmer end counts for all of it,
and it is said; a gap of more than a day and a half is no evidence. Before the first reading and after the last one
nothing is known but what was planned: the warmer of the two counts, and more than half a day of it is no evidence.
The rule counts "each temperature used during fermentation" (FSIS-GD-2023-0002 p. 37), so a stretch that nobody saw is
not counted away. The spans are our own choice; no published source. In half a day no chamber below 55 °C uses up any
limit.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import Literal

from attrs import evolve, frozen

from core.ferment.saying import hours_and_minutes
from core.quantities import TEMPERATURE, Amount
from core.sentence import Message, Sentence
from core.units import HOUR_S

Place = Literal["core", "chamber"]
"""In the meat, or in the air around it."""

JOINED_S = 12.5 * HOUR_S
"""Read morning and evening, half an hour late: still a straight line."""
NO_EVIDENCE_S = 36 * HOUR_S
BOTH_READ = Sentence(
    "Chamber and core were both read: at each moment the warmer counts, each taken to stay as it was last read."
)


@frozen
class TemperatureReading:
    """One temperature. at_s: seconds from the start of the clock, negative before it. temperature_c: −60 to 150."""

    at_s: float
    temperature_c: float
    place: Place = "chamber"


@frozen
class Leg:
    """A stretch of straight line."""

    start_s: float
    end_s: float
    start_c: float
    end_c: float

    def at(self, moment_s: float) -> float:
        if moment_s <= self.start_s:
            return self.start_c
        if moment_s >= self.end_s:
            return self.end_c
        return self.start_c + (self.end_c - self.start_c) * (moment_s - self.start_s) / (self.end_s - self.start_s)

    def until(self, moment_s: float) -> Leg:
        return evolve(self, end_s=min(self.end_s, moment_s), end_c=self.at(moment_s))


@frozen
class Course:
    """The temperature from the start on. assumed: what was taken for granted. unknown: what nobody can know."""

    legs: tuple[Leg, ...]
    assumed: tuple[Sentence, ...] = ()
    unknown: tuple[Sentence, ...] = ()

    @property
    def highest_c(self) -> float:
        return max((max(leg.start_c, leg.end_c) for leg in self.legs), default=-math.inf)

    @property
    def last_c(self) -> float:
        return self.legs[-1].end_c

    def until(self, moment_s: float) -> Course:
        return evolve(self, legs=tuple(leg.until(moment_s) for leg in self.legs if leg.start_s < moment_s))


def course(readings: Iterable[TemperatureReading], end_s: float, planned_c: float | None = None) -> Course:
    """The course from second 0 to end_s. Chamber and core are kept apart; at each moment the warmer one counts.

    What is assumed and unknown is taken from the one that was read with the shorter gaps, or else from the chamber.
    planned_c: what the chamber was set to; before the first and after the last reading it counts if it is the warmer.
    """
    every = tuple(readings)
    by_place = {place: _of(place, every) for place in ("chamber", "core")}
    if end_s <= 0:
        return Course(())
    set_to_c = -math.inf if planned_c is None else planned_c
    carried = {place: _carried(each, end_s, set_to_c) for place, each in by_place.items() if each}
    if not carried:
        return _only_planned(end_s, planned_c)
    told = min(carried.values(), key=lambda each: (bool(each.unknown), _longest_s(each)))
    if len(carried) == 1:
        return told
    legs = _warmer(carried["chamber"].legs, carried["core"].legs)
    return Course(legs, (*told.assumed, BOTH_READ), told.unknown)


def _of(place: str, readings: Iterable[TemperatureReading]) -> list[TemperatureReading]:
    """In the order of time. Of two at one moment only the warmer counts."""
    of_place = sorted((each for each in readings if each.place == place), key=lambda each: each.temperature_c)
    warmest = {each.at_s: each for each in of_place}
    return sorted(warmest.values(), key=lambda each: each.at_s)


def _only_planned(end_s: float, planned_c: float | None) -> Course:
    nobody = Sentence("No temperature was read.")
    if planned_c is None:
        return Course((), (), (nobody,))
    planned = Sentence(
        "No temperature was read: the planned {planned} is taken.", {"planned": Amount(planned_c, TEMPERATURE)}
    )
    return Course((Leg(0.0, end_s, planned_c, planned_c),), (planned,), (nobody,))


def _longest_s(walked: Course) -> float:
    """Without a reading; stretches that are joined anyway are alike."""
    return max(JOINED_S, *(leg.end_s - leg.start_s for leg in walked.legs))


def _carried(readings: Sequence[TemperatureReading], end_s: float, planned_c: float) -> Course:
    legs: list[Leg] = []
    assumed: list[Sentence] = []
    unknown: list[Sentence] = []
    first, last = readings[0], readings[-1]
    if first.at_s > 0:
        until_s = min(first.at_s, end_s)
        lead = _taken(FROM_THE_START, first, until_s, planned_c, assumed)
        legs.append(Leg(0.0, until_s, lead, lead))
        _tell_unknown(first.at_s, UNREAD_BEFORE, JOINED_S, unknown)
    for earlier, later in pairwise(readings):
        if later.at_s <= 0 or earlier.at_s >= end_s:
            continue
        legs.append(_clipped(_between(earlier, later, assumed), end_s))
        _tell_unknown(later.at_s - earlier.at_s, UNREAD_BETWEEN, NO_EVIDENCE_S, unknown)
    if last.at_s < end_s:
        held_from = max(last.at_s, 0.0)
        held = _taken(AFTER_THE_LAST, last, end_s - held_from, planned_c, assumed)
        legs.append(Leg(held_from, end_s, held, held))
        _tell_unknown(end_s - last.at_s, UNREAD_AFTER, JOINED_S, unknown)
    if last.at_s < 0:
        unknown = [Sentence("No temperature was read after the start.")]
    return Course(tuple(legs), tuple(assumed), tuple(unknown))


@frozen
class Stretch:
    """What is said of a time with a reading at one end only: taken as it was read, or as it was planned."""

    as_read: Message
    as_planned: Message


FROM_THE_START = Stretch(
    "From the start to the first reading, {time}, it is taken to have been {taken}.",
    "From the start to the first reading, {time}, it is taken to have been {taken}, as planned.",
)
AFTER_THE_LAST = Stretch(
    "After the last reading, {time}, it is taken to have been {taken}.",
    "After the last reading, {time}, it is taken to have been {taken}, as planned.",
)
UNREAD_BEFORE: Message = "{gap} without a temperature before the first reading; more than {most} is no evidence."
UNREAD_BETWEEN: Message = "{gap} without a temperature between two readings; more than {most} is no evidence."
UNREAD_AFTER: Message = "{gap} without a temperature after the last reading; more than {most} is no evidence."


def _taken(
    stretch: Stretch, nearest: TemperatureReading, lasts_s: float, planned_c: float, assumed: list[Sentence]
) -> float:
    """One reading says how warm it was then; of the rest only the plan is known."""
    taken = max(nearest.temperature_c, planned_c)
    words = stretch.as_planned if taken > nearest.temperature_c else stretch.as_read
    assumed.append(Sentence(words, {"time": hours_and_minutes(lasts_s), "taken": Amount(taken, TEMPERATURE)}))
    return taken


def _between(earlier: TemperatureReading, later: TemperatureReading, assumed: list[Sentence]) -> Leg:
    gap_s = later.at_s - earlier.at_s
    warmer = max(earlier.temperature_c, later.temperature_c)
    if gap_s > JOINED_S:
        assumed.append(
            Sentence(
                "{time} went by between two readings: the warmer of them, {taken}, counts for all of it.",
                {"time": hours_and_minutes(gap_s), "taken": Amount(warmer, TEMPERATURE)},
            )
        )
    elif earlier.at_s >= 0:  # before the start it says little of the chamber that the meat came into
        return Leg(earlier.at_s, later.at_s, earlier.temperature_c, later.temperature_c)
    return Leg(earlier.at_s, later.at_s, warmer, warmer)


def _tell_unknown(gap_s: float, words: Message, most_s: float, unknown: list[Sentence]) -> None:
    if gap_s > most_s:
        unknown.append(Sentence(words, {"gap": hours_and_minutes(gap_s), "most": hours_and_minutes(most_s)}))


def _clipped(leg: Leg, end_s: float) -> Leg:
    start_s = max(leg.start_s, 0.0)
    return evolve(leg, start_s=start_s, start_c=leg.at(start_s)).until(end_s)


def _warmer(legs: Sequence[Leg], others: Sequence[Leg]) -> tuple[Leg, ...]:
    """The warmer of two whole courses at each end of each stretch; between, their straight line is below neither."""
    marks = sorted({mark for leg in (*legs, *others) for mark in (leg.start_s, leg.end_s)})
    found: list[Leg] = []
    own = other = 0
    for start_s, end_s in pairwise(marks):  # both are in the order of time: one walk along them
        while legs[own].end_s <= start_s:
            own += 1
        while others[other].end_s <= start_s:
            other += 1
        one, two = legs[own], others[other]
        found.append(Leg(start_s, end_s, max(one.at(start_s), two.at(start_s)), max(one.at(end_s), two.at(end_s))))
    return tuple(found)
