"""What must hold of every trace: another clock, another scale's zero or a mirror of the probes changes nothing else."""

from hypothesis import given, settings
from hypothesis import strategies as st

from core.chamber.series import Series
from core.chamber.settling.mapping import fluctuation, pairs
from core.chamber.settling.statistics import Band, spread
from core.chamber.settling.staying import stay
from tests.core.analysed import compressor_of
from tests.core.chamber_model import Chamber, Logger, log, run

LOGGED = log(run(Chamber(), 16), Logger())
READINGS = st.lists(st.integers(50, 250).map(lambda tenth: tenth / 10), min_size=2, max_size=60)
STEPS = st.lists(st.integers(1, 600), min_size=60, max_size=60)


def times(steps: list[int], count: int) -> list[float]:
    at_s, found = 0, []
    for step in steps[:count]:
        found.append(float(at_s))
        at_s += step
    return found


@settings(max_examples=15, deadline=None)
@given(st.floats(-1e9, 2e9), st.integers(-100, 100))
def test_neither_clock_nor_zero_changes_what_the_compressor_did(shift_s: float, shift_k: int):
    moved = Series(
        "low",
        [at_s + round(shift_s) for at_s in LOGGED.times_s],
        [round(warm + shift_k / 10, 1) for warm in LOGGED.temperatures_c],
    )
    here, there = compressor_of(Series("low", LOGGED.times_s, LOGGED.temperatures_c)), compressor_of(moved)
    assert len(here.runs) == len(there.runs)
    assert here.rhythm is not None
    assert there.rhythm is not None
    assert abs(here.rhythm.holds_s - there.rhythm.holds_s) < 10


@given(READINGS, STEPS)
def test_the_mean_lies_between_the_extremes(values: list[float], steps: list[int]):
    found = spread(times(steps, len(values)), values)
    assert found.lowest - 1e-9 <= found.mean <= found.highest + 1e-9
    assert found.lowest <= found.low_5 <= found.high_95 <= found.highest


@given(READINGS, STEPS, st.floats(0.1, 9))
def test_a_wider_band_holds_no_less(values: list[float], steps: list[int], half: float):
    times_s = times(steps, len(values))
    inner, outer = (spread(times_s, values, Band(15.0, width)).in_band for width in (half, half * 1.5))
    assert inner is not None
    assert outer is not None
    assert inner <= outer + 1e-12


@given(READINGS, STEPS, st.floats(0.1, 9))
def test_a_wider_band_is_settled_no_later(values: list[float], steps: list[int], half: float):
    times_s = times(steps, len(values))
    inner, outer = (stay(times_s, values, Band(15.0, width), 600).since_s for width in (half, half * 1.5))
    assert inner is None or (outer is not None and outer <= inner)


@given(READINGS)
def test_no_half_hour_spans_more_than_the_whole(values: list[float]):
    times_s = [60.0 * place for place in range(len(values))]
    assert fluctuation(times_s, values) <= (max(values) - min(values)) / 2 + 1e-12


@given(READINGS)
def test_a_pair_the_other_way_round_has_the_other_sign(values: list[float]):
    times_s = [60.0 * place for place in range(len(values))]
    one, two = Series("one", times_s, values), Series("two", times_s, list(reversed(values)))
    assert abs(pairs((one, two))[0].difference.mean + pairs((two, one))[0].difference.mean) < 1e-6
