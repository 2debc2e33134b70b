"""A stock of each agent, the limits of its solution, and what is said or refused of it."""

import pytest

from core.chamber.sanitising import dilute
from core.quantities import METRIC
from core.refusals import OutOfRange

LITRE = 1e-3


def figure(figures, key: str):
    return next(each for each in figures if each.key == key)


def refused(*arguments, **more) -> OutOfRange:
    with pytest.raises(OutOfRange) as caught:
        dilute(*arguments, **more)
    return caught.value


STOCK = {"chlorine": 0.0525, "calcium": 0.65, "isocyanurate": 0.56, "iodine": 0.0175, "quat": 0.1, "peracetic": 0.15}


LIMITS = {"chlorine": 200, "calcium": 200, "isocyanurate": 100, "iodine": 25, "quat": 200, "peracetic": 58}


LEAST = {"chlorine": 25, "calcium": 25, "isocyanurate": 25, "iodine": 12.5, "quat": 150, "peracetic": 46}


def said_by(figures, key: str) -> list[str]:
    return [step.say(METRIC) for step in figure(figures, key).working]
