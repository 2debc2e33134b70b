"""Sugar for a pH as a range with both its ends, whether 5.3 is in reach, and starter to weigh."""

import pytest

from core.mix.starter import starter
from core.mix.sugar import SUGARS, Sugar, ph_from, reach, sugar_for
from core.quantities import METRIC
from core.refusals import OutOfRange
from core.working import Figure
from tests.core.telling import in_words


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
    assert any("disagree" in said for said in in_words(sugar_for(5.8, 5.0)[0].cautions))


def test_sugar_with_crystal_water_takes_more():
    assert sugar_for(5.8, 5.0, "dextrose-water")[0].high == pytest.approx(sugar_for(5.8, 5.0)[0].high * 198.17 / 180.16)


def test_table_sugar_makes_a_little_more_acid():
    assert sugar_for(5.8, 5.0, "sucrose")[0].high < sugar_for(5.8, 5.0)[0].high


@pytest.mark.parametrize(
    ("share", "said"), [(0.0, "will never reach"), (0.0005, "will never"), (0.002, "may not reach")]
)
def test_too_little_sugar_for_5_3_is_told(share: float, said: str):
    assert said in in_words(ph_from(5.8, share)[0].cautions)[0]


def test_sugar_enough_for_5_3_by_both_ends_is_not_warned_of():
    assert "reach" not in in_words(ph_from(5.8, 0.006)[0].cautions)[0]


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
    assert in_words(starter(12.4, 0.025, 100.0, 1e9)[-1].cautions)


def test_less_than_half_a_gram_is_to_be_stirred_into_water():
    assert any("whole packet" in said for said in in_words(starter(1.0, 0.025, 100.0)[0].cautions))


def test_more_than_half_a_per_cent_is_refused():
    with pytest.raises(OutOfRange) as caught:
        starter(10.0, 0.1, 10.0)
    assert caught.value.field == "packet_for_kg"


def said(figure: Figure) -> list[str]:
    return [step.say(METRIC, 5) for step in figure.working]


def test_sugar_for_a_ph_worked_by_hand():
    """0.8 of pH by table sugar: 4 mol of acid from 0.3423 kg are 11.686 mol/kg, dextrose makes 11.101."""
    between, by_buffer, by_rule = sugar_for(5.8, 5.0, "sucrose")
    assert (between.low, between.value, between.high) == pytest.approx((2.80686e-3, 5.20339e-3, 7.59991e-3), rel=1e-5)
    assert (by_buffer.low, by_buffer.value, by_buffer.high) == pytest.approx(
        (2.80686e-3, 3.38877e-3, 3.97068e-3), rel=1e-5
    )
    assert by_rule.value == pytest.approx(7.59991e-3, rel=1e-5)


def test_the_working_of_sugar_for_a_ph():
    between, by_buffer, by_rule = sugar_for(5.8, 5.0, "sucrose")
    fall = "pH to lose: 5.8 − 5.0 = 0.8"
    assert said(between) == [
        fall,
        "Between 2.8069 g/kg by the buffer and 7.5999 g/kg by the rule; the middle is 5.2034 g/kg",
    ]
    assert said(by_buffer) == [
        fall,
        "A gram of it makes 11.686 mmol of lactic acid",
        "Fall × buffer ÷ acid, in mmol: 0.8 × 41 ÷ 11.686 = 2.8069 g/kg; 0.8 × 58 ÷ 11.686 = 3.9707 g/kg",
    ]
    assert said(by_rule) == [fall, "1 g/kg of dextrose for each 0.1: 0.8 ÷ 0.1 × 0.94999 = 7.5999 g/kg"]


def test_the_ph_of_a_sugar_worked_by_hand():
    """2 g/kg of table sugar: 0.21053 of pH by the rule; by the buffer 23.371 mmol of acid and 11.101 of the meat's."""
    (ph,) = ph_from(5.8, 0.002, "sucrose")
    assert (ph.low, ph.value, ph.high) == pytest.approx((4.95921, 5.27434, 5.58947), abs=1e-5)
    assert said(ph) == [
        "By the rule of thumb, 0.1 for a gram to the kilogram: 5.8 less 2 g/kg makes 5.5895",
        "All of it and the meat's own 1 g/kg turned to lactic acid, 34.473 mmol/kg, against 41 mmol/(pH kg): "
        "5.8 − 34.473 ÷ 41 = 4.9592",
    ]


@pytest.mark.parametrize(
    ("low_ph", "high_ph", "words"),
    [(5.301, 5.8, "will never reach"), (5.3, 5.8, "may not reach"), (4.9, 5.301, "may not reach"), (4.9, 5.3, "")],
)
def test_whether_5_3_is_in_reach_goes_by_both_ends(low_ph: float, high_ph: float, words: str):
    told = reach(low_ph, high_ph)
    assert (words in told[0]) if words else (told == ())


@pytest.mark.parametrize(
    ("start_ph", "wanted_ph"), [(5.0, 4.9), (7.0, 6.9), (5.8, 4.5)], ids=["lowest start", "highest start", "lowest"]
)
def test_the_ends_of_the_ph_are_let_through(start_ph: float, wanted_ph: float):
    assert sugar_for(start_ph, wanted_ph)[0].value > 0


@pytest.mark.parametrize(
    ("start_ph", "wanted_ph", "field"),
    [(4.999, 4.6, "start_ph"), (7.001, 6.0, "start_ph"), (5.8, 4.499, "wanted_ph"), (5.8, 5.8, "wanted_ph")],
)
def test_a_hair_beyond_them_is_refused(start_ph: float, wanted_ph: float, field: str):
    with pytest.raises(OutOfRange) as caught:
        sugar_for(start_ph, wanted_ph)
    assert caught.value.field == field


def test_starter_worked_by_hand():
    grams, share, cells = starter(12.0, 0.025, 100.0, 1e11)
    assert (grams.value, share.value, cells.value) == pytest.approx((0.003, 0.00025, 2.5e7))
    assert [line for each in (grams, share, cells) for line in said(each)] == [
        "Packet ÷ meat it is for × meat: 25 g ÷ 100 kg × 12 kg = 3 g",
        "3 g ÷ 12 kg = 0.025 %; at most 0.5 % in the US",
        "log of the culture 11 + log of the share 0.00025 = 7.3979",
    ]


@pytest.mark.parametrize(("packet_kg", "cautions"), [(0.0005, 1), (0.000499, 2)])
def test_half_a_gram_is_weighed_and_less_is_stirred_into_water(packet_kg: float, cautions: int):
    assert len(in_words(starter(1.0, packet_kg, 1.0)[0].cautions)) == cautions


@pytest.mark.parametrize(("cells_per_gram", "few"), [(4.0e9, False), (3.99e9, True)])
def test_a_million_to_the_gram_is_enough(cells_per_gram: float, few: bool):
    """0.00025 of the meat."""
    assert bool(in_words(starter(12.0, 0.025, 100.0, cells_per_gram)[2].cautions)) is few


@pytest.mark.parametrize("packet_kg", [0.005, 0.00501])
def test_half_a_per_cent_may_go_in_and_no_more(packet_kg: float):
    """9 CFR 424.21(c)."""
    if packet_kg <= 0.005:
        assert starter(3.0, packet_kg, 1.0)[1].value == pytest.approx(0.005)
        return
    with pytest.raises(OutOfRange) as caught:
        starter(3.0, packet_kg, 1.0)
    assert caught.value.field == "packet_for_kg"


@pytest.mark.parametrize(
    ("sugar", "acid"), [("dextrose", 11.1012), ("dextrose-water", 10.0924), ("sucrose", 11.6857), ("lactose", 11.1016)]
)
def test_the_acid_of_a_kilogram_by_its_molar_mass(sugar: Sugar, acid: float):
    """180.16, 198.17, 342.30 and 360.31 g/mol; two of lactic acid from each six carbons."""
    assert SUGARS[sugar].acid_mol_per_kg == pytest.approx(acid, abs=1e-4)
