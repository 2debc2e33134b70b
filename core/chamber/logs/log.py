"""The rows of a log in order of time: one series a probe, without repeats, its gaps and the clock's jumps reported."""

from __future__ import annotations

from array import array
from math import isnan
from typing import Literal

from attrs import frozen

from core.chamber.logs.in_time import in_order
from core.chamber.logs.layout import Layout
from core.chamber.logs.rows import Rows, Skipped
from core.chamber.logs.scales import NOTHING
from core.chamber.series import Series
from core.quantities import COUNT, Amount
from core.sentence import Message, Sentence, said

FULL = 1.0
ONE_OVER: Message = "{probe}: {count} humidity above 100 % was taken as 100 %."
OVER: Message = "{probe}: {count} humidities above 100 % were taken as 100 %."
Clock = Literal["utc", "local", "start"]


@frozen(eq=False)
class Log:
    """What was read from a file. `name`: SHA-256 of its bytes, in hexadecimal. series: each time once.

    Their times are seconds since 1970-01-01 of the log's clock.
    clock: "utc" where the file tells it; "local" for the time a clock on the wall showed when the log began, counted on
    across a change of the clock; "start" for time since the log's start.
    """

    name: str
    layout: Layout
    clock: Clock
    series: tuple[Series, ...]
    skipped: tuple[Skipped, ...]
    remarks: tuple[Sentence, ...]


def build_log(name: str, layout: Layout, by_probe: dict[str, Rows], skipped: list[Skipped]) -> Log:
    """The log of the rows taken: put in order, repeats dropped, the clock's jumps reported.

    Raises Refusal on "time" where a clock of twelve hours does not say which half of the day it means.
    """
    clock = clock_kind(layout)
    remarks: dict[Sentence, None] = {}
    series: list[Series] = []
    for probe, rows in by_probe.items():
        rows, said = in_order(rows, layout.times.twelve_hours, skipped, may_jump=clock == "local")
        remarks |= dict.fromkeys(said)
        series += _series(probe, rows, layout, remarks)
    return Log(
        name=name,
        layout=layout,
        clock=clock,
        series=tuple(each for each in series if each.times_s),
        skipped=tuple(sorted(skipped, key=lambda each: each.line)),
        remarks=(*(each.said for each in layout.notes), *remarks),
    )


def clock_kind(layout: Layout) -> Clock:
    """What the times of a log of this layout count."""
    times = layout.times
    if times.kind in ("elapsed", "span"):
        return "start"
    is_utc = times.kind == "count" or times.kind.startswith("epoch")
    return "utc" if is_utc or times.offset_written or times.offset_s is not None else "local"


def _series(probe: str, rows: Rows, layout: Layout, remarks: dict[Sentence, None]) -> list[Series]:
    wanted = [layout.columns[at] for at in layout.holding("temperature", "humidity")]
    names = [probe] if layout.holding("probe") else list(dict.fromkeys(column.probe for column in wanted))
    found: list[Series] = []
    for name in names:
        own = {
            column.role: values
            for column, values in zip(wanted, rows.values, strict=True)
            if layout.holding("probe") or column.probe == name
        }
        found.append(_one(name, rows.times, own.get("temperature"), own.get("humidity"), remarks))
    return found


def _one(
    probe: str,
    times: array[float],
    temperature: array[float] | None,
    humidity: array[float] | None,
    remarks: dict[Sentence, None],
) -> Series:
    nothing = array("d", [NOTHING]) * len(times)
    warm, humid = temperature or nothing, humidity or nothing
    if any(map(isnan, warm)) and any(map(isnan, humid)):
        kept = [at for at, (a, b) in enumerate(zip(warm, humid, strict=True)) if a == a or b == b]
        times, warm, humid = (array("d", [column[at] for at in kept]) for column in (times, warm, humid))
    return Series(probe, times, warm, _capped(probe, humid, remarks))


def _capped(probe: str, humidity: array[float], remarks: dict[Sentence, None]) -> array[float]:
    over = sum(map(FULL.__lt__, humidity))
    if not over:
        return humidity
    told = {"probe": probe or said("The probe"), "count": Amount(over, COUNT)}
    remarks[Sentence(ONE_OVER, told, plural=OVER)] = None
    return array("d", [FULL if value > FULL else value for value in humidity])
