"""The humidifier's charge against a solubility table and two chemical databases."""

import pytest

from core.chamber.humidifier import TABLESPOON_KG, charge, solubility
from core.units import QUART_M3
from core.working import Figure
from tests.published.rows import Row, rows


def _charged(row: Row, key: str) -> Figure:
    water_m3 = row.inputs["quarts"] * QUART_M3
    figures = charge(water_m3, row.inputs["soda_g"] / 1000 / water_m3)
    return next(each for each in figures if each.key == key)


def _computed(row: Row) -> float:
    match row.quantity:
        case "spoon_g":
            return TABLESPOON_KG * 1000
        case "molality":
            return _charged(row, "molality").value
        case "carried_g_per_l":
            return _charged(row, "carried").value
        case "solubility_g_per_100g":
            return solubility(row.inputs["water_c"]) * 100
        case "lowering_percent":
            return _charged(row, "lowering").value * 100
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("humidifier"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance


@pytest.mark.parametrize(
    "row", [row for row in rows("humidifier") if row.quantity == "lowering_percent"], ids=lambda row: row.id
)
def test_the_range_of_the_lowering_holds_every_database(row: Row):
    figure = _charged(row, "lowering")
    assert figure.low is not None
    assert figure.high is not None
    assert figure.low <= row.expected / 100 <= figure.high
