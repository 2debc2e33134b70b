"""The boiling point against two formulations of water and a kitchen table."""

import pytest

from core.chamber.checks_thermometer import boiling_point_c
from core.units import FOOT
from core.vapour import station_pressure_pa
from tests.published.rows import Row, rows


def _computed(row: Row) -> float:
    given = row.inputs
    match row.quantity:
        case "boiling_c":
            return boiling_point_c(given["pressure_pa"])
        case "boiling_at_altitude_c":
            return boiling_point_c(station_pressure_pa(given["altitude_m"]))
        case "boiling_at_feet_f":
            return boiling_point_c(station_pressure_pa(FOOT.to_si(given["altitude_ft"]))) * 1.8 + 32
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("boiling"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance


def test_it_is_within_a_tenth_of_a_millikelvin_of_coolprop_over_its_whole_range():
    properties = pytest.importorskip("CoolProp.CoolProp")
    for pressure_pa in range(60_000, 110_001, 500):
        theirs = properties.PropsSI("T", "P", float(pressure_pa), "Q", 0, "Water") - 273.15
        assert abs(boiling_point_c(pressure_pa) - theirs) < 1e-4
