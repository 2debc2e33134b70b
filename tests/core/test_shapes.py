"""The shapes of drying curves: each by its own formula, and what all of them have in common."""

import math

import pytest

from core.dry.activity import Mix
from core.dry.crank import left_in
from core.dry.shapes import shapes

ALL = {shape.key: shape for shape in shapes(0.78, Mix(water=0.58, salt=0.028))}


@pytest.mark.parametrize("key", ALL)
def test_a_half_time_later_half_is_gone(key):
    assert ALL[key].log_time(0.5) == pytest.approx(0, abs=2e-3)


@pytest.mark.parametrize("share", [0.1, 0.3, 0.7, 0.95])
def test_lewis_is_an_exponential(share):
    expected = math.log(math.log(1 - share) / math.log(0.5))
    assert ALL["lewis"].log_time(share) == pytest.approx(expected, abs=3e-3)


@pytest.mark.parametrize("share", [0.1, 0.3, 0.7, 0.95])
def test_page_is_an_exponential_of_a_power(share):
    expected = math.log(math.log(1 - share) / math.log(0.5)) / 0.75
    assert ALL["page-0.75"].log_time(share) == pytest.approx(expected, abs=4e-3)


@pytest.mark.parametrize("form", ["slab", "cylinder", "sphere"])
def test_diffusion_is_cranks(form):
    half = next(place / 1e5 for place in range(1, 100_000) if left_in(form, place / 1e5) <= 0.5)
    for times in (0.3, 2.0, 4.0):
        assert ALL[form].gone(math.log(times)) == pytest.approx(1 - left_in(form, half * times), abs=2e-3)


def test_a_rate_that_falls_with_the_square_takes_the_printed_times():
    """c = 55 %: to 85 % and to 70 % of the weight, computed by integrating the printed rate."""
    times = [math.exp(ALL["square"].log_time(lost / 0.45)) for lost in (0.15, 0.30)]
    assert times[1] / times[0] == pytest.approx(28.52918 / 9.321227, rel=5e-3)


def test_the_thicker_the_rind_the_slower_the_end():
    ends = [ALL[f"rind-{rind}"].log_time(0.9) for rind in ("0.4", "0.8", "1.5", "3", "6", "12")]
    assert ends == sorted(ends)
