"""Degree-hours against every worked example and table in print, and against the arithmetic of the limits."""

from itertools import pairwise

import pytest

from core.ferment.course import Course, Leg
from core.ferment.deadline import hours_left
from core.ferment.degree_hours import stepped, total, used_up
from core.ferment.rules import RULES
from core.units import CELSIUS, CELSIUS_HOUR, FAHRENHEIT, FAHRENHEIT_HOUR
from tests.published.rows import Row, rows

SCALES = {"F": (FAHRENHEIT, FAHRENHEIT_HOUR), "C": (CELSIUS, CELSIUS_HOUR)}


def _course(row: Row) -> Course:
    scale, _ = SCALES[row.inputs["unit"]]
    if "steps" in row.inputs:
        return stepped([(scale.to_si(warm), hours * 3600) for warm, hours in row.inputs["steps"]])
    points = [(hours * 3600, scale.to_si(warm)) for hours, warm in row.inputs["points"]]
    return Course(tuple(Leg(a, b, from_c, to_c) for (a, from_c), (b, to_c) in pairwise(points)))


def _computed(row: Row) -> float:
    rule = RULES[row.inputs["rule"]]
    scale, summed = SCALES[row.inputs["unit"]]
    match row.quantity:
        case "degree_hours":
            return summed.from_si(total(_course(row), rule.base_c))
        case "passes":
            course = _course(row)
            return float(not used_up(total(course, rule.base_c), rule.limit_ks(course.highest_c)))
        case "limit":
            return summed.from_si(rule.limit_ks(scale.to_si(row.inputs["highest"])))
        case "most_hours":
            warm_c = scale.to_si(row.inputs["temperature"])
            left = hours_left(0.0, rule.limit_ks(warm_c), warm_c, rule)
            assert left is not None
            return left.value / 3600
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("fermenting"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance
