"""What the hanging pieces of a batch wait for, as each of them is judged now; one line for those that wait alike."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from datetime import datetime, timedelta
from typing import Literal

from attrs import frozen

from core.daybook.batch import Batch
from core.daybook.due.line import Due
from core.daybook.evidence import verdicts
from core.daybook.piece import Piece
from core.daybook.weigh_days import WeighDay
from core.dry.next_weighing import Why
from core.meat import MOST_LOSS
from core.quantities import COUNT, LOSS, Amount
from core.sentence import Message, Rounded, Sentence, Value, listed
from core.verdict import Verdict

WEIGH_EVERY = timedelta(days=7)
"""At the latest, whatever a forecast says."""
WEIGHED_TOGETHER = timedelta(days=1)

SHOWN_BY_ACTIVITY = ("shelf-stable", "listeria", "slow-dry")
"""The reasons of a verdict that a water activity settles."""

Waits = Literal["discard", "take-down", "release", "look", "activity", "weigh"]


@frozen
class Judged:
    piece: Piece
    verdict: Verdict

    def is_met(self, key: str) -> bool | None:
        return next((each.met for each in self.verdict.reasons if each.key == key), None)

    @property
    def waits_for(self) -> Waits:
        """The one thing to do next. Before its loss and its time are reached that is the scale again."""
        if self.verdict.word != "hold":
            return "discard" if self.verdict.word == "discard" else "take-down"
        if not self.is_met("loss") and (self.piece.loss or 0.0) > MOST_LOSS:
            return "release"
        if not self.is_met("loss") or not self.is_met("days"):
            return "weigh"
        if self.is_met("signs") is None:
            return "look"
        is_wet = any(each.met is not True for each in self.verdict.reasons if each.key in SHOWN_BY_ACTIVITY)
        return "activity" if is_wet else "release"


def of_pieces(batch: Batch, now: datetime, weigh_days: Mapping[str, WeighDay]) -> Iterable[Due]:
    if not batch.hanging:
        return
    found, alike = verdicts(batch, now), defaultdict[Waits, list[Judged]](list)
    for piece in batch.hanging:
        judged = Judged(piece, found[piece.id])
        alike[judged.waits_for].append(judged)
    for waits, those in alike.items():
        yield _weighing(batch, those, weigh_days) if waits == "weigh" else _LINES[waits](batch, those)


def _discard(batch: Batch, judged: list[Judged]) -> Due:
    fatal = next(each for each in judged[0].verdict.unmet if each.fatal and each.met is False)
    act = Sentence("Discard {count} piece", _count(judged), plural="Discard {count} pieces")
    return Due("discard", judged[0].piece.id, _of(batch, act), _since(judged), _of_tag(judged[0].piece, fatal.text))


def _take_down(batch: Batch, judged: list[Judged]) -> Due:
    act = Sentence("Take down {count} piece", _count(judged), plural="Take down {count} pieces")
    tags = Sentence("ready: {pieces}", {"pieces": listed([each.piece.tag for each in judged])})
    return Due("take-down", judged[0].piece.id, _of(batch, act), _since(judged), tags)


def _decide(batch: Batch, judged: list[Judged]) -> Due:
    act = Sentence("Decide on {count} piece", _count(judged), plural="Decide on {count} pieces")
    reason = next((each for each in judged[0].verdict.unmet if each.met is False), judged[0].verdict.unmet[0])
    return Due("release", judged[0].piece.id, _of(batch, act), _since(judged), reason.text)


def _look(batch: Batch, judged: list[Judged]) -> Due:
    words = Sentence(
        "{act}: {count} piece of {batch}",
        {"act": Sentence("Look, smell, squeeze"), "batch": batch.name, **_count(judged)},
        plural="{act}: {count} pieces of {batch}",
    )
    return Due("look", judged[0].piece.id, words, _since(judged), _lost(batch, judged))


def _activity(batch: Batch, judged: list[Judged]) -> Due:
    """Of the wettest: it speaks for all that lost no less. Again a week after one that was too high."""
    wettest = min((each.piece for each in judged), key=lambda piece: piece.loss or 0.0)
    measured_at = max((each.at for each in wettest.activities), default=None)
    act = Sentence("Measure the water activity" if measured_at is None else "Measure the water activity again")
    words = Sentence("{act} of {tag}, {batch}", {"act": act, "tag": wettest.tag, "batch": batch.name})
    at = wettest.weighed_at if measured_at is None else measured_at + WEIGH_EVERY
    return Due("activity", wettest.id, words, at, _lost(batch, judged))


TEACHES: dict[Why, Message] = {
    "pace": "{last}; a weight then tells more than the forecast",
    "target": "{last}; the target may be reached by then",
}
"""What a weight would teach, where it is wanted before the week is over."""


def _weighing(batch: Batch, judged: list[Judged], weigh_days: Mapping[str, WeighDay]) -> Due:
    days = {each.piece.id: _weigh_day(each.piece, weigh_days.get(each.piece.id)) for each in judged}
    first = min((each.piece for each in judged), key=lambda piece: (days[piece.id].at, piece.weighed_at))
    day = days[first.id]
    together = [each for each in judged if days[each.piece.id].at <= day.at + WEIGHED_TOGETHER]
    act = Sentence("Weigh {count} piece", _count(together), plural="Weigh {count} pieces")
    last: Message = "last weighed {moment}" if first.weighings else "hung {moment}"
    fact = Sentence(last, {"moment": first.weighed_at})
    if day.why in TEACHES:
        fact = Sentence(TEACHES[day.why], {"last": fact})
    return Due("weigh", batch.id, _of(batch, act), day.at, fact)


def _weigh_day(piece: Piece, forecast: WeighDay | None) -> WeighDay:
    """By its forecast, or once a week where that says nothing."""
    latest = WeighDay(piece.weighed_at + WEIGH_EVERY, "long ago")
    return latest if forecast is None or forecast.at >= latest.at else forecast


_LINES = {
    "discard": _discard,
    "take-down": _take_down,
    "release": _decide,
    "look": _look,
    "activity": _activity,
}


def _of(batch: Batch, act: Sentence) -> Sentence:
    return Sentence("{act} of {batch}", {"act": act, "batch": batch.name})


def _count(judged: list[Judged]) -> dict[str, Value]:
    return {"count": Amount(len(judged), COUNT)}


def _since(judged: list[Judged]) -> datetime:
    return min(each.piece.noted_at for each in judged)


def _of_tag(piece: Piece, text: Sentence) -> Sentence:
    return Sentence("{tag}: {text}", {"tag": piece.tag, "text": text})


def _lost(batch: Batch, judged: list[Judged]) -> Sentence:
    least = min(each.piece.loss or 0.0 for each in judged)
    amounts = {"lost": Rounded(Amount(least, LOSS)), "target": Rounded(Amount(batch.start.target_loss, LOSS))}
    return Sentence("lost {lost}, target {target}", amounts)
