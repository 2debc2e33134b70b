"""What a fermenting batch waits for: its next reading before the last safe moment, or a decision after it."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from core.daybook.batch import Batch
from core.daybook.due.line import Due
from core.daybook.fermenting import FermentationClock, judged
from core.ferment.judging import Judged
from core.meat import ACID_PH
from core.quantities import PH, TEMPERATURE, Amount
from core.sentence import Message, Rounded, Sentence, Value

READ_EVERY = timedelta(hours=12)
IN_TIME = timedelta(hours=1)
"""Before the last safe moment: to read it then is to read it too late to do anything."""


def of_ferment(batch: Batch, now: datetime) -> Iterable[Due]:
    clocked = judged(batch, now) if batch.cure is not None else None
    if clocked is None:
        return
    word, decided = clocked.judged.word, batch.ferment.decided
    is_missed = word in ("over", "not shown") and decided is None
    if is_missed:
        yield _deviation(batch, clocked, now)
    if clocked.judged.measure_again:
        yield _again(batch)
    elif is_missed:
        return  # whatever its pH is now, it was too late
    elif batch.stage == "ferment" or (batch.ferments and word == "running"):
        yield _reading(batch, clocked)
    elif batch.start.style == "slow" and (word == "running" or (word == "unknown" and not batch.pieces)):
        yield _temperature(batch, clocked)


def sour_in_time(batch: Batch, now: datetime) -> datetime | None:
    """Since when a batch that sours may hang; None while it is held for its degree-hours or its pH."""
    clocked = judged(batch, now)
    if clocked is None:
        return batch.started_at
    deviation = clocked.judged.outcome.deviation
    if clocked.judged.crossing is None or (deviation is not None and deviation.condemns):
        return None
    if clocked.judged.word in ("over", "not shown") and (deviation is None or not deviation.clears):
        return None
    return clocked.at(clocked.judged.crossing.by_s)


def _deviation(batch: Batch, clocked: FermentationClock, now: datetime) -> Due:
    words = Sentence("{act}: note what is decided", {"act": Sentence("Hold {batch}", {"batch": batch.name})})
    return Due("deviation", batch.id, words, min(clocked.last_safe or now, now), _missed(clocked.judged))


def _missed(judged: Judged) -> Sentence:
    if judged.sum is None or judged.limit is None:
        return Sentence("no reading shows pH {acid} in time", {"acid": Amount(ACID_PH, PH)})
    amounts = {"sum": Rounded(judged.sum.amount), "limit": Rounded(judged.limit.amount), "acid": Amount(ACID_PH, PH)}
    if judged.word == "over":
        return Sentence("{sum}: over the limit of {limit}", amounts)
    return Sentence("pH {acid} was read at {sum}; the limit is {limit}", amounts)


def _again(batch: Batch) -> Due:
    """At once: the last reading is the one that asks for it."""
    words = Sentence("{act} of {batch} again, twice", {"act": Sentence("Measure the pH"), "batch": batch.name})
    fact = Sentence("its readings contradict each other")
    return Due("reading", batch.id, words, batch.phs[-1].at, fact)


def _reading(batch: Batch, clocked: FermentationClock) -> Due:
    words = Sentence("{act} of {batch}", {"act": Sentence("Read pH"), "batch": batch.name})
    last = batch.phs[-1] if batch.phs else None
    at, until = _next_reading(batch, clocked, None if last is None else last.at)
    if last is None:
        return Due("reading", batch.id, words, at, _told("pH never read", "{at}; pH never read", clocked), until)
    named: dict[str, Value] = {"ph": Amount(last.ph or 0.0, PH), "acid": Amount(ACID_PH, PH), "moment": last.at}
    fact = _told("pH {ph}, {moment}; {acid} needed", "{at}; last pH {ph}, {moment}", clocked, named)
    return Due("reading", batch.id, words, at, fact, until)


def _temperature(batch: Batch, clocked: FermentationClock) -> Due:
    words = Sentence("{act} of {batch}", {"act": Sentence("Read the temperature"), "batch": batch.name})
    last_at = max((each.at for each in batch.readings), default=None)
    at, until = _next_reading(batch, clocked, last_at)
    if last_at is None:
        return Due("temperature", batch.id, words, at, _told("never read", "{at}; never read", clocked), until)
    fact = _told("last read {moment}; is it cool yet?", "{at}, read {moment}", clocked, {"moment": last_at})
    return Due("temperature", batch.id, words, at, fact, until)


def _next_reading(
    batch: Batch, clocked: FermentationClock, last_at: datetime | None
) -> tuple[datetime, datetime | None]:
    """When to read next, and the last safe moment where the clock runs."""
    at, until = batch.started_at if last_at is None else last_at + READ_EVERY, _last_safe(clocked)
    return (at, None) if until is None else (min(at, until - IN_TIME), until)


def _last_safe(clocked: FermentationClock) -> datetime | None:
    """None where it is not known, stands still or is over."""
    left = clocked.judged.deadline.left
    return clocked.last_safe if clocked.fermentation.temperatures and left is not None and left.value else None


def _told(
    bare: Message, at_its_temperature: Message, clocked: FermentationClock, named: dict[str, Value] | None = None
) -> Sentence:
    """With the temperature that the time left is counted at, where there is one."""
    if _last_safe(clocked) is None:
        return Sentence(bare, named or {})
    at = Sentence("at {temperature}", {"temperature": Amount(clocked.judged.course.last_c, TEMPERATURE)})
    return Sentence(at_its_temperature, {"at": at, **(named or {})})
