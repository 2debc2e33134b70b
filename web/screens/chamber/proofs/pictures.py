"""A temperature in little: its outline as a line of ink within the band it was held to."""

from __future__ import annotations

from collections.abc import Sequence

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
    band = (run.temperature_c - run.temperature_half_k, run.temperature_c + run.temperature_half_k)
    return outline(points, band, _words(points[-1][0] - points[0][0] or 1.0, settled=run.result.settled))


def outline(points: Sequence[tuple[float, ...]], band: tuple[float, float], words: Sentence) -> Picture:
    """points: two or more, each a moment in any unit and its temperature."""
    low, high = band
    values = [point[1] for point in points]
    usual = sorted(values)[len(values) // 20 : len(values) - len(values) // 20 or None]
    edge = AROUND * (high - low)  # the pull-down may run out of the picture: the band is what matters
    bottom, top = min(low - edge, usual[0]), max(high + edge, usual[-1])
    lasts = points[-1][0] - points[0][0] or 1.0

    def up(value: float) -> float:
        share = (min(max(value, bottom), top) - bottom) / (top - bottom)
        return round(HEIGHT - EDGE - share * (HEIGHT - 2 * EDGE), 1)

    placed = (f"{(at - points[0][0]) / lasts * WIDTH:.1f},{up(value)}" for at, value, *_ in points)
    return Picture(" ".join(placed), up(high), round(up(low) - up(high), 1), words)


def _words(lasts_h: float, *, settled: bool) -> Sentence:
    hours = {"hours": Amount(round(lasts_h) * HOUR_S, HOURS)}
    return Sentence("Temperature over {hours}, settled" if settled else "Temperature over {hours}, not settled", hours)
