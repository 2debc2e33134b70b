"""A logger-like file drawn column by column from one true series, and the judge of how it is read.

A column is "head|what it holds|cell": what it holds answers the questions, the cell is a format of the row's truth.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from typing import Literal

from attrs import field, frozen

from core.chamber.logs import Log, answer, guess, read
from core.chamber.logs.column import Question
from core.refusals import Refusal, Refused
from tests.core.telling import in_words, told
from tests.core.zoo_keeper import CLEAR, STEP, Point, points

Row = tuple[float, float | None, float | None]
Outcome = Literal["right", "asked", "refused", "wrong"]
Lines = list[str]
MOST_QUESTIONS = 60
LEAST_READ = 0.02
"""Which share of a probe's rows may be left out without a word; none may be wrong."""
USUAL = {"nothing": "nothing", "loss": "none", "clocks": "each"}
"""What one answers where the sheet does not say."""


@frozen
class Sheet:
    """One file, what is true of it, and what who knows it answers. truth: the readings of each probe."""

    name: str
    data: bytes
    truth: tuple[tuple[Row, ...], ...]
    holds: tuple[str, ...]
    answers: dict[str, str] = field(factory=dict)
    names: tuple[str, ...] = ()
    """What the probes are called; empty where that is not looked at."""
    told: str = ""
    """What a remark says of a file that may be meant in two ways: then its times are not looked at."""


class Shown(float):
    """A number that a format writes with its file's decimal mark."""

    mark = "."

    def __format__(self, spec: str) -> str:
        return float(self).__format__(spec).replace(".", self.mark)


def _shown(value: float, mark: str) -> Shown:
    kept = Shown(value)
    kept.mark = mark
    return kept


def dew_point(t: float, h: float) -> float:
    gamma = math.log(h / 100) + 17.62 * t / (243.12 + t)
    return 243.12 * gamma / (17.62 - gamma)


def context(point: Point, number: int, start: datetime, mark: str = ".") -> dict[str, object]:
    """What a cell may show of a row: at, n, s (since the start), t0 h0 f0 k0 d0 … of each probe."""
    at = point.at
    shown: dict[str, object] = {
        "at": at,
        "n": number,
        "s": (at - start).total_seconds(),
        "epoch": at.timestamp(),
        "m": at.month,
        "D": at.day,
        "Y": at.year,
        "H": at.hour,
        "H12": at.hour % 12 or 12,
        "M": at.minute,
        "pm": at.hour >= 12,
    }
    for probe, (t, h) in enumerate(point.probes):
        values = {"t": t, "h": h, "f": t * 1.8 + 32, "k": t + 273.15, "d": dew_point(t, h)}
        shown |= {f"{key}{probe}": _shown(value, mark) for key, value in values.items()}
    return shown


def sheet(
    name: str,
    *columns: str,
    separator: str = ",",
    decimal: str = ".",
    above: Sequence[str] = (),
    below: Sequence[str] = (),
    head: bool | Sequence[str] = True,
    start: datetime = CLEAR,
    step: timedelta = STEP,
    rows: int = 150,
    probes: int = 1,
    late_s: float = 0.0,
    words: Callable[[datetime], dict[str, object]] = lambda _: {},
    series: list[Point] | None = None,
    change: Callable[[Lines], Lines] = lambda lines: lines,
    missing: Callable[[int, int], tuple[bool, bool]] = lambda row, probe: (True, True),
    encoding: str = "utf-8",
    mark: bytes = b"",
    ending: str = "\n",
    names: Sequence[str] = (),
    later: dict[int, float] | None = None,
    told: str = "",
    **answers: str,
) -> Sheet:
    """`words`: more that a cell may show of a moment. `missing`: whether a row has a probe's temperature, humidity.
    `change`: what becomes of the body's lines. `answers`: those that what the columns hold does not give."""
    found = series or points(start, rows, probes, step)
    parts = [tuple((*column.split("|"), "", "")[:3]) for column in columns]
    body = [
        separator.join(cell.format(**(context(point, n, start, decimal) | words(point.at))) for _, _, cell in parts)
        for n, point in enumerate(found)
    ]
    heads = [separator.join(label for label, _, _ in parts)] if head is True else [*(head or ())]
    lines = [*above, *heads, *change(body), *below]
    holds = tuple(held for _, held, _ in parts)
    text = "".join(line + ending for line in lines)
    given = {key.replace("_", " "): value for key, value in answers.items()}
    truth = _truth(found, holds, late_s, missing, later or {})
    return Sheet(name, mark + text.encode(encoding), truth, holds, given, tuple(names), told)


def _truth(
    found: list[Point],
    holds: Sequence[str],
    late_s: float,
    missing: Callable[[int, int], tuple[bool, bool]],
    later: dict[int, float],
) -> tuple[tuple[Row, ...], ...]:
    has: dict[int, set[str]] = {}
    for held in holds:
        kind, _, rest = held.partition(" ")
        if kind in ("temperature", "humidity"):
            has.setdefault(int(rest.split()[-1]), set()).add(kind)
    truth: list[tuple[Row, ...]] = []
    for probe, kinds in has.items():
        rows: list[Row] = []
        for n, point in enumerate(found):
            warm, humid = missing(n, probe)
            t = point.probes[probe][0] if warm and "temperature" in kinds else None
            h = point.probes[probe][1] / 100 if humid and "humidity" in kinds else None
            if t is not None or h is not None:
                rows.append((point.at.timestamp() + late_s + later.get(probe, 0.0), t, h))
        truth.append(tuple(rows))
    return tuple(truth)


def right_answer(kept: Sheet, question: Question) -> str:
    """What one who knows the file answers; "" where no fitting answer is offered."""
    offered = [choice.key for choice in question.choices]
    kind, _, column = question.about.partition(" ")
    wanted = kept.answers.get(question.about) or kept.answers.get(kind, "")
    if not wanted and kind in ("role", "unit") and int(column) <= len(kept.holds):
        held = kept.holds[int(column) - 1].split()
        wanted = held[0] if kind == "role" else held[1] if len(held) > 1 else ""
    wanted = wanted or USUAL.get(kind, "")
    return wanted if wanted in offered else "none" if "none" in offered else ""


def judge(kept: Sheet) -> tuple[Outcome, str]:
    """How a file is read, and why it counts as that."""
    asked = False
    try:
        layout = guess(kept.data)
        for _ in range(MOST_QUESTIONS):
            if not layout.questions:
                break
            asked = True
            question = layout.questions[0]
            key = right_answer(kept, question)
            if not key:
                keys = [choice.key for choice in question.choices]
                return "wrong", f"asked without a fitting answer: {question.about}: {told(question.sentence)} {keys}"
            layout = answer(kept.data, layout, question.about, key)
        log = read(kept.data, layout)
    except Refusal as refusal:
        return "refused", refusal.sentence
    except Refused as refused:
        return "refused", " ".join(each.sentence for each in refused.refusals)
    if kept.told:
        return (
            ("asked", kept.told)
            if any(kept.told in each for each in in_words(log.remarks))
            else ("wrong", "nothing is told")
        )
    why = misread(kept, log)
    return ("wrong", why) if why else ("asked" if asked else "right", "")


def misread(kept: Sheet, log: Log) -> str:
    """What is not as it was measured, "" where all is. Where the file tells no offset it is not looked for."""
    found = {
        series.probe: list(zip(series.times_s, series.temperatures_c, series.humidities, strict=True))
        for series in log.series
    }
    if len(found) != len(kept.truth):
        return f"{len(found)} probes {list(found)} of {len(kept.truth)}"
    if kept.names and list(found) != list(kept.names):
        return f"called {list(found)}"
    left = list(found)
    for rows in kept.truth:
        best = min(left, key=lambda name: _misses(rows, found[name])[0])
        misses, why = _misses(rows, found[best])
        if misses:
            return f"{best}: {why}"
        left.remove(best)
    return ""


def _misses(truth: Sequence[Row], found: list[tuple[float, float, float]]) -> tuple[int, str]:
    known = {round(at): (t, h) for at, t, h in truth}
    misses, why = 0, ""
    for at, t, h in found:
        made = known.pop(round(at), None)
        if made is None or not (_same(t, made[0], 0.06) and _same(h, made[1], 0.0006)):
            misses, why = misses + 1, why or f"({at}, {t}, {h}) is {made}"
    if len(known) > LEAST_READ * len(truth):
        misses, why = misses + len(known), why or f"{len(known)} rows not taken"
    return misses, why


def _same(found: float, true: float | None, within: float) -> bool:
    return math.isnan(found) if true is None else abs(found - true) <= within
