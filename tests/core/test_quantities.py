"""How amounts are shown, and that the factors are the exact ones."""

from fractions import Fraction

import pytest
from attrs import evolve

from core import quantities, units
from core.quantities import (
    DOSE_MASS,
    MASS,
    METRIC,
    PARTS_PER_MILLION,
    PIECE_MASS,
    RELATIVE_HUMIDITY,
    TEMPERATURE,
    US,
    VOLUME,
    WATER_ACTIVITY,
    Amount,
    Quantity,
    Reader,
    show_number,
)
from core.units import (
    CUP,
    FAHRENHEIT,
    FAHRENHEIT_STEP,
    FLUID_OZ,
    FOOT,
    GALLON,
    INCH,
    LB,
    OZ,
    PINT,
    QUART,
    TBSP,
    TSP,
)

COMMA = Reader("metric", ",")
POUND_KG = 0.45359237
OUNCE_KG = POUND_KG / 16
TSP_M3 = 231 * 0.0254**3 / 768
ALL = [each for each in vars(quantities).values() if isinstance(each, Quantity)]


def plain(text):
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("kg", "shown"),
    [
        (0, "0 g"),
        (-0.0, "0 g"),
        (-1e-9, "0 g"),
        (0.0094, "9.4 g"),
        (0.009994, "9.99 g"),
        (0.009996, "10 g"),
        (0.01234, "12.3 g"),
        (0.09996, "100 g"),
        (0.9994, "999 g"),
        (0.9996, "1 000 g"),
        (1.25, "1 250 g"),
        (9.9994, "9 999 g"),
        (9.9996, "10 kg"),
        (12.4, "12.4 kg"),
        (12.3456, "12.346 kg"),
        (-1.25, "−1 250 g"),
        (1234.5, "1 234.5 kg"),
    ],
)
def test_a_weight_in_metric(kg, shown):
    assert plain(Amount(kg, MASS).show(METRIC)) == shown


@pytest.mark.parametrize(
    ("ounces", "shown"),
    [
        (0, "0 oz"),
        (3.5, "3.5 oz"),
        (15.96, "15.96 oz"),
        (15.994, "15.99 oz"),
        (15.996, "1 lb"),
        (16, "1 lb"),
        (31.94, "1 lb 15.9 oz"),
        (31.96, "2 lb"),
        (196, "12 lb 4 oz"),
        (-196, "−12 lb 4 oz"),
        (16_000 * 16, "16 000 lb"),
    ],
)
def test_a_weight_in_pounds_and_ounces(ounces, shown):
    assert plain(Amount(ounces * OUNCE_KG, MASS).show(US)) == shown


@pytest.mark.parametrize(
    ("litres", "shown"),
    [(0.00495, "5 ml"), (0.09996, "100 ml"), (0.9994, "999 ml"), (0.9996, "1 L"), (5.678, "5.68 L")],
)
def test_a_volume_in_metric(litres, shown):
    assert Amount(litres / 1000, VOLUME).show(METRIC) == shown


@pytest.mark.parametrize(
    ("teaspoons", "shown"),
    [(0.5, "0.5 tsp"), (2.994, "2.99 tsp"), (2.996, "1 tbsp"), (3, "1 tbsp"), (47.99, "0.25 qt"), (192, "1 qt")],
)
def test_a_volume_in_spoons_and_quarts(teaspoons, shown):
    assert Amount(teaspoons * TSP_M3, VOLUME).show(US) == shown


@pytest.mark.parametrize(
    ("quantity", "value", "reader", "shown"),
    [
        (TEMPERATURE, 12.0, METRIC, "12.0 °C"),
        (TEMPERATURE, 12.0, US, "53.6 °F"),
        (TEMPERATURE, 12.5, COMMA, "12,5 °C"),
        (TEMPERATURE, -0.04, METRIC, "0.0 °C"),
        (TEMPERATURE, -2.0, METRIC, "−2.0 °C"),
        (RELATIVE_HUMIDITY, 0.785, METRIC, "78.5 %"),
        (RELATIVE_HUMIDITY, 0.78, METRIC, "78 %"),
        (PARTS_PER_MILLION, 156e-6, METRIC, "156 ppm"),
        (WATER_ACTIVITY, 0.89, METRIC, "0.890"),
        (PIECE_MASS, 1.2504, METRIC, "1 250.4 g"),
        (DOSE_MASS, 0.031, METRIC, "31.0 g"),
        (DOSE_MASS, 0.031, US, "31.0 g (1.09 oz)"),
        (DOSE_MASS, 0.0025, METRIC, "2.50 g"),
        (DOSE_MASS, 0.009996, METRIC, "10.0 g"),
    ],
)
def test_other_kinds_are_shown_as_their_readers_expect(quantity, value, reader, shown):
    assert plain(Amount(value, quantity).show(reader)) == shown


@pytest.mark.parametrize(
    ("quantity", "value", "reader", "shown"),
    [
        (MASS, 1.2345678, METRIC, "1 234.57 g"),
        (MASS, 12.25 * POUND_KG, US, "12.25 lb"),
        (MASS, 9.9996, METRIC, "9.9996 kg"),
        (TEMPERATURE, 115 / 9, US, "55 °F"),
        (PARTS_PER_MILLION, 156.25e-6, METRIC, "156.25 ppm"),
        (MASS, 1e-20, METRIC, "0 g"),
        (MASS, 1.2345678, COMMA, "1 234,57 g"),
    ],
)
def test_the_exact_amount_carries_six_digits(quantity, value, reader, shown):
    assert plain(Amount(value, quantity).show_exact(reader)) == shown


@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf")])
def test_what_is_no_number_is_shown_as_a_dash(value):
    assert (Amount(value, MASS).show(), Amount(value, MASS).show_exact()) == ("—", "—")


def test_thousands_are_parted_by_a_space_that_does_not_break():
    assert show_number(1234567.25, 2, COMMA) == "1\u00a0234\u00a0567,25"


@pytest.mark.parametrize("value", [-0.0, -0.004, 0.004])
def test_zero_has_no_sign(value):
    assert show_number(value, 2) == "0.00"


INCH_M = Fraction(254, 10_000)
GALLON_M3 = 231 * INCH_M**3
POUND = Fraction(45_359_237, 100_000_000)


@pytest.mark.parametrize(
    ("unit", "exact"),
    [
        (LB, POUND),
        (OZ, POUND / 16),
        (INCH, INCH_M),
        (FOOT, 12 * INCH_M),
        (GALLON, GALLON_M3),
        (QUART, GALLON_M3 / 4),
        (PINT, GALLON_M3 / 8),
        (CUP, GALLON_M3 / 16),
        (FLUID_OZ, GALLON_M3 / 128),
        (TBSP, GALLON_M3 / 256),
        (TSP, GALLON_M3 / 768),
        (FAHRENHEIT_STEP, Fraction(5, 9)),
    ],
    ids=lambda each: getattr(each, "symbol", ""),
)
def test_a_factor_is_the_exact_one(unit, exact):
    assert abs(Fraction(unit.to_si(1.0)) / exact - 1) < Fraction(1, 10**15)


@pytest.mark.parametrize(("fahrenheit", "celsius"), [(32, 0), (212, 100), (-40, -40), (55, 115 / 9), (98.6, 37)])
def test_fahrenheit_is_turned_into_celsius(fahrenheit, celsius):
    assert FAHRENHEIT.to_si(fahrenheit) == pytest.approx(celsius, abs=1e-12)


@pytest.mark.parametrize("quantity", ALL, ids=lambda each: each.key)
def test_the_first_unit_is_the_si_one(quantity):
    assert (quantity.units[0].factor, quantity.units[0].shift) == (1.0, 0.0)


@pytest.mark.parametrize("quantity", ALL, ids=lambda each: each.key)
def test_no_spelling_belongs_to_two_units_of_a_quantity(quantity):
    spellings = [spelling for unit in quantity.units for spelling in {unit.symbol.lower(), *unit.spellings} if spelling]
    assert len(spellings) == len(set(spellings))


@pytest.mark.parametrize("quantity", ALL, ids=lambda each: each.key)
def test_every_unit_that_is_shown_may_be_typed(quantity):
    shown = {rung.unit for ladder in (quantity.metric, quantity.us) for rung in ladder}
    assert shown | {quantity.bare_metric, quantity.bare_us} <= set(quantity.units)


def test_keys_are_unique():
    assert len({each.key for each in ALL}) == len(ALL)


@pytest.mark.parametrize(
    ("rounds", "kg", "shown", "exact"),
    [
        ("nearest", 0.010075123, "10.1 g", "10.0751 g"),
        ("down", 0.010075123, "10.0 g", "10.0751 g"),
        ("up", 0.010075123, "10.1 g", "10.0752 g"),
        ("down", 0.9999999, "999.9 g", "999.999 g"),
        ("down", 0.031, "31.0 g", "31 g"),
        ("up", 0.031, "31.0 g", "31 g"),
    ],
)
def test_a_quantity_may_round_one_way(rounds, kg: float, shown: str, exact: str):
    amount = Amount(kg, evolve(DOSE_MASS, rounds=rounds))
    assert (amount.show(), amount.show_exact()) == (shown, exact)


def test_pounds_and_ounces_round_down_together():
    assert Amount(0.4535923, evolve(MASS, rounds="down")).show(US) == "15.99 oz"


# Entered a second time. Exact by definition: the international pound and inch, the US gallon of 231 in³; inches of
# mercury are the conventional ones of NIST SP 811, app. B.8.
@pytest.mark.parametrize(
    ("unit", "factor", "shift"),
    [
        (units.KG, 1.0, 0.0),
        (units.GRAM, 0.001, 0.0),
        (units.MG, 1e-06, 0.0),
        (units.LB, 0.45359237, 0.0),
        (units.OZ, 0.028349523125, 0.0),
        (units.M3, 1.0, 0.0),
        (units.LITRE, 0.001, 0.0),
        (units.ML, 1e-06, 0.0),
        (units.GALLON, 0.0037854117839999997, 0.0),
        (units.QUART, 0.0009463529459999999, 0.0),
        (units.PINT, 0.00047317647299999996, 0.0),
        (units.CUP, 0.00023658823649999998, 0.0),
        (units.FLUID_OZ, 2.9573529562499998e-05, 0.0),
        (units.TBSP, 1.4786764781249999e-05, 0.0),
        (units.TSP, 4.92892159375e-06, 0.0),
        (units.ONE, 1.0, 0.0),
        (units.PERCENT, 0.01, 0.0),
        (units.PPM, 1e-06, 0.0),
        (units.CELSIUS, 1.0, 0.0),
        (units.FAHRENHEIT, 0.5555555555555556, -17.77777777777778),
        (units.KELVIN, 1.0, 0.0),
        (units.KELVIN_STEP, 1.0, 0.0),
        (units.FAHRENHEIT_STEP, 0.5555555555555556, 0.0),
        (units.KELVIN_SECOND, 1.0, 0.0),
        (units.CELSIUS_HOUR, 3600.0, 0.0),
        (units.FAHRENHEIT_HOUR, 2000.0, 0.0),
        (units.SQUARE_METRE_A_SECOND, 1.0, 0.0),
        (units.SQUARE_MM_A_DAY, 1.1574074074074074e-11, 0.0),
        (units.PASCAL, 1.0, 0.0),
        (units.HECTOPASCAL, 100.0, 0.0),
        (units.KILOPASCAL, 1000.0, 0.0),
        (units.INCH_MERCURY, 3386.389, 0.0),
        (units.METRE, 1.0, 0.0),
        (units.MM, 0.001, 0.0),
        (units.CM, 0.01, 0.0),
        (units.FOOT, 0.30479999999999996, 0.0),
        (units.INCH, 0.0254, 0.0),
        (units.SECOND, 1.0, 0.0),
        (units.MINUTE, 60.0, 0.0),
        (units.HOUR, 3600.0, 0.0),
        (units.DAY, 86400.0, 0.0),
        (units.WEEK, 604800.0, 0.0),
        (units.PER_SECOND, 1.0, 0.0),
        (units.PERCENT_A_DAY, 1.1574074074074074e-07, 0.0),
        (units.KG_PER_KG, 1.0, 0.0),
        (units.G_PER_KG, 0.001, 0.0),
        (units.KG_PER_L, 1000.0, 0.0),
        (units.SALOMETER_DEGREE, 0.01, 0.0),
        (units.KG_PER_M3, 1.0, 0.0),
        (units.G_PER_M3, 0.001, 0.0),
        (units.J_PER_KG, 1.0, 0.0),
        (units.KJ_PER_KG, 1000.0, 0.0),
        (units.MOL_PER_KG, 1.0, 0.0),
    ],
)
def test_a_unit_is_so_much_of_the_si(unit: units.Unit, factor: float, shift: float):
    assert unit.factor == pytest.approx(factor, rel=1e-12)
    assert unit.shift == pytest.approx(shift, rel=1e-12)
