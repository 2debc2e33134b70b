"""Sugar for a pH as a range with both its ends, whether 5.3 is in reach, and starter to weigh."""

import pytest

from core.mix.starter import starter
from core.mix.sugar import ph_from, sugar_for
from core.quantities import METRIC
from core.refusals import OutOfRange


def test_the_rule_of_thumb_is_the_upper_end():
    between, _, by_rule = sugar_for(5.9, 4.9)
    assert between.high == by_rule.value == pytest.approx(0.010)


def test_the_least_buffer_is_the_lower_end():
    between, by_buffer, _ = sugar_for(5.9, 4.9)
    assert between.low == by_buffer.low == pytest.approx(0.041 * 0.18016 / 2)


def test_the_ends_disagree_by_about_two():
    _, by_buffer, by_rule = sugar_for(5.9, 4.9)
    assert 1.9 < by_rule.value / by_buffer.high < 2.1


def test_a_range_says_why_it_is_one():
    assert any("disagree" in said for said in sugar_for(5.8, 5.0)[0].cautions)


def test_sugar_with_crystal_water_takes_more():
    assert sugar_for(5.8, 5.0, "dextrose-water")[0].high == pytest.approx(sugar_for(5.8, 5.0)[0].high * 198.17 / 180.16)


def test_table_sugar_makes_a_little_more_acid():
    assert sugar_for(5.8, 5.0, "sucrose")[0].high < sugar_for(5.8, 5.0)[0].high


@pytest.mark.parametrize(
    ("share", "said"), [(0.0, "will never reach"), (0.0005, "will never"), (0.002, "may not reach")]
)
def test_too_little_sugar_for_5_3_is_told(share: float, said: str):
    assert said in ph_from(5.8, share)[0].cautions[0]


def test_sugar_enough_for_5_3_by_both_ends_is_not_warned_of():
    assert "reach" not in ph_from(5.8, 0.006)[0].cautions[0]


def test_the_ph_is_shown_between_both_ends():
    (ph,) = ph_from(5.8, 0.005)
    assert (ph.low, ph.high) == (pytest.approx(4.5), pytest.approx(5.3))


def test_no_sausage_goes_below_the_ph_at_which_starters_stop():
    assert ph_from(5.8, 0.05)[0].low == 4.5


@pytest.mark.parametrize(
    ("start", "wanted", "field"), [(4.0, 3.9, "start_ph"), (5.8, 5.9, "wanted_ph"), (5.8, 4.0, "wanted_ph")]
)
def test_a_ph_no_mix_has_is_refused(start: float, wanted: float, field: str):
    with pytest.raises(OutOfRange) as caught:
        sugar_for(start, wanted)
    assert caught.value.field == field


def test_starter_goes_by_what_its_packet_is_for():
    assert starter(12.4, 0.025, 100.0)[0].show(METRIC) == "3.10 g"


def test_cells_are_told_where_the_label_tells_them():
    assert starter(12.4, 0.025, 100.0, 1e11)[-1].value == pytest.approx(2.5e7)


def test_fewer_than_a_million_cells_are_warned_of():
    assert starter(12.4, 0.025, 100.0, 1e9)[-1].cautions


def test_less_than_half_a_gram_is_to_be_stirred_into_water():
    assert any("whole packet" in said for said in starter(1.0, 0.025, 100.0)[0].cautions)


def test_more_than_half_a_per_cent_is_refused():
    with pytest.raises(OutOfRange) as caught:
        starter(10.0, 0.1, 10.0)
    assert caught.value.field == "packet_for_kg"
