"""Diffusion against an independent finite-difference solution, and its long and short ends."""

import math
from itertools import pairwise

import pytest

from core.mix import diffusion
from core.mix.salting import Piece, centre_curve, centre_share, diffusivity, equalised, time_to
from core.mix.salting_rules import by_rule, minimums, turns
from core.mix.salting_sheets import SALTING, salting_figures
from core.quantities import METRIC
from core.refusals import Missing, OutOfRange, Refused
from tests.core.telling import in_words

CELLS = 60


def stepped(fo: float, shape: str, method: str) -> float:
    """The centre by explicit finite volumes from the middle (0) to the surface (1); no series, no roots."""
    width = 1 / CELLS
    power = 1 if shape == "cylinder" else 0
    face = [(each * width) ** power for each in range(CELLS + 1)]
    volume = [
        (((each + 1) * width) ** (power + 1) - (each * width) ** (power + 1)) / (power + 1) for each in range(CELLS)
    ]
    held = [0.0] * CELLS
    if method == "weighed":
        held[-1] = sum(volume) / volume[-1]
    steps = math.ceil(fo / (0.2 * width * width))
    step = fo / steps
    for _ in range(steps):
        flow = [0.0, *(face[each] * (held[each] - held[each - 1]) / width for each in range(1, CELLS)), 0.0]
        if method == "excess":
            flow[-1] = face[-1] * (1.0 - held[-1]) / (width / 2)
        held = [held[each] + step * (flow[each + 1] - flow[each]) / volume[each] for each in range(CELLS)]
    return held[0] + (held[0] - held[1]) * (0.125 if power == 0 else 1 / 6)


@pytest.mark.parametrize("fo", [0.05, 0.2, 0.6])
@pytest.mark.parametrize("shape", ["slab", "cylinder"])
@pytest.mark.parametrize("method", ["excess", "weighed"])
def test_the_series_agree_with_finite_differences(fo: float, shape: str, method: str):
    piece = Piece(shape, 2.0 / 10)  # type: ignore[arg-type]
    series = centre_share(piece, method, 1e-10, fo * 0.1**2 / 1e-10)  # type: ignore[arg-type]
    tolerance = 3e-4 if method == "weighed" else 1e-4  # weighed, the salt lies in a cell, not on the face
    assert series == pytest.approx(stepped(fo, shape, method), abs=tolerance)


def test_at_the_start_nothing_has_come_to_the_centre():
    assert (diffusion.slab_centre(0.0), diffusion.cylinder_centre(0.0)) == (1.0, 1.0)
    assert (diffusion.sealed_slab_centre(0.0), diffusion.sealed_cylinder_centre(0.0)) == (0.0, 0.0)


@pytest.mark.parametrize("each", [diffusion.slab_mean, diffusion.cylinder_mean])
def test_for_a_short_time_the_root_of_time_counts(each):
    factor = 2 if each is diffusion.slab_mean else 4
    assert 1 - each(1e-6) == pytest.approx(factor * math.sqrt(1e-6 / math.pi), rel=1e-3)


@pytest.mark.parametrize(
    ("each", "first"), [(diffusion.slab_mean, (math.pi / 2) ** 2), (diffusion.cylinder_mean, 2.404825557695773**2)]
)
def test_for_a_long_time_one_term_is_left(each, first: float):
    assert each(2.1) / each(2.0) == pytest.approx(math.exp(-first * 0.1), rel=1e-9)


@pytest.mark.parametrize(
    "each", [diffusion.slab_mean, diffusion.cylinder_mean, diffusion.slab_centre, diffusion.cylinder_centre]
)
def test_the_short_form_meets_the_series(each):
    assert each(0.000999999) == pytest.approx(each(0.001), abs=1e-5)


def test_long_after_everything_is_even():
    assert diffusion.sealed_slab_centre(3.0) == pytest.approx(1.0)
    assert diffusion.sealed_cylinder_centre(3.0) == pytest.approx(1.0)


def test_time_before_the_start_is_refused():
    with pytest.raises(OutOfRange):
        diffusion.slab_mean(-0.1)


def test_bessel_is_as_good_as_tables():
    assert diffusion.bessel(0, 1.0) == pytest.approx(0.7651976865579666, abs=1e-15)
    assert diffusion.bessel(1, 10.0) == pytest.approx(0.0434727461688614, abs=1e-14)


def test_a_block_in_plenty_of_salt_is_quicker_than_its_thickness_alone():
    block, slab = Piece("block", 0.06, 0.08, 0.1), Piece("slab", 0.06)
    assert time_to(block, "excess", 2e-10, 0.9) < time_to(slab, "excess", 2e-10, 0.9)


def test_a_wide_block_in_plenty_of_salt_is_a_slab():
    block, slab = Piece("block", 0.03, 1.0, 1.0), Piece("slab", 0.03)
    assert time_to(block, "excess", 2e-10, 0.9) == pytest.approx(time_to(slab, "excess", 2e-10, 0.9))


def test_a_cube_with_weighed_salt_is_as_slow_as_a_slab_of_its_side():
    block, slab = Piece("block", 0.06, 0.06, 0.06), Piece("slab", 0.06)
    assert time_to(block, "weighed", 2e-10, 0.9) == pytest.approx(time_to(slab, "weighed", 2e-10, 0.9))


def test_twice_as_thick_takes_four_times_as_long():
    assert time_to(Piece("slab", 0.1), "weighed", 2e-10, 0.9) == pytest.approx(
        4 * time_to(Piece("slab", 0.05), "weighed", 2e-10, 0.9)
    )


def test_colder_is_slower():
    assert diffusivity(0.0) < diffusivity(3.0) == 2e-10 < diffusivity(8.0)


def test_days_come_with_the_spread_of_published_diffusivities():
    days = equalised(Piece("slab", 0.05), "weighed", 3.0, 0.95)[0]
    assert (days.low or 0) < days.value < (days.high or 0)
    assert days.value / 86400 == pytest.approx(13.5, abs=0.05)


@pytest.mark.parametrize(("temperature_c", "said"), [(6.0, "spoil inside"), (2.17, "count no day"), (3.0, "")])
def test_out_of_the_cold_it_warns(temperature_c: float, said: str):
    cautions = in_words(equalised(Piece("slab", 0.05), "weighed", temperature_c, 0.9)[0].cautions)
    assert any(said in each for each in cautions)
    assert (len(cautions) == 1) is (said == "")


def test_a_block_without_a_width_is_asked_for_it():
    with pytest.raises(Missing, match="width"):
        centre_share(Piece("block", 0.05), "excess", 2e-10, 1.0)


@pytest.mark.parametrize("share", [0.0, 1.0, float("nan")])
def test_no_share_or_all_of_it_is_refused(share: float):
    with pytest.raises(OutOfRange):
        time_to(Piece("slab", 0.05), "weighed", 2e-10, share)


def test_the_curve_begins_at_nothing_and_never_falls():
    shares = [share for _, share in centre_curve(Piece("cylinder", 0.06), "weighed", 2e-10, 40 * 86400)]
    assert shares[0] == 0
    assert all(later >= earlier - 1e-12 for earlier, later in pairwise(shares))


def test_without_a_weight_only_the_rule_by_thickness_speaks():
    assert [each.key for each in by_rule(None, 0.05)] == ["rule_inch"]


def test_a_small_ham_still_lies_28_days_by_the_official_method():
    figure = next(each for each in by_rule(2.0, None) if each.key == "rule_ham_method")
    assert figure.value / 86400 == 28


def test_days_in_all_hold_the_days_in_salt():
    with pytest.raises(OutOfRange) as caught:
        minimums("ham", "country", 50 * 86400, 40 * 86400)
    assert caught.value.field == "in_all_s"


def test_a_total_from_memory_says_so():
    assert any("from memory" in each for each in in_words(minimums("ham", "dry-cured", 0, 0)[1].cautions))


def test_a_bag_is_turned_every_other_day():
    assert turns("weighed", 14).value == 2 * 86400


@pytest.mark.parametrize("temperature_c", [-2.0, -0.01])
def test_below_freezing_how_fast_salt_moves_is_not_known(temperature_c: float):
    with pytest.raises(OutOfRange, match="is not known") as caught:
        diffusivity(temperature_c)
    assert caught.value.field == "temperature_c"
    assert diffusivity(0.0) > 0


@pytest.mark.parametrize("temperature", ["-2 °C", "28.4 °F", "-0.1 °C"])
def test_the_sum_says_not_known_beside_the_temperature(temperature: str):
    with pytest.raises(Refused, match="is not known") as caught:
        SALTING.answer({"thickness_m": "50 mm", "temperature_c": temperature})
    assert [each.field for each in caught.value.refusals] == ["temperature_c"]


@pytest.mark.parametrize(("share", "count"), [(0.9, "5 times"), (0.1, "1 time ")])
def test_it_is_turned_for_as_long_as_it_lies_in_salt(share: float, count: str):
    """A slab of 50 mm in a bag at 3 °C: 0.9 at Fo = ln 20 ÷ π² = 0.3035, 10.98 days; 0.1 at Fo ≈ 0.066, 2.4 days."""
    (said,) = salting_figures("weighed", "slab", 0.05, None, None, 3.0, share, None)[-1].working
    assert f"{count}" in said.say(METRIC) + " "
