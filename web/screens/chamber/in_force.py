"""The set-points in force, as the Chamber page and Today tell them in a few words."""

from __future__ import annotations

from attrs import frozen

from core.chamber.drying_force import grade
from core.chamber.setpoints import set_point
from core.daybook.facts.chamber import CHAMBER, AirRead, SetPointsChosen
from core.daybook.set_points import apart, set_points
from core.refusals import OutOfRange
from core.sentence import Sentence
from web.instruments import corrected_of
from web.journal import book


@frozen
class InForce:
    """apart: how far the air last read lies from what is set. air_word: how hard that air dries."""

    fact: SetPointsChosen
    apart: tuple[Sentence, ...] = ()
    air_word: str = ""


def in_force() -> InForce | None:
    """None while none were chosen."""
    line = set_points(book())
    if line is None or not isinstance(line.fact, SetPointsChosen):
        return None
    air = book().latest(CHAMBER, AirRead)
    read = None if air is None else corrected_of(air).fact
    if not isinstance(read, AirRead):
        return InForce(line.fact)
    return InForce(line.fact, apart(line.fact, read), _word(read, line.fact.surface_activity))


def _word(air: AirRead, surface_activity: float) -> str:
    if air.humidity is None:
        return ""
    try:
        return grade(set_point(air.temperature_c, air.humidity, surface_activity)[0].value).word
    except OutOfRange:  # an old journal may hold air that no formula covers
        return ""
