"""What was read in a check is refused beside the very box it was typed in, though the sums name it without its unit."""

import pytest

from core.daybook.facts import (
    BoilingPointChecked,
    BuffersChecked,
    IcePointChecked,
    InstrumentAdded,
    MassesChecked,
    SaltChecked,
    TwoSaltsChecked,
)
from core.daybook.facts.instruments import Check
from core.daybook.instrument_checks import WAYS, work_out
from core.refusals import Refusal

HYGROMETER = InstrumentAdded("Larder", "hygrometer")
REFUSED: tuple[tuple[Check, str], ...] = (
    (IcePointChecked(0.1, 50.0), "division_k"),
    (BoilingPointChecked(99.0, 99999.0), "altitude_m"),
    (BoilingPointChecked(99.0, None, 10.0), "pressure_pa"),
    (SaltChecked("gravel", 12.0, 0.75), "salt"),
    (SaltChecked("nacl", 100.0, 0.75), "temperature_c"),
    (SaltChecked("nacl", 12.0, 0.75, division=0.9), "division"),
    (TwoSaltsChecked("nacl", 12.0, 0.75, "gravel", 12.0, 0.86), "other_salt"),
    (TwoSaltsChecked("nacl", 12.0, 0.75, "kcl", 100.0, 0.86), "other_temperature_c"),
    (TwoSaltsChecked("nacl", 12.0, 0.75, "kcl", 12.0, 0.76), "other_reading"),
    (BuffersChecked("ph", 7.0, 99.0, 7.0, 4.0, 25.0, 4.0), "temperature_c"),
    (BuffersChecked("ph", 7.0, 25.0, 7.0, 6.5, 25.0, 6.5), "other_buffer"),
    (BuffersChecked("ph", 7.0, 25.0, 7.0, 4.0, 99.0, 4.0), "other_temperature_c"),
    (BuffersChecked("ph", 7.0, 25.0, 4.0, 4.0, 25.0, 7.0), "other_reading"),
    (MassesChecked(2000.0, 0.5, 0.001), "mass_kg"),
    (MassesChecked(0.5, 2000.0, 0.001), "reading_kg"),
    (MassesChecked(0.5, 0.5, 0.6), "division_kg"),
    (MassesChecked(0.5, 0.5, 0.001, None, 1.0), "other_mass_kg"),
    (MassesChecked(0.5, 0.5, 0.001, 1.0), "other_reading_kg"),
)


@pytest.mark.parametrize(("fact", "field"), REFUSED, ids=lambda each: each if isinstance(each, str) else each.KIND)
def test_a_check_is_refused_beside_its_own_box(fact: Check, field: str):
    with pytest.raises(Refusal) as refused:
        work_out(fact, HYGROMETER)
    assert refused.value.field == field


def test_every_way_of_checking_is_refused_here():
    assert {type(fact) for fact, _ in REFUSED} == set(WAYS)


def test_what_no_box_of_the_check_holds_is_refused_beside_none():
    """The tolerance is the instrument's."""
    with pytest.raises(Refusal, match="Tolerance") as refused:
        work_out(SaltChecked("nacl", 12.0, 0.75), InstrumentAdded("Larder", "hygrometer", tolerance_humidity=0.9))
    assert refused.value.field == ""
