"""What the daybook knows of a whole muscle’s time in salt: how long, how cold, and what was decided."""

import pytest

from core.daybook.facts.batch import (
    ActivityMeasured,
    CureWeighed,
    PieceInspected,
)
from core.daybook.facts.ferment import DeviationDecided
from core.daybook.facts.salting import SaltingBegun, SaltingEnded
from core.release.readiness import judge
from core.release.salted import Salted
from tests.core.kitchen import Kitchen
from tests.core.proven import known


def muscle(
    kitchen: Kitchen, ended: SaltingEnded | None = None, out: float = 22.0, hung: float = 23.0
) -> tuple[str, str]:
    batch = kitchen.begin("Loin", "whole-muscle")
    kitchen.note(CureWeighed(0.031, 0.0625, 0.0, 0.372, "us", "meat", "dry-rub"), batch)
    kitchen.note(SaltingBegun("weighed", "slab", 0.05, 3.0, mass_kg=2.0), batch, 1)
    if ended is not None:
        kitchen.note(ended, batch, out)
    return batch, kitchen.hang(batch, at=hung)


COLD = SaltingEnded("", None, 2.5, 4.0)


def salted(kitchen: Kitchen, batch: str, piece: str):
    found = known(kitchen, batch, piece, day=60).salted
    assert found is not None
    return found


def test_its_time_in_salt_is_told(kitchen: Kitchen):
    found = salted(kitchen, *muscle(kitchen, COLD))
    assert (found.method, found.shape, found.thickness_m) == ("weighed", "slab", 0.05)
    assert (found.coldest_c, found.warmest_c, found.mass_kg) == (2.5, 4.0, 2.0)
    assert found.lasts_s == pytest.approx(21 * 86400)


def test_a_sausage_has_no_time_in_salt(kitchen: Kitchen, batch: str):
    assert known(kitchen, batch, kitchen.hang(batch)).salted is None


def test_without_an_entry_of_its_salting_nothing_is_known_of_it(kitchen: Kitchen):
    batch = kitchen.begin("Loin", "whole-muscle")
    assert salted(kitchen, batch, kitchen.hang(batch)) == Salted()


def test_a_piece_hung_before_it_came_out_had_only_the_time_until_then(kitchen: Kitchen):
    assert salted(kitchen, *muscle(kitchen, COLD, hung=11.0)).lasts_s == pytest.approx(10 * 86400)


def test_that_it_never_came_out_leaves_its_time_open(kitchen: Kitchen):
    assert salted(kitchen, *muscle(kitchen)).lasts_s is None


@pytest.mark.parametrize(("at", "between"), [(5.0, (1.0, 8.0)), (21.9, (1.0, 8.0)), (22.5, (2.5, 4.0))])
def test_every_temperature_read_in_that_time_counts(kitchen: Kitchen, at: float, between):
    batch, piece = muscle(kitchen, COLD)
    for temperature_c in (1.0, 8.0):
        kitchen.read(batch, None, at, temperature_c)
    found = salted(kitchen, batch, piece)
    assert (found.coldest_c, found.warmest_c) == between


def test_a_reading_alone_does_not_tell_how_cold_it_was_all_the_time(kitchen: Kitchen):
    batch, piece = muscle(kitchen, SaltingEnded())
    kitchen.read(batch, None, 5, 3.0)
    found = salted(kitchen, batch, piece)
    assert (found.coldest_c, found.warmest_c) == (None, None)


def test_the_planned_temperature_counts_where_it_was_warmer(kitchen: Kitchen):
    batch, piece = muscle(kitchen, COLD)
    kitchen.note(SaltingBegun("weighed", "slab", 0.05, 6.0), batch, 1)
    assert salted(kitchen, batch, piece).warmest_c == 6.0


def muscle_word(kitchen: Kitchen, ended: SaltingEnded | None, out: float = 22.0) -> str:
    batch, piece = muscle(kitchen, ended, out)
    kitchen.tested(batch)
    kitchen.weigh(piece, 0.6, 60)
    kitchen.note(ActivityMeasured(0.88), piece, 60)
    kitchen.note(PieceInspected(), piece, 60)
    return judge(known(kitchen, batch, piece, day=61)).word


@pytest.mark.parametrize(
    ("ended", "out", "word"),
    [
        (COLD, 22.0, "ready"),
        (COLD, 2.0, "hold"),
        (COLD, 15.0, "hold"),
        (SaltingEnded("", None, None, 4.0), 22.0, "hold"),
        (SaltingEnded("", None, 2.5, None), 22.0, "hold"),
        (SaltingEnded("", None, 2.5, 8.0), 22.0, "hold"),
        (SaltingEnded("", None, 0.0, 4.0), 22.0, "hold"),
        (None, 22.0, "hold"),
    ],
)
def test_a_whole_muscle_is_ready_only_where_its_salt_is_through_and_it_was_cold(kitchen, ended, out, word):
    assert muscle_word(kitchen, ended, out) == word


def test_a_decision_to_throw_a_whole_muscle_away_counts(kitchen: Kitchen):
    batch, piece = muscle(kitchen, COLD)
    kitchen.note(DeviationDecided("discard", "Ana", "not-tested"), batch, 30)
    assert judge(known(kitchen, batch, piece, day=60)).word == "discard"


def salted_with(kitchen: Kitchen, *ends: tuple[float, float | None, float | None]) -> Salted:
    """A muscle that went into salt on day 1 and was noted as out on each day, coldest, warmest; hung on day 50."""
    muscle = kitchen.begin(style="whole-muscle")
    kitchen.note(SaltingBegun("weighed", "slab", 0.05, 3.0), muscle, at=1)
    for at, cold, warm in ends:
        kitchen.note(SaltingEnded("", None, cold, warm), muscle, at=at)
    found = known(kitchen, muscle, kitchen.hang(muscle, at=50), day=90).salted
    assert found is not None
    return found


def test_the_coldest_and_the_warmest_typed_the_wrong_way_round_hide_no_warmth(kitchen: Kitchen):
    found = salted_with(kitchen, (40, 8.0, 1.0))
    assert (found.coldest_c, found.warmest_c) == (1.0, 8.0)


@pytest.mark.parametrize("ends", [[(10, 3.0, 9.0), (40, 2.0, 4.0)], [(10, 2.0, 4.0), (40, 3.0, 9.0)]])
def test_out_of_salt_twice_it_was_out_with_the_first_and_the_warmest_counts(kitchen: Kitchen, ends):
    found = salted_with(kitchen, *ends)
    assert (found.lasts_s, found.coldest_c, found.warmest_c) == (9 * 86400, 2.0, 9.0)
