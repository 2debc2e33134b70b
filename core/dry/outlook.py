"""A forecast in words: what is likely, how sure that is, what could make it wrong. It never says *ready*."""

from __future__ import annotations

from datetime import datetime, timedelta

from core.dry.forecast import Forecast
from core.quantities import LOSS, Amount
from core.sentence import Message, Rounded, Sentence, Value

ONLY_WEIGHT: Message = "This is a forecast of weight. It says nothing of whether the piece is safe or done."
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
    """Whether this air takes it so far at all."""
    told = {"end": _loss(forecast.end), "target": _loss(forecast.target)}
    if forecast.comes < HARDLY:
        return (
            Sentence(
                "Not in this air: it would leave the piece near {end} lost, short of {target}. Drier air would take it "
                "further.",
                told,
            ),
        )
    if forecast.comes < SURELY:
        return (
            Sentence(
                "This air may leave the piece near {end} lost, short of {target}: then the day never comes.", told
            ),
        )
    return ()


def _few(forecast: Forecast) -> tuple[Sentence, ...]:
    if forecast.weighings == 0:
        return (Sentence("Not weighed yet: this rests on its batch and on what is usual."),)
    if forecast.weighings <= FEW:
        return (Sentence("Few weighings show its pace, not yet its course: expect the day to move."),)
    return ()


def _loss(share: float) -> Rounded:
    return Rounded(Amount(share, LOSS))
