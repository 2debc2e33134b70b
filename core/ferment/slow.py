"""A sausage that is not meant to sour to 5.3: how warm it was before it was cool again, told by the same sum.

No rule is published for it. Staphylococci grow as much in so much warmth whatever the style, so the limit of the rule
is held against its warm days; cold, salt, nitrite and dryness must do the rest (`core.release`).
"""

from __future__ import annotations

from collections.abc import Sequence

from core.ferment.course import Course, Warmth, course
from core.ferment.deadline import Deadline, deadline
from core.ferment.degree_hours import figure, limit_figure, reached_at, total, used_up
from core.ferment.judging import Fermentation, Judged, by_place, said_of_start, standing_deviation
from core.ferment.outcome import Outcome, Word
from core.ferment.rules import RULES, Rule

OWN_USE = (
    "This limit is published for sausage that sours. Holding the warm days of a slow style against it is our own "
    "choice, no source: it bounds how much staphylococci can have grown in them."
)


def judge_slow(fermentation: Fermentation, now_s: float) -> Judged:
    """From the start to the first reading at the base temperature or below that no warm one follows.

    now_s: seconds from the start; what was read later is passed over. Still warm is not yet known to pass.
    """
    rule = RULES[fermentation.rule]
    warmths = sorted((each for each in fermentation.warmths if each.at_s <= now_s), key=lambda each: each.at_s)
    cool_s = _cool_again(warmths, rule)
    end_s = max(now_s if cool_s is None else cool_s, 0.0)
    walked = course(warmths, end_s, fermentation.planned_c)
    known = bool(warmths) and bool(walked.legs)
    sum_ks = total(walked, rule.base_c) if known else None
    limit_ks = rule.limit_ks(walked.highest_c)
    over_s = reached_at(walked, rule.base_c, limit_ks) if known else None
    word = _word(walked, warmths, sum_ks, limit_ks, cool_s)
    return Judged(
        word=word,
        sum=figure(walked, rule, "Degree-hours of the warm days") if known else None,
        limit=limit_figure(rule, walked.highest_c) if known else None,
        deadline=deadline(walked, rule) if known else Deadline(None, None),
        crossing=None,
        projection=None,
        course=walked,
        places=by_place(warmths, end_s, rule),
        assumed=(*said_of_start(fermentation), *walked.assumed),
        outcome=Outcome(
            word=word,
            rule=fermentation.rule,
            sum_ks=sum_ks,
            limit_ks=limit_ks if known else None,
            why=walked.unknown,
            deviation=standing_deviation(fermentation, over_s),
        ),
    )


def _cool_again(warmths: Sequence[Warmth], rule: Rule) -> float | None:
    last_warm_s = max((each.at_s for each in warmths if each.temperature_c > rule.base_c), default=None)
    later = (each.at_s for each in warmths if last_warm_s is None or each.at_s > last_warm_s)
    return next(later, None)


def _word(
    walked: Course, warmths: Sequence[Warmth], sum_ks: float | None, limit_ks: float, cool_s: float | None
) -> Word:
    if not warmths:
        return "unknown"
    if sum_ks is not None and used_up(sum_ks, limit_ks):
        return "over"
    if cool_s is None:
        return "running"
    return "unknown" if walked.unknown else "passed"
