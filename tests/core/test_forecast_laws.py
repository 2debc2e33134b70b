"""Laws of the forecast: no order of entries matters, lighter is never later, more is never sooner."""

import math

from hypothesis import given, settings
from hypothesis import strategies as st

from core.dry.curve import Hung, fit
from core.dry.forecast import forecast, loss_by
from core.dry.pace import MIDDLING
from core.dry.shapes import shapes
from core.units import DAY_S
from tests.core.drying_pieces import CELLAR, TWELVE, losing, of


@given(st.permutations(losing(TWELVE).weighings))
def test_the_order_of_the_weighings_does_not_matter(weighings):
    assert of(Hung(0.8, tuple(weighings))) == of(losing(TWELVE))


@given(st.integers(1, 6), st.floats(0.0, 0.004))
def test_a_lighter_last_weighing_never_postpones_the_day(count, lighter_kg):
    piece = losing(TWELVE[:count])
    *before, (at_s, mass_kg) = piece.weighings
    lighter = Hung(0.8, (*before, (at_s, mass_kg - lighter_kg)))
    assert of(lighter).likely_s <= of(piece).likely_s * 1.005


@given(st.floats(0.1, 0.38), st.floats(0.1, 0.38))
def test_a_greater_target_is_met_later(one, other):
    less, more = sorted((one, other))
    known = fit([losing(TWELVE)], CELLAR)
    days = [forecast(known, 0, target).likely_s for target in (less, more)]
    assert days[0] <= days[1] * 1.002


@given(st.integers(0, 5))
def test_a_case_knows_its_half_time_no_worse_for_one_more_weighing(count):
    fewer, more = (fit([losing(TWELVE[:each])], CELLAR) for each in (count, count + 1))
    spreads = [min(case.halves[0][1] for case in known.cases) for known in (fewer, more)]
    assert spreads[1] <= spreads[0]


@given(st.floats(19, 100), st.floats(19, 100))
def test_the_loss_forecast_grows_with_time(one, other):
    known = fit([losing(TWELVE)], CELLAR)
    earlier, later = sorted((one, other))
    losses = [loss_by(known, 0, each * DAY_S, 0.5) for each in (earlier, later)]
    assert losses[0] <= losses[1] + 1e-6


@settings(max_examples=60)
@given(st.sampled_from(shapes(0.78, MIDDLING)[:5]), st.floats(7, 25), st.integers(2, 9))
def test_a_piece_that_dries_by_the_model_is_never_thrown_off_its_day_by_one_more_weight(shape, half_d, count):
    true_d = half_d * math.exp(shape.log_time(0.35 / 0.44))
    days = tuple(day for day in (1, 2, 4, 6, 8, 11, 14, 18, 22, 27) if day < 0.95 * true_d)[: count + 1]
    before, after = (of(losing(each, half_d, shape=shape)).likely_s for each in (days[:-1], days))
    off_before, off_after = (abs(math.log(each / DAY_S / true_d)) for each in (before, after))
    assert off_after <= off_before + 0.05
