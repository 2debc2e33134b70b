"""What a batch's page says of its fermentation: the sum against the limit, what is left, when it crossed or will."""

from __future__ import annotations

from datetime import datetime

from attrs import frozen

from core.daybook.batch import Batch
from core.daybook.fermenting import FermentationClock, judged
from core.ferment.deadline import STANDS_STILL
from core.ferment.outcome import reason, slow_reason
from core.ferment.rules import LOCAL_RULES, NO_PROOF
from core.ferment.saying import hours_and_minutes
from core.ferment.slow import OWN_USE
from core.quantities import DEGREE_HOURS, PH, TEMPERATURE, Amount, Reader
from core.verdict import Reason
from core.working import Figure
from web import charts
from web.charts import Chart
from web.drawing import clock


@frozen
class Panel:
    """gone, of: the sum and its limit, as shown; "" where they are not known. hold: whether the batch is held for it.

    tells: whether its reason is said, though time is left perhaps. done: what became of it, where it has passed. left,
    warm, last_safe: how long still, at which temperature, until when, while it runs; still: that its clock is still.
    over, over_since: whether its sum is over the limit, and since when, where that is known.
    decide: whether a decision is wanted or was made. figures: with their working, folded.
    """

    gone: str
    of: str
    reason: Reason
    hold: bool
    decide: bool
    done: str
    left: str
    warm: str
    last_safe: str
    still: str
    tells: bool
    over: bool
    over_since: str
    times: tuple[str, ...]
    figures: tuple[Figure, ...]
    assumed: tuple[object, ...]
    cautions: tuple[str, ...]
    chart: Chart | None
    is_slow: bool
    begun: bool


def panel(batch: Batch, moment: datetime, how: Reader) -> Panel | None:
    """None for a whole muscle, and before the cure is weighed or anything read."""
    clocked = judged(batch, moment)
    if clocked is None or (batch.cure is None and not batch.readings):
        return None
    known, is_slow = clocked.judged, batch.start.style == "slow"
    why = (slow_reason if is_slow else reason)(known.outcome)
    left = known.deadline.left
    runs = (known.word == "running" or known.measure_again) and bool(known.course.legs)
    ticks = runs and left is not None and left.value > 0 and clocked.last_safe is not None
    still = runs and left is None and not known.course.unknown  # what nobody saw may have been warm
    hold = why.met is not True and known.word != "running"
    gaps_stay = known.word == "unknown" and (known.crossing is not None or (is_slow and bool(batch.pieces)))
    over = known.word in ("over", "not shown")
    return Panel(
        gone=_gone(clocked, how),
        of="" if known.limit is None else known.limit.show(how),
        reason=why,
        hold=hold,
        decide=over or gaps_stay or batch.ferment.decided is not None,
        done=_done(batch, clocked, how),
        left=hours_and_minutes(left.value) if ticks and left else "",
        warm=_warm(clocked, how) if runs else "",
        last_safe=clock(clocked.last_safe) if ticks and clocked.last_safe else "",
        still=f"{STANDS_STILL} ({_warm(clocked, how)})" if still else "",
        tells=hold or known.outcome.contradiction is not None or not (ticks or still) or (is_slow and still),
        over=over,
        over_since=clock(clocked.last_safe) if over and clocked.last_safe is not None else "",
        times=tuple(each for each in (_crossed(clocked), _projected(clocked)) if each),
        figures=tuple(each for each in (known.sum, known.limit, left if ticks else None, *known.places) if each),
        assumed=known.assumed,
        cautions=((OWN_USE,) if is_slow else ()) + (NO_PROOF, LOCAL_RULES),
        chart=None if is_slow else charts.acidity(batch, clocked),
        is_slow=is_slow,
        begun=batch.ferment.begun is not None,
    )


def _gone(clocked: FermentationClock, how: Reader) -> str:
    """Until now, or until the reading that shows the acid: the verdict goes by it, not by the line between two."""
    sum_ks = clocked.judged.outcome.sum_ks
    return "" if sum_ks is None else Amount(sum_ks, DEGREE_HOURS).show(how)


def _done(batch: Batch, clocked: FermentationClock, how: Reader) -> str:
    known = clocked.judged
    if known.word != "passed":
        return ""
    acid = (
        "" if batch.start.style == "slow" or batch.lowest_ph is None else f"pH {Amount(batch.lowest_ph, PH).show(how)}"
    )
    spent = "" if known.limit is None else f"{_gone(clocked, how)} of {known.limit.show(how)}"
    return ", ".join(each for each in (acid, spent) if each)


def _warm(clocked: FermentationClock, how: Reader) -> str:
    return Amount(clocked.judged.course.last_c, TEMPERATURE).show(how)


def _crossed(clocked: FermentationClock) -> str:
    found = clocked.judged.crossing
    if found is None:
        return ""
    by, at, after = (clocked.at(each) for each in (found.by_s, found.at_s, found.after_s))
    assert by is not None
    assert at is not None
    if after is None:
        return f"pH 5.3 or lower from the first reading on, {clock(by)}."
    return (
        f"pH 5.3 was crossed about {clock(at)}, by a straight line between the readings of {clock(after)} and "
        f"{clock(by)}."
    )


def _projected(clocked: FermentationClock) -> str:
    ahead = clocked.judged.projection
    if ahead is None:
        return ""
    at, earliest, latest = (clocked.at(each) for each in (ahead.at_s, ahead.earliest_s, ahead.latest_s))
    assert at is not None
    assert earliest is not None
    until = f"and {clock(latest)}" if latest is not None else "and a time not known yet"
    return (
        f"A straight line through the last {ahead.readings} readings comes down to 5.3 about {clock(at)}, between "
        f"{clock(earliest)} {until}. The fall slows towards its end."
    )


def summary(batch: Batch, moment: datetime, how: Reader) -> str:
    """The one figure for the list of batches."""
    clocked = judged(batch, moment)
    if clocked is None:
        return ""
    known, deviation = clocked.judged, clocked.judged.outcome.deviation
    if known.word in ("over", "not shown") and (deviation is None or not deviation.clears):
        return "hold: degree-hours used up"
    if known.measure_again:
        return "hold: measure the pH again"
    if known.word == "running" and known.course.legs and known.deadline.left is not None:
        gone = Amount(known.outcome.sum_ks or 0.0, DEGREE_HOURS).show(how)
        return f"{hours_and_minutes(known.deadline.left.value)} left, {gone} used"
    return ""
