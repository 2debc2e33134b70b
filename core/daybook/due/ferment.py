"""What a fermenting batch waits for: its next reading before the last safe moment, or a decision after it."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from core.daybook.batch import Batch
from core.daybook.due.line import Due
from core.daybook.fermenting import FermentationClock, judged
from core.ferment.saying import hours_and_minutes
from core.meat import ACID_PH
from core.quantities import PH, TEMPERATURE, Amount
from core.sentence import Message, Sentence, Value

READ_EVERY = timedelta(hours=12)
IN_TIME = timedelta(hours=1)
"""Before the last safe moment: to read it then is to read it too late to do anything."""


def of_ferment(batch: Batch, now: datetime) -> Iterable[Due]:
    clocked = judged(batch, now) if batch.cure is not None else None
    if clocked is None:
        return
    word, decided = clocked.judged.word, batch.ferment.decided
    if word in ("over", "not shown") and decided is None:
        yield _deviation(batch, clocked, now)
    if clocked.judged.measure_again:
        yield _again(batch)
    elif batch.stage == "ferment" or (batch.ferments and word == "running"):
        yield _reading(batch, clocked, now)
    elif batch.start.style == "slow" and (word == "running" or (word == "unknown" and not batch.pieces)):
        yield _temperature(batch, clocked, now)


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
    words = Sentence("Hold {batch}: it missed its degree-hours. Note what is decided", {"batch": batch.name})
    return Due("deviation", batch.id, words, min(clocked.last_safe or now, now))


def _again(batch: Batch) -> Due:
    """At once: the last reading is the one that asks for it."""
    words: Message = "Measure the pH of {batch} again, twice: its readings contradict each other"
    return Due("reading", batch.id, Sentence(words, {"batch": batch.name}), batch.phs[-1].at)


def _reading(batch: Batch, clocked: FermentationClock, now: datetime) -> Due:
    named: dict[str, Value] = {"batch": batch.name}
    left = _left(clocked)
    if left is not None and clocked.last_safe is not None:
        last = max((each.at for each in batch.phs), default=batch.started_at - READ_EVERY)
        at = min(last + READ_EVERY, clocked.last_safe - IN_TIME)
        return Due("reading", batch.id, Sentence("Read the pH of {batch}: {left}", named | {"left": left}), at)
    if not batch.phs:
        return Due("reading", batch.id, Sentence("Read the pH of {batch}", named), batch.started_at)
    last = batch.phs[-1]
    words = Sentence(
        "Read the pH of {batch}: {last} last, {acid} needed",
        named | {"last": Amount(last.ph or 0.0, PH), "acid": Amount(ACID_PH, PH)},
    )
    return Due("reading", batch.id, words, last.at + READ_EVERY)


def _temperature(batch: Batch, clocked: FermentationClock, now: datetime) -> Due:
    left = _left(clocked)
    named: dict[str, Value] = {"batch": batch.name}
    last = max((each.at for each in batch.readings), default=batch.started_at - READ_EVERY)
    if left is None or clocked.last_safe is None:
        return Due(
            "reading", batch.id, Sentence("Read the temperature of {batch}: is it cool yet?", named), last + READ_EVERY
        )
    at = min(last + READ_EVERY, clocked.last_safe - IN_TIME)
    return Due("reading", batch.id, Sentence("Read the temperature of {batch}: {left}", named | {"left": left}), at)


def _left(clocked: FermentationClock) -> Sentence | None:
    """ "5 h 20 min left at 24 °C"; None where it cannot be told, stands still or is over."""
    deadline = clocked.judged.deadline
    if not clocked.fermentation.temperatures or deadline.left is None or not deadline.left.value:
        return None
    at = Amount(clocked.judged.course.last_c, TEMPERATURE)
    return Sentence("{time} left at {at}", {"time": hours_and_minutes(deadline.left.value), "at": at})
