"""What a file's lines have in common: each share, count and width from both sides; its signs and its last line."""

import pytest

from core.chamber.logs.decoding import cells_of, cut_at_the_end, encoding_of, join, lines_of
from core.chamber.logs.fixed_width import cells_at, edges_of, heads_at
from core.chamber.logs.frame import frame_of, frame_under, picked_of
from core.chamber.logs.framing import above_of, decimal_of, fitted
from core.refusals import Refusal

ROWS = [f"2025-06-20 10:{n:02},12.{n % 10},80.{n % 10}" for n in range(20)]
DATA = "\n".join(ROWS).encode()


@pytest.mark.parametrize("count", [1, 400])
def test_of_few_lines_all_that_hold_something_are_looked_at(count: int):
    assert picked_of(["", *["x"] * count, " "]) == list(range(1, count + 1))


def test_of_many_half_are_from_the_front_and_half_spread_over_the_rest():
    picked = picked_of(["x"] * 1200)
    assert picked[:200] == list(range(200))
    assert picked[200:] == [200 + 5 * n for n in range(200)]


def test_a_line_more_than_are_looked_at_leaves_one_out():
    picked = picked_of(["x"] * (400 + 1))
    assert (len(picked), picked[:201]) == (400, list(range(201)))


@pytest.mark.parametrize(("good", "separator"), [(4, ","), (3, " ")])
def test_blanks_part_the_cells_only_where_no_mark_does_in_three_lines_of_ten(good: int, separator: str):
    lines = [*ROWS[:good], *[f"2025-06-20 10:{n:02} 12" for n in range(10 - good)]]
    assert frame_of(lines, None).separator == separator


@pytest.mark.parametrize("separator", ["\t", ";", "|", ","])
def test_the_separator_that_most_lines_bear_out_is_taken(separator: str):
    lines = [row.replace(",", separator) for row in ROWS]
    frame = frame_of([*lines, "end"], None)
    assert (frame.separator, frame.width, frame.first, frame.share) == (separator, 3, 0, 20 / 21)


def test_lines_of_another_width_are_not_in_the_sample():
    frame = frame_of(["x", *ROWS[:5], ROWS[5] + ",1", *ROWS[6:]], ",")
    assert (frame.width, frame.first, len(frame.sample), frame.share) == (3, 1, 19, 19 / 21)


@pytest.mark.parametrize(("columns", "fits"), [(200, True), (201, False)])
def test_a_row_has_at_most_200_columns(columns: int, fits: bool):
    line = "2025-06-20 10:00" + ",1" * (columns - 1)
    assert (frame_under([line] * 5, [0, 1, 2, 3, 4], ",") is not None) is fits


def test_a_cell_alone_is_no_row():
    assert frame_under(["946684800"] * 5, [0, 1, 2, 3, 4], ";") is None


def test_lines_without_a_time_and_a_number_are_refused():
    with pytest.raises(Refusal, match="No rows with a time and a number"):
        frame_of(["a,b"] * 5, None)


def above(*lines: str, rows: list[str] = ROWS):
    whole = [*lines, *rows]
    return above_of(whole, frame_of(whole, ","))


@pytest.mark.parametrize("between", [0, 1, 11, 12])
def test_a_head_stands_at_most_twelve_lines_above_the_first_row(between: int):
    found = above("Time,Temp,RH", *["x"] * between)
    head_line = 1 if between < 12 else None
    assert (found.head_line, found.first) == (head_line, 1 if head_line else between + 1)


def test_units_stand_between_the_head_and_the_rows():
    found = above("Time,Temp,RH", "hh:mm,°C,%")
    assert (found.head, found.head_line) == (["Time", "Temp", "RH"], 1)
    assert (found.units, found.units_line, found.first) == (["hh:mm", "°C", "%"], 2, 2)


def test_units_without_a_head_are_units_all_the_same():
    found = above("(dd.mm.yyyy hh:mm),[°C],%")
    assert (found.head, found.head_line, found.units_line, found.first) == ([], None, 1, 1)


@pytest.mark.parametrize(
    ("line", "are_units"),
    [
        (",°C,%", True), (",%,", True), (",C,", False), ("no.,°C,%", True), ("none,°C,%", False),
        ("yyyy-mm-dd hh:mm:ss,°C,%", True), ("Time,°C,%", False), (",,", False), ("hh:mm,tt,ss", False),
    ],
)  # fmt: skip
def test_which_line_is_one_of_units(line: str, are_units: bool):
    assert (above(line).units_line == 1) is are_units


@pytest.mark.parametrize(
    ("line", "is_head"),
    [
        ("Time,Temp,RH", True), ("Time,Temp,RH,", True), ("Time,Temp,RH,,", False), ("Time,,RH", True),
        ("Time,,", False),
        ("Time,12.5,RH", False), ("Time,\"12,5\",RH", False), ("2025-06-20,Temp,RH", False), ("# Time,Temp,RH", True),
        ("Time,Temp", True),
    ],
)  # fmt: skip
def test_which_line_is_a_head(line: str, is_head: bool):
    assert (above(line).head_line == 1) is is_head


@pytest.mark.parametrize(("filled", "is_head"), [(2, True), (1, False)])
def test_a_head_fills_half_of_the_columns_but_the_last(filled: int, is_head: bool):
    rows = [f"2025-06-20 10:{n:02},12.5,80.1,1" for n in range(20)]
    assert (above(",".join([*["a"] * filled, *[""] * (4 - filled)]), rows=rows).head_line == 1) is is_head


@pytest.mark.parametrize(("filled", "is_head"), [(3, True), (2, False)])
def test_two_heads_over_six_columns_are_too_few(filled: int, is_head: bool):
    rows = [f"2025-06-20 10:{n:02},12.5,80.1,1,2,3" for n in range(20)]
    assert (above(",".join([*["a"] * filled, *[""] * (6 - filled)]), rows=rows).head_line == 1) is is_head


def test_without_a_head_rows_whose_values_are_missing_come_first():
    found = above("x,y,z", "2025-06-20 09:58,,", "2025-06-20 09:59,,")
    assert above("2025-06-20 09:58,,", "2025-06-20 09:59,,").first == 0
    assert above("x", "2025-06-20 09:58,", "2025-06-20 09:59,,").first == 2
    assert found.first == 1


@pytest.mark.parametrize(
    ("cells", "rows", "heads"),
    [
        (["a", "b"], [["1", "2"]], ["a", "b"]),
        (["a", " b# ", ""], [["1", "2"]], ["a", "b"]),
        (["a"], [["1", "2"]], ["", ""]),
        (["a"], [["1", ""]], ["a", ""]),
        (["a", "b"], [["1", "2"], ["1", ""]], ["a", "b"]),
        (["a"], [["1", ""], ["1", "2"]], ["", ""]),
        (["a", "b", "c"], [["1", "2"]], ["", ""]),
        ([], [["", ""]], ["", ""]),
        ([], [["1", ""]], ["", ""]),
    ],
)
def test_heads_are_one_a_column_or_none(cells: list[str], rows: list[list[str]], heads: list[str]):
    assert fitted(cells, rows) == heads


def mark_of(rows: list[str], separator: str = ",", head: list[str] | None = None):
    return decimal_of(frame_of(rows, separator), head or [])  # type: ignore[arg-type]


def stamped(*values: str, separator: str = ",") -> list[str]:
    return [f"2025-06-20 10:{n:02}{separator}{separator.join(values)}" for n in range(10)]


@pytest.mark.parametrize(
    ("values", "separator", "mark"),
    [
        (("12.5", "80"), ",", (".", False)),
        (("12,5", "80"), ";", (",", False)),
        (("12,5", "80.1"), ";", (",", False)),
        (("1.250", "12,5"), ";", (",", False)),
        (("1,250", "12.5"), ";", (".", False)),
        (("1,250", "80"), ";", (",", False)),
        (("12", "80"), ";", (".", False)),
        (("12", "5"), ",", ("", False)),
        (("12", "5", "80"), ",", (".", False)),
        (("12", "500"), ",", ("", False)),
        (("12", "5000"), ",", (".", False)),
        (("12", "x5"), ",", (".", False)),
        (("12", "5", "80", "1"), ",", ("", False)),
    ],
)
def test_the_decimal_mark(values: tuple[str, ...], separator: str, mark: tuple[str, bool]):
    assert mark_of(stamped(*values, separator=separator), separator) == mark


@pytest.mark.parametrize(
    ("head", "mark"),
    [
        (["Time", "Temp"], (",", True)), (["Time", "Temp", "RH"], (".", False)), (["Time"], ("", False)),
        (["Time", "Temp", " "], (",", True)),
    ],
)  # fmt: skip
def test_a_head_for_each_value_or_each_cell_tells_what_the_comma_is(head: list[str], mark: tuple[str, bool]):
    assert mark_of(stamped("12", "5"), head=head) == mark


@pytest.mark.parametrize(
    ("data", "encoding"),
    [
        (b"\xef\xbb\xbfTime", "utf-8"),
        (b"\xff\xfeT\0", "utf-16-le"),
        (b"\xfe\xff\0T", "utf-16-be"),
        ("Time,12".encode("utf-16-le"), "utf-16-le"),
        ("Time,12".encode("utf-16-be"), "utf-16-be"),
        ("Größe °C".encode(), "utf-8"),
        ("Größe °C".encode("cp1252"), "cp1252"),
        (b"Time" + b"\0" * 2, "utf-8"),
        # more than half of one half are zero bytes, less than a fifth of the other
        (b"x\0" * 6 + b"xy" * 4, "utf-16-le"),
        (b"x\0" * 5 + b"xy" * 5, "utf-8"),
        (b"\0x" * 6 + b"xy" * 4, "utf-16-be"),
        (b"x\0" * 9 + b"\0\0" * 1, "utf-16-le"),
        (b"x\0" * 8 + b"\0\0" * 2, "utf-8"),
        # a fourth and a tenth of all, a byte off
        (b"x\0" * 500 + b"xy" * 500, "utf-8"),
        (b"x\0" * 501 + b"xy" * 499, "utf-16-le"),
        (b"x\0" * 800 + b"\0\0" * 200, "utf-8"),
        (b"x\0" * 801 + b"\0\0" * 199, "utf-16-le"),
        (b"\0x" * 801 + b"\0\0" * 199, "utf-16-be"),
        # more than half of the signs that are no ASCII do not come out
        ("°".encode() + b"\xb0", "utf-8"),
        ("°".encode() + b"\xb0" * 2, "cp1252"),
        (b"x", "utf-8"),
    ],
)
def test_the_encoding_of_a_file(data: bytes, encoding: str):
    assert encoding_of(data) == encoding


@pytest.mark.parametrize("data", [b"", b"\0\0", b" \r\n\t"])
def test_an_empty_file_is_refused(data: bytes):
    with pytest.raises(Refusal, match="This file is empty"):
        encoding_of(data)


@pytest.mark.parametrize("start", [b"PK\x03\x04", b"%PDF", b"\x89PNG", b"\x1f\x8b"])
def test_what_is_no_text_is_refused(start: bytes):
    with pytest.raises(Refusal, match="This file is not text"):
        encoding_of(start + b"x" * 20)


def test_lines_end_in_every_way_there_is_and_lose_zero_bytes_at_their_ends():
    assert lines_of(b"\xef\xbb\xbfa\r\nb\rc\nd\0e\0\0\n", "utf-8") == ["a", "b", "c", "d\0e", ""]


@pytest.mark.parametrize(
    ("line", "separator", "cells"),
    [
        ("a,b", ",", ["a", "b"]), ("a  b ", " ", ["a", "b"]), ('"a,b",c', ",", ["a,b", "c"]), ('"a,b', ",", None),
        ('"a\0b",c', ",", None), ("a\0b,c", ",", ["a\0b", "c"]), ('a; "b;c"', ";", ["a", "b;c"]),
    ],
)  # fmt: skip
def test_the_cells_of_a_line(line: str, separator: str, cells: list[str] | None):
    assert cells_of(line, separator) == cells


@pytest.mark.parametrize(
    ("last", "is_cut"),
    [
        ("12.5", False), ("12.55", True), ("12.", True), ("12", True), ("", False), ("x", True),
    ],
)  # fmt: skip
def test_a_last_line_that_ends_otherwise_than_the_others_is_cut(last: str, is_cut: bool):
    assert cut_at_the_end([*["12.5"] * 20, last], ",") is is_cut


@pytest.mark.parametrize(("alike", "is_cut"), [(9, False), (8, True)])
def test_nine_in_ten_of_the_others_tell_how_a_line_ends(alike: int, is_cut: bool):
    assert cut_at_the_end([*["12.5"] * alike, *["12 C"] * (10 - alike), "13.1"], ",") is is_cut


def test_fifty_lines_before_the_last_are_asked_and_no_more():
    assert not cut_at_the_end([*["12 C"] * 50, *["12.5"] * 50, "13.1"], ",")
    assert not cut_at_the_end([*["12 C"] * 5, *["12.5"] * 45, "13.1"], ",")
    assert cut_at_the_end([*["12 C"] * 6, *["12.5"] * 44, "13.1"], ",")
    assert cut_at_the_end([*["12 C"] * 6, *["12.5"] * 45, "13 F"], ",")


@pytest.mark.parametrize(
    ("older", "alike", "others", "is_cut"),
    [
        (["12 C"], 45, 5, False),  # of fifty, forty-five; the one before them is not asked
        ([], 42, 5, True),
        ([], 43, 4, False),
    ],
)
def test_nine_in_ten_of_up_to_fifty_lines(older: list[str], alike: int, others: int, is_cut: bool):
    rows = [*older, "12.5", *["12 C"] * others, *["12.5"] * (alike - 1)]
    assert cut_at_the_end([*rows, "13.1"], ",") is is_cut


def test_a_line_that_ends_in_a_letter_is_whole_if_the_others_end_in_it():
    rows = [f"10:{n:02},12.{n % 10}C" for n in range(20)]
    assert not cut_at_the_end([*rows, "10:20,13.1C"], ",")
    assert cut_at_the_end([*rows, "10:20,13.1F"], ",")


@pytest.mark.parametrize(("others", "is_cut"), [([], True), ([""], True)])
def test_a_line_alone_may_be_cut(others: list[str], is_cut: bool):
    assert cut_at_the_end([*others, "12.5"], ",") is is_cut


@pytest.mark.parametrize(
    ("line", "separator", "is_cut"),
    [("80,1", ";", False), ("80,1", ",", True), ("10:05", ",", False), ("80", ",", True), ("80 C", ",", False)],
)
def test_whole_digits_at_the_end_tell_nothing(line: str, separator: str, is_cut: bool):
    assert cut_at_the_end([line] * 20, separator) is is_cut


@pytest.mark.parametrize(
    ("cells", "lead", "joined"),
    [
        (["t", "12", "5", "80", "1"], 1, ["t", "12,5", "80,1"]),
        (["d", "t", "12", "5"], 2, ["d", "t", "12,5"]),
        (["t", "12", "", "", "1"], 1, ["t", "?", "?"]),
        (["t", "", "", "80", "1"], 1, ["t", "", "80,1"]),
    ],
)
def test_numbers_parted_at_their_comma_are_joined(cells: list[str], lead: int, joined: list[str]):
    assert join(cells, lead) == joined


FULL, SHORT = "10:00   12.0   80.0", "10:10          80.1"


@pytest.mark.parametrize(
    ("full", "short", "are_columns"), [(3, 3, True), (2, 3, False), (3, 2, False), (20, 0, False), (3, 30, True)]
)
def test_columns_under_each_other_are_seen_from_three_rows_of_each_kind(full: int, short: int, are_columns: bool):
    assert bool(edges_of([*[FULL] * full, *[SHORT] * short])) is are_columns


@pytest.mark.parametrize(("broken", "are_columns"), [(1, True), (2, False)])
def test_nine_rows_in_ten_must_stand_in_the_columns(broken: int, are_columns: bool):
    lines = [*[FULL] * 5, *[SHORT] * (5 - broken), *["1 2 3 4 5 6"] * broken]
    assert bool(edges_of(lines)) is are_columns


@pytest.mark.parametrize(("broken", "are_columns"), [(4, True), (5, False)])
def test_of_47_rows_43_must_stand_in_the_columns(broken: int, are_columns: bool):
    lines = [*[FULL] * 21, *[SHORT] * (26 - broken), *["1 2"] * broken]
    assert bool(edges_of(lines)) is are_columns


def test_columns_may_touch():
    """The first ends before place 5 in one row, the second begins there in another."""
    rows = ["10:00 12.0", "9:00 120.0"]
    edges = edges_of([*rows * 3, *["10:00"] * 3])
    assert edges == ((0, 5), (5, 10))
    assert [cells_at(row, edges) for row in rows] == [["10:00", "12.0"], ["9:00", "120.0"]]
    assert heads_at("Time   Temp", rows, 2) == ["Time", "Temp"]


@pytest.mark.parametrize(("line", "are_columns"), [("10:00 12.000000 80.0", False), ("10:00  12.00   80.0", True)])
def test_columns_that_reach_into_one_another_are_none(line: str, are_columns: bool):
    """One from place 8 to 12, the next from 15; the longer number from 6 to 15 touches it, and does not yet overlap."""
    lines = [*[FULL] * 5, line, *["10:00   12.0 80.0"] * (1 if not are_columns else 0), *[SHORT] * 20]
    assert bool(edges_of(lines)) is are_columns


@pytest.mark.parametrize("line", [" 10:00   12.0   80.0", "Time    Temp   RH"])
def test_a_line_that_begins_with_a_blank_or_has_no_digit_is_not_counted(line: str):
    assert edges_of([*[FULL] * 5, *[SHORT] * 5, *[line] * 5]) == ((0, 5), (8, 12), (15, 19))


@pytest.mark.parametrize(
    ("line", "heads"),
    [
        ("Time    Temp   RH", ["Time", "Temp", "RH"]),
        ("Time  Probe 1  RH", ["Time", "Probe 1", "RH"]),
        ("Time           RH", ["Time", "", "RH"]),
        ("Date Time", ["Date Time", "", ""]),
        ("Time       x    ", ["Time", "x", ""]),
        ("Time          x ", ["Time", "", "x"]),
    ],
)
def test_a_head_stands_over_the_nearest_column(line: str, heads: list[str]):
    assert heads_at(line, [FULL] * 3, 3) == heads


@pytest.mark.parametrize("rows", [[], [SHORT], ["10:00 12.0 80.0", FULL]])
def test_without_columns_there_is_nothing_for_a_head_to_stand_over(rows: list[str]):
    assert heads_at("Time    Temp   RH", rows, 3) is None


def test_how_a_line_ends_does_not_hang_on_how_it_begins():
    assert not cut_at_the_end([*["8.5", "12.5", "-3.5"] * 7, "9.5"], ",")
    assert cut_at_the_end([*["1.50"] * 20, "1,50"], ";")
