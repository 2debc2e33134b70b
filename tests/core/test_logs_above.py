"""What stands above the rows of columns that blanks set out, and whether a comma parts or marks decimals."""

import pytest

from core.chamber.logs.frame import frame_of
from core.chamber.logs.framing import Above, above_of, decimal_of

TWO_WIDE = [f"2025-06-20 10:{n:02},12.{n % 10}" for n in range(20)]
SET_OUT = [f"2025-06-20 10:{n:02}   12.{n % 10}     80.{n % 10}" for n in range(20)]


def above(line: str, rows: list[str]) -> Above:
    lines = [line, *rows]
    return above_of(lines, frame_of(lines, None))


@pytest.mark.parametrize(("line", "head_line"), [("Time,Temp", 1), ("Report", None), (",Temp", None), ("Time,", None)])
def test_a_word_by_itself_is_no_head(line: str, head_line: int | None):
    assert above(line, TWO_WIDE).head_line == head_line


@pytest.mark.parametrize(
    ("line", "head"),
    [
        ("Date       Time    Front T  Front RH", ["Date", "Time", "Front T", "Front RH"]),
        ("Date       Time    Probe 1  Probe 2", ["Date", "Time", "Probe 1", "Probe 2"]),
        ("Date       Time    T        RH", ["Date", "Time", "T", "RH"]),
    ],
)
def test_words_over_columns_set_out_are_those_of_the_nearest(line: str, head: list[str]):
    assert above(line, SET_OUT).head == head


@pytest.mark.parametrize("line", ["Recorder", "                   T", "1  Time  T  RH", ""])
def test_words_over_one_column_only_are_no_head(line: str):
    assert above(line, SET_OUT).head_line is None


def mark_of(*values: str, head: str = "") -> tuple[str, bool]:
    lines = [*([head] if head else []), *(f"2025-06-20 10:{n:02},{values[n % len(values)]}" for n in range(20))]
    frame = frame_of(lines, None)
    return decimal_of(frame, above_of(lines, frame).head)


@pytest.mark.parametrize(
    ("values", "mark"),
    [
        (("12,5,80,1",), ("", False)),
        (("12,5,80,123",), ("", False)),
        # what follows a decimal comma is one to three digits, of every value
        (("12,5,80,1234",), (".", False)),
        (("12,1234,80,1",), (".", False)),
        (("12,-5,80,1",), (".", False)),
        (("12,5,80,-1",), (".", False)),
        (("12,5,80,1", "12,5,80,x"), (".", False)),
        # what stands before it may be any number
        (("-12,5,1080,1",), ("", False)),
        (("12,5,80",), (".", False)),
        (("12.5,80",), (".", False)),
    ],
)
def test_whether_a_comma_may_be_a_decimal_mark(values: tuple[str, ...], mark: tuple[str, bool]):
    assert mark_of(*values) == mark


@pytest.mark.parametrize(
    ("head", "mark"),
    [
        ("Time,Temp,RH", (",", True)),
        ("Time,Temp,RH,,", (",", True)),
        ("Time,A,B,C,D", (".", False)),
        ("Time,A,B,C", ("", False)),
    ],
)
def test_a_head_for_each_two_cells_tells_a_decimal_comma(head: str, mark: tuple[str, bool]):
    assert mark_of("12,5,80,1", head=head) == mark


@pytest.mark.parametrize(
    ("values", "mark"),
    [
        (("1.250;80.5",), "."),
        (("1,250;80,5",), ","),
        # three decimals may be a group of thousands: they count where nothing else does
        (("1.250;80,5",), ","),
        (("1,250;80.5",), "."),
        (("1,250;80",), ","),
        (("1.250;80",), "."),
        (("12.5;80", "12,5;80"), ","),
        (("12.5;80.5", "12,5;80"), "."),
    ],
)
def test_the_decimal_mark_is_what_more_of_the_numbers_have(values: tuple[str, ...], mark: str):
    lines = [f"2025-06-20 10:{n:02};{values[n % len(values)]}" for n in range(20)]
    frame = frame_of(lines, None)
    assert decimal_of(frame, []) == (mark, False)
