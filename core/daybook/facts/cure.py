"""What is decided about the rules of the cure: the house's own limits, and a licensed exception for one batch."""

from __future__ import annotations

from attrs import field, frozen
from attrs.validators import min_len, optional

from core.daybook.facts.fields import share

RULES = "rules"
"""The `about` of everything that belongs to the rules themselves."""


@frozen
class HouseRule:
    """The house's own limit under a rule set, a share as that set counts; it may only be stricter.

    nitrite: of both together where the set counts both together. The latest for a set holds.
    """

    KIND = "house-rule"

    rules: str = field(validator=min_len(1))
    nitrite: float | None = field(default=None, validator=optional(share))
    nitrate: float | None = field(default=None, validator=optional(share))
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
    most: float | None = field(default=None, validator=optional(share))


Fact = HouseRule | LicensedException
