"""The cure against worked examples in print, the regulation's ounces and the molar masses."""

import pytest

from core.mix import limits
from core.mix.cure import CuringSalt, from_dose
from core.mix.limits import LIMITS
from tests.published.rows import Row, rows


def _computed(row: Row) -> float:
    given = row.inputs
    match row.quantity:
        case "nitrite_ppm" | "nitrate_ppm":
            salt = CuringSalt(given["nitrite"], given["nitrate"])
            figures = from_dose(given["meat_kg"], given["cure_kg"], salt, given["method"])
            return next(each.value for each in figures if each.key == row.quantity.removesuffix("_ppm")) * 1e6
        case "limit_ppm":
            limit = LIMITS[given["method"]]
            return limit.nitrite_ppm if given["part"] == "nitrite" else limit.nitrate_ppm
        case "factor":
            return getattr(limits, given["name"])
        case "ratio":
            return getattr(limits, given["above"]) / getattr(limits, given["below"])
        case "sodium_nitrite_of_ion_ppm":
            return given["ion_ppm"] / limits.ION_IN_SODIUM_NITRITE
        case "sodium_nitrate_of_ion_ppm":
            return given["ion_ppm"] / limits.ION_IN_SODIUM_NITRATE
        case "potassium_nitrite_ppm":
            return given["sodium_nitrite_ppm"] * limits.ION_IN_SODIUM_NITRITE / limits.ION_IN_POTASSIUM_NITRITE
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("cure"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance


@pytest.mark.parametrize("row", [row for row in rows("cure") if row.quantity == "limit_ppm"], ids=lambda row: row.id)
def test_limits_follow_from_the_ounces_the_regulation_prints(row: Row):
    assert row.inputs["ounces"] / (100 * 16) * 1e6 == pytest.approx(row.expected, abs=max(row.tolerance, 1e-9))
