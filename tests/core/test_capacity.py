"""What a chamber takes out and carries: each limit with a hair on either side, each figure worked out by hand."""

import math
from collections.abc import Callable

import pytest

from core.chamber.capacity import (
    CLOSE,
    OVERLOADED,
    OVERLOADED_AT_FIRST,
    RATED_WARM,
    capacity_as_rated,
    capacity_from_basin,
    carries,
)
from core.chamber.moisture import NO_PEAK_PRINTED
from core.refusals import OutOfRange
from core.working import Figure
from tests.core.telling import in_words

DAY_S = 86_400.0
ONE_PER_CENT = 0.01 / DAY_S
HALF_LITRE = capacity_as_rated(0.0005 / DAY_S)


def carried(loss: float = ONE_PER_CENT, hanging_kg: float | None = None, peak: float | None = None):
    return {figure.key: figure for figure in carries(HALF_LITRE, loss, hanging_kg, peak)}


def span(figure: Figure) -> tuple[float | None, float, float | None]:
    return figure.low, figure.value, figure.high


def test_half_a_litre_a_day_carries_fifty_kilograms_at_one_per_cent_and_fewer_in_the_first_days():
    """The first days at 1.5 %, from 1 to 2 % (from memory)."""
    figures = carried()
    assert figures["carries"].value == pytest.approx(50.0, rel=1e-9)
    assert span(figures["carries_first"]) == pytest.approx((25.0, 100 / 3, 50.0), rel=1e-9)
    assert in_words(figures["carries_first"].cautions) == (NO_PEAK_PRINTED, RATED_WARM)


@pytest.mark.parametrize(("per_cent", "first"), [(1.2, (25.0, 100 / 3, 50 / 1.2)), (3.0, (50 / 3, 50 / 3, 50 / 3))])
def test_the_first_days_lose_no_less_than_the_mean(per_cent: float, first: tuple[float, float, float]):
    assert span(carried(per_cent * ONE_PER_CENT)["carries_first"]) == pytest.approx(first, rel=1e-9)


def test_a_peak_that_is_given_has_no_range():
    assert span(carried(peak=4 * ONE_PER_CENT)["carries_first"]) == (None, pytest.approx(12.5), None)


@pytest.mark.parametrize(
    ("peak", "burden"),
    [(None, (0.4, 0.4, 0.8)), (4 * ONE_PER_CENT, (0.4, 0.4, 1.6)), (ONE_PER_CENT / 2, (0.2, 0.4, 0.4))],
)
def test_what_hangs_is_a_share_of_what_it_carries(peak: float | None, burden: tuple[float, float, float]):
    assert span(carried(hanging_kg=20.0, peak=peak)["burden"]) == pytest.approx(burden, rel=1e-9)


@pytest.mark.parametrize(
    ("hanging_kg", "peak_per_cent", "told"),
    [
        (39.99, 1, ()), (40.01, 1, (CLOSE,)), (20.0, 2, ()), (20.01, 2, (CLOSE,)), (40.01, 0.5, (CLOSE,)),
        (50.0 * (1 + 0.995e-9), 0.5, (CLOSE,)), (50.0 * (1 + 1.005e-9), 0.5, (OVERLOADED,)),
        (25.0 * (1 + 0.995e-9), 2, (CLOSE,)), (25.0 * (1 + 1.005e-9), 2, (OVERLOADED_AT_FIRST,)),
        (50.1, 2, (OVERLOADED,)),
    ],
)  # fmt: skip
def test_from_four_fifths_it_is_close_and_above_all_of_it_overloaded(
    hanging_kg: float, peak_per_cent: float, told: tuple[str, ...]
):
    assert in_words(carried(hanging_kg=hanging_kg, peak=peak_per_cent * ONE_PER_CENT)["burden"].cautions) == told


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: capacity_from_basin(0.9999, DAY_S), None), (lambda: capacity_from_basin(1.0, DAY_S), "drained"),
        (lambda: capacity_from_basin(0.0, DAY_S), "drained"), (lambda: capacity_from_basin(-0.5, DAY_S), "drained"),
        (lambda: capacity_from_basin(1e-9, DAY_S), None), (lambda: capacity_as_rated(1e-9 / DAY_S), None),
        (lambda: capacity_as_rated(0.0), "rating"), (lambda: capacity_as_rated(-0.5 / DAY_S), "rating"),
        (lambda: capacity_from_basin(0.001, 21_600.0), None), (lambda: capacity_from_basin(0.001, 21_599.0), "time"),
        (lambda: capacity_from_basin(0.001, math.inf), "time"), (lambda: capacity_from_basin(0.001, 1e9), None),
        (lambda: capacity_as_rated(0.9999 / DAY_S), None), (lambda: capacity_as_rated(1.0001 / DAY_S), "rating"),
        (lambda: capacity_as_rated(1 / DAY_S), "rating"),
        (lambda: carried(0.1 * (1 + 0.995e-9) / DAY_S), None), (lambda: carried(0.1 * (1 + 1.005e-9) / DAY_S), "loss"),
        (lambda: carried(1e-12), None), (lambda: carried(peak=0.1 / DAY_S), None),
        (lambda: carried(peak=0.1001 / DAY_S), "peak"), (lambda: carried(peak=0.0), "peak"),
        (lambda: carried(hanging_kg=999.9), None), (lambda: carried(hanging_kg=1000.0), "hanging"),
        (lambda: carried(hanging_kg=0.001), None), (lambda: carried(hanging_kg=0.0), "hanging"),
    ],
)  # fmt: skip
def test_each_limit_has_a_hair_on_either_side(call: Callable[[], object], field: str | None):
    try:
        call()
        refused = None
    except OutOfRange as refusal:
        refused = refusal.field
    assert refused == field
