"""A hygrometer over one salt, and over two."""

import math

import pytest

from core.chamber.checks_hygrometer import Over, per_kelvin, salt_check, salt_check_two
from core.chamber.checks_salts import SALTS, humidity_over, uncertainty_over
from core.quantities import METRIC, US, Reader
from core.refusals import OutOfRange
from tests.core.telling import in_words

TABLE_SALT = Over("nacl", 20.0, 0.78)
POTASH_SALT = Over("kcl", 20.0, 0.864)


def figure(check, key: str):
    return next(each for each in check.figures if each.key == key)


def refused(call, *arguments, **more) -> OutOfRange:
    with pytest.raises(OutOfRange) as caught:
        call(*arguments, **more)
    return caught.value


def test_table_salt_is_offered_first():
    assert next(iter(SALTS)) == "nacl"


def test_every_salt_is_refused_outside_its_range():
    for salt in SALTS.values():
        for outside_c in (salt.coldest_c - 0.1, salt.warmest_c + 0.1, math.nan):
            assert refused(humidity_over, salt, outside_c).field == "temperature_c"
            assert refused(uncertainty_over, salt, outside_c).field == "temperature_c"


@pytest.mark.parametrize(("reader", "named"), [(METRIC, "5 °C and 40 °C:"), (US, "41 °F and 104 °F:")])
def test_a_refusal_names_the_range_in_the_reader_s_units(reader: Reader, named: str):
    assert named in refused(humidity_over, SALTS["nabr"], 2.0).said.say(reader)


def test_the_tables_uncertainty_is_straight_between_its_lines():
    assert uncertainty_over(SALTS["nacl"], 12.5) == pytest.approx(0.0020)


def test_the_last_line_of_the_table_still_counts():
    assert uncertainty_over(SALTS["k2co3"], 30.0) == pytest.approx(0.0050)


@pytest.mark.parametrize(("reading", "word"), [(0.7566, "accept"), (0.79, "adjust"), (0.60, "replace")])
def test_one_salt_tells_a_good_hygrometer_from_a_bad_one(reading: float, word: str):
    assert salt_check(Over("nacl", 12.0, reading)).word == word


def test_one_salt_gives_the_same_to_add_everywhere():
    check = salt_check(Over("nacl", 12.0, 0.79))
    assert check.correction.apply(0.85) == pytest.approx(0.85 + 0.756613 - 0.79, abs=1e-6)


def test_no_reading_is_put_above_100_per_cent():
    assert salt_check(Over("nacl", 12.0, 0.70)).correction.apply(0.98) == 1.0


def test_one_kelvin_is_worth_five_per_cent_and_is_said():
    assert per_kelvin(0.7566, 12.0) == pytest.approx(0.05, abs=0.001)
    cautions = in_words(salt_check(Over("nacl", 12.0, 0.79)).figures[0].cautions)
    assert any("1 K warmer than the salt reads 5 % too little" in each for each in cautions)


def test_what_stays_unsure_adds_table_digit_and_temperature_as_squares():
    left = figure(salt_check(Over("nacl", 12.0, 0.79), division=0.01, apart_k=0.1), "uncertainty").value
    worth = 0.1 * per_kelvin(humidity_over(SALTS["nacl"], 12.0), 12.0)
    assert left == pytest.approx(math.sqrt(0.00204**2 + 0.005**2 + worth**2))


@pytest.mark.parametrize(("bulk", "shown"), [("small", "20 min"), ("bulky", "60 min")])
def test_a_bulky_sensor_waits_longer(bulk, shown: str):
    assert figure(salt_check(TABLE_SALT, bulk=bulk), "wait").show(METRIC) == shown


def test_the_humidity_over_the_salt_carries_the_tables_range():
    truth = figure(salt_check(TABLE_SALT), "truth")
    assert truth.high - truth.low == pytest.approx(0.0028)


def test_two_salts_draw_the_line_through_both():
    line = salt_check_two(TABLE_SALT, POTASH_SALT).correction
    assert line.apply(0.78) == pytest.approx(humidity_over(SALTS["nacl"], 20.0))
    assert line.apply(0.864) == pytest.approx(humidity_over(SALTS["kcl"], 20.0))


def test_a_reading_corrected_comes_first_with_its_range():
    first = salt_check_two(TABLE_SALT, POTASH_SALT, 0.80).figures[0]
    assert first.show(US) == "77.8 %"
    assert first.high - first.value == pytest.approx(0.00767, abs=1e-4)


def test_a_reading_beyond_the_salts_is_less_sure_and_says_so():
    first = salt_check_two(TABLE_SALT, POTASH_SALT, 0.60).figures[0]
    assert first.high - first.value > 0.02
    assert any("beyond the two salts" in each for each in in_words(first.cautions))


def test_a_reading_corrected_stays_below_100_per_cent():
    first = salt_check_two(TABLE_SALT, POTASH_SALT, 1.0).figures[0]
    assert (first.value, first.high) == (1.0, 1.0)


def test_readings_less_than_five_per_cent_apart_are_refused():
    assert refused(salt_check_two, TABLE_SALT, Over("kcl", 20.0, 0.829)).field == "other_reading"


def test_readings_just_five_per_cent_apart_are_taken():
    assert salt_check_two(TABLE_SALT, Over("kcl", 20.0, 0.83)).correction.gain > 1


def test_exchanged_salts_are_noticed():
    assert "swapped" in refused(salt_check_two, Over("kcl", 20.0, 0.78), Over("nacl", 20.0, 0.864)).sentence


def test_the_same_salt_twice_draws_no_line():
    assert refused(salt_check_two, TABLE_SALT, Over("nacl", 20.0, 0.9)).field == "other_reading"


def test_the_other_salts_own_range_is_held_beside_the_other_temperature():
    assert refused(salt_check_two, TABLE_SALT, Over("k2co3", 35.0, 0.45)).field == "other_temperature_c"


@pytest.mark.parametrize("reading", [-0.01, 1.01, math.nan])
def test_what_is_no_humidity_is_refused(reading: float):
    assert refused(salt_check, Over("nacl", 20.0, reading)).field == "reading"


def test_an_unknown_salt_is_refused():
    assert refused(salt_check, Over("sugar", 20.0, 0.8)).field == "salt"


# Greenspan's coefficients and his table of uncertainties, entered a second time, not looked up again.
@pytest.mark.parametrize(
    ("key", "polynomial", "uncertain", "coldest_c"),
    [
        (
            "nacl",
            (75.5164, 0.0398321, -0.00265459, 2.848e-05),
            (0.34, 0.27, 0.22, 0.18, 0.14, 0.12, 0.11, 0.12, 0.13),
            0.0,
        ),
        ("mgcl2", (33.6686, -0.00797397, -0.00108988), (0.33, 0.28, 0.24, 0.21, 0.18, 0.16, 0.14, 0.13, 0.13), 0.0),
        ("kcl", (88.619, -0.19334, 0.000899706), (0.53, 0.45, 0.39, 0.33, 0.29, 0.26, 0.25, 0.25, 0.25), 0.0),
        ("k2so4", (98.7792, -0.0590502), (1.1, 0.91, 0.76, 0.63, 0.53, 0.45, 0.4, 0.38, 0.38), 0.0),
        ("mg-nitrate", (60.3519, -0.298233), (0.55, 0.43, 0.33, 0.27, 0.23, 0.22, 0.24, 0.29, 0.37), 0.0),
        ("nabr", (64.7147, -0.221331, -0.00404312, 5.91453e-05), (0.72, 0.6, 0.51, 0.44, 0.4, 0.38, 0.38, 0.41), 5.0),
        ("k2co3", (43.1315, 0.00147523), (0.66, 0.5, 0.39, 0.33, 0.33, 0.39, 0.5), 0.0),
        ("licl", (11.2323, 0.00824245, -0.00021489), (0.54, 0.47, 0.41, 0.35, 0.31, 0.27, 0.24, 0.22, 0.21), 0.0),
    ],
)
def test_the_figures_of_a_salt_entered_a_second_time(
    key: str, polynomial: tuple[float, ...], uncertain: tuple[float, ...], coldest_c: float
):
    salt = SALTS[key]
    assert (salt.polynomial, salt.uncertain, salt.coldest_c) == (polynomial, uncertain, coldest_c)
    steps = [coldest_c + 5 * n for n in range(len(uncertain))]
    assert [uncertainty_over(salt, at_c) for at_c in steps] == pytest.approx([each / 100 for each in uncertain])
    assert salt.warmest_c == steps[-1]
