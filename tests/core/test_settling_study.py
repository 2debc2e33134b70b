"""Random chambers against their truth. `build.py bench settling-cycles` and its kin do the same with two hundred."""

from functools import cache

from tests.core.chamber_study import LUMPS, Outcome, recall_and_precision, study

SEEDS = range(24)


@cache
def outcomes() -> list[Outcome]:
    return list(study(LUMPS, SEEDS, (60.0,)))


def share(hits: list[bool]) -> float:
    return sum(hits) / len(hits)


def test_runs_are_counted_exactly_or_one_off():
    off = [outcome.count_off for outcome in outcomes()]
    assert None not in off
    assert share([each == 0 for each in off]) >= 0.95
    assert max(abs(each or 0) for each in off) <= 1


def test_the_hold_is_within_a_reading_or_three_per_cent():
    assert share([abs(each.hold_off) <= 1 for each in outcomes() if each.hold_off is not None]) >= 0.95


def test_the_warming_time_constant_is_within_a_tenth():
    assert share([abs(each.tau_off) <= 0.1 for each in outcomes() if each.tau_off is not None]) >= 0.95


def test_doors_are_found_and_told_apart():
    assert min(recall_and_precision([each.doors for each in outcomes() if each.doors is not None])) > 0.9


def test_defrosts_are_found_and_told_apart():
    assert min(recall_and_precision([each.defrosts for each in outcomes() if each.defrosts is not None])) > 0.9
