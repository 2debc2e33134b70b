"""Pork against trichinella: both freezing tables, each published way of curing, and a trial, row by row."""

from typing import Any

import pytest

from core.refusals import Refused
from core.release.cured_pork import conditions_of, days_more_for_salt, days_off
from core.release.frozen_pork import Frozen, asked_s
from core.release.trichinella_sheets import CURED_SHEET, hill_days
from tests.published.rows import Row, rows

DAY_S, HOUR_S = 86400.0, 3600.0
SI = {
    "across_mm": ("across_m", 1e-3),
    "salted": ("salted", 1.0),
    "dried_c": ("dried_c", 1.0),
    "held_h": ("held_s", HOUR_S),
    "held_c": ("held_c", 1.0),
    "heaviest_kg": ("heaviest_kg", 1.0),
    "contact_d": ("contact_s", DAY_S),
}


def _readings(given: dict[str, Any]) -> dict[str, float]:
    return {SI[key][0]: value * SI[key][1] for key, value in given.items() if key in SI}


def _computed(row: Row) -> float:
    given = row.inputs
    match row.quantity:
        case "cured":
            conditions = conditions_of(given["method"], _readings(given))
            (least,) = (each.least for each in conditions if each.reading == given["key"])
            assert least is not None
            return least / DAY_S
        case "refused":
            values = {**dict.fromkeys([each.key for each in CURED_SHEET.inputs]), **_readings(given)}
            with pytest.raises(ValueError, match="it needs"):
                CURED_SHEET.compute(**{**values, "method": given["method"]})
            return 1
        case "frozen":
            mm = given.get("mm")
            thick_m = None if mm is None else mm / 1000
            asked = asked_s(Frozen(given["measured"], given["c"], None, thick_m, given["law"]))
            return -1 if asked is None else asked / HOUR_S
        case "trial":
            days = hill_days(given["ph"], given["salt"])
            return -1 if days is None else days
        case "off":
            return days_off(given["held_h"] * HOUR_S, given["held_c"])
        case "more":
            more = days_more_for_salt(given["salted"])
            return -1 if more is None else more
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("trichinella"), ids=lambda row: row.id)
def test_agrees_with_print(row: Row):
    assert abs(_computed(row) - row.expected) <= row.tolerance


def test_a_sheet_refuses_beside_the_box_whose_gate_is_not_met():
    with pytest.raises(Refused) as caught:
        CURED_SHEET.answer({"method": "sausage-1", "salted": "3 %"})
    assert caught.value.refusals[0].field == "salted"
