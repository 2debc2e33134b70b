"""Loss a day: the share of the start weight that a piece loses, between two weighings; said here and nowhere else."""

from __future__ import annotations

from core.units import HOUR_S

LEAST_APART_S = HOUR_S
"""Over less the scale's own error is larger than the loss."""


def loss_rate(start_kg: float, earlier_kg: float, later_kg: float, between_s: float) -> float:
    """Share of the start weight lost in a second. Weights and time above 0; a gain is negative."""
    return (earlier_kg - later_kg) / start_kg / between_s
