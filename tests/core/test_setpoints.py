"""Set-points: drying force, equal drying, sweating surfaces, and the programmes that are printed."""

import math

import pytest

from core.chamber.programmes import BY_KEY, PROCESSES, PROGRAMMES, beef_ageing, of_process
from core.chamber.setpoint_sheets import EQUAL_DRYING, SET_POINT
from core.chamber.setpoints import (
    NOT_EQUAL_DRYING,
    beside,
    coldest_dry_surface,
    equal_humidity,
    equal_line,
    equal_temperature,
    set_point,
)
from core.quantities import METRIC, US
from core.refusals import OutOfRange, Refused
from tests.core.telling import in_words


def by_key(figures):
    return {figure.key: figure for figure in figures}


def refused(call) -> str:
    with pytest.raises(OutOfRange) as caught:
        call()
    return caught.value.field


def test_salami_at_55_degrees_and_80_per_cent():
    figures = SET_POINT.answer({"temperature": "55 °F", "humidity": "80 %", "programme": "dry-practice"}).figures
    assert {figure.key: figure.show(US) for figure in figures} == {
        "vapour_pressure_deficit": "252 Pa",
        "dew_point": "49.0 °F",
        "coldest_dry_surface": "49.0 °F",
        "programme_temperature": "55.0 °F",
        "programme_humidity": "80 %",
    }


def test_common_practice_is_called_that():
    figures = by_key(set_point(12.8, 0.8, programme=BY_KEY["dry-practice"]))
    assert figures["programme_humidity"].source.cite().say(METRIC) == "Common practice; no published source."


def test_a_set_point_as_finely_shown_lies_within():
    assert not any(in_words(figure.cautions) for figure in beside(BY_KEY["dry-practice"], 12.8, 0.8))


@pytest.mark.parametrize(("temperature_c", "word"), [(11.0, "below"), (17.0, "above")])
def test_a_set_point_outside_what_is_printed_says_on_which_side(temperature_c: float, word: str):
    figure = beside(BY_KEY["dry-cellar"], temperature_c, 0.75)[0]
    assert in_words(figure.cautions) == (f"The set-point lies {word} what is printed.",)
    assert f"outside it, {word}" in figure.working[0].say(METRIC)


def test_a_source_that_prints_no_temperature_gives_none():
    assert [figure.key for figure in beside(BY_KEY["slow-guideline"], 20.0, 0.88)] == ["programme_humidity"]


def test_warm_fermentation_points_to_the_degree_hours():
    assert all("degree-hours" in each.note for each in of_process("warm-fermentation"))


def test_the_coldest_dry_surface_allows_for_the_hygrometer():
    figure = coldest_dry_surface(12.0, 0.8)
    assert figure.low == figure.value < figure.high < 12.0


def test_below_freezing_it_is_the_frost_point():
    assert "Frost forms" in coldest_dry_surface(2.0, 0.7).working[0].say(METRIC)


def test_saturated_air_dews_on_all_that_is_not_warmer():
    assert coldest_dry_surface(12.0, 1.0).value == pytest.approx(12.0)


def test_warmer_air_must_be_moister_to_dry_as_hard():
    assert equal_humidity(12.0, 0.8, 0.97, 15.0).show(METRIC) == "83 %"


def test_equal_force_is_said_not_to_be_equal_drying():
    assert in_words(equal_humidity(12.0, 0.8, 0.97, 15.0).cautions) == (NOT_EQUAL_DRYING,)


def test_the_line_of_equal_force_leaves_out_what_cannot_be():
    line = equal_line(30.0, 0.5, 0.97, (0.0, 10.0, 20.0, 30.0))
    assert [round(temperature) for temperature, _ in line] == [20, 30]


def test_the_line_goes_through_the_set_point():
    assert equal_line(12.0, 0.8, 0.97, (12.0,))[0] == pytest.approx((12.0, 0.8))


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: equal_humidity(30.0, 0.4, 0.97, 2.0), "other_temperature"),
        (lambda: equal_humidity(25.0, 1.0, 0.9, 5.0), "other_temperature"),
        (lambda: equal_humidity(12.0, 0.8, 0.97, 61.0), "other_temperature"),
        (lambda: equal_temperature(12.0, 0.98, 0.97, 0.8), "humidity"),
        (lambda: equal_temperature(12.0, 0.8, 0.97, 0.97), "other_humidity"),
        (lambda: equal_temperature(12.0, 0.8, 0.97, 0.9699), "other_humidity"),
        (lambda: equal_temperature(12.0, 0.8, 0.97, math.nan), "other_humidity"),
        (lambda: set_point(12.0, 1.1), "humidity"),
        (lambda: set_point(61.0, 0.8), "temperature"),
        (lambda: set_point(12.0, 0.8, 1.1), "surface_activity"),
        (lambda: beef_ageing(math.nan, 0.8, 0.3, 35), "surface"),
    ],
)
def test_what_cannot_be_is_refused_by_field(call, field: str):
    assert refused(call) == field


def test_equal_drying_asks_for_one_of_the_two():
    with pytest.raises(Refused) as caught:
        EQUAL_DRYING.answer({"temperature": "12 °C", "humidity": "80 %"})
    assert caught.value.refusals[0].field == "other_temperature"


def test_every_process_has_a_programme():
    assert {programme.process for programme in PROGRAMMES} == set(PROCESSES)


def test_programmes_have_keys_of_their_own():
    assert len(BY_KEY) == len(PROGRAMMES)


@pytest.mark.parametrize("programme", PROGRAMMES, ids=lambda each: each.key)
def test_every_programme_prints_something_and_runs_from_low_to_high(programme):
    spans = [each for each in (programme.temperature_c, programme.humidity, programme.days) if each]
    assert programme.temperature_c or programme.humidity
    assert all(low <= high for low, high in spans)


def test_none_of_the_programmes_is_from_memory():
    assert {programme.source.verified for programme in PROGRAMMES} <= {"seen", "copy", "practice"}


def test_the_rule_for_aged_beef_has_four_limits():
    assert [reason.met for reason in beef_ageing(2.5, 0.8, 0.3, 35)] == [True] * 4


def test_what_was_not_measured_is_not_met():
    assert [reason.met for reason in beef_ageing(2.5, None, None, 20)] == [True, None, None, True]


def test_outside_the_rule_asks_for_a_proof():
    reason = beef_ageing(3.5, 0.8, 0.3, 35)[0]
    assert reason.text.say(METRIC) == "Surface 3.5 °C; the rule allows −0.5 °C to 3 °C."
    assert "prove this combination safe" in reason.settle.say(METRIC)


def test_a_surface_is_as_wet_as_fresh_meats_unless_told():
    assert set_point(12.8, 0.8) == set_point(12.8, 0.8, 0.97)


def test_air_as_damp_as_the_surface_does_not_dry_and_says_so_of_itself():
    with pytest.raises(OutOfRange) as refused:
        equal_temperature(12.8, 0.97, 0.97, 0.7)
    assert refused.value.field == "humidity"
