"""A proof of the empty chamber: which logs were looked at, how they were read, and what they came to that day.

The logs themselves are files beside the journal, named by their SHA-256. What they came to is kept as the keys and
values of its sentences and figures, so that the entry still speaks where the files are not.
"""

from __future__ import annotations

from typing import Any

from attrs import Attribute, field, frozen
from attrs.validators import and_, ge, gt, lt, matches_re, max_len, min_len, optional

from core.daybook.facts.fields import asked, finite, name, on_a_clock
from core.daybook.facts.kept import KeptSentence
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE, TEMPERATURE_DIFFERENCE
from core.units import DAY_S
from core.usual import STRAYING
from core.worksheet import Number

TARGET_C = Number("temperature_c", "Target temperature", TEMPERATURE, -5.0, 40.0)
HALF_K = Number("temperature_half_k", "Temperature tolerance", TEMPERATURE_DIFFERENCE, 0.1, 10.0, help="Either way.")
TARGET_HUMIDITY = Number(
    "humidity", "Target humidity", RELATIVE_HUMIDITY, 0.01, 1.0, optional=True, help="Empty: not asked for."
)
HALF_HUMIDITY = Number(
    "humidity_half",
    "Humidity tolerance",
    RELATIVE_HUMIDITY,
    0.005,
    0.5,
    optional=True,
    usual=STRAYING,
    help="Either way.",
)
ROOM_C = Number(
    "room_c",
    "Temperature of the room",
    TEMPERATURE,
    -20.0,
    60.0,
    optional=True,
    help="On average. With it the chamber's own warming is worked out.",
)


def _pairs(_instance: object, attribute: Attribute[Any], value: tuple[tuple[float, ...], ...]) -> None:
    if any(len(each) != 2 for each in value):
        raise ValueError(f"{attribute.name} must be pairs")


@frozen
class KeptFigure:
    """key: a key of core.chamber.settling.FIGURE_NAMES."""

    key: str
    value: float = field(validator=finite)
    quantity: str


@frozen
class ProofFile:
    """layout: as core.chamber.logs settled it, in plain JSON."""

    sha256: str = field(validator=matches_re("[0-9a-f]{64}"))
    name: str
    layout: dict[str, Any]


@frozen
class ProofProbe:
    """file: which of the run's files, from 0. in_log: what the log calls it. name: what it is called here.

    instrument: the id of the instrument that it is, None where it is none of the list.
    """

    file: int = field(validator=ge(0))
    in_log: str
    name: str = field(validator=name)
    instrument: str | None = None


@frozen
class ProofResult:
    """What it came to when it was saved. outline: hours into the log and °C of the centre.

    settled_since_s: on the logs' clock; settled_after_s: into the log. Both None where it had not settled.
    """

    settled_since_s: float | None = field(validator=optional(on_a_clock))
    settled_after_s: float | None = field(validator=optional(on_a_clock))
    because: tuple[KeptSentence, ...] = ()
    advice: tuple[KeptSentence, ...] = ()
    corrected: tuple[KeptSentence, ...] = ()
    figures: tuple[KeptFigure, ...] = ()
    outline: tuple[tuple[float, ...], ...] = field(default=(), validator=and_(max_len(120), _pairs))

    @property
    def settled(self) -> bool:
        return self.settled_since_s is not None


@frozen
class ProofRun:
    """changed: what was changed since the run before. humidity None: it was not asked for.

    from_s, until_s: the part looked at, on the logs' clock; None: all. begun_s: when the first log begins, None where
    the logs have no dates. utc_offset_s: of the clock on the wall, for logs that count in UTC.
    """

    KIND = "proof-run"

    name: str = field(validator=name)
    changed: str
    files: tuple[ProofFile, ...] = field(validator=min_len(1))
    probes: tuple[ProofProbe, ...] = field(validator=min_len(1))
    result: ProofResult
    temperature_c: float = asked(TARGET_C)
    temperature_half_k: float = asked(HALF_K)
    humidity: float | None = asked(TARGET_HUMIDITY)
    humidity_half: float | None = asked(HALF_HUMIDITY)
    centre: str = ""
    room_c: float | None = asked(ROOM_C)
    from_s: float | None = field(default=None, validator=optional(on_a_clock))
    until_s: float | None = field(default=None, validator=optional(on_a_clock))
    begun_s: float | None = field(default=None, validator=optional(on_a_clock))
    utc_offset_s: float = field(default=0.0, validator=and_(finite, gt(-DAY_S), lt(DAY_S)))


Fact = ProofRun
