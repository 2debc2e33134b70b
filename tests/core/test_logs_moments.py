"""Dates and clocks as loggers write them: each bound from both sides, each part of a writing in its place."""

import math
from datetime import UTC, date, datetime

import pytest

from core.chamber.logs.column import TimeStyle
from core.chamber.logs.date_order import likelier_order, orders_that_fit, starts_with_a_year
from core.chamber.logs.moments import clock_of, clock_traits, column_reader, date_mark, day_of, offset_in, reader, split

DAY_S = 86_400.0
HALVES = TimeStyle(kind="text", twelve_hours=True)
OFFSETS = TimeStyle(kind="text", offset_written=True)


def days(*parts: int) -> float:
    return float((date(*parts) - date(1970, 1, 1)).days)


def seconds(*parts: int) -> float:
    return datetime(*parts, tzinfo=UTC).timestamp()  # type: ignore[misc, arg-type]


@pytest.mark.parametrize(
    ("cell", "mark", "parts"),
    [
        ("2025-06-20 22:00", ":", ("2025-06-20 ", "22:00")),
        ("20 7:05", ":", ("20", " 7:05")),
        (" 7:05", ":", ("", "")),
        ("x 7:05", ":", ("x", " 7:05")),
        ("2025-06-20", ":", ("", "")),
        ("2025-06-20T22.00", ".", ("2025-06-20", "22.00")),
        (" 20.06.2025 22.00 ", ".", ("20.06.2025", "22.00")),
        ("202506202200", "", ("20250620", "2200")),
        ("20250620220005", "", ("20250620", "220005")),
        ("2025062022000", "", ("2025062022000", "")),
        ("20250620 2200", "", ("20250620", "2200")),
        ("20250620220 ", "", ("20250620220", "")),
        ("202506202200", ".", ("202506202200", "")),
        ("202506T22005", "", ("202506", "22005")),
    ],
)
def test_a_cell_is_parted_into_date_and_clock(cell: str, mark: str, parts: tuple[str, str]):
    assert split(cell, mark) == parts


@pytest.mark.parametrize(
    ("text", "mark"),
    [
        ("2025-06-20", "-"), ("20.06.2025", "."), ("6/20/25", "/"), ("20 06 2025", " "), ("20250620", ""),
        ("20 Jun 2025", "a"), ("Fri 20.06.2025", "."), ("2025-06.20", None), ("", None), ("20 kuxuq 2025", None),
        ("18990620", None), ("20252020", None), ("20250640", None), ("20.06.2025.", "."), ("\u00a020.06.2025, ", "."),
    ],
)  # fmt: skip
def test_what_parts_the_numbers_of_a_date(text: str, mark: str | None):
    assert date_mark(text) == mark


@pytest.mark.parametrize(
    ("text", "order", "mark", "day"),
    [
        ("2025-06-07", "ymd", "-", (2025, 6, 7)),
        ("25-06-07", "ymd", "-", (2025, 6, 7)),
        ("07.06.2025", "dmy", ".", (2025, 6, 7)),
        ("06/07/25", "mdy", "/", (2025, 6, 7)),
        ("7 6 2025", "dmy", " ", (2025, 6, 7)),
        ("20250607", "ymd", "", (2025, 6, 7)),
        ("7 Jun 2025", "ymd", "a", (2025, 6, 7)),
        ("7 Jun 25", "ymd", "a", (2025, 6, 7)),
        ("07-Jun-25", "ymd", "a", (2025, 6, 7)),
        ("2025-Jun-07", "ymd", "a", (2025, 6, 7)),
        ("Jun 7, 2025", "ymd", "a", (2025, 6, 7)),
        ("Jun 7, 25", "ymd", "a", (2025, 6, 7)),
        ("June 2025 7", "ymd", "a", None),
        ("Jun 2025, 07", "ymd", "a", (2025, 6, 7)),
        ("7 Jun", "ymd", "a", None),
        ("Jun 7", "ymd", "a", None),
        ("1 Jun 2, 2025", "ymd", "a", None),
        ("7 kuxuq 2025", "ymd", "a", None),
        ("01.01.1970", "dmy", ".", (1970, 1, 1)),
        ("31.12.1969", "dmy", ".", None),
        ("31.12.2099", "dmy", ".", (2099, 12, 31)),
        ("01.01.2100", "dmy", ".", None),
        ("01.01.00", "dmy", ".", (2000, 1, 1)),
        ("31.12.99", "dmy", ".", (2099, 12, 31)),
        ("31.12.999", "dmy", ".", None),
        ("1.1.9", "dmy", ".", None),
        ("2025.1.123", "ymd", ".", None),
        ("2025.1.007", "ymd", ".", None),
        ("2025.1.31", "ymd", ".", (2025, 1, 31)),
        ("30.02.2025", "dmy", ".", None),
        ("29.02.2024", "dmy", ".", (2024, 2, 29)),
        ("13/13/2025", "dmy", "/", None),
        ("20.06.2025", "dmy", "/", None),
        ("20.06.2025", "dmy", "", None),
        ("20250640", "ymd", "", None),
    ],
)
def test_the_day_that_a_date_names(text: str, order, mark: str, day: tuple[int, int, int] | None):
    found = day_of(text, order, mark)
    assert math.isnan(found) if day is None else found == days(*day)


@pytest.mark.parametrize(
    ("text", "style", "at"),
    [
        ("00:00", TimeStyle(), 0.0),
        ("22:05", TimeStyle(), 22 * 3600 + 300),
        ("7:05:09", TimeStyle(), 7 * 3600 + 309),
        ("7:05:09.25", TimeStyle(), 7 * 3600 + 309.25),
        ("7:05:09,5", TimeStyle(), 7 * 3600 + 309.5),
        ("23:59:59", TimeStyle(), 86_399),
        ("24:00", TimeStyle(), 86_400),
        ("24:00:01", TimeStyle(), None),
        ("24:01", TimeStyle(), None),
        ("25:00", TimeStyle(), None),
        ("12:59", TimeStyle(), 12 * 3600 + 59 * 60),
        ("12:60", TimeStyle(), None),
        ("12:00:59", TimeStyle(), 12 * 3600 + 59),
        ("12:00:60", TimeStyle(), None),
        ("10:00 AM", TimeStyle(), None),
        ("10:00+02:00", TimeStyle(), None),
        ("12:00 AM", HALVES, 0.0),
        ("12:30 a.m.", HALVES, 1800.0),
        ("1:00 AM", HALVES, 3600.0),
        ("12:00 PM", HALVES, 43_200.0),
        ("11:59 pm", HALVES, 86_340.0),
        ("13:00 PM", HALVES, None),
        ("10:00", HALVES, None),
        ("10:00Z", OFFSETS, 36_000.0),
        ("10:00 UTC", OFFSETS, 36_000.0),
        ("10:00+02:00", OFFSETS, 28_800.0),
        ("10:00-0530", OFFSETS, 36_000.0 + 19_800.0),
        ("10:00 \u221205", OFFSETS, 54_000.0),
        ("10:00 GMT+1", OFFSETS, 32_400.0),
        ("10:00+5:30", OFFSETS, 16_200.0),
        ("10:00", OFFSETS, None),
        ("22.05.09", TimeStyle(clock_mark="."), 22 * 3600 + 309),
        ("220509", TimeStyle(clock_mark=""), 22 * 3600 + 309),
        ("T22:05, ", TimeStyle(), 22 * 3600 + 300),
    ],
)
def test_the_seconds_that_a_clock_shows(text: str, style: TimeStyle, at: float | None):
    found = clock_of(text, style)
    assert math.isnan(found) if at is None else found == at


@pytest.mark.parametrize(
    ("text", "mark", "traits"),
    [
        ("10:00", ":", (False, False)), ("10:00 PM", ":", (True, False)), ("10:00Z", ":", (False, True)),
        ("10:00 PM +01", ":", (True, True)), ("10.00", ":", None), ("10.00", ".", (False, False)), ("x", ":", None),
    ],
)  # fmt: skip
def test_what_a_clock_says_besides(text: str, mark: str, traits: tuple[bool, bool] | None):
    assert clock_traits(text, mark) == traits


@pytest.mark.parametrize(
    ("label", "offset_s"),
    [
        ("Time (UTC)", 0), ("Time (Z)", 0), ("Date Time, GMT-05:00", -18_000), ("GMT+1", 3600), ("UTC +05:30", 19_800),
        ("UTC\u22121", -3600), ("Time", None), ("UTC+0530", 19_800), ("UTC+10", 36_000),
    ],
)  # fmt: skip
def test_the_offset_in_a_head(label: str, offset_s: int | None):
    assert offset_in(label) == offset_s


def each_once(*texts: str) -> list[tuple[str, int]]:
    return [(text, 10) for text in texts]


@pytest.mark.parametrize(
    ("dates", "mark", "orders"),
    [
        (each_once("20250601"), "", ("ymd",)),
        (each_once("1 Jun 2025"), "a", ("ymd",)),
        (each_once("2025-06-01", "2025-06-02"), "-", ("ymd",)),
        (each_once("01/06/2025", "02/06/2025"), "/", ("dmy", "mdy")),
        (each_once("13/06/2025"), "/", ("dmy",)),
        (each_once("06/13/2025"), "/", ("mdy",)),
        (each_once("06/06/2025"), "/", ("dmy",)),
        # three rows or more that one order cannot read rule it out, two do not
        ([("01/06/2025", 100), ("13/06/2025", 2)], "/", ("dmy", "mdy")),
        ([("01/06/2025", 100), ("13/06/2025", 3)], "/", ("dmy",)),
        ([("01/06/2025", 99_950), ("13/06/2025", 100)], "/", ("dmy", "mdy")),
        ([("01/06/2025", 99_850), ("13/06/2025", 100)], "/", ("dmy",)),
        # a year stands in front where more than half of the rows say so
        ([("2025/06/01", 11), ("01/06/2025", 10)], "/", ("ymd",)),
        ([("2025/06/01", 10), ("01/06/2025", 10)], "/", ("dmy", "mdy", "ymd")),
        # no log holds one day of each year
        (each_once("13-06-25", "14-06-25"), "-", ("dmy",)),
        (each_once("25-06-13", "25-06-14"), "-", ("ymd",)),
        # as years these lie 299 and 300 days apart at the least
        (each_once("01-01-25", "04-01-25", "01-11-20"), "-", ("dmy", "mdy", "ymd")),
        (each_once("01-01-25", "04-01-25", "01-11-21"), "-", ("dmy", "mdy")),
    ],
)
def test_the_orders_that_fit_a_file_s_dates(dates: list[tuple[str, int]], mark: str, orders: tuple[str, ...]):
    assert orders_that_fit(dates, mark) == orders


@pytest.mark.parametrize(
    ("text", "year"),
    [("2025-06-01", True), ("2025 6 1", True), ("Fri 2025/06/01", True), ("025-06-01", False), ("01-06-2025", False)],
)
def test_four_digits_in_front_are_a_year(text: str, year: bool):
    assert starts_with_a_year(text) is year


@pytest.mark.parametrize(
    ("texts", "orders", "likelier"),
    [
        (("01/06/2025", "02/06/2025"), ("dmy", "mdy"), "dmy"),
        (("06/01/2025", "06/02/2025"), ("dmy", "mdy"), "mdy"),
        (("06/06/2025",), ("dmy", "mdy"), ""),
        (("01/06/2025", "02/06/2025"), ("mdy",), ""),
        (("01/06/2025", "02/06/2025", "x"), ("mdy", "dmy"), "dmy"),
        (("06/06/2025", "07/07/2025"), ("dmy", "mdy"), ""),
    ],
)
def test_the_order_in_which_the_days_lie_closest(texts: tuple[str, ...], orders, likelier: str):
    assert likelier_order(each_once(*texts), orders, "/") == likelier


AT_S = seconds(2025, 6, 20, 22)
WRITTEN = TimeStyle(kind="text", order="ymd", date_mark="-")


@pytest.mark.parametrize(
    ("style", "cells", "clock_at", "at_s"),
    [
        (WRITTEN, ["x", "2025-06-20 22:00"], None, AT_S),
        (WRITTEN, ["x", "22:00"], None, None),
        (WRITTEN, ["22:00", "2025-06-20"], 0, AT_S),
        (TimeStyle(kind="text", order="ymd", date_mark="-", offset_s=3600), ["x", "2025-06-20 23:00"], None, AT_S),
        (
            TimeStyle(kind="text", order="ymd", date_mark="-", offset_s=3600, offset_written=True),
            ["x", "2025-06-20 22:00Z"], None, AT_S,
        ),
        (TimeStyle(kind="text", order="ymd", date_mark="-", clock_mark="."), ["x", "2025-06-20 22.00"], None, AT_S),
        (
            TimeStyle(kind="text", order="ymd", date_mark="a", spelled=True),
            ["x", "Fri, 20 Jun 2025 22:00:00"], None, AT_S,
        ),
        (TimeStyle(kind="text", order="dmy", date_mark="/", spelled=True), ["22h00", "20/06/2025"], 0, AT_S),
        (
            TimeStyle(kind="text", order="ymd", date_mark="a", spelled=True, tongue="hr", offset_s=3600),
            ["x", "20 lip 2025 23:00"], None, AT_S,
        ),
        (TimeStyle(kind="epoch_s", offset_s=3600), ["x", f"{AT_S:.0f}"], None, AT_S),
        (TimeStyle(kind="epoch_s"), ["x", "946684800"], None, 946_684_800),
        (TimeStyle(kind="epoch_s"), ["x", "946684799"], None, None),
        (TimeStyle(kind="epoch_s"), ["x", "4102444800"], None, 4_102_444_800),
        (TimeStyle(kind="epoch_s"), ["x", "4102444801"], None, None),
        (TimeStyle(kind="epoch_s"), ["x", f"{AT_S:.0f} °C"], None, None),
        (TimeStyle(kind="epoch_ms"), ["x", f"{AT_S * 1000:.0f}"], None, AT_S),
        (TimeStyle(kind="epoch_ms"), ["x", "946684800000"], None, 946_684_800),
        (TimeStyle(kind="epoch_ms"), ["x", "946684799999"], None, None),
        (TimeStyle(kind="epoch_ms"), ["x", "4102444800000"], None, 4_102_444_800),
        (TimeStyle(kind="epoch_ms"), ["x", "4102444800001"], None, None),
        (TimeStyle(kind="spreadsheet"), ["x", "36526"], None, seconds(2000, 1, 1)),
        (TimeStyle(kind="spreadsheet"), ["x", "36525.999"], None, None),
        (TimeStyle(kind="spreadsheet"), ["x", "73050"], None, seconds(2099, 12, 31)),
        (TimeStyle(kind="spreadsheet"), ["x", "73050.001"], None, None),
        (TimeStyle(kind="spreadsheet"), ["x", "45828.916667"], None, AT_S),
        (TimeStyle(kind="spreadsheet", offset_s=-3600), ["x", "45828.875"], None, AT_S),
        (TimeStyle(kind="count", count="us1970"), ["x", f"{AT_S * 1e6:.0f}"], None, AT_S),
        (TimeStyle(kind="count"), ["x", f"{AT_S * 1e6:.0f}"], None, None),
        (TimeStyle(kind="span", elapsed_unit="min"), ["x", "36:10"], None, 2170),
        (TimeStyle(kind="elapsed", elapsed_unit="min"), ["x", "0"], None, 0),
        (TimeStyle(kind="elapsed", elapsed_unit="min"), ["x", "1.5"], None, 90),
        (TimeStyle(kind="elapsed", elapsed_unit="ms"), ["x", "1500"], None, 1.5),
        (TimeStyle(kind="elapsed", elapsed_unit="h"), ["x", "2"], None, 7200),
        (TimeStyle(kind="elapsed", elapsed_unit="d"), ["x", "2"], None, 172_800),
        (TimeStyle(kind="elapsed", elapsed_unit="s"), ["x", "-0.5"], None, None),
        (TimeStyle(kind="elapsed"), ["x", "1.5"], None, None),
    ],
)  # fmt: skip
def test_the_moment_that_a_row_names(style: TimeStyle, cells: list[str], clock_at: int | None, at_s: float | None):
    (alone,) = [reader(style, 1, clock_at, ".")(cells)]
    (in_a_column,) = column_reader(style, 1, clock_at, ".")([[cell] for cell in cells])
    for found in (alone, in_a_column):
        assert math.isnan(found) if at_s is None else found == pytest.approx(at_s, abs=1e-6)


def test_a_column_s_moments_are_those_of_its_rows_where_all_are_as_long():
    cells = ["2025-06-20 22:00", "2025-06-20 22:10", "2025-06-21 00:00"]
    assert list(column_reader(WRITTEN, 0, None, ".")([cells])) == [AT_S, AT_S + 600, AT_S + 7200]


def test_a_longer_date_than_the_first_is_left_to_be_read_by_itself():
    style = TimeStyle(kind="text", order="dmy", date_mark="/")
    read_ = list(column_reader(style, 0, None, ".")([["9/6/2025 22:00", "20/06/2025 22:00"]]))
    assert (read_[0], math.isnan(read_[1])) == (seconds(2025, 6, 9, 22), True)
