"""Brine: strength, salometer, density, volume, and the recipe that is its inverse."""

import pytest

from core.mix.brine import brine_figures, density_kg_per_m3, recipe
from core.mix.cure import CureMix, Dose
from core.mix.curing_salt import CuringSalt
from core.quantities import METRIC
from core.refusals import OutOfRange
from core.working import Figure


def brine(cure_kg: float = 0.0, **masses: float) -> tuple[Figure, ...]:
    return brine_figures(CureMix(1.0, (Dose(CuringSalt(0.0625), cure_kg),), **masses))


def value(made: tuple[Figure, ...], key: str) -> float:
    return next(each.value for each in made if each.key == key)


def test_salt_is_told_of_the_whole_brine():
    assert value(brine(other_salt_kg=1.0, water_kg=9.0), "brine_salt") == pytest.approx(0.1)


def test_the_cures_own_salt_counts():
    made = brine(0.16, other_salt_kg=0.85, water_kg=9.0)
    assert value(made, "brine_salt") == pytest.approx(1.0 / 10.01)


def test_a_saturated_brine_floats_the_salometer_at_100_degrees():
    made = brine(other_salt_kg=26.4, water_kg=73.6)
    assert next(each for each in made if each.key == "salometer").show(METRIC) == "100 degrees"


def test_half_as_strong_is_50_degrees():
    assert value(brine(other_salt_kg=13.2, water_kg=86.8), "salometer") == pytest.approx(0.5)


def test_more_salt_than_dissolves_is_refused():
    with pytest.raises(OutOfRange, match="does not dissolve"):
        brine(other_salt_kg=4.0, water_kg=10.0)


def test_water_alone_has_the_density_of_water():
    assert density_kg_per_m3(0.0) == pytest.approx(998.2)


@pytest.mark.parametrize("salt", [-0.01, 0.27, float("nan")])
def test_density_beyond_saturation_is_refused(salt: float):
    with pytest.raises(OutOfRange):
        density_kg_per_m3(salt)


def test_sugar_takes_up_room_of_its_own():
    plain = value(brine(other_salt_kg=1.0, water_kg=9.0), "volume")
    assert value(brine(other_salt_kg=1.0, water_kg=9.0, sugar_kg=1.0), "volume") - plain == pytest.approx(0.62e-3)


def test_a_recipe_makes_the_brine_it_is_for():
    salt, water = (figure.value for figure in recipe(0.010, 0.1584)[:2])
    made = brine(other_salt_kg=salt, water_kg=water)
    assert value(made, "volume") == pytest.approx(0.010)
    assert value(made, "salometer") == pytest.approx(0.6)


def test_a_recipe_stronger_than_water_holds_is_refused_on_its_share():
    with pytest.raises(OutOfRange) as caught:
        recipe(0.010, 0.3)
    assert caught.value.field == "share"


@pytest.mark.parametrize(("salt", "holds"), [(0.0, True), (0.264, True), (0.2641, False), (-1e-9, False)])
def test_water_holds_26_4_per_cent_salt(salt: float, holds: bool):
    """CFIA, Meat Hygiene Manual of Procedures, 4.13.2."""
    if holds:
        assert density_kg_per_m3(salt) >= 998.2
        weighed, water, *_ = recipe(0.001, salt)
        assert weighed.value == pytest.approx(water.value * salt / (1 - salt))
        return
    with pytest.raises(OutOfRange):
        density_kg_per_m3(salt)
    with pytest.raises(OutOfRange):
        recipe(0.001, salt)


@pytest.mark.parametrize(("salt_kg", "dissolves"), [(26.4, True), (26.42, False)])
def test_a_brine_dissolves_to_saturation(salt_kg: float, dissolves: bool):
    if dissolves:
        assert value(brine(other_salt_kg=salt_kg, water_kg=73.6), "salometer") == pytest.approx(1.0)
        return
    with pytest.raises(OutOfRange):
        brine(other_salt_kg=salt_kg, water_kg=73.6)
