"""How many degree-hours: the warmth above the base, added up over the time. And when a given sum is reached.

Between readings the temperature runs straight, and the moment at which it crosses the base is solved for: the clipped
readings joined by lines would count too much. Source of the sum: by definition.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from core.ferment.course import Course, Leg
from core.ferment.rules import Rule
from core.quantities import COUNT, DEGREE_HOURS, HOURS, TEMPERATURE, Amount
from core.refusals import OutOfRange
from core.roots import begins
from core.sentence import Message, Sentence
from core.working import Figure

MOST_STEPS_SHOWN = 12
SHORTEST_TOLD_S = 1.0
"""Two readings typed one after the other are a fraction of a second apart: no line of the working."""
LEFT_OVER = 1e-9
"""Of the limit: what the last digits of a sum may leave is no room."""


def above(leg: Leg, base_c: float) -> float:
    """Kelvin-seconds above the base in one straight stretch."""
    lasts_s, first, last = leg.end_s - leg.start_s, leg.start_c - base_c, leg.end_c - base_c
    under, over = min(first, last), max(first, last)
    if over <= 0:
        return 0.0
    if under >= 0:
        return lasts_s * (under + over) / 2
    return lasts_s * over * over / (over - under) / 2


def total(course: Course, base_c: float) -> float:
    """Kelvin-seconds above the base over the whole course; what lies below the base adds nothing."""
    return math.fsum(above(leg, base_c) for leg in course.legs)


def reached_at(course: Course, base_c: float, sum_ks: float) -> float | None:
    """The second at which the sum is reached; None where the course ends before. sum_ks: more than 0."""
    so_far = 0.0
    for leg in course.legs:
        here = above(leg, base_c)
        if so_far + here >= sum_ks:
            return _within(leg, base_c, sum_ks - so_far)
        so_far += here
    return None


def _within(leg: Leg, base_c: float, wanted_ks: float) -> float:
    """When the stretch has added that much: the sum never falls."""
    return begins(lambda at_s: above(leg.until(at_s), base_c) >= wanted_ks, leg.start_s, leg.end_s)


def used_up(sum_ks: float, limit_ks: float) -> bool:
    """ "Fewer than" is strict: the limit itself is too much."""
    return sum_ks >= limit_ks * (1 - LEFT_OVER)


def constant(temperature_c: float, lasts_s: float) -> Course:
    """temperature_c: −60 to 150. lasts_s: 0 or more. Raises OutOfRange on either."""
    return stepped([(temperature_c, lasts_s)])


def stepped(steps: Sequence[tuple[float, float]]) -> Course:
    """Temperatures, each with the seconds it was held. Raises OutOfRange on "temperature_c" or "lasts_s"."""
    legs: list[Leg] = []
    start_s = 0.0
    for temperature_c, lasts_s in steps:
        if not -60 <= temperature_c <= 150:
            raise OutOfRange("temperature_c", "The temperature must be between −60 and 150 °C (−76 and 302 °F).")
        if not 0 <= lasts_s < math.inf:
            raise OutOfRange("lasts_s", "The time cannot be less than nothing.")
        legs.append(Leg(start_s, start_s + lasts_s, temperature_c, temperature_c))
        start_s += lasts_s
    return Course(tuple(legs))


def figure(course: Course, rule: Rule, name: Message = "Degree-hours", key: str = "degree_hours") -> Figure:
    """The sum with its working, one line a stretch; a long log is one line."""
    base = Amount(rule.base_c, TEMPERATURE)
    sum_ks = total(course, rule.base_c)
    summed = Amount(sum_ks, DEGREE_HOURS)
    lines = [_line(leg, rule.base_c) for leg in course.legs if leg.end_s - leg.start_s >= SHORTEST_TOLD_S]
    if len(lines) > MOST_STEPS_SHOWN:
        lines = [
            Sentence(
                "{count} stretches between readings, each its mean temperature above {base} × its time",
                {"count": Amount(len(lines), COUNT), "base": base},
            )
        ]
    return Figure(key, name, sum_ks, DEGREE_HOURS, (*lines, Sentence("Together: {sum}", {"sum": summed})), rule.source)


def _line(leg: Leg, base_c: float) -> Sentence:
    amounts = {
        "time": Amount(leg.end_s - leg.start_s, HOURS),
        "base": Amount(base_c, TEMPERATURE),
        "first": Amount(leg.start_c, TEMPERATURE),
        "last": Amount(leg.end_c, TEMPERATURE),
        "sum": Amount(above(leg, base_c), DEGREE_HOURS),
    }
    if max(leg.start_c, leg.end_c) <= base_c:
        return Sentence("{time} from {first} to {last}, not above {base}: {sum}", amounts)
    if leg.start_c == leg.end_c:
        return Sentence("({first} − {base}) × {time} = {sum}", amounts)
    if min(leg.start_c, leg.end_c) >= base_c:
        return Sentence("((({first} + {last}) ÷ 2) − {base}) × {time} = {sum}", amounts)
    return Sentence("{time} from {first} to {last}, of which only what is above {base} counts: {sum}", amounts)


def limit_figure(rule: Rule, highest_c: float | None) -> Figure:
    """highest_c None: not known, so the strictest limit holds."""
    limit_ks = rule.strictest.limit_ks if highest_c is None else rule.limit_ks(highest_c)
    words = rule.strictest_words() if highest_c is None else rule.words(highest_c)
    return Figure("limit", "Fewer than", limit_ks, DEGREE_HOURS, (words,), rule.source)
