"""Which units numbers may be in: each bound from both sides."""

import pytest

from core.chamber.logs.scales import SCALES, factor_in, is_believed, scaled, trimmed, units_of, units_that_fit


def warm(value: float, *, whole: bool = False) -> tuple[str, ...]:
    return units_that_fit("temperature", [value] * 20, are_whole=whole)


def humid(*values: float, whole: bool = False) -> tuple[str, ...]:
    return units_that_fit("humidity", list(values), are_whole=whole)


@pytest.mark.parametrize(
    ("unit", "value", "meant"),
    [
        ("°C", 12.5, 12.5),
        ("°F", 54.5, 12.5),
        ("K", 285.65, 12.5),
        ("°C/10", 125, 12.5),
        ("°C/100", 1250, 12.5),
        ("°C/1000", 12500, 12.5),
        ("°F/10", 545, 12.5),
        ("°F/100", 5450, 12.5),
        ("%", 78.5, 0.785),
        ("fraction", 0.785, 0.785),
        ("%/10", 785, 0.785),
        ("%/100", 7850, 0.785),
    ],
)
def test_what_a_number_means(unit: str, value: float, meant: float):
    assert SCALES[unit].meaning(value) == pytest.approx(meant, abs=1e-9)  # type: ignore[index]


def test_every_unit_is_of_one_quantity():
    assert set(units_of("temperature")) | set(units_of("humidity")) == set(SCALES)
    assert not set(units_of("temperature")) & set(units_of("humidity"))


@pytest.mark.parametrize(
    ("value", "units"),
    [
        (70.0, ("°C", "°F")),
        (70.1, ("°F",)),
        (-22.0, ("°C", "°F")),
        (-22.1, ("°C",)),
        (-30.0, ("°C",)),
        (158.0, ("°F",)),
        (243.2, ("K",)),
        (343.1, ("K",)),
    ],
)
def test_the_units_of_a_number_with_decimals(value: float, units: tuple[str, ...]):
    assert warm(value) == units


@pytest.mark.parametrize("value", [-30.1, 158.1, 243.1, 343.2])
def test_a_number_that_fits_no_place_may_be_in_any_plain_unit(value: float):
    assert warm(value) == ("°C", "°F", "K")


@pytest.mark.parametrize(
    ("value", "units"),
    [
        (0, ("°C", "°F", "°C/10", "°F/10")),
        (-25, ("°C", "°C/10", "°F/10")),
        (29, ("°C", "°F", "°C/10", "°F/10")),
        (120, ("°F", "°C/10", "°C/100", "°F/10", "°F/100")),
        (299, ("K", "°C/10", "°C/100", "°F/10", "°F/100")),
        (300, ("K", "°C/10", "°C/100", "°C/1000", "°F/10", "°F/100")),
    ],
)
def test_whole_numbers_may_be_tenths_and_smaller_parts(value: int, units: tuple[str, ...]):
    assert warm(value, whole=True) == units


@pytest.mark.parametrize(
    ("values", "units"),
    [
        ((0.0, 1.5), ("%", "fraction")),
        ((0.0, 1.6), ("%",)),
        ((0.2, 1.1), ("fraction",)),
        ((0.19, 1.1), ("%", "fraction")),
        ((0.2, 1.11), ("%", "fraction")),
        ((40.0, 110.0), ("%",)),
        ((), ("%", "fraction")),
    ],
)
def test_the_units_of_a_humidity(values: tuple[float, ...], units: tuple[str, ...]):
    assert humid(*values) == units


@pytest.mark.parametrize(
    ("low", "high", "units"),
    [
        (20, 1100, ("%/10",)),
        (200, 1100, ("%/10", "%/100")),
        (200, 1101, ("%/100",)),
        (19, 1100, ("%", "fraction", "%/10", "%/100")),
        (199, 11_000, ("%", "fraction", "%/10", "%/100")),
    ],
)
def test_humidities_above_all_there_is_are_parts_of_a_per_cent(low: int, high: int, units: tuple[str, ...]):
    assert humid(low, high, whole=True) == units


def test_with_decimals_they_are_no_parts_and_any_unit_is_offered():
    assert humid(783.5, 791.5) == ("%", "fraction", "%/10", "%/100")


@pytest.mark.parametrize(
    ("unit", "value", "believed"),
    [
        ("°C", -60.0, True),
        ("°C", -60.1, False),
        ("°C", 85.0, True),
        ("°C", 85.1, False),
        ("°F", 185.0, True),
        ("°F", 185.2, False),
        ("%", 1.5, False),
        ("%", 1.6, True),
        ("%", 110.0, True),
        ("%", 110.1, False),
        ("%", -0.1, False),
        ("fraction", 1.1, True),
        ("fraction", 1.11, False),
        ("written", 999.0, True),
    ],
)
def test_a_unit_in_a_head_is_believed_within_what_a_sensor_may_say(unit: str, value: float, believed: bool):
    assert is_believed(unit, [value] * 20) == believed  # type: ignore[arg-type]


@pytest.mark.parametrize(("low", "believed"), [(0.0, True), (-0.1, False)])
def test_from_nothing_on_a_humidity_is_believed(low: float, believed: bool):
    assert is_believed("%", [low, 80.0]) == believed
    assert is_believed("fraction", [low / 100, 0.8]) == believed


def test_without_numbers_any_plain_unit_is_possible():
    assert units_that_fit("temperature", [], are_whole=True) == ("°C", "°F", "K")


def test_a_unit_over_no_numbers_is_believed():
    assert is_believed("°C", [])


@pytest.mark.parametrize(("count", "broken", "largest"), [(20, 1, 12.0), (19, 1, 999.0), (20, 2, 999.0), (40, 2, 12.0)])
def test_one_reading_in_twenty_may_be_broken(count: int, broken: int, largest: float):
    assert trimmed([12.0] * (count - broken) + [999.0] * broken) == (12.0, largest)


@pytest.mark.parametrize(
    ("head", "factor"),
    [
        ("T [1/10 °C]", 10),
        ("T (1 / 100 °C)", 100),
        ("Temp (0.1 °C)", 10),
        ("Temp (0,01 °C)", 100),
        ("Temp x10", 10),
        ("Temp ×100", 100),
        ("Temp °C/10", 10),
        ("Temp m°C", 1000),
        ("temp_mC", 1000),
        ("RH (‰)", 10),
        ("Temp (°C)", 1),
        ("Temp 10 (°C)", 1),
        ("Temp x1000", 1000),
        ("Temp x10000", 1),
        ("Room C", 1),
    ],
)
def test_a_head_may_say_by_how_much_its_numbers_are_multiplied(head: str, factor: int):
    assert factor_in(head) == factor


@pytest.mark.parametrize(
    ("unit", "factor", "whole"), [("°C", 1, "°C"), ("°C", 100, "°C/100"), ("%", 10, "%/10"), ("K", 10, "")]
)
def test_a_unit_and_a_factor_make_one(unit: str, factor: int, whole: str):
    assert scaled(unit, factor) == whole
