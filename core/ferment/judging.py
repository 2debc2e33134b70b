"""Did it sour in time? One fermentation judged at one moment, with all the figures the screen shows."""

from __future__ import annotations

from attrs import frozen

from core.ferment import crossing as crossings
from core.ferment.course import Course, Warmth, course
from core.ferment.crossing import Acid, Crossing, Projection
from core.ferment.deadline import Deadline, deadline
from core.ferment.degree_hours import figure, limit_figure, reached_at, total, used_up
from core.ferment.outcome import Deviation, Outcome, Word
from core.ferment.rules import RULES, Rule, RuleKey
from core.working import Figure, Step

START_NOT_NOTED = Step("The start was not noted: the clock runs from the beginning of the batch.")


@frozen
class Fermentation:
    """What was noted of it. Seconds count from the moment at which the meat reached the rule's base temperature.

    planned_c: what the chamber was set to. decided_s: when the deviation was decided.
    """

    rule: RuleKey = "us"
    phs: tuple[Acid, ...] = ()
    warmths: tuple[Warmth, ...] = ()
    planned_c: float | None = None
    start_noted: bool = True
    deviation: Deviation | None = None
    decided_s: float = 0.0


@frozen
class Judged:
    """word: as in Outcome. sum: None where no temperature is known. assumed: said beside the figure.

    places: the sum by each place's own readings, where both the chamber and the core were read.
    """

    word: Word
    sum: Figure | None
    limit: Figure | None
    deadline: Deadline
    crossing: Crossing | None
    projection: Projection | None
    course: Course
    places: tuple[Figure, ...]
    assumed: tuple[Step, ...]
    outcome: Outcome


def judge(fermentation: Fermentation, now_s: float) -> Judged:
    """now_s: seconds from the start; what was read later is passed over. Slow styles: `core.ferment.slow`."""
    rule = RULES[fermentation.rule]
    phs = [each for each in fermentation.phs if each.at_s <= now_s]
    found = crossings.crossing(phs)
    end_s = max(now_s if found is None else found.by_s, 0.0)
    warmths = [each for each in fermentation.warmths if each.at_s <= now_s]
    walked = course(warmths, end_s, fermentation.planned_c)
    assumed = (*said_of_start(fermentation), *walked.assumed)
    if not walked.legs:
        return _without_course(fermentation, walked, found, assumed, crossings.projection(phs), end_s)
    sum_ks, limit_ks = total(walked, rule.base_c), rule.limit_ks(walked.highest_c)
    word = _word(walked, rule, found, limit_ks)
    over_s = reached_at(walked, rule.base_c, limit_ks) if used_up(sum_ks, limit_ks) else None
    return Judged(
        word=word,
        sum=_sum(walked, rule, found),
        limit=limit_figure(rule, walked.highest_c),
        deadline=deadline(walked, rule),
        crossing=found,
        projection=None if found else crossings.projection(phs),
        course=walked,
        places=by_place(warmths, end_s, rule),
        assumed=assumed,
        outcome=Outcome(
            word, fermentation.rule, sum_ks, limit_ks, walked.unknown, standing_deviation(fermentation, over_s)
        ),
    )


def said_of_start(fermentation: Fermentation) -> tuple[Step, ...]:
    return () if fermentation.start_noted else (START_NOT_NOTED,)


def _word(walked: Course, rule: Rule, found: Crossing | None, limit_ks: float) -> Word:
    sum_ks = total(walked, rule.base_c)
    if found is None:
        return "over" if used_up(sum_ks, limit_ks) else "running"
    if used_up(sum_ks, limit_ks):
        at_crossing_ks = total(walked.until(found.at_s), rule.base_c)
        return "over" if used_up(at_crossing_ks, limit_ks) else "not shown"
    return "unknown" if walked.unknown else "passed"


def _sum(walked: Course, rule: Rule, found: Crossing | None) -> Figure:
    """Until now; or to pH 5.3 as interpolated, with the readings on both sides as its range."""
    if found is None:
        return figure(walked, rule, "Degree-hours so far")
    to_crossing = figure(walked.until(found.at_s), rule, "Degree-hours to pH 5.3")
    if found.after_s is None:
        told = Step("The first pH that was read was already 5.3 or lower: it was there by then.")
        return _with(figure(walked, rule, "Degree-hours to pH 5.3"), told)
    told = Step("When the pH crossed 5.3 is read off a straight line between two readings; the range is theirs.")
    low = total(walked.until(max(found.after_s, 0.0)), rule.base_c)
    return _with(to_crossing, told, low, total(walked, rule.base_c))


def _with(each: Figure, told: Step, low: float | None = None, high: float | None = None) -> Figure:
    return Figure(each.key, each.name, each.value, each.quantity, (*each.working, told), each.source, (), low, high)


def _without_course(
    fermentation: Fermentation,
    walked: Course,
    found: Crossing | None,
    assumed: tuple[Step, ...],
    projected: Projection | None,
    end_s: float,
) -> Judged:
    """No temperature at all. Sour before the clock began, it had no degree-hours."""
    in_time = found is not None and end_s <= 0
    word: Word = "passed" if in_time else "unknown" if found else "running"
    outcome = Outcome(word, fermentation.rule, None, None, walked.unknown, fermentation.deviation)
    return Judged(
        word, None, None, Deadline(None, None), found, None if found else projected, walked, (), assumed, outcome
    )


def by_place(warmths: list[Warmth], end_s: float, rule: Rule) -> tuple[Figure, ...]:
    names = {"chamber": "By the chamber alone", "core": "By the core alone"}
    own = {place: [each for each in warmths if each.place == place] for place in names}
    if not all(own.values()):
        return ()
    return tuple(figure(course(own[place], end_s), rule, name, place) for place, name in names.items())


def standing_deviation(fermentation: Fermentation, over_s: float | None) -> Deviation | None:
    """A decision made before the limit was passed is about something else."""
    if over_s is not None and fermentation.decided_s < over_s:
        return None
    return fermentation.deviation
