"""How warm it was where nobody looked: joined, counted at the warmer, or not known. A row on each side of each span."""

import pytest
from attrs import evolve

from core.ferment.course import JOINED_S, NO_EVIDENCE_S, Course, Leg, course
from core.ferment.judging import Fermentation, judge
from core.quantities import METRIC
from tests.core.fermenting import H, acids, every_12_h, kept, warm

A_HAIR_H = 1e-4


def unknown(temperatures, until_h: float, planned_c: float | None = None) -> list[str]:
    return [each.say(METRIC) for each in course(temperatures, until_h * H, planned_c).unknown]


def test_the_spans_are_half_a_day_and_half_an_hour_and_a_day_and_a_half():
    assert (JOINED_S / H, NO_EVIDENCE_S / H) == (12.5, 36)


@pytest.mark.parametrize(("gap_h", "mean_c"), [(12.5, 23.0), (12.5 + A_HAIR_H, 26.0)])
def test_readings_are_joined_over_twelve_hours_and_a_half_and_no_longer(gap_h: float, mean_c: float):
    assert kept(warm((0, 20), (gap_h, 26)), gap_h) == pytest.approx(gap_h * (mean_c - 15.6), rel=1e-6)


@pytest.mark.parametrize(("gap_h", "known"), [(36.0, True), (36 + A_HAIR_H, False)])
def test_a_day_and_a_half_between_two_readings_is_the_most(gap_h: float, known: bool):
    assert (unknown(warm((1, 20), (1 + gap_h, 20)), 1 + gap_h) == []) is known


@pytest.mark.parametrize(("gap_h", "known"), [(12.5, True), (12.5 + A_HAIR_H, False)])
def test_half_a_day_before_the_first_reading_is_the_most(gap_h: float, known: bool):
    assert (unknown(warm((gap_h, 20)), gap_h) == []) is known


@pytest.mark.parametrize(("gap_h", "known"), [(12.5, True), (12.5 + A_HAIR_H, False)])
def test_half_a_day_after_the_last_reading_is_the_most(gap_h: float, known: bool):
    assert (unknown(warm((1, 20)), 1 + gap_h) == []) is known


def test_what_is_not_known_is_said_with_its_hours():
    assert unknown(warm((13, 20), (50, 20)), 63) == [
        "13 h without a temperature before the first reading; more than 12 h 30 min is no evidence.",
        "37 h without a temperature between two readings; more than 36 h is no evidence.",
        "13 h without a temperature after the last reading; more than 12 h 30 min is no evidence.",
    ]


def test_a_first_reading_long_after_the_acid_does_not_tell_what_came_before():
    assert unknown(warm((40, 20)), 10) != []


def test_what_was_read_only_before_the_start_tells_nothing_of_what_followed():
    assert unknown(warm((-2, 4)), 5) == ["No temperature was read after the start."]


@pytest.mark.parametrize(("planned_c", "taken_c"), [(35.0, 35.0), (20.0, 24.0), (None, 24.0)])
def test_before_the_first_reading_the_warmer_of_it_and_the_plan_counts(planned_c: float | None, taken_c: float):
    assert kept(warm((12, 24)), 12, planned_c=planned_c) == pytest.approx(12 * (taken_c - 15.6))


@pytest.mark.parametrize(("planned_c", "taken_c"), [(35.0, 35.0), (20.0, 24.0), (None, 24.0)])
def test_after_the_last_reading_the_warmer_of_it_and_the_plan_counts(planned_c: float | None, taken_c: float):
    assert kept(warm((0, 24)), 12, planned_c=planned_c) == pytest.approx(12 * (taken_c - 15.6))


def test_between_two_readings_the_plan_says_nothing():
    assert kept(warm((0, 24), (30, 24)), 30, planned_c=35) == pytest.approx(30 * 8.4)


def test_a_plan_warmer_than_the_readings_draws_the_limit_where_it_counts():
    assert course(warm((12, 24)), 12 * H, 35.0).highest_c == 35


def test_that_the_plan_counts_is_said():
    said = [each.say(METRIC, 4) for each in course(warm((6, 24)), 12 * H, 35.0).assumed]
    assert said == [
        "From the start to the first reading, 6 h, it is taken to have been 35 °C, as planned.",
        "After the last reading, 6 h, it is taken to have been 35 °C, as planned.",
    ]


def test_from_a_reading_before_the_start_no_line_is_drawn_into_the_time_after_it():
    """The meat came into a chamber that was at 24 °C already; the 4 °C were those of the room it came from."""
    assert kept(warm((-1, 4), (11, 24)), 11) == pytest.approx(11 * 8.4)


@pytest.mark.parametrize("before_h", [-12.0, -13.0])
def test_a_warm_reading_before_the_start_counts_up_to_the_next(before_h: float):
    assert kept(warm((before_h, 24), (0.5, 20)), 0.5) == pytest.approx(0.5 * 8.4)


def test_a_reading_at_the_start_itself_is_joined():
    assert kept(warm((0, 20), (10, 26)), 10) == pytest.approx(10 * 7.4)


@pytest.mark.parametrize("order", [1, -1])
def test_of_two_readings_at_one_moment_only_the_warmer_counts(order: int):
    """The colder draws no line down to it either."""
    assert kept(warm((0, 26), (10, 26), (10, 20), (20, 26))[::order], 20) == pytest.approx(20 * 10.4)


def test_a_core_that_was_read_through_makes_up_for_a_chamber_that_was_not():
    both = (*warm((0, 20), (40, 20)), *every_12_h(48, 18, "core"))
    assert unknown(both, 48) == []
    assert kept(both, 48) == pytest.approx(48 * 4.4)


def test_the_place_with_the_shorter_gaps_tells_what_is_assumed():
    both = (*warm((0, 20), (30, 20), (36, 20)), *every_12_h(36, 18, "core"))
    said = [each.say(METRIC) for each in course(both, 36 * H).assumed]
    assert said == [
        "Chamber and core were both read: at each moment the warmer counts, each taken to stay as it was last read."
    ]


def test_without_any_reading_the_plan_is_taken_and_nothing_is_known():
    walked = course((), 10 * H, 24.0)
    assert [each.say(METRIC, 4) for each in walked.assumed] == ["No temperature was read: the planned 24 °C is taken."]
    assert [each.text for each in walked.unknown] == ["No temperature was read."]
    assert kept((), 10, planned_c=24.0) == pytest.approx(84)


def test_without_a_reading_and_a_plan_there_is_no_course():
    walked = course((), 10 * H)
    assert (walked.legs, [each.text for each in walked.unknown]) == ((), ["No temperature was read."])


def test_nothing_lies_before_the_start():
    assert course(warm((-2, 20)), 0.0) == course((), 0.0)


SOUR = acids((0, 5.8), (15, 5.5), (30, 5.2))


def test_a_plan_and_one_reading_half_an_hour_after_the_start_are_no_evidence():
    one = Fermentation("us", SOUR, warm((0.5, 24)), planned_c=24.0)
    assert judge(one, 40 * H).word == "unknown"


def test_read_until_it_is_sour_it_passes():
    through = Fermentation("us", SOUR, every_12_h(24), planned_c=24.0)
    assert judge(through, 40 * H).word == "passed"


def test_a_first_temperature_at_noon_of_a_plan_of_35_degrees_is_no_mild_morning():
    """12 h at 35 °C are 233 °C·h; counted at the 24 °C that were read they would be 101."""
    late = Fermentation("us", SOUR, warm((12, 24), (24, 24)), planned_c=35.0)
    judged = judge(late, 24 * H)
    assert judged.outcome.sum_ks == pytest.approx((12 * (35 - 140 / 9) + 12 * (24 - 140 / 9)) * H)
    assert judged.limit is not None
    assert judged.limit.value == pytest.approx(1000 * 2000)
    assert judge(evolve(late, planned_c=None), 24 * H).outcome.sum_ks == pytest.approx(24 * (24 - 140 / 9) * H)


def test_at_its_ends_a_stretch_is_what_was_read_there_to_the_last_digit():
    """15.1 + (31.2 − 15.1) is 31.200000000000003 in floating point."""
    assert [Leg(5, 10, 15.1, 31.2).at(moment_s) for moment_s in (4, 5, 10, 11)] == [15.1, 15.1, 31.2, 31.2]
    assert Leg(5, 5, 20, 22).at(5) == 20


def test_a_course_until_the_beginning_of_a_stretch_holds_nothing_of_it():
    walked = Course((Leg(0, 10, 20, 20), Leg(10, 20, 30, 30)))
    assert walked.until(10) == Course((Leg(0, 10, 20, 20),))
    assert walked.until(10.1).highest_c == 30


def test_the_present_temperature_is_that_of_the_last_stretch():
    walked = Course((Leg(0, 10, 20, 30), Leg(10, 20, 30, 24)))
    assert (walked.last_c, walked.highest_c) == (24, 30)


def test_half_a_second_after_the_start_there_is_a_course():
    assert course(warm((0, 20)), 0.5).legs == (Leg(0.0, 0.5, 20, 20),)


def test_what_was_planned_is_taken_from_the_start_on():
    assert course((), 10 * H, 24.0).legs == (Leg(0.0, 10 * H, 24.0, 24.0),)


def test_a_hot_reading_before_one_at_the_start_itself_draws_no_limit():
    assert course(warm((-2, 40), (0, 20), (5, 20)), 5 * H).highest_c == 20


def test_read_alike_it_is_told_of_the_chamber():
    both = (*warm((0, 20), (10, 21)), *warm((0, 18), (10, 19), place="core"))
    assert next(each.say(METRIC, 4) for each in course(both, 12 * H).assumed) == (
        "After the last reading, 2 h, it is taken to have been 21 °C."
    )


def test_a_shorter_gap_counts_however_late_it_lies():
    both = (*warm((0, 20), (30, 20), (42, 20)), *warm((0, 18), (12, 18), (24, 18), (36, 18), (47, 18), place="core"))
    assert [each.say(METRIC, 4) for each in course(both, 48 * H).assumed][:-1] == [
        "After the last reading, 1 h, it is taken to have been 18 °C."
    ]


def test_a_reading_half_a_second_after_the_start_ends_the_first_stretch():
    legs = course(warm((-1, 20), (0.5 / H, 24), (5, 24)), 5 * H).legs
    assert legs == (Leg(0.0, 0.5, 24, 24), Leg(0.5, 5 * H, 24, 24))


@pytest.mark.parametrize(("at_h", "known"), [(-A_HAIR_H, False), (0.0, True), (A_HAIR_H, True)])
def test_one_reading_at_the_start_itself_is_one_after_it(at_h: float, known: bool):
    assert (unknown(warm((at_h, 20)), 5) == []) is known


def test_what_follows_a_reading_at_the_end_tells_nothing_of_the_course():
    walked = course(warm((0, 20), (5, 20), (50, 40)), 5 * H)
    assert (walked.highest_c, walked.assumed, walked.unknown) == (20, (), ())


def test_a_hair_before_the_start_a_reading_is_one_before_it():
    assert kept(warm((-A_HAIR_H, 4), (5, 24)), 5) == pytest.approx(5 * 8.4)


@pytest.mark.parametrize(("warmer", "colder"), [("chamber", "core"), ("core", "chamber")])
def test_beside_a_place_that_stays_cold_the_other_one_keeps_its_own_course(warmer, colder):
    own = warm((0, 20), (10, 30), (20, 18), place=warmer)
    assert course((*own, *warm((0, 4), (10, 4), (20, 4), place=colder)), 20 * H).legs == course(own, 20 * H).legs
