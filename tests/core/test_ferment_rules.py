"""Which limit holds, how long is left: each edge with a row on each side, each figure with its working."""

import pytest
from attrs import evolve

from core.ferment.course import Course, Leg
from core.ferment.deadline import STANDS_STILL, deadline, hours_left
from core.ferment.degree_hours import (
    above,
    constant,
    figure,
    limit_figure,
    reached_at,
    stepped,
    total,
    used_up,
)
from core.ferment.ferment_sheets import (
    DEGREE_HOURS_SHEET,
    DEGREE_HOURS_STEPS_SHEET,
    HOURS_LEFT_SHEET,
    OVER,
    WHOLE_DEGREES,
)
from core.ferment.rules import LOCAL_RULES, NO_PROOF, RULES
from core.quantities import METRIC, US, Amount
from core.refusals import Missing, OutOfRange, Refused
from core.units import CELSIUS_HOUR, FAHRENHEIT, FAHRENHEIT_HOUR
from core.worksheet import Number
from tests.core.fermenting import H
from tests.core.telling import in_words

US_RULE, CANADA = RULES["us"], RULES["canada"]


def f(fahrenheit: float) -> float:
    return FAHRENHEIT.to_si(fahrenheit)


@pytest.mark.parametrize(
    ("highest_c", "limit_f"),
    [
        (f(90) - 0.05 - 1.005e-6, 1200),
        (f(90) - 0.05 - 0.995e-6, 1000),
        (f(90) - 0.05, 1000),
        (f(90), 1000),
        (f(100), 1000),
        (f(100) + 0.995e-6, 1000),
        (f(100) + 1.005e-6, 900),
        (32.1, 1200),
        (32.2, 1000),  # 89.96 °F: its last digit cannot tell it from 90
        (f(89.9), 1200),
    ],
)
def test_the_us_limits_have_their_edges_at_90_and_100_fahrenheit(highest_c: float, limit_f: float):
    """FSRE Shelf-Stable 2005, p. 164: less than 90 °F 1200, to 100 °F 1000, above it 900."""
    assert FAHRENHEIT_HOUR.from_si(US_RULE.limit_ks(highest_c)) == pytest.approx(limit_f)


@pytest.mark.parametrize(
    ("highest_c", "limit_c"),
    [
        (32.9, 665),
        (33 - 0.05 - 1.005e-6, 665),
        (33 - 0.05 - 0.995e-6, 555),
        (33, 555),
        (37, 555),
        (37 + 0.995e-6, 555),
        (37 + 1.005e-6, 500),
    ],
)
def test_the_canadian_limits_have_their_edges_at_33_and_37_celsius(highest_c: float, limit_c: float):
    """CFIA, Meat Hygiene Manual of Procedures, 4.16.2.1, quoted in fragments, from memory."""
    assert CELSIUS_HOUR.from_si(CANADA.limit_ks(highest_c)) == pytest.approx(limit_c)


def test_at_the_last_digit_that_is_forgiven_itself():
    """Below 90 °F it must be more than half a digit and that; up to 100 °F that much more is still 100 °F."""
    assert not US_RULE.bands[0].holds(f(90) - 0.05 - 1e-6)
    assert US_RULE.bands[1].holds(f(100) + 1e-6)


def test_the_bases_are_60_fahrenheit_and_15_6_celsius():
    assert (US_RULE.base_c, CANADA.base_c) == (pytest.approx(140 / 9), 15.6)


@pytest.mark.parametrize(
    ("highest_c", "said"),
    [
        (25.0, "US rule, printed as 1200 °F·h: fewer than 666.667 °C·h, for the highest, 25 °C, is below 32.2222 °C"),
        (35.0, "US rule, printed as 1000 °F·h: fewer than 555.556 °C·h, for the highest, 35 °C, is up to 37.7778 °C"),
        (40.0, "US rule, printed as 900 °F·h: fewer than 500 °C·h, for the highest, 40 °C, is above 37.7778 °C"),
        (
            32.2,
            "US rule, printed as 1000 °F·h: fewer than 555.556 °C·h, for the highest, 32.2 °C, is within half a last "
            "digit of 32.2222 °C",
        ),
    ],
)
def test_which_limit_holds_is_said_with_its_edge(highest_c: float, said: str):
    assert limit_figure(US_RULE, highest_c).working[0].say(METRIC) == said


@pytest.mark.parametrize(
    ("below_k", "where"),
    [
        (0, "up to 100 °F"),
        (0.995e-6, "up to 100 °F"),
        (1e-6, "up to 100 °F"),
        (1.005e-6, "within half a last digit of 90 °F"),
    ],
)
def test_at_the_edge_itself_it_is_not_within_half_a_digit_of_it(below_k: float, where: str):
    told = limit_figure(US_RULE, f(90) - below_k).working[0].say(US)
    assert told.endswith(f"for the highest, 90 °F, is {where}")


def test_fewer_than_is_strict_but_for_a_sums_last_digits():
    assert used_up(1.0, 1.0)
    assert used_up(1 - 0.99e-9, 1.0)
    assert not used_up(1 - 1.01e-9, 1.0)


@pytest.mark.parametrize(
    ("leg", "above_ks"),
    [
        (Leg(0, 10, 16, 18), 10.0),
        (Leg(5, 10, 15, 15), 0.0),
        (Leg(0, 10, 15, 17), 2.5),
        (Leg(0, 10, 17, 15), 2.5),
        (Leg(0, 12, 14, 17), 2.0),
        (Leg(0, 10, 13, 14), 0.0),
        (Leg(0, 10, 18, 15), 10 * 2 * 2 / 3 / 2),
        (Leg(0, 10, 16.5, 18), 12.5),
        (Leg(0, 10, 18, 16.5), 12.5),
        (Leg(0, 10, 15.5, 14), 0.0),
        (Leg(0, 10, 14, 15.5), 0.0),
        (Leg(0, 10, 15.5, 18), 10 * 2 * 2 / 2.5 / 2),
        (Leg(0, 10, 16.5, 15), 10 * 0.5 * 0.5 / 1.5 / 2),
    ],
)
def test_only_what_is_above_the_base_counts(leg: Leg, above_ks: float):
    """Triangles by hand, the base at 16, or 15 where the leg lies level on it."""
    base_c = 15.0 if leg.start_c == leg.end_c else 16.0
    assert above(leg, base_c) == pytest.approx(above_ks)


def test_a_sum_is_reached_within_its_stretch():
    walked = Course((Leg(0, 10, 16, 16), Leg(10, 30, 18, 18)))
    assert reached_at(walked, 15.0, 10.0) == pytest.approx(10)
    assert reached_at(walked, 15.0, 16.0) == pytest.approx(12)
    assert reached_at(walked, 15.0, 70.0) == pytest.approx(30)
    assert reached_at(walked, 15.0, 70.01) is None


@pytest.mark.parametrize("warm_c", [-60.0, 150.0])
def test_the_coldest_and_the_hottest_step(warm_c: float):
    legs = stepped([(warm_c, 1.0), (warm_c, 0.0)]).legs
    assert legs == (Leg(0.0, 1.0, warm_c, warm_c), Leg(1.0, 1.0, warm_c, warm_c))


@pytest.mark.parametrize(("warm_c", "lasts_s"), [(-60.1, 1), (150.1, 1), (20, -0.1), (20, float("inf"))])
def test_what_no_step_can_be_is_refused(warm_c: float, lasts_s: float):
    with pytest.raises(OutOfRange) as refused:
        constant(warm_c, lasts_s)
    assert refused.value.field == ("lasts_s" if warm_c == 20 else "temperature_c")


def said(course: Course) -> list[str]:
    return [each.say(METRIC) for each in figure(course, CANADA).working]


def test_each_kind_of_stretch_has_its_line():
    legs = (Leg(0, 2 * H, 20.6, 20.6), Leg(2 * H, 4 * H, 20.6, 18.6), Leg(4 * H, 6 * H, 18.6, 12.6))
    assert said(Course((*legs, Leg(6 * H, 9 * H, 12.6, 10)))) == [
        "(20.6 °C − 15.6 °C) × 2 h = 10 °C·h",
        "(((20.6 °C + 18.6 °C) ÷ 2) − 15.6 °C) × 2 h = 8 °C·h",
        "2 h from 18.6 °C to 12.6 °C, of which only what is above 15.6 °C counts: 1.5 °C·h",
        "3 h from 12.6 °C to 10 °C, not above 15.6 °C: 0 °C·h",
        "Together: 19.5 °C·h",
    ]


def test_a_stretch_that_ends_at_the_base_is_its_mean_and_one_that_lies_on_it_counts_nothing():
    assert said(Course((Leg(0, H, 15.6, 17.6), Leg(H, 2 * H, 15.6, 15.6)))) == [
        "(((15.6 °C + 17.6 °C) ÷ 2) − 15.6 °C) × 1 h = 1 °C·h",
        "1 h from 15.6 °C to 15.6 °C, not above 15.6 °C: 0 °C·h",
        "Together: 1 °C·h",
    ]


@pytest.mark.parametrize(("lasts_s", "lines"), [(1.0, 2), (0.99, 1)])
def test_a_stretch_of_less_than_a_second_has_no_line(lasts_s: float, lines: int):
    assert len(said(Course((Leg(0, lasts_s, 20, 20),)))) == lines
    assert len(said(Course((Leg(10, 10 + lasts_s, 20, 20),)))) == lines


@pytest.mark.parametrize(("stretches", "lines"), [(12, 13), (13, 2)])
def test_more_than_twelve_stretches_are_told_in_one_line(stretches: int, lines: int):
    legs = tuple(Leg(each * H, (each + 1) * H, 20.6, 20.6) for each in range(stretches))
    assert len(said(Course(legs))) == lines


def test_a_long_log_is_told_in_one_line():
    legs = tuple(Leg(each * H, (each + 1) * H, 20.6, 20.6) for each in range(13))
    assert said(Course(legs))[0] == "13 stretches between readings, each its mean temperature above 15.6 °C × its time"


def test_the_time_left_is_the_limit_less_what_is_gone_by_the_warmth():
    left = hours_left(200 * H, 600 * H, 25.6, CANADA)
    assert left is not None
    assert left.value == pytest.approx(40 * H)
    assert left.working[0].say(METRIC) == "(600 °C·h − 200 °C·h) ÷ (25.6 °C − 15.6 °C) = 40 h"


@pytest.mark.parametrize(("gone_ks", "known"), [(-0.1, False), (0.0, True), (float("inf"), False)])
def test_what_is_gone_cannot_be_less_than_nothing(gone_ks: float, known: bool):
    if known:
        assert hours_left(gone_ks, 600 * H, 25.6, CANADA) is not None
        return
    with pytest.raises(OutOfRange) as refused:
        hours_left(gone_ks, 600 * H, 25.6, CANADA)
    assert refused.value.field == "gone_ks"


@pytest.mark.parametrize(
    ("present_c", "stands"), [(15.6, True), (15.6 + 0.995e-4, True), (15.6 + 1.005e-4, False), (15.61, False)]
)
def test_at_the_base_the_clock_stands_still(present_c: float, stands: bool):
    assert (hours_left(0.0, 600 * H, present_c, CANADA) is None) is stands


def test_a_ten_thousandth_of_a_degree_itself_is_none():
    from_nothing = evolve(CANADA, base_c=0.0)  # there the difference is what it says
    assert hours_left(0.0, 600 * H, 1e-4, from_nothing) is None
    assert hours_left(0.0, 600 * H, 1.001e-4, from_nothing) is not None


def test_the_last_digits_of_a_reading_that_was_corrected_start_no_clock():
    """16.1 °C on a thermometer that shows half a degree too much is 15.6 °C, and a little more in floating point."""
    assert CANADA.base_c < 16.1 - 0.5
    found = deadline(constant(16.1 - 0.5, 10 * H), CANADA)
    assert (found.at_s, found.left) == (None, None)


def test_at_the_limit_nothing_is_left():
    left = hours_left(600 * H, 600 * H, 25.6, CANADA)
    assert left is not None
    assert (left.value, left.working[0].say(METRIC)) == (0.0, "600 °C·h is not fewer than 600 °C·h: no time is left")


def test_a_hundred_millionth_of_the_limit_is_kept_back():
    """The limit itself is too much."""
    left, late = hours_left(0.0, 600 * H, 25.6, CANADA), hours_left(600 * H * (1 - 5e-9), 600 * H, 25.6, CANADA)
    assert left is not None
    assert left.value == pytest.approx(60 * H * (1 - 1e-8), rel=2e-11, abs=0)
    assert late is not None
    assert late.value == 0


def test_the_present_temperature_and_moment_are_those_of_the_end_of_the_course():
    found = deadline(Course((Leg(0, 10 * H, 25.6, 25.6), Leg(10 * H, 20 * H, 35.6, 35.6))), CANADA)
    assert found.at_s == pytest.approx((20 + (555 - 100 - 200) / 20) * H)


def test_the_last_safe_moment_is_counted_from_the_end_of_the_course():
    walked = constant(25.6, 10 * H)
    found = deadline(walked, CANADA)
    assert found.at_s == pytest.approx(66.5 * H)
    assert found.left is not None
    assert found.left.value == pytest.approx(56.5 * H)


@pytest.mark.parametrize("warm_c", [33.0, 24.0, 20.0, f(75), f(110), 49.9])
@pytest.mark.parametrize("rule", ["us", "canada"])
def test_the_hours_that_are_shown_are_not_over(warm_c: float, rule: str):
    shown = DEGREE_HOURS_SHEET.compute(warm_c, 1.0, rule)[-1]
    for reader in (METRIC, US):
        hours = float(shown.show(reader).removesuffix(" h").replace(" ", ""))
        assert not is_over(warm_c, hours, rule)
        assert is_over(warm_c, hours + 0.1 + 1e-6, rule)


def is_over(warm_c: float, hours: float, rule: str) -> bool:
    return OVER in in_words(DEGREE_HOURS_SHEET.compute(warm_c, hours * H, rule)[0].cautions)


def test_at_33_degrees_31_8_hours_are_shown_of_31_9():
    """555 ÷ 17.4 = 31.897."""
    figures = DEGREE_HOURS_SHEET.answer({"temperature_c": "33 °C", "lasts_s": "20 h", "rule": "canada"}).figures
    assert figures[-1].show(METRIC) == "31.8 h"
    assert figures[-1].working[0].say(METRIC) == "(555 °C·h − 0 °C·h) ÷ (33 °C − 15.6 °C) = 31.8966 h"


def test_where_the_limit_falls_on_a_whole_hour_that_hour_is_over():
    """1200 ÷ 15 = 80 h at 75 °F: fewer than 1200 ends just before it."""
    figures = DEGREE_HOURS_SHEET.answer({"temperature_c": "75 °F", "lasts_s": "20 h"}).figures
    assert figures[-1].show(US) == "79.9 h"


def test_the_last_safe_moment_itself_is_not_over():
    walked = constant(f(75), 10 * H)
    at_s = deadline(walked, US_RULE).at_s
    assert at_s is not None
    assert not used_up(total(constant(f(75), at_s), US_RULE.base_c), US_RULE.limit_ks(f(75)))
    assert at_s == pytest.approx(80 * H, abs=0.01)


def left_sheet(**texts: str):
    return HOURS_LEFT_SHEET.answer({"gone_ks": "400 °C·h", "present_c": "24 °C", "rule": "canada"} | texts).figures


def test_the_highest_temperature_draws_the_limit():
    left, limit = left_sheet(highest_c="26 °C")
    assert (left.show(METRIC), limit.show(METRIC)) == ("31.5 h", "665 °C·h")
    assert left_sheet(highest_c="35 °C")[1].show(METRIC) == "555 °C·h"
    assert left_sheet(present_c="35 °C", highest_c="26 °C")[1].show(METRIC) == "555 °C·h"


def test_where_the_highest_temperature_is_not_said_the_lowest_limit_counts():
    left, limit = left_sheet()
    assert (left.show(METRIC), limit.show(METRIC)) == ("11.9 h", "500 °C·h")
    assert limit.working[0].say(METRIC) == (
        "Canadian rule, printed as 500 °C·h: fewer than 500 °C·h, the lowest limit, for the highest temperature so far "
        "was not said"
    )


def test_below_the_base_only_the_limit_is_shown():
    (limit,) = left_sheet(present_c="12 °C", highest_c="26 °C")
    assert in_words(limit.cautions) == (STANDS_STILL, LOCAL_RULES)


def test_nothing_left_is_over():
    left, _ = left_sheet(gone_ks="665 °C·h", highest_c="26 °C")
    assert in_words(left.cautions) == (OVER, NO_PROOF, LOCAL_RULES)
    assert in_words(left_sheet(gone_ks="664.9 °C·h", highest_c="26 °C")[0].cautions) == (NO_PROOF, LOCAL_RULES)


@pytest.mark.parametrize(("warm_c", "over"), [("89.8 °F", False), ("32.2 °C", True), ("90 °F", True)])
def test_a_tenth_of_a_degree_celsius_below_90_fahrenheit_is_held_like_it(warm_c: str, over: bool):
    """34 h × 30 °F = 1020 °F·h: under 1200, not under 1000."""
    figures = DEGREE_HOURS_SHEET.answer({"temperature_c": warm_c, "lasts_s": "34 h", "rule": "us"}).figures
    assert (OVER in in_words(figures[0].cautions)) is over


@pytest.mark.parametrize(
    ("texts", "field"),
    [({"temperature_2": "24 °C"}, "lasts_2"), ({"lasts_3": "2 h"}, "temperature_3")],
)
def test_half_a_step_is_asked_for(texts: dict[str, str], field: str):
    first = {"temperature_1": "24 °C", "lasts_1": "10 h"}
    with pytest.raises(Refused) as refused:
        DEGREE_HOURS_STEPS_SHEET.answer(first | texts)
    assert [(type(each), each.field) for each in refused.value.refusals] == [(Missing, field)]


def test_there_are_four_steps_and_only_the_first_must_be_there():
    boxes = {each.key: each.optional for each in DEGREE_HOURS_STEPS_SHEET.inputs if isinstance(each, Number)}
    assert boxes == {f"{key}_{step}": step > 1 for step in (1, 2, 3, 4) for key in ("temperature", "lasts")}


def test_the_first_box_says_what_a_thermometer_of_whole_degrees_wants():
    helped = [each.key for each in DEGREE_HOURS_STEPS_SHEET.inputs if each.help]
    assert helped == ["temperature_1"]
    assert DEGREE_HOURS_STEPS_SHEET.inputs[0].help == WHOLE_DEGREES


def test_four_steps_add_up():
    texts = {f"temperature_{each}": f"{15.6 + each} °C" for each in (1, 2, 3, 4)}
    texts |= {f"lasts_{each}": "10 h" for each in (1, 2, 3, 4)}
    gone, limit = DEGREE_HOURS_STEPS_SHEET.answer(texts | {"rule": "canada"}).figures
    assert (gone.show(METRIC), limit.show(METRIC)) == ("100 °C·h", "665 °C·h")


@pytest.mark.parametrize(
    ("sheet", "key", "low", "high"),
    [
        (DEGREE_HOURS_SHEET, "temperature_c", 0.0, 50.0),
        (DEGREE_HOURS_SHEET, "lasts_s", 0.0, 1000 * H),
        (HOURS_LEFT_SHEET, "gone_ks", 0.0, 2000 * H),
        (HOURS_LEFT_SHEET, "highest_c", 0.0, 50.0),
        (DEGREE_HOURS_STEPS_SHEET, "lasts_4", 0.0, 1000 * H),
    ],
    ids=lambda each: getattr(each, "name", str(each)),
)
def test_the_boxes_end_where_they_end(sheet, key: str, low: float, high: float):
    box = next(each for each in sheet.inputs if each.key == key)
    assert (box.low, box.high) == (low, high)


def test_amounts_of_time_left_are_cut_off():
    left = hours_left(0.0, 100 * H, 115.6 - 0.001, CANADA)
    assert left is not None
    assert Amount(left.value, left.quantity).show(METRIC) == "1 h"
