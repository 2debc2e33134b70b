"""A trial reading of some lines: when there is one, and what it says of the first that is lost."""

import pytest
from attrs import evolve

from core.chamber.logs import Layout, answer, guess
from core.chamber.logs.column import Loss, Role
from core.chamber.logs.trial import with_losses

WORDS = ["AAA", "BBB", "CCC", "DDD", "EEE"]


def rows(*lost: str, head: str = "Date,Clock,Temp (°C)\n") -> bytes:
    whole = [f"2025-06-20,10:{n:02},{12 + n % 7 / 10:.1f}" for n in range(30)]
    return (head + "\n".join((*whole, *lost, ""))).encode()


WITH_WORDS = rows(*(f"2025-06-20,10:3{n},{word}" for n, word in enumerate(WORDS)))


def losses(layout: Layout, data: bytes = WITH_WORDS) -> tuple[Loss, ...]:
    lines = data.decode().split("\n")
    return with_losses(evolve(layout, losses=()), lines, range(len(lines) - 1)).losses


def with_roles(*roles: Role) -> Layout:
    layout = guess(WITH_WORDS)
    columns = tuple(evolve(column, role=role) for column, role in zip(layout.columns, roles, strict=True))
    return evolve(layout, columns=columns)


def test_the_first_value_that_is_lost_is_told():
    assert losses(guess(WITH_WORDS)) == (Loss(5, 35, 32, "AAA", 2),)


def test_without_a_head_the_column_is_told_by_its_place():
    layout = guess(WITH_WORDS)
    unnamed = evolve(layout, columns=tuple(evolve(column, label="") for column in layout.columns))
    assert losses(unnamed)[0].column == 2


def test_the_first_line_that_is_lost_is_told():
    data = rows(*(f"2025-06-20,10:3{n}" for n in range(5)))
    assert losses(guess(data), data) == (Loss(5, 35, 32, "2025-06-20,10:30"),)


def test_nothing_is_tried_while_the_decimal_mark_or_the_time_is_not_known():
    layout = guess(WITH_WORDS)
    assert losses(layout)
    assert not losses(evolve(layout, decimal=""))
    assert not losses(evolve(layout, times=evolve(layout.times, kind="")))


def test_nothing_is_tried_with_two_times_or_half_of_one():
    assert not losses(with_roles("time", "time", "temperature"))
    assert not losses(with_roles("time", "date", "temperature"))
    assert not losses(with_roles("date", "ignored", "temperature"))
    assert not losses(with_roles("ignored", "clock", "temperature"))


def test_nothing_is_tried_with_a_time_beside_a_date_and_a_clock():
    text = "Date,Clock,Start,Temp (°C)\n" + "".join(
        f"2025-06-20,10:{n:02},2025-06-20 09:{n:02},{'AAA' if n > 30 else '12.5'}\n" for n in range(40)
    )
    layout = guess(text.encode())
    roles: tuple[Role, ...] = ("date", "clock", "time", "temperature")
    columns = tuple(evolve(column, role=role) for column, role in zip(layout.columns, roles, strict=True))
    assert not losses(evolve(layout, columns=columns), text.encode())


@pytest.mark.parametrize(("word", "shown"), [("x" * 24, "x" * 24), ("x" * 25, "x" * 23 + "…")])
def test_what_is_lost_is_shown_with_24_signs_at_most(word: str, shown: str):
    data = rows(*(f"2025-06-20,10:3{n},{word}" for n in range(5)))
    assert losses(guess(data), data)[0].text == shown


@pytest.mark.parametrize(
    ("head", "time"),
    [
        ("Time", "05/06/2025 10:{n:02}"),  # the day or the month first
        ("Elapsed", "{n}"),  # of what
        ("Time", "38330000{n:02}"),  # seconds since 1904 or since another year
    ],
)
def test_with_a_question_open_only_what_no_answer_reads_is_lost(head: str, time: str):
    lines = [f"{time.format(n=n)},{12 + n % 7 / 10:.1f}" for n in range(30)]
    lost = [f"{time.format(n=30 + n)},{word}" for n, word in enumerate(WORDS)]
    data = "\n".join((f"{head},Temp (°C)", *lines, *lost, "")).encode()
    layout = guess(data)
    assert layout.questions
    assert losses(layout, data) == (Loss(5, 35, 32, "AAA", 1),)


def test_a_column_whose_units_are_all_open_is_tried_in_one_of_them():
    layout = guess(WITH_WORDS)
    columns = (*layout.columns[:2], evolve(layout.columns[2], unit="", units=()))
    assert losses(evolve(layout, columns=columns)) == losses(layout)


def test_logs_side_by_side_are_tried_by_the_first_time():
    lines = [f"2025-06-20 10:{n:02},{12 + n % 7 / 10:.1f},2025-06-20 11:{n:02},5.{n % 10}" for n in range(30)]
    lines += [f"2025-06-20 10:3{n},{word},2025-06-20 11:3{n},5.0" for n, word in enumerate(WORDS)]
    data = "\n".join(("Time,Front (°C),Time 2,Back (°C)", *lines, "")).encode()
    layout = answer(data, guess(data), "clocks", "each")
    assert losses(layout, data) == (Loss(5, 35, 32, "AAA", 1),)
