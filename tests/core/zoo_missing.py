"""Readings that are missing, however a logger writes that, and rows that are not like the others."""

from __future__ import annotations

from datetime import timedelta

from tests.core.zoo_columns import AT, H, T
from tests.core.zoo_sheet import Lines, Sheet, sheet


def missing() -> list[Sheet]:
    def words_at(word: str, every: int = 7):
        return lambda lines: [
            ",".join((*line.split(",")[:1], word, *line.split(",")[2:])) if n % every == 0 else line
            for n, line in enumerate(lines)
        ]

    gone = lambda row, _: (row % 7 != 0, True)  # noqa: E731
    found = [
        sheet(f"missing as {word or 'nothing'}", AT, T, H, change=words_at(word), missing=gone, loss="leave")
        for word in (
            "--.-",
            "OL",
            "-999",
            "N/C",
            "LO",
            "HI",
            "65535",
            "3276.7",
            "-127.00",
            "null",
            "None",
            "NaN",
            "",
            "***",
            "fault",
            "?",
            "-",
            "1E+30",
        )
    ]
    half = lambda lines: [line if n % 2 else line.rsplit(",", 1)[0] for n, line in enumerate(lines)]  # noqa: E731
    comma = lambda lines: [line if n % 2 else line.replace(".", ",") for n, line in enumerate(lines)]  # noqa: E731
    seconds = lambda lines: [line if n % 2 else line.replace(",", ":00,", 1) for n, line in enumerate(lines)]  # noqa: E731
    slashes = lambda lines: [line if n < 75 else line.replace("-", "/") for n, line in enumerate(lines)]  # noqa: E731
    return [
        *found,
        sheet("half its rows short of a cell", AT, T, H, change=half, missing=lambda row, _: (True, row % 2 == 1)),
        sheet("half its rows with a comma", AT, T, H, separator=";", change=comma),
        sheet("half its rows with seconds", AT, T, H, change=seconds),
        sheet("the second half with other dates", AT, T, H, change=slashes),
        sheet(
            "a quarter of its rows with other dates",
            AT,
            T,
            H,
            change=lambda lines: [line if n < 110 else line.replace("-", "/") for n, line in enumerate(lines)],
        ),
        sheet("the second half in °F", AT, "Temp|temperature written 0|{t0:.1f} C", H, change=_then_fahrenheit),
        sheet("a reading every day only", AT, T, H, step=timedelta(days=1), rows=40),
        sheet("three rows", AT, T, H, rows=3),
        sheet("one row", AT, T, H, rows=1),
        sheet("a whole year a minute apart in hours", AT, T, H, step=timedelta(hours=1), rows=2000),
    ]


def _then_fahrenheit(lines: Lines) -> Lines:
    def turned(line: str) -> str:
        at, warm, humid = line.split(",")
        return f"{at},{float(warm[:-2]) * 1.8 + 32:.1f} F,{humid}"

    return [line if n < 75 else turned(line) for n, line in enumerate(lines)]
