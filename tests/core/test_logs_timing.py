"""Which columns hold the time and how it is written: each share, count and size from both sides."""

import pytest

from core.chamber.logs.table import Table
from core.chamber.logs.time_cells import is_moment, is_row, leading
from core.chamber.logs.time_styles import style_of
from core.chamber.logs.timing import clocks_apart, columns_of, not_understood, rising

STAMPS = [f"2025-06-20 10:{minute:02}" for minute in range(10)]
COUNTED = [str(n) for n in range(10)]


def table(*columns: list[str], head: list[str] | None = None, units: list[str] | None = None, **more: str) -> Table:
    rows = [list(cells) for cells in zip(*columns, strict=True)]
    separator = more.get("separator", ",")
    lines = [separator.join(cells) for cells in rows]
    blank = [""] * len(columns)
    return Table(rows, head or blank, units or blank, lines, separator, more.get("decimal", "."))


def mixed(good: str, count: int, bad: str = "x", of: int = 10) -> list[str]:
    return [good] * count + [bad] * (of - count)


@pytest.mark.parametrize(
    ("cell", "moment"),
    [
        ("2025-06-20 10:00", True), ("2025-06-20", True), ("10:00", False), ("12.5", False), ("20 Jun 2025", True),
        ("946684800", True), ("946684799", False), ("2840140799", True), ("2840140800", False),
        ("946684800000", True), ("946684799999", False), ("2840140799999", True), ("2840140800000", False),
        ("45828.917", False), ("946684800 s", False), ("20/06/2025 22h00", True), ("", False),
    ],
)  # fmt: skip
def test_what_is_a_moment(cell: str, moment: bool):
    assert is_moment(cell) is moment


@pytest.mark.parametrize(
    ("cells", "row"),
    [
        (["2025-06-20 10:00", "12.5"], True),
        (["2025-06-20 10:00", "cold"], False),
        (["cold", "12.5"], False),
        (["1", "12.5"], True),
        (["1", "12,5"], True),
        (["cold", "x"], False),
        ([], False),
    ],
)
def test_what_may_be_a_row(cells: list[str], row: bool):
    assert is_row(cells) is row


@pytest.mark.parametrize(
    ("cells", "count"),
    [
        (["12.5", "2025-06-20"], 0),
        (["2025-06-20", "10:00", "12.5"], 2),
        (["2025-06-20 10:00", "12.5", "2025-06-20"], 1),
        (["2025-06-20", "10:00"], 2),
    ],
)
def test_how_many_cells_in_front_hold_the_time(cells: list[str], count: int):
    assert leading(cells) == count


@pytest.mark.parametrize(
    ("columns", "head", "roles"),
    [
        ([STAMPS, COUNTED], None, {0: "time"}),
        ([COUNTED, STAMPS], None, {1: "time"}),
        ([["2025-06-20 09:00"] * 10, STAMPS], None, {0: "ignored", 1: "time"}),
        ([STAMPS, STAMPS], None, {0: "time", 1: "ignored"}),
        ([["2025-06-20 09:00"] * 10, COUNTED], ["", "Elapsed time (s)"], {0: "ignored", 1: "time"}),
        ([["2025-06-20 09:00"] * 10, COUNTED], ["", "x"], {0: "time"}),
        ([["2025-06-20 09:00"] * 2, ["1", "2"]], ["", "Elapsed time (s)"], {0: "time"}),
        ([["2025-06-20 09:00"] * 3, ["1", "2", "3"]], ["", "Elapsed time (s)"], {0: "ignored", 1: "time"}),
        ([["2025-06-20"] * 10, [stamp[11:] for stamp in STAMPS]], None, {0: "date", 1: "clock"}),
        ([["2025-06-20"] * 10, COUNTED], None, {0: "date"}),
        (
            [["2025-06-19"] * 10, [f"2025-06-{n:02}" for n in range(1, 11)], ["08:00"] * 10, [s[11:] for s in STAMPS]],
            None,
            {1: "date", 3: "clock"},
        ),
        ([["2025-06-20"] * 10, ["10.05"] * 10], ["Date", "Time"], {0: "date", 1: "clock"}),
        ([["2025-06-20"] * 10, ["10.05"] * 10], ["Date", "x"], {0: "date"}),
        ([["2025-06-20"] * 10, ["1005"] * 10], ["Date", "Time"], {0: "date", 1: "clock"}),
        ([["2025-06-20"] * 10, ["905", *["1005"] * 9]], ["Date", "Time"], {1: "time"}),
        ([["2025-06-20"] * 10, ["10h05"] * 10], ["Date", "Time"], {0: "date", 1: "clock"}),
        ([COUNTED, COUNTED], None, {}),
        ([COUNTED, [f"{946684800 + n}" for n in range(10)]], None, {1: "time"}),
        ([[f"{45828 + n / 1000:.3f}" for n in range(10)], COUNTED], None, {0: "time"}),
        ([COUNTED, [f"{45828 + n / 1000:.3f}" for n in range(10)]], None, {}),
        ([COUNTED, [f"{45828 + n / 1000:.3f}" for n in range(10)]], ["", "Time"], {1: "time"}),
        ([[f"{45828 + n / 100:.2f}" for n in range(10)], COUNTED], None, {}),
        ([[f"{n}:00" for n in range(20, 30)], COUNTED], None, {0: "time"}),
    ],
)
def test_the_columns_of_the_time(columns: list[list[str]], head: list[str] | None, roles: dict[int, str]):
    assert columns_of(table(*columns, head=head)) == roles


@pytest.mark.parametrize(("good", "roles"), [(8, {0: "time"}), (7, {})])
def test_four_cells_in_five_make_a_column_one_of_moments(good: int, roles: dict[int, str]):
    assert columns_of(table([*STAMPS[:good], *["x"] * (10 - good)], COUNTED)) == roles


@pytest.mark.parametrize(("good", "roles"), [(8, {0: "date", 1: "clock"}), (7, {0: "date"})])
def test_four_cells_in_five_make_a_column_one_of_clocks(good: int, roles: dict[int, str]):
    clocks = [stamp[11:] for stamp in STAMPS]
    assert columns_of(table(["2025-06-20"] * 10, [*clocks[:good], *["x"] * (10 - good)])) == roles


@pytest.mark.parametrize(
    ("spans", "head", "roles"),
    [
        (["23:00", "24:00"], "", {0: "time"}),
        (["22:00", "23:00"], "", {}),
        (["0:00", "0:10"], "", {0: "time"}),
        (["0:10", "0:20"], "", {0: "time"}),
        (["0:11", "0:21"], "", {}),
        (["0:11", "0:21"], "Elapsed", {0: "time"}),
        (["36:10"], "", {}),
        (["36:10", "36:00"], "", {}),
        (["36:10", "36:10"], "", {0: "time"}),
        (["36:10", "36:20", "36:30", "36:40", "x"], "", {0: "time"}),
        (["36:10", "36:20", "36:30", "x"], "", {}),
    ],
)
def test_a_span_does_not_fall_and_goes_past_a_day_or_begins_at_nothing(
    spans: list[str], head: str, roles: dict[int, str]
):
    assert columns_of(table(spans, ["12.5"] * len(spans), head=[head, ""])) == roles


@pytest.mark.parametrize(
    ("columns", "head", "shown"),
    [
        ([["x1", "x1"], ["2025q06", "1"]], ["", ""], "2025q06"),
        ([["x123", "x"], ["y456", "y"]], ["", "Time"], "y456"),
        ([["x12", "x"], ["y1", "y"]], ["", "Time"], "y1"),
        ([["x", "x"], ["y", "y"]], ["", ""], "x"),
        ([["", ""]], [""], ""),
    ],
)
def test_the_text_nearest_to_a_moment_is_named(columns: list[list[str]], head: list[str], shown: str):
    assert not_understood(table(*columns, head=head)) == shown


LATER = [f"2025-06-20 11:{minute:02}" for minute in range(10)]


@pytest.mark.parametrize(
    ("columns", "apart"),
    [
        ([STAMPS, LATER], (0, 1)),
        ([STAMPS, STAMPS], ()),
        ([STAMPS, STAMPS, LATER], (0, 2)),
        ([STAMPS, COUNTED], ()),
        ([STAMPS, ["2025-06-20 09:00"] * 10], ()),
        ([STAMPS, [*LATER[:5], *[LATER[5]] * 5]], (0, 1)),
        ([STAMPS, [*LATER[:4], *[LATER[4]] * 6]], ()),
        ([STAMPS[:3], LATER[:3]], (0, 1)),
        ([STAMPS[:2], LATER[:2]], ()),
    ],
)
def test_two_clocks_that_run_apart(columns: list[list[str]], apart: tuple[int, ...]):
    assert clocks_apart(table(*columns)) == apart


@pytest.mark.parametrize(
    ("column", "rises"),
    [
        (["1", "2", "3"], True), (["3", "2", "1"], True), (["1", "1", "2"], False), (["2", "2", "1"], False),
        (["1", "2", "x"], False), (["1", "2", "1"], False), (["1", "2", "x", "4"], True), (["2", "1"], False),
    ],
)  # fmt: skip
def test_a_column_that_rises_or_falls_throughout(column: list[str], rises: bool):
    assert rising(table(["x"] * len(column), column)) == ((1,) if rises else ())


def style(*columns: list[str], roles: dict, **more):
    return style_of(table(*columns, **more), roles)


@pytest.mark.parametrize(
    ("cells", "expected"),
    [
        (STAMPS, {"kind": "text", "order": "ymd", "date_mark": "-", "clock_mark": ":", "spelled": False}),
        (["13.06.2025 10.05"] * 10, {"kind": "text", "order": "dmy", "date_mark": ".", "clock_mark": "."}),
        (["202506201005"] * 10, {"kind": "text", "order": "ymd", "date_mark": "", "clock_mark": ""}),
        (["6/13/2025 10:05 PM"] * 10, {"order": "mdy", "twelve_hours": True, "offset_written": False}),
        (["2025-06-20T10:05Z"] * 10, {"order": "ymd", "twelve_hours": False, "offset_written": True}),
        (["20 czerwca 2025 22h05"] * 10, {"kind": "text", "date_mark": "a", "spelled": True, "shared_month": ""}),
        (["20 lip 2025 22:05"] * 10, {"kind": "text", "date_mark": "a", "shared_month": "lip"}),
        (mixed("2025-06-20 10:05", 6, "20.06.2025 10:05"), {"date_mark": "-", "order": "ymd"}),
        (["946684800"] * 10, {"kind": "epoch_s", "example": "946684800", "elapsed_unit": ""}),
        (["946684800000"] * 10, {"kind": "epoch_ms"}),
        (mixed("946684800", 8), {"kind": "epoch_s"}),
        (mixed("946684800", 7), {"kind": ""}),
        ([f"{45828 + n / 1000:.3f}" for n in range(10)], {"kind": "spreadsheet"}),
        (["36526.123"] * 10, {"kind": "spreadsheet"}),
        (["36525.999"] * 10, {"kind": "elapsed"}),
        (["73049.999"] * 10, {"kind": "spreadsheet"}),
        (["73050.001"] * 10, {"kind": "elapsed"}),
        (["1750456800000000"] * 10, {"kind": "count", "counts": ("us1970",), "count": "us1970"}),
        (["803772000"] * 10, {"kind": "count", "count": ""}),
        (["1:00", "2:00", "30:00"], {"kind": "span", "elapsed_unit": ""}),
        (["1:00:00", "2:00:00", "30:00:00"], {"kind": "span", "elapsed_unit": "h"}),
        (["1:00", "2:00:00", "30:00"], {"kind": "span", "elapsed_unit": "h"}),
        (COUNTED, {"kind": "elapsed", "elapsed_unit": "", "example": "0"}),
        (mixed("12.5", 8), {"kind": "elapsed"}),
        (mixed("12.5", 7), {"kind": ""}),
    ],
)
def test_how_the_time_is_written_in_one_column(cells: list[str], expected: dict):
    found = style(cells, ["12.5"] * len(cells), roles={0: "time"})
    assert {key: getattr(found, key) for key in expected} == expected


@pytest.mark.parametrize(
    ("head", "units", "expected"),
    [
        ("Time (s)", "", "s"), ("Time", "(min)", "min"), ("Time (h)", "(min)", "h"), ("Time", "", ""),
    ],
)  # fmt: skip
def test_what_a_number_counts_stands_in_the_head_or_under_it(head: str, units: str, expected: str):
    found = style(COUNTED, COUNTED, roles={0: "time"}, head=[head, ""], units=[units, ""])
    assert (found.kind, found.elapsed_unit) == ("elapsed", expected)


@pytest.mark.parametrize(
    ("head", "units", "offset_s"),
    [("Time (UTC)", "", 0), ("Time", "GMT+01:00", 3600), ("Time GMT+2", "GMT+01:00", 7200), ("Time", "", None)],
)
def test_an_offset_stands_in_the_head_or_under_it(head: str, units: str, offset_s: int | None):
    found = style(STAMPS, COUNTED, roles={0: "time"}, head=[head, ""], units=[units, ""])
    assert found.offset_s == offset_s


@pytest.mark.parametrize(
    ("head", "units", "order"),
    [("Date (DD/MM/YYYY)", "", "dmy"), ("Date", "MM/DD/YYYY", "mdy"), ("Date", "", ""), ("YYYY/MM/DD", "", "")],
)
def test_an_order_stands_in_the_head_or_under_it_and_must_fit(head: str, units: str, order: str):
    cells = ["01/06/2025 10:05", "02/06/2025 10:05", "03/06/2025 10:05"]
    found = style(cells, COUNTED[:3], roles={0: "time"}, head=[head, ""], units=[units, ""])
    assert found.order == order
    assert found.orders == ((order,) if order else ("dmy", "mdy"))


@pytest.mark.parametrize(
    ("dates", "clocks", "expected"),
    [
        (["13/06/2025"] * 10, ["10:05"] * 10, {"kind": "text", "order": "dmy", "date_mark": "/", "spelled": False}),
        (["13/06/2025"] * 10, ["10:05 PM"] * 10, {"twelve_hours": True, "offset_written": False}),
        (["13/06/2025"] * 10, ["10:05Z"] * 10, {"twelve_hours": False, "offset_written": True}),
        (["13/06/2025"] * 10, ["10.05"] * 10, {"clock_mark": "."}),
        (["13/06/2025"] * 10, ["1005"] * 10, {"clock_mark": ""}),
        (["13/06/2025"] * 10, ["10h05"] * 10, {"kind": "text", "spelled": True}),
        (["13 czerwca 2025, Fri"] * 10, ["10:05"] * 10, {"kind": "text", "spelled": True, "date_mark": "a"}),
        (["13/06/2025 г."] * 10, ["10:05"] * 10, {"kind": "text", "spelled": True, "order": "dmy"}),
        (["x"] * 10, ["10:05"] * 10, {"kind": ""}),
        (["13/06/2025"] * 10, ["x"] * 10, {"kind": ""}),
    ],
)
def test_how_the_time_is_written_in_two_columns(dates: list[str], clocks: list[str], expected: dict):
    found = style(dates, clocks, roles={0: "date", 1: "clock"})
    assert {key: getattr(found, key) for key in expected} == expected


def test_the_offset_of_two_columns_stands_over_the_clock():
    found = style(["13/06/2025"] * 9, ["10:05"] * 9, roles={0: "date", 1: "clock"}, head=["GMT+1", "GMT+2"])
    assert found.offset_s == 7200


@pytest.mark.parametrize("roles", [{0: "date"}, {0: "clock"}, {}])
def test_half_a_moment_is_none(roles: dict):
    assert style(STAMPS, COUNTED, roles=roles).kind == ""


@pytest.mark.parametrize(("separator", "line"), [(",", "13/06/2025 10:05,1"), (";", "13/06/2025 10:05;1")])
def test_the_order_is_looked_for_on_every_line(separator: str, line: str):
    few = table(["01/06/2025 10:05"] * 5, ["1"] * 5, separator=separator)
    deep = Table(
        few.rows, few.head, few.units, [*few.lines, *[line] * 5, "", '"13/06/2025 10:05"' + line[16:]], separator, "."
    )
    assert style_of(few, {0: "time"}).order == ""
    assert style_of(deep, {0: "time"}).order == "dmy"
