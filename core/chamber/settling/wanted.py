"""What is asked of a chamber."""

from __future__ import annotations

from attrs import frozen

from core.chamber.settling.statistics import Band

USUAL_TEMPERATURE, USUAL_HUMIDITY = Band(12.8, 1.5), Band(0.80, 0.05)


@frozen
class Wanted:
    """Target and tolerance. The widths and times are common practice, without a source.

    temperature: °C, ± K. humidity: 0 to 1, None where it is not asked for. apart_k: greatest difference of two probes'
    means. held_s: how long it must have stayed settled. lasts_s: how long the run must be.
    """

    temperature: Band = USUAL_TEMPERATURE
    humidity: Band | None = USUAL_HUMIDITY
    apart_k: float = 1.5
    held_s: float = 24 * 3600.0
    lasts_s: float = 48 * 3600.0
