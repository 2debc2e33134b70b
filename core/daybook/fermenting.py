"""A batch's fermentation as its entries tell it, judged at a moment; seconds there are clock times here."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence
from datetime import datetime, timedelta

from attrs import evolve, frozen

from core.daybook.batch import Batch
from core.daybook.dated import MeatReading
from core.daybook.ferment_notes import TakenLog
from core.ferment.course import Leg, TemperatureReading
from core.ferment.crossing import Acid
from core.ferment.judging import Fermentation, Judged, judge
from core.ferment.outcome import Deviation, Outcome
from core.ferment.rules import RULES
from core.ferment.slow import judge_slow
from core.meat import ACID_PH


@frozen
class FermentationClock:
    """The judged fermentation and the moment that its seconds count from."""

    start: datetime
    judged: Judged
    fermentation: Fermentation

    def at(self, seconds: float | None) -> datetime | None:
        return None if seconds is None else self.start + timedelta(seconds=seconds)

    @property
    def last_safe(self) -> datetime | None:
        return self.at(self.judged.deadline.at_s)


def judged(batch: Batch, now: datetime) -> FermentationClock | None:
    """None for a whole muscle, which has no fermentation."""
    if batch.start.style == "whole-muscle":
        return None
    known = fermentation_of(batch)
    start = clock_start(batch)
    judge_it = judge if batch.start.style == "fermented" else judge_slow
    return FermentationClock(start, judge_it(known, (now - start).total_seconds()), known)


def outcome_of(batch: Batch, now: datetime) -> Outcome | None:
    clocked = judged(batch, now)
    return None if clocked is None else clocked.judged.outcome


NOTED_LATE = timedelta(hours=1)
"""A reading so long before the noted start does not contradict it: it is of the chamber, warmed up. Our own choice."""


def clock_start(batch: Batch) -> datetime:
    """As it was noted, unless a reading of the batch was warm or sour before: then from the first warm one, and from
    the beginning of the batch where it was sour before any. Warmth before the start would count for nothing."""
    begun, begun_at = batch.ferment.begun, batch.ferment.begun_at
    if begun is None or begun_at is None:
        return batch.started_at
    warm = [at for at, warm_c in _temperatures(batch) if warm_c > RULES[begun.rule].base_c]
    sour = [each.at for each in batch.phs if each.ph is not None and each.ph <= ACID_PH]
    before = [at for at in warm if batch.started_at <= at < begun_at - NOTED_LATE]
    if any(batch.started_at < at < min([begun_at - NOTED_LATE, *before]) for at in sour):
        return batch.started_at
    return min([begun_at, *before])


def _temperatures(batch: Batch) -> list[tuple[datetime, float]]:
    """Every temperature that was read or logged, on whatever it was: a bad thermometer, too, tells of a late start."""
    read = ((each.at, each.temperature_c) for each in batch.readings if each.temperature_c is not None)
    logs = ((log.at, log.taken.points) for log in batch.ferment.logs)
    return [*read, *((at + timedelta(seconds=at_s), warm_c) for at, points in logs for at_s, warm_c in points)]


def fermentation_of(batch: Batch) -> Fermentation:
    """Readings on an instrument that had failed its check do not count, but for a pH that speaks against the batch."""
    start, notes = clock_start(batch), batch.ferment
    decided = notes.decided
    return Fermentation(
        rule=notes.begun.rule if notes.begun else "us",
        phs=tuple(
            Acid((each.at - start).total_seconds(), each.ph)
            for each in batch.phs
            if each.ph is not None and (each.ph_proves or each.ph > ACID_PH)
        ),
        temperatures=_warmest([_read(batch, start), *(_logged(log, start) for log in notes.logs)]),
        planned_c=notes.begun.planned_c if notes.begun else None,
        start_noted=notes.begun is not None,
        deviation=None
        if decided is None
        else Deviation(decided.decision == "keep", decided.result, decided.decided_by, decided.test),
        decided_s=((notes.decided_at or start) - start).total_seconds(),
    )


def _read(batch: Batch, start: datetime) -> list[TemperatureReading]:
    return [
        TemperatureReading((each.at - start).total_seconds(), each.temperature_c, each.place or "chamber")
        for each in batch.readings
        if each.temperature_c is not None and _proves(each)
    ]


def _proves(reading: MeatReading) -> bool:
    of_temperature = reading.corrected.of("temperature")
    return of_temperature is None or not of_temperature.proves_nothing


def _warmest(sources: Sequence[Sequence[TemperatureReading]]) -> tuple[TemperatureReading, ...]:
    """What was read beside a log, or by two of them, in one place: at each moment the warmest counts. In turns, a cool
    one would halve what the warm one adds up to."""
    found: list[TemperatureReading] = []
    for own in sources:
        others = [sorted(other, key=lambda each: each.at_s) for other in sources[1:] if other is not own]
        found += [
            evolve(each, temperature_c=max([each.temperature_c, *(_at(each, other) for other in others)]))
            for each in own
        ]
    return tuple(found)


def _at(moment: TemperatureReading, log: Sequence[TemperatureReading]) -> float:
    """By the straight line between the points of a log of the same place; nothing outside of it."""
    if log[0].place != moment.place or not log[0].at_s <= moment.at_s <= log[-1].at_s:
        return -math.inf
    after = bisect_left(log, moment.at_s, key=lambda each: each.at_s)
    before, next_ = log[max(after - 1, 0)], log[after]
    return Leg(before.at_s, next_.at_s, before.temperature_c, next_.temperature_c).at(moment.at_s)


def _logged(log: TakenLog, start: datetime) -> list[TemperatureReading]:
    """The points, and the highest reading beside the warmest of them: it may have been averaged away."""
    begun_s = (log.at - start).total_seconds()
    warmest_s, _ = max(log.taken.points, key=lambda point: point[1])
    return [
        *(TemperatureReading(begun_s + at_s, warm_c, log.taken.place) for at_s, warm_c in log.taken.points),
        TemperatureReading(begun_s + warmest_s, log.taken.highest_c, log.taken.place),
    ]
