"""Pieces that dry by the forecaster's own model, for the tests."""

from __future__ import annotations

import math

from core.dry.curve import Hung, fit
from core.dry.forecast import Forecast, forecast
from core.dry.pace import MIDDLING, Air
from core.dry.shapes import Shape, shapes
from core.units import DAY_S

CELLAR = (Air(0, 12, 0.78),)
RIND = shapes(0.78, MIDDLING)[2]
TWELVE = (2, 4, 7, 11, 14, 18)


def losing(days, half_d=14.0, end=0.44, start_kg=0.8, shape: Shape = RIND) -> Hung:
    masses = [(d * DAY_S, start_kg * (1 - end * shape.gone(math.log(d / half_d)))) for d in days]
    return Hung(start_kg, tuple(masses))


def of(*pieces: Hung, air=CELLAR, target=0.35, **more) -> Forecast:
    """Of the first of them."""
    return forecast(fit(pieces, air, **more), 0, target)
