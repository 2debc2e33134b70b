"""What went in, as the verdict sees it: an amount that is none is not known, a limit of nothing is told as nothing."""

import pytest
from attrs import evolve

from core.mix.ingoing import Ingoing
from core.mix.rules import Curing
from core.quantities import METRIC
from core.release.cure_limits import limit_reasons
from core.verdict import Reason
from tests.core.judging import MUSCLE, SAUSAGE


def reasons(key: str, ingoing: Ingoing) -> list[Reason]:
    return [each for each in limit_reasons(evolve(SAUSAGE, ingoing=ingoing)) if each.key == key]


@pytest.mark.parametrize("ppm", [None, -0.5, -1e-9, float("nan")])
@pytest.mark.parametrize("key", ["nitrite", "nitrate"])
def test_an_amount_that_is_none_is_not_known_and_held_to_nothing(key: str, ppm: float | None):
    (reason,) = reasons(key, Ingoing(ppm, 0.0) if key == "nitrite" else Ingoing(100.0, ppm))
    assert reason.met is None
    assert reason.text.say(METRIC) == f"The {key} that went in is not known; where none was used it is 0."


def test_no_nitrite_is_an_amount_and_no_nitrate_needs_no_line():
    (reason,) = reasons("nitrite", Ingoing(0.0, 0.0))
    assert (reason.met, reason.text.amounts["made"].value) == (True, 0.0)
    assert reasons("nitrate", Ingoing(100.0, 0.0)) == []


def test_a_limit_of_nothing_is_told_as_nothing():
    """9 CFR 424.21(c): no nitrate in bacon."""
    bacon = evolve(MUSCLE, how=Curing("us", "bacon", "dry-rub"), ingoing=Ingoing(100.0, 50.0))
    over = [each for each in limit_reasons(bacon) if each.key == "nitrate"]
    assert [(each.met, each.text.amounts["most"].value) for each in over] == [(False, 0.0)]


@pytest.mark.parametrize("key", ["nitrite", "nitrate"])
def test_an_endless_amount_is_not_known_either(key: str):
    endless = float("inf")
    ingoing = Ingoing(endless, 0.0) if key == "nitrite" else Ingoing(100.0, endless)
    assert None in {each.met for each in reasons(key, ingoing)}
