"""A sausage that is not meant to sour to 5.3: how warm it was before it was cool for good, by the same sum.

No rule is published for it. Staphylococci grow as much in so much warmth whatever the style, so the limit of the rule
is held against its warm days; cold, salt, nitrite and dryness must do the rest (`core.release`).

Its warm days must have been seen. Readings reach from the start over its first three days at least, and on until each
place that was warm is cool; a stretch without them is as unknown as elsewhere (`core.ferment.course`).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from attrs import frozen

from core.ferment.course import NO_EVIDENCE_S, TemperatureReading, course
from core.ferment.deadline import Deadline, deadline
from core.ferment.degree_hours import figure, limit_figure, reached_at, total, used_up
from core.ferment.judging import Fermentation, Judged, by_place, said_of_start, standing_deviation
from core.ferment.outcome import Outcome, Word
from core.ferment.rules import RULES, Rule
from core.ferment.saying import hours_and_minutes
from core.quantities import TEMPERATURE, Amount
from core.sentence import Message, Sentence
from core.units import HOUR_S

OWN_USE: Message = (
    "This limit is published for sausage that sours. Holding the warm days of a slow style against it is our own "
    "choice; no published source: it bounds how much staphylococci can have grown in them."
)
FIRST_DAYS_S = 72 * HOUR_S
"""A slow sausage is warmed within its first days if at all: common practice; no published source."""


@frozen
class Warmed:
    """is_cool: for good, so far, every place that had been warm. was_warm: since the start.

    shown_s: the reading that shows it, after the first days; None as long as none does. last_s: the last reading.
    """

    was_warm: bool
    is_cool: bool
    shown_s: float | None
    last_s: float

    @property
    def end_s(self) -> float | None:
        """Where the course ends: cool again, what was planned for its warm days is over. None: it goes on until now."""
        if self.shown_s is not None:
            return self.shown_s
        return self.last_s if self.was_warm and self.is_cool else None


def judge_slow(fermentation: Fermentation, now_s: float) -> Judged:
    """now_s: seconds from the start; what was read later is passed over. Not shown to be cool, it has not passed."""
    rule = RULES[fermentation.rule]
    temperatures = sorted(
        (each for each in fermentation.temperatures if each.at_s <= now_s), key=lambda each: each.at_s
    )
    warmed = _warmed(temperatures, rule.base_c)
    end_s = max(now_s if warmed.end_s is None else warmed.end_s, 0.0)
    walked = course(temperatures, end_s, fermentation.planned_c)
    known = bool(temperatures) and bool(walked.legs)
    sum_ks = total(walked, rule.base_c) if known else None
    limit_ks = rule.limit_ks(walked.highest_c)
    over_s = reached_at(walked, rule.base_c, limit_ks) if known else None
    lacking = (*_lacking(warmed, fermentation.planned_c, rule), *walked.unknown)
    word = _word(sum_ks, limit_ks, warmed, lacking, now_s)
    return Judged(
        word=word,
        sum=figure(walked, rule, "Degree-hours of the warm days") if known else None,
        limit=limit_figure(rule, walked.highest_c) if known else None,
        deadline=deadline(walked, rule) if known else Deadline(None, None),
        crossing=None,
        projection=None,
        course=walked,
        places=by_place(temperatures, end_s, rule),
        assumed=(*said_of_start(fermentation), *walked.assumed),
        outcome=Outcome(
            word=word,
            rule=fermentation.rule,
            sum_ks=sum_ks,
            limit_ks=limit_ks if known else None,
            why=lacking,
            deviation=standing_deviation(fermentation, over_s),
        ),
    )


def _warmed(temperatures: Sequence[TemperatureReading], base_c: float) -> Warmed:
    since = [each for each in temperatures if each.at_s >= 0]
    last_s = max((each.at_s for each in since), default=-math.inf)
    last_warm = {each.place: each.at_s for each in since if each.temperature_c > base_c}
    cool = [
        next((each.at_s for each in since if each.place == place and each.at_s > at_s), None)
        for place, at_s in last_warm.items()
    ]
    is_cool = None not in cool
    from_s = max([FIRST_DAYS_S, *(at_s for at_s in cool if at_s is not None)])
    shown_s = next((each.at_s for each in since if is_cool and each.at_s >= from_s), None)
    return Warmed(bool(last_warm), is_cool, shown_s, last_s)


def _lacking(warmed: Warmed, planned_c: float | None, rule: Rule) -> tuple[Sentence, ...]:
    """What its own readings do not show."""
    if planned_c is not None and planned_c > rule.base_c and not warmed.was_warm:
        planned = {"planned": Amount(planned_c, TEMPERATURE)}
        return (Sentence("The chamber was set to {planned}, and no reading shows its warm days.", planned),)
    if warmed.shown_s is not None or not warmed.is_cool or warmed.last_s < 0:
        return ()
    told = {"reach": hours_and_minutes(warmed.last_s), "first": hours_and_minutes(FIRST_DAYS_S)}
    return (Sentence("Its readings reach {reach} of its first {first}.", told),)


def _word(sum_ks: float | None, limit_ks: float, warmed: Warmed, lacking: Sequence[Sentence], now_s: float) -> Word:
    if sum_ks is not None and used_up(sum_ks, limit_ks):
        return "over"
    if warmed.shown_s is not None:
        return "unknown" if lacking else "passed"
    return "running" if now_s - warmed.last_s <= NO_EVIDENCE_S else "unknown"
