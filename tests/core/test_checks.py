"""Corrections and judgements that all instruments share."""

import json
import math
from datetime import UTC, datetime, timedelta

import pytest
from attrs import asdict

from core.chamber.checks import Correction, Point, cannot_tell, is_old, judge, say, through_one, through_two
from core.quantities import METRIC, TEMPERATURE_DIFFERENCE, US, Amount
from core.refusals import OutOfRange

CHECKED = datetime(2031, 3, 1, 8, tzinfo=UTC)
MONTH = timedelta(days=30)


def test_one_point_adds_the_same_to_every_reading():
    assert through_one(Point(0.4, 0.0)).apply(12.0) == pytest.approx(11.6)


def test_a_correction_never_puts_a_humidity_above_100_per_cent():
    assert through_one(Point(0.70, 0.75)).within(0.0, 1.0).apply(0.99) == 1.0


def test_a_correction_never_puts_a_humidity_below_nothing():
    assert through_one(Point(0.80, 0.75)).within(0.0, 1.0).apply(0.02) == 0.0


def test_two_points_in_either_order_make_one_line():
    low, high = Point(78.0, 75.47, 0.2), Point(86.4, 85.11, 0.3)
    assert through_two(low, high) == through_two(high, low)


def test_each_point_keeps_its_own_uncertainty():
    line = through_two(Point(78.0, 75.47, 0.2), Point(86.4, 85.11, 0.3))
    assert (line.uncertainty_at(78.0), line.uncertainty_at(86.4)) == pytest.approx((0.2, 0.3))


def test_beyond_its_points_a_line_is_less_sure():
    line = through_two(Point(75.0, 75.0, 0.5), Point(85.0, 85.0, 0.5))
    assert line.uncertainty_at(60.0) > 2 * line.uncertainty_at(85.0)


def test_one_point_is_as_unsure_everywhere():
    assert through_one(Point(0.78, 0.755, 0.01)).uncertainty_at(0.3) == 0.01


@pytest.mark.parametrize("points", [(Point(5, 1), Point(5, 2)), (Point(5, 1), Point(6, 1))])
def test_a_line_needs_two_points(points):
    with pytest.raises(OutOfRange):
        through_two(*points)


@pytest.mark.parametrize(
    "correction",
    [Correction(-0.4), through_one(Point(0.79, 0.757, 0.01)).within(0, 1), through_two(Point(1, 2, 3), Point(4, 5, 6))],
)
def test_a_correction_survives_json(correction: Correction):
    assert Correction(**json.loads(json.dumps(asdict(correction), allow_nan=False))) == correction


@pytest.mark.parametrize(
    "broken", [{"offset": math.nan}, {"offset": 0.0, "gain": 0.0}, {"offset": 0, "uncertainty": -1}]
)
def test_a_correction_that_is_none_cannot_be_made(broken):
    with pytest.raises(ValueError):
        Correction(**broken)


@pytest.mark.parametrize(
    ("error", "word"),
    [(0.0, "accept"), (1.0, "accept"), (-1.0, "accept"), (1.01, "adjust"), (-3.0, "adjust"), (3.1, "replace")],
)
def test_an_error_is_judged_by_its_size(error: float, word: str):
    assert judge(error, 1.0) == word


def test_a_check_as_old_as_its_interval_still_holds():
    assert not is_old(CHECKED, CHECKED + MONTH, MONTH)


def test_a_check_older_than_its_interval_is_old():
    assert is_old(CHECKED, CHECKED + MONTH + timedelta(seconds=1), MONTH)


@pytest.mark.parametrize(
    ("error", "word"),
    [
        (1 + 0.995e-9, "accept"), (1 + 1.005e-9, "adjust"), (3 * (1 + 0.995e-9), "adjust"), (-3.0, "adjust"),
        (3 * (1 + 1.005e-9), "replace"), (-3.001, "replace"),
    ],
)  # fmt: skip
def test_one_part_in_a_thousand_million_over_a_bound_is_the_bound(error: float, word: str):
    assert judge(error, 1.0) == word


def test_the_line_through_two_points():
    line = through_two(Point(10.0, 12.0), Point(20.0, 32.0))
    assert (line.gain, line.offset, line.apply(15.0)) == (2.0, -8.0, 22.0)


@pytest.mark.parametrize(
    ("reading", "uncertainty"),
    [(80.0, math.hypot(0.15, 0.2)), (60.0, math.hypot(0.75, 0.6)), (95.0, math.hypot(0.3, 0.8))],
)
def test_how_sure_a_line_is_about_its_points(reading: float, uncertainty: float):
    """0.3 at 75 and 0.4 at 85, each in its share."""
    line = through_two(Point(75.0, 75.0, 0.3), Point(85.0, 85.0, 0.4))
    assert line.uncertainty_at(reading) == pytest.approx(uncertainty)


@pytest.mark.parametrize(
    "known",
    [
        {"high_reading": 3.0, "high_uncertainty": 1.0},
        {"low_reading": 1.0, "high_uncertainty": 1.0},
        {"low_reading": 1.0, "high_reading": 3.0},
    ],
)
def test_with_less_than_both_points_the_first_holds_everywhere(known: dict[str, float]):
    assert Correction(0.0, uncertainty=0.2, **known).uncertainty_at(9.0) == 0.2


def test_one_end_of_the_world_may_be_known_alone():
    assert [Correction(0.0, least=0.0).apply(reading) for reading in (-1.0, 2.0)] == [0.0, 2.0]
    assert [Correction(0.0, most=1.0).apply(reading) for reading in (-1.0, 2.0)] == [-1.0, 1.0]


@pytest.mark.parametrize(
    "broken",
    [
        {"offset": math.inf}, {"gain": math.inf}, {"gain": math.nan}, {"uncertainty": -1e-9}, {"uncertainty": math.nan},
        {"low_reading": math.nan}, {"high_reading": math.inf}, {"high_uncertainty": -1e-9}, {"least": math.nan},
        {"most": math.inf},
    ],
)  # fmt: skip
def test_every_part_of_a_correction_is_a_number(broken: dict[str, float]):
    with pytest.raises(ValueError):
        Correction(**{"offset": 0.0, **broken})


def test_a_check_less_sure_than_its_tolerance_says_so():
    tolerance = Amount(0.5, TEMPERATURE_DIFFERENCE)
    assert cannot_tell(0.5, tolerance) == ()
    assert "itself uncertain by 0.5 K" in cannot_tell(0.501, tolerance)[0].say(METRIC)
    assert "itself uncertain by 0.9 °F" in cannot_tell(0.501, tolerance)[0].say(US)


def test_each_word_has_its_sentence():
    tolerance = Amount(0.5, TEMPERATURE_DIFFERENCE)
    said = [say(word, tolerance).say(METRIC) for word in ("accept", "adjust", "replace")]
    assert [each.partition(":")[0].lower() for each in said] == ["accept", "adjust", "replace"]


def test_a_point_is_sure_unless_it_says_otherwise():
    assert through_one(Point(12.4, 12.0)).uncertainty_at(12.0) == 0.0
