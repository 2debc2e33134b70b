"""What is decided about the rules of the cure: the house's own limits, and a licensed exception for one batch."""

from __future__ import annotations

from attrs import field, frozen
from attrs.validators import in_, min_len

from core.daybook.facts.fields import asked
from core.mix.cure import PPM
from core.mix.rules import RULE_SETS
from core.quantities import PARTS_PER_MILLION
from core.worksheet import Number

RULES = "rules"
"""The `about` of everything that belongs to the rules themselves."""
MOST_NITRITE = Number(
    "nitrite",
    "Most nitrite",
    PARTS_PER_MILLION,
    PPM,
    0.002,
    optional=True,
    help="Counted as that set counts; in Canada nitrite and nitrate together.",
    or_zero=True,
)
MOST_NITRATE = Number("nitrate", "Most nitrate", PARTS_PER_MILLION, PPM, 0.003, optional=True, or_zero=True)
MOST_BY_LICENCE = Number(
    "most",
    "The most it allows",
    PARTS_PER_MILLION,
    PPM,
    0.01,
    help="Its own figure, counted as the limit it lifts counts.",
)


@frozen
class HouseRule:
    """The house's own limit under a rule set, a share as that set counts; it may only be stricter.

    nitrite: of both together where the set counts both together. The latest for a set holds.
    """

    KIND = "house-rule"

    rules: str = field(validator=in_(RULE_SETS))
    nitrite: float | None = asked(MOST_NITRITE)
    nitrate: float | None = asked(MOST_NITRATE)
    why: str = ""


@frozen
class LicensedException:
    """About a batch: why more than the limit may go into it. authority: who allows it.

    rule: the text it stands on, title and section. substance: "nitrite", "nitrate" or "both". most: its own figure, a
    share, counted as the row it lifts counts. An entry without them (they came later) lifts nothing.
    """

    KIND = "licensed-exception"

    why: str = field(validator=min_len(1))
    authority: str = field(validator=min_len(1))
    decided_by: str = field(validator=min_len(1))
    rule: str = ""
    substance: str = ""
    most: float | None = asked(MOST_BY_LICENCE, default=None)


Fact = HouseRule | LicensedException
