"""A saved run in little: its outline as a line of ink within the band it was held to."""

from __future__ import annotations

from attrs import frozen

from core.daybook.facts.proofs import ProofRun
from core.quantities import HOURS, Amount
from core.sentence import Sentence
from core.units import HOUR_S

WIDTH, HEIGHT, EDGE = 160, 48, 3
AROUND = 0.2
"""Of the band's width, above and below it: so that its edges are seen."""


@frozen
class Picture:
    """points: of a polyline. band_top, band_height: of the band, on the same drawing. words: for who cannot see it."""

    points: str
    band_top: float
    band_height: float
    words: Sentence


def picture(run: ProofRun) -> Picture | None:
    """None for a run whose outline was not kept."""
    points = run.result.outline
    if len(points) < 2:
        return None
    low, high = run.temperature_c - run.temperature_half_k, run.temperature_c + run.temperature_half_k
    values = [value for _, value in points]
    usual = sorted(values)[len(values) // 20 : len(values) - len(values) // 20 or None]
    edge = AROUND * (high - low)  # the pull-down may run out of the picture: the band is what matters
    bottom, top = min(low - edge, usual[0]), max(high + edge, usual[-1])
    lasts = points[-1][0] - points[0][0] or 1.0

    def up(value: float) -> float:
        share = (min(max(value, bottom), top) - bottom) / (top - bottom)
        return round(HEIGHT - EDGE - share * (HEIGHT - 2 * EDGE), 1)

    placed = (f"{(at - points[0][0]) / lasts * WIDTH:.1f},{up(value)}" for at, value in points)
    return Picture(" ".join(placed), up(high), round(up(low) - up(high), 1), _words(lasts, settled=run.result.settled))


def _words(lasts_h: float, *, settled: bool) -> Sentence:
    hours = {"hours": Amount(round(lasts_h) * HOUR_S, HOURS)}
    return Sentence("Temperature over {hours}, settled" if settled else "Temperature over {hours}, not settled", hours)
