"""Two rules for the race between acid and staphylococci: from which warmth it counts, and how much is allowed.

Both count the warmth above a base until the pH is 5.3, and draw the limit by the highest temperature before that. They
agree within 0.3 %.
"""

from __future__ import annotations

from typing import Literal

from attrs import frozen

from core.quantities import DEGREE_HOURS, TEMPERATURE, Amount
from core.sentence import Message, Sentence
from core.sources import DEGREE_HOURS_CANADA, DEGREE_HOURS_US, Source
from core.units import CELSIUS_HOUR, FAHRENHEIT, FAHRENHEIT_HOUR

RuleKey = Literal["us", "canada"]
Edge = Literal["below", "up to"]

NO_END = float("inf")
SAME_TEMPERATURE_C = 1e-6
"""A temperature typed in °F is the band's edge itself, whatever the last digit of its °C."""
HALF_A_DIGIT_C = 0.05
"""A thermometer shows tenths: 32.2 °C may be 32.25 °C, and that is more than 90 °F. So near an edge that is itself
already too warm the lower limit holds. An edge that still belongs to its band is printed as such: 37.0 °C shown is
taken as the 37 °C of the rule. Our own choice; no published source. One that shows whole degrees is typed half a degree
up."""


@frozen
class Band:
    """A limit and the highest temperature it holds for; edge: whether that temperature itself still belongs to it."""

    limit_ks: float
    edge: Edge
    most_c: float
    printed: str

    def holds(self, highest_c: float) -> bool:
        if self.edge == "below":
            return highest_c < self.most_c - HALF_A_DIGIT_C - SAME_TEMPERATURE_C
        return highest_c <= self.most_c + SAME_TEMPERATURE_C


BELOW: Message = "{rule}, printed as {printed}: fewer than {limit}, for the highest, {highest}, is below {edge}"
UP_TO: Message = "{rule}, printed as {printed}: fewer than {limit}, for the highest, {highest}, is up to {edge}"
ABOVE: Message = "{rule}, printed as {printed}: fewer than {limit}, for the highest, {highest}, is above {edge}"
NEARLY: Message = (
    "{rule}, printed as {printed}: fewer than {limit}, for the highest, {highest}, is within half a last digit of "
    "{edge}"
)


@frozen
class Rule:
    """limit_ks: kelvin-seconds above base_c; the sum must stay below it ("fewer than")."""

    key: RuleKey
    name: Message
    base_c: float
    bands: tuple[Band, ...]
    source: Source

    def band(self, highest_c: float) -> Band:
        """The band that the highest temperature before pH 5.3 falls in. The last one has no end."""
        return next(band for band in self.bands if band.holds(highest_c))

    def limit_ks(self, highest_c: float) -> float:
        return self.band(highest_c).limit_ks

    def words(self, highest_c: float) -> Sentence:
        """Which limit holds, and why."""
        band = self.band(highest_c)
        amounts = {
            "highest": Amount(highest_c, TEMPERATURE),
            "limit": Amount(band.limit_ks, DEGREE_HOURS),
            "edge": Amount(band.most_c, TEMPERATURE),
        }
        words = BELOW if band.edge == "below" else UP_TO
        before = self.bands[: self.bands.index(band)]
        lower_c = before[-1].most_c if before else -NO_END
        if highest_c < lower_c - SAME_TEMPERATURE_C:
            words, amounts["edge"] = NEARLY, Amount(lower_c, TEMPERATURE)
        elif band is self.strictest:
            words, amounts["edge"] = ABOVE, Amount(lower_c, TEMPERATURE)
        return Sentence(words, {"rule": Sentence(self.name), "printed": band.printed, **amounts})

    @property
    def strictest(self) -> Band:
        return self.bands[-1]

    def strictest_words(self) -> Sentence:
        """The limit that holds where the highest temperature is not known."""
        limit = Amount(self.strictest.limit_ks, DEGREE_HOURS)
        told = {"rule": Sentence(self.name), "printed": self.strictest.printed, "limit": limit}
        return Sentence(
            "{rule}, printed as {printed}: fewer than {limit}, the lowest limit, for the highest temperature so far "
            "was not said",
            told,
        )


def _us(limit: int, edge: Edge, most_f: float) -> Band:
    return Band(FAHRENHEIT_HOUR.to_si(limit), edge, FAHRENHEIT.to_si(most_f), f"{limit} °F·h")


def _canada(limit: int, edge: Edge, most_c: float) -> Band:
    return Band(CELSIUS_HOUR.to_si(limit), edge, most_c, f"{limit} °C·h")


RULES: dict[RuleKey, Rule] = {
    "us": Rule(
        key="us",
        name="US rule",
        base_c=FAHRENHEIT.to_si(60),
        bands=(_us(1200, "below", 90), _us(1000, "up to", 100), _us(900, "up to", NO_END)),
        source=DEGREE_HOURS_US,
    ),
    "canada": Rule(
        key="canada",
        name="Canadian rule",
        base_c=15.6,
        bands=(_canada(665, "below", 33), _canada(555, "up to", 37), _canada(500, "up to", NO_END)),
        source=DEGREE_HOURS_CANADA,
    ),
}
RULE_WORDS: dict[str, Message] = {
    "us": "US: above 60 °F; 1200, 1000 or 900 °F·h",
    "canada": "Canada: above 15.6 °C; 665, 555 or 500 °C·h",
}

NO_PROOF: Message = (
    "Passing means that staphylococci grew little, taken as a hundredfold at most (FSIS-GD-2023-0002, p. 37). It is no "
    "evidence against Salmonella, E. coli or Listeria (p. 54)."
)
LOCAL_RULES: Message = "The rules where you are, and a food-safety authority, come before this figure."
