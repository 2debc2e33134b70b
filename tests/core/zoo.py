"""Layouts that loggers' text files come in, all of our own making. Each animal knows what is true of it."""

from __future__ import annotations

from datetime import datetime, timedelta

from attrs import evolve

from tests.core.zoo_keeper import CLEAR, STEP, UNCLEAR, UTC, Animal, Point, build, fmt, long_form, points


def _hour(at: datetime) -> str:
    return f"{at.month}/{at.day}/{at.year} {at.hour % 12 or 12}:{at:%M} {'AM' if at.hour < 12 else 'PM'}"


def _serial(at: datetime) -> str:
    return f"{(at - datetime(1899, 12, 30, tzinfo=UTC)) / timedelta(days=1):.6f}"


def _summer(at: datetime) -> list[str]:
    return [at.strftime("%Y-%m-%dT%H:%M:%S+02:00")]


TWO = ("Front", "Back")
TWO_HEAD = "Time,Front Temp (°C),Front RH (%),Back Temp (°C),Back RH (%)"
ASK_ORDER = {"asks": ("order",), "answers": {"order": "dmy"}}
UNIT_2 = {"asks": ("unit 2",), "answers": {"unit 2": "°C"}}
NO_HEAD = {
    "head": None,
    "asks": ("role 2", "role 3"),
    "answers": {"role 2": "temperature", "role 3": "humidity", "unit 2": "°C"},
    "names": ("Probe 1",),
}


def plain() -> list[Animal]:
    """Separators, marks, heads in many languages."""
    deg = "(°C)"
    comma = {"separator": ";", "decimal": ","}
    return [
        build("comma and ISO time"),
        build("semicolon and decimal comma", **comma),
        build("semicolon and decimal point", separator=";"),
        build("tab", separator="\t"),
        build("tab and decimal comma", separator="\t", decimal=","),
        build("pipe", separator="|"),
        build("blanks", separator="   ", head=None, stamp=fmt("%Y-%m-%d", "%H:%M"), **_asked(3, 4)),
        build("quoted decimal comma", values='"{t}","{h}"', decimal=","),
        build("all quoted", stamp=fmt('"%Y-%m-%d %H:%M:%S"'), values='"{t}","{h}"'),
        build(
            "German", head=f"Datum/Uhrzeit,Temperatur {deg},Luftfeuchte (% rF)", stamp=fmt("%d.%m.%Y %H:%M"), **comma
        ),
        build(
            "French", head=f"Date et heure,Température {deg},Humidité (%HR)", stamp=fmt("%d/%m/%Y %H:%M:%S"), **comma
        ),
        build(
            "Italian", head=f"Data e ora,Temperatura {deg},Umidità relativa (%)", stamp=fmt("%d/%m/%Y %H.%M"), **comma
        ),
        build("Finnish", head="Aika,Lämpötila °C,Kosteus %", stamp=fmt("%d.%m.%Y %H.%M.%S"), **comma),
        build("Czech", head="Čas,Teplota [°C],Vlhkost [%]", stamp=fmt("%d.%m.%Y %H:%M"), **comma),
        build("Polish", head="Czas,Temperatura [°C],Wilgotność [%]", **comma),
        build("Russian", head="Дата и время,Температура °C,Влажность %", stamp=fmt("%d.%m.%Y %H:%M:%S"), **comma),
        build("Chinese", head="时间,温度(℃),湿度(%)", stamp=fmt("%Y/%m/%d %H:%M")),
        build("Japanese", head="日時,温度(℃),湿度(%RH)", stamp=fmt("%Y/%m/%d %H:%M:%S")),
        build("Turkish", head="Tarih,Sıcaklık (°C),Nem (%)", stamp=fmt("%d.%m.%Y %H:%M"), **comma),
        build(
            "a language unknown to us, with units",
            head="Zozo,Blib (°C),Blab (%)",
            names=("Blib",),
            asks=("role 3",),
            answers={"role 3": "humidity"},
        ),
        build("no head", **NO_HEAD),
        build("letters only", head="t,T,RH", **UNIT_2),
    ]


def _asked(warm: int, humid: int) -> dict[str, object]:
    return {
        "asks": (f"role {warm}", f"role {humid}"),
        "answers": {f"role {warm}": "temperature", f"role {humid}": "humidity", f"unit {warm}": "°C"},
    }


def times() -> list[Animal]:
    """Moments as they are written."""
    unclear = points(UNCLEAR, probes=1)
    month_first = {"asks": ("order",), "answers": {"order": "mdy"}}
    short = {"asks": ("order",), "answers": {"order": "dmy"}}
    return [
        build("day first, clear", stamp=fmt("%d/%m/%Y %H:%M")),
        build("month first, clear", stamp=fmt("%m/%d/%Y %H:%M")),
        build("day first, unclear", stamp=fmt("%d/%m/%Y %H:%M"), series=unclear, **ASK_ORDER),
        build("month first, unclear", stamp=fmt("%m/%d/%Y %H:%M"), series=unclear, **month_first),
        build("dots, unclear", stamp=fmt("%d.%m.%Y %H:%M"), series=unclear, **ASK_ORDER),
        build(
            "unclear, told by the head",
            head="Time (DD/MM/YYYY hh:mm),T (°C),RH (%)",
            stamp=fmt("%d/%m/%Y %H:%M"),
            series=unclear,
        ),
        build("two digits of the year", stamp=fmt("%d.%m.%y %H:%M"), series=unclear, **short),
        build("year of two digits in front", stamp=fmt("%y-%m-%d %H:%M"), series=unclear),
        build("AM and PM", stamp=lambda at: [_hour(at)]),
        build("AM and PM, unclear", stamp=lambda at: [_hour(at)], series=unclear, **month_first),
        build("month in words", stamp=fmt("%d %b %Y %H:%M")),
        build("American month in words", stamp=fmt('"%b %d, %Y %I:%M:%S %p"')),
        build("ISO with T", stamp=fmt("%Y-%m-%dT%H:%M:%S")),
        build("ISO with Z", stamp=fmt("%Y-%m-%dT%H:%M:%SZ")),
        build("ISO with an offset", stamp=_summer, late_s=-7200),
        build("compact ISO", stamp=fmt("%Y%m%dT%H%M%S")),
        build("digits only", stamp=fmt("%Y%m%d%H%M%S")),
        build("commas inside quoted heads", head=None, above=('Time,"Temp, °C","RH, %"',)),
        build("parts of a second", stamp=fmt("%Y-%m-%d %H:%M:%S.000")),
        build("offset in the head", head="Date Time GMT-05:00,Temp (°C),RH (%)", late_s=18000),
        build("date and time apart", head="Date,Time,Temp (°C),RH (%)", stamp=fmt("%d.%m.%Y", "%H:%M:%S")),
        build("date and time apart, AM and PM", head="Date,Time,Temp (°C),RH (%)", stamp=fmt("%m/%d/%Y", "%I:%M %p")),
        build("epoch seconds", head="ts,Temp (°C),RH (%)", stamp=lambda at: [f"{at.timestamp():.0f}"]),
        build("epoch milliseconds", head="ts,Temp (°C),RH (%)", stamp=lambda at: [f"{at.timestamp() * 1000:.0f}"]),
        build("grouped epoch", head="Unix time,Temp (°C),RH (%)", stamp=lambda at: [f'"{at.timestamp():,.0f}"']),
        build("serial days", head="Date,Temp (°C),RH (%)", stamp=lambda at: [_serial(at)]),
        build(
            "serial days with a comma",
            head="Date,Temp (°C),RH (%)",
            separator=";",
            decimal=",",
            stamp=lambda at: [_serial(at).replace(".", ",")],
        ),
        build(
            "seconds from a start",
            head="t_s,T_C,RH",
            stamp=lambda at: [f"{(at - CLEAR).total_seconds():.0f}"],
            late_s=-CLEAR.timestamp(),
        ),
        build("newest first", series=points()[::-1]),
        build("weekday in front", stamp=fmt("%a %d/%m/%Y %H:%M")),
    ]


def columns() -> list[Animal]:
    """Several probes, other columns, units here and there."""
    fahrenheit = {"fahrenheit": True}
    return [
        build("wide, two probes", head=TWO_HEAD, names=TWO),
        build("wide, numbered", head="Time,T1,RH_1,T2,RH_2", names=("Probe 1", "Probe 2"), **UNIT_2),
        build(
            "wide, four probes",
            head="Time," + ",".join(f"Temp {i} (°C),Hum {i} (%)" for i in range(1, 5)),
            names=[f"Probe {i}" for i in range(1, 5)],
        ),
        build("the same heads again", head="Time,Temp (°C),RH (%),Temp (°C),RH (%)", names=("Probe 1", "Probe 2")),
        build("lettered probes", head="Time,Temp C (°C),Temp D (°C)", values="{t}", names=("C", "D")),
        build("temperature only", head="Time,Temp (°C)", values="{t}"),
        build("humidity only", head="Time,RH (%)", values="{h}"),
        long_form("long, two probes", "Time,Sensor,Temp (°C),RH (%)", TWO),
        long_form(
            "long, without a head",
            None,
            TWO,
            asks=("role 3", "role 4"),
            answers={"role 3": "temperature", "role 4": "humidity", "unit 3": "°C"},
        ),
        long_form("long, in blocks", "Time,Channel,Temp (°C),RH (%)", ("A1", "B2"), by_block=True),
        build("Fahrenheit in the head", head="Time,Temp (°F),RH (%)", **fahrenheit),
        build("Fahrenheit in a word", head="Time,Temperature Fahrenheit,Humidity", **fahrenheit),
        build("Fahrenheit, untold", head="Time,Temp,RH", asks=("unit 2",), answers={"unit 2": "°F"}, **fahrenheit),
        build("Fahrenheit in the cells", head="Time,Temp,RH", values="{t} °F,{h} %", **fahrenheit),
        build("Celsius in the cells", head="Time,Temp,RH", values="{t}C,{h}%RH"),
        build("a letter for the unit", head="Time,Temp_F,RH_percent", **fahrenheit),
        build("both units side by side", head="Time,Temp_C,Temp_F,RH", values="{t},{f},{h}"),
        build("a row of units", above=("Time;Temp;Hum",), head=";°C;%", separator=";"),
        build(
            "a row of units and patterns",
            above=("Time;Temp;Hum",),
            head="yyyy-mm-dd hh:mm:ss;°F;%RH",
            separator=";",
            **fahrenheit,
        ),
        build("humidity as a fraction", head="Time,Temp (°C),RH", percent=False),
        build(
            "numbered rows",
            head="No.,Time,Temp (°C),RH (%)",
            stamp=lambda at: [str(1 + round((at - CLEAR) / STEP)), f"{at:%Y-%m-%d %H:%M}"],
            holds="ignored,time,temperature °C,humidity %",
        ),
        build(
            "battery, signal and state", head="Time,Temp (°C),RH (%),Battery (%),RSSI,State", values="{t},{h},97,-61,ok"
        ),
        build("a dew point", head="Time,Temp (°C),RH (%),Dew point (°C)", values="{t},{h},{d}"),
        build("trailing separators", values="{t},{h},,"),
        build("unit unclear", head="Time,Temp,RH", series=_warm(), asks=("unit 2",), answers={"unit 2": "°C"}),
        build("decimal comma parted by commas", head="Time,Temp (°C),RH (%)", decimal=","),
        build("decimal comma parted by commas, no head", head=None, decimal=",", **_joined()),
    ]


def _warm() -> list[Point]:
    return [evolve(point, probes=tuple((t + 18, h) for t, h in point.probes)) for point in points()]


def _joined() -> dict[str, object]:
    asked = _asked(2, 3)["answers"]
    return {"asks": ("decimal",), "answers": {"decimal": ",", **asked}}  # type: ignore[dict-item]


def wrappings() -> list[Animal]:
    """Encodings, line endings, what stands above and below."""
    head = "Zeit,Temperatur (°C),Feuchte (%)"
    above = ("Recorder report", "Serial no.,4711", "Started,2025-06-20 22:00:00", "")
    return [
        build("UTF-8 with a mark", head=head, mark=b"\xef\xbb\xbf"),
        build("UTF-16 little end first", head=head, encoding="utf-16-le", mark=b"\xff\xfe"),
        build("UTF-16 big end first", head=head, encoding="utf-16-be", mark=b"\xfe\xff"),
        build("UTF-16 without a mark", head=head, encoding="utf-16-le"),
        build("Windows' letters", head=head, encoding="cp1252"),
        build("Latin letters", head="Heure,Température (°C),Humidité (%)", encoding="latin-1"),
        build("carriage return and line feed", ending="\r\n"),
        build("carriage return", ending="\r"),
        build("a preamble", above=above),
        build("comments above", above=("# made by a recorder", "# interval 600 s")),
        build("a commented head", head="# Time,Temp (°C),RH (%)"),
        build("a separator told in the first line", above=("sep=;",), separator=";", decimal=","),
        build("a footer", below=("", "End of data"), skips=1),
        build("an average below", below=("Average,12.1,78.0",), skips=1),
    ]


def all_animals() -> list[Animal]:
    return [*plain(), *times(), *columns(), *wrappings()]
