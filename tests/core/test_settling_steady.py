"""From when on the figures of steadiness count."""

import math

from core.chamber.series import Series
from core.chamber.settling.comparing import key_figures
from core.chamber.settling.statistics import Band
from core.chamber.settling.wanted import Wanted
from tests.core.analysed import analyse

MINUTE_S, DAY = 60.0, 1440
TIMES = [MINUTE_S * place for place in range(2 * DAY)]


def fluctuation_k(temperatures_c: list[float]) -> float:
    probe = Series("Larder", TIMES, temperatures_c)
    return analyse([probe], Wanted(Band(13.0, 1.5), None)).centre.fluctuation_k


def sawtooth(half_k: float) -> list[float]:
    """Down in a quarter of an hour, up in an hour."""
    places = (place % 75 for place in range(2 * DAY))
    return [13 + half_k * (1 - 2 * (place / 15 if place < 15 else 1 - (place - 15) / 60)) for place in places]


def test_the_last_quiet_minutes_of_an_unsettled_run_do_not_make_it_steady():
    swinging = [round(each, 1) for each in sawtooth(2.0)]
    assert fluctuation_k(swinging[:-5] + [13.0] * 5) > 1.9


def test_the_way_down_is_no_fluctuation_though_it_ends_within_the_band():
    calm = [13 + 0.2 * math.sin(place / 10) for place in range(2 * DAY)]
    falling = [13 + 1.4 * (1 - place / 20) for place in range(20)]
    assert fluctuation_k([round(each, 1) for each in falling + calm[20:]]) < 0.4


def test_an_unsettled_run_is_not_said_to_have_settled_in_its_last_minutes():
    swinging = [round(each, 1) for each in sawtooth(2.0)]
    probe = Series("Larder", TIMES, swinging[:-5] + [13.0] * 5)
    named = key_figures(analyse([probe], Wanted(Band(13.0, 1.5), None)))
    assert "settled" not in [key for key, _ in named]
