"""For how long a quantity has stayed within its band at the end of a log, as far as readings show it.

Only the time between two neighbouring readings that are both within the band is shown within it. So a reading outside
and a reading that is missing cost the same, and no reading taken out of a log can make it prove more.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice, pairwise
from operator import sub
from typing import Literal

from attrs import frozen

from core.chamber.settling.statistics import Band

LONGEST_OUT_S = 900.0
"""Out of the band, or without a reading, at a time. WHO TRS 961, Annex 9, supplement 8: an interval of 1 to 15 min."""
LEAST_INSIDE = 0.95
"""Of the time since it settled (common practice)."""
MOST_EXCUSED = 0.25
"""More of the time in doors and defrosts than this, and too little is left to prove a state (common practice)."""
SLACK = 1e-9

Kind = Literal["in", "edge", "out", "excused", "hole"]


@frozen
class Span:
    """Between two readings or more. "edge": one is in, the next out; "excused": a door's or a defrost's; "hole": none
    was read."""

    kind: Kind
    first_s: float
    last_s: float


@frozen
class Lately:
    """The end of a log, doors and defrosts left out: share shown inside; share of it that was surely outside; longest
    time surely outside at once, and when that ended; longest time without a reading."""

    from_s: float
    inside: float
    outside: float
    longest_out_s: float
    out_until_s: float
    longest_hole_s: float


@frozen
class Stay:
    """since_s: from when on it stays to the log's end, None where it does not. inside: share of the undisturbed time
    since then that is shown within the band."""

    since_s: float | None
    inside: float
    lately: Lately


def stay(
    times_s: Sequence[float],
    values: Sequence[float],
    band: Band,
    shown_s: float,
    calm: Sequence[bool] | None = None,
    window_s: float = 86_400.0,
) -> Stay:
    """shown_s: readings further apart do not show what is between. calm: those without a door's or a defrost's air.

    window_s: how much of the log's end is `lately`; it begins no earlier than the first reading within the band.
    """
    spans = list(_spans(times_s, values, band, shown_s, calm))
    since_s, inside = _since(spans, times_s[-1])
    arrived_s = next((each.first_s for each in spans if each.kind == "in"), times_s[0])
    return Stay(since_s, inside, _lately(spans, max(arrived_s, times_s[-1] - window_s)))


def _spans(
    times_s: Sequence[float], values: Sequence[float], band: Band, shown_s: float, calm: Sequence[bool] | None
) -> Iterator[Span]:
    """In order, without a seam."""
    low, high = band.low, band.high
    kinds: list[Kind] = ["in" if low <= value <= high else "out" for value in values]
    if calm is not None and not all(calm):
        kinds = [kind if is_calm else "excused" for kind, is_calm in zip(kinds, calm, strict=True)]
    steps = map(sub, islice(times_s, 1, None), times_s)
    changes = enumerate(zip(kinds, islice(kinds, 1, None), steps, strict=False), 1)
    edges = [at for at, (one, other, step_s) in changes if one != other or step_s > shown_s]
    for first, end in pairwise([0, *edges, len(kinds)]):
        if first:
            yield _between(kinds[first - 1], kinds[first], times_s[first - 1], times_s[first], shown_s)
        if end - first > 1:
            yield Span(kinds[first], times_s[first], times_s[end - 1])


def _between(one: Kind, other: Kind, first_s: float, last_s: float, shown_s: float) -> Span:
    if last_s - first_s > shown_s:
        return Span("hole", first_s, last_s)
    return Span("excused" if "excused" in (one, other) else "edge", first_s, last_s)


def _since(spans: Sequence[Span], end_s: float) -> tuple[float | None, float]:
    """The earliest reading from which on it stays, and the share shown inside since then."""
    back_s, excused_s, missing_s = end_s, 0.0, 0.0
    found: tuple[float | None, float] = None, 0.0
    for span in reversed(spans):
        lasts_s = span.last_s - span.first_s
        if span.kind in ("edge", "out", "hole"):
            missing_s += lasts_s
            if back_s - span.first_s > LONGEST_OUT_S:
                break
            continue
        back_s = span.first_s
        all_s = end_s - span.first_s
        excused_s += lasts_s if span.kind == "excused" else 0.0
        calm_s = all_s - excused_s
        is_shown = missing_s <= (1 - LEAST_INSIDE) * calm_s + SLACK and excused_s <= MOST_EXCUSED * all_s
        if span.kind == "in" and is_shown:
            found = span.first_s, 1 - missing_s / calm_s
    return found


def _lately(spans: Sequence[Span], from_s: float) -> Lately:
    spent_s = dict.fromkeys(("in", "edge", "out", "excused", "hole"), 0.0)
    longest_out_s = longest_hole_s = 0.0
    out_until_s = from_s
    for span in spans:
        if span.last_s <= from_s:
            continue
        lasts_s = span.last_s - max(span.first_s, from_s)
        spent_s[span.kind] += lasts_s
        if span.kind == "hole":
            longest_hole_s = max(longest_hole_s, span.last_s - span.first_s)
        elif span.kind == "out" and lasts_s > longest_out_s:
            longest_out_s, out_until_s = lasts_s, span.last_s
    calm_s = sum(spent_s.values()) - spent_s["excused"] or 1.0
    outside = (spent_s["out"] + spent_s["edge"] / 2) / calm_s
    return Lately(from_s, spent_s["in"] / calm_s, outside, longest_out_s, out_until_s, longest_hole_s)
