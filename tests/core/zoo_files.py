"""Files as a whole: sections, long forms, summary rows, fixed widths, encodings, clock changes, what is missing."""

from __future__ import annotations

import codecs
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta

from tests.core.zoo_keeper import CLEAR, STEP, points
from tests.core.zoo_sheet import Lines, Row, Sheet, sheet

AT = "Time|time|{at:%Y-%m-%d %H:%M}"
T, H = "Temp (°C)|temperature °C 0|{t0:.1f}", "RH (%)|humidity % 0|{h0:.1f}"


def _truth(probes: int = 2, warm: bool = True, humid: bool = True) -> tuple[tuple[Row, ...], ...]:
    return tuple(
        tuple(
            (point.at.timestamp(), point.probes[p][0] if warm else None, point.probes[p][1] / 100 if humid else None)
            for point in points(probes=probes)
        )
        for p in range(probes)
    )


def written(
    name: str, lines: Sequence[str], holds: str, probes: int = 1, names: Sequence[str] = (), **more: object
) -> Sheet:
    answers = {
        key.replace("_", " "): str(value) for key, value in more.items() if key not in ("humid", "warm", "encoding")
    }
    truth = _truth(probes, bool(more.get("warm", True)), bool(more.get("humid", True)))
    data = "".join(f"{line}\n" for line in lines).encode(str(more.get("encoding", "utf-8")))
    return Sheet(name, data, truth, tuple(holds.split(",")), answers, tuple(names))


def long_forms() -> list[Sheet]:
    """A row a reading."""
    two = [(point, p) for point in points(probes=2) for p in range(2)]
    at = "{:%Y-%m-%d %H:%M}"
    pairs = [(f"{at.format(p.at)}", i, *p.probes[i]) for p, i in two]
    blocks = sorted(pairs, key=lambda row: row[1])
    each = [(when, i, kind, value) for when, i, t, h in pairs for kind, value in (("T", t), ("H", h))]
    single = [row for row in each if row[1] == 0]
    held = "time,probe,temperature °C,humidity %"
    return [
        written(
            "a numeric channel",
            ["Time,Channel,Temp (°C),RH (%)", *(f"{w},{i + 1},{t:.1f},{h:.1f}" for w, i, t, h in pairs)],
            held,
            2,
        ),
        written("a numeric channel without a head", [f"{w},{i + 1},{t:.1f},{h:.1f}" for w, i, t, h in pairs], held, 2),
        written(
            "a serial number a row",
            ["Serial;Time;Temp;RH", *(f"{40071 + i};{w};{t:.1f};{h:.1f}" for w, i, t, h in pairs)],
            "probe,time,temperature °C,humidity %",
            2,
        ),
        written(
            "an id in blocks",
            ["id,Time,T,RH", *(f"{i},{w},{t:.1f},{h:.1f}" for w, i, t, h in blocks)],
            "probe,time,temperature °C,humidity %",
            2,
        ),
        written(
            "the quantity in a column",
            [
                "Time,Quantity,Value",
                *(f"{w},{'Temperature' if k == 'T' else 'Humidity'},{v:.1f}" for w, _, k, v in single),
            ],
            "time,temperature °C,humidity %",
        ),
        written(
            "quantity and unit in columns",
            ["Time,Type,Value,Unit", *(f"{w},{k},{v:.1f},{'°C' if k == 'T' else '%'}" for w, _, k, v in single)],
            "time,temperature °C,humidity %",
        ),
        written(
            "probe and quantity in columns",
            ["Time,Probe,Quantity,Value", *(f"{w},P{i + 1},{k},{v:.1f}" for w, i, k, v in each)],
            "time,probe,temperature °C,humidity %",
            2,
        ),
        written(
            "a reading with its unit",
            ["Time,Reading", *(f"{w},{v:.1f} {'°C' if k == 'T' else '%'}" for w, _, k, v in single)],
            "time,temperature written",
        ),
        written(
            "two sections",
            [
                "Front",
                "Time,T,RH",
                *(f"{w},{t:.1f},{h:.1f}" for w, i, t, h in blocks if not i),
                "",
                "Back",
                "Time,T,RH",
                *(f"{w},{t:.1f},{h:.1f}" for w, i, t, h in blocks if i),
            ],
            "time,temperature °C,humidity %",
            2,
        ),
        written(
            "a section for each quantity",
            [
                "[Temperature °C]",
                *(f"{w},{v:.1f}" for w, _, k, v in single if k == "T"),
                "[Humidity %]",
                *(f"{w},{v:.1f}" for w, _, k, v in single if k == "H"),
            ],
            "time,temperature °C",
        ),
        written(
            "a section of another width",
            [
                "Time,T (°C),RH (%)",
                *(f"{w},{t:.1f},{h:.1f}" for w, i, t, h in blocks if not i),
                "",
                "Events",
                "Time,No,What,By",
                *(f"{w},{n},door,me" for n, (w, *_) in enumerate(pairs[:20])),
            ],
            "time,temperature °C,humidity %",
            loss="leave",
        ),
        written(
            "letters and equals signs",
            [f"{w} T={t:.1f} H={h:.1f}" for w, i, t, h in blocks if not i],
            "date,clock,temperature °C,humidity %",
        ),
        written(
            "words and colons",
            [f"{w}; Temp: {t:.1f} C; Hum: {h:.1f} %" for w, i, t, h in blocks if not i],
            "time,temperature °C,humidity %",
        ),
        written(
            "JSON lines",
            [f'{{"time": "{w}", "temperature": {t:.1f}, "humidity": {h:.1f}}}' for w, i, t, h in blocks if not i],
            "time,temperature °C,humidity %",
        ),
        written(
            "JSON lines of numbers",
            [
                f'{{"ts": {p.at.timestamp():.0f}, "t": {p.probes[0][0]:.1f}, "h": {p.probes[0][1]:.1f}}}'
                for p in points()
            ],
            "time,temperature °C,humidity %",
        ),
        written(
            "a JSON list",
            ["[", *(f'["{w}", {t:.1f}, {h:.1f}],' for w, i, t, h in blocks if not i), "]"],
            "time,temperature °C,humidity %",
        ),
        written(
            "XML",
            [
                "<log>",
                *(f'<r t="{w}"><temp>{t:.1f}</temp><rh>{h:.1f}</rh></r>' for w, i, t, h in blocks if not i),
                "</log>",
            ],
            "time",
        ),
        written(
            "a table of stars and bars",
            [
                "| Time | T (°C) | RH (%) |",
                "|---|---|---|",
                *(f"| {w} | {t:.1f} | {h:.1f} |" for w, i, t, h in blocks if not i),
            ],
            "ignored,time,temperature °C,humidity %,ignored",
        ),
        written(
            "turned on its side",
            [
                ",".join(["Time", *(row[0] for row in blocks if not row[1])]),
                ",".join(["T", *(f"{row[2]}" for row in blocks if not row[1])]),
                ",".join(["RH", *(f"{row[3]}" for row in blocks if not row[1])]),
            ],
            "time",
        ),
        written(
            "a matrix of days and hours",
            [
                "Day," + ",".join(f"{h}:00" for h in range(24)),
                *(f"2025-06-{20 + d}," + ",".join(f"{12 + h / 10:.1f}" for h in range(24)) for d in range(8)),
            ],
            "date",
        ),
    ]


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


FALL = datetime(2025, 10, 25, 12, tzinfo=UTC)


def _put_back(step_min: int):
    """The clock on the wall of each row: put back an hour at three in the morning of the 26th."""
    turn = datetime(2025, 10, 26, 3, tzinfo=UTC)
    return lambda at: {"wall": at if at < turn else at - timedelta(hours=1)}


def changed_clock(
    minutes: int, pattern: str = "%Y-%m-%d %H:%M", name: str = "", offset: int = 0, **more: object
) -> Sheet:
    return sheet(
        name or f"clock put back, {minutes} min",
        f"Time|time|{{wall:{pattern}}}",
        T,
        H,
        start=FALL + timedelta(minutes=offset),
        step=timedelta(minutes=minutes),
        rows=26 * 60 // minutes,
        words=_put_back(minutes),
        clock="put back",
        **more,  # type: ignore[arg-type]
    )


def clocks() -> list[Sheet]:
    jump = timedelta(days=3000)
    return [
        *(changed_clock(minutes) for minutes in (1, 2, 5, 10, 15, 20, 30, 60)),
        *(
            changed_clock(minutes, offset=7, name=f"clock put back, {minutes} min, at odd minutes")
            for minutes in (15, 30, 60)
        ),
        changed_clock(20, name="clock put back, newest first", change=lambda lines: lines[::-1]),
        changed_clock(10, "%d/%m/%Y %I:%M %p", name="clock put back, AM and PM"),
        sheet(
            "a clock put forward",
            "Time|time|{wall:%Y-%m-%d %H:%M}",
            T,
            H,
            told="put forward",
            words=lambda at: {"wall": at if at < CLEAR + STEP * 60 else at + timedelta(hours=1)},
        ),
        sheet(
            "a clock that lost its day",
            "Time|time|{wall:%Y-%m-%d %H:%M}",
            T,
            H,
            words=lambda at: {"wall": at if at < CLEAR + STEP * 60 else at - jump},
        ),
        sheet(
            "a clock set by minutes",
            "Time|time|{wall:%Y-%m-%d %H:%M}",
            T,
            H,
            words=lambda at: {"wall": at if at < CLEAR + STEP * 60 else at - timedelta(minutes=25)},
        ),
        sheet("no half of the day", "Time|time|{at:%Y-%m-%d %I:%M}", T, H),
    ]


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


def all_files() -> list[Sheet]:
    return [*long_forms(), *wrapped(), *clocks(), *missing()]
