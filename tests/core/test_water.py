"""The pH of bicarbonate water: what is said, what is refused, and that the working adds up."""

import math

import pytest

from core.chamber.humidifier import CHARGE_SHEET
from core.quantities import METRIC
from core.refusals import OutOfRange
from core.water import constants, equilibrium, expected_ph, ph_fresh, ph_open
from tests.core.telling import in_words

USUAL = 0.1739


def test_fresh_water_of_a_cellar_has_a_ph_of_8_1():
    assert ph_fresh(USUAL, 12.0).value == pytest.approx(8.1, abs=0.05)


def test_open_to_room_air_it_drifts_toward_9_8():
    assert ph_open(USUAL, 12.0).value == pytest.approx(9.8, abs=0.05)


def test_stale_air_holds_it_at_9_4():
    assert ph_open(USUAL, 12.0, 2000e-6).value == pytest.approx(9.4, abs=0.05)


def test_the_range_is_a_tenth_either_way():
    figure = ph_fresh(USUAL, 12.0)
    assert (figure.low, figure.high) == pytest.approx((figure.value - 0.1, figure.value + 0.1))


def test_it_says_that_the_speed_is_not_known():
    assert "not established" in in_words(ph_open(USUAL, 12.0).cautions)[0]


@pytest.mark.parametrize("carbon_dioxide", [None, 420e-6])
def test_the_charges_balance(carbon_dioxide: float | None):
    assert equilibrium(USUAL, 12.0, carbon_dioxide).excess_charge == pytest.approx(0, abs=1e-10)


@pytest.mark.parametrize("carbon_dioxide", [None, 420e-6])
def test_all_the_sodium_is_there(carbon_dioxide: float | None):
    ions = equilibrium(USUAL, 12.0, carbon_dioxide)
    assert ions.sodium + ions.pair_bicarbonate + ions.pair_carbonate == pytest.approx(USUAL, rel=1e-9)


def test_the_acid_in_the_working_is_the_ph():
    ions = equilibrium(USUAL, 12.0)
    assert -math.log10(ions.hydrogen * ions.single) == pytest.approx(ions.ph)


def test_the_last_line_of_working_ends_in_the_ph():
    figure = ph_fresh(USUAL, 12.0)
    assert figure.working[-1].say(METRIC).endswith(figure.amount.show_exact(METRIC))


@pytest.mark.parametrize(("molality", "water_c"), [(0.02, 0.0), (0.3, 30.0), (0.02, 30.0), (0.3, 0.0)])
@pytest.mark.parametrize("carbon_dioxide", [None, 100e-6, 0.01])
def test_every_corner_of_the_range_is_answered(molality: float, water_c: float, carbon_dioxide: float | None):
    assert 7 < equilibrium(molality, water_c, carbon_dioxide).ph < 11


@pytest.mark.parametrize(
    ("arguments", "field"),
    [
        ((0.019, 12.0), "molality"),
        ((0.301, 12.0), "molality"),
        ((math.nan, 12.0), "molality"),
        ((USUAL, -0.1), "water_c"),
        ((USUAL, 30.1), "water_c"),
        ((USUAL, math.nan), "water_c"),
        ((USUAL, 12.0, 99e-6), "carbon_dioxide"),
        ((USUAL, 12.0, 0.011), "carbon_dioxide"),
    ],
)
def test_what_is_out_of_range_is_refused_by_field(arguments: tuple[float, ...], field: str):
    with pytest.raises(OutOfRange) as caught:
        equilibrium(*arguments)
    assert caught.value.field == field


@pytest.mark.parametrize(
    ("molality", "water_c"),
    [(0.0199, 12.0), (0.301, 12.0), (USUAL, -0.01), (USUAL, 30.01), (0.0, 12.0), (1.0, 12.0), (USUAL, 45.0)],
)
def test_outside_its_range_no_ph_is_expected(molality: float, water_c: float):
    assert expected_ph(molality, water_c) == ()


@pytest.mark.parametrize(("molality", "water_c"), [(0.02, 12.0), (0.3, 12.0), (USUAL, 0.0), (USUAL, 30.0)])
def test_at_each_end_of_its_range_both_are_expected(molality: float, water_c: float):
    assert [figure.key for figure in expected_ph(molality, water_c)] == ["ph_fresh", "ph_open"]


@pytest.mark.parametrize(
    ("water_c", "bicarbonate", "carbonate"),
    [(25.0, -0.25, 1.27), (0.0, -0.25 + 0.06709, 1.27 - 0.59776), (30.0, -0.25 - 0.01209, 1.27 + 0.10772)],
)
def test_sodium_pairs_as_phreeqc_has_it(water_c: float, bicarbonate: float, carbonate: float):
    """Log K at 25 °C and the heat of pairing, −1 and 8.91 kcal/mol, of phreeqc.dat; carried to the other temperatures
    by van ’t Hoff, worked by hand: heat ÷ R ÷ ln 10 × (1 ÷ 298.15 K − 1 ÷ T)."""
    known = constants(water_c)
    found = (math.log10(known.pair_bicarbonate), math.log10(known.pair_carbonate))
    assert found == pytest.approx((bicarbonate, carbonate), abs=5e-5)


@pytest.mark.parametrize(("water_c", "slope"), [(0.0, 0.4918078), (30.0, 0.5151306)])
def test_the_slope_in_daviess_formula_to_its_seventh_digit(water_c: float, slope: float):
    """Worked out a second time from the same polynomials of permittivity and density."""
    assert constants(water_c).debye == pytest.approx(slope, abs=1e-7)


def test_the_charge_tells_both():
    keys = [figure.key for figure in CHARGE_SHEET.answer({"water_m3": "6 qt", "water_c": "12 °C"}).figures]
    assert keys[3:5] == ["ph_fresh", "ph_open"]


def test_warm_water_is_still_charged():
    assert CHARGE_SHEET.answer({"water_m3": "6 qt", "water_c": "45 °C"}).figures
