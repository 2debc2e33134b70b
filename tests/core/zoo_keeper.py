"""How an animal of the zoo is made: a logger-like text file written from one true series, so that truth is known."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta

from attrs import field, frozen

ROWS = 150
STEP = timedelta(minutes=10)
UTC = UTC
CLEAR = datetime(2025, 6, 20, 22, tzinfo=UTC)
"""A start after the twelfth of a month: only one order of day and month fits."""
UNCLEAR = datetime(2025, 6, 5, 22, tzinfo=UTC)

Stamp = Callable[[datetime], Sequence[str]]
Truth = dict[str, tuple[tuple[float, float | None, float | None], ...]]


@frozen
class Animal:
    """One file and what is true of it. `holds`: what each column holds, for whoever answers its questions."""

    name: str
    lines: tuple[str, ...]
    truth: Truth
    holds: tuple[str, ...]
    asks: tuple[str, ...] = ()
    answers: dict[str, str] = field(factory=dict)
    skips: int = 0
    late_s: float = 0.0
    """How far UTC is ahead of the times as written, where the file tells it."""
    encoding: str = "utf-8"
    mark: bytes = b""
    ending: str = "\n"
    separator: str = ","
    body: int = 1
    """How many lines stand above the rows."""

    @property
    def data(self) -> bytes:
        return self.mark + "".join(line + self.ending for line in self.lines).encode(self.encoding)


@frozen
class Point:
    """The truth at one moment: temperature in °C and humidity in % of each probe, as a sensor of 0.1 gives them."""

    at: datetime
    probes: tuple[tuple[float, float], ...]


def points(start: datetime = CLEAR, rows: int = ROWS, probes: int = 1, step: timedelta = STEP) -> list[Point]:
    return [
        Point(
            start + step * i,
            tuple(
                (round(12 + 3.1 * p + 1.3 * math.sin(i / 5 + p), 1), round(78.3 + 4.2 * p + 3 * math.cos(i / 7), 1))
                for p in range(probes)
            ),
        )
        for i in range(rows)
    ]


def fmt(*patterns: str) -> Stamp:
    return lambda at: [at.strftime(pattern) for pattern in patterns]


ISO = fmt("%Y-%m-%d %H:%M:%S")


def _dew_point(t: float, h: float) -> float:
    gamma = math.log(h / 100) + 17.62 * t / (243.12 + t)
    return 243.12 * gamma / (17.62 - gamma)


def build(
    name: str,
    *,
    head: str | None = "Time,Temperature (°C),Humidity (%)",
    stamp: Stamp = ISO,
    separator: str = ",",
    decimal: str = ".",
    values: str = "{t},{h}",
    fahrenheit: bool = False,
    percent: bool = True,
    names: Sequence[str] = ("Probe 1",),
    above: Sequence[str] = (),
    below: Sequence[str] = (),
    series: list[Point] | None = None,
    holds: str | None = None,
    late_s: float = 0.0,
    probes: int | None = None,
    **more: object,
) -> Animal:
    """`head`, `values` and `holds` part their columns by commas, whatever the file does; `values` are one probe's."""
    found = series or points(probes=probes or len(names))
    lines = [*above, *([separator.join(head.split(","))] if head else [])]
    body = len(lines)
    truth: dict[str, list[tuple[float, float | None, float | None]]] = {each: [] for each in names}
    for number, point in enumerate(found):
        cells = [*stamp(point.at)]
        for probe, (t, h) in zip(names, point.probes, strict=True):
            shown_t = f"{t * 9 / 5 + 32 if fahrenheit else t:.1f}"
            shown_h = f"{h:.1f}" if percent else f"{h / 100:.3f}"
            texts = {"t": shown_t.replace(".", decimal), "h": shown_h.replace(".", decimal)}
            cells += [
                cell.format(**texts, n=number, f=f"{t * 1.8 + 32:.1f}", d=f"{_dew_point(t, h):.1f}")
                for cell in values.split(",")
            ]
            warm = (float(shown_t) - 32) * 5 / 9 if fahrenheit else float(shown_t)
            humid = float(shown_h) / (100 if percent else 1)
            at = point.at.timestamp() + late_s
            truth[probe].append((at, warm if "{t}" in values else None, humid if "{h}" in values else None))
        lines.append(separator.join(cells))
    unit = "°F" if fahrenheit else "°C"
    kinds = {"{t}": f"temperature {unit}", "{h}": "humidity %" if percent else "humidity fraction"}
    own = [next((kind for key, kind in kinds.items() if key in cell), "ignored") for cell in values.split(",")]
    stamps = ["time"] if len(stamp(CLEAR)) == 1 else ["date", "clock"]
    return Animal(
        name=name,
        lines=(*lines, *below),
        truth={probe: tuple(rows) for probe, rows in truth.items()},
        holds=tuple(holds.split(",")) if holds else (*stamps, *own * len(names)),
        separator=separator,
        body=body,
        late_s=late_s,
        **more,  # type: ignore[arg-type]
    )


def long_form(name: str, head: str | None, names: Sequence[str], by_block: bool = False, **more: object) -> Animal:
    """One row a probe: time, name, temperature, humidity."""
    found = points(probes=len(names))
    rows = [(point.at, probe, *values) for point in found for probe, values in zip(names, point.probes, strict=True)]
    if by_block:
        rows.sort(key=lambda row: names.index(row[1]))
    lines = [f"{at:%Y-%m-%d %H:%M},{probe},{t:.1f},{h:.1f}" for at, probe, t, h in rows]
    truth: Truth = {
        each: tuple((at.timestamp(), t, h / 100) for at, probe, t, h in rows if probe == each) for each in names
    }
    above = [head] if head else []
    holds = ("time", "probe", "temperature °C", "humidity %")
    return Animal(name, (*above, *lines), truth, holds, body=len(above), **more)  # type: ignore[arg-type]
