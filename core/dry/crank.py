"""Water that diffuses out of a piece: how much is still to go after a time? Crank's solutions, mean over the piece."""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import cache
from typing import Literal

from core.quantities import RATIO
from core.refusals import require_between
from core.roots import begins

Form = Literal["slab", "cylinder", "sphere"]
_BESSEL_ZEROS = (2.404825557695773, 5.520078110286311, 8.653727912911013, 11.791534439014281, 14.930917708487785)
_TERMS = 40


def left_in(form: Form, fourier: float) -> float:
    """The share still to go, the surface held at the air's own humidity: 1 at the start, 0 at the end.

    fourier: D t ÷ L², L the half thickness or the radius, 0 or more. Raises OutOfRange. Within 6e-5.
    Source: Crank, The Mathematics of Diffusion; at short times by the error function's first terms.
    """
    _require_fourier(fourier)
    root = math.sqrt(fourier / math.pi)
    match form:
        case "slab":
            if fourier < 0.1:
                return 1 - 2 * root
            return _series(fourier, (((place - 0.5) * math.pi, 2.0) for place in range(1, 8)))
        case "cylinder":
            if fourier < 0.02:
                return 1 - 4 * root + fourier + fourier * root / 3
            return _series(fourier, ((zero, 4.0) for zero in _BESSEL_ZEROS))
        case "sphere":
            if fourier < 0.1:
                return 1 - 6 * root + 3 * fourier
            return _series(fourier, ((place * math.pi, 6.0) for place in range(1, 8)))


def left_behind_film(biot: float, fourier: float) -> float:
    """As `left_in` for a slab that gives off its water through a film or a casing.

    biot: h L ÷ D, 0.001 to 1000, the resistance within over the one without. fourier: 0 or more. Raises OutOfRange.
    Within 1e-6 to a Biot number of 10. Source: Crank, plane sheet with surface evaporation.
    """
    require_between("biot", "The Biot number", biot, 1e-3, 1e3, RATIO)
    _require_fourier(fourier)
    return _series(fourier, ((root, 2 * biot**2 / (root**2 + biot**2 + biot)) for root in biot_roots(biot)))


@cache
def biot_roots(biot: float) -> tuple[float, ...]:
    """Of b tan b = Bi, in their order: one in the rising half of each turn."""

    def is_past(root: float) -> bool:
        return math.tan(root) * root >= biot

    return tuple(begins(is_past, place * math.pi, (place + 0.5) * math.pi) for place in range(_TERMS))


def _series(fourier: float, terms: Iterable[tuple[float, float]]) -> float:
    return sum(weight / root**2 * math.exp(-(root**2) * fourier) for root, weight in terms)


def _require_fourier(fourier: float) -> None:
    require_between("fourier", "The Fourier number", fourier, 0.0, math.inf, RATIO)
