"""What the entries of a whole muscle's salting tell: when it is through, when it is turned, how warm it lay."""

from datetime import timedelta

import pytest
from attrs import evolve

from core.daybook.facts.ferment import FermentLogTaken
from core.daybook.facts.salting import PieceTurned, SaltingBegun, SaltingEnded
from core.daybook.salt_notes import Salting
from core.daybook.salting import equalised_at, next_turn, piece_of, planned_end, salted_of, surely_equalised_at
from core.mix.salting import SLOW_M2_S, TYPICAL_M2_S, Piece, diffusivity, time_to
from core.release.salted import Salted
from tests.core.kitchen import DAY, NOON, Kitchen

BEGUN = SaltingBegun("weighed", "slab", 0.05, 3.0, planned_s=14 * 86400.0)
TURN_DAYS = 2
"""Of what lies in weighed salt; common practice; no published source."""


def salting(*turned: float, planned_days: float | None = 14) -> Salting:
    planned_s = None if planned_days is None else planned_days * 86400.0
    return Salting(NOON, "salt", evolve(BEGUN, planned_s=planned_s), tuple(NOON + at * DAY for at in turned))


def through(at_3_c: float) -> timedelta:
    return timedelta(seconds=time_to(Piece("slab", 0.05), "weighed", diffusivity(3.0, at_3_c), 0.9))


def test_a_block_keeps_its_sides_and_a_slab_has_none():
    sides = evolve(BEGUN, width_m=0.1, length_m=0.2)
    assert piece_of(evolve(salting(), begun=sides)) == Piece("slab", 0.05)
    assert piece_of(evolve(salting(), begun=evolve(sides, shape="block"))) == Piece("block", 0.05, 0.1, 0.2)


def test_it_is_through_after_its_time_and_surely_after_the_slowest():
    assert equalised_at(salting()) == NOON + through(TYPICAL_M2_S)
    assert surely_equalised_at(salting()) == NOON + through(SLOW_M2_S)


def test_it_comes_out_as_planned_or_once_it_is_through():
    assert planned_end(salting()) == NOON + 14 * DAY
    assert planned_end(salting(planned_days=None)) == NOON + through(TYPICAL_M2_S)


def test_it_is_turned_after_its_last_turn():
    assert next_turn(salting()) == NOON + TURN_DAYS * DAY
    assert next_turn(salting(1, 3, 5, 7)) == NOON + (7 + TURN_DAYS) * DAY


@pytest.mark.parametrize(("turned", "again"), [(11.99, True), (12.0, False)])
def test_a_turn_on_the_day_it_comes_out_is_none(turned: float, again: bool):
    assert (next_turn(salting(turned)) is not None) is again


def loin(kitchen: Kitchen, salted: float = 1.0) -> str:
    batch = kitchen.begin("Loin", "whole-muscle")
    kitchen.note(BEGUN, batch, salted)
    return batch


def told(kitchen: Kitchen, batch: str, hung: float = 23.0) -> Salted:
    piece = kitchen.hang(batch, at=hung)
    return salted_of(kitchen.batch(batch), kitchen.piece(batch, piece))


def test_hung_before_it_went_into_salt_it_had_no_time_there(kitchen: Kitchen):
    batch = loin(kitchen, 5)
    kitchen.note(SaltingEnded("", None, 2.5, 4.0), batch, 22)
    assert told(kitchen, batch, hung=4).lasts_s == 0.0


@pytest.mark.parametrize(("at", "warmest_c"), [(0.999, 4.0), (1.0, 8.0), (22.0, 8.0), (22.001, 4.0)])
def test_a_reading_counts_from_the_first_moment_in_salt_to_the_last(kitchen: Kitchen, at: float, warmest_c: float):
    batch = loin(kitchen)
    kitchen.note(SaltingEnded("", None, 2.5, 4.0), batch, 22)
    kitchen.read(batch, None, at, 8.0)
    assert told(kitchen, batch).warmest_c == warmest_c


def logged(kitchen: Kitchen, at: float) -> Salted:
    """A logger's six hours, warmest in their midst."""
    batch = loin(kitchen)
    kitchen.note(SaltingEnded("", None, 2.5, 4.0), batch, 22)
    times_s, warm_c = (0.0, 10_800.0, 21_600.0), (3.0, 6.0, 5.0)
    kitchen.note(FermentLogTaken("a" * 64, "core", times_s, warm_c, 9.0, 21_600.0, 360), batch, at)
    return told(kitchen, batch)


@pytest.mark.parametrize(
    ("at", "warmest_c"), [(5.0, 9.0), (0.8, 5.0), (0.9, 9.0), (21.8, 9.0), (21.9, 4.0), (22.1, 4.0), (0.7, 4.0)]
)
def test_a_logs_highest_stands_beside_its_warmest_point_and_counts_in_its_time(
    kitchen: Kitchen, at: float, warmest_c: float
):
    assert logged(kitchen, at).warmest_c == warmest_c


def test_what_was_noted_at_the_moment_it_went_into_salt_belongs_to_it(kitchen: Kitchen):
    batch = loin(kitchen)
    kitchen.note(PieceTurned(), batch, 1.0)
    kitchen.note(SaltingEnded("", None, 2.5, 4.0), batch, 1.0)
    found = kitchen.batch(batch).salting
    assert found is not None
    assert (found.turned_at, found.ended_at) == ((NOON + DAY,), NOON + DAY)


def test_what_was_noted_before_it_went_into_salt_belongs_to_none(kitchen: Kitchen):
    batch = loin(kitchen)
    kitchen.note(PieceTurned(), batch, 0.99)
    kitchen.note(SaltingEnded(), batch, 0.99)
    found = kitchen.batch(batch).salting
    assert found is not None
    assert (found.turned_at, found.ended_at, found.ended) == ((), None, None)


def test_only_turns_are_turns(kitchen: Kitchen):
    batch = loin(kitchen)
    kitchen.note(PieceTurned(), batch, 3.0)
    kitchen.read(batch, None, 4.0, 3.0)
    found = kitchen.batch(batch).salting
    assert found is not None
    assert found.turned_at == (NOON + 3 * DAY,)
