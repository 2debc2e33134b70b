"""The proof against trichinella as a batch's own entries tell it: its salt, its days, and what was noted."""

import pytest
from attrs import evolve

from core.daybook.facts.batch import CureWeighed, PieceHung
from core.daybook.facts.meat import MeatNoted
from core.quantities import METRIC
from core.release.readiness import judge
from core.release.trichinella import trichinella
from core.units import INCH_M
from core.verdict import Reason
from tests.core.kitchen import Kitchen
from tests.core.proven import known

DRIED = MeatNoted(
    "pork", "cured", method="sausage-1", grind_m=0.008, across_m=0.06, dried_c=10.0, bare="yes", unwashed="yes"
)


def proof(kitchen: Kitchen, noted: MeatNoted, day: float = 32.0, salt_kg: float = 0.45, read_c: float = 12.0) -> Reason:
    """Of a piece hung on day 2, of 12.4 kg of meat."""
    batch = kitchen.begin()
    kitchen.note(CureWeighed(0.031, 0.0625, 0.0, salt_kg, "us", "meat", "comminuted"), batch)
    kitchen.note(noted, batch)
    piece = kitchen.note(PieceHung("J-1", 1.0, diameter_m=0.055), batch, 2)
    kitchen.read(batch, None, 10, read_c)
    return trichinella(known(kitchen, batch, piece, day).meat)


def test_a_cure_whose_conditions_are_all_met_is_a_proof(kitchen: Kitchen):
    assert proof(kitchen, DRIED).met is True


@pytest.mark.parametrize(
    ("day", "met"), [(21.9, False), (22.0, False), (24.9, False), (25.0, True)], ids=["dry", "dried", "since", "both"]
)
def test_its_days_are_counted_from_the_hook_and_from_the_cure(kitchen: Kitchen, day: float, met: bool):
    """9 CFR 318.10, method 1: 20 days in the drying room, 25 from the cure."""
    assert proof(kitchen, DRIED, day).met is met


def test_its_salt_counts_on_the_whole_raw_mix(kitchen: Kitchen):
    """0.39 kg and the curing salt's own are 3.38 % of the meat, and less of all that is in it."""
    assert proof(kitchen, DRIED, salt_kg=0.39).met is False
    assert proof(kitchen, evolve(DRIED, method="sausage-5"), day=70, salt_kg=0.39).met is False


def test_a_colder_reading_while_it_hung_counts(kitchen: Kitchen):
    told = proof(kitchen, DRIED, read_c=5.0)
    assert told.met is False
    assert "Coldest while it dried: 5 °C" in told.text.say(METRIC).replace("\u00a0", " ")


@pytest.mark.parametrize("key", ["grind_m", "across_m", "dried_c"])
def test_what_was_not_noted_is_not_known(kitchen: Kitchen, key: str):
    assert proof(kitchen, evolve(DRIED, **{key: None}), day=60).met is None


def test_too_wide_for_every_band_it_is_no_proof(kitchen: Kitchen):
    assert proof(kitchen, evolve(DRIED, across_m=4.01 * INCH_M), day=90).met is False


@pytest.mark.parametrize(
    ("noted", "met"),
    [
        (MeatNoted("none"), True),
        (MeatNoted("pork"), None),
        (MeatNoted("pork", "tested"), None),
        (MeatNoted("pork", "tested", "P-7"), True),
        (MeatNoted("game", "tested", "W-2"), True),
        (MeatNoted("game", "cured", method="sausage-1"), False),
        (MeatNoted("pork", "cured", method="of a newer daybook"), None),
        (MeatNoted("pork", "frozen", warmest_c=-18.0, lasted_s=21 * 86400.0, thick_m=0.1), True),
        (MeatNoted("pork", "frozen", warmest_c=-18.0, lasted_s=19 * 86400.0, thick_m=0.1), False),
        (MeatNoted("pork", "frozen", warmest_c=-18.0, lasted_s=21 * 86400.0), None),
    ],
)
def test_what_was_noted_of_the_meat_is_judged(kitchen: Kitchen, noted: MeatNoted, met: bool | None):
    assert proof(kitchen, noted).met is met


def test_noted_twice_nobody_knows_which_is_true(kitchen: Kitchen, batch: str):
    kitchen.tested(batch)
    judged = judge(known(kitchen, batch, kitchen.hang(batch)))
    assert "contradiction-meat-twice" in [each.key for each in judged.missing]
