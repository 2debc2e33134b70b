"""A forecast in words: what is likely, how sure that is, what could make it wrong. It never says *ready*."""

from __future__ import annotations

from datetime import datetime, timedelta

from core.dry.forecast import Forecast
from core.quantities import LOSS, Amount
from core.sentence import Message, Rounded, Sentence, Value

ONLY_WEIGHT: Message = "This is a forecast of weight. It says nothing of whether the piece is safe or done."
NOT_IN_THIS_AIR: Message = (
    "Not in this air: it takes a piece to about {air} lost, short of {target}. Drier air would take it further."
)
STALLS: Message = (
    "It levels off short of {target}, though this air should take it to about {air}. Its rim may be dry: feel it. "
    "Drier air would shut the more in."
)
AIR_MAY_END_IT: Message = (
    "This air takes a piece to about {air} lost and may end it short of {target}: then the day never comes."
)
MAY_STALL: Message = (
    "It may level off short of {target}, though this air should take it further. If it does, feel its rim."
)
CLOSE = 0.05
"""What the end in an air may miss."""
SLOWED: Message = "It lost less than its curve let expect: if its rim is dry, the day comes later than this."
SURELY, HARDLY = 0.9, 0.5
"""The chances above which it is taken to come to its target, and below which no day is named."""
FEW = 2


def outlook(forecast: Forecast, hung_at: datetime, has_slowed: bool = False) -> tuple[Sentence, ...]:
    """The day first, then how far to believe it. hung_at: when the batch was hung. has_slowed: it lost less than its
    own curve let expect, as `core.dry.next_weighing` finds."""
    if forecast.is_there:
        return (_there(forecast), Sentence(ONLY_WEIGHT))
    slowed = (Sentence(SLOWED),) if has_slowed else ()
    doubts = (*_air(forecast), *slowed, *_few(forecast), Sentence(ONLY_WEIGHT))
    if forecast.comes < HARDLY:
        return doubts
    return (_day(forecast, hung_at), *doubts)


def _there(forecast: Forecast) -> Sentence:
    told = {"lost": _loss(forecast.lost or 0.0), "target": _loss(forecast.target)}
    return Sentence("Lost {lost}, target {target}: reached by weight.", told)


def _day(forecast: Forecast, hung_at: datetime) -> Sentence:
    days: dict[str, Value] = {"target": _loss(forecast.target)}
    for name, at_s in (
        ("early", forecast.earliest_s),
        ("likely", forecast.likely_s),
        ("late", forecast.latest_s),
    ):
        if at_s is not None:
            days[name] = (hung_at + timedelta(seconds=at_s)).date()
    if "early" not in days:
        return Sentence("No day can be named for {target} yet.", days)
    if "likely" not in days:
        return Sentence("{target} lost not before {early}; no later day can be named.", days)
    if "late" not in days:
        return Sentence("{target} lost about {likely}, not before {early}; how late is not known.", days)
    return Sentence("{target} lost about {likely}; in 8 of 10 cases between {early} and {late}.", days)


def _air(forecast: Forecast) -> tuple[Sentence, ...]:
    """Whether it comes so far at all; and if not, whether that is the air's doing or the piece's own. Drier air is only
    named where the air is what ends it: a rim gone dry shuts the more in the drier the air."""
    told = {
        "target": _loss(forecast.target),
        "air": _loss(forecast.air_takes),
    }
    if forecast.comes >= SURELY:
        return ()
    if forecast.comes < HARDLY:
        return (Sentence(NOT_IN_THIS_AIR if forecast.air_takes < forecast.target else STALLS, told),)
    return (Sentence(AIR_MAY_END_IT if forecast.air_takes < forecast.target + CLOSE else MAY_STALL, told),)


def _few(forecast: Forecast) -> tuple[Sentence, ...]:
    if forecast.weighings == 0:
        return (Sentence("Not weighed yet: this rests on its batch and on what is usual."),)
    if forecast.weighings <= FEW:
        return (Sentence("Few weighings show its pace, not yet its course: expect the day to move."),)
    return ()


def _loss(share: float) -> Rounded:
    return Rounded(Amount(share, LOSS))
