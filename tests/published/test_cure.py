"""The cure against worked examples in print, the regulations' figures and the molar masses."""

from datetime import date
from fractions import Fraction

import pytest

from core.mix import limits
from core.mix.cure import CureMix, Dose
from core.mix.cure_dose import figures
from core.mix.curing_salt import CuringSalt
from core.mix.limits import LIMITS
from core.mix.rule import Rule
from core.mix.rules import Curing, rule_sets, rules_for
from tests.core.dosing import from_dose
from tests.published.rows import Row, rows


def _computed(row: Row) -> float:
    given = row.inputs
    match row.quantity:
        case "nitrite_ppm" | "nitrate_ppm":
            salt = CuringSalt(given["nitrite"], given["nitrate"])
            made = from_dose(given["meat_kg"], given["cure_kg"], salt, given["method"])
            return next(each.value for each in made if each.key == row.quantity.removesuffix("_ppm")) * 1e6
        case "brine_ppm":
            dose = Dose(CuringSalt(given["nitrite"]), given["cure_kg"])
            charge = CureMix(1.0, (dose,), water_kg=given["water_kg"], taken=given["taken"])
            return figures(charge, Curing("us", "meat", given["method"]))[0].value * 1e6
        case "limit_ppm":
            limit = LIMITS[given["method"]]
            return limit.nitrite_ppm if given["part"] == "nitrite" else limit.nitrate_ppm
        case "most_ppm_of_rule" | "left_ppm_of_rule" | "least_ppm_of_rule":
            return getattr(_rule(given), row.quantity.removesuffix("_of_rule"))
        case "ounces_ppm":
            return given["ounces"] / (100 * 16) * 1e6
        case _:
            return _of_ions(row)


def _of_ions(row: Row) -> float:
    given = row.inputs
    match row.quantity:
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


def _rule(given: dict[str, str]) -> Rule:
    day = date.fromisoformat(given["day"]) if "day" in given else None
    found = rules_for(given["rules"], given["product"], given["method"], day)
    return next(rule for rule in found if rule.substance == given["substance"])


@pytest.mark.parametrize("row", rows("cure"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance


@pytest.mark.parametrize("row", [row for row in rows("cure") if row.quantity == "limit_ppm"], ids=lambda row: row.id)
def test_limits_follow_from_the_ounces_the_regulation_prints(row: Row):
    assert row.inputs["ounces"] / (100 * 16) * 1e6 == pytest.approx(row.expected, abs=max(row.tolerance, 1e-9))


OLD_BEFORE = date(2025, 10, 9)
PRINTED = [
    (rule_set.key, rule, part)
    for rule_set in rule_sets()
    for rule in rule_set.rules
    for part in ("most_ppm", "left_ppm", "least_ppm")
    if getattr(rule, part) is not None
]


def _names(row: Row, key: str, rule: Rule, part: str) -> bool:
    given = row.inputs
    if row.quantity != f"{part}_of_rule" or (given["rules"], given["product"]) != (key, rule.product):
        return False
    is_old = "day" in given and date.fromisoformat(given["day"]) < OLD_BEFORE
    return given["substance"] == rule.substance and given["method"] in rule.methods and is_old is bool(rule.until)


@pytest.mark.parametrize(
    ("key", "rule", "part"),
    PRINTED,
    ids=[f"{at}-{key}-{rule.product}-{part}" for at, (key, rule, part) in enumerate(PRINTED)],
)
def test_every_number_of_every_rule_has_its_row_with_a_source(key: str, rule: Rule, part: str):
    assert any(_names(row, key, rule, part) for row in rows("cure"))


def _exact(value: float) -> Fraction:
    return Fraction(str(value))


@pytest.mark.parametrize(
    "row", [row for row in rows("cure") if row.quantity in ("nitrite_ppm", "nitrate_ppm")], ids=lambda row: row.id
)
def test_a_dose_on_the_meat_agrees_with_exact_fractions(row: Row):
    given = row.inputs
    part = _exact(given[row.quantity.removesuffix("_ppm")])
    exact = _exact(given["cure_kg"]) * part / _exact(given["meat_kg"]) * 10**6
    assert _computed(row) == pytest.approx(float(exact), rel=1e-12)


@pytest.mark.parametrize("row", [row for row in rows("cure") if row.quantity == "brine_ppm"], ids=lambda row: row.id)
def test_a_brine_agrees_with_exact_fractions(row: Row):
    cure, water = _exact(row.inputs["cure_kg"]), _exact(row.inputs["water_kg"])
    exact = cure * _exact(row.inputs["nitrite"]) * _exact(row.inputs["taken"]) / (water + cure) * 10**6
    assert _computed(row) == pytest.approx(float(exact), rel=1e-12)
