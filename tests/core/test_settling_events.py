"""Defrosts and doors: found, told apart, and no cycle made of them."""

import pytest
from attrs import evolve

from core.chamber.series import Series
from core.chamber.settling.analysis import Compressor
from tests.core.analysed import compressor_of
from tests.core.chamber_model import HOUR_S, Chamber, Logger, log, run
from tests.core.telling import told


def seen(hours: float = 24, logger: Logger | None = None, **changes: tuple[float, ...]) -> Compressor:
    logged = log(run(evolve(Chamber(), **changes), hours), logger or Logger(), 3)
    return compressor_of(Series("low", logged.times_s, logged.temperatures_c), 20.0)


def kinds(found: Compressor) -> list[str]:
    return [event.kind for event in found.events]


def test_a_quiet_chamber_shows_no_event():
    assert kinds(seen()) == []


@pytest.mark.parametrize("interval_s", [30, 60, 120, 300])
def test_a_defrost_is_seen_as_one(interval_s: float):
    assert kinds(seen(logger=Logger(interval_s), defrosts_s=(12 * HOUR_S,))) == ["defrost"]


@pytest.mark.parametrize("interval_s", [30, 60, 120])
def test_a_door_is_seen_as_one(interval_s: float):
    assert kinds(seen(logger=Logger(interval_s), doors_s=(12.5 * HOUR_S,))) == ["door"]


def test_both_are_told_apart():
    assert kinds(seen(defrosts_s=(8 * HOUR_S, 16 * HOUR_S), doors_s=(12.5 * HOUR_S,))) == ["defrost", "door", "defrost"]


def test_a_defrost_begins_and_ends_about_when_it_did():
    truth = run(evolve(Chamber(), defrosts_s=(12 * HOUR_S,)), 24)
    event = seen(defrosts_s=(12 * HOUR_S,)).events[0]
    start_s, stop_s = truth.defrosts[0]
    assert event.starts_s == pytest.approx(start_s, abs=420)
    assert event.top_s == pytest.approx(stop_s, abs=420)


def test_the_hold_is_measured_where_nothing_disturbs_it():
    with_events = seen(defrosts_s=(8 * HOUR_S,), doors_s=(15.5 * HOUR_S,)).rhythm
    without = seen().rhythm
    assert with_events is not None
    assert without is not None
    assert with_events.holds_s == pytest.approx(without.holds_s, rel=0.03)


def test_a_chamber_that_is_never_left_alone_is_refused_in_words():
    assert "leave the chamber shut" in told(seen(doors_s=tuple(at * 2400.0 for at in range(6, 36))).why_not)
