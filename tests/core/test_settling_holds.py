"""How the trace usually rises in a hold, and what disturbs it: by hand, reading by reading."""

from itertools import accumulate

import pytest

from core.chamber.settling.disturbances import Disturbances, disturbances
from core.chamber.settling.events import Event
from core.chamber.settling.holds import Holds, least_k
from tests.core.settling_traces import swing_of, trace_of


def holds_of(*rises: list[float], upper: float = 12.0, interval_s: float = 60.0, sigma: float = 0.0) -> Holds:
    """Holds from 10 °C on, each by what it rises from reading to reading; one reading between, on the way down."""
    values: list[float] = []
    turns: list[tuple[int, bool]] = []
    for each in rises:
        turns += [(len(values), False), (len(values) + len(each), True)]
        values += accumulate(each, initial=10.0)
    return Holds(trace_of(values, interval_s, sigma=sigma), swing_of(10.0, upper, turns=turns))


@pytest.mark.parametrize(
    ("sigma", "step", "least"),
    [(0.04, 0.1, 0.35), (0.06, 0.1, 0.42), (0.04, 0.25, 0.375), (0.0, 0.0, 0.35)],
)
def test_a_rise_by_less_than_noise_or_two_steps_tells_nothing(sigma: float, step: float, least: float):
    assert least_k(trace_of([10.0, 11.0], sigma=sigma, step=step)) == pytest.approx(least)


@pytest.mark.parametrize(("upper", "margin"), [(12.0, 0.35), (12.3, 0.35), (12.4, 0.36), (14.0, 0.6)])
def test_of_a_wide_swing_a_small_part_tells_nothing_either(upper: float, margin: float):
    assert holds_of([1.0], upper=upper).margin_k == pytest.approx(margin)


def test_feet_peaks_and_the_holds_between_them():
    trace = trace_of([12.0, 10.0, 11.0, 12.0, 11.0, 10.0, 12.0, 10.0])
    holds = Holds(trace, swing_of(10, 12, turns=[(0, True), (1, False), (3, True), (5, False), (6, True), (7, False)]))
    assert (holds.feet, holds.peaks, holds.legs) == ([1, 5, 7], [0, 3, 6], [(1, 3), (5, 6)])


def test_across_a_hole_two_feet_may_follow_one_another():
    holds = Holds(trace_of([10.0, 10.0, 12.0]), swing_of(10, 12, turns=[(0, False), (1, False), (2, True)]))
    assert holds.legs == [(1, 2)]


@pytest.mark.parametrize(("peak_k", "plain"), [(2.34, 4), (2.36, 3)])
def test_a_hold_that_ends_well_above_the_usual_peak_is_no_plain_one(peak_k: float, plain: int):
    holds = holds_of([2.0], [2.0], [2.0], [peak_k])
    assert len(holds.plain_legs) == plain


@pytest.mark.parametrize(
    ("rises", "width", "usual"),
    [
        ([[0.1, 0.3, 0.2, 0.25, 0.1]] * 3, 1, [0.1, 0.3, 0.2, 0.2, 0.1]),
        ([[0.1, 0.3, 0.2, 0.25, 0.1]] * 3, 2, [0.4, 0.5, 0.45, 0.35]),
        ([[0.1, 0.3, 0.2, 0.25, 0.1]] * 3, 3, [0.6, 0.75, 0.55]),
        ([[0.1, 0.3, 0.2, 0.25, 0.1, 0.1, 0.1]] * 3, 4, [0.85, 0.65]),
        ([[0.15] * 3, [0.2] * 3, [0.25] * 3], 1, [0.2] * 3),
        ([[0.1] * 3, [0.2] * 3], 1, []),
        ([[0.1] * 6] * 3 + [[0.1] * 4] * 3, 1, [0.1] * 6),
        ([[0.1] * 6] * 3 + [[0.1] * 4] * 4, 1, [0.1] * 4),
        ([[0.1] * 6] * 4 + [[0.1] * 4] * 4, 1, [0.1] * 6),
        ([[0.1] * 10 + [0.3, 0.1]] * 3, 1, [0.1] * 10 + [0.3, 0.1]),
        ([[0.1] * 11 + [0.3, 0.1]] * 3, 1, [0.1] * 13),
        ([[0.1] * 10 + [0.05, 0.05, 0.3, 0.1]] * 3, 4, [0.4] * 4 + [0.3, 0.5]),
        ([[0.1] * 12 + [0.05, 0.05, 0.3, 0.1]] * 3, 4, [0.4] * 5 + [0.3, 0.3]),
    ],
)
def test_the_usual_rise_of_a_hold(rises: list[list[float]], width: int, usual: list[float]):
    """While half of all holds last, three at the least; from its steepest, within ten minutes, ever more slowly."""
    assert holds_of(*rises).usual_rise(width) == pytest.approx(usual)


@pytest.mark.parametrize(("interval_s", "is_early"), [(600 / 10.49, False), (600 / 10.51, True)])
def test_a_hold_is_steepest_within_ten_minutes(interval_s: float, is_early: bool):
    """It rises most from its eleventh reading to the next: too late, where ten readings take ten minutes."""
    holds = holds_of(*[[0.1] * 11 + [0.3, 0.1]] * 3, interval_s=interval_s)
    assert holds.usual_rise(1)[11] == pytest.approx(0.3 if is_early else 0.1)


def test_a_peak_as_far_above_the_usual_as_tells_nothing_is_plain():
    holds = holds_of([2.0], [2.0], [2.0], [2.4375], sigma=0.0625)
    assert (holds.margin_k, len(holds.plain_legs)) == (0.4375, 4)


@pytest.mark.parametrize(
    ("index", "foot"), [(0, None), (1, 1), (2, 1), (3, None), (4, None), (5, 5), (6, None), (7, 7), (9, 7)]
)
def test_the_foot_before_a_reading_is_the_one_no_peak_came_after(index: int, foot: int | None):
    turns = [(0, True), (1, False), (3, True), (5, False), (6, True), (7, False)]
    assert Holds(trace_of([0.0] * 10), swing_of(10, 12, turns=turns)).foot_before(index) == foot


def test_before_the_first_turn_no_foot_is_known():
    assert Holds(trace_of([0.0] * 10), swing_of(10, 12, turns=[(4, False)])).foot_before(3) is None


@pytest.mark.parametrize(
    ("place", "peak", "foot"), [(0, 101.4, 2.5), (4, 102.1, 3.5), (5, 102.45, 3.5), (12, 104.15, 6.5), (23, 108.4, 9.0)]
)
def test_the_usual_peak_and_foot_are_those_of_five_on_either_side(place: int, peak: float, foot: float):
    """Feet at the even places, at 0, 1, 2 …; peaks at the odd ones, a hundred higher. Peaks: a little below the
    middle of them."""
    values = [100.0 * (place % 2) + place // 2 for place in range(24)]
    holds = Holds(trace_of(values), swing_of(0, 100, turns=[(at, at % 2 == 1) for at in range(24)]))
    assert (holds.usual_peak(place), holds.usual_foot(place)) == (pytest.approx(peak), pytest.approx(foot))


@pytest.mark.parametrize(
    ("first_s", "last_s", "spared"),
    [(0, 100, True), (0, 101, False), (150, 200, True), (149, 200, False), (150, 201, False), (260, 300, True),
     (259, 300, False)],
)  # fmt: skip
def test_what_lies_between_two_disturbances_is_spared(first_s: float, last_s: float, spared: bool):
    assert Disturbances((100.0, 200.0), (150.0, 260.0)).spare(first_s, last_s) is spared


def test_a_door_and_a_defrost_disturb_for_a_quarter_of_an_hour_more_and_a_hole_while_it_lasts():
    times_s = [*range(0, 6000, 60), *range(9000, 12_000, 60)]
    long = Event("defrost", 600.0, 700.0, 1800.0, 2400.0, 10.0, 14.0)
    short = Event("door", 900.0, 950.0, 1000.0, 1200.0, 10.0, 12.0)
    found = disturbances(trace_of([10.0] * len(times_s), times_s=times_s), [short, long])
    assert found == Disturbances((600.0, 900.0, 5940.0), (3300.0, 3300.0, 9000.0))
