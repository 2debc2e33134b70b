"""The shapes a drying curve can take: after how many half-times is so much of what can be lost gone?

Published thin-layer models (Lewis, Page, two terms, of which Henderson and Pabis's is the late part), Crank's diffusion
out of a slab, a long round piece and a ball, a slab behind a film, a rate that falls with the square of what is left to
lose; and our own: the drying force of the piece on the air, through a casing and a rind that grows thicker. One
half-time after hanging, half of what can be lost is gone.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Sequence
from functools import cache, partial

from attrs import frozen

from core.dry.activity import Mix, activity_at, loss_for
from core.dry.crank import left_behind_film, left_in
from core.roots import begins

LEAST, MOST = 0.003, 0.985
"""Of what can be lost: with less gone no scale tells the shape, with more no time."""
STEP = 0.02
"""Between two entries of a table, in the logarithm of what is gone."""
LOG_LEAST = math.log(LEAST)
_LOG_HALF = math.log(0.5)
PLACES = round((math.log(MOST) - LOG_LEAST) / STEP) + 1
RINDS = (0.4, 0.8, 1.5, 3.0, 6.0, 12.0)
"""How much the rind resists, e-fold thick, in parts of what casing and air resist."""


@frozen(eq=False)
class Shape:
    """times: the logarithm of the time, in half-times, at which a share of what can be lost is gone; the shares lie
    evenly in their logarithm, from LEAST to MOST. fitted: how many numbers its family is fitted by, its end and its
    pace among them. odds: of the family, before any weighing, among the families."""

    key: str
    family: str
    fitted: int
    times: tuple[float, ...]
    odds: float = 1.0

    def log_time(self, gone: float) -> float:
        """gone: share of what can be lost; held within LEAST and MOST."""
        place = min(place_of(math.log(max(gone, LEAST))), PLACES - 1.001)
        low = int(place)
        return self.times[low] + (place - low) * (self.times[low + 1] - self.times[low])

    def gone(self, log_time: float) -> float:
        """The share gone after a time, by its logarithm in half-times; held within LEAST and MOST."""
        low = min(max(bisect_left(self.times, log_time) - 1, 0), PLACES - 2)
        part = (log_time - self.times[low]) / (self.times[low + 1] - self.times[low])
        return math.exp(LOG_LEAST + STEP * (low + min(max(part, 0.0), 1.0)))


def place_of(log_gone: float) -> float:
    """Where in a table so much is gone: 0 is LEAST."""
    return (log_gone - LOG_LEAST) / STEP


@cache
def shapes(humidity: float, mix: Mix) -> tuple[Shape, ...]:
    """All of them, for a mix that dries in air of this humidity, 0.70 to 0.99."""
    return (*_rinds(humidity, mix), *_printed())


@cache
def _printed() -> tuple[Shape, ...]:
    return (
        _by_left("lewis", "lewis", 2, lambda time: math.exp(-time)),
        *(_by_left(f"page-{power:g}", "page", 3, partial(_page, power)) for power in (0.45, 0.6, 0.75, 0.9)),
        *(_by_left(f"two-terms-{slow:g}", "two terms", 4, partial(_two_terms, slow)) for slow in (0.6, 0.8)),
        _by_left("slab", "slab", 2, partial(left_in, "slab")),
        _by_left("cylinder", "cylinder", 2, partial(left_in, "cylinder")),
        _by_left("sphere", "sphere", 2, partial(left_in, "sphere")),
        _by_left("film", "film", 3, partial(left_behind_film, 2.0)),
        _by_left("square", "square", 2, partial(_square, 0.55)),
    )


def _page(power: float, time: float) -> float:
    return math.exp(-(time**power))


def _two_terms(slow: float, time: float) -> float:
    return slow * math.exp(-time) + (1 - slow) * math.exp(-8 * time)


def _square(end: float, time: float) -> float:
    def is_past(gone: float) -> bool:
        return square_time(end, 1 - (1 - end) * gone) >= time

    return 1 - begins(is_past, 0.0, 1 - 1e-9)


def square_time(end: float, left: float) -> float:
    """How long dx/dt = −k ((x − c) ÷ x)² takes, with k 1, from the whole down to a share left of the weight.

    end: c, the share at which it ends, 0 to 1. left: above the end, up to 1. Source: Palumbo et al. 1977.
    """

    def whole(x: float) -> float:
        return (x - end) + 2 * end * math.log(x - end) - end**2 / (x - end)

    return whole(1.0) - whole(left)


def _rinds(humidity: float, mix: Mix) -> tuple[Shape, ...]:
    """The rind's resistance grows as a ring does around a core that shrinks evenly: by −ln(share still to lose)."""
    ends = loss_for(mix, humidity)
    gone = [place / 200 for place in range(200)]
    forces = [max(activity_at(mix, each * ends) - humidity, 1e-5) for each in gone]
    return tuple(
        Shape(
            f"rind-{rind:g}",
            "rind",
            2,
            _table(_integrated(gone, [(1 - rind * math.log(1 - u)) / f for u, f in zip(gone, forces, strict=True)])),
            odds=ODDS_OF_RINDS,
        )
        for rind in RINDS
    )


ODDS_OF_RINDS = 10.0


def _integrated(gone: Sequence[float], slowness: Sequence[float]) -> list[tuple[float, float]]:
    known: list[tuple[float, float]] = []
    time = 0.0
    for at in range(1, len(gone)):
        time += (gone[at] - gone[at - 1]) * (slowness[at] + slowness[at - 1]) / 2
        known.append((math.log(gone[at]), math.log(time)))
    return known


def _by_left(key: str, family: str, fitted: int, left: Callable[[float], float]) -> Shape:
    """left: the share still to lose after a time in any unit, 1 at 0 and falling to 0."""
    logs = [-14 + 0.08 * step for step in range(300)]
    gone = [1 - left(math.exp(each)) for each in logs]
    return Shape(
        key, family, fitted, _table([(math.log(u), at) for u, at in zip(gone, logs, strict=True) if 1e-6 < u < 1])
    )


def _table(known: Sequence[tuple[float, float]]) -> tuple[float, ...]:
    """known: logarithms of what is gone and of the time. Between two of them a straight line."""
    half = _between(known, _LOG_HALF)
    return tuple(_between(known, LOG_LEAST + place * STEP) - half for place in range(PLACES))


def _between(known: Sequence[tuple[float, float]], at: float) -> float:
    later = min(max(bisect_left(known, (at, -math.inf)), 1), len(known) - 1)
    (x_0, y_0), (x_1, y_1) = known[later - 1], known[later]
    return y_0 + (at - x_0) * (y_1 - y_0) / (x_1 - x_0)
