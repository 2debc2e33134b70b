"""Doors that stand in another rise, or hardly rise: what tells them, held against chambers whose doors are known."""

from functools import cache

import pytest
from attrs import evolve

from core.chamber.series import Series
from core.chamber.settling.analysis import Compressor
from core.chamber.settling.humid_air import humid_air
from core.chamber.settling.witness import Witness, witness_of
from tests.core.analysed import compressor_of
from tests.core.chamber_model import Truth
from tests.core.chamber_study import LUMPS, WALLED, Kind, events, matched, probe

Counts = tuple[int, int, int]


@cache
def logged(kind: Kind, seed: int) -> tuple[Truth, Series]:
    chamber, logger = kind.draw(seed)
    happened = kind.run(chamber)
    return happened, probe(happened, evolve(logger, interval_s=60.0), "low", seed)


def told(happened: Truth, found: Compressor) -> tuple[Counts, Counts]:
    """Doors, and defrosts: found and true, true, found."""
    doors = matched(happened.doors, events(found, "door"), 300.0, happened.lasts_s)
    return doors, matched(happened.defrosts, events(found, "defrost"), 300.0, happened.lasts_s)


@pytest.mark.parametrize("seed", [503, 522, 526, 556])
def test_a_door_opened_while_it_defrosts_is_told_beside_the_defrost(seed: int):
    happened, log = logged(LUMPS, seed)
    for hits, true, found in told(happened, compressor_of(log)):
        assert hits == true == found


@pytest.mark.parametrize(
    ("kind", "seed", "opened_s"), [(LUMPS, 530, 20_650.0), (WALLED, 556, 23_590.0)], ids=["lump", "walled"]
)
def test_a_door_opened_late_in_the_first_hold_is_none_of_it(kind: Kind, seed: int, opened_s: float):
    """The holds began at 16800 and at 22500 s."""
    happened, log = logged(kind, seed)
    assert opened_s in [opens_s for opens_s, _ in happened.doors]
    assert any(abs(event.top_s - opened_s) < 300 for event in events(compressor_of(log), "door"))


def test_a_door_whose_warmth_only_just_shows_is_told_by_its_vapour():
    """At 100560 s, from a room that is drier by 286 Pa: the temperature rises to its usual peak."""
    happened, log = logged(WALLED, 507)
    dry = Series(log.probe, log.times_s, log.temperatures_c)
    assert told(happened, compressor_of(log))[0] == (1, 1, 1)
    assert told(happened, compressor_of(dry))[0] == (0, 1, 0)


def seen(vapour_pa: list[float]) -> bool:
    times_s = [60.0 * place for place in range(len(vapour_pa))]
    return Witness(times_s, vapour_pa, 1, 40.0).saw_a_door(60.0, 180.0)


@pytest.mark.parametrize(("fall_pa", "is_seen"), [(41.0, True), (39.0, False), (-90.0, False)])
def test_only_a_fall_bears_witness(fall_pa: float, is_seen: bool):
    assert seen([1100.0, 1100.0, 1090.0, 1100.0 - fall_pa, 1000.0]) is is_seen


def test_what_a_rise_at_the_logs_end_did_is_seen_as_far_as_it_goes():
    assert seen([1100.0, 1100.0, 1050.0])


def test_a_fall_is_a_third_of_what_hardly_any_move_exceeds():
    """The humidity swings by 0.2 within each four minutes."""
    log = Series(
        "low", [60.0 * place for place in range(200)], [12.0] * 200, [0.6, 0.6, 0.6, 0.6, 0.8, 0.8, 0.8, 0.8] * 25
    )
    air = humid_air(log)
    assert air is not None
    assert witness_of(air).least_pa == pytest.approx(0.33 * (air.vapour_pa[4] - air.vapour_pa[0]))


def test_readings_that_come_fast_are_looked_at_together():
    """Single ones fall by 60 Pa, three about them by 20."""
    times_s = [30.0 * place for place in range(8)]
    vapour_pa = [1100.0, 1100.0, 1100.0, 1100.0, 1100.0, 1100.0, 1040.0, 1100.0]
    assert Witness(times_s, vapour_pa, 1, 40.0).saw_a_door(60.0, 180.0)
    assert not Witness(times_s, vapour_pa, 3, 40.0).saw_a_door(60.0, 180.0)
