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
from core.meat import ACID_PH
from core.quantities import COUNT, DEGREE_HOURS, HOURS, PH, TEMPERATURE, Amount
from core.sentence import Rounded, Sentence, Value, each_said, said
from core.verdict import Reason
from core.working import Figure
from web import charts
from web.charts import Chart
from web.drawing import clock

ACID: dict[str, Value] = {"acid": Amount(ACID_PH, PH)}


@frozen
class Panel:
    """gone: the sum, None where it is not known; used: how it stands to its limit. hold: whether the batch is held.

    tells: whether its reason is said, though time is left perhaps. reached: how long it took to pH 5.3, where that was
    in time. done: the same in words, or what its warm days made, where it has passed. left,
    warm, last_safe: how long still, at which temperature, until when, while it runs; still: that its clock is still.
    over: whether its sum is over the limit. decide: whether a decision is wanted or was made. figures: with their
    working, folded.
    """

    gone: Rounded | None
    used: Sentence | None
    reason: Reason
    hold: bool
    decide: bool
    reached: Rounded | None
    done: Sentence | None
    left: Rounded | None
    warm: Rounded | None
    last_safe: datetime | None
    still: Sentence | None
    tells: bool
    over: bool
    times: tuple[Sentence, ...]
    figures: tuple[Figure, ...]
    assumed: tuple[Sentence, ...]
    cautions: tuple[Sentence, ...]
    chart: Chart | None
    is_slow: bool
    begun: bool


def panel(batch: Batch, moment: datetime) -> Panel | None:
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
        gone=_gone(clocked),
        used=_used(clocked, over, is_slow),
        reason=why,
        hold=hold,
        decide=over or gaps_stay or batch.ferment.decided is not None,
        reached=_reached(clocked),
        done=_done(clocked),
        left=hours_and_minutes(left.value) if ticks and left else None,
        warm=_warm(clocked) if runs else None,
        last_safe=clocked.last_safe if ticks else None,
        still=Sentence("{still} ({warm})", {"still": said(STANDS_STILL), "warm": _warm(clocked)}) if still else None,
        tells=hold or known.outcome.contradiction is not None or not (ticks or still) or (is_slow and still),
        over=over,
        times=tuple(each for each in (_crossed(clocked), _projected(clocked)) if each),
        figures=tuple(each for each in (known.sum, known.limit, left if ticks else None, *known.places) if each),
        assumed=known.assumed,
        cautions=each_said(((OWN_USE,) if is_slow else ()) + (NO_PROOF, LOCAL_RULES)),
        chart=None if is_slow else charts.acidity(batch, clocked),
        is_slow=is_slow,
        begun=batch.ferment.begun is not None,
    )


def _gone(clocked: FermentationClock) -> Rounded | None:
    """Until now, or until the reading that shows the acid: the verdict goes by it, not by the line between two."""
    sum_ks = clocked.judged.outcome.sum_ks
    return None if sum_ks is None else Rounded(Amount(sum_ks, DEGREE_HOURS))


def _used(clocked: FermentationClock, over: bool, is_slow: bool) -> Sentence | None:
    limit, since = clocked.judged.limit, clocked.last_safe
    if limit is None:
        return None
    most: dict[str, Value] = {"limit": Rounded(limit.amount)}
    if over and since is not None:
        return Sentence("over the limit of {limit} since {moment}", {**most, "moment": clock(since)})
    if over:
        return Sentence("over the limit of {limit}", most)
    return Sentence("of at most {limit} used in its warm days" if is_slow else "of at most {limit} used", most)


def _reached(clocked: FermentationClock) -> Rounded | None:
    """Until the reading that shows it: when it was so between two readings nobody saw."""
    found = clocked.judged.crossing
    if clocked.judged.word != "passed" or found is None:
        return None
    return Rounded(Amount(max(0.0, found.by_s), HOURS))


def _done(clocked: FermentationClock) -> Sentence | None:
    known, gone, reached = clocked.judged, _gone(clocked), _reached(clocked)
    if known.word != "passed":
        return None
    if reached is not None:
        return Sentence("pH {acid} within {time}, in time", {**ACID, "time": reached})
    if known.limit is None or gone is None:
        return None
    return Sentence("{sum} of {limit}", {"sum": gone, "limit": Rounded(known.limit.amount)})


def _warm(clocked: FermentationClock) -> Rounded:
    return Rounded(Amount(clocked.judged.course.last_c, TEMPERATURE))


def _crossed(clocked: FermentationClock) -> Sentence | None:
    found = clocked.judged.crossing
    if found is None:
        return None
    by, at, after = (clocked.at(each) for each in (found.by_s, found.at_s, found.after_s))
    assert by is not None
    assert at is not None
    if after is None:
        return Sentence("pH {acid} or lower from the first reading on, {by}.", {**ACID, "by": clock(by)})
    return Sentence(
        "pH {acid} was crossed about {at}, by a straight line between the readings of {after} and {by}.",
        {**ACID, "at": clock(at), "after": clock(after), "by": clock(by)},
    )


def _projected(clocked: FermentationClock) -> Sentence | None:
    ahead = clocked.judged.projection
    if ahead is None:
        return None
    at, earliest, latest = (clocked.at(each) for each in (ahead.at_s, ahead.earliest_s, ahead.latest_s))
    assert at is not None
    assert earliest is not None
    known: dict[str, Value] = {"readings": Amount(ahead.readings, COUNT), "at": clock(at), "earliest": clock(earliest)}
    if latest is None:
        return Sentence(
            "A straight line through the last {readings} readings comes down to {acid} about {at}, between {earliest} "
            "and a time not known yet. The fall slows towards its end.",
            {**ACID, **known},
        )
    return Sentence(
        "A straight line through the last {readings} readings comes down to {acid} about {at}, between {earliest} and "
        "{latest}. The fall slows towards its end.",
        {**ACID, **known, "latest": clock(latest)},
    )


def summary(batch: Batch, moment: datetime) -> Sentence | None:
    """The one figure for the list of batches."""
    clocked = judged(batch, moment)
    if clocked is None:
        return None
    known, deviation = clocked.judged, clocked.judged.outcome.deviation
    if known.word in ("over", "not shown") and (deviation is None or not deviation.clears):
        return Sentence("hold: degree-hours used up")
    if known.measure_again:
        return Sentence("hold: measure the pH again")
    if known.word == "running" and known.course.legs and known.deadline.left is not None:
        gone = _gone(clocked) or Rounded(Amount(0.0, DEGREE_HOURS))
        return Sentence("{time} left, {sum} used", {"time": hours_and_minutes(known.deadline.left.value), "sum": gone})
    return None
