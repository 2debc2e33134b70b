"""A log that pauses: what is counted of it, and of how much of the time, held against chambers whose runs are known."""

from functools import cache

import pytest
from attrs import evolve

from core.chamber.series import Series
from core.chamber.settling.analysis import Compressor
from core.chamber.settling.figures import WHILE_LOGGED, figures_of
from core.chamber.settling.holes import looked_at, parts_seen
from core.chamber.settling.swing import Swing, Trace
from core.units import HOUR_S
from tests.core.analysed import analyse, compressor_of
from tests.core.chamber_model import Logger, Truth
from tests.core.chamber_study import LUMPS, WALLED, Kind, count_off, probe
from tests.core.settling_traces import trace_of
from tests.core.telling import told

SEEDS = range(720, 726)
BEGUN_H = 9.3, 21.7, 37.4
SWING = Swing(12.0, 10.0, rising_s=3600.0, falling_s=900.0, rises_by_s=2 / 3600, falls_by_s=2 / 900)


@cache
def whole(kind: Kind, seed: int) -> tuple[Truth, Logger, Series]:
    chamber, logger = kind.draw(seed)
    happened, logger = kind.run(chamber), evolve(logger, interval_s=60.0)
    return happened, logger, probe(happened, logger, "low", seed)


def paused(log: Series, minutes: float) -> Series:
    """Three times for so long."""
    return log.only(
        not any(begun_h * HOUR_S < at_s < begun_h * HOUR_S + 60 * minutes for begun_h in BEGUN_H)
        for at_s in log.times_s
    )


@pytest.mark.parametrize("minutes", [5, 12, 24, 90])
@pytest.mark.parametrize("kind", [LUMPS, WALLED], ids=["lump", "walled"])
def test_no_count_over_a_pause_is_given_for_the_whole_that_is_not_the_whole(kind: Kind, minutes: int):
    for seed in SEEDS:
        happened, logger, log = whole(kind, seed)
        found = compressor_of(paused(log, minutes))
        assert not found.is_counted or count_off(happened, logger, len(found.runs)) == 0, seed


def half_day() -> Compressor:
    happened, logger, log = whole(LUMPS, SEEDS[0])
    assert count_off(happened, logger, len(compressor_of(log).runs)) == 0
    return compressor_of(paused(log, 90))


def test_it_is_said_that_runs_in_pauses_are_missing():
    found = half_day()
    assert not found.is_counted
    assert "pauses" in told(found.why_not)


def test_the_time_is_told_that_the_count_is_of():
    looked = half_day().looked
    assert looked.of_s - looked.covered_s == pytest.approx(3 * 90 * 60, abs=3 * 60)


def test_doors_and_defrosts_of_a_log_with_pauses_are_said_to_be_those_that_were_seen():
    log = paused(whole(LUMPS, SEEDS[0])[2], 90)
    counts = [each for each in figures_of(analyse([log]).centre) if each.key in ("doors", "defrosts")]
    assert [[caution.text for caution in each.cautions] for each in counts] == [[WHILE_LOGGED]] * 2


def flat(*minutes: int) -> Trace:
    return trace_of([11.0] * len(minutes), times_s=[60.0 * at for at in minutes])


@pytest.mark.parametrize(("last", "parts"), [(12, [(0, 10)]), (13, [(0, 5), (5, 10)])])
def test_a_pause_of_half_a_run_hides_no_turn(last: int, parts: list[tuple[int, int]]):
    """A run lasts 15 min, a hold an hour."""
    trace = flat(*range(1, 6), *range(last, last + 5))
    assert parts_seen(trace, SWING) == parts
    assert looked_at(trace, SWING).is_whole is (len(parts) == 1)


def test_two_readings_between_pauses_show_nothing():
    trace = flat(*range(5), 20, 21, *range(40, 45))
    assert parts_seen(trace, SWING) == [(0, 5), (7, 12)]
    assert looked_at(trace, SWING).covered_s == 2 * 240.0
