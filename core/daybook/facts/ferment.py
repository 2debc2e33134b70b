"""What happens while a batch ferments beside its readings: the clock starts, a log is taken, a miss is decided on."""

from __future__ import annotations

from typing import Literal

from attrs import field, frozen
from attrs.validators import and_, deep_iterable, ge, in_, matches_re, max_len, min_len

from core.daybook.facts.fields import asked, celsius, lasting, name
from core.ferment.course import Place
from core.ferment.outcome import Result
from core.ferment.rules import RULE_WORDS, RuleKey
from core.quantities import TEMPERATURE
from core.usual import FERMENT_C
from core.worksheet import Choice, Number

MOST_POINTS = 500
_column = and_(min_len(2), max_len(MOST_POINTS))

RULE = Choice("rule", "Rule", RULE_WORDS, default="us", help="Take the one that holds where you are.")
PLANNED = Number(
    "planned_c",
    "Chamber set to",
    TEMPERATURE,
    0.0,
    50.0,
    optional=True,
    usual=FERMENT_C,
    help="Where nothing was read it counts, if it is the warmer.",
)


@frozen
class FermentationBegun:
    """The meat reached the base temperature of the rule: the clock of its degree-hours starts.

    planned_c: what the chamber was set to.
    """

    KIND = "fermentation-begun"

    rule: RuleKey = asked(RULE, default="us")
    planned_c: float | None = asked(PLANNED)


@frozen
class FermentLogTaken:
    """A logger's file, which began at the entry's moment. times_s: seconds from then; between them straight lines.

    file: SHA-256 of its bytes in hexadecimal. highest_c, lasts_s: of the file's own readings. thermometer: what it was
    logged with, by its id; all temperatures are as logged.
    """

    KIND = "ferment-log-taken"

    file: str = field(validator=matches_re("[0-9a-f]{64}"))
    place: Place = field(validator=in_(("core", "chamber")))
    times_s: tuple[float, ...] = field(validator=and_(_column, deep_iterable(lasting)))
    temperatures_c: tuple[float, ...] = field(validator=and_(_column, deep_iterable(celsius)))
    highest_c: float = field(validator=celsius)
    lasts_s: float = field(validator=lasting)
    readings: int = field(validator=ge(2))
    probe: str = ""
    thermometer: str | None = None

    def __attrs_post_init__(self) -> None:
        if len(self.times_s) != len(self.temperatures_c):
            raise ValueError("there is not one temperature for each time")

    @property
    def points(self) -> tuple[tuple[float, float], ...]:
        return tuple(zip(self.times_s, self.temperatures_c, strict=True))


@frozen
class DeviationDecided:
    """A batch missed its limit, and somebody answers for what becomes of it."""

    KIND = "deviation-decided"

    decision: Literal["keep", "discard"] = field(validator=in_(("keep", "discard")))
    decided_by: str = field(validator=name)
    result: Result = field(validator=in_(("clean", "found", "not-tested")))
    test: str = ""
    note: str = ""


Fact = FermentationBegun | FermentLogTaken | DeviationDecided
