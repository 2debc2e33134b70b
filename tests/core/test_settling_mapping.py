"""Fluctuation in time and gradient in space, each by its own definition, on traces worked out by hand."""

import pytest

from core.chamber.series import Series
from core.chamber.settling.mapping import fluctuation, instability, pairs, space

MINUTES = tuple(60.0 * minute for minute in range(120))


def steady(name: str, warm_c: float, times_s: tuple[float, ...] = MINUTES) -> Series:
    return Series(name, times_s, [warm_c] * len(times_s))


def swinging(name: str) -> Series:
    return Series(name, MINUTES, [12.0 + (minute % 2) for minute in range(120)])


def test_the_fluctuation_is_half_of_what_a_half_hour_spans():
    ramp = [minute / 30 for minute in range(120)]
    assert fluctuation(MINUTES, ramp) == pytest.approx(0.5)


def test_the_fluctuation_is_that_of_the_worst_half_hour():
    assert fluctuation(MINUTES, [12.0] * 60 + [12.8] + [12.0] * 59) == pytest.approx(0.4)


def test_the_fluctuation_does_not_look_across_a_gap():
    assert fluctuation([0, 60, 120, 1200, 1260, 3600], [10, 10, 10, 20, 20, 20]) == 0


def test_the_fluctuation_of_the_whole_is_half_of_all():
    ramp = [minute / 30 for minute in range(120)]
    assert fluctuation(MINUTES, ramp, 7200) == pytest.approx(119 / 60)


def test_the_instability_is_the_furthest_reading_from_the_mean():
    assert instability(MINUTES, [12.0] * 119 + [15.0]) == pytest.approx(3 - 3 / 120)


def test_the_instability_asks_for_thirty_readings():
    assert instability(MINUTES[:29], [12.0] * 29) is None


def test_a_pair_is_one_less_the_other():
    pair = pairs([steady("low", 11.0), steady("high", 12.5)])[0]
    assert (pair.one, pair.other, pair.difference.mean, pair.difference.deviation) == ("low", "high", -1.5, 0)


def test_three_probes_make_three_pairs():
    assert len(pairs([steady(name, 12.0) for name in "abc"])) == 3


def test_the_gradient_is_between_the_means_furthest_apart():
    found = space([steady("middle", 12.0), steady("low", 11.2), steady("high", 12.6)])
    assert found is not None
    assert (found.gradient_k, found.warmest, found.coldest) == (pytest.approx(1.4), "high", "low")


def test_the_variation_is_from_the_centre():
    found = space([steady("middle", 12.0), steady("low", 11.2), steady("high", 12.6)])
    assert found is not None
    assert found.variation_k == pytest.approx(0.8)


def test_the_uniformity_is_the_mean_of_the_momentary_spread():
    found = space([steady("still", 12.0), swinging("restless")])
    assert found is not None
    assert found.uniformity_k == pytest.approx(0.5, abs=0.02)


def test_the_inhomogeneity_is_the_worst_moment():
    found = space([steady("still", 12.0), swinging("restless")])
    assert found is not None
    assert (found.inhomogeneity_k, found.widest_k) == (1, 1)


def test_probes_logged_at_other_moments_are_compared_between_their_readings():
    later = tuple(at_s + 30 for at_s in MINUTES)
    ramps = [
        Series("one", MINUTES, [at_s / 600 for at_s in MINUTES]),
        Series("two", later, [at_s / 600 for at_s in later]),
    ]
    assert pairs(ramps)[0].difference.mean == pytest.approx(0, abs=1e-6)


def test_probes_logged_on_different_days_are_not_compared():
    apart = [steady("one", 12.0), steady("two", 12.0, tuple(at_s + 1e6 for at_s in MINUTES))]
    assert (pairs(apart), space(apart)) == ((), None)


def test_one_probe_tells_nothing_of_space():
    assert space([steady("one", 12.0)]) is None
