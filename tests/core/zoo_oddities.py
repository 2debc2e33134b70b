"""Files of odd habits: numbers with their doubt, minus signs, calendars and sensors that say they cannot read."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta

from tests.core.zoo_columns import AT, H, T
from tests.core.zoo_keeper import CLEAR, STEP, Point, points
from tests.core.zoo_sheet import Lines, Sheet, sheet


def _cold() -> list[Point]:
    """Of a freezer."""
    return [Point(p.at, ((round(p.probes[0][0] - 30.0, 1), p.probes[0][1]),)) for p in points()]


def _frost(sign: str) -> Sheet:
    """Each temperature below nought, its sign written so; {} is the number."""
    cold = _cold()
    by_time = {point.at: point.probes[0][0] for point in cold}
    return sheet(
        f"below nought as {sign.format('18.2')}",
        AT,
        "Temp (°C)|temperature °C 0|{minus}",
        H,
        series=cold,
        words=lambda at: {"minus": sign.format(f"{-by_time[at]:.1f}")},
    )


def signs() -> list[Sheet]:
    return [_frost(sign) for sign in ("\u2212{}", "\u2013{}", "- {}", "({})", "{}-", "\uff0d{}")]


def doubts() -> list[Sheet]:
    """Values with their doubt, their limits or their rank."""
    humid = "RH (%)|humidity % 0|"
    return [
        sheet("a value and its doubt", AT, "Temp (°C)|temperature °C 0|{t0:.1f} ± 0.3", humid + "{h0:.1f} ± 2"),
        sheet("a value and its doubt, in ASCII", AT, "Temp (°C)|temperature °C 0|{t0:.1f} +/- 0.3", humid + "{h0:.1f}"),
        sheet("a value and its doubt in brackets", AT, "Temp (°C)|temperature °C 0|{t0:.1f} (0.3)", humid + "{h0:.1f}"),
        sheet(
            "readings and those as corrected",
            AT,
            "Temp raw (°C)|ignored|{t0:.1f}",
            "Temp corrected (°C)|temperature °C 0|{t0:.1f}",
            H,
        ),
        sheet("a change since the last reading", AT, T, H, "Change (°C)|ignored|0.1"),
        sheet("vapour in grams beside it", AT, T, H, "g/m3|ignored|8.4", "g/kg|ignored|6.8"),
        sheet("a sensor's own error beside it", AT, T, H, "Temp error (°C)|ignored|0.3"),
        sheet("days of age beside it", AT, T, H, "Day|ignored|{n}"),
        sheet("a price of current beside it", AT, T, H, "kWh|ignored|{n}.5", "W|ignored|{n}"),
    ]


def moments() -> list[Sheet]:
    """Calendars and clocks."""
    year_day = "{at:%Y}-{at:%j} {at:%H:%M}"
    return [
        sheet("a day of the year", f"Time|time|{year_day}", T, H),
        sheet("a day of the year in one number", "Time|time|{at:%Y%j} {at:%H:%M}", T, H),
        sheet("a week and its day", "Time|time|{at:%G}-W{at:%V}-{at:%u} {at:%H:%M}", T, H),
        sheet("a clock without colons in ISO", "Time|time|{at:%Y%m%dT%H%M%S}", T, H),
        sheet("a zone in brackets", "Time|time|{at:%Y-%m-%dT%H:%M:%S}+00:00[Etc/UTC]", T, H),
        sheet(
            "a Julian day",
            "Julian day|time|{jd:.5f}",
            T,
            H,
            words=lambda at: {"jd": at.timestamp() / 86400 + 2440587.5},
        ),
        sheet(
            "hours of the day as a number",
            "Date|date|{at:%Y-%m-%d}",
            "Hour|clock|{hour:.4f}",
            T,
            H,
            words=lambda at: {"hour": at.hour + at.minute / 60},
        ),
        sheet(
            "seconds of the day",
            "Date|date|{at:%Y-%m-%d}",
            "Second|clock|{sec}",
            T,
            H,
            words=lambda at: {"sec": at.hour * 3600 + at.minute * 60},
        ),
        sheet("midnight as 24:00", "Time|time|{eve}", T, H, words=_eve),
        sheet("a date on a line of its own", "Time|clock|{at:%H:%M}", T, H, change=_by_day),
        sheet("a date above only", "Time|clock|{at:%H:%M}", T, H, above=("Log of 2025-06-20", ""), rows=100),
        sheet(
            "a date in the first row of a day only",
            "Date|date|{day}",
            "Time|clock|{at:%H:%M}",
            T,
            H,
            words=_first_of_day,
        ),
        sheet("nanoseconds behind a point", "Time|time|{at:%Y-%m-%d %H:%M:%S}.000000123", T, H),
        sheet("a comma before the milliseconds", "Time|time|{at:%Y-%m-%d %H:%M:%S},250", T, H, separator=";"),
        sheet("years of two digits, year first", "Time|time|{at:%y-%m-%d %H:%M}", T, H, order="ymd"),
        sheet("an apostrophe before the year", "Time|time|{at:%d.%m.}'{at:%y %H:%M}", T, H),
    ]


def _eve(at: datetime) -> dict[str, object]:
    if at.hour == at.minute == 0:
        return {"eve": f"{at - timedelta(days=1):%Y-%m-%d} 24:00"}
    return {"eve": f"{at:%Y-%m-%d %H:%M}"}


def _first_of_day(at: datetime) -> dict[str, object]:
    return {"day": f"{at:%Y-%m-%d}" if at == CLEAR or at.hour * 60 + at.minute < STEP.seconds // 60 else ""}


def _by_day(lines: Lines) -> Lines:
    told: list[str] = []
    day = CLEAR
    for place, line in enumerate(lines):
        at = CLEAR + STEP * place
        if place == 0 or at.date() != day.date():
            told.append(f"{at:%Y-%m-%d}")
            day = at
        told.append(line)
    return told


def _unread(word: str) -> Callable[[Lines], Lines]:
    """Of two hours there is a word for the humidity."""
    return lambda lines: [
        line.rpartition(",")[0] + "," + word if 40 <= place < 52 else line for place, line in enumerate(lines)
    ]


def _unread_at(row: int, probe: int) -> tuple[bool, bool]:
    return True, not 40 <= row < 52


def _untrusted_at(row: int, probe: int) -> tuple[bool, bool]:
    """A number that is broken may be any number's rest: nothing of its line is taken."""
    return not 40 <= row < 52, not 40 <= row < 52


def sensors() -> list[Sheet]:
    """Sensors that say what they cannot read, and loggers that begin anew."""
    return [
        *(
            sheet(f"a humidity of {word}", AT, T, H, change=_unread(word), missing=_unread_at, loss="leave")
            for word in (">95", "<5", "OL", "---", "LO", "#N/A", "overrange")
        ),
        *(
            sheet(f"a humidity of {word}", AT, T, H, change=_unread(word), missing=_untrusted_at, loss="leave")
            for word in ("99.9*", "1e9")
        ),
        sheet(
            "columns of one name",
            AT,
            "Temp (°C)|temperature °C 0|{t0:.1f}",
            "Temp (°C)|temperature °C 1|{t1:.1f}",
            probes=2,
        ),
        sheet(
            "columns of one name, and humidities",
            AT,
            "Temp (°C)|temperature °C 0|{t0:.1f}",
            "Temp (°C)|temperature °C 1|{t1:.1f}",
            "RH (%)|humidity % 0|{h0:.1f}",
            "RH (%)|humidity % 1|{h1:.1f}",
            probes=2,
        ),
        sheet(
            "one probe in each unit",
            AT,
            "Front (°C)|temperature °C 0|{t0:.1f}",
            "Back (°F)|temperature °F 1|{f1:.1f}",
            probes=2,
        ),
        sheet("nothing but a dew point beside it", AT, T, "Dew point (°C)|ignored|{d0:.1f}"),
        sheet("a log begun twice", AT, T, H, change=lambda lines: [*lines[:5], "Time,Temp (°C),RH (%)", *lines[5:]]),
        sheet("a clock not set at first", AT, T, H, change=lambda lines: ["2000-01-01 00:00,0.0,0.0", *lines]),
        sheet("a clock that ran away at last", AT, T, H, change=lambda lines: [*lines, "2099-12-31 23:50,12.0,80.0"]),
        sheet(
            "a clock set after half of the log",
            AT,
            T,
            H,
            change=lambda lines: [
                line.replace("2025", "2001", 1) if at < 75 else line for at, line in enumerate(lines)
            ],
        ),
    ]


def all_oddities() -> list[Sheet]:
    return [*signs(), *doubts(), *moments(), *sensors()]
