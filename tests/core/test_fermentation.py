"""One fermentation judged: in time, too late, not shown, not known; what is assumed is said, never to its favour."""

import pytest
from attrs import evolve

from core.ferment.crossing import fall
from core.ferment.judging import Fermentation, judge
from core.ferment.outcome import Deviation, reason, slow_reason
from core.ferment.rules import RULES
from core.ferment.saying import hours_and_minutes
from core.ferment.slow import judge_slow
from core.quantities import METRIC, US
from tests.core.fermenting import H, acids, every_12_h, kept, warm

US_BASE = RULES["us"].base_c


FALLING = acids((0, 5.8), (12, 5.6), (24, 5.4), (36, 5.2))
GOOD = Fermentation("us", FALLING, every_12_h(36))


def word(fermentation: Fermentation, hours: float) -> str:
    return judge(fermentation, hours * H).word


def test_sour_in_time_it_has_passed():
    assert word(GOOD, 40) == "passed"


def test_before_it_is_sour_it_is_running():
    assert word(GOOD, 30) == "running"


def test_a_reading_of_later_does_not_count_yet():
    assert judge(GOOD, 30 * H).crossing is None


def test_the_crossing_lies_on_the_line_between_its_readings():
    found = judge(GOOD, 40 * H).crossing
    assert found is not None
    assert (found.after_s / H, found.at_s / H, found.by_s / H) == pytest.approx((24, 30, 36))  # type: ignore[operator]


def test_the_sum_is_that_of_the_crossing_and_its_range_that_of_the_readings():
    figure = judge(GOOD, 40 * H).sum
    assert figure is not None
    above = 24 - US_BASE
    assert (figure.low, figure.value, figure.high) == pytest.approx((24 * H * above, 30 * H * above, 36 * H * above))


def test_the_working_says_that_the_crossing_is_read_off_a_line():
    figure = judge(GOOD, 40 * H).sum
    assert figure is not None
    assert "straight line" in figure.working[-1].say(METRIC)


LATE = Fermentation("us", acids((0, 5.8), (84, 5.5), (96, 5.2)), every_12_h(96))


def test_the_limit_reached_before_any_reading_shows_it_is_over():
    assert word(LATE, 80) == "over"


def test_sour_after_the_limit_stays_over():
    assert word(LATE, 100) == "over"


def test_sour_by_the_line_but_shown_too_late_is_not_shown():
    straddling = evolve(LATE, phs=acids((0, 5.8), (72, 5.4), (96, 4.6)))
    assert word(straddling, 100) == "not shown"
    assert reason(judge(straddling, 100 * H).outcome).met is None


def test_the_limit_itself_is_too_much():
    at_the_limit = Fermentation("us", acids((0, 5.8), (80, 5.3)), every_12_h(80, 215 / 9))  # 75 °F for 80 h: 1200
    assert word(at_the_limit, 80) == "over"


def test_one_hot_hour_lowers_the_limit_for_all_of_it():
    hot = Fermentation(
        "us", acids((0, 5.8), (75, 5.5)), (*every_12_h(60, 23.0), *warm((61, 33.0), (62, 23.0), (72, 23.0)))
    )
    limit = judge(hot, 75 * H).limit
    assert limit is not None
    assert limit.show(US).replace("\u00a0", " ") == "1 000 °F·h"


def test_heat_after_it_is_sour_changes_nothing():
    later_hot = evolve(GOOD, temperatures=(*every_12_h(36), *warm((40, 45.0))))
    assert judge(later_hot, 60 * H).limit == judge(GOOD, 60 * H).limit


def test_the_ph_that_mould_raises_later_takes_nothing_back():
    mouldy = evolve(GOOD, phs=(*FALLING, *acids((48, 5.0), (400, 5.6))))
    assert word(mouldy, 500) == "passed"


def test_a_ph_no_meat_has_is_no_crossing():
    assert fall(acids((0, 5.8), (12, 2.9))).crossing is None


def test_sour_from_the_first_reading_on_counts_to_that_reading():
    found = fall(acids((10, 5.1))).crossing
    assert found is not None
    assert (found.at_s, found.after_s) == (10 * H, None)


@pytest.mark.parametrize("temperatures", [(), every_12_h(12)], ids=["never read", "read"])
def test_a_crossing_before_the_clock_began_needed_no_degree_hours(temperatures):
    judged = judge(Fermentation("us", acids((-5, 5.8), (-1, 5.2)), temperatures), H)
    assert (judged.word, judged.sum, judged.outcome.sum_ks, judged.course.legs) == ("passed", None, None, ())


def test_without_any_temperature_nothing_is_known():
    assert word(evolve(GOOD, temperatures=()), 40) == "unknown"


def test_what_was_planned_is_no_evidence():
    assert word(evolve(GOOD, temperatures=(), planned_c=24.0), 40) == "unknown"


def test_what_was_planned_counts_against_it():
    assert word(evolve(LATE, temperatures=(), planned_c=24.0), 85) == "over"


def test_a_day_and_a_half_without_a_temperature_is_no_evidence():
    assert word(evolve(GOOD, phs=acids((0, 5.8), (50, 5.2)), temperatures=warm((0, 20), (50, 20))), 60) == "unknown"


def test_over_a_long_gap_the_warmer_reading_counts():
    assert kept(warm((0, 20), (24, 26)), 24) == pytest.approx(24 * 10.4)


def test_over_a_short_gap_a_straight_line_counts():
    assert kept(warm((0, 20), (12, 26)), 12) == pytest.approx(12 * 7.4)


def test_before_the_first_reading_it_was_as_warm_as_then():
    assert kept(warm((6, 25.6)), 6) == pytest.approx(60)


def test_after_the_last_reading_it_stays_as_warm():
    assert kept(warm((0, 25.6)), 6) == pytest.approx(60)


def test_long_after_the_last_reading_what_was_planned_counts_if_it_is_warmer():
    assert kept(warm((0, 20.6)), 20, planned_c=25.6) == pytest.approx(200)


def test_what_is_taken_for_granted_is_said():
    said = [each.say(METRIC, 4) for each in judge(evolve(GOOD, temperatures=warm((0, 20), (24, 26))), 30 * H).assumed]
    assert said == [
        "24 h went by between two readings: the warmer of them, 26 °C, counts for all of it.",
        "After the last reading, 6 h, it is taken to have been 26 °C.",
    ]


@pytest.mark.parametrize(
    ("at_h", "said"), [(-1e-4, "0 min before the start"), (0, "after 0 min"), (1e-4, "after 0 min")]
)
def test_a_reading_at_the_start_itself_is_one_after_it(at_h: float, said: str):
    contradicted = evolve(GOOD, phs=acids((at_h, 5.2), (10, 5.6)))
    assert f"pH 5.2 {said} was contradicted by" in reason(judge(contradicted, 11 * H).outcome).text.say(METRIC)


def test_a_reading_of_this_very_moment_counts():
    assert word(GOOD, 36) == "passed"
    assert word(GOOD, 36 - 1e-9) == "running"
    assert judge(evolve(GOOD, phs=(), temperatures=(*every_12_h(24), *warm((36, 40)))), 36 * H).course.highest_c == 40


def test_before_it_is_sour_its_line_is_drawn_on():
    """5.8, 5.6, 5.4 every half day: 5.3 six hours on."""
    ahead = judge(GOOD, 30 * H).projection
    assert ahead is not None
    assert ahead.at_s == pytest.approx(30 * H)


def test_once_it_was_sour_mould_that_falls_again_projects_nothing():
    mouldy = evolve(GOOD, phs=(*FALLING, *acids((400, 5.6), (412, 5.5), (424, 5.4))))
    assert judge(mouldy, 430 * H).projection is None


def test_a_start_nobody_noted_is_said():
    said = [each.text for each in judge(evolve(GOOD, start_noted=False), 40 * H).assumed]
    assert "The start was not noted: the clock runs from the beginning of the batch." in said


def test_what_is_below_the_base_adds_nothing():
    assert kept(warm((0, 4), (12, 10)), 12) == 0


def test_the_base_is_crossed_where_the_line_crosses_it():
    assert kept(warm((0, 10), (10, 20), (20, 10)), 20) == pytest.approx(19.36)


def test_the_core_counts_where_it_is_warmer_than_the_chamber():
    cooled = (*warm((0, 30), (10, 30), (12, 18), (24, 18)), *warm((10, 28), (12, 27), (20, 22), place="core"))
    assert kept(cooled, 24) > kept(tuple(each for each in cooled if each.place == "chamber"), 24)


def test_a_cold_core_takes_nothing_from_the_chamber():
    both = (*every_12_h(24, 24), *every_12_h(24, 10, "core"))
    assert kept(both, 24) == kept(every_12_h(24, 24), 24)


def test_one_reading_of_the_core_long_ago_leaves_no_gap():
    assert judge(evolve(GOOD, temperatures=(*every_12_h(36), *warm((1, 10), place="core"))), 40 * H).word == "passed"


def test_only_the_core_was_read_then_it_carries_the_course():
    assert kept(warm((0, 25.6), (10, 25.6), place="core"), 10) == pytest.approx(100)


def test_both_places_have_their_own_figures():
    both = evolve(GOOD, temperatures=(*every_12_h(36, 24), *every_12_h(36, 22, "core")))
    assert [each.key for each in judge(both, 30 * H).places] == ["chamber", "core"]


def test_the_last_safe_moment_does_not_move_while_the_temperature_stays():
    moments = {round(judge(GOOD, hours * H).deadline.at_s or 0) for hours in (1, 13, 29)}
    assert moments == {round(RULES["us"].limit_ks(24) / (24 - US_BASE))}


def test_below_the_base_the_clock_stands_still():
    cold = Fermentation("us", acids((0, 5.8)), warm((0, 12)))
    assert judge(cold, 5 * H).deadline.left is None


def test_once_over_the_last_safe_moment_is_when_it_passed():
    over = judge(LATE, 90 * H).deadline
    assert over.left is not None
    assert over.left.value == 0
    assert over.at_s == pytest.approx(RULES["us"].limit_ks(24) / (24 - US_BASE))


TESTED = Deviation(kept=True, result="clean", decided_by="the district", test="toxin")


def test_a_decision_after_the_miss_clears_it():
    decided = evolve(LATE, deviation=TESTED, decided_s=110 * H)
    assert reason(judge(decided, 120 * H).outcome).met is True


def test_a_decision_from_before_the_miss_is_about_something_else():
    decided = evolve(LATE, deviation=TESTED, decided_s=50 * H)
    assert reason(judge(decided, 120 * H).outcome).met is False


def test_a_decision_without_a_moment_is_from_the_start():
    assert evolve(LATE, deviation=TESTED).decided_s == 0


SLOW = Fermentation("us", (), (*every_12_h(36, 20), *warm((48, 14), (72, 13))))


@pytest.mark.parametrize(
    ("seconds", "said"),
    [
        *((19_200, "5 h 20 min"), (7200, "2 h"), (3660, "1 h 1 min"), (3600, "1 h"), (3599, "59 min")),
        *((1799, "29 min"), (60, "1 min"), (0, "0 min"), (-5, "0 min")),
        *((60 - 0.995 * 60e-6, "1 min"), (60 - 1.005 * 60e-6, "0 min")),
    ],
)
def test_hours_and_minutes_are_never_more_than_there_is(seconds: float, said: str):
    assert hours_and_minutes(seconds).say(METRIC) == said


@pytest.mark.parametrize("reader", [METRIC, US], ids=["metric", "us"])
@pytest.mark.parametrize("fermentation", [GOOD, LATE, evolve(GOOD, temperatures=()), SLOW])
def test_every_reason_can_be_said(fermentation: Fermentation, reader):
    for hours in (1, 30, 50, 60, 90, 120):
        for why in (
            reason(judge(fermentation, hours * H).outcome),
            slow_reason(judge_slow(fermentation, hours * H).outcome),
        ):
            assert why.text.say(reader)
            assert why.settle.say(reader)
