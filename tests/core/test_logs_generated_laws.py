"""The law of the zoo for layouts that nobody thought of: heads, moments, marks, units, places of columns in any mix."""

import math
from datetime import UTC, datetime, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.core.zoo_keeper import Point
from tests.core.zoo_sheet import judge, sheet

WARM_HEADS = ("Temp", "Temperature", "Temperatur", "Température", "Lämpötila", "Teplota", "T", "Sonde 1", "Probe A", "")
HUMID_HEADS = ("RH", "Humidity", "Luftfeuchte", "Humidité", "Kosteus", "Vlhkost", "H", "Sonde 1", "Probe A", "")
OTHER_HEADS = ("Battery (V)", "Note", "Dew point (°C)", "Set (°C)", "Signal", "Laddning %", "Board (°C)", "No.")
STAMPS = (
    "{at:%Y-%m-%d %H:%M:%S}",
    "{at:%Y-%m-%dT%H:%M:%SZ}",
    "{at:%d/%m/%Y %H:%M}",
    "{at:%m/%d/%Y %I:%M %p}",
    "{at:%d.%m.%y %H:%M}",
    "{at:%d %b %Y %H:%M}",
    "{at:%d.%m.%Y} klo {H}.{at:%M}",
    "{at:%H:%M} {at:%d-%m-%Y}",
    "{at:%Y/%m/%d} {half} {at:%I:%M}",
    "{at:%Y-%m-%d_%H-%M-%S}",
    "{epoch:.0f}",
    "{epoch:.0f}000000",
)
UNITS = {
    "in the head": (" (°C)", "{t0:.1f}", "°C"),
    "°F in the head": (" [°F]", "{f0:.1f}", "°F"),
    "kelvin in the head": (" (K)", "{k0:.2f}", "K"),
    "tenths in the head": (" [1/10 °C]", "{tenths:.0f}", "°C/10"),
    "in the cells": ("", "{t0:.1f} °C", "written"),
    "°F in the cells": ("", "{f0:.1f}F", "written"),
    "nowhere": ("", "{t0:.1f}", "°C"),
    "nowhere, °F": ("", "{f0:.1f}", "°F"),
    "nowhere, kelvin": ("", "{k0:.2f}", "K"),
    "nowhere, tenths": ("", "{tenths:.0f}", "°C/10"),
}
PERCENT = {
    "in the head": (" (%)", "{h0:.1f}", "%"),
    "in the cells": ("", "{h0:.1f} %", "written"),
    "nowhere": ("", "{h0:.1f}", "%"),
    "a fraction": ("", "{r:.3f}", "fraction"),
}


def made(start: datetime, minutes: int, temperature: float, humidity: float) -> list[Point]:
    return [
        Point(
            start + timedelta(minutes=minutes * i),
            ((round(temperature + 1.3 * math.sin(i / 5), 1), round(humidity + 3 * math.cos(i / 7), 1)),),
        )
        for i in range(60)
    ]


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_a_file_put_together_at_random_is_read_right_or_asked_about_or_refused(data: st.DataObject):
    stamp = data.draw(st.sampled_from(STAMPS), "stamp")
    unit, cell, named = UNITS[data.draw(st.sampled_from(sorted(UNITS)), "unit")]
    percent, humid_cell, humid_named = PERCENT[data.draw(st.sampled_from(sorted(PERCENT)), "percent")]
    start = datetime(2025, data.draw(st.integers(1, 12), "month"), data.draw(st.integers(1, 27), "day"), 9, tzinfo=UTC)
    temperature = data.draw(st.floats(-28, 65).map(lambda value: round(value, 1)), "temperature")
    series = made(
        start, data.draw(st.sampled_from((1, 5, 10, 30)), "minutes"), temperature, data.draw(st.integers(25, 95))
    )
    by_time = {point.at: point.probes[0] for point in series}
    decimal = data.draw(st.sampled_from(".,"), "decimal")
    columns = [
        f"{data.draw(st.sampled_from(WARM_HEADS), 'temperature')}{unit}|temperature {named} 0|{cell}",
        f"{data.draw(st.sampled_from(HUMID_HEADS), 'humidity')}{percent}|humidity {humid_named} 0|{humid_cell}",
        *(
            f"{head}|ignored|{{n}}"
            for head in data.draw(st.lists(st.sampled_from(OTHER_HEADS), unique=True, max_size=2))
        ),
    ]
    time = f"{data.draw(st.sampled_from(('Time', 'Zeit', 'Aika', 'ts')), 'head')}|time|{stamp}"
    order = data.draw(st.permutations([time, *columns]), "columns")
    kept = sheet(
        "put together",
        *order,
        separator=data.draw(st.sampled_from(";\t|"), "separator"),
        decimal=decimal,
        series=series,
        order="mdy" if "%m/%d" in stamp and "%Y/%m" not in stamp else "dmy",
        decimal_mark=decimal,
        loss="none",
        words=lambda at: {
            "half": "上午" if at.hour < 12 else "下午",
            "tenths": by_time[at][0] * 10,
            "r": by_time[at][1] / 100,
        },
    )
    outcome, why = judge(kept)
    assert outcome != "wrong", (why, kept.data.decode()[:200])
