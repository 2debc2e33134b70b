"""What is to do: each a sentence with its verb, what was last known, and by when."""

from datetime import timedelta
from typing import Any

import pytest

from core.daybook.batch import open_batches
from core.daybook.due.batches import due
from core.daybook.due.line import Due
from core.daybook.facts.batch import PieceTakenDown
from core.daybook.facts.ferment import DeviationDecided, FermentationBegun
from core.daybook.facts.salting import PieceTurned, SaltingBegun, SaltingEnded
from core.quantities import METRIC, Reader
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.mixing import Table


@pytest.fixture
def acid(kitchen: Kitchen) -> str:
    batch = kitchen.begin()
    kitchen.cure(batch)
    kitchen.read(batch, 5.1)
    return batch


def lines(kitchen: Kitchen, day: float = 40.0) -> list[Due]:
    return due(open_batches(kitchen.book), NOON + day * DAY)


def said(kitchen: Kitchen, reader: Reader = METRIC) -> list[str]:
    return [line.words.say(reader) for line in lines(kitchen)]


def facts(kitchen: Kitchen, day: float = 40.0, reader: Reader = METRIC) -> list[str]:
    return [line.fact.say(reader, 4) for line in lines(kitchen, day) if line.fact is not None]


def left_h(line: Due, day: float) -> float:
    assert line.until is not None
    return (line.until - (NOON + day * DAY)) / timedelta(hours=1)


def test_an_empty_book_wants_nothing(kitchen: Kitchen):
    assert lines(kitchen) == []


def test_a_new_batch_wants_its_cure(kitchen: Kitchen):
    kitchen.begin()
    assert said(kitchen) == ["Weigh the cure for Juniper coarse"]


def test_a_batch_of_a_formula_wants_its_sheet_until_every_row_is_weighed():
    table = Table()
    batch = table.begin(meat_kg=10.0, formula=table.keep())
    table.weigh_row(batch, "meat-1", 8.0)
    line = lines(table)[0]
    assert (line.task, line.words.say(METRIC)) == ("sheet", "Weigh out Juniper coarse")
    assert facts(table)[0] == "1 of 4 done"
    for key in ("meat-2", "part-1"):
        table.weigh_row(batch, key, 1.0)
    table.cure(batch)
    assert "sheet" not in tasks(table)


def test_the_cure_is_due_at_once(kitchen: Kitchen):
    kitchen.begin(at=3)
    assert lines(kitchen)[0].at == NOON + 3 * DAY


def test_a_cured_sausage_wants_its_first_ph(kitchen: Kitchen):
    kitchen.cure(kitchen.begin())
    assert said(kitchen) == ["Read pH of Juniper coarse"]
    assert facts(kitchen) == ["pH never read"]


def test_a_sausage_not_yet_acid_tells_its_last_ph_and_what_is_wanted(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.cure(batch)
    kitchen.read(batch, 5.6)
    assert facts(kitchen) == ["pH 5.6, 3 Nov 2026, 12:00; 5.3 needed"]


def test_ph_is_told_with_the_readers_decimal_mark(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.cure(batch)
    kitchen.read(batch, 5.6)
    assert facts(kitchen, reader=Reader("metric", ","))[0].startswith("pH 5,6, ")


def test_the_next_ph_is_due_half_a_day_after_the_last(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.cure(batch)
    kitchen.read(batch, 5.6, at=1)
    assert lines(kitchen)[0].at == NOON + DAY + timedelta(hours=12)


def test_an_acid_sausage_wants_to_be_hung(kitchen: Kitchen, acid: str):
    assert said(kitchen) == ["Hang the pieces of Juniper coarse"]


@pytest.fixture
def loin(kitchen: Kitchen) -> str:
    batch = kitchen.begin("Loin", style="whole-muscle")
    kitchen.cure(batch)
    return batch


def in_salt(kitchen: Kitchen, loin: str, at: float = 1.0) -> str:
    return kitchen.note(SaltingBegun("weighed", "slab", 0.05, 3.0, planned_s=14 * 86400), loin, at)


def tasks(kitchen: Kitchen, day: float = 40.0) -> dict[str, float]:
    return {line.task: (line.at - NOON) / DAY for line in lines(kitchen, day)}


def test_a_cured_whole_muscle_wants_salt_and_no_ph(kitchen: Kitchen, loin: str):
    assert tasks(kitchen) == {"salt": 0.0}


def test_a_whole_muscle_in_salt_is_turned_and_taken_out_on_its_day(kitchen: Kitchen, loin: str):
    in_salt(kitchen, loin)
    assert tasks(kitchen) == {"turn": 3.0, "unsalt": 15.0}


@pytest.mark.parametrize(
    ("salted", "words"), [("weighed", "Turn Loin in its salt"), ("excess", "Overhaul Loin in its salt")]
)
def test_what_lies_in_weighed_salt_is_turned_and_under_salt_overhauled(
    kitchen: Kitchen, loin: str, salted: Any, words: str
):
    kitchen.note(SaltingBegun(salted, "slab", 0.05, 3.0, planned_s=14 * 86400), loin, at=1)
    assert [line.words.say(METRIC) for line in lines(kitchen) if line.task == "turn"] == [words]


def test_the_next_turn_is_counted_from_the_last(kitchen: Kitchen, loin: str):
    in_salt(kitchen, loin)
    kitchen.note(PieceTurned(), loin, at=6)
    assert tasks(kitchen)["turn"] == 8.0


def test_near_its_end_nobody_turns_it(kitchen: Kitchen, loin: str):
    in_salt(kitchen, loin)
    kitchen.note(PieceTurned(), loin, at=14)
    assert tasks(kitchen) == {"unsalt": 15.0}


def test_out_of_the_salt_it_wants_to_be_hung_from_that_day_on(kitchen: Kitchen, loin: str):
    in_salt(kitchen, loin)
    kitchen.note(SaltingEnded(), loin, at=16)
    assert tasks(kitchen) == {"hang": 16.0}


def test_hung_it_is_past_the_salt(kitchen: Kitchen, loin: str):
    in_salt(kitchen, loin)
    kitchen.hang(loin, at=16)
    assert tasks(kitchen) == {"weigh": 23.0}


def test_without_planned_time_the_reckoning_says_when(kitchen: Kitchen, loin: str):
    kitchen.note(SaltingBegun("weighed", "slab", 0.05, 3.0), loin, at=1)
    assert tasks(kitchen)["unsalt"] == pytest.approx(1 + 0.3035 * 0.025**2 / 2e-10 / 86400, abs=0.01)


def fermenting(kitchen: Kitchen, warm_c: float = 24.0, ph: float = 5.6) -> str:
    batch = kitchen.begin()
    kitchen.cure(batch)
    kitchen.note(FermentationBegun(), batch)
    kitchen.read(batch, 5.8, at=0.1, temperature_c=warm_c)
    kitchen.read(batch, ph, at=0.5, temperature_c=warm_c)
    return batch


def test_a_fermenting_batch_says_how_long_is_left_at_its_temperature(kitchen: Kitchen):
    fermenting(kitchen)
    (line,) = lines(kitchen, 1.0)
    assert left_h(line, 1.0) == pytest.approx(54 + 56 / 60, abs=1 / 60)
    assert facts(kitchen, 1.0) == ["at 24 °C; last pH 5.6, 3 Nov 2026, 00:00"]


def test_it_is_read_an_hour_before_the_last_safe_moment_at_the_latest(kitchen: Kitchen):
    fermenting(kitchen, warm_c=42.0)
    last_safe = 900 / (42 * 1.8 + 32 - 60)
    assert tasks(kitchen, 0.6)["reading"] == pytest.approx((last_safe - 1) / 24)


def test_past_its_limit_a_decision_is_wanted(kitchen: Kitchen):
    fermenting(kitchen)
    assert tasks(kitchen, 4.0)["deviation"] == pytest.approx(1200 / (24 * 1.8 + 32 - 60) / 24)


def test_once_decided_nothing_more_is_asked(kitchen: Kitchen):
    batch = fermenting(kitchen)
    kitchen.note(DeviationDecided("discard", "Ana", "not-tested"), batch, at=4)
    assert "deviation" not in tasks(kitchen, 4.5)


@pytest.mark.parametrize(
    ("decided", "hangs"),
    [
        (None, False),
        (DeviationDecided("keep", "Ana", "not-tested"), False),
        (DeviationDecided("keep", "Ana", "clean"), True),
        (DeviationDecided("discard", "Ana", "clean"), False),
    ],
    ids=["undecided", "kept untested", "kept clean", "discarded"],
)
def test_sour_too_late_it_hangs_only_once_a_clean_test_cleared_it(
    kitchen: Kitchen, decided: DeviationDecided | None, hangs: bool
):
    batch = fermenting(kitchen)
    kitchen.read(batch, 5.1, at=4, temperature_c=24.0)
    if decided is not None:
        kitchen.note(decided, batch, at=4.2)
    assert ("hang" in tasks(kitchen, 4.5)) is hangs


def test_warm_and_never_measured_its_ph_is_due_from_the_beginning(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.cure(batch)
    kitchen.read(batch, None, at=0.2, temperature_c=20.0)
    assert tasks(kitchen, 0.5)["reading"] == 0


def test_without_a_temperature_the_last_ph_is_told_and_read_again_half_a_day_later(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.cure(batch)
    for at, ph in [(0.5, 5.8), (1.0, 5.7), (1.5, 5.6)]:
        kitchen.read(batch, ph, at=at)
    (line,) = lines(kitchen, 1.6)
    assert facts(kitchen, 1.6) == ["pH 5.6, 4 Nov 2026, 00:00; 5.3 needed"]
    assert line.at == NOON + 2 * DAY


@pytest.mark.parametrize(
    ("read", "warm_c", "left", "due_h"),
    [(0.2, 20.0, 150 - 12, 0.2 * 24 + 12), (0.4, 42.0, 900 / 47.6 - 12, 900 / 47.6 - 1)],
)
def test_a_slow_batch_is_read_twice_a_day_or_an_hour_before_its_last_safe_moment(
    kitchen: Kitchen, read: float, warm_c: float, left: float, due_h: float
):
    """1200 °F·h ÷ 8 °F = 150 h at 20 °C, 900 ÷ 47.6 = 18.91 h at 42 °C; half a day of it is gone."""
    batch = kitchen.begin(style="slow")
    kitchen.cure(batch)
    kitchen.read(batch, None, at=read, temperature_c=warm_c)
    line = next(line for line in lines(kitchen, 0.5) if line.task == "temperature")
    assert line.words.say(METRIC) == "Read the temperature of Juniper coarse"
    assert left_h(line, 0.5) == pytest.approx(left, abs=1e-3)
    assert (line.at - NOON) / DAY * 24 == pytest.approx(due_h)


def test_a_slow_batch_that_is_warm_is_read_again(kitchen: Kitchen):
    batch = kitchen.begin(style="slow")
    kitchen.cure(batch)
    kitchen.read(batch, None, at=0.2, temperature_c=20.0)
    assert set(tasks(kitchen, 0.5)) == {"temperature", "hang"}


def test_a_slow_batch_whose_first_days_were_read_and_cool_wants_only_to_be_hung(kitchen: Kitchen):
    batch = kitchen.begin(style="slow")
    kitchen.cure(batch)
    for day in (0.2, 1, 2, 3):
        kitchen.read(batch, None, at=day, temperature_c=14.0)
    assert set(tasks(kitchen, 3.5)) == {"hang"}


@pytest.mark.parametrize("hung", [False, True])
def test_a_slow_batch_read_cool_once_is_read_on_hung_or_not(kitchen: Kitchen, hung: bool):
    batch = kitchen.begin(style="slow")
    kitchen.cure(batch)
    kitchen.read(batch, None, at=0.2, temperature_c=14.0)
    if hung:
        kitchen.hang(batch, at=0.3)
    assert "temperature" in tasks(kitchen, 0.8)


def test_a_slow_batch_nobody_read_wants_its_temperature_until_it_hangs(kitchen: Kitchen):
    batch = kitchen.begin(style="slow")
    kitchen.cure(batch)
    line = next(line for line in lines(kitchen, 5) if line.task == "temperature")
    assert (line.words.say(METRIC), line.at) == ("Read the temperature of Juniper coarse", NOON)
    kitchen.hang(batch, at=5)
    assert "temperature" not in tasks(kitchen, 5)


def test_a_ph_that_contradicts_the_one_before_is_measured_again_at_once(kitchen: Kitchen, acid: str):
    kitchen.read(acid, 5.7, at=2)
    line = lines(kitchen, 2.1)[0]
    assert line.words.say(METRIC) == "Measure the pH of Juniper coarse again, twice"
    assert facts(kitchen, 2.1) == ["its readings contradict each other"]
    assert (line.task, line.at, set(tasks(kitchen, 2.1))) == ("reading", NOON + 2 * DAY, {"reading"})


def test_of_many_readings_the_last_is_the_one_that_asks_for_another(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.cure(batch)
    for at, ph in [(0.2, 5.8), (0.6, 5.6), (1.0, 5.1), (2.0, 5.7)]:
        kitchen.read(batch, ph, at=at)
    assert tasks(kitchen, 2.1) == {"reading": 2.0}


def test_what_two_high_readings_unsay_is_read_on(kitchen: Kitchen, acid: str):
    kitchen.read(acid, 5.7, at=2, temperature_c=18)
    kitchen.read(acid, 5.6, at=2.1, temperature_c=18)
    assert lines(kitchen, 2.2)[0].words.say(METRIC, 4).startswith("Read pH of Juniper coarse")
    assert set(tasks(kitchen, 2.2)) == {"reading"}


def test_a_piece_wants_the_scale_a_week_after_it_was_hung(kitchen: Kitchen, acid: str):
    kitchen.hang(acid, at=2)
    line = lines(kitchen)[0]
    assert (line.task, line.at) == ("weigh", NOON + 9 * DAY)


def test_a_piece_wants_the_scale_a_week_after_it_was_weighed(kitchen: Kitchen, acid: str):
    kitchen.weigh(kitchen.hang(acid, at=2), 0.9, at=5)
    assert lines(kitchen)[0].at == NOON + 12 * DAY


def test_one_piece_is_said_as_one(kitchen: Kitchen, acid: str):
    kitchen.hang(acid)
    assert said(kitchen) == ["Weigh 1 piece of Juniper coarse"]


def test_pieces_that_want_the_scale_within_a_day_are_weighed_together(kitchen: Kitchen, acid: str):
    kitchen.hang(acid, "J-1", at=2)
    kitchen.hang(acid, "J-2", at=2.9)
    kitchen.hang(acid, "J-3", at=4)
    assert said(kitchen) == ["Weigh 2 pieces of Juniper coarse"]


@pytest.mark.parametrize(("hung", "words"), [(3.0, "Weigh 2 pieces"), (3.001, "Weigh 1 piece")])
def test_a_day_apart_they_are_still_weighed_together_and_no_further(
    kitchen: Kitchen, acid: str, hung: float, words: str
):
    """Our own choice, no source."""
    kitchen.hang(acid, "J-1", at=2)
    kitchen.hang(acid, "J-2", at=hung)
    assert said(kitchen) == [f"{words} of Juniper coarse"]


def test_a_piece_taken_down_wants_no_scale(kitchen: Kitchen, acid: str):
    piece = kitchen.hang(acid, "J-1", at=2)
    kitchen.hang(acid, "J-2", at=3)
    kitchen.note(PieceTakenDown("discard"), piece, at=4)
    assert said(kitchen) == ["Weigh 1 piece of Juniper coarse"]


def test_pieces_that_have_lost_enough_want_to_be_settled(kitchen: Kitchen, acid: str):
    kitchen.weigh(kitchen.hang(acid, "J-1"), 0.6, at=30)
    kitchen.weigh(kitchen.hang(acid, "J-2"), 0.6, at=31)
    assert said(kitchen) == ["Look, smell, squeeze: 2 pieces of Juniper coarse"]


def test_settling_is_due_from_the_first_that_came_to_it(kitchen: Kitchen, acid: str):
    kitchen.weigh(kitchen.hang(acid, "J-1"), 0.6, at=30)
    kitchen.weigh(kitchen.hang(acid, "J-2"), 0.6, at=31)
    assert lines(kitchen)[0].at == NOON + 30 * DAY


def test_a_finished_batch_wants_nothing_even_where_it_is_asked(kitchen: Kitchen, acid: str):
    kitchen.note(PieceTakenDown("ready"), kitchen.hang(acid), at=30)
    assert due([kitchen.batch(acid)], NOON + 40 * DAY) == []


def test_a_finished_batch_without_a_cure_wants_none(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.note(PieceTakenDown("discard"), kitchen.hang(batch), at=30)
    assert due([kitchen.batch(batch)], NOON + 40 * DAY) == []


def test_the_longest_overdue_comes_first(kitchen: Kitchen):
    kitchen.begin("later", at=4)
    kitchen.begin("earlier", at=1)
    assert said(kitchen) == ["Weigh the cure for earlier", "Weigh the cure for later"]


@pytest.mark.parametrize(("day", "late"), [(8.99, False), (9.0, True), (20.0, True)])
def test_late_is_from_the_moment_it_is_due(kitchen: Kitchen, acid: str, day: float, late: bool):
    kitchen.hang(acid, at=2)
    assert lines(kitchen)[0].late(NOON + day * DAY) is late


@pytest.mark.parametrize("name", ["{meat}", "{", "}{", "{{0}}", "50 {last} %s"])
def test_a_name_with_braces_is_said_as_it_is(kitchen: Kitchen, name: str):
    kitchen.cure(kitchen.begin(name))
    kitchen.read(kitchen.records[0]["id"], 5.6)
    assert said(kitchen) == [f"Read pH of {name}"]


def test_a_line_says_which_batch_it_is_about(kitchen: Kitchen):
    batch = kitchen.begin()
    assert lines(kitchen)[0].about == batch


def test_its_verb_stands_apart_in_every_sentence(kitchen: Kitchen, acid: str):
    kitchen.begin("uncured")
    kitchen.weigh(kitchen.hang(acid, "J-1"), 0.6, at=30)
    kitchen.hang(acid, "J-2")
    every = lines(kitchen)
    assert [line.words.values["act"].say(METRIC) for line in every] == [  # type: ignore[union-attr]
        "Weigh the cure", "Look, smell, squeeze", "Weigh 1 piece",
    ]  # fmt: skip


def test_a_day_in_salt_is_counted_from_the_first(kitchen: Kitchen, loin: str):
    in_salt(kitchen, loin)
    assert facts(kitchen, 6.5) == ["day 6 of 14", "day 6 of 14"]


def test_past_its_limit_it_says_by_how_much_and_asks_for_no_more_ph(kitchen: Kitchen):
    """1200 °F·h are 667 °C·h; at 24 °C a day adds (24 − 15.56) × 24 = 202.7."""
    fermenting(kitchen)
    assert said(kitchen)[0] == "Hold Juniper coarse: note what is decided"
    assert tasks(kitchen, 4.0).keys() == {"deviation"}
    assert facts(kitchen, 4.0) == ["811 °C·h: over the limit of 667 °C·h"]
