"""Weight loss: what has gone, what is left, and weights that cannot be."""

import math

import pytest

from core.dry import rate, shrink
from core.quantities import METRIC
from core.refusals import OutOfRange
from tests.core.telling import in_words


def refused_field(call, *arguments) -> str:
    with pytest.raises(OutOfRange) as caught:
        call(*arguments)
    return caught.value.field


def test_850_of_1250_grams_is_32_per_cent():
    assert shrink.loss(1.25, 0.85).show(METRIC) == "32.0 %"


def test_the_loss_is_water():
    assert shrink.water_lost(1.25, 0.85).show(METRIC) == "400 g"


def test_what_is_left_is_the_yield():
    assert shrink.yield_(1.25, 0.85).value == pytest.approx(0.68)


def test_a_ham_of_ten_kilograms_that_lost_18_per_cent_weighs_8_2():
    assert shrink.target_weight(10.0, 0.18).value == pytest.approx(8.2)


def test_what_is_still_to_lose():
    assert shrink.remaining(1.25, 0.85, 0.35).value == pytest.approx(0.0375)


def test_past_the_target_nothing_is_still_to_lose():
    assert shrink.remaining(1.25, 0.7, 0.35).value == 0


def test_a_day_of_one_per_cent():
    assert rate.loss_rate(1.0, 0.90, 0.88, 2 * 86400) == pytest.approx(0.01 / 86400)


def test_a_gain_is_told_and_cautioned():
    gained = shrink.loss(1.0, 1.02)
    assert gained.value == pytest.approx(-0.02)
    assert in_words(gained.cautions) == (shrink.GAINED,)


def test_an_honest_loss_has_no_caution():
    assert not in_words(shrink.loss(1.0, 0.6).cautions)


@pytest.mark.parametrize(
    ("now_kg", "cautions"),
    [(1.0001, (shrink.GAINED,)), (1.0, ()), (0.25, ()), (0.2499, (shrink.TOO_DRY,))],
)
def test_a_gain_and_a_loss_past_all_water_are_cautioned_from_a_hair_on(now_kg: float, cautions: tuple[str, ...]):
    assert in_words(shrink.loss(1.0, now_kg).cautions) == cautions


def test_more_than_the_water_in_meat_is_cautioned():
    assert in_words(shrink.loss(1.0, 0.2).cautions) == (shrink.TOO_DRY,)


@pytest.mark.parametrize("bad", [0.0, -1.0, math.nan, math.inf, 1000.0])
def test_a_start_weight_that_is_none_is_refused(bad: float):
    assert refused_field(shrink.loss, bad, 1.0) == "start_kg"


@pytest.mark.parametrize("bad", [0.0, -1.0, math.nan, math.inf])
def test_a_weight_now_that_is_none_is_refused(bad: float):
    assert refused_field(shrink.loss, 1.0, bad) == "now_kg"


@pytest.mark.parametrize("bad", [-0.01, 0.76, 35.0, math.nan])
def test_a_target_that_no_meat_reaches_is_refused(bad: float):
    assert refused_field(shrink.target_weight, 1.0, bad) == "target_loss"


def test_the_sheet_without_a_target_tells_the_loss_alone():
    answer = shrink.SHRINK_SHEET.answer({"start_kg": "1250", "now_kg": "850", "target_loss": ""})
    assert [each.key for each in answer.figures] == ["loss", "water_lost", "yield"]


@pytest.mark.parametrize(("start_kg", "now_kg", "shown"), [(1.31, 0.95, "98 g"), (1.31, 0.9502, "98.7 g")])
def test_what_is_left_to_lose_is_told_no_finer_than_it_was_weighed(start_kg: float, now_kg: float, shown: str):
    assert shrink.remaining(start_kg, now_kg, 0.35).show(METRIC).replace("\u00a0", " ") == shown
