"""Flows, speeds and rooms as they are shown and typed: decimals, and from where on the next unit is used."""

import pytest

from core.chamber.rates import (
    AIR_SPEED,
    FILM,
    FLUX,
    LASTING,
    MOISTURE,
    POWER,
    ROOM,
    SURFACE_OF_A_KILO,
    WATER_A_DAY,
)
from core.quantities import METRIC, US, Amount, Quantity
from core.reading import read

LITRE_A_DAY = 0.001 / 86_400
FOOT_M = 0.3048
QUART_M3 = 231 * 0.0254**3 / 4


@pytest.mark.parametrize(
    ("value", "quantity", "metric", "us"),
    [
        (0.5 * LITRE_A_DAY, WATER_A_DAY, "0.5 L a day", "0.53 qt a day"),
        (1.236 * LITRE_A_DAY, WATER_A_DAY, "1.24 L a day", "1.31 qt a day"),
        (4.236e-3 / 3600, MOISTURE, "4.24 g/h", "4.24 g/h"),
        (3.26, POWER, "3.3 W", "3.3 W"),
        (12.26, FILM, "12.3 W/(m² K)", "12.3 W/(m² K)"),
        (0.316, AIR_SPEED, "0.32 m/s", "62 ft/min"),
        (60.4 * FOOT_M / 60, AIR_SPEED, "0.31 m/s", "60 ft/min"),
        (16.04e-3 / 3600, FLUX, "16.0 g/(m² h)", "16.0 g/(m² h)"),
        (0.063492, SURFACE_OF_A_KILO, "0.0635 m²/kg", "0.0635 m²/kg"),
        (0.5004, ROOM, "500 L", "17.7 ft³"),
        (0.5006, ROOM, "501 L", "17.7 ft³"),
        (9.99, ROOM, "9\u00a0990 L", "352.8 ft³"),
        (10.0, ROOM, "10 m³", "353.1 ft³"),
        (10.05, ROOM, "10.05 m³", "354.9 ft³"),
        (10.126, ROOM, "10.13 m³", "357.6 ft³"),
    ],
)
def test_how_a_flow_or_a_room_is_shown(value: float, quantity: Quantity, metric: str, us: str):
    amount = Amount(value, quantity)
    assert (amount.show(METRIC), amount.show(US)) == (metric, us)


@pytest.mark.parametrize(
    ("value_s", "shown"),
    [
        (2.26 * 86_400, "2.3 d"), (172_800, "2 d"), (172_500, "47.9 h"), (2.26 * 3600, "2.3 h"), (7200, "2 h"),
        (7100, "118 min"), (160, "3 min"), (120, "2 min"), (119, "119 s"), (1.4, "1 s"),
    ],
)  # fmt: skip
def test_a_time_is_shown_in_the_largest_unit_that_makes_two(value_s: float, shown: str):
    assert Amount(value_s, LASTING).show(METRIC) == shown


@pytest.mark.parametrize(
    ("typed", "quantity", "value"),
    [
        ("1 L a day", WATER_A_DAY, LITRE_A_DAY),
        ("1 qt a day", WATER_A_DAY, QUART_M3 / 86_400),
        ("1 pt a day", WATER_A_DAY, QUART_M3 / 2 / 86_400),
        ("1 gal a day", WATER_A_DAY, QUART_M3 * 4 / 86_400),
        ("3.6 g/h", MOISTURE, 1e-6),
        ("2 kg/s", MOISTURE, 2.0),
        ("2 m³/s", WATER_A_DAY, 2.0),
        ("2 kg/(m² s)", FLUX, 2.0),
        ("2 W", POWER, 2.0),
        ("2 W/(m² K)", FILM, 2.0),
        ("2 m²/kg", SURFACE_OF_A_KILO, 2.0),
        ("0.3 m/s", AIR_SPEED, 0.3),
        ("60 ft/min", AIR_SPEED, FOOT_M),
        ("3600 g/(m² h)", FLUX, 1e-3),
        ("500 L", ROOM, 0.5),
        ("2 m³", ROOM, 2.0),
        ("18 ft³", ROOM, 18 * FOOT_M**3),
        ("2 h", LASTING, 7200.0),
        ("2 d", LASTING, 172_800.0),
        ("2 min", LASTING, 120.0),
    ],
)
def test_what_is_typed_is_so_much(typed: str, quantity: Quantity, value: float):
    """A US quart is a quarter of 231 cubic inches, an inch 25.4 mm, by definition."""
    assert read(typed, quantity) == pytest.approx(value, rel=1e-9)
