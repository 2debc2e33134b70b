"""How often the humidifier works, held against chambers whose humidifier is known to the step."""

from functools import cache

import pytest
from attrs import evolve

from core.chamber.settling.fog import Work
from core.chamber.settling.humid_figures import humid_figures
from core.chamber.settling.humidity import HumidRhythm
from core.units import HOUR_S
from tests.core.analysed import analyse
from tests.core.chamber_study import LUMPS, WALLED, Kind, probe
from tests.core.settling_logs import CASES, analysis, truth
from tests.core.telling import told as words_of

SEEDS = range(708, 716)
"""None of those the limits were found on (500 to 529)."""
FINE, COARSE = (0.1, 0.001), (0.5, 0.005)
ONE_MORE = 0.05
"""An hour: of so few spells one more or less is a few in a hundred."""


@cache
def found(kind: Kind, seed: int, step_k: float, humid_step: float) -> tuple[HumidRhythm, float]:
    """The rhythm that is told, and how often an hour the humidifier truly began."""
    chamber, logger = kind.draw(seed)
    happened = kind.run(chamber)
    logger = evolve(logger, interval_s=60.0, step_k=step_k, humid_step=humid_step)
    humidity = analyse([probe(happened, logger, "low", seed)]).centre.humidity
    assert humidity is not None
    return humidity.rhythm, len(happened.misting) * HOUR_S / happened.lasts_s


def told(steps: tuple[float, float]) -> list[tuple[Work, float]]:
    both = [found(kind, seed, *steps) for kind in (LUMPS, WALLED) for seed in SEEDS]
    return [(rhythm.work, true) for rhythm, true in both if rhythm.work is not None]


def is_held(work: Work, true: float) -> bool:
    return work.low - ONE_MORE <= true <= work.high + ONE_MORE


def test_coarse_steps_tell_no_rate_that_is_not_the_humidifiers():
    assert [(work, true) for work, true in told(COARSE) if not is_held(work, true)] == []


def test_where_steps_are_too_coarse_it_is_said():
    whys = {words_of(found(LUMPS, seed, *COARSE)[0].why_not) for seed in SEEDS}
    assert any("too coarse" in why_not for why_not in whys)


def test_fine_steps_tell_it_of_some_chambers_and_rightly():
    rates = told(FINE)
    assert len(rates) >= 6
    assert sum(is_held(*each) for each in rates) >= 0.9 * len(rates)


def test_a_rate_that_is_told_by_itself_is_within_fifteen_per_cent():
    points = [work.an_hour / true - 1 for work, true in told(FINE) if work.is_sure]
    assert len(points) >= 1
    assert max(map(abs, points)) <= 0.15


@pytest.mark.parametrize("name", CASES)
def test_in_none_of_the_whole_logs_is_it_told_wrongly(name: str):
    case = CASES[name]
    true = len(truth(case.chamber, case.hours).misting) / case.hours
    for each in analysis(name).probes:
        work = each.humidity and each.humidity.rhythm.work
        assert not work or is_held(work, true)


def test_a_range_is_shown_where_one_number_would_be_too_much():
    shown = {figure.key for figure in humid_figures(analysis("overshooting").centre)}
    assert {"bursts_least", "bursts_most"} <= shown
    assert "bursts" not in shown
