"""Did it sour in time? One fermentation judged at one moment, with all the figures the screen shows."""

from __future__ import annotations

import math

from attrs import frozen

from core.ferment import crossing as crossings
from core.ferment.course import Course, Place, TemperatureReading, course
from core.ferment.crossing import Acid, Contradiction, Crossing, Fall, Projection
from core.ferment.deadline import Deadline, deadline
from core.ferment.degree_hours import figure, limit_figure, reached_at, total, used_up
from core.ferment.outcome import Deviation, Outcome, Word
from core.ferment.rules import RULES, Rule, RuleKey
from core.ferment.saying import hours_and_minutes
from core.quantities import PH, Amount
from core.sentence import Message, Sentence, Value
from core.working import Figure

START_NOT_NOTED = Sentence("The start was not noted: the clock runs from the beginning of the batch.")


@frozen
class Fermentation:
    """What was noted of it. Seconds count from the moment at which the meat reached the rule's base temperature.

    planned_c: what the chamber was set to. decided_s: when the deviation was decided.
    """

    rule: RuleKey = "us"
    phs: tuple[Acid, ...] = ()
    temperatures: tuple[TemperatureReading, ...] = ()
    planned_c: float | None = None
    start_noted: bool = True
    deviation: Deviation | None = None
    decided_s: float = 0.0


@frozen
class Judged:
    """word: as in Outcome. sum: None where no temperature is known. assumed: said beside the figure.

    places: the sum by each place's own readings, where both the chamber and the core were read. measure_again: the pH
    contradicts itself, and only another reading can tell.
    """

    word: Word
    sum: Figure | None
    limit: Figure | None
    deadline: Deadline
    crossing: Crossing | None
    projection: Projection | None
    course: Course
    places: tuple[Figure, ...]
    assumed: tuple[Sentence, ...]
    outcome: Outcome
    measure_again: bool = False


def judge(fermentation: Fermentation, now_s: float) -> Judged:
    """now_s: seconds from the start; what was read later is passed over. Slow styles: `core.ferment.slow`."""
    rule = RULES[fermentation.rule]
    phs = [each for each in fermentation.phs if each.at_s <= now_s]
    read_off = crossings.fall(phs)
    found = read_off.crossing
    end_s = max(now_s if found is None else found.by_s, 0.0)
    temperatures = [each for each in fermentation.temperatures if each.at_s <= now_s]
    walked = course(temperatures, end_s, fermentation.planned_c)
    contradiction = None if read_off.contradiction is None else said_against(read_off.contradiction, found)
    assumed = (*said_of_start(fermentation), *([contradiction] if contradiction and found else ()), *walked.assumed)
    ahead = None if found else crossings.projection(phs)
    if not walked.legs:
        return _without_course(fermentation, walked, read_off, contradiction, assumed, ahead)
    sum_ks, limit_ks = total(walked, rule.base_c), rule.limit_ks(walked.highest_c)
    word = _word(walked, rule, read_off, limit_ks)
    return Judged(
        word=word,
        sum=_sum(walked, rule, found),
        limit=limit_figure(rule, walked.highest_c),
        deadline=deadline(walked, rule),
        crossing=found,
        projection=ahead,
        course=walked,
        places=by_place(temperatures, end_s, rule),
        assumed=assumed,
        outcome=Outcome(
            word=word,
            rule=fermentation.rule,
            sum_ks=sum_ks,
            limit_ks=limit_ks,
            why=walked.unknown,
            deviation=standing_deviation(fermentation, _missed_s(walked, rule, read_off, limit_ks)),
            contradiction=contradiction,
        ),
        measure_again=_is_open(read_off),
    )


def _is_open(read_off: Fall) -> bool:
    """Whether the readings of the pH contradict each other, and neither side is confirmed."""
    against = read_off.contradiction
    return read_off.crossing is None and against is not None and against.is_open


CONTRADICTED: Message = "pH {low} {low_at} was contradicted by pH {high} {high_at}"
CONTRADICTED_TWICE: Message = "pH {low} {low_at} was contradicted by pH {high} {high_at} and by what followed"


def said_against(against: Contradiction, found: Crossing | None) -> Sentence:
    """Both readings, when they were made, and what that means."""
    told: dict[str, Value] = {"low": Amount(against.low.ph, PH), "high": Amount(against.high.ph, PH)}
    told |= {"low_at": _when(against.low.at_s), "high_at": _when(against.high.at_s)}
    both = Sentence(CONTRADICTED_TWICE if against.outweighed else CONTRADICTED, told)
    if found is not None or not against.is_open:
        return Sentence("{both}: it does not count.", {"both": both})
    if against.again is None:
        return Sentence("{both}: neither counts until the pH is measured again.", {"both": both})
    again: dict[str, Value] = {"again": Amount(against.again.ph, PH), "again_at": _when(against.again.at_s)}
    return Sentence("{both}; pH {again} {again_at} is not confirmed yet.", {"both": both, **again})


def _when(at_s: float) -> Sentence:
    words: Message = "after {time}" if at_s >= 0 else "{time} before the start"
    return Sentence(words, {"time": hours_and_minutes(abs(at_s))})


def said_of_start(fermentation: Fermentation) -> tuple[Sentence, ...]:
    return () if fermentation.start_noted else (START_NOT_NOTED,)


def _word(walked: Course, rule: Rule, read_off: Fall, limit_ks: float) -> Word:
    """What was contradicted never carries it; it only leaves open whether the limit was missed."""
    found, against = read_off.crossing, read_off.contradiction
    is_over = used_up(total(walked, rule.base_c), limit_ks)
    if found is None and not _is_open(read_off):
        return "over" if is_over else "running"
    if not is_over:
        return "unknown" if found is None or walked.unknown else "passed"
    in_time_s = found.at_s if found is not None else math.inf
    if against is not None and not against.outweighed:
        in_time_s = min(in_time_s, against.low.at_s)
    if used_up(total(walked.until(in_time_s), rule.base_c), limit_ks):
        return "over"
    return "unknown" if found is None else "not shown"


def _missed_s(walked: Course, rule: Rule, read_off: Fall, limit_ks: float) -> float | None:
    """Since when there is something to decide about: a contradiction, the limit, or acid after a time nobody saw."""
    against = read_off.contradiction
    if _is_open(read_off) and against is not None:
        return against.high.at_s
    if used_up(total(walked, rule.base_c), limit_ks):
        return reached_at(walked, rule.base_c, limit_ks)
    return read_off.crossing.by_s if read_off.crossing is not None and walked.unknown else None


def _sum(walked: Course, rule: Rule, found: Crossing | None) -> Figure:
    """Until now; or to pH 5.3 as interpolated, with the readings on both sides as its range."""
    if found is None:
        return figure(walked, rule, "Degree-hours so far")
    to_crossing = figure(walked.until(found.at_s), rule, "Degree-hours to pH 5.3")
    if found.after_s is None:
        told = Sentence("The first pH that was read was already 5.3 or lower: it was there by then.")
        return _with(figure(walked, rule, "Degree-hours to pH 5.3"), told)
    told = Sentence("When the pH crossed 5.3 is read off a straight line between two readings; the range is theirs.")
    low = total(walked.until(max(found.after_s, 0.0)), rule.base_c)
    return _with(to_crossing, told, low, total(walked, rule.base_c))


def _with(each: Figure, told: Sentence, low: float | None = None, high: float | None = None) -> Figure:
    return Figure(each.key, each.name, each.value, each.quantity, (*each.working, told), each.source, (), low, high)


def _without_course(
    fermentation: Fermentation,
    walked: Course,
    read_off: Fall,
    contradiction: Sentence | None,
    assumed: tuple[Sentence, ...],
    ahead: Projection | None,
) -> Judged:
    """No temperature at all. Sour before the clock began, it had no degree-hours."""
    found = read_off.crossing
    in_time = found is not None and found.by_s <= 0
    missed_s = found.by_s if found is not None and not in_time else None
    word: Word = "passed" if in_time else "unknown" if found or _is_open(read_off) else "running"
    return Judged(
        word=word,
        sum=None,
        limit=None,
        deadline=Deadline(None, None),
        crossing=found,
        projection=ahead,
        course=walked,
        places=(),
        assumed=assumed,
        outcome=Outcome(
            word=word,
            rule=fermentation.rule,
            why=walked.unknown,
            deviation=standing_deviation(fermentation, missed_s),
            contradiction=contradiction,
        ),
        measure_again=_is_open(read_off),
    )


def by_place(temperatures: list[TemperatureReading], end_s: float, rule: Rule) -> tuple[Figure, ...]:
    names: dict[Place, Message] = {"chamber": "By the chamber alone", "core": "By the core alone"}
    own = {place: [each for each in temperatures if each.place == place] for place in names}
    if not all(own.values()):
        return ()
    return tuple(figure(course(own[place], end_s), rule, name, place) for place, name in names.items())


def standing_deviation(fermentation: Fermentation, over_s: float | None) -> Deviation | None:
    """A decision made before the limit was passed is about something else; one that condemns stands all the same."""
    decided = fermentation.deviation
    if over_s is not None and fermentation.decided_s < over_s and decided is not None and not decided.condemns:
        return None
    return decided
