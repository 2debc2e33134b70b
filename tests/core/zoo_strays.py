"""Files that are easily taken for another: each has a twin that means something else."""

from __future__ import annotations

import math
from datetime import UTC, datetime, timedelta

from tests.core.zoo_clocks import changed_clock, put_back
from tests.core.zoo_columns import AT, H, T
from tests.core.zoo_dates import stamped
from tests.core.zoo_keeper import CLEAR, STEP, Point, points
from tests.core.zoo_sheet import Sheet, sheet
from tests.core.zoo_written import written

T1, H1 = "Temp 1 (°C)|temperature °C 0|{t0:.1f}", "RH 1 (%)|humidity % 0|{h0:.1f}"
T2, H2 = "Temp 2 (°C)|temperature °C 1|{t1:.1f}", "RH 2 (%)|humidity % 1|{h1:.1f}"


def _near(t: float, h: float, swing: float = 1.3) -> list[Point]:
    return [
        Point(CLEAR + STEP * i, ((round(t + swing * math.sin(i / 5), 1), round(h + 3 * math.cos(i / 7), 1)),))
        for i in range(150)
    ]


def _rising_to_full() -> list[Point]:
    return [Point(CLEAR + STEP * i, ((12.0 + i % 7 / 10, min(100.0, round(92 + i / 12, 1))),)) for i in range(150)]


def _through_zero() -> list[Point]:
    return [Point(CLEAR + STEP * i, ((max(0.0, round(9 - i / 10, 1)), 80.0 + i % 9 / 10),)) for i in range(150)]


def _seconds_apart(head: str | None, channel: str = "{}") -> Sheet:
    lines = [head] if head else []
    for point in points(probes=2):
        for p, (t, h) in enumerate(point.probes):
            at = point.at + timedelta(seconds=p)
            lines.append(f"{at:%Y-%m-%d %H:%M:%S},{channel.format(p + 1)},{t:.1f},{h:.1f}")
    plain = written(f"channels a second apart under {head}", lines, "time,probe,temperature °C,humidity %", 2)
    second = tuple((at + 1, t, h) for at, t, h in plain.truth[1])
    return Sheet(plain.name, plain.data, (plain.truth[0], second), plain.holds, plain.answers)


def _one_after_the_other(name: str, first: str, second: str, *, title: bool) -> Sheet:
    """Two probes' logs, the second a day after the first, under heads of their own."""
    lines: list[str] = []
    for p, head in enumerate((first, second)):
        lines += [*(["", ("Front", "Back")[p]] if title else []), head]
        for point in points(CLEAR + timedelta(days=3 * p), probes=2):
            lines.append(f"{point.at:%Y-%m-%d %H:%M},{point.probes[p][0]:.1f},{point.probes[p][1]:.1f}")
    return written(name, lines, "time,temperature °C,humidity %", 2)


def sets() -> list[Sheet]:
    """Several probes and several logs."""
    wide = [AT, "Product (°C)|temperature °C 0|{t0:.1f}", "Air (°C)|temperature °C 1|{t1:.1f}"]
    late = {"words": lambda at: {"utc": at - timedelta(hours=2)}}
    return [
        *(
            _seconds_apart(head)
            for head in ("Time,Channel,Temp (°C),RH (%)", "Time,Kanal,Temp (°C),RH (%)", "Time,id,Temp (°C),RH (%)")
        ),
        _seconds_apart("Time,Nr,T (°C),RH (%)"),
        _seconds_apart(None),
        _one_after_the_other(
            "one log after the other, with titles", "Time,T (°C),RH (%)", "Time,T (°C),RH (%)", title=True
        ),
        _one_after_the_other(
            "one log after the other, with other heads",
            "Time,T front (°C),RH front (%)",
            "Time,T back (°C),RH back (%)",
            title=False,
        ),
        sheet(
            "two temperatures and one humidity",
            AT,
            T1,
            T2,
            "Humidity (%)|humidity % 1|{h1:.1f}",
            probes=2,
            beside="3",
            missing=lambda row, p: (True, p == 1),
        ),
        sheet(
            "a product, its air and a humidity",
            *wide,
            "Humidity (%)|humidity % 1|{h1:.1f}",
            probes=2,
            beside="3",
            missing=lambda row, p: (True, p == 1),
        ),
        sheet(
            "inside, outside and one humidity",
            AT,
            "Inside (°C)|temperature °C 0|{t0:.1f}",
            "Outside (°C)|temperature °C 1|{t1:.1f}",
            "Inside (%)|humidity % 0|{h0:.1f}",
            probes=2,
        ),
        sheet(
            "places in a language unknown to us",
            AT,
            "Edessä (°C)|temperature °C 0|{t0:.1f}",
            "Takana (°C)|temperature °C 1|{t1:.1f}",
            probes=2,
        ),
        sheet(
            "mean, least and most of an interval",
            AT,
            "Temp avg (°C)|temperature °C 0|{t0:.1f}",
            "Temp min (°C)|ignored|{t0:.1f}",
            "Temp max (°C)|ignored|{t0:.1f}",
            "RH avg (%)|humidity % 0|{h0:.1f}",
        ),
        sheet(
            "high and low, which are places",
            AT,
            "Temp high (°C)|temperature °C 0|{t0:.1f}",
            "Temp low (°C)|temperature °C 1|{t1:.1f}",
            probes=2,
        ),
        sheet(
            "local time and UTC",
            "Local time|time|{at:%Y-%m-%d %H:%M}",
            "UTC|ignored|{utc:%Y-%m-%d %H:%M}",
            T,
            H,
            clocks="1",
            **late,
        ),
        sheet("a number, an epoch and a time", "n|ignored|{n}", "epoch|ignored|{epoch:.0f}", AT, T, H),
        sheet("a zone in a column", "Date|date|{at:%Y-%m-%d}", "Time|clock|{at:%H:%M}", "TZ|ignored|CEST", T, H),
        sheet(
            "a start and a count",
            "Start|ignored|2025-06-20 22:00",
            "Elapsed (s)|time|{s:.0f}",
            T,
            H,
            late_s=-CLEAR.timestamp(),
        ),
        sheet("the second humidity not plugged in", AT, T1, H1, "RH 2 (%)|ignored|0.0"),
        sheet("the only humidity not plugged in", AT, T, "RH (%)|ignored|0.0"),
        sheet("the only temperature not plugged in", AT, "Temp (°C)|ignored|-40.0", H),
        sheet(
            "a station of the weather", AT, T, H, "Pressure|ignored|1013.2", "Wind|ignored|{n}.5", "Rain|ignored|0.0"
        ),
        sheet("a state of 0 and 1", AT, T, H, "Relay|ignored|{on}", words=lambda at: {"on": at.minute // 10 % 2}),
        sheet(
            "a state of 0 and 1 under a probe's word",
            AT,
            T,
            H,
            "Sensor ok|ignored|{on}",
            words=lambda at: {"on": at.minute // 10 % 2},
        ),
    ]


def numbers() -> list[Sheet]:
    percent = "RH (%)|humidity fraction 0|{r:.3f}"
    by_time = {point.at: point.probes[0] for point in points()}
    return [
        sheet("a head of % over fractions", AT, T, percent, words=lambda at: {"r": by_time[at][1] / 100}),
        sheet(
            "a head of °C over tenths",
            AT,
            "Temp (°C)|temperature °C/10 0|{x:.0f}",
            H,
            words=lambda at: {"x": by_time[at][0] * 10},
        ),
        sheet(
            "a tenth told with a comma",
            AT,
            "Temp (0,1 °C)|temperature °C/10 0|{x:.0f}",
            H,
            separator=";",
            words=lambda at: {"x": by_time[at][0] * 10},
        ),
        sheet(
            "a row of units of tenths",
            AT,
            "Temp|temperature °C/10 0|{x:.0f}",
            H,
            head=("Time;Temp;Hum", ";1/10 °C;%"),
            separator=";",
            words=lambda at: {"x": by_time[at][0] * 10},
        ),
        sheet("air that becomes full", AT, T, H, series=_rising_to_full()),
        sheet("air that cools to nought", AT, T, H, series=_through_zero()),
        sheet("a freezer", AT, T, H, series=_near(-20, 60)),
        sheet("a hot smoke", AT, T, H, series=_near(68, 40)),
        sheet("a boiled product", AT, T, H, series=_near(78, 40)),
        sheet("a freezer without a unit", AT, "Temp|temperature °C 0|{t0:.1f}", H, series=_near(-20, 60)),
        sheet("a hot smoke without a unit", AT, "Temp|temperature °C 0|{t0:.1f}", H, series=_near(68, 40)),
        sheet(
            "a unit of the other temperature",
            AT,
            "Temp 1 (°F)|temperature °F 0|{f0:.1f}",
            "Temp 2|temperature °F 1|{f1:.1f}",
            probes=2,
        ),
        sheet(
            "the other unit, untold",
            AT,
            "Temp 1 (°C)|temperature °C 0|{t0:.1f}",
            "Temp 2|temperature °F 1|{f1:.1f}",
            probes=2,
        ),
        sheet("both units, untold", AT, "Temp A|temperature °C 0|{t0:.1f}", "Temp B|ignored|{f0:.1f}", H),
        sheet(
            "grouped thousands beside a decimal comma",
            AT,
            "Temp|temperature °C 0|{t0:.1f}",
            "RH|humidity % 0|{h0:.1f}",
            "Druck (hPa)|ignored|1.013,2",
            separator=";",
            decimal=",",
        ),
        sheet(
            "a unit behind a comma",
            AT,
            "Temp|temperature written 0|{t0:.1f} °C",
            "RH|humidity written 0|{h0:.1f} % r.F.",
            separator=";",
            decimal=",",
        ),
        sheet("a flag behind each value", AT, "Temp (°C)|temperature °C 0|{t0:.1f} *", H),
        sheet(
            "a flag of alarm behind some",
            AT,
            T,
            H,
            change=lambda lines: [
                line if n % 10 else line.replace(",7", " H,7").replace(",8", " H,8") for n, line in enumerate(lines)
            ],
        ),
        sheet(
            "unplugged for an hour",
            AT,
            T,
            H,
            change=lambda lines: [
                line if not 60 <= n < 66 else f"{line[:17]}-40.0,100.0" for n, line in enumerate(lines)
            ],
            missing=lambda row, _: (not 60 <= row < 66,) * 2,
        ),
        sheet(
            "nought for an hour",
            AT,
            T,
            H,
            change=lambda lines: [line if not 60 <= n < 66 else f"{line[:17]}0.0,0.0" for n, line in enumerate(lines)],
            missing=lambda row, _: (not 60 <= row < 66,) * 2,
        ),
    ]


def moments() -> list[Sheet]:
    semicolon = {"separator": ";", "decimal": ","}
    return [
        stamped(
            "a month in capitals between dashes", "{up}", words=lambda at: {"up": f"{at:%d-%b-%y %I.%M.%S %p}".upper()}
        ),
        stamped("UTC behind the clock", "{at:%Y-%m-%d %H:%M:%S} UTC"),
        stamped("short ISO with Z", "{at:%Y%m%dT%H%M%S}Z"),
        stamped("a month first, short, with a weekday", "{at:%a %m/%d/%y %I:%M %p}"),
        stamped("klo and seconds", "{D}.{m}.{Y} klo {H}.{at:%M.%S}", **semicolon),
        stamped("an epoch with a decimal comma", "{epoch:.0f},0", "Zeit", **semicolon),
        stamped(
            "elapsed from an hour on",
            "{late:.0f}",
            "Elapsed (min)",
            words=lambda at: {"late": (at - CLEAR).total_seconds() / 60 + 60},
            late_s=3600 - CLEAR.timestamp(),
        ),
        sheet(
            "day, month, year, clock apart",
            "D|ignored|{at:%d}",
            "Mon|ignored|{at:%b}",
            "Y|ignored|{Y}",
            "Time|clock|{at:%H:%M}",
            T,
            H,
        ),
        stamped("a weekday and a clock", "{at:%a %H:%M}"),
        stamped("a day's number and a clock", "Day {d} {at:%H:%M}", words=lambda at: {"d": at.day - 19}),
        sheet(
            "a month as a word and a clock with dots",
            "Datum|date|{at:%d}. června {at:%Y}",
            "Čas|clock|{at:%H.%M}",
            T,
            H,
            **semicolon,
        ),
        stamped("two moments in a cell", "{at:%Y-%m-%d %H:%M} - {end:%H:%M}", words=lambda at: {"end": at + STEP}),
        stamped("a moment in words of a language unknown to us", "{at:%d} kuxuq {at:%Y %H:%M}"),
    ]


def changes() -> list[Sheet]:
    zones = lambda at: {"zone": "CEST" if at < datetime(2025, 10, 26, 3, tzinfo=UTC) else "CET", **put_back(10)(at)}  # noqa: E731
    return [
        *(changed_clock(minutes) for minutes in (45, 120, 180)),
        changed_clock(60, name="clock put back, 60 min, newest first", change=lambda lines: lines[::-1]),
        sheet(
            "a zone that changes",
            "Time|time|{wall:%Y-%m-%d %H:%M} {zone}",
            T,
            H,
            start=datetime(2025, 10, 25, 12, tzinfo=UTC),
            words=zones,
        ),
        *(
            sheet(
                f"clock put back in {turn:%B}, {minutes} min",
                "Time|time|{wall:%Y-%m-%d %H:%M}",
                T,
                H,
                start=turn - timedelta(hours=20),
                step=timedelta(minutes=minutes),
                rows=40 * 60 // minutes,
                words=lambda at, turn=turn: {"wall": at if at < turn else at - timedelta(hours=1)},
            )
            for turn in (datetime(2025, 11, 2, 2, tzinfo=UTC), datetime(2025, 4, 6, 3, tzinfo=UTC))
            for minutes in (10, 30, 60)
        ),
        sheet("an appended copy of its last hours", AT, T, H, change=lambda lines: [*lines, *lines[100:]]),
        sheet(
            "a day missing in the middle",
            AT,
            T,
            H,
            series=[p for p in points(rows=400) if not 100 <= (p.at - CLEAR) / STEP < 244],
        ),
        sheet("hours in a heap", AT, T, H, change=lambda lines: sorted(lines, key=lambda line: line[14:16])),
    ]


def all_strays() -> list[Sheet]:
    return [*sets(), *numbers(), *moments(), *changes()]
