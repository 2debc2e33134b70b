"""Files as a whole: sections, summary rows, fixed widths, heads and feet, encodings."""

from __future__ import annotations

import codecs

from tests.core.zoo_clocks import clocks
from tests.core.zoo_columns import AT, H, T
from tests.core.zoo_long_forms import long_forms
from tests.core.zoo_missing import missing
from tests.core.zoo_sheet import Sheet, sheet


def foreign_letters() -> list[Sheet]:
    """In encodings that the interpreter on the tablet has no tables for: there they are left out."""
    columns = {
        "cp1251": (
            "Время|time|{at:%d.%m.%Y %H:%M}",
            "Температура|temperature °C 0|{t0:.1f}",
            "Влажность|humidity % 0|{h0:.1f}",
        ),
        "shift_jis": (
            "日時|time|{at:%Y/%m/%d %H:%M}",
            "温度|temperature °C 0|{t0:.1f}",
            "湿度|humidity % 0|{h0:.1f}",
        ),
        "utf-32": (AT, T, H),
    }
    names = {
        "cp1251": "Cyrillic letters of one byte",
        "shift_jis": "Japanese letters of two bytes",
        "utf-32": "four bytes a letter",
    }
    separators = {"cp1251": ";"}
    return [
        sheet(names[encoding], *each, encoding=encoding, separator=separators.get(encoding, ","))
        for encoding, each in columns.items()
        if _has_tables_for(encoding)
    ]


def _has_tables_for(encoding: str) -> bool:
    try:
        return bool(codecs.lookup(encoding))
    except LookupError:
        return False


def wrapped() -> list[Sheet]:
    """Fixed widths, heads and feet, letters."""
    col = {"separator": ""}
    fixed_at = "Time            |time|{at:%Y-%m-%d %H:%M}"
    blank = lambda lines: [line if n % 5 else line[:16] + " " * 8 + line[24:] for n, line in enumerate(lines)]  # noqa: E731
    day, clock = "Date|date|{at:%Y-%m-%d}", "Time|clock|{at:%H:%M}"
    return [
        sheet("fixed width", fixed_at, "  Temp°C|temperature °C 0|{t0:8.1f}", "    RH %|humidity % 0|{h0:8.1f}", **col),
        sheet(
            "fixed width, blank cells",
            "Date      |date|{at:%Y-%m-%d}",
            " Time |clock| {at:%H:%M}",
            "    T_C |temperature °C 0|{t0:8.1f}",
            "    RH_%|humidity % 0|{h0:8.1f}",
            change=blank,
            missing=lambda row, _: (row % 5 != 0, True),
            **col,
        ),
        sheet(
            "fixed width, two of three present",
            "Date      |date|{at:%Y-%m-%d}",
            " Time |clock| {at:%H:%M}",
            "    T1_C|temperature °C 0|{t0:8.1f}",
            "    T2_C|temperature °C 1|{t1:8.1f}",
            probes=2,
            change=lambda lines: [line if n % 3 else line[:-8] + " " * 8 for n, line in enumerate(lines)],
            missing=lambda row, p: (p == 0 or row % 3 != 0, True),
            **col,
        ),
        sheet("blanks around every cell", AT, T, H, separator=" , "),
        sheet("two characters between cells", AT, T, H, separator=";;"),
        sheet("a tilde between cells", AT, T, H, separator="~"),
        sheet("a separator in front", "|ignored|", AT, T, H),
        sheet("a count in front without a head", "{n}|ignored|{n}", AT, T, H, head=["Time,Temp (°C),RH (%)"]),
        sheet("heads over two lines in quotes", AT, T, H, head=['Time,"Temp', '(°C)","RH', '(%)"']),
        sheet("a head in three lines", AT, T, H, head=["Logger,Front,Front", "Time,T,RH", ",°C,%"]),
        sheet(
            "a head again on each page",
            AT,
            T,
            H,
            change=lambda lines: [
                each
                for n, line in enumerate(lines)
                for each in (*(("", "Page", "Time,Temp (°C),RH (%)") if n and n % 50 == 0 else ()), line)
            ],
        ),
        sheet("a long preamble", AT, T, H, above=[f"Key {n},Value {n}" for n in range(60)]),
        sheet(
            "a preamble with a table of its own",
            AT,
            T,
            H,
            above=("Channel,Unit,Low,High", "1,°C,8.0,16.0", "2,%,60.0,90.0", ""),
        ),
        sheet(
            "a preamble with its dates",
            AT,
            T,
            H,
            above=("Start,2025-06-20 22:00,0", "Stop,2025-06-21 23:00,0", "Made,2024-01-05 08:00,1", ""),
        ),
        sheet("a summary above", AT, T, H, above=(",Temp,RH", "Min,10.7,75.3", "Max,13.3,81.3", "Mean,12.0,78.3", "")),
        sheet("summary rows with dates below", AT, T, H, below=("2025-06-21 03:10,10.7,", "2025-06-21 07:20,13.3,")),
        sheet(
            "daily means among the rows",
            AT,
            T,
            H,
            change=lambda lines: [*lines[:12], "2025-06-20,12.0,78.1,mean", *lines[12:]],
        ),
        sheet(
            "summary rows with a word in front",
            "|ignored|row",
            AT,
            T,
            H,
            below=(
                "Min,2025-06-21 03:10,10.1,70.0",
                "Max,2025-06-21 07:20,19.9,90.0",
                "Avg,2025-06-21 23:00,12.3,78.8",
            ),
        ),
        sheet(
            "summary rows with a word behind",
            AT,
            T,
            H,
            "|ignored|",
            below=("2025-06-22 00:00,10.1,70.0,Min", "2025-06-22 00:00,19.9,90.0,Max"),
        ),
        sheet(
            "events between rows",
            AT,
            T,
            H,
            "Event|ignored|",
            change=lambda lines: [*lines[:30], "2025-06-21 02:55,,,Button", *lines[30:]],
        ),
        sheet("DOS letters", AT, "Temp (°C)|temperature °C 0|{t0:.1f}", H, encoding="cp437"),
        sheet("Macintosh letters", AT, "Température (°C)|temperature °C 0|{t0:.1f}", H, encoding="mac_roman"),
        *foreign_letters(),
        sheet("letters encoded twice", AT, "Temp (Â°C)|temperature °C 0|{t0:.1f}", H),
        sheet(
            "hard blanks",
            AT,
            "Temp\u00a0(°C)|temperature °C 0|\u00a0{t0:.1f}",
            "RH\u00a0(%)|humidity % 0|\u00a0{h0:.1f}",
        ),
        sheet("entities of a web page", AT, "Temp (&deg;C)|temperature °C 0|{t0:.1f}", H),
        sheet("marks of direction", AT, "Temp (°C)|temperature °C 0|\u200e{t0:.1f}", H),
        sheet(
            "every cell between apostrophes",
            AT,
            "Temp (°C)|temperature °C 0|'{t0:.1f}'",
            "RH (%)|humidity % 0|'{h0:.1f}'",
        ),
        sheet("more heads than cells", AT, T, H, head=["Time,Temp (°C),RH (%),Dew point,Note"]),
        sheet("fewer heads than cells", AT, T, H, "|ignored|5", head=["Time,Temp (°C),RH (%)"]),
        sheet("two-column time, head over one", day, clock, T, H, head=["Time,Temp (°C),RH (%)"]),
    ]


def all_files() -> list[Sheet]:
    return [*long_forms(), *wrapped(), *clocks(), *missing()]
