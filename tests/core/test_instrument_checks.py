"""What was read in a check is refused beside the very box it was typed in, by the fact itself or by its sum."""

from collections.abc import Callable

import attrs
import pytest

from core.daybook.facts.fields import boxes
from core.daybook.facts.instruments import (
    BoilingPointChecked,
    BuffersChecked,
    Check,
    IcePointChecked,
    InstrumentAdded,
    MassesChecked,
    SaltChecked,
    TwoSaltsChecked,
)
from core.daybook.instrument_checks import WAYS, work_out
from core.refusals import Refusal

HYGROMETER = InstrumentAdded("Larder", "hygrometer")
REFUSED: tuple[tuple[Callable[[], Check], str], ...] = (
    (lambda: IcePointChecked(0.1, 50.0), "division_k"),
    (lambda: BoilingPointChecked(99.0, 99999.0), "altitude_m"),
    (lambda: BoilingPointChecked(99.0, None, 10.0), "pressure_pa"),
    (lambda: SaltChecked("gravel", 12.0, 0.75), "salt"),
    (lambda: SaltChecked("nacl", 100.0, 0.75), "temperature_c"),
    (lambda: SaltChecked("nacl", 12.0, 0.75, division=0.9), "division"),
    (lambda: TwoSaltsChecked("nacl", 12.0, 0.75, "gravel", 12.0, 0.86), "other_salt"),
    (lambda: TwoSaltsChecked("nacl", 12.0, 0.75, "kcl", 100.0, 0.86), "other_temperature_c"),
    (lambda: TwoSaltsChecked("nacl", 12.0, 0.75, "kcl", 12.0, 0.76), "other_reading"),
    (lambda: BuffersChecked("ph", 7.0, 99.0, 7.0, 4.0, 25.0, 4.0), "temperature_c"),
    (lambda: BuffersChecked("ph", 7.0, 25.0, 7.0, 6.5, 25.0, 6.5), "other_buffer"),
    (lambda: BuffersChecked("ph", 7.0, 25.0, 7.0, 4.0, 99.0, 4.0), "other_temperature_c"),
    (lambda: BuffersChecked("ph", 7.0, 25.0, 4.0, 4.0, 25.0, 7.0), "other_reading"),
    (lambda: MassesChecked(2000.0, 0.5, 0.001), "mass_kg"),
    (lambda: MassesChecked(0.5, 2000.0, 0.001), "reading_kg"),
    (lambda: MassesChecked(0.5, 0.5, 0.6), "division_kg"),
    (lambda: MassesChecked(0.5, 0.5, 0.001, None, 1.0), "other_mass_kg"),
    (lambda: MassesChecked(0.5, 0.5, 0.001, 1.0), "other_reading_kg"),
)


@pytest.mark.parametrize(("made", "field"), REFUSED, ids=[f"{at}-{field}" for at, (_, field) in enumerate(REFUSED)])
def test_a_check_is_refused_beside_its_own_box(made: Callable[[], Check], field: str):
    with pytest.raises(Refusal) as refused:
        work_out(made(), HYGROMETER)
    assert refused.value.field == field


def test_every_way_of_checking_is_refused_here():
    assert {made.__code__.co_names[0] for made, _ in REFUSED} == {kind.__name__ for kind in WAYS}


@pytest.mark.parametrize("own", [{"tolerance_humidity": 0.9}, {"tolerance_k": 0.001}, {"stands_at_c": 61.0}])
def test_what_no_check_can_go_by_is_refused_where_the_instrument_is_added(own: dict[str, float]):
    with pytest.raises(Refusal) as refused:
        InstrumentAdded("Larder", "hygrometer", **own)
    assert [refused.value.field] == list(own)


@pytest.mark.parametrize("kind", WAYS, ids=lambda kind: kind.KIND)
def test_each_field_of_a_check_has_its_box_under_its_own_name(kind: type[Check]):
    assert [each.key for each in boxes(kind)] == [each.name for each in attrs.fields(kind)]
