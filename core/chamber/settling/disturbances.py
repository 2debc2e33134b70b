"""When something else than the compressor moved the trace, or nobody looked: defrosts, doors, gaps."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from itertools import accumulate, pairwise

from attrs import frozen

from core.chamber.settling.events import Event
from core.chamber.settling.swing import Trace

AFTER_EVENT_S = 900.0
"""A door or defrost that is over still shows for so long."""


@frozen
class Disturbances:
    """starts_s: rising. over_s: when all that began until then is over."""

    starts_s: tuple[float, ...]
    over_s: tuple[float, ...]

    def spare(self, first_s: float, last_s: float) -> bool:
        """Whether nothing disturbs the time between."""
        begun = bisect_left(self.starts_s, last_s)
        return begun == 0 or self.over_s[begun - 1] <= first_s


def disturbances(trace: Trace, events: Sequence[Event]) -> Disturbances:
    times_s = trace.times_s
    gaps = [(times_s[end - 1], times_s[first]) for (_, end), (first, _) in pairwise(trace.parts)]
    spans = sorted(gaps + [(event.starts_s, event.ends_s + AFTER_EVENT_S) for event in events])
    return Disturbances(tuple(start_s for start_s, _ in spans), tuple(accumulate((end_s for _, end_s in spans), max)))
