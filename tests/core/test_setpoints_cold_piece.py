"""A cold piece in warm air: the range given holds what a finer model finds."""

import math

import pytest

from core.chamber.cold_piece import SO_NEAR, STAYS_DRY, WET_LONGER, WIPE_IT, cold_piece, time_constant_s
from core.chamber.film import film, latent_heat_j_kg
from core.chamber.setpoint_sheets import COLD_PIECE
from core.quantities import METRIC
from core.refusals import OutOfRange
from core.vapour import absolute_humidity_kg_m3, dew_point_c
from tests.core.telling import in_words

RADIATION_W_M2K = 5.0


def wet_for_s(piece_c: float, air_c: float, humidity: float, thickness_m: float, speed_m_s: float) -> float:
    """Heat conducted through twelve rings of a cylinder, warmed by air, by radiation and by what dews on it."""
    around, rings = film(thickness_m, speed_m_s, air_c), 12
    width = thickness_m / 2 / rings
    diffusivity = 0.45 / (1050 * 3500)
    step_s = 0.4 * width**2 / diffusivity / 2
    rings_c, moist, dew_c = [piece_c] * rings, absolute_humidity_kg_m3(air_c, humidity), dew_point_c(air_c, humidity)
    elapsed_s, surface_c = 0.0, piece_c
    while surface_c < dew_c:
        dews = around.vapour_m_s * max(0.0, moist - absolute_humidity_kg_m3(surface_c, 1.0))
        warms = (around.heat_w_m2k + RADIATION_W_M2K) * (air_c - surface_c) + latent_heat_j_kg(surface_c) * dews
        flows = [0.0, *(k * (rings_c[k] - rings_c[k - 1]) / width * diffusivity for k in range(1, rings))]
        flows.append(rings * warms / (1050 * 3500))
        rings_c = [
            each + step_s * (flows[k + 1] - flows[k]) / ((2 * k + 1) / 2 * width) for k, each in enumerate(rings_c)
        ]
        surface_c = 0.7 * surface_c + 0.3 * (rings_c[-1] + warms * width / 2 / 0.45)
        elapsed_s += step_s
    return elapsed_s


@pytest.mark.parametrize("speed_m_s", [0.05, 0.2, 0.5])
@pytest.mark.parametrize("thickness_m", [0.04, 0.06, 0.12])
@pytest.mark.parametrize(("piece_c", "air_c", "humidity"), [(2.0, 22.0, 0.9), (4.0, 13.0, 0.8), (2.0, 24.0, 0.6)])
def test_the_range_holds_what_conduction_and_dew_together_come_to(piece_c, air_c, humidity, thickness_m, speed_m_s):
    figure = cold_piece(piece_c, air_c, humidity, thickness_m)[0]
    assert figure.low <= wet_for_s(piece_c, air_c, humidity, thickness_m, speed_m_s) <= figure.high


def test_a_cold_sausage_in_a_warm_fermenting_room_is_wet_for_hours():
    figure = cold_piece(2.0, 22.0, 0.9, 0.06)[0]
    assert (figure.show(METRIC), WIPE_IT in in_words(figure.cautions)) == ("3.1 h", True)


def test_a_piece_warmer_than_the_dew_point_stays_dry():
    figure = cold_piece(15.0, 20.0, 0.5, 0.06)[0]
    assert (figure.value, in_words(figure.cautions)) == (0.0, (STAYS_DRY,))


def test_a_piece_just_above_the_dew_point_is_said_to_be_near():
    near_c = dew_point_c(20.0, 0.5) + 0.2
    assert SO_NEAR in in_words(cold_piece(near_c, 20.0, 0.5, 0.06)[0].cautions)


def test_a_piece_just_below_the_dew_point_is_said_to_be_near():
    near_c = dew_point_c(20.0, 0.5) - 0.2
    assert SO_NEAR in in_words(cold_piece(near_c, 20.0, 0.5, 0.06)[0].cautions)


def test_a_film_that_is_given_is_allowed_half_and_twice():
    figures = {figure.key: figure for figure in cold_piece(2.0, 22.0, 0.9, 0.06, 10.0)}
    assert figures["warming"].high == pytest.approx(4 * figures["warming"].low)


@pytest.mark.parametrize(
    ("arguments", "field"),
    [
        ((-1.1, 22.0, 0.9, 0.06), "piece"),
        ((2.0, 22.0, 1.0, 0.06), "humidity"),
        ((2.0, 22.0, 0.9, 0.009), "thickness"),
        ((2.0, 22.0, 0.9, 0.06, 1.0), "film"),
        ((2.0, 61.0, 0.9, 0.06), "temperature"),
    ],
)
def test_what_cannot_be_is_refused_by_field(arguments, field: str):
    with pytest.raises(OutOfRange) as caught:
        cold_piece(*arguments)
    assert caught.value.field == field


def test_frozen_meat_is_said_to_thaw_first():
    with pytest.raises(OutOfRange, match="Frozen meat thaws first"):
        cold_piece(-5.0, 22.0, 0.9, 0.06)


def test_the_sheet_answers_in_inches():
    assert COLD_PIECE.answer(
        {"piece": "36 °F", "thickness": "2.5 in", "temperature": "72 °F", "humidity": "90"}
    ).figures


def test_lean_meat_of_60_mm_comes_nearer_in_so_many_seconds():
    """1050 kg/m³ × 3500 J/(kg K) × 0.06 m ÷ (4 × 12 W/(m² K)); the figures of meat are from memory."""
    assert time_constant_s(0.06, 12.0) == pytest.approx(4593.75, rel=1e-9)


def test_the_range_is_that_of_still_and_brisk_air():
    wet, _, warming = cold_piece(2.0, 22.0, 0.9, 0.06)
    lead = math.log(20.0 / (22.0 - dew_point_c(22.0, 0.9)))
    ahead = 1 + 35.0 * 0.03 / (4 * 0.45)
    assert wet.value == pytest.approx(4593.75 * lead, rel=1e-6)
    assert wet.high == pytest.approx(9187.5 * lead, rel=1e-6)
    assert wet.low == pytest.approx(1575.0 * ahead * (lead - math.log(ahead)), rel=1e-6)
    assert (warming.low, warming.value, warming.high) == pytest.approx((1575.0, 4593.75, 9187.5), rel=1e-9)


def test_a_film_that_is_given_ranges_from_half_of_it_to_twice():
    warming = cold_piece(2.0, 22.0, 0.9, 0.06, 10.0)[2]
    assert (warming.low, warming.value, warming.high) == pytest.approx((2756.25, 5512.5, 11025.0), rel=1e-9)


def test_where_the_surface_runs_far_ahead_it_may_be_wet_for_no_time_at_all():
    assert cold_piece(dew_point_c(22.0, 0.6) - 0.5, 22.0, 0.6, 0.3)[0].low == 0.0


@pytest.mark.parametrize(
    ("colder_k", "cautions"),
    [
        (-0.87, (STAYS_DRY,)),  # the hygrometer's error moves this dew point by 0.8675 K
        (-0.86, (STAYS_DRY, SO_NEAR)),
        (0.0, (STAYS_DRY, SO_NEAR)),
        (1e-9, (SO_NEAR, WET_LONGER, WIPE_IT)),
        (0.996, (SO_NEAR, WET_LONGER, WIPE_IT)),
        (1.0, (WET_LONGER, WIPE_IT)),
    ],
)
def test_a_kelvin_under_the_dew_point_and_the_error_above_it_are_near(colder_k: float, cautions: tuple[str, ...]):
    assert in_words(cold_piece(dew_point_c(20.0, 0.5) - colder_k, 20.0, 0.5, 0.06)[0].cautions) == cautions


def test_at_the_upper_end_of_the_dew_point_it_is_near_no_more():
    dry = cold_piece(15.0, 20.0, 0.5, 0.06)[1]
    assert SO_NEAR not in in_words(cold_piece(dry.high, 20.0, 0.5, 0.06)[0].cautions)


@pytest.mark.parametrize(
    ("arguments", "field"),
    [
        ((-1.0, 22.0, 0.9, 0.06), None), ((-1.001, 22.0, 0.9, 0.06), "piece"),
        ((60.0, 22.0, 0.9, 0.06), None), ((60.01, 22.0, 0.9, 0.06), "piece"),
        ((2.0, 22.0, 0.9, 0.01), None), ((2.0, 22.0, 0.9, 0.00999), "thickness"),
        ((2.0, 22.0, 0.9, 0.3), None), ((2.0, 22.0, 0.9, 0.3001), "thickness"),
        ((2.0, 22.0, 0.9, 0.06, 2.0), None), ((2.0, 22.0, 0.9, 0.06, 1.999), "film"),
        ((2.0, 22.0, 0.9, 0.06, 60.0), None), ((2.0, 22.0, 0.9, 0.06, 60.01), "film"),
        # the dew point 0.1005 and 0.0995 K under the air
        ((2.0, 20.0, 0.993789, 0.06), None), ((2.0, 20.0, 0.993851, 0.06), "humidity"),
    ],
)  # fmt: skip
def test_each_limit_has_a_hair_on_either_side(arguments: tuple[float, ...], field: str | None):
    try:
        cold_piece(*arguments)
        refused = None
    except OutOfRange as refusal:
        refused = refusal.field
    assert refused == field


def test_what_stays_dry_is_wet_for_no_time_at_the_least_and_at_the_most():
    figure = cold_piece(15.0, 20.0, 0.5, 0.06)[0]
    assert (figure.low, figure.value, figure.high) == (0.0, 0.0, 0.0)
