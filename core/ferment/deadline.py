"""How long is left at the present temperature, and when is the last safe moment?"""

from __future__ import annotations

import math

from attrs import frozen

from core.ferment.course import Course
from core.ferment.degree_hours import reached_at, total, used_up
from core.ferment.rules import Rule
from core.quantities import DEGREE_HOURS, HOURS, HOURS_LEFT, TEMPERATURE, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence
from core.working import Figure

LAST_SAFE = 1e-8
"""Of the limit, kept back: the limit itself is too much, so the time left ends just before it."""
STILL_K = 1e-4
"""Above the base: no thermometer tells so little, and the last digits of a corrected one leave some. At it the limit is
hundreds of years off."""
STANDS_STILL: Message = "At this temperature no degree-hours are added."


@frozen
class Deadline:
    """at_s: the last safe moment, in seconds from the start; None where nothing is added at the present temperature.

    left: the time from the end of the course to it, at the present temperature; 0 where it is over.
    """

    at_s: float | None
    left: Figure | None


def deadline(course: Course, rule: Rule) -> Deadline:
    """As long as it stays as the course ends. The course must have a leg."""
    now_c = course.last_c
    limit_ks = rule.limit_ks(max(course.highest_c, now_c))
    gone_ks, end_s = total(course, rule.base_c), course.legs[-1].end_s
    if used_up(gone_ks, limit_ks):
        return Deadline(reached_at(course, rule.base_c, limit_ks), hours_left(gone_ks, limit_ks, now_c, rule))
    left = hours_left(gone_ks, limit_ks, now_c, rule)
    return Deadline(None if left is None else end_s + left.value, left)


def hours_left(gone_ks: float, limit_ks: float, present_c: float, rule: Rule) -> Figure | None:
    """Seconds until just before the limit at the present temperature; None where it is not perceptibly above the base.

    It is shown cut off, never rounded up: what is shown is not over. gone_ks: 0 or more, kelvin-seconds. Raises
    OutOfRange on "gone_ks".
    """
    if not 0 <= gone_ks < math.inf:
        raise OutOfRange("gone_ks", "The degree-hours so far cannot be less than nothing.")
    amounts = {
        "limit": Amount(limit_ks, DEGREE_HOURS),
        "gone": Amount(gone_ks, DEGREE_HOURS),
        "present": Amount(present_c, TEMPERATURE),
        "base": Amount(rule.base_c, TEMPERATURE),
    }
    if used_up(gone_ks, limit_ks):
        step = Sentence("{gone} is not fewer than {limit}: no time is left", amounts)
        return Figure("left", "Time left", 0.0, HOURS_LEFT, (step,), rule.source)
    warmth_k = present_c - rule.base_c
    if warmth_k <= STILL_K:
        return None
    to_limit = Amount((limit_ks - gone_ks) / warmth_k, HOURS)
    step = Sentence("({limit} − {gone}) ÷ ({present} − {base}) = {to_limit}", amounts | {"to_limit": to_limit})
    left_s = max(0.0, (limit_ks * (1 - LAST_SAFE) - gone_ks) / warmth_k)
    return Figure("left", "Time left at this temperature", left_s, HOURS_LEFT, (step,), rule.source)
