"""The day a piece meets its target: what is said, and when nothing is said."""

import math
from datetime import UTC, datetime, timedelta

import pytest

from core.dry.curve import NOTHING_LENT, Fit, Hung, fit
from core.dry.forecast import expected_loss, forecast, loss_by
from core.dry.lending import lend
from core.dry.outlook import ONLY_WEIGHT, outlook
from core.dry.pace import Air
from core.quantities import METRIC
from core.units import DAY_S
from tests.core.drying_pieces import CELLAR, RIND, TWELVE, losing, of

HUNG_AT = datetime(2026, 3, 1, 8, tzinfo=UTC)


def said(found) -> str:
    return " ".join(each.say(METRIC) for each in outlook(found, HUNG_AT))


def test_a_piece_that_dries_by_a_model_is_forecast_to_a_tenth():
    true_d = 14.0 * math.exp(RIND.log_time(0.35 / 0.44))
    assert of(losing(TWELVE)).likely_s / DAY_S == pytest.approx(true_d, rel=0.1)


def test_the_most_likely_day_lies_in_its_range():
    found = of(losing(TWELVE))
    assert found.earliest_s < found.likely_s < found.latest_s


def test_one_weighing_names_a_day_and_a_wide_range():
    found = of(losing((3,)))
    assert found.latest_s / found.earliest_s > 2


def test_not_weighed_yet_the_batch_lends_its_pace():
    mates = [losing(TWELVE) for _ in range(5)]
    alone, among = of(Hung(0.8)), of(Hung(0.8), *mates)
    assert among.latest_s / among.earliest_s < alone.latest_s / alone.earliest_s


def test_an_earlier_batch_lends_its_pace():
    lent = lend(fit([losing((*TWELVE, 25, 35), half_d=20) for _ in range(6)], CELLAR), CELLAR[0])
    slow = 20.0 * math.exp(RIND.log_time(0.35 / 0.44))
    assert of(Hung(0.8), lent=lent).likely_s / DAY_S == pytest.approx(slow, rel=0.2)


def test_what_an_earlier_batch_lends_is_no_surer_than_that_batch():
    lent = lend(fit([losing((2,))], CELLAR), CELLAR[0])
    assert 0.25 < lent.spread <= math.hypot(NOTHING_LENT.spread, 0.25)


def test_in_air_too_moist_for_the_target_no_day_is_named():
    found = of(losing(TWELVE, end=0.30), air=(Air(0, 12, 0.92),))
    assert found.likely_s is None
    assert "Not in this air" in said(found)


def hardened(days=(2, 4, 7, 10, 14, 18)) -> Hung:
    """It dries to the tenth day; then next to nothing leaves it."""
    piece = losing((2, 4, 7, 10))
    last_kg = piece.weighings[-1][1]
    stopped = tuple((d * DAY_S, last_kg - 0.0006 * (d - 10)) for d in days if d > 10)
    return Hung(0.8, piece.weighings + stopped)


def test_a_piece_whose_rim_shut_in_dry_air_is_not_sent_to_drier_air():
    words = said(of(hardened(), air=(Air(0, 12, 0.70),)))
    assert "Its rim may be dry" in words
    assert "Drier air would take" not in words


def test_a_piece_whose_rim_shut_has_no_day_within_sight():
    found = of(hardened(), air=(Air(0, 12, 0.70),))
    assert found.latest_s is None


def test_what_the_air_takes_does_not_follow_the_piece():
    dry = (Air(0, 12, 0.70),)
    assert of(hardened(), air=dry).air_takes == of(Hung(0.8), air=dry).air_takes


def test_where_the_air_may_fall_short_the_sentence_says_so():
    found = of(losing((2, 4)), air=(Air(0, 12, 0.87),))
    assert 0.5 < found.comes < 0.9
    assert "then the day never comes" in said(found)


def test_drier_air_from_now_on_brings_the_day_nearer():
    piece = losing((2, 4, 7, 10))
    drier = of(piece, air=(*CELLAR, Air(12 * DAY_S, 12, 0.70)))
    assert drier.likely_s < of(piece).likely_s


def test_a_piece_at_its_target_is_there_by_weight():
    found = of(losing((10, 80, 120)), target=0.30)
    assert found.is_there
    assert "reached by weight" in said(found)


@pytest.mark.parametrize("days", [(), (2,), TWELVE, (10, 80, 120)])
def test_it_always_says_that_it_speaks_of_weight_only(days):
    found = said(of(losing(days)))
    assert ONLY_WEIGHT in found


@pytest.mark.parametrize("days", [(), (2,), TWELVE, (10, 80, 120)])
def test_it_never_says_ready(days):
    assert "ready" not in said(of(losing(days))).lower()


def test_few_weighings_are_named():
    assert "Few weighings" in said(of(losing((2, 4))))


def test_none_is_named():
    assert "Not weighed yet" in said(of(Hung(0.8)))


def test_the_sentence_has_the_days():
    found = of(losing(TWELVE))
    likely = (HUNG_AT + timedelta(seconds=found.likely_s)).day
    assert f"about {likely} " in said(found)


def test_the_loss_that_is_expected_is_the_middle_of_what_is_forecast():
    known = fit([losing(TWELVE)], CELLAR)
    mean, spread = expected_loss(known, 0, 24 * DAY_S)
    assert mean == pytest.approx(loss_by(known, 0, 24 * DAY_S, 0.5), abs=0.004)
    assert 0 < spread < 0.02


def test_pieces_in_another_order_are_forecast_alike():
    pieces = [losing(TWELVE, half_d=half_d) for half_d in (10, 14, 20)]
    ways = [fit(each, CELLAR) for each in (pieces, pieces[::-1])]
    assert forecast(ways[0], 0, 0.35).likely_s == pytest.approx(forecast(ways[1], 2, 0.35).likely_s)


def test_the_weights_of_the_cases_add_to_one():
    assert sum(case.weight for case in fit([losing(TWELVE)], CELLAR).cases) == pytest.approx(1)


def test_no_weight_and_no_air_is_no_error():
    assert isinstance(fit([Hung(0.8)]), Fit)


def test_a_gain_at_the_first_weighing_is_no_error():
    assert of(Hung(0.8, ((DAY_S, 0.802),))).weighings == 1


def test_a_piece_that_slowed_is_said_to_come_later():
    words = [each.say(METRIC) for each in outlook(of(losing(TWELVE)), HUNG_AT, has_slowed=True)]
    assert any("comes later than this" in each for each in words)


def test_a_piece_hung_later_dries_as_if_it_had_been_hung_first():
    first = losing(TWELVE)
    later = Hung(0.8, tuple((at_s + 5 * DAY_S, kg) for at_s, kg in first.weighings), hung_s=5 * DAY_S)
    assert of(later).likely_s == pytest.approx(of(first).likely_s + 5 * DAY_S)


def test_before_its_first_weighing_its_days_count_from_its_own_hanging():
    assert of(Hung(0.8, hung_s=5 * DAY_S)).likely_s == pytest.approx(of(Hung(0.8)).likely_s + 5 * DAY_S)
