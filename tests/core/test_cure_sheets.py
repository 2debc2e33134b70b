"""The single sums of the cure hand every box to the sum it is meant for: worked by hand, box by box."""

import pytest

from core.refusals import Refused
from core.worksheets import find

CANADA = {"meat_kg": "10 kg", "nitrite": "6.25 %", "nitrate": "0 %", "law": "ca", "method": "comminuted"}
"""Its ppm are counted on the whole raw mixture, meat, salt, cure and all else."""
US = {"meat_kg": "10 kg", "nitrite": "6.25 %", "nitrate": "0 %", "law": "us", "method": "comminuted"}


def made(name: str, key: str, **texts: str) -> float:
    return {each.key: each.value for each in find(name).answer(texts).figures}[key]


@pytest.mark.parametrize(
    ("other_salt", "other", "mixture_kg"), [("", "", 10.0), ("250 g", "", 10.25), ("250 g", "1 kg", 11.25)]
)
def test_all_that_is_weighed_counts_in_canada(other_salt: str, other: str, mixture_kg: float):
    """100 ppm of mixture and cure: cure × 6.25 % = 100 ppm × (mixture + cure)."""
    boxes = {"other_salt_kg": other_salt, "other_kg": other}
    assert made("cure-dose", "cure", **CANADA, **boxes, wanted="100 ppm") == pytest.approx(
        100e-6 * mixture_kg / (0.0625 - 100e-6)
    )
    assert made("cure-ppm", "nitrite", **CANADA, **boxes, dose="0.25 %") == pytest.approx(
        0.0015625 / (mixture_kg + 0.025)
    )


def test_a_second_curing_salt_counts_with_its_own_label():
    """10 g of 6.25 % and 5 g of 5 % in 10 kg: 625 mg and 250 mg of nitrite."""
    second = {"second_kg": "5 g", "second_nitrite": "5 %", "second_nitrate": "0 %"}
    assert made("cure-ppm", "nitrite", **US, dose="0.1 %", **second) == pytest.approx(87.5e-6)


def test_the_nitrate_of_the_label_counts_as_nitrate():
    assert made("cure-ppm", "nitrate", **US | {"nitrate": "4 %"}, dose="0.1 %") == pytest.approx(40e-6)


@pytest.mark.parametrize(
    ("law", "method", "most_ppm"),
    [
        # 9 CFR 424.21(c) and 424.22(b); the EU's 80 mg/kg of ion are 119.98 of the sodium salt, 150 of it before
        ("us", "comminuted", 156.25),
        ("us-bacon", "dry-rub", 200.0),
        ("eu", "comminuted", 119.98),
        ("eu-old", "comminuted", 150.0),
    ],
)
def test_each_law_stops_at_its_own_limit(law: str, method: str, most_ppm: float):
    boxes = US | {"law": law, "method": method}
    assert made("cure-dose", "nitrite", **boxes, wanted=f"{most_ppm - 0.1} ppm") == pytest.approx(
        most_ppm / 1e6, rel=0.01
    )
    with pytest.raises(Refused, match=r"[Tt]he limit for"):
        made("cure-dose", "nitrite", **boxes, wanted=f"{most_ppm + 0.3} ppm")


BRINE = {"meat_kg": "5 kg", "nitrite": "6.25 %", "water_kg": "10 kg", "other_salt_kg": "1200 g", "sugar_kg": "400 g"}
"""11.6 kg without its cure."""
PUMPED = BRINE | {"taken": "10 %"}


@pytest.mark.parametrize(
    ("name", "texts", "expected"),
    [
        # 240 g make 15 g of nitrite in 11.84 kg; a tenth of the meat's weight of it goes in
        ("cure-pump", PUMPED | {"cure_kg": "240 g"}, {"pickle": 11.84, "nitrite": 0.1 * 0.015 / 11.84}),
        # 25 g make 1.5625 g in meat and brine together
        ("cure-immersion", BRINE | {"cure_kg": "25 g"}, {"pickle": 11.625, "nitrite": 0.0015625 / 16.625}),
        # cure × 6.25 % ÷ (11.6 kg + cure) × 10 % = 120 ppm
        (
            "cure-pump-dose",
            PUMPED | {"wanted": "120 ppm"},
            {"cure": 0.01392 / 0.0613, "pickle": 11.6 + 0.01392 / 0.0613},
        ),
        # cure × 6.25 % = 100 ppm × (16.6 kg + cure)
        (
            "cure-immersion-dose",
            BRINE | {"wanted": "100 ppm"},
            {"cure": 0.00166 / 0.0624, "pickle": 11.6 + 0.00166 / 0.0624},
        ),
    ],
)
def test_a_brine_by_its_cure_and_by_the_ppm_wanted(name: str, texts: dict[str, str], expected: dict[str, float]):
    assert {key: made(name, key, **texts) for key in expected} == pytest.approx(expected)
