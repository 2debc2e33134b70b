"""Simulated batches, and how far the forecast of each piece's day is from the truth: for the tests and the bench rows.

The forecaster is told what a maker knows: the weights, the moments, and the chamber's programme as its instruments tell
it. It never sees what the piece is made of; once more it is told the formula's water and salt, as a table of meats has
them. Beside it stand a straight line and a single exponential, each fitted by least squares to the piece's own
weighings, with the range that their residuals give.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from random import Random
from statistics import median
from typing import Protocol

from attrs import frozen

from core.dry.activity import Mix
from core.dry.curve import Hung, fit
from core.dry.doubt import Expected, expected, question
from core.dry.forecast import forecast
from core.dry.pace import MIDDLING, Air
from tests.core import drying_model
from tests.core.drying_model import Batch, Step, Weighing


class _Whole(Protocol):
    @property
    def mass_kg(self) -> float: ...


class _Dried(Protocol):
    def day_of(self, loss: float) -> float | None: ...


class Simulated(Protocol):
    """What the study wants of a batch, whichever model dried it."""

    @property
    def target(self) -> float: ...
    @property
    def told(self) -> Sequence[Step]: ...
    @property
    def pieces(self) -> Sequence[_Whole]: ...
    @property
    def courses(self) -> Sequence[_Dried]: ...
    @property
    def weighings(self) -> Sequence[Sequence[Weighing]]: ...
    @property
    def step_kg(self) -> float: ...
    @property
    def formula(self) -> Mix: ...


Range = tuple[float | None, float | None, float | None]
"""Earliest, most likely, latest, in seconds; None: not at all."""
NEVER: Range = (None, None, None)
AT = {"third": 1 / 3, "half": 1 / 2}
NORMAL_80 = 1.2816


@frozen
class Outcome:
    """One piece when it had lost a share of its target. true_s: None where it never lost it all."""

    seed: int
    piece: int
    at: str
    true_s: float | None
    said: dict[str, Range]


def study(
    seeds: Iterable[int], pieces: int = 6, draw: Callable[[int, int], Simulated] = drying_model.draw
) -> Iterator[Outcome]:
    for seed in seeds:
        batch = draw(seed, pieces)
        yield from _outcomes(seed, batch)


def _outcomes(seed: int, batch: Simulated) -> Iterator[Outcome]:
    for piece, course in enumerate(batch.courses):
        for at, share in AT.items():
            now_s = course.day_of(batch.target * share)
            if now_s is not None and hung_until(batch, now_s)[piece].weighings:
                yield Outcome(seed, piece, at, course.day_of(batch.target), _said(batch, piece, now_s))


def hung_until(batch: Simulated, now_s: float) -> list[Hung]:
    """What is known of the pieces by then. The scale's error is as its maker prints it: its step."""
    return [
        Hung(piece.mass_kg, tuple((w.at_s, w.mass_kg) for w in weighings if w.at_s <= now_s), 0.7 * batch.step_kg)
        for piece, weighings in zip(batch.pieces, batch.weighings, strict=True)
    ]


def told(batch: Simulated) -> list[Air]:
    return [Air(step.from_s, step.temperature_c, step.humidity) for step in batch.told]


def _said(batch: Simulated, piece: int, now_s: float) -> dict[str, Range]:
    hung = hung_until(batch, now_s)
    found, knowing = (
        forecast(fit(hung, told(batch), mix=mix), piece, batch.target) for mix in (MIDDLING, batch.formula)
    )
    points = [(0.0, 0.0), *((known.at_s, known.loss) for known in hung[piece].known)]
    return {
        "ours": (found.earliest_s, found.likely_s, found.latest_s),
        "ours by formula": (knowing.earliest_s, knowing.likely_s, knowing.latest_s),
        "line": straight_line(points, batch.target),
        "exponential": exponential(points, batch.target),
    }


def straight_line(points: Sequence[tuple[float, float]], target: float) -> Range:
    count = len(points)
    mean_s, mean_loss = (sum(each[place] for each in points) / count for place in (0, 1))
    squares = sum((at_s - mean_s) ** 2 for at_s, _ in points)
    slope = sum((at_s - mean_s) * (loss - mean_loss) for at_s, loss in points) / squares
    if slope <= 0:
        return NEVER
    at = mean_s + (target - mean_loss) / slope
    off = sum((loss - mean_loss - slope * (at_s - mean_s)) ** 2 for at_s, loss in points)
    spread = math.sqrt(off / max(count - 2, 1) * (1 + 1 / count + (at - mean_s) ** 2 / squares)) / slope
    return at - NORMAL_80 * spread, at, at + NORMAL_80 * spread


def exponential(points: Sequence[tuple[float, float]], target: float) -> Range:
    """Its end free. The range: every pace whose squares are no worse than one more point off would make them."""
    paces = [math.exp(-18 + 0.02 * step) for step in range(400)]
    tried: list[tuple[float, float]] = []
    for pace in paces:
        gone = [1 - math.exp(-pace * at_s) for at_s, _ in points]
        end = sum(g * loss for g, (_, loss) in zip(gone, points, strict=True)) / sum(g * g for g in gone)
        off = sum((loss - end * g) ** 2 for g, (_, loss) in zip(gone, points, strict=True))
        tried.append((off, -math.log(1 - target / end) / pace if end > target else math.inf))
    least = min(tried)[0]
    scatter = max(least / max(len(points) - 3, 1), 1e-6)
    within = [at_s for off, at_s in tried if off <= least + NORMAL_80**2 * scatter]
    day = min(tried)[1]
    return min(within), None if math.isinf(day) else day, max(within)


def error(outcome: Outcome, who: str) -> float:
    """Of the most likely day, relative to the true one; 1 where it says never."""
    likely = outcome.said[who][1]
    assert outcome.true_s is not None
    return 1.0 if likely is None else abs(likely / outcome.true_s - 1)


def holds(outcome: Outcome, who: str) -> bool:
    earliest, _, latest = outcome.said[who]
    assert outcome.true_s is not None
    return (earliest or 0.0) <= outcome.true_s <= (latest or math.inf)


def median_error(outcomes: Iterable[Outcome], who: str, at: str) -> float:
    return median(error(each, who) for each in outcomes if each.at == at and each.true_s is not None)


def covered(outcomes: Iterable[Outcome], who: str) -> float:
    known = [holds(each, who) for each in outcomes if each.true_s is not None]
    return sum(known) / len(known)


def weighed_together(batch: Batch, seed: int) -> tuple[dict[str, Expected], dict[str, float]]:
    """A round of weighings at some moment, at least a day after the last: what each piece should weigh by the
    forecast, and what the scale shows, by tag."""
    chance = Random(f"round {seed}")
    latest_s = min(len(course.losses) - 2 for course in batch.courses) * drying_model.STEP_S
    at_s = chance.uniform(2.0 * drying_model.DAY_S, latest_s)
    hung = hung_until(batch, at_s - drying_model.DAY_S)
    known = fit(hung, told(batch))
    should, shown = {}, {}
    for place, (piece, course) in enumerate(zip(batch.pieces, batch.courses, strict=True)):
        mass_kg = piece.mass_kg * (1 - course.at(at_s)) + chance.gauss(0, 0.6 * batch.step_kg)
        should[f"F-{place + 1}"] = expected(known, place, at_s)
        shown[f"F-{place + 1}"] = round(mass_kg / batch.step_kg) * batch.step_kg
    return should, shown


def asked_in_order(should: Mapping[str, Expected], typed: Mapping[str, float]) -> list[str]:
    """The tags that are asked about while a round is typed, one after the other."""
    return [
        tag
        for place, tag in enumerate(typed)
        if question(tag, typed[tag], should, {each: typed[each] for each in list(typed)[:place]}) is not None
    ]
