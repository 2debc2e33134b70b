"""What a log's columns and its times may be, and the questions that are asked about them."""

from __future__ import annotations

from typing import Literal

from attrs import frozen

from core.chamber.logs.notes import Note
from core.chamber.logs.scales import Unit, units_of
from core.sentence import Message, Said, Sentence

Role = Literal["time", "date", "clock", "temperature", "humidity", "probe", "ignored", "unknown"]
Order = Literal["ymd", "dmy", "mdy", ""]
Kind = Literal["text", "epoch_s", "epoch_ms", "spreadsheet", "count", "elapsed", "span", ""]
ElapsedUnit = Literal["", "ms", "s", "min", "h", "d"]

UNITS_FOR: dict[str, tuple[Unit, ...]] = {
    "temperature": (*units_of("temperature"), "written"),
    "humidity": (*units_of("humidity"), "written"),
}
ORDER_WORDS: dict[str, Message] = {
    "ymd": "year, month, day",
    "dmy": "day before month",
    "mdy": "month before day",
}
ELAPSED_S: dict[str, float] = {"ms": 0.001, "s": 1.0, "min": 60.0, "h": 3600.0, "d": 86400.0}
ROLE_WORDS: dict[str, Message] = {
    "time": "date and time",
    "date": "date",
    "clock": "time of day",
    "temperature": "temperature",
    "humidity": "relative humidity",
    "probe": "name of the probe",
    "ignored": "not needed",
}


@frozen
class Column:
    """One column. `probe` names the series of a temperature or a humidity; `why_unit` what shows its unit."""

    role: Role
    label: str = ""
    unit: Unit = ""
    probe: str = ""
    why_unit: Note | None = None
    decimals: int | None = None
    """How many decimals every cell has; None where that varies."""
    holds_text: bool = False
    mark: str = ""
    """Its decimal mark, where that is not the file's."""
    may_be: tuple[Role, ...] = ()
    """What it may hold where that is asked; empty: what its kind of cells may."""
    doubt: Note | None = None
    """Why its role or its unit is asked, where its head seems to say it."""
    units: tuple[Unit, ...] = ()
    """The units that its numbers leave possible, the likelier first where one is."""
    is_likelier: bool = False
    may_mean_nothing: tuple[float, ...] = ()
    """Numbers that stand apart from all others and return: a sensor that is not plugged in may say so."""
    means_nothing: tuple[float, ...] | None = None
    """Those of them that were said to be no readings; None while it is asked."""
    beside: int | None = None
    """Of a humidity whose head does not say it: the column, from 1, of the temperature beside it; 0 for none."""
    asks_beside: bool = False


@frozen
class TimeStyle:
    """How moments are written. `orders`: those of day, month and year that fit the file's dates."""

    kind: Kind = ""
    order: Order = ""
    orders: tuple[Order, ...] = ()
    likelier: Order = ""
    date_mark: str = ""
    clock_mark: str = ":"
    twelve_hours: bool = False
    offset_written: bool = False
    offset_s: int | None = None
    """The whole file's offset from UTC, where its header names one."""
    elapsed_unit: ElapsedUnit = ""
    """Of a number; of a span, what its first part counts."""
    spelled: bool = False
    """Whether `plain` must turn each cell into the one writing first."""
    shared_month: str = ""
    """A word of the file that is another month in another language; `tongue` says whose it is."""
    tongue: str = ""
    counts: tuple[str, ...] = ()
    """What a number may count: keys of COUNTS, with `count` the one that was chosen."""
    count: str = ""
    example: str = ""


@frozen
class Choice:
    key: str
    words: Said


@frozen
class Loss:
    """Lines, or values of one column, that the layout does not read: how many of those looked at, and one of them.

    column: from 0; None for whole lines.
    """

    count: int
    of: int
    line: int
    text: str
    column: int | None = None


@frozen
class Question:
    """What only the person can say. `about` is "order", "decimal", "role N", "unit N" …, columns from 1."""

    about: str
    sentence: Sentence
    choices: tuple[Choice, ...]
    likelier: str = ""
    """The choice that seems likelier; never taken without being chosen."""
