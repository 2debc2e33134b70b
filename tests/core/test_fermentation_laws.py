"""Laws of degree-hours: they add over any split of time, agree with a fine sum, and knowing less never helps."""

import math
from itertools import pairwise

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from core.ferment.course import JOINED_S, Course, Leg, TemperatureReading, course
from core.ferment.crossing import Acid
from core.ferment.degree_hours import reached_at, total
from core.ferment.judging import Fermentation, judge
from core.ferment.logged import summarised
from core.ferment.rules import RULES

H = 3600.0
BASE_C = 15.6
warmth = st.floats(0, 45)


@st.composite
def legs(draw) -> Course:
    marks = sorted(draw(st.lists(st.floats(0, 100), min_size=2, max_size=9, unique=True)))
    warm = draw(st.lists(warmth, min_size=len(marks), max_size=len(marks)))
    pairs = list(zip(marks, warm, strict=True))
    return Course(tuple(Leg(a * H, b * H, c, d) for (a, c), (b, d) in pairwise(pairs)))


@st.composite
def readings(draw, most_gap_h: float = 60) -> tuple[TemperatureReading, ...]:
    gaps = draw(st.lists(st.floats(0.1, most_gap_h), min_size=1, max_size=8))
    at_h, found = draw(st.floats(-5, 5)), []
    for gap in gaps:
        found.append(TemperatureReading(at_h * H, draw(warmth), draw(st.sampled_from(["chamber", "core"]))))
        at_h += gap
    return tuple(found)


@given(legs(), st.floats(0, 100))
def test_degree_hours_add_over_any_split_of_time(walked: Course, split_h: float):
    split_s = split_h * H
    before = walked.until(split_s)
    after = Course(
        tuple(
            leg if leg.start_s >= split_s else evolve(leg, start_s=split_s, start_c=leg.at(split_s))
            for leg in walked.legs
            if leg.end_s > split_s
        )
    )
    assert total(before, BASE_C) + total(after, BASE_C) == pytest.approx(total(walked, BASE_C), abs=1e-3)


@settings(max_examples=40, deadline=None)
@given(legs())
def test_degree_hours_agree_with_a_fine_sum(walked: Course):
    fine = 0.0
    for leg in walked.legs:
        steps = 2000
        width = (leg.end_s - leg.start_s) / steps
        middles = (leg.at(leg.start_s + (each + 0.5) * width) for each in range(steps))
        fine += width * math.fsum(max(0.0, each - BASE_C) for each in middles)
    assert total(walked, BASE_C) == pytest.approx(fine, rel=1e-5, abs=1.0)


@given(legs(), st.floats(0.01, 0.99))
def test_a_sum_is_reached_where_it_is_reached(walked: Course, part: float):
    wanted = part * total(walked, BASE_C)
    if wanted > 1:
        at_s = reached_at(walked, BASE_C, wanted)
        assert at_s is not None
        assert total(walked.until(at_s), BASE_C) == pytest.approx(wanted, rel=1e-6)


@given(readings(), st.floats(1, 150))
def test_a_course_has_no_hole_and_no_end_but_its_own(given_: tuple[TemperatureReading, ...], until_h: float):
    walked = course(given_, until_h * H)
    assert walked.legs[0].start_s == 0
    assert walked.legs[-1].end_s == until_h * H
    assert all(one.end_s == other.start_s for one, other in pairwise(walked.legs))


@given(readings(most_gap_h=12), st.floats(1, 60))
def test_a_course_is_never_colder_than_a_reading(given_: tuple[TemperatureReading, ...], until_h: float):
    walked = course(given_, until_h * H)
    joined = len({each.place for each in given_}) == 1
    for each in given_:
        if joined and 0 < each.at_s < until_h * H:
            here = [leg.at(each.at_s) for leg in walked.legs if leg.start_s <= each.at_s <= leg.end_s]
            assert max(here) >= each.temperature_c - 1e-9


@given(readings(most_gap_h=JOINED_S / H), st.floats(1, 60), st.floats(0, 10))
def test_warmer_readings_never_make_fewer_degree_hours(
    given_: tuple[TemperatureReading, ...], until_h: float, more: float
):
    warmer = tuple(evolve(each, temperature_c=each.temperature_c + more) for each in given_)
    assert total(course(warmer, until_h * H), BASE_C) >= total(course(given_, until_h * H), BASE_C) - 1e-6


phs = st.lists(st.tuples(st.floats(-5, 90), st.floats(4.6, 6.2)), max_size=7).map(
    lambda pairs: tuple(Acid(hours * H, ph) for hours, ph in pairs)
)


@given(phs, readings(), st.sampled_from(["us", "canada"]), st.floats(1, 120))
def test_passed_means_fewer_than_the_limit_at_the_reading_that_shows_it(acids, given_, rule, now_h: float):
    judged = judge(Fermentation(rule, acids, given_), now_h * H)
    if judged.word == "passed":
        assert judged.crossing is not None
        sum_ks = total(
            course([each for each in given_ if each.at_s <= now_h * H], max(0.0, judged.crossing.by_s)),
            RULES[rule].base_c,
        )
        assert judged.outcome.limit_ks is None or sum_ks < judged.outcome.limit_ks


@given(phs, readings(), st.floats(1, 120))
def test_without_temperatures_nothing_sour_during_the_clock_passes(acids, given_, now_h: float):
    judged = judge(Fermentation("us", acids, ()), now_h * H)
    assert judged.word != "passed" or (judged.crossing is not None and judged.crossing.by_s <= 0)


@given(phs, readings(), st.floats(1, 60), st.floats(0, 60))
def test_over_stays_over(acids, given_, now_h: float, more_h: float):
    """Time alone takes nothing back; only a reading can, and one of the past was there already."""
    past = tuple(each for each in acids if each.at_s <= now_h * H)
    warm = tuple(each for each in given_ if each.at_s <= now_h * H)
    if judge(Fermentation("us", past, warm), now_h * H).word == "over":
        assert judge(Fermentation("us", past, warm), (now_h + more_h) * H).word == "over"


@given(st.lists(st.floats(5, 35), min_size=30, max_size=900), st.integers(10, 200))
def test_a_log_brought_down_keeps_its_degree_hours_or_a_little_more(warm: list[float], most: int):
    times = [60.0 * each for each in range(len(warm))]
    made = summarised(times, warm, most)
    assert len(made.times_s) <= most
    assert made.highest_c == max(warm)


@settings(max_examples=30, deadline=None)
@given(st.floats(14, 35), st.floats(0, 4), st.floats(600, 3000), st.integers(100, 500))
def test_a_cycling_chambers_log_keeps_its_degree_hours_or_a_little_more(
    mean_c: float, swing: float, period_s: float, most: int
):
    times = [60.0 * each for each in range(2880)]
    warm = [mean_c + swing * math.sin(2 * math.pi * each / period_s) for each in times]
    made = summarised(times, warm, most)
    whole, short = (
        total(course([TemperatureReading(a, c) for a, c in zip(*log, strict=True)], times[-1]), RULES["us"].base_c)
        for log in ((times, warm), (made.times_s, made.temperatures_c))
    )
    assert 0.99 * whole - 2 * H <= short <= 1.1 * whole + 3 * H
