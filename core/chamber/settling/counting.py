"""Whether the runs are all counted: what else the same trace may mean must come to the same number."""

from __future__ import annotations

from collections.abc import Sequence

from core.chamber.settling.broken_runs import PROBE_IS_LATE_S, doubtful_doors
from core.chamber.settling.events import Event, other_ways
from core.chamber.settling.holes import IN_PAUSES, looked_at
from core.chamber.settling.rhythm import Rhythm
from core.chamber.settling.runs import find_runs, may_be_over
from core.chamber.settling.swing import Swing, Trace
from core.sentence import Sentence

FEWEST_TO_COUNT, PARTS = 10, (0.7, 1.0, 1.15)
"""Readings to a cycle: with fewer, a short one slips through now and then. Then those parts of the band that a run must
pass must all count the same."""
MAY_BE_MORE = Sentence("There may be more runs than are counted: they are short for so few readings. Log more often.")
MAY_BE_ONE_OFF = Sentence("There may be one run more or less than is counted: a door was opened just as one ended.")
MAY_BE_EITHER = Sentence(
    "There may be one run more or less than is counted: by so few readings a door cannot be told from a defrost. Log "
    "every 2 min or oftener."
)
MAY_BE_OVER = Sentence("There may be one run more than is counted: the log ends just as one does.")


def why_not_counted(trace: Trace, swing: Swing, events: Sequence[Event], rhythm: Rhythm | None) -> Sentence | None:
    """None where they are."""
    if not looked_at(trace, swing).is_whole:
        return IN_PAUSES
    period_s, late_s, cools_s = swing.period_s, PROBE_IS_LATE_S, None
    if rhythm is not None:
        period_s, late_s, cools_s = rhythm.period_s, rhythm.late_s, rhythm.cools_s
    is_short = period_s < FEWEST_TO_COUNT * trace.interval_s
    if is_short and _differ([len(find_runs(trace, swing, events, late_s, part=part)) for part in PARTS]):
        return MAY_BE_MORE
    doors = doubtful_doors(trace, swing, events, late_s, cools_s)
    ran_or_not = [dict.fromkeys(doors, ran) for ran in (True, False)] if doors else []
    if _differ([len(find_runs(trace, swing, events, late_s, ran)) for ran in ran_or_not]):
        return MAY_BE_ONE_OFF
    if _differ([len(find_runs(trace, swing, way, late_s)) for way in other_ways(events)]):
        return MAY_BE_EITHER
    return MAY_BE_OVER if may_be_over(trace, swing, late_s) else None


def _differ(counts: Sequence[int]) -> bool:
    return len(set(counts)) > 1
