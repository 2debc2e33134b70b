"""What hanging pieces wait for: one line for those that wait alike, whatever each is judged."""

import pytest

from core.daybook.batch import open_batches
from core.daybook.due.batches import due
from core.daybook.due.line import Due
from core.daybook.facts.batch import ActivityMeasured, PieceInspected, PieceTakenDown
from core.daybook.facts.ferment import DeviationDecided
from core.quantities import METRIC
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.proven import soured


@pytest.fixture
def batch(kitchen: Kitchen) -> str:
    return soured(kitchen)


def dried(kitchen: Kitchen, batch: str, tag: str, loss: float = 0.4, at: float = 30.0) -> str:
    piece = kitchen.hang(batch, tag, at=3)
    kitchen.weigh(piece, 1 - loss, at=at)
    return piece


def sound(kitchen: Kitchen, piece: str, at: float = 30.0) -> str:
    return kitchen.note(PieceInspected(), piece, at)


def spoilt(kitchen: Kitchen, piece: str, at: float = 31.0) -> str:
    return kitchen.note(PieceInspected(("slime",)), piece, at)


def sampled(kitchen: Kitchen, piece: str, activity: float = 0.87, at: float = 30.0) -> str:
    return kitchen.note(ActivityMeasured(activity), piece, at)


def lines(kitchen: Kitchen, day: float = 32.0) -> list[Due]:
    return due(open_batches(kitchen.book), NOON + day * DAY)


def told(kitchen: Kitchen, day: float = 32.0) -> list[tuple[str, str]]:
    return [(line.words.say(METRIC), line.fact.say(METRIC, 4)) for line in lines(kitchen, day) if line.fact]


def test_six_pieces_at_their_target_are_one_line(kitchen: Kitchen, batch: str):
    pieces = [dried(kitchen, batch, f"J-{each}") for each in range(6)]
    assert told(kitchen) == [("Look, smell, squeeze: 6 pieces of Juniper coarse", "lost 40.0 %, target 35.0 %")]
    assert lines(kitchen)[0].about == pieces[0]


def test_looked_at_the_wettest_of_them_wants_its_water_activity(kitchen: Kitchen, batch: str):
    """A sample speaks for those that lost no less."""
    pieces = [dried(kitchen, batch, tag, loss) for tag, loss in (("J-1", 0.42), ("J-2", 0.37), ("J-3", 0.40))]
    for piece in pieces:
        sound(kitchen, piece)
    assert told(kitchen) == [("Measure the water activity of J-2, Juniper coarse", "lost 37.0 %, target 35.0 %")]
    assert (lines(kitchen)[0].about, lines(kitchen)[0].at) == (pieces[1], NOON + 30 * DAY)


def test_too_wet_it_is_measured_again_a_week_later(kitchen: Kitchen, batch: str):
    piece = dried(kitchen, batch, "J-1")
    sound(kitchen, piece)
    sampled(kitchen, piece, 0.96, at=30)
    (line,) = lines(kitchen)
    assert line.words.say(METRIC) == "Measure the water activity again of J-1, Juniper coarse"
    assert line.at == NOON + 37 * DAY


def test_what_is_ready_is_to_be_taken_down(kitchen: Kitchen, batch: str):
    pieces = [dried(kitchen, batch, tag) for tag in ("J-1", "J-2")]
    for piece in pieces:
        sound(kitchen, piece)
    sampled(kitchen, pieces[0])
    assert told(kitchen) == [("Take down 2 pieces of Juniper coarse", "ready: J-1 and J-2")]
    kitchen.note(PieceTakenDown("ready"), pieces[0], at=31)
    assert told(kitchen) == [("Take down 1 piece of Juniper coarse", "ready: J-2")]


def test_what_is_to_be_thrown_away_is_told_though_its_target_is_far(kitchen: Kitchen, batch: str):
    pieces = [dried(kitchen, batch, tag, 0.1) for tag in ("J-1", "J-2")]
    spoilt(kitchen, pieces[1])
    first, _ = lines(kitchen)
    assert told(kitchen)[0] == (
        "Discard 1 piece of Juniper coarse", "J-2: A sign of spoilage: slime on the surface.",
    )  # fmt: skip
    assert (first.task, first.about, first.at) == ("discard", pieces[1], NOON + 31 * DAY)


def test_taken_down_it_is_no_longer_told(kitchen: Kitchen, batch: str):
    piece = dried(kitchen, batch, "J-1", 0.1)
    dried(kitchen, batch, "J-2", 0.1)
    spoilt(kitchen, piece)
    kitchen.note(PieceTakenDown("discard"), piece, at=31.5)
    assert [line.task for line in lines(kitchen)] == ["weigh"]


def test_a_batch_that_was_condemned_is_thrown_away_in_one_line(kitchen: Kitchen, batch: str):
    dried(kitchen, batch, "J-1", 0.1)
    kitchen.hang(batch, "J-2", at=3)
    kitchen.note(DeviationDecided("discard", "Ana", "found"), batch, at=4)
    assert [line.words.say(METRIC) for line in lines(kitchen)] == ["Discard 2 pieces of Juniper coarse"]


def test_what_lost_more_than_meat_can_is_to_be_decided_at_once(kitchen: Kitchen, batch: str):
    """0.75 is the water in lean meat (USDA, as core/meat.py has it)."""
    dried(kitchen, batch, "J-1", 0.8)
    lost = "It has lost 80 %, more than the water in meat."
    assert told(kitchen) == [("Decide on 1 piece of Juniper coarse", lost)]


def test_before_its_least_days_are_over_it_is_weighed_on(kitchen: Kitchen):
    batch = kitchen.begin(least_s=40 * 86400.0)
    kitchen.cure(batch)
    kitchen.read(batch, 4.9, at=1, temperature_c=20)
    dried(kitchen, batch, "J-1")
    assert [line.task for line in lines(kitchen, 42.9)] == ["weigh"]
    assert [line.task for line in lines(kitchen, 43.1)] == ["look"]


def test_a_look_grown_old_is_asked_for_again(kitchen: Kitchen, batch: str):
    piece = dried(kitchen, batch, "J-1")
    sound(kitchen, piece)
    assert [line.task for line in lines(kitchen, 61)] == ["look"]


def test_each_of_a_batch_waits_for_its_own(kitchen: Kitchen, batch: str):
    spoilt(kitchen, dried(kitchen, batch, "J-1"))
    dried(kitchen, batch, "J-2")
    ready = dried(kitchen, batch, "J-3")
    sound(kitchen, ready)
    sampled(kitchen, ready)
    dried(kitchen, batch, "J-4", 0.2)
    assert [line.task for line in lines(kitchen)] == ["discard", "look", "take-down", "weigh"]


def test_the_day_it_was_hung_is_told_where_it_was_never_weighed(kitchen: Kitchen, batch: str):
    kitchen.hang(batch, "J-1", at=3)
    assert told(kitchen) == [("Weigh 1 piece of Juniper coarse", "hung 5 Nov 2026, 12:00")]
    kitchen.weigh(kitchen.hang(batch, "J-2", at=2), 0.9, at=2.25)
    assert told(kitchen) == [("Weigh 2 pieces of Juniper coarse", "last weighed 4 Nov 2026, 18:00")]
