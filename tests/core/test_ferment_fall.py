"""When the pH came down for good: a low reading that others contradict shows nothing until it is measured again."""

import pytest
from attrs import evolve

from core.ferment.crossing import FARTHEST_S, fall, projection
from core.ferment.judging import Fermentation, judge
from core.ferment.outcome import Deviation, reason
from core.meat import ACID_PH
from core.quantities import METRIC
from tests.core.fermenting import H, acids, every_12_h

A_HAIR_H = 1e-4
DAY_14_H = 336.0


def by_h(*pairs: tuple[float, float]) -> float | None:
    """Hours to the reading that shows it."""
    found = fall(acids(*pairs)).crossing
    return None if found is None else found.by_s / H


def test_at_5_3_itself_it_is_there():
    assert ACID_PH == 5.3
    assert by_h((0, 5.8), (10, 5.3)) == 10
    assert by_h((0, 5.8), (10, 5.301)) is None


@pytest.mark.parametrize(("ph", "counts"), [(3.5, True), (3.499, False)])
def test_a_ph_below_three_and_a_half_is_the_meters(ph: float, counts: bool):
    assert (by_h((0, 5.8), (10, ph)) is not None) is counts


@pytest.mark.parametrize(("ph", "counts"), [(8.0, True), (8.001, False)])
def test_a_ph_above_eight_is_the_meters_and_contradicts_nothing(ph: float, counts: bool):
    assert (fall(acids((10, 5.2), (20, ph))).contradiction is not None) is counts


def test_a_low_ph_that_the_next_one_contradicts_shows_nothing():
    assert by_h((0, 5.8), (12, 5.2), (24, 5.6)) is None


def test_nor_does_one_more_low_reading():
    assert by_h((0, 5.8), (12, 5.2), (24, 5.6), (36, 5.1)) is None


def test_two_low_readings_that_follow_each_other_settle_it():
    assert by_h((0, 5.8), (12, 5.2), (24, 5.6), (36, 5.1), (37, 5.2)) == 36


def test_the_crossing_then_lies_after_what_contradicted():
    found = fall(acids((0, 5.8), (12, 5.2), (24, 5.6), (36, 5.0), (37, 5.2))).crossing
    assert found is not None
    assert (found.after_s, found.at_s) == pytest.approx((24 * H, 30 * H))  # type: ignore[comparison-overlap]


def test_two_low_readings_before_and_two_soon_after_outvote_a_single_high_one():
    assert by_h((0, 5.8), (12, 5.2), (24, 5.1), (200, 5.7), (201, 4.9), (202, 4.9)) == 12


@pytest.mark.parametrize(("soon_h", "shown"), [(12.0, 12.0), (12 + A_HAIR_H, 200 + 1)])
def test_measured_again_within_half_a_day(soon_h: float, shown: float):
    assert by_h((0, 5.8), (12, 5.2), (24, 5.1), (200, 5.7), (201, 4.9), (200 + soon_h, 4.9)) == pytest.approx(shown)


@pytest.mark.parametrize(
    "pairs",
    [
        ((0, 5.8), (12, 5.2), (200, 5.7), (201, 4.9), (202, 4.9)),
        ((0, 5.8), (12, 5.2), (24, 5.1), (200, 5.7), (200.5, 5.7), (201, 4.9), (202, 4.9)),
        ((12, 5.2), (24, 5.4), (200, 5.7), (201, 4.9), (202, 4.9)),
    ],
    ids=["one before", "two high", "high before"],
)
def test_fewer_outvote_nothing(pairs):
    assert by_h(*pairs) == 201


@pytest.mark.parametrize(
    "pairs",
    [
        ((12, 5.2), (24, 5.1), (200, 5.7), (201, 4.9), (202, 4.9)),
        ((2, 5.2), (12, 5.2), (24, 5.1), (200, 5.7), (201, 4.9), (202, 4.9), (203, 4.9)),
        ((12, 5.3), (24, 5.3), (200, 5.7), (201, 5.3), (202, 5.3)),
    ],
    ids=["two and two", "three and three", "all at 5.3 itself"],
)
def test_two_of_each_are_enough_and_more_take_nothing_back(pairs):
    assert by_h(*pairs) == pairs[0][0]


def test_one_after_outvotes_nothing():
    assert by_h((0, 5.8), (12, 5.2), (24, 5.1), (200, 5.7), (201, 4.9)) is None
    assert by_h((0, 5.8), (12, 5.2), (24, 5.1), (200, 5.7), (201, 4.9), (202, 5.4)) is None


@pytest.mark.parametrize(("hours", "explained"), [(DAY_14_H, True), (DAY_14_H - A_HAIR_H, False)])
def test_from_day_14_on_mould_and_time_raise_it(hours: float, explained: bool):
    """Fell until day 14, had risen by day 20: KOSFA 36(3):300, table 2."""
    assert (by_h((0, 5.8), (36, 5.2), (hours, 5.6)) == 36) is explained


@pytest.mark.parametrize(("apart_h", "explained"), [(48.0, False), (48 + A_HAIR_H, True)])
def test_within_two_days_of_the_first_low_reading_nothing_raises_it(apart_h: float, explained: bool):
    assert (by_h((0, 5.8), (400, 5.2), (400 + apart_h, 5.6)) == 400) is explained


def test_a_published_course_is_no_contradiction():
    """Day 0 5.72, day 7 5.01, day 14 4.60, day 20 4.97: KOSFA 36(3):300, table 2. So is a mouldy 5.6 on day 24."""
    course = ((0, 5.72), (7 * 24, 5.01), (14 * 24, 4.60), (20 * 24, 4.97), (24 * 24, 5.6))
    found = fall(acids(*course))
    assert found.crossing is not None
    assert (found.crossing.by_s, found.contradiction) == (7 * 24 * H, None)


def test_one_low_reading_after_a_contradiction_is_not_confirmed_by_a_rise_that_time_explains():
    found = fall(acids((10, 5.2), (20, 5.6), (30, 5.2), (400, 5.6)))
    assert found.crossing is None
    assert found.contradiction is not None
    assert found.contradiction.again is None


def test_of_two_at_one_moment_the_higher_contradicts():
    assert by_h((0, 5.8), (10, 5.6), (10, 5.2)) is None


def test_the_first_contradiction_is_the_one_that_is_told():
    found = fall(acids((10, 5.2), (11, 5.1), (20, 5.6), (30, 5.2), (40, 5.7))).contradiction
    assert found is not None
    assert (found.low, found.high) == acids((10, 5.2), (20, 5.6))
    assert (found.again, found.outweighed) == (None, False)


@pytest.mark.parametrize(
    ("more", "outweighed"), [((), False), (((21, 5.6),), True), (((21, 5.301),), True), (((21, 5.3),), False)]
)
def test_two_high_readings_outweigh_a_low_one(more, outweighed: bool):
    found = fall(acids((10, 5.2), (20, 5.6), *more)).contradiction
    assert found is not None
    assert found.outweighed is outweighed


def test_without_contradiction_there_is_none():
    assert fall(acids((0, 5.8), (10, 5.2), (20, 5.1))).contradiction is None
    assert fall(()).contradiction is None


ISSUE = Fermentation("us", acids((0, 5.8), (10, 5.2), (59, 5.7)), every_12_h(108, 30.0))
"""At 30 °C the limit is reached after 46 h: sour at 10 h it was in time, not sour at 59 h it was not."""


def test_contradicted_it_is_held_until_it_is_measured_again():
    why = reason(judge(ISSUE, 60 * H).outcome)
    assert judge(ISSUE, 60 * H).word == "unknown"
    assert why.met is None
    assert why.text.say(METRIC) == (
        "Its degree-hours to pH 5.3 are not known. pH 5.2 after 10 h was contradicted by pH 5.7 after 59 h: neither "
        "counts until the pH is measured again."
    )
    assert why.settle.say(METRIC).startswith("Hold it, and measure the pH again now, in the middle of a piece")
    assert "at 5.3 or below settle it" in why.settle.say(METRIC)


def test_what_two_high_readings_unsay_does_not_count_and_the_limit_was_missed():
    twice = evolve(ISSUE, phs=(*ISSUE.phs, *acids((100, 5.8))))
    judged = judge(twice, 100 * H)
    assert judged.word == "over"
    assert (
        reason(judged.outcome)
        .text.say(METRIC, 4)
        .endswith("pH 5.2 after 10 h was contradicted by pH 5.7 after 59 h and by what followed: it does not count.")
    )


def test_low_once_more_it_is_still_not_confirmed():
    again = evolve(ISSUE, phs=(*ISSUE.phs, *acids((60, 5.1))))
    judged = judge(again, 60 * H)
    assert (judged.word, judged.measure_again) == ("unknown", True)
    assert "; pH 5.1 after 60 h is not confirmed yet." in reason(judged.outcome).text.say(METRIC)


def test_confirmed_after_the_limit_it_is_not_shown_whether_it_was_in_time():
    confirmed = evolve(ISSUE, phs=(*ISSUE.phs, *acids((60, 5.1), (61, 5.1))))
    judged = judge(confirmed, 61 * H)
    assert (judged.word, judged.measure_again) == ("not shown", False)
    assert "it does not count." in reason(judged.outcome).text.say(METRIC)


def test_contradicted_after_the_limit_it_was_over_either_way():
    late = evolve(ISSUE, phs=acids((0, 5.8), (50, 5.2), (59, 5.7)))
    assert judge(late, 60 * H).word == "over"
    assert judge(evolve(late, phs=(*late.phs, *acids((60, 5.1), (61, 5.1)))), 61 * H).word == "over"


def test_outweighed_and_then_sour_after_the_limit_it_is_over():
    phs = acids((0, 5.8), (10, 5.2), (20, 5.7), (21, 5.7), (60, 5.7), (61, 5.1), (62, 5.1))
    assert judge(evolve(ISSUE, phs=phs), 62 * H).word == "over"
    assert judge(evolve(ISSUE, phs=phs[:6]), 62 * H).word == "over"


def test_confirmed_in_time_it_passes_and_says_what_does_not_count():
    quick = evolve(ISSUE, phs=acids((0, 5.8), (10, 5.2), (11, 5.7), (12, 5.1), (13, 5.1)))
    judged = judge(quick, 20 * H)
    assert judged.word == "passed"
    assert (
        judged.assumed[0].say(METRIC) == "pH 5.2 after 10 h was contradicted by pH 5.7 after 11 h: it does not count."
    )
    assert reason(judged.outcome).text.say(METRIC, 4).endswith("fewer than the limit of 666.7 °C·h.")


def test_outweighed_and_low_once_more_in_time_it_is_still_to_be_confirmed():
    phs = acids((0, 5.8), (10, 5.2), (20, 5.7), (21, 5.7), (30, 5.1))
    judged = judge(evolve(ISSUE, phs=phs), 31 * H)
    assert (judged.word, judged.measure_again) == ("unknown", True)
    assert "and by what followed; pH 5.1 after 30 h is not confirmed yet." in reason(judged.outcome).text.say(METRIC)


def test_a_reading_before_the_start_is_told_as_one():
    early = evolve(ISSUE, phs=acids((-2, 5.2), (3, 5.7)))
    assert "pH 5.2 2 h before the start was contradicted by pH 5.7 after 3 h" in reason(
        judge(early, 4 * H).outcome
    ).text.say(METRIC)


def test_contradicted_it_is_not_known_without_a_temperature_either():
    bare = evolve(ISSUE, temperatures=())
    judged = judge(bare, 60 * H)
    assert (judged.word, judged.measure_again, judged.crossing) == ("unknown", True, None)
    assert "was contradicted by" in reason(judged.outcome).text.say(METRIC)


TESTED = Deviation(kept=True, result="clean")


@pytest.mark.parametrize(("decided_h", "stands"), [(59.0, True), (59 - A_HAIR_H, False)])
def test_a_decision_from_before_the_contradiction_is_about_something_else(decided_h: float, stands: bool):
    decided = evolve(ISSUE, deviation=TESTED, decided_s=decided_h * H)
    assert (judge(decided, 60 * H).outcome.deviation is not None) is stands


@pytest.mark.parametrize(("decided_h", "stands"), [(47.0, True), (46.0, False)])
def test_once_a_low_reading_is_outweighed_a_decision_is_about_the_limit(decided_h: float, stands: bool):
    """666.7 °C·h at 14.44 °C above the base: 46.15 h. The readings that speak against each other end at 100 h."""
    twice = evolve(ISSUE, phs=(*ISSUE.phs, *acids((100, 5.8))), deviation=TESTED, decided_s=decided_h * H)
    assert (judge(twice, 100 * H).outcome.deviation is not None) is stands


@pytest.mark.parametrize("temperatures", [(), every_12_h(0, 20)], ids=["never read", "once"])
@pytest.mark.parametrize(("decided_h", "stands"), [(30.0, True), (30 - A_HAIR_H, False)])
def test_a_decision_from_before_it_was_sour_is_none_about_hours_nobody_saw(
    temperatures, decided_h: float, stands: bool
):
    unseen = Fermentation("us", acids((0, 5.8), (30, 5.2)), temperatures, deviation=TESTED, decided_s=decided_h * H)
    judged = judge(unseen, 40 * H)
    assert judged.word == "unknown"
    assert (judged.outcome.deviation is not None) is stands


def test_three_readings_on_a_line_project_its_crossing():
    """Slope −0.02 an hour, mean 10 h at 5.7, spread 200 h²; twice 0.05 about it: (0.4 − 0.02 x)² = 0.01 (1/3 + x²/200).

    With x in hours from the mean: 0.00035 x² − 0.016 x + 0.156667 = 0, solved by hand: x = 14.2067 and 31.5076.
    """
    ahead = projection(acids((0, 5.9), (10, 5.7), (20, 5.5)))
    assert ahead is not None
    assert ahead.latest_s is not None
    assert (ahead.earliest_s / H, ahead.at_s / H, ahead.latest_s / H) == pytest.approx((24.2067, 30, 41.5076), abs=2e-4)
    assert ahead.readings == 3


def test_readings_that_scatter_more_than_a_meter_project_by_their_own_scatter():
    """5.9, 5.6, 5.5 at 0, 10, 20 h: slope −0.02, mean 5.66667; left over 0.03333, −0.06667, 0.03333, so the error is
    2 × √0.0066667 = 0.163299. (0.366667 − 0.02 x)² = 0.0266667 (1/3 + x²/200): 0.000266667 x² − 0.0146667 x + 0.125556
    = 0, x = 10.6057 and 44.3943."""
    ahead = projection(acids((0, 5.9), (10, 5.6), (20, 5.5)))
    assert ahead is not None
    assert ahead.latest_s is not None
    assert (ahead.earliest_s / H, ahead.at_s / H, ahead.latest_s / H) == pytest.approx(
        (20.6057, 28.3333, 54.3943), abs=2e-4
    )


def test_four_that_scatter_are_held_against_two_degrees_of_freedom():
    """6.0, 5.7, 5.8, 5.5 at 0, 10, 20, 30 h: slope −0.014, mean 5.75; left over 0.04, −0.12, 0.12, −0.04, so the error
    is 2 × √(0.032 ÷ 2) = 0.252982. (0.45 − 0.014 x)² = 0.064 (1/4 + x²/500): 0.000068 x² − 0.0126 x + 0.1865 = 0,
    x = 16.2219 and 169.072."""
    ahead = projection(acids((0, 6.0), (10, 5.7), (20, 5.8), (30, 5.5)))
    assert ahead is not None
    assert ahead.latest_s is not None
    assert (ahead.earliest_s / H, ahead.at_s / H, ahead.latest_s / H) == pytest.approx(
        (31.2219, 47.142857, 184.072), abs=2e-3
    )


def test_where_the_band_holds_the_target_from_the_last_reading_on_it_may_come_at_once():
    """5.8, 5.31, 5.79 at 0, 3, 6 h: left over 0.1601, twice 0.4 about 0.3333 above the target: no x is outside it."""
    ahead = projection(acids((0, 5.8), (3, 5.31), (6, 5.79)))
    assert ahead is not None
    assert (ahead.earliest_s / H, ahead.latest_s) == (6, None)
    assert ahead.at_s / H == pytest.approx(203)


@pytest.mark.parametrize(("last", "told"), [(5.6899, True), (5.6901, False)])
def test_a_fall_that_would_take_longer_than_any_is_not_drawn_out(last: float, told: bool):
    """At 5.69 the line is 0.42 above the target at its mean, 24 h, and falls by 0.00125 an hour: 336 h, 14 days."""
    assert FARTHEST_S / H == DAY_14_H
    assert (projection(acids((0, 5.75), (24, 5.72), (48, last))) is not None) is told


@pytest.mark.parametrize(("at_the_mean", "told"), [(5.4843, True), (5.4845, False)])
def test_nor_is_a_later_end_further_off_than_that(at_the_mean: float, told: bool):
    """Slope −0.0035 an hour, spread 1152 h²: (m − 0.0035 x)² = 0.01 (1/3 + x²/1152) at x = 336 h for m = 0.18437."""
    step = 24 * 0.0035
    ahead = projection(acids((0, at_the_mean + step), (24, at_the_mean), (48, at_the_mean - step)))
    assert ahead is not None
    assert (ahead.latest_s is not None) is told


def test_nothing_is_projected_into_the_past():
    """The line through 6.0, 5.5 and 5.35 is at 5.3 after 17.1 h by itself; the last reading, at 18 h, is above it."""
    ahead = projection(acids((0, 6.0), (12, 5.31), (18, 5.32)))
    assert ahead is not None
    assert (ahead.at_s, ahead.earliest_s) == (18 * H, 18 * H)


def test_the_latest_five_carry_the_line():
    """The first of six lies far off it; without it the line is −0.01 an hour from 5.8."""
    ahead = projection(acids((0, 6.4), (10, 5.8), (20, 5.7), (30, 5.6), (40, 5.5), (50, 5.4)))
    assert ahead is not None
    assert (ahead.readings, ahead.at_s / H) == (5, pytest.approx(60))


@pytest.mark.parametrize(
    "readings",
    [
        acids((0, 5.9), (10, 5.7)),
        acids((0, 5.5), (10, 5.6), (20, 5.7)),
        acids((0, 5.9), (10, 5.7), (20, 5.2)),
        acids((0, 5.9), (10, 5.8), (20, 5.7), (30, 5.3)),
        acids((0, 5.8), (10, 5.8), (20, 5.8)),
        acids((0, 6.0), (1, 5.5), (2, 5.875), (3, 5.875)),
        acids((0, 5.9), (1, 5.4), (2, 5.8), (3, 5.85)),
        acids((5, 5.8), (5, 5.7), (5, 5.6)),
        (),
    ],
    ids=["two", "rising", "there", "just there", "level", "level by its mean", "rising again", "at one moment", "none"],
)
def test_without_three_falling_readings_above_it_nothing_is_projected(readings):
    assert projection(readings) is None


def test_readings_that_scatter_leave_the_later_end_open():
    """Slope −1/300 an hour about 5.766667 at 3 h; left over 0.023333, −0.046667, 0.023333: twice 0.057155. Then
    −0.00071481 x² − 0.0031111 x + 0.213422 = 0 has one root ahead of the mean, x = 15.239."""
    ahead = projection(acids((0, 5.8), (3, 5.72), (6, 5.78)))
    assert ahead is not None
    assert ahead.latest_s is None
    assert ahead.earliest_s / H == pytest.approx(18.239, abs=2e-3)


def test_a_lag_before_the_fall_is_left_out():
    lagging = acids((0, 5.8), (12, 5.8), (24, 5.8), (30, 5.7), (36, 5.6))
    assert projection(lagging) == projection(lagging[2:])


def test_a_low_reading_that_was_contradicted_is_no_part_of_the_line():
    with_it = projection(acids((0, 5.9), (5, 5.2), (10, 5.7), (20, 5.5)))
    assert with_it == projection(acids((0, 5.9), (10, 5.7), (20, 5.5)))
    assert with_it == projection(acids((0, 5.9), (5, 5.3), (10, 5.7), (20, 5.5)))
