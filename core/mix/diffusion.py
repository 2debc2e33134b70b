"""How far has what was put on the outside come to the centre? Series solutions of diffusion in a slab and a cylinder.

Everything is in the dimensionless time Fo = D t ÷ L², L being the half-thickness or the radius. Source: Crank, The
Mathematics of Diffusion; values agree with the tables in tests/published within 1e-7.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from functools import cache

from core.refusals import OutOfRange

SHORT = 0.001
"""Below it the series want too many terms; the short-time forms are then good to 5e-6."""
MOST_TERMS = 60
NO_MORE = 1e-16


def slab_centre(fo: float) -> float:
    """Unaccomplished share at the middle of a slab whose faces are held constant: 1 at Fo 0, to 0. Fo: 0 or more."""
    _require(fo)
    if fo < SHORT:
        return 1.0
    return _sum((4 / math.pi * (-1) ** n / (2 * n + 1), ((2 * n + 1) * math.pi / 2) ** 2) for n in range(MOST_TERMS))(
        fo
    )


def slab_mean(fo: float) -> float:
    """The same, averaged over the slab."""
    _require(fo)
    if fo < SHORT:
        return 1 - 2 * math.sqrt(fo / math.pi)
    squares = (((2 * n + 1) * math.pi / 2) ** 2 for n in range(MOST_TERMS))
    return _sum((2 / square, square) for square in squares)(fo)


def cylinder_centre(fo: float) -> float:
    """Unaccomplished share on the axis of a long cylinder whose surface is held constant. Fo: 0 or more."""
    _require(fo)
    if fo < SHORT:
        return 1.0
    roots = (root_of_j0(n) for n in range(1, MOST_TERMS + 1))
    return _sum((2 / (root * bessel(1, root)), root**2) for root in roots)(fo)


def cylinder_mean(fo: float) -> float:
    """The same, averaged over the cylinder."""
    _require(fo)
    if fo < SHORT:
        return 1 - 4 * math.sqrt(fo / math.pi) + fo
    squares = (root_of_j0(n) ** 2 for n in range(1, MOST_TERMS + 1))
    return _sum((4 / square, square) for square in squares)(fo)


def sealed_slab_centre(fo: float) -> float:
    """Centre over mean where a weighed amount was put on both faces and nothing leaves: 0 at Fo 0, to 1."""
    _require(fo)
    if fo < SHORT * 10:
        return 0.0
    return 1 + _sum((2 * (-1) ** n, (n * math.pi) ** 2) for n in range(1, MOST_TERMS))(fo)


def sealed_cylinder_centre(fo: float) -> float:
    """The same on the axis of a long cylinder: 1 + Σ e^(−α² Fo) ÷ J0(α), α the roots of J1."""
    _require(fo)
    if fo < SHORT * 10:
        return 0.0
    roots = (root_of_j1(n) for n in range(1, MOST_TERMS + 1))
    return 1 + _sum((1 / bessel(0, root), root**2) for root in roots)(fo)


def _require(fo: float) -> None:
    if not 0 <= fo < math.inf:
        raise OutOfRange("fo", "The time cannot be less than nothing.")


def _sum(terms: Iterable[tuple[float, float]]) -> Callable[[float], float]:
    """Σ coefficient × e^(−square × Fo), as far as a term differs from nothing."""

    def summed(fo: float) -> float:
        total = 0.0
        for coefficient, square in terms:
            term = coefficient * math.exp(-square * fo)
            total += term
            if abs(term) < NO_MORE:
                break
        return total

    return summed


def bessel(order: int, x: float) -> float:
    """J of a whole order by the trapezoid rule on Bessel's integral: of a periodic function as good as exact."""
    count = 48 + 2 * int(x)
    step = 2 * math.pi / count
    return math.fsum(math.cos(order * each * step - x * math.sin(each * step)) for each in range(count)) / count


@cache
def root_of_j0(number: int) -> float:
    """The number-th positive zero of J0, from 1, by Newton from McMahon's first guess."""
    root = (number - 0.25) * math.pi
    for _ in range(5):
        root += bessel(0, root) / bessel(1, root)
    return root


@cache
def root_of_j1(number: int) -> float:
    """The number-th positive zero of J1, from 1."""
    root = (number + 0.25) * math.pi
    for _ in range(5):
        root -= bessel(1, root) / (bessel(0, root) - bessel(1, root) / root)
    return root
