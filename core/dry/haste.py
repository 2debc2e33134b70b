"""Does a piece dry too fast or too slowly for where it stands, and what is to be changed?

No published cap on a day's loss was found. The bounds are common practice, for the maker to change. Too fast, and the
rim dries before the water within can follow: it hardens and shuts the rest in. Too slow, and it spoils before it dries.
"""

from __future__ import annotations

from typing import Literal

from attrs import field, frozen

from core.dry.activity import Mix
from core.dry.pace import MIDDLING, Air, surface_activity
from core.dry.rate import Rate
from core.quantities import LOSS_RATE, RELATIVE_HUMIDITY, Amount
from core.sentence import Message, Rounded, Sentence
from core.units import DAY_S

Stage = Literal["early", "middle", "late"]
Word = Literal["too fast", "usual", "slow", "not known"]
Risk = Literal["low", "some", "high"]
Span = tuple[float, float]
STAGES: tuple[Stage, ...] = ("early", "middle", "late")

PER_DAY = 0.01 / DAY_S
NO_SOURCE: Message = "Common practice; no published source. Set bounds of your own beside the set-points."
YOURS: Message = "The bound is your own; no published one exists."
DRY_GAP = 0.12
"""So far the air lies below the piece's water activity, evenly dried, where a rim may go dry."""
RESTS_AT = 0.04
"""Below the piece's water activity: air in which it evens out. A copy of a handbook has 2 to 5 %."""
LEAST_HUMIDITY, MOST_HUMIDITY = 0.65, 0.95


@frozen
class Bounds:
    """Loss a second, of the start weight, slowest and fastest, in each third of the way to the target."""

    early: Span = (0.5 * PER_DAY, 2.0 * PER_DAY)
    middle: Span = (0.3 * PER_DAY, 1.5 * PER_DAY)
    late: Span = (0.1 * PER_DAY, 0.8 * PER_DAY)

    def of(self, stage: Stage) -> Span:
        return {"early": self.early, "middle": self.middle, "late": self.late}[stage]


USUAL_BOUNDS = Bounds()


@frozen
class Judged:
    """rim: how likely its rim is dry. says: what it is, then what to change, then where the bounds come from."""

    word: Word
    stage: Stage
    rim: Risk
    says: tuple[Sentence, ...] = field(factory=tuple)


def stage_of(lost: float, target: float) -> Stage:
    if lost < target / 3:
        return "early"
    return "middle" if lost < 2 * target / 3 else "late"


def judge(
    rate: Rate | None,
    lost: float,
    target: float,
    air: Air,
    has_slowed: bool = False,
    bounds: Bounds = USUAL_BOUNDS,
    mix: Mix = MIDDLING,
) -> Judged:
    """rate: as last weighed. has_slowed: it lost less than its own forecast. A rate within the scale's error of a bound
    keeps it: it is never called too fast or slow on a reading that may be either."""
    stage = stage_of(lost, target)
    slowest, fastest = bounds.of(stage)
    word = _word(rate, slowest, fastest)
    rim = _rim(word, surface_activity(lost, mix) - air.humidity, has_slowed)
    says = (*_what(word, rate, slowest, fastest), *_change(word, rim, rate, lost, air, (slowest, fastest), mix))
    return Judged(word, stage, rim, (*says, _whose(word, bounds.of(stage), stage)) if says else ())


def _whose(word: Word, bounds: Span, stage: Stage) -> Sentence:
    """Where the bound comes from that the piece passed."""
    side = 1 if word == "too fast" else 0
    is_own = word in ("too fast", "slow") and bounds[side] != USUAL_BOUNDS.of(stage)[side]
    return Sentence(YOURS if is_own else NO_SOURCE)


def _word(rate: Rate | None, slowest: float, fastest: float) -> Word:
    if rate is None:
        return "not known"
    if rate.per_s - rate.error_per_s > fastest:
        return "too fast"
    return "slow" if rate.per_s + rate.error_per_s < slowest else "usual"


def _rim(word: Word, gap: float, has_slowed: bool) -> Risk:
    if gap > DRY_GAP and (has_slowed or word == "slow"):  # slow although the air is dry
        return "high"
    return "some" if has_slowed or (word == "too fast" and gap > DRY_GAP) else "low"


def _what(word: Word, rate: Rate | None, slowest: float, fastest: float) -> tuple[Sentence, ...]:
    if rate is None or word not in ("too fast", "slow"):
        return ()
    told = {"rate": _a_day(rate.per_s), "most": _a_day(fastest), "least": _a_day(slowest)}
    if word == "too fast":
        return (Sentence("It loses {rate}; at this stage more than {most} is too fast.", told),)
    return (Sentence("It loses {rate}; at this stage less than {least} is slow.", told),)


def _change(
    word: Word, rim: Risk, rate: Rate | None, lost: float, air: Air, bounds: Span, mix: Mix
) -> tuple[Sentence, ...]:
    surface = surface_activity(lost, mix)
    if rim == "high":
        rest = {"humidity": _humidity(surface - RESTS_AT)}
        return (
            Sentence(
                "Its rim may be dry and shut the rest in. Feel it. Wrap it or rest it at about {humidity} until its "
                "rim is soft, then weigh it again.",
                rest,
            ),
        )
    if rim == "some" and word != "too fast":
        return (Sentence("It lost less than was forecast: weigh it again, and feel its rim."),)
    if rate is None or word not in ("too fast", "slow"):
        return ()
    wanted = sum(bounds) / 2
    humidity = surface - (surface - air.humidity) * wanted / max(rate.per_s, wanted / 3)
    told = {"humidity": _humidity(humidity)}
    if word == "too fast":
        return (Sentence("Raise the humidity toward {humidity}, or slow the air.", told),)
    if humidity < air.humidity:
        return (Sentence("Lower the humidity toward {humidity}, a few per cent at a time, or move more air.", told),)
    return (Sentence("This air dries no faster: move more air, or hang the pieces further apart."),)


def _a_day(per_s: float) -> Rounded:
    return Rounded(Amount(per_s, LOSS_RATE))


def _humidity(humidity: float) -> Rounded:
    return Rounded(Amount(round(min(max(humidity, LEAST_HUMIDITY), MOST_HUMIDITY), 2), RELATIVE_HUMIDITY))
