"""Moments that are one number, and spans since a start: what a number may count, by the years it would mean."""

from __future__ import annotations

import re
from collections.abc import Sequence

from attrs import frozen

from core.chamber.logs.scales import NOTHING
from core.language import Message
from core.units import DAY_S

YEAR_2000_S, YEAR_2008_S, YEAR_2060_S = 946_684_800.0, 1_199_145_600.0, 2_840_140_800.0
"""A log made outside these years is not believed; nor, of rarer counts, one before 2008: small numbers are a span."""


@frozen
class Count:
    """A number that counts ticks since an origin, both in seconds; the origin since 1970-01-01."""

    words: Message
    tick_s: float
    origin_s: float
    from_s: float = YEAR_2000_S

    def moment_s(self, value: float) -> float:
        at_s = value * self.tick_s + self.origin_s
        at_s = float(round(at_s)) if self.tick_s == DAY_S else at_s  # a day's six decimals are a tenth of a second
        return at_s if self.from_s <= at_s < YEAR_2060_S else NOTHING


COUNTS: dict[str, Count] = {
    "us1970": Count("microseconds since 1970", 1e-6, 0.0),
    "ns1970": Count("nanoseconds since 1970", 1e-9, 0.0),
    "s1904": Count("seconds since 1904", 1.0, -2_082_844_800.0, YEAR_2008_S),
    "s2000": Count("seconds since 2000", 1.0, YEAR_2000_S, YEAR_2008_S),
    "s1980": Count("seconds since 6 January 1980", 1.0, 315_964_800.0, YEAR_2008_S),
    "tick1601": Count("tenths of a microsecond since 1601", 1e-7, -11_644_473_600.0),
    "d-4712": Count("days of the Julian count", DAY_S, -2_440_587.5 * DAY_S),
}
CERTAIN = ("us1970", "ns1970")
"""Those that nothing else is as large as."""

_PARTS = re.compile(
    r"(?:(?P<d>\d+)\s?(?:d|days?|j|t|tage?)[ ,]+)?(?P<h>\d{1,4}):(?P<m>[0-5]\d)(?::(?P<s>[0-5]\d(?:[.,]\d{1,6})?))?"
)
_ISO = re.compile(r"P(?:(?P<d>\d+)D)?T?(?:(?P<h>\d+)H)?(?:(?P<m>\d+)M)?(?:(?P<s>\d+(?:[.,]\d+)?)S)?", re.IGNORECASE)


def counts_that_fit(values: Sequence[float]) -> tuple[str, ...]:
    """What numbers may count so that each is a moment of a log's years."""
    return tuple(
        key
        for key, count in COUNTS.items()
        if values and all(count.moment_s(each) == count.moment_s(each) for each in values)
    )


def span_of(text: str, first: str = "h") -> float:
    """Seconds of a span as "36:10:00", "1d 12:10" or "PT36H10M", NaN for another text. first: "h" or "min" of 36:10."""
    text = text.strip()
    found = _PARTS.fullmatch(text) or (_ISO.fullmatch(text) if len(text) > 2 else None)
    if found is None:
        return NOTHING
    days, hours, minutes, seconds = (float((found[key] or "0").replace(",", ".")) for key in "dhms")
    if first == "min" and ":" in text and not found["s"] and not found["d"]:
        return hours * 60 + minutes
    return days * DAY_S + hours * 3600 + minutes * 60 + seconds


def has_two_parts(text: str) -> bool:
    """Whether a span may be hours and minutes or minutes and seconds."""
    found = _PARTS.fullmatch(text.strip())
    return found is not None and not found["s"] and not found["d"]
