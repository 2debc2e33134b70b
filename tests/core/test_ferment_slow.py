"""The warm days of a sausage that does not sour: seen from the start over three days at least, until it is cool."""

import pytest
from attrs import evolve

from core.ferment.judging import Fermentation
from core.ferment.outcome import Deviation, slow_reason
from core.ferment.rules import RULES
from core.ferment.slow import FIRST_DAYS_S, judge_slow
from core.quantities import METRIC
from tests.core.fermenting import H, every_12_h, warm

A_HAIR_H = 1e-4
US_BASE = RULES["us"].base_c
SLOW = Fermentation("us", (), (*every_12_h(36, 20), *warm((48, 14), (72, 13))))
NEVER_WARM = evolve(SLOW, temperatures=warm((0, 10), (24, 11), (48, 12), (72, 12)))


def word(fermentation: Fermentation, hours: float) -> str:
    return judge_slow(fermentation, hours * H).word


def told(fermentation: Fermentation, hours: float) -> str:
    return slow_reason(judge_slow(fermentation, hours * H).outcome).text.say(METRIC, 4)


def test_read_through_its_first_three_days_and_cool_again_it_passes():
    assert word(SLOW, 73) == "passed"
    assert told(SLOW, 73) == "Its warm days made 179.8 °C·h, fewer than 666.7 °C·h; then it was kept cool."


def test_cool_again_but_not_read_over_three_days_it_is_running():
    assert word(SLOW, 60) == "running"
    assert told(SLOW, 60).startswith(
        "Its readings reach 48 h of its first 72 h. It is not known to be cool for good yet"
    )


@pytest.mark.parametrize(("last_h", "shown"), [(72.0, "passed"), (72 - A_HAIR_H, "running")])
def test_the_first_days_are_three(last_h: float, shown: str):
    assert FIRST_DAYS_S == 72 * H
    assert word(evolve(SLOW, temperatures=(*every_12_h(36, 20), *warm((48, 14), (last_h, 13)))), 73) == shown


def test_never_warm_it_passes_once_three_days_were_read():
    assert word(NEVER_WARM, 72) == "passed"
    assert word(NEVER_WARM, 71) == "running"


def test_one_temperature_ever_is_not_the_warm_days():
    once = evolve(SLOW, temperatures=warm((0, 4)))
    assert word(once, 30 * 24) == "unknown"
    why = slow_reason(judge_slow(once, 720 * H).outcome)
    assert why.met is None
    assert why.text.say(METRIC) == (
        "How warm it was in its first days is not known. Its readings reach 0 min of its first 72 h."
    )
    assert "first three days at least" in why.settle.say(METRIC)


@pytest.mark.parametrize(("hours", "shown"), [(36.0, "running"), (36 + A_HAIR_H, "unknown")])
def test_without_a_reading_for_a_day_and_a_half_it_is_not_known(hours: float, shown: str):
    assert word(evolve(SLOW, temperatures=warm((0, 4))), hours) == shown


def test_a_gap_in_its_warm_days_is_not_known():
    gap = evolve(SLOW, temperatures=warm((0, 20), (40, 14), (72, 13)))
    assert word(gap, 73) == "unknown"
    assert "40 h without a temperature between two readings" in told(gap, 73)


def test_still_warm_it_is_running():
    assert word(evolve(SLOW, temperatures=every_12_h(72, 20)), 73) == "running"
    assert told(evolve(SLOW, temperatures=every_12_h(72, 20)), 73) == (
        "It is not known to be cool for good yet; 324.4 °C·h of at most 666.7 °C·h used."
    )


def test_too_long_warm_it_is_over():
    assert word(evolve(SLOW, temperatures=every_12_h(120, 24)), 120) == "over"


def test_the_limit_itself_is_too_much():
    """20 °F above the base for 60 h: 1200 °F·h. Cool at once after it."""
    held = (
        *warm(*((hours, 80 / 1.8 - 160 / 9) for hours in (0, 12, 24, 36, 48, 60))),
        *warm((60 + 1e-6, 10), (72, 10)),
    )
    assert word(evolve(SLOW, temperatures=held), 73) == "over"
    shorter = tuple(evolve(each, at_s=each.at_s * 0.999) if each.at_s < 72 * H else each for each in held)
    assert word(evolve(SLOW, temperatures=shorter), 73) == "passed"


def test_warm_again_later_it_is_counted_again():
    again = evolve(SLOW, temperatures=(*SLOW.temperatures, *warm((84, 20), (96, 20), (108, 13))))
    first, second = judge_slow(SLOW, 120 * H).outcome.sum_ks, judge_slow(again, 120 * H).outcome.sum_ks
    assert first is not None
    assert second is not None
    assert second > first


def test_at_the_base_itself_it_is_cool():
    """60 °F: the rule counts what is above it."""
    at_base = evolve(SLOW, temperatures=(*every_12_h(36, 20), *warm((48, US_BASE), (72, US_BASE))))
    assert word(at_base, 73) == "passed"
    assert word(evolve(SLOW, temperatures=(*every_12_h(36, 20), *warm((48, 15.6), (72, 15.6)))), 73) == "running"


def test_a_cold_piece_in_a_warm_chamber_is_not_cool_again():
    cold_core = evolve(
        SLOW, temperatures=(*every_12_h(72, 20), *every_12_h(72, 4, "core"), *warm((72.5, 4), place="core"))
    )
    assert word(cold_core, 73) == "running"


def test_each_place_that_was_warm_must_be_cool():
    both = evolve(SLOW, temperatures=(*SLOW.temperatures, *every_12_h(60, 18, "core")))
    assert word(both, 75) == "running"
    assert word(evolve(both, temperatures=(*both.temperatures, *warm((74, 14), place="core"))), 75) == "passed"


def test_the_reading_that_shows_it_comes_after_every_place_is_cool():
    both = evolve(SLOW, temperatures=(*SLOW.temperatures, *every_12_h(96, 18, "core"), *warm((100, 14), place="core")))
    assert judge_slow(both, 110 * H).course.legs[-1].end_s == 100 * H


def test_a_chamber_warmed_before_the_meat_came_is_no_warm_day():
    early = evolve(SLOW, temperatures=(*warm((-3, 24)), *NEVER_WARM.temperatures))
    assert word(early, 72) == "passed"
    assert word(early, 60) == "running"
    assert word(evolve(SLOW, temperatures=warm((-3, 24), (0, 4))), 720) == "unknown"


def test_warm_days_that_were_planned_must_have_been_read():
    planned = evolve(NEVER_WARM, planned_c=22.0)
    assert word(planned, 73) == "unknown"
    assert "The chamber was set to 22 °C, and no reading shows its warm days" in told(planned, 73)
    assert word(evolve(SLOW, planned_c=22.0), 73) == "passed"
    assert word(evolve(NEVER_WARM, planned_c=US_BASE), 73) == "passed"
    assert word(evolve(NEVER_WARM, planned_c=US_BASE + 1e-9), 73) == "unknown"


def test_a_hair_before_the_start_no_warm_day_was_read():
    early = evolve(NEVER_WARM, planned_c=22.0, temperatures=(*warm((-A_HAIR_H, 24)), *NEVER_WARM.temperatures))
    assert word(early, 73) == "unknown"
    assert word(evolve(early, temperatures=(*warm((0, 24)), *NEVER_WARM.temperatures[1:])), 73) == "passed"


def test_its_figures_are_those_it_is_judged_by():
    judged = judge_slow(SLOW, 73 * H)
    assert judged.sum is not None
    assert judged.limit is not None
    assert (judged.sum.value, judged.limit.value) == (judged.outcome.sum_ks, judged.outcome.limit_ks)
    assert (judged.sum.key, judged.limit.key) == ("degree_hours", "limit")


@pytest.mark.parametrize(
    ("temperatures", "hours"), [((), 60.0), (warm((-2, 20)), -1.0)], ids=["never read", "not begun"]
)
def test_what_was_planned_makes_no_figure_of_what_nobody_read(temperatures, hours: float):
    judged = judge_slow(evolve(SLOW, temperatures=temperatures, planned_c=24.0), hours * H)
    assert (judged.sum, judged.limit, judged.outcome.sum_ks, judged.outcome.limit_ks) == (None, None, None, None)
    assert (judged.deadline.at_s, judged.outcome.deviation) == (None, None)


def test_before_the_start_there_is_no_course():
    assert judge_slow(evolve(SLOW, temperatures=warm((-2, 20)), planned_c=24.0), -H).course.legs == ()


def test_once_it_is_cool_the_plan_for_its_warm_days_counts_no_more():
    planned = evolve(SLOW, planned_c=22.0)
    assert judge_slow(planned, 60 * H).outcome.sum_ks == judge_slow(SLOW, 60 * H).outcome.sum_ks
    warm_still = evolve(planned, temperatures=every_12_h(36, 20))
    assert judge_slow(warm_still, 46 * H).outcome.sum_ks == pytest.approx((36 * 40 / 9 + 10 * (22 - 140 / 9)) * H)


def test_nobody_read_anything():
    bare = evolve(SLOW, temperatures=())
    assert word(bare, 60) == "unknown"
    assert told(bare, 60) == "How warm it was in its first days is not known. No temperature was read."


def test_read_before_the_start_only():
    assert "No temperature was read after the start" in told(evolve(SLOW, temperatures=warm((-5, 4))), 60)


def test_a_reading_of_later_does_not_count_yet():
    assert word(SLOW, 71) == "running"
    assert judge_slow(SLOW, 30 * H).course.legs[-1].end_s == 30 * H


def test_what_clears_it_was_decided_after_it_was_over():
    hot = evolve(SLOW, temperatures=every_12_h(120, 24), deviation=Deviation(kept=True, result="clean"))
    over_h = 1200 / 1.8 / (24 - 140 / 9)
    assert slow_reason(judge_slow(evolve(hot, decided_s=(over_h + 0.01) * H), 120 * H).outcome).met is True
    assert slow_reason(judge_slow(evolve(hot, decided_s=(over_h - 0.01) * H), 120 * H).outcome).met is False
