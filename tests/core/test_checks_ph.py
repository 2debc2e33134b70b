"""A pH meter in two buffers."""

import pytest

from core.chamber.checks import Point, through_two
from core.chamber.checks_ph import Buffer, nernst_v, ph_meter
from core.quantities import METRIC
from core.refusals import OutOfRange
from tests.core.telling import in_words

GOOD = (Buffer(7.0, 25.0, -5.0), Buffer(4.01, 25.0, 168.0))


def value(check, key: str) -> float:
    return next(each.value for each in check.figures if each.key == key)


def perfect(ph: float, temperature_c: float, slope: float = 1.0, offset_mv: float = 0.0) -> Buffer:
    return Buffer(ph, temperature_c, offset_mv - slope * nernst_v(temperature_c) * 1000 * (ph - 7))


def refused_field(*arguments) -> str:
    with pytest.raises(OutOfRange) as caught:
        ph_meter(*arguments)
    return caught.value.field


def test_a_perfect_electrode_has_a_slope_of_100_per_cent_and_no_offset():
    check = ph_meter(perfect(7.0, 25.0), perfect(4.01, 25.0))
    assert (value(check, "slope"), value(check, "offset")) == pytest.approx((1.0, 0.0))


def test_buffers_of_two_temperatures_are_each_taken_at_their_own():
    check = ph_meter(perfect(7.02, 18.0, 0.95, 12.0), perfect(4.0, 27.0, 0.95, 12.0))
    assert (value(check, "slope"), value(check, "offset")) == pytest.approx((0.95, 0.012))


@pytest.mark.parametrize(
    ("slope", "offset_mv", "word"),
    [
        (0.90, 0.0, "accept"),
        (1.05, 0.0, "accept"),
        (0.98, 30.0, "accept"),
        (0.98, -30.0, "accept"),
        (0.89, 0.0, "clean"),
        (1.06, 0.0, "clean"),
        (0.98, 31.0, "clean"),
    ],
)
def test_the_limits_of_the_pharmacopoeia_are_held_inclusive(slope: float, offset_mv: float, word: str):
    assert ph_meter(perfect(7.0, 25.0, slope, offset_mv), perfect(4.01, 25.0, slope, offset_mv)).word == word


def test_what_is_still_bad_after_cleaning_is_replaced():
    assert ph_meter(perfect(7.0, 25.0, 0.8), perfect(4.01, 25.0, 0.8), cleaned=True).word == "replace"


def test_a_bad_electrode_is_told_what_is_wrong_with_it():
    said = ph_meter(perfect(7.0, 25.0, 0.8, 40.0), perfect(4.01, 25.0, 0.8, 40.0)).sentence.say(METRIC)
    assert said.startswith("Clean: slope 80.0 % and offset 40 mV, but the limits are slope between 90 and 105 %")


def test_the_correction_turns_millivolts_into_the_buffers_ph():
    line = ph_meter(*GOOD).correction
    assert (line.apply(-5.0), line.apply(168.0)) == pytest.approx((7.0, 4.01))


def test_a_meter_that_shows_ph_is_put_on_the_plain_line_through_both_buffers():
    one, other = Buffer(7.0, 25.0, 7.06), Buffer(4.01, 25.0, 4.15)
    line, plain = ph_meter(one, other, "ph").correction, through_two(Point(7.06, 7.0), Point(4.15, 4.01))
    assert (line.offset, line.gain) == pytest.approx((plain.offset, plain.gain))


def test_a_meter_that_shows_ph_is_judged_by_the_same_slope():
    assert value(ph_meter(Buffer(7.0, 20.0, 7.0), Buffer(4.0, 20.0, 4.3), "ph"), "slope") == pytest.approx(0.9)


def test_a_meter_in_millivolts_is_told_to_read_meat_as_warm_as_the_buffers():
    assert any("as warm as the buffers" in each for each in in_words(ph_meter(*GOOD).figures[0].cautions))


def test_a_corrected_ph_stays_on_the_scale():
    assert ph_meter(*GOOD).correction.apply(900.0) == 0.0


def test_buffers_that_leave_meat_outside_are_told_of():
    said = in_words(ph_meter(perfect(7.0, 25.0), perfect(10.01, 25.0)).figures[0].cautions)
    assert any("both sides" in each for each in said)


def test_exchanged_buffers_are_noticed():
    assert refused_field(Buffer(4.01, 25.0, -5.0), Buffer(7.0, 25.0, 168.0)) == "other_reading"


def test_buffers_too_near_each_other_are_refused():
    assert refused_field(perfect(7.0, 25.0), perfect(6.86, 25.0)) == "other_buffer"


@pytest.mark.parametrize(
    ("other", "field"),
    [(perfect(4.01, 55.0), "other_temperature_c"), (Buffer(0.5, 25.0, 300.0), "other_buffer")],
)
def test_what_is_no_buffer_is_refused(other: Buffer, field: str):
    assert refused_field(perfect(7.0, 25.0), other) == field
