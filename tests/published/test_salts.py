"""Humidity over saturated salts against Greenspan's table and against those who measured or fitted it otherwise."""

import math

import pytest

from core.chamber.checks_salts import SALTS, humidity_over, uncertainty_over
from tests.published.rows import Row, rows

ROWS = rows("salts")


def _percent(row: Row) -> float:
    formula = uncertainty_over if row.quantity == "uncertainty" else humidity_over
    return formula(SALTS[row.inputs["salt"]], row.inputs["temperature_c"]) * 100


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_percent(row) - row.expected) <= row.tolerance


@pytest.mark.parametrize("row", [row for row in ROWS if row.quantity == "greenspan"], ids=lambda row: row.id)
def test_greenspans_table_is_met_to_its_last_digit_which_he_cut(row: Row):
    assert math.floor(_percent(row) * 100 + 1e-6) == round(row.expected * 100)


def test_every_salt_offered_is_held_to_the_table_over_its_whole_range():
    for key, salt in SALTS.items():
        held = [
            row.inputs["temperature_c"] for row in ROWS if row.quantity == "greenspan" and row.inputs["salt"] == key
        ]
        assert (min(held), max(held)) == (salt.coldest_c, salt.warmest_c)


def test_no_salt_rests_on_one_source_alone():
    for key in SALTS:
        others = {row.source for row in ROWS if row.quantity == "humidity" and row.inputs["salt"] == key}
        assert len(others) >= 2, key
