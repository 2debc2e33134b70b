"""Each limit of the checks from both sides, and what each takes for granted where nothing is said."""

import math
from collections.abc import Callable

import pytest

from core.chamber.checks import Correction, Point, judge, say
from core.chamber.checks_hygrometer import Over, salt_check, salt_check_two
from core.chamber.checks_ph import NOT_BRACKETED, VOLTAGE, Buffer, nernst_v, ph_meter
from core.chamber.checks_scale import scale_check, smallest_kg
from core.chamber.checks_thermometer import boiling_point, ice_point
from core.quantities import METRIC, TEMPERATURE_DIFFERENCE, US, Amount
from core.refusals import OutOfRange
from tests.core.telling import in_words

KELVIN = Amount(1.0, TEMPERATURE_DIFFERENCE)


def figure(check, key: str):
    return next(each for each in check.figures if each.key == key)


def refused(call: Callable[[], object]) -> str | None:
    try:
        call()
    except OutOfRange as refusal:
        return refusal.field
    return None


@pytest.mark.parametrize(
    ("error", "word"),
    [
        (0.0, "accept"), (2.0, "accept"), (-2.0, "accept"), (2.000000001, "accept"), (2.00000001, "adjust"),
        (-2.00000001, "adjust"), (6.0, "adjust"), (-6.0, "adjust"), (6.00000003, "replace"), (-7.0, "replace"),
    ],
)  # fmt: skip
def test_what_is_within_the_tolerance_and_within_three_of_them(error: float, word: str):
    assert judge(error, 2.0) == word


def test_each_word_has_its_sentence():
    assert say("accept", KELVIN).say(METRIC) == "Accept: it is within the tolerance of ±1 K."
    assert say("adjust", KELVIN).say(US).startswith("Adjust: it is outside the tolerance of ±1.8 °F. ")
    assert (
        say("replace", KELVIN)
        .say(METRIC)
        .startswith("Replace: it is more than three times outside the tolerance of ±1 K")
    )


def buffers(one: float = 7.0, other: float = 4.01, at_c: float = 25.0, slope: float = 1.0, offset_mv: float = 0.0):
    return tuple(Buffer(ph, at_c, offset_mv - slope * nernst_v(at_c) * 1000 * (ph - 7)) for ph in (one, other))


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: ph_meter(*buffers(1.0, 4.0)), None),
        (lambda: ph_meter(*buffers(0.999, 4.0)), "buffer"),
        (lambda: ph_meter(*buffers(13.0, 4.0)), None),
        (lambda: ph_meter(*buffers(13.001, 4.0)), "buffer"),
        (lambda: ph_meter(*buffers(4.0, 0.999)), "other_buffer"),
        (lambda: ph_meter(*buffers(at_c=5.0)), None),
        (lambda: ph_meter(*buffers(at_c=4.99)), "temperature_c"),
        (lambda: ph_meter(*buffers(at_c=50.0)), None),
        (lambda: ph_meter(*buffers(at_c=50.01)), "temperature_c"),
        (lambda: ph_meter(*buffers(7.0, 6.0)), None),
        (lambda: ph_meter(*buffers(7.0, 6.001)), "other_buffer"),
        (lambda: ph_meter(Buffer(7.0, 25.0, -1000.0), Buffer(4.0, 25.0, 1000.0)), None),
        (lambda: ph_meter(Buffer(7.0, 25.0, -1000.1), Buffer(4.0, 25.0, 0.0)), "reading"),
        (lambda: ph_meter(Buffer(7.0, 25.0, 0.0), Buffer(4.0, 25.0, 1000.1)), "other_reading"),
        (lambda: ph_meter(Buffer(7.0, 25.0, 100.0), Buffer(4.0, 25.0, 100.0)), "other_reading"),
        (lambda: ice_point(-30.0), None),
        (lambda: ice_point(-30.1), "reading_c"),
        (lambda: ice_point(50.0), None),
        (lambda: ice_point(50.1), "reading_c"),
        (lambda: ice_point(0.1, 0.01), None),
        (lambda: ice_point(0.1, 0.0099), "tolerance_k"),
        (lambda: ice_point(0.1, 20.0), None),
        (lambda: ice_point(0.1, 20.1), "tolerance_k"),
        (lambda: ice_point(0.1, 1.0, 0.0), None),
        (lambda: ice_point(0.1, 1.0, -0.01), "division_k"),
        (lambda: ice_point(0.1, 1.0, 5.0), None),
        (lambda: ice_point(0.1, 1.0, 5.01), "division_k"),
        (lambda: boiling_point(50.0), None),
        (lambda: boiling_point(49.9), "reading_c"),
        (lambda: boiling_point(150.0), None),
        (lambda: boiling_point(150.1), "reading_c"),
        (lambda: boiling_point(99.0, pressure_pa=60e3), None),
        (lambda: boiling_point(99.0, pressure_pa=59.9e3), "pressure_pa"),
        (lambda: boiling_point(99.0, pressure_pa=110e3), None),
        (lambda: boiling_point(99.0, pressure_pa=110.1e3), "pressure_pa"),
        (lambda: scale_check(999.9, 999.9, 0.1), None),
        (lambda: scale_check(1000.0, 999.9, 0.1), "mass_kg"),
        (lambda: scale_check(999.9, 1000.0, 0.1), "reading_kg"),
        (lambda: scale_check(-0.1, 0.1, 0.01), "mass_kg"),
        (lambda: scale_check(0.1, -0.1, 0.01), "reading_kg"),
        (lambda: scale_check(0.1, 0.1, 0.1), None),
        (lambda: scale_check(0.1, 0.1, 0.1001), "division_kg"),
        (lambda: scale_check(0.1, 0.1, 0.0), "division_kg"),
        (lambda: scale_check(0.1, 0.1, -0.01), "division_kg"),
        (lambda: scale_check(0.1, 0.1, 0.01, 999.9, 999.9), None),
        (lambda: scale_check(0.1, 0.1, 0.01, 1000.0, 999.9), "other_mass_kg"),
        (lambda: scale_check(0.1, 0.1, 0.01, 0.0, 0.2), "other_mass_kg"),
        (lambda: scale_check(0.1, 0.1, 0.01, -0.2, 0.2), "other_mass_kg"),
        (lambda: scale_check(0.1, 0.1, 0.01, 0.2, 1000.0), "other_reading_kg"),
        (lambda: scale_check(0.1, 0.1, 0.01, 0.2, 0.0), "other_reading_kg"),
        (lambda: scale_check(0.1, 0.1, 0.01, 0.2, -0.2), "other_reading_kg"),
        (lambda: scale_check(0.1, 0.1, 0.01, 0.2, 0.1), "other_reading_kg"),
        (lambda: scale_check(0.1, 0.1, 0.01, 0.2, 0.05), "other_reading_kg"),
        (lambda: salt_check(Over("nacl", 20.0, 0.0)), None),
        (lambda: salt_check(Over("nacl", 20.0, -0.001)), "reading"),
        (lambda: salt_check(Over("nacl", 20.0, 1.0)), None),
        (lambda: salt_check(Over("nacl", 20.0, 1.001)), "reading"),
        (lambda: salt_check(Over("nacl", 20.0, 0.75), 0.001), None),
        (lambda: salt_check(Over("nacl", 20.0, 0.75), 0.00099), "tolerance"),
        (lambda: salt_check(Over("nacl", 20.0, 0.75), 0.5), None),
        (lambda: salt_check(Over("nacl", 20.0, 0.75), 0.501), "tolerance"),
        (lambda: salt_check(Over("nacl", 20.0, 0.75), division=0.1), None),
        (lambda: salt_check(Over("nacl", 20.0, 0.75), division=0.101), "division"),
        (lambda: salt_check(Over("nacl", 20.0, 0.75), division=-0.001), "division"),
        (lambda: salt_check(Over("nacl", 20.0, 0.75), apart_k=5.0), None),
        (lambda: salt_check(Over("nacl", 20.0, 0.75), apart_k=5.01), "apart_k"),
        (lambda: salt_check(Over("nacl", 20.0, 0.75), apart_k=-0.01), "apart_k"),
        (lambda: salt_check(Over("water", 20.0, 0.75)), "salt"),
        (lambda: salt_check(Over("nacl", 40.1, 0.75)), "temperature_c"),
        (lambda: salt_check_two(Over("nacl", 20.0, 0.75), Over("kcl", 20.0, 0.80)), None),
        (lambda: salt_check_two(Over("nacl", 20.0, 0.75), Over("kcl", 20.0, 0.7999)), "other_reading"),
        (lambda: salt_check_two(Over("nacl", 20.0, 0.85), Over("kcl", 20.0, 0.75)), "other_reading"),
        (lambda: salt_check_two(Over("nacl", 20.0, 0.75), Over("kcl", 40.1, 0.85)), "other_temperature_c"),
        (lambda: salt_check_two(Over("nacl", 20.0, 0.75), Over("water", 20.0, 0.85)), "other_salt"),
        (lambda: salt_check_two(Over("nacl", 20.0, 0.75), Over("kcl", 20.0, 0.85), 1.001), "now"),
        (lambda: salt_check_two(Over("nacl", 20.0, 0.75), Over("kcl", 20.0, 0.85), -0.001), "now"),
    ],
)
def test_each_limit_has_a_hair_on_either_side(call: Callable[[], object], field: str | None):
    assert refused(call) == field


@pytest.mark.parametrize(
    ("one", "other", "shows", "unsure"),
    [
        # 2.99 pH to 173 mV: half of the last digit, 1 mV, is 0.0086416; the buffers 0.02
        (Buffer(7.0, 25.0, -5.0), Buffer(4.01, 25.0, 168.0), "mv", math.hypot(0.02, 0.5 * 2.99 / 173)),
        # 2.99 pH to 2.91 shown, to the last 0.01
        (Buffer(7.0, 25.0, 7.06), Buffer(4.01, 25.0, 4.15), "ph", math.hypot(0.02, 0.005 * 2.99 / 2.91)),
    ],
)
def test_what_stays_unsure_of_a_ph(one: Buffer, other: Buffer, shows, unsure: float):
    check = ph_meter(one, other, shows)
    assert figure(check, "uncertainty").value == pytest.approx(unsure, rel=1e-9)
    line = check.correction
    assert (line.low_reading, line.high_reading) == tuple(sorted((one.shown, other.shown)))
    assert (line.uncertainty, line.high_uncertainty) == pytest.approx((unsure, unsure))
    assert (line.least, line.most) == (0.0, 14.0)


@pytest.mark.parametrize(
    ("one", "other", "do_bracket"),
    [(4.5, 6.8, True), (6.8, 4.5, True), (4.51, 7.0, False), (4.01, 6.79, False), (7.0, 10.0, False)],
)
def test_buffers_stand_on_both_sides_of_meat(one: float, other: float, do_bracket: bool):
    cautions = in_words(figure(ph_meter(*buffers(one, other)), "slope").cautions)
    assert (NOT_BRACKETED not in cautions) is do_bracket


@pytest.mark.parametrize(
    ("slope", "offset_mv", "told"),
    [
        (0.8999, 0.0, "slope 90.0 %"),
        (1.0501, 0.0, "slope 105.0 %"),
        (1.0, 30.1, "offset 30.1 mV"),
        (1.0, -30.1, "offset −30.1 mV"),
        (0.95, 31.0, "offset 31 mV"),
        (0.89, 29.0, "slope 89.0 %"),
    ],
)
def test_only_what_is_wrong_with_an_electrode_is_told(slope: float, offset_mv: float, told: str):
    check = ph_meter(*buffers(slope=slope, offset_mv=offset_mv))
    assert check.word == "clean"
    assert check.sentence.say(METRIC).startswith(f"Clean: {told}, ")


def test_a_full_slope_is_that_of_the_mean_temperature():
    """59.16 mV at 25 °C, 58.17 at 20: R T ln 10 ÷ F."""
    check = ph_meter(Buffer(7.0, 15.0, 0.0), Buffer(4.0, 25.0, 175.0))
    assert figure(check, "full_slope").value == pytest.approx(0.0581672, abs=1e-7)


def test_a_thermometer_s_last_digit_is_a_tenth_where_it_is_not_told():
    assert ice_point(0.3).correction.uncertainty == 0.05
    assert ice_point(0.3, division_k=1.0).correction.uncertainty == 0.5
    assert boiling_point(99.0, pressure_pa=101_325.0).correction.uncertainty == 0.05


@pytest.mark.parametrize(("error", "word"), [(1.0, "accept"), (1.01, "adjust"), (3.0, "adjust"), (3.01, "replace")])
def test_a_thermometer_is_let_pass_within_a_kelvin_where_nothing_else_is_told(error: float, word: str):
    assert ice_point(error).word == word
    assert boiling_point(99.9743 - error, pressure_pa=101_325.0).word == word


def test_from_the_height_the_boiling_point_is_unsure_by_what_weather_does():
    """20 hPa at sea level are some 0.56 K: 28.0166 K to the unit of ln p, over 1013.25 hPa."""
    check = boiling_point(99.9)
    truth = figure(check, "truth")
    assert truth.value == pytest.approx(99.9743, abs=1e-4)
    assert truth.low == pytest.approx(99.9743 - 28.0166 * 20 / 1013.25, abs=0.01)
    assert truth.high == pytest.approx(99.9743 + 28.0166 * 20 / 1013.25, abs=0.01)
    assert check.correction.uncertainty == pytest.approx(math.hypot(truth.value - truth.low, 0.05))
    known = figure(boiling_point(99.9, pressure_pa=101_325.0), "truth")
    assert (known.low, known.high) == (None, None)


@pytest.mark.parametrize(
    ("reading", "word", "told"),
    [
        (0.1005, "accept", "Accept: it is within one division (0.1 g) or 0.5 % of the mass"),
        (0.1015, "adjust", "Adjust: it is outside one division"),
        (0.1016, "replace", "Replace: it is more than three times outside one division"),
    ],
)
def test_a_scale_s_word_and_its_sentence(reading: float, word: str, told: str):
    check = scale_check(0.1, reading, 1e-4)
    assert (check.word, check.sentence.say(METRIC)[: len(told)]) == (word, told)


def test_a_scale_s_figures_by_hand():
    """100 g read 101 g, 200 g read 203 g: 100 g to 102 g of reading, less 0.98 … of the first."""
    check = scale_check(0.1, 0.101, 1e-4, 0.2, 0.203)
    gain = 0.1 / 0.102
    assert figure(check, "error").value == pytest.approx(0.001)
    assert figure(check, "other_error").value == pytest.approx(0.003)
    assert figure(check, "gain").value == pytest.approx(gain)
    assert figure(check, "gain").working[0].say(METRIC) == "(200 g − 100 g) ÷ (203 g − 101 g) = 0.980392"
    assert figure(check, "offset").value == pytest.approx(0.2 - gain * 0.203)
    assert check.correction.uncertainty == pytest.approx(5e-5)
    assert check.correction.high_uncertainty == pytest.approx(5e-5)
    at_zero = abs((0.2 - gain * 0.203) / gain)
    assert figure(check, "smallest_5").value == pytest.approx((1e-4 + at_zero) / (0.05 - 0.02))
    assert [each.key for each in check.figures if each.key.startswith("smallest")] == ["smallest_5"]


@pytest.mark.parametrize(("reading", "least"), [(0.1019, True), (0.102, False), (0.0981, True), (0.098, False)])
def test_a_scale_out_by_the_whole_share_weighs_nothing_to_it(reading: float, least: bool):
    check = scale_check(0.1, reading, 1e-4)
    assert (smallest_kg(check.correction, 1e-4, 0.02) is not None) is least
    told = "As it stands its error alone is more than 2 %: no weight is right to that as read."
    assert (told in in_words(check.figures[0].cautions)) is not least


def test_a_thermometer_s_offset_has_its_range():
    offset = figure(ice_point(0.3, division_k=0.2), "offset")
    assert (offset.low, offset.value, offset.high) == pytest.approx((-0.4, -0.3, -0.2))


def test_what_is_taken_where_nothing_else_is_told():
    """A kelvin let pass, a tenth as last digit, sea level; a scale's one mass is beside its zero."""
    assert ice_point(0.3) == ice_point(0.3, 1.0, 0.1)
    assert boiling_point(99.0) == boiling_point(99.0, 0.0, None, 1.0, 0.1)


@pytest.mark.parametrize(
    ("other_reading", "told"),
    [
        (0.0, r"^Scale reads under it must be between 0\.001 g and 999\xa0999 g\.$"),
        (-0.1, r"^Scale reads under it must be between 0\.001 g and 999\xa0999 g\.$"),
        (0.1, r"^The second reading must differ from the first\.$"),
    ],
)
def test_a_second_reading_of_nothing_or_of_the_first_is_told_as_that(other_reading: float, told: str):
    with pytest.raises(OutOfRange, match=told):
        scale_check(0.1, 0.1, 1e-4, 0.2, other_reading)


def test_a_correction_is_sure_and_plain_where_nothing_else_is_told():
    assert Correction(0.5) == Correction(0.5, 1.0, 0.0, None, None, None, None, None)
    assert Point(1.0, 2.0) == Point(1.0, 2.0, 0.0)


def test_millivolts_are_shown_to_a_tenth():
    assert Amount(-0.01526, VOLTAGE).show(METRIC) == "−15.3 mV"
    assert Amount(-0.01526, VOLTAGE).show(US) == "−15.3 mV"
