"""How the trace usually rises in a hold: fast at first, where air and wall are apart, and then slowly; or straight.

Each hold is laid from its foot, and the usual rise is the median of them all; so it needs no model of the chamber, and
what few doors and defrosts do to some holds does not show in it.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from functools import cached_property
from itertools import accumulate, count, pairwise

from attrs import define

from core.chamber.settling.swing import Swing, Trace
from core.chamber.settling.trace import percentile

NEIGHBOURS = 5
"""On either side: what is usual may change slowly, as walls cool and thermostats drift."""
FEWEST_HOLDS = 3
TURNS_WITHIN_S = 600.0
"""A hold is steepest so soon after its foot: later than that only coil, probe and smoothing delay it."""
LEAST_K = 0.35
LEAST_PART = 0.15
"""Of the swing."""


def least_k(trace: Trace) -> float:
    """A rise by less may be noise, or the logger's step."""
    return max(LEAST_K, 7 * trace.sigma, 1.5 * trace.step)


@define(slots=False)
class Holds:
    """Feet and peaks in turn, as indices; and what is usual of them."""

    trace: Trace
    swing: Swing

    @cached_property
    def feet(self) -> list[int]:
        return [index for index, is_peak in self.swing.turns if not is_peak]

    @cached_property
    def peaks(self) -> list[int]:
        return [index for index, is_peak in self.swing.turns if is_peak]

    @cached_property
    def legs(self) -> list[tuple[int, int]]:
        """Foot and peak of each hold."""
        both = pairwise(self.swing.turns)
        return [(foot, peak) for (foot, at_top), (peak, is_peak) in both if is_peak and not at_top]

    @cached_property
    def plain_legs(self) -> list[tuple[int, int]]:
        """Those that end at a usual peak, or below."""
        values = self.trace.smoothed
        least_k = self.margin_k
        return [(foot, peak) for foot, peak in self.legs if values[peak] <= self.usual_peak(peak) + least_k]

    @cached_property
    def margin_k(self) -> float:
        """A peak that is higher than usual by less is a hold's."""
        return max(least_k(self.trace), LEAST_PART * self.swing.size)

    def usual_rise(self, width: int) -> list[float]:
        """By how much a hold rises within `width` readings, that many times half a width after its foot; while at least
        half of all holds last. It rises ever more slowly, once it has turned: what is steeper later on is no hold's."""
        values = self.trace.smoothed
        half = max(1, width // 2)
        fewest = max(FEWEST_HOLDS, len(self.plain_legs) / 2)
        found: list[float] = []
        for since in count(0, half):
            rises = sorted(
                values[foot + since + width] - values[foot + since]
                for foot, peak in self.plain_legs
                if foot + since + width <= peak
            )
            if len(rises) < fewest:
                break
            found.append(percentile(rises, 0.5))
        early = found[: 1 + self.trace.samples(TURNS_WITHIN_S) // half]
        steepest = early.index(max(early)) if early else 0
        return found[:steepest] + list(accumulate(found[steepest:], min))

    def foot_before(self, index: int) -> int | None:
        """The last foot up to there, where no peak came between."""
        at = bisect_right(self.swing.turns, (index, True))
        if at == 0 or self.swing.turns[at - 1][1]:
            return None
        return self.swing.turns[at - 1][0]

    def usual_peak(self, index: int) -> float:
        """Defrosts and doors only ever lift a peak, so the lower ones of the neighbours are the usual."""
        return self._usual(self.peaks, index, 0.35)

    def usual_foot(self, index: int) -> float:
        return self._usual(self.feet, index, 0.5)

    def _usual(self, turns: Sequence[int], index: int, share: float) -> float:
        at = bisect_right(turns, index)
        near = turns[max(0, at - NEIGHBOURS) : at + NEIGHBOURS]
        return percentile(sorted(self.trace.smoothed[each] for each in near), share)
