"""A weight as it is typed: which ones are asked about, and what is asked."""

import pytest

from core.dry.curve import Hung, fit
from core.dry.doubt import Expected, expected, is_swapped, question
from core.dry.pace import Air
from core.quantities import METRIC
from core.units import DAY_S

F_1, F_2 = Expected(0.700, 0.003, 0.720), Expected(0.800, 0.003, 0.822)
SHOULD = {"F-1": F_1, "F-2": F_2}


def asked(piece: str, mass_kg: float, **typed: float) -> str:
    found = question(piece, mass_kg, SHOULD, {tag.replace("_", "-"): each for tag, each in typed.items()})
    return "" if found is None else found.say(METRIC)


@pytest.mark.parametrize("mass_kg", [0.694, 0.700, 0.706])
def test_what_was_expected_is_not_asked_about(mass_kg):
    assert not asked("F-1", mass_kg)


def test_a_gain_is_asked_about():
    assert asked("F-1", 0.740) == "F-1 gained: 720 g last time, 740 g now. Check the scale, the tag and the digits."


def test_a_piece_that_lost_nine_per_cent_overnight_is_asked_about():
    assert "lost much more" in asked("F-1", 0.655)


def test_a_piece_that_hardly_lost_is_asked_about_and_its_rim():
    assert "dry rim" in asked("F-1", 0.719)


def test_a_neighbours_weight_names_the_neighbour():
    assert asked("F-1", 0.801).startswith("801 g is what F-2 should weigh")


def test_two_that_were_swapped_are_asked_about_together():
    assert "fit the other way round" in asked("F-2", 0.699, F_1=0.801)


def test_a_swap_reads_alike_from_both_ends():
    assert is_swapped(F_1, 0.8, F_2, 0.7)
    assert is_swapped(F_2, 0.7, F_1, 0.8)


def test_pieces_that_weigh_alike_cannot_be_told_apart():
    alike = Expected(0.701, 0.003, 0.720)
    assert not is_swapped(F_1, 0.701, alike, 0.700)


def test_what_is_expected_lies_between_the_last_weight_and_nothing_lost():
    known = fit([Hung(0.8, ((4 * DAY_S, 0.76), (8 * DAY_S, 0.73)))], (Air(0, 12, 0.78),))
    found = expected(known, 0, 9 * DAY_S)
    assert 0.715 < found.mass_kg < found.last_kg == pytest.approx(0.73)


def test_the_longer_ago_the_less_sure():
    known = fit([Hung(0.8, ((4 * DAY_S, 0.76), (8 * DAY_S, 0.73)))], (Air(0, 12, 0.78),))
    assert expected(known, 0, 20 * DAY_S).spread_kg > expected(known, 0, 9 * DAY_S).spread_kg


def test_the_first_weighing_of_a_batch_has_its_expectation_too():
    known = fit([Hung(0.8), Hung(0.7)], (Air(0, 12, 0.78),))
    found = expected(known, 0, DAY_S)
    assert abs(found.deviations(0.79)) < 2
    assert abs(found.deviations(0.65)) > 3.5
