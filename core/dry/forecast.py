"""On which day will a piece have lost what it is to lose, and how sure is that?

From a batch's curves (`core.dry.curve`): the most likely day, and the days between which it lies in eight of ten such
cases. Where the air takes no more than it has, there is no day. It is a forecast of weight, never a word on whether a
piece is ready.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from attrs import frozen

from core.dry.curve import END_STEP, Case, Fit
from core.dry.pace import by_the_clock, end_in, longer
from core.dry.shapes import LEAST, MOST
from core.roots import begins
from core.units import DAY_S

EARLY, LIKELY, LATE = 0.1, 0.5, 0.9
LONGEST_S = 1000 * DAY_S
"""A day beyond is not told: by then the air, not the piece, has had its say."""


@frozen
class Mark:
    """A case that comes to a loss: its weight, and the logarithm of the time in the last air that it takes for it."""

    weight: float
    log_time: float
    spread: float


@frozen
class Forecast:
    """Of one piece. Seconds since the batch was hung; None where it comes to the target with less than that chance.

    lost: by its last weighing, None before the first. weighings: how many it rests on. comes: the chance that it comes
    so far at all. air_takes: the loss in balance with the air, whatever the piece does.
    """

    target: float
    lost: float | None
    weighings: int
    weighed_s: float
    comes: float
    air_takes: float
    earliest_s: float | None
    likely_s: float | None
    latest_s: float | None

    @property
    def is_there(self) -> bool:
        """By weight alone."""
        return self.lost is not None and self.lost >= self.target


def forecast(fit: Fit, piece: int, target: float) -> Forecast:
    """piece: its place in the fit. target: loss of the start weight, above 0 and below 0.75."""
    now, known = fit.last_known(piece), fit.pieces[piece].known
    found = marks(fit, piece, target)
    days = [_day(fit, piece, target, _time_by(found, share)) for share in (EARLY, LIKELY, LATE)]
    return Forecast(
        target=target,
        lost=now.loss if known else None,
        weighings=len(known),
        weighed_s=now.at_s,
        comes=sum(mark.weight for mark in found),
        air_takes=end_in(fit.air[-1], fit.mix),
        earliest_s=days[0],
        likely_s=days[1],
        latest_s=days[2],
    )


def loss_by(fit: Fit, piece: int, at_s: float, share: float) -> float:
    """The loss that the piece does not exceed by then, with this chance. at_s: since hanging, not before its last
    weighing."""
    log_time = math.log(fit.passed[piece] + longer(fit.air, fit.last_known(piece), at_s, fit.mix))
    return begins(lambda loss: chance_by(marks(fit, piece, loss), log_time) <= 1 - share, 0.0, 0.75)


def expected_loss(fit: Fit, piece: int, at_s: float) -> tuple[float, float]:
    """The mean of what the piece will have lost by then, and its spread, the scale left out."""
    now = fit.last_known(piece)
    log_time = math.log(fit.passed[piece] + max(longer(fit.air, now, at_s, fit.mix), 1.0))
    leap = max(log_time - math.log(fit.passed[piece]), 0.0) if fit.passed[piece] else 0.0
    mean = square = 0.0
    for case in fit.cases:
        half, spread = case.halves[piece]
        ahead = log_time - half
        loss = case.end * case.shape.gone(ahead)
        off = math.hypot(spread, fit.wanders * leap)
        steep = case.end * (case.shape.gone(ahead + off) - case.shape.gone(ahead - off)) / 2
        mean += case.weight * loss
        square += case.weight * (loss * loss + steep * steep)
    return mean, math.sqrt(max(square - mean * mean, 0.0))


def marks(fit: Fit, piece: int, loss: float) -> list[Mark]:
    """One for each case that comes to the loss. A case covers the ends about its own: only those that come to it
    count."""
    found: list[Mark] = []
    for case in fit.cases:
        low, high = max(case.end - END_STEP / 2, loss / MOST), case.end + END_STEP / 2
        if low < high:
            found.append(_mark(fit, piece, case, loss, (low + high) / 2, case.weight * (high - low) / END_STEP))
    return found


def _mark(fit: Fit, piece: int, case: Case, loss: float, end: float, weight: float) -> Mark:
    half, spread = case.halves[piece]
    at = case.shape.log_time(loss / end) + half
    if not fit.passed[piece]:
        return Mark(weight, at, spread)
    if end != case.end:  # the curve still goes through the last weighing
        lost = max(fit.last_known(piece).loss, LEAST)
        at += case.shape.log_time(lost / case.end) - case.shape.log_time(lost / end)
    leap = max(at - math.log(fit.passed[piece]), 0.0)
    return Mark(weight, at, math.hypot(spread, fit.wanders * leap))


def chance_by(found: Sequence[Mark], log_time: float) -> float:
    return sum(mark.weight * _normal((log_time - mark.log_time) / mark.spread) for mark in found)


def _normal(deviations: float) -> float:
    return math.erfc(-deviations / math.sqrt(2)) / 2


def _time_by(found: Sequence[Mark], share: float) -> float | None:
    """To a five-hundredth of itself."""
    if sum(mark.weight for mark in found) <= share:
        return None
    low = min(mark.log_time - 4 * mark.spread for mark in found)
    high = max(mark.log_time + 4 * mark.spread for mark in found)
    while high - low > 0.002:
        middle = (low + high) / 2
        low, high = (low, middle) if chance_by(found, middle) >= share else (middle, high)
    return math.exp(high)


def _day(fit: Fit, piece: int, target: float, time_s: float | None) -> float | None:
    if time_s is None:
        return None
    at_s = by_the_clock(fit.air, fit.last_known(piece), time_s - fit.passed[piece], target, fit.mix)
    return at_s if at_s <= LONGEST_S else None
