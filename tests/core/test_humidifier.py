"""The humidifier's charge: spoons, grams, and what the water can take."""

import math

import pytest

from core.chamber.humidifier import (
    CHARGE_SHEET,
    SODA_DOSE,
    SODA_GRAMS,
    SPOONS,
    USUAL_CHARGE_KG_PER_M3,
    charge,
    solubility,
)
from core.quantities import METRIC, US, Amount, Quantity, Reader
from core.reading import read
from core.refusals import OutOfRange, Refused
from core.units import QUART_M3
from core.water import OUTSIDE_AIR
from core.working import Figure
from tests.core.telling import in_words


def figure(figures: tuple[Figure, ...], key: str) -> Figure:
    return next(each for each in figures if each.key == key)


def usual(quarts: float) -> tuple[Figure, ...]:
    return charge(quarts * QUART_M3, USUAL_CHARGE_KG_PER_M3)


def refused_field(call, *arguments) -> str:
    with pytest.raises(OutOfRange) as caught:
        call(*arguments)
    return caught.value.field


def test_six_quarts_take_six_tablespoons():
    assert figure(usual(6), "spoons").show(US) == "6 tbsp"


def test_a_tablespoon_is_13_8_grams():
    assert figure(usual(1), "soda").show(METRIC) == "13.8 g"


def test_the_spoons_carry_the_range_that_kitchens_print():
    spoons = figure(usual(6), "spoons")
    assert (spoons.low, spoons.high) == pytest.approx((82.8 / 18, 82.8 / 12))


@pytest.mark.parametrize("typed", ["1 tbsp/qt", "3 tsp/qt", "14.5823 g/L", "14.5823 kg/m³"])
def test_the_dose_may_be_typed_in_spoons_or_grams(typed: str):
    assert read(typed, SODA_DOSE) == pytest.approx(USUAL_CHARGE_KG_PER_M3, rel=1e-5)


def test_a_bare_dose_is_spoons_to_the_quart_for_a_us_reader():
    assert read("1", SODA_DOSE, US) == pytest.approx(USUAL_CHARGE_KG_PER_M3)


def test_the_usual_charge_is_a_fifth_of_what_cold_water_dissolves():
    figures = charge(6 * QUART_M3, USUAL_CHARGE_KG_PER_M3, water_c=5.0)
    assert figure(figures, "share_of_solubility").value == pytest.approx(0.2, abs=0.01)


def test_the_usual_charge_lowers_the_vapour_pressure_by_under_six_thousandths():
    lowering = figure(usual(6), "lowering")
    assert lowering.value == pytest.approx(1 - math.exp(-2 * 0.1738982 * 0.91 * 0.018015), rel=1e-5)
    assert not in_words(lowering.cautions)


def test_away_from_the_usual_charge_the_lowering_is_called_an_estimate():
    lowering = figure(charge(QUART_M3, 3 * USUAL_CHARGE_KG_PER_M3), "lowering")
    assert "estimate" in in_words(lowering.cautions)[0]


def test_plain_water_lowers_nothing():
    assert figure(charge(QUART_M3, 0.0), "lowering").value == 0


def test_a_misting_humidifier_is_warned_of():
    assert "wick keeps it" in in_words(figure(usual(6), "carried").cautions)[0]


def test_a_full_tank_may_be_filled_to_its_mark():
    assert charge(7 * QUART_M3, USUAL_CHARGE_KG_PER_M3, 7 * QUART_M3)


@pytest.mark.parametrize(("reader", "most"), [(METRIC, "at most 6.62 L:"), (US, "at most 7 qt:")])
def test_more_water_than_the_tanks_mark_is_refused_in_the_reader_s_units(reader: Reader, most: str):
    with pytest.raises(OutOfRange) as caught:
        charge(7.1 * QUART_M3, USUAL_CHARGE_KG_PER_M3, 7 * QUART_M3)
    assert most in caught.value.said.say(reader)
    assert caught.value.field == "water_m3"


def test_more_soda_than_dissolves_is_refused():
    assert refused_field(charge, QUART_M3, 80.0, None, 5.0) == "soda_kg_per_m3"


@pytest.mark.parametrize("water_m3", [0.0, -1.0, math.nan, math.inf])
def test_no_water_is_refused(water_m3: float):
    assert refused_field(charge, water_m3, 10.0) == "water_m3"


@pytest.mark.parametrize("water_c", [-0.1, 60.1, math.nan])
def test_solubility_is_not_extrapolated(water_c: float):
    assert refused_field(solubility, water_c) == "water_c"


def test_the_sheet_says_it_beside_the_water():
    with pytest.raises(Refused) as caught:
        CHARGE_SHEET.answer({"water_m3": "8 qt", "tank_m3": "7 qt"})
    assert [each.field for each in caught.value.refusals] == ["water_m3"]


def test_a_tank_without_a_mark_is_not_held_to_one():
    assert CHARGE_SHEET.answer({"water_m3": "8 qt"}).figures


@pytest.mark.parametrize(("water_c", "dissolves"), [(0.0, 0.06864), (20.0, 0.0958468), (60.0, 0.1638372)])
def test_what_a_kilogram_of_water_dissolves(water_c: float, dissolves: float):
    """The quadratic worked out by hand; the table behind it quotes Seidell."""
    assert solubility(water_c) == pytest.approx(dissolves, rel=1e-9)


@pytest.mark.parametrize(
    ("arguments", "field"),
    [
        ((0.9999, 10.0), None), ((1.0, 10.0), "water_m3"), ((1e-9, 10.0), None),
        ((0.005 * (1 + 0.995e-5), 10.0, 0.005), None), ((0.005 * (1 + 1.005e-5), 10.0, 0.005), "water_m3"),
        # 95.8468 g dissolve in a kilogram of water at 20 °C, and a litre of it weighs 998.2 g
        ((0.001, 95.6742, None, 20.0), None), ((0.001, 95.6744, None, 20.0), "soda_kg_per_m3"),
        ((0.001, 0.0), None), ((0.001, -1e-6), "soda_kg_per_m3"),
    ],
)  # fmt: skip
def test_each_limit_has_a_hair_on_either_side(arguments: tuple[float, ...], field: str | None):
    try:
        charge(*arguments)
        refused = None
    except OutOfRange as refusal:
        refused = refusal.field
    assert refused == field


def test_the_most_that_dissolves_is_told_rounded_down():
    with pytest.raises(OutOfRange, match="No more than 95 g/L of"):
        charge(0.001, 96.0)


def test_the_strength_is_moles_to_the_kilogram():
    """10 g/L ÷ 998.2 g/L ÷ 84.0066 g/mol."""
    strength = figure(charge(0.001, 10.0), "molality").value
    assert strength == pytest.approx(0.010 / 0.9982 / 0.0840066, rel=1e-9)


def test_the_share_is_of_what_dissolves_at_that_warmth():
    share = figure(charge(0.001, 9.982, water_c=20.0), "share_of_solubility").value
    assert share == pytest.approx(0.01 / 0.0958468, rel=1e-9)


@pytest.mark.parametrize(
    ("molality", "low", "high", "is_known"),
    [(0.1501, 0.895, 0.925, True), (0.1499, 0.8, 1.0, False), (0.1999, 0.895, 0.925, True), (0.2001, 0.8, 1.0, False)],
)
def test_the_osmotic_coefficient_is_known_about_the_usual_charge(
    molality: float, low: float, high: float, is_known: bool
):
    lowering = figure(charge(0.001, molality * 998.2 * 0.0840066), "lowering")
    told = (lowering.low, lowering.value, lowering.high)
    assert told == pytest.approx([1 - math.exp(-2 * molality * each * 0.018015) for each in (low, 0.91, high)])
    assert (not in_words(lowering.cautions)) is is_known


@pytest.mark.parametrize(
    ("value", "quantity", "metric", "us"),
    [
        (14.5823, SODA_DOSE, "14.6 g/L", "1 tbsp/qt"),
        (1.234 * USUAL_CHARGE_KG_PER_M3, SODA_DOSE, "18 g/L", "1.23 tbsp/qt"),
        (14.5823, SODA_GRAMS, "14.6 g/L", "14.6 g/L"),
        (6.123, SPOONS, "6.1 tbsp", "6.1 tbsp"),
    ],
)
def test_a_dose_is_shown_as_a_scale_or_a_spoon_can_measure_it(value: float, quantity: Quantity, metric: str, us: str):
    amount = Amount(value, quantity)
    assert (amount.show(METRIC), amount.show(US)) == (metric, us)


def test_what_may_be_typed_for_a_charge():
    """Water from a tenth of a litre to a cubic metre; carbon dioxide from 100 ppm to 1 %."""
    assert [(each.key, each.low, each.high, each.default) for each in CHARGE_SHEET.inputs] == [
        ("water_m3", 0.0001, 1.0, None),
        ("soda_kg_per_m3", 0.0, 100.0, USUAL_CHARGE_KG_PER_M3),
        ("tank_m3", 0.0001, 1.0, None),
        ("water_c", 0.0, 60.0, 20.0),
        ("carbon_dioxide", 0.0001, 0.01, OUTSIDE_AIR),
    ]


def test_water_is_taken_at_20_degrees_and_dissolves_just_so_much():
    most = solubility(20.0) * 998.2
    share = figure(charge(0.001, most), "share_of_solubility")
    assert share.value == pytest.approx(1.0, rel=1e-12)
    assert "95.6743 g/L ÷ 95.6743 g/L" in share.working[0].say(METRIC)
