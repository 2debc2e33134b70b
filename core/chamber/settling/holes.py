"""What a log's pauses hide: a count of what happened covers only the time that was looked at."""

from __future__ import annotations

from attrs import frozen

from core.chamber.settling.swing import Swing, Trace
from core.sentence import Sentence

SHORT_HOLE = 0.5
"""Of the shorter of run and hold. So short a pause hides no run and no hold whole, and a turn in it shows by what the
trace does before and after."""
IN_PAUSES = Sentence(
    "The log pauses, and runs that began or ended in its pauses are not counted: the count is of the time that was "
    "logged. Let the logger run on without a pause."
)
Part = tuple[int, int]


@frozen
class Looked:
    """covered_s: of the time from the usual level's first reading to the last one, what its readings show."""

    covered_s: float
    of_s: float

    @property
    def is_whole(self) -> bool:
        return self.covered_s >= self.of_s


NOWHERE = Looked(0.0, 0.0)


def parts_seen(trace: Trace, swing: Swing) -> list[Part]:
    """The trace between pauses that may hide a turn: first index and one past the last."""
    longest_s = SHORT_HOLE * min(swing.rising_s, swing.falling_s)
    parts: list[Part] = []
    for first, end in trace.parts:
        if parts and trace.times_s[first] - trace.times_s[parts[-1][1] - 1] <= longest_s:
            first = parts.pop()[0]
        parts.append((first, end))
    return [(first, end) for first, end in parts if end - first > 2]


def looked_at(trace: Trace, swing: Swing) -> Looked:
    times_s = trace.times_s
    covered_s = sum(times_s[end - 1] - times_s[first] for first, end in parts_seen(trace, swing))
    return Looked(covered_s, times_s[-1] - times_s[0])
