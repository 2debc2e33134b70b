"""Water activity and composition as figures: values, ranges, cautions and what is refused."""

import pytest

from core.dry.activity import MISSES, MISSES_DRY, Mix, is_moist
from core.dry.activity_figures import (
    EVEN,
    INDICATIVE,
    INGOING,
    MEASURED_FIRST,
    NO_MEASURE_OF_SAFETY,
    TOO_DRY_FOR_IT,
    WORKED_OUT,
    dried_composition,
    end_of_drying,
    loss_wanted,
    water_activity,
)
from core.quantities import METRIC
from core.refusals import OutOfRange
from core.worksheets import find
from tests.core.telling import in_words

SAUSAGE = Mix(water=0.58, salt=0.028)


def keyed(figures):
    return {figure.key: figure for figure in figures}


def composed(**changes):
    given = {"water": 0.58, "salt": 0.028, "loss": 0.35, "protein": 0.16, "fat": 0.22, "nitrite": 120e-6}
    return keyed(dried_composition(**{**given, **changes}))


def test_a_water_activity_worked_out_carries_its_honest_error():
    (figure, *_) = water_activity(SAUSAGE, 0.35)
    assert (figure.low, figure.high) == pytest.approx((figure.value - MISSES, figure.value + MISSES))


def test_so_dry_that_real_pieces_were_moister_its_range_reaches_further_up():
    (figure, *_) = water_activity(SAUSAGE, 0.42)
    assert (figure.low, figure.high) == pytest.approx((figure.value - MISSES, figure.value + MISSES_DRY))
    assert in_words(figure.cautions) == (TOO_DRY_FOR_IT, EVEN)


@pytest.mark.parametrize(("loss", "moist"), [(0.399, True), (0.401, False)])
def test_the_line_is_thirty_per_cent_of_the_piece_as_it_is(loss, moist):
    assert is_moist(Mix(0.58, 0.028), loss) == moist


def test_a_loss_for_a_water_activity_reckons_with_the_greater_error_of_a_dry_piece():
    (moist,), (dry,) = loss_wanted(SAUSAGE, 0.90), loss_wanted(SAUSAGE, 0.85)
    assert in_words(moist.cautions)[0] == WORKED_OUT
    assert in_words(dry.cautions)[0] == TOO_DRY_FOR_IT


def test_it_is_never_given_above_one():
    (figure, *_) = water_activity(Mix(0.75, 0.001), 0.0)
    assert figure.high == 1


def test_it_says_that_it_is_no_measurement_and_of_the_whole_piece():
    (figure, *_) = water_activity(SAUSAGE, 0.35)
    assert in_words(figure.cautions) == (WORKED_OUT, EVEN)


def test_what_was_measured_comes_first():
    first, second, *_ = water_activity(SAUSAGE, 0.35, 0.87)
    assert (first.value, first.key, second.key) == (0.87, "measured", "activity")
    assert in_words(first.cautions) == (MEASURED_FIRST,)


def test_a_mix_that_ferments_is_a_little_drier():
    values = [water_activity(Mix(0.58, 0.028, ferments=each), 0.35)[0].value for each in (True, False)]
    assert values[0] < values[1]


def test_a_loss_of_more_than_its_water_is_refused():
    with pytest.raises(OutOfRange) as caught:
        water_activity(SAUSAGE, 0.57)
    assert caught.value.field == "loss"


def test_the_loss_for_a_water_activity_lies_in_its_range():
    (figure,) = loss_wanted(SAUSAGE, 0.90)
    assert figure.low < figure.value < figure.high


def test_a_water_activity_below_what_salt_can_do_is_refused():
    with pytest.raises(OutOfRange) as caught:
        loss_wanted(Mix(0.58, 0.0, ferments=False), 0.76)
    assert caught.value.field == "wanted"


def test_water_to_protein_of_the_printed_cases():
    """35.0 % water at 18.5 % protein is 1.89, 36 % is 1.95: the dry-sausage standard is 1.9."""
    dry, moist = (dried_composition(water, 0.0, 0.0, 0.185)[0] for water in (0.35, 0.36))
    assert (dry.show(METRIC), moist.show(METRIC)) == ("1.892", "1.946")


def test_water_to_protein_is_called_no_measure_of_safety():
    assert in_words(composed()["moisture_protein"].cautions) == (NO_MEASURE_OF_SAFETY,)


def test_the_parts_of_a_finished_kilogram_grow_as_water_leaves():
    before, after = composed(loss=0.0), composed()
    assert all(after[key].value > before[key].value for key in ("salt", "protein", "fat", "nitrite", "brine"))


def test_nitrite_counts_as_if_none_were_used_up():
    assert composed()["nitrite"].show(METRIC) == "185 ppm"
    assert in_words(composed()["nitrite"].cautions) == (INGOING,)


def test_fat_and_nitrite_may_be_left_out():
    assert not {"fat", "nitrite"} & composed(fat=None, nitrite=None).keys()


def test_parts_that_make_more_than_the_whole_are_refused():
    with pytest.raises(OutOfRange) as caught:
        composed(fat=0.4)
    assert caught.value.field == "protein"


def test_a_loss_of_all_the_water_is_refused():
    with pytest.raises(OutOfRange):
        composed(loss=0.58)


def test_where_the_air_ends_the_drying_is_indicative():
    (figure,) = end_of_drying(SAUSAGE, 12, 0.78)
    assert INDICATIVE in in_words(figure.cautions)
    assert (figure.high - figure.low) == pytest.approx(0.1)


def test_air_moister_than_the_mix_dries_it_not_at_all():
    assert end_of_drying(SAUSAGE, 12, 0.98)[0].value == 0


@pytest.mark.parametrize("name", ["dried-activity", "loss-for-activity", "dried-composition", "end-of-drying"])
def test_each_is_a_sum_by_itself(name):
    sheet = find(name)
    assert sheet.answer(sheet.example).figures
