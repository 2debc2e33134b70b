"""Instruments: the fold of their checks, and the correction in force at a moment."""

import pytest

from core.chamber.checks import Correction
from core.daybook.due.instruments import instruments_due
from core.daybook.facts.instruments import (
    BoilingPointChecked,
    BuffersChecked,
    IcePointChecked,
    InstrumentAdded,
    InstrumentRecalibrated,
    InstrumentRetired,
    SaltChecked,
    TwoSaltsChecked,
)
from core.daybook.instrument_checks import Measured
from core.daybook.instruments import Shelf, fold_instrument, instruments
from core.quantities import METRIC
from tests.core.workshop import OVER_SALT_12, Workshop, day

PERFECT_MV = 177.478  # three units of pH at 25 °C: 3 × 59.1593 mV


@pytest.fixture
def shop() -> Workshop:
    return Workshop()


def correction(shop: Workshop, key: str, measured: Measured, at: float) -> Correction | None:
    return shop.instrument(key).correction(measured, day(at))


def offset(shop: Workshop, key: str, at: float, measured: Measured = "humidity") -> float | None:
    found = correction(shop, key, measured, at)
    return None if found is None else found.offset


def said(shop: Workshop, at: float) -> list[str]:
    lines = instruments_due(Shelf(shop.book).in_use(), day(at))
    told = [(line.words.say(METRIC), line.fact.say(METRIC)) for line in lines if line.fact and line.late(day(at))]
    return [f"{words}: {fact}" for words, fact in told]


def test_an_instrument_is_the_fold_of_its_entries(shop: Workshop):
    key = shop.add(probe="north")
    shop.salt(key)
    found = shop.instrument(key)
    assert (found.name, found.kind, found.added.probe) == ("Larder", "hygrometer", "north")
    assert [check.check.word for check in found.checks] == ["adjust"]


def test_before_any_check_nothing_is_corrected(shop: Workshop):
    key = shop.add()
    shop.salt(key, at=5)
    assert offset(shop, key, at=4.9) is None


def test_a_check_holds_from_its_own_moment(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=5)
    assert offset(shop, key, at=5) == pytest.approx(OVER_SALT_12 - 0.79, abs=1e-6)


def test_a_check_holds_until_the_next(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=5)
    shop.salt(key, 0.80, at=10)
    assert offset(shop, key, at=9.9) == pytest.approx(OVER_SALT_12 - 0.79, abs=1e-6)
    assert offset(shop, key, at=10) == pytest.approx(OVER_SALT_12 - 0.80, abs=1e-6)


def test_an_earlier_check_written_later_holds_for_its_own_days(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.80, at=10)
    shop.salt(key, 0.79, at=5)
    assert offset(shop, key, at=12) == pytest.approx(OVER_SALT_12 - 0.80, abs=1e-6)


def test_checks_stand_newest_first(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=5)
    shop.salt(key, 0.80, at=10)
    assert [check.at for check in shop.instrument(key).checks] == [day(10), day(5)]


def test_a_check_taken_back_is_none(shop: Workshop):
    key = shop.add()
    shop.take_back(shop.salt(key))
    assert shop.instrument(key).checks == ()


def test_a_check_corrected_counts_as_it_stands(shop: Workshop):
    key = shop.add()
    check = shop.salt(key, 0.97)
    shop.note(SaltChecked("nacl", 12.0, 0.80), key, 1, corrects=check, written=2)
    assert offset(shop, key, at=3) == pytest.approx(OVER_SALT_12 - 0.80, abs=1e-6)


@pytest.mark.parametrize(("reading_kg", "corrected"), [(1.005, False), (1.0051, True)])
def test_a_scale_that_passed_its_check_corrects_nothing(shop: Workshop, reading_kg: float, corrected: bool):
    key = shop.add("scale", "Bench")
    shop.weight(key, reading_kg)
    assert (correction(shop, key, "mass", 2) is not None) is corrected


@pytest.mark.parametrize(("over_salt", "corrected"), [(0.7863, False), (0.7868, True)])
def test_a_hygrometer_that_passed_its_check_corrects_nothing(shop: Workshop, over_salt: float, corrected: bool):
    key = shop.add()
    shop.salt(key, over_salt)
    assert (offset(shop, key, at=2) is not None) is corrected


def test_buffers_correct_the_ph_of_an_electrode_that_passed(shop: Workshop):
    """They judge the electrode: half a unit of pH may be left in the meter's setting."""
    key = shop.add("ph-meter", "Pen")
    shop.buffers(key, seven=7.1, four=4.1)
    assert shop.instrument(key).checks[0].check.word == "accept"
    assert offset(shop, key, at=2, measured="ph") is not None


@pytest.mark.parametrize(
    ("in_ice", "boiling", "by"),
    [
        (0.3, 99.8, "boiling check"),
        (0.5, 99.8, "ice and boiling check"),
        (0.3, 99.3, "ice and boiling check"),
    ],
)
def test_one_of_two_points_to_be_adjusted_draws_the_line_through_both(
    shop: Workshop, in_ice: float, boiling: float, by: str
):
    key = shop.add("thermometer")
    shop.ice(key, in_ice, at=1)
    shop.note(BoilingPointChecked(boiling, pressure_pa=101325.0), key, at=1.02)
    (check, _) = shop.instrument(key).checks
    assert (check.by, check.correction is not None) == (by, "ice" in by)


def test_a_failed_check_gives_no_correction(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    shop.salt(key, 0.90, at=5)
    assert shop.instrument(key).in_force("humidity", day(6)).check.word == "replace"  # type: ignore[union-attr]
    assert offset(shop, key, at=6) is None


def test_recalibrated_voids_what_was_found_before(shop: Workshop):
    key = shop.add()
    shop.salt(key, at=1)
    shop.note(InstrumentRecalibrated("calibrated"), key, at=5)
    assert offset(shop, key, at=4.9) is not None
    assert offset(shop, key, at=5) is None


def test_a_check_of_the_same_moment_as_the_setting_is_of_the_instrument_as_it_was_set(shop: Workshop):
    key = shop.add()
    shop.note(InstrumentRecalibrated(), key, at=5)
    shop.salt(key, 0.79, at=5)
    assert offset(shop, key, at=6) is not None


def test_each_time_it_was_recalibrated_counts(shop: Workshop):
    key = shop.add()
    shop.salt(key, at=1)
    shop.note(InstrumentRecalibrated(), key, at=5)
    shop.note(InstrumentRecalibrated(), key, at=9)
    assert offset(shop, key, at=6) is None


def test_a_check_passed_at_the_moment_of_the_reading_does_not_hide_the_next_that_failed(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.77, at=5)
    shop.salt(key, 0.95, at=6)
    assert shop.instrument(key).in_force("humidity", day(5)).failed  # type: ignore[union-attr]


def test_a_check_after_it_was_recalibrated_holds_again(shop: Workshop):
    key = shop.add()
    shop.note(InstrumentRecalibrated(), key, at=5)
    shop.salt(key, 0.79, at=6)
    assert offset(shop, key, at=6) is not None


def test_a_hygrometer_checked_in_ice_puts_its_temperature_right_too(shop: Workshop):
    key = shop.add()
    shop.ice(key, 0.5)
    shop.salt(key)
    warm, damp = correction(shop, key, "temperature", 2), correction(shop, key, "humidity", 2)
    assert warm is not None
    assert warm.apply(12.5) == pytest.approx(12.0)
    assert damp is not None
    assert damp.apply(0.82) == pytest.approx(0.82 + OVER_SALT_12 - 0.79, abs=1e-6)


@pytest.mark.parametrize("key", [None, "nobody"])
def test_an_instrument_nobody_knows_is_none(shop: Workshop, key: str | None):
    assert Shelf(shop.book).find(key) is None


def test_ice_and_boiling_water_on_one_day_give_one_line(shop: Workshop):
    key = shop.add("thermometer")
    shop.ice(key, 0.5, at=1)
    shop.note(BoilingPointChecked(99.3, pressure_pa=101325.0), key, at=1.02)
    found = correction(shop, key, "temperature", 2)
    assert found is not None
    assert shop.instrument(key).checks[0].by == "ice and boiling check"
    assert found.apply(0.5) == pytest.approx(0.0, abs=1e-9)
    assert found.apply(99.3) == pytest.approx(99.974, abs=0.001)


@pytest.mark.parametrize(("apart", "by"), [(1.0, "ice and boiling check"), (1.001, "boiling check")])
def test_ice_and_boiling_water_a_day_apart_are_one_session_and_no_longer(shop: Workshop, apart: float, by: str):
    """Common practice; no published source."""
    key = shop.add("thermometer")
    shop.ice(key, 0.5, at=1)
    shop.note(BoilingPointChecked(99.3, pressure_pa=101325.0), key, at=1 + apart)
    assert shop.instrument(key).checks[0].by == by


def test_a_failed_check_in_ice_makes_no_line_with_boiling_water(shop: Workshop):
    key = shop.add("thermometer")
    shop.ice(key, 9.0, at=1)
    shop.note(BoilingPointChecked(99.3, pressure_pa=101325.0), key, at=1.1)
    boiling, ice = shop.instrument(key).checks
    assert (ice.failed, boiling.by) == (True, "boiling check")


def test_recalibrated_between_ice_and_boiling_water_they_make_no_line(shop: Workshop):
    key = shop.add("thermometer")
    shop.ice(key, 0.5, at=1)
    shop.note(InstrumentRecalibrated(), key, at=1.05)
    shop.note(BoilingPointChecked(99.3, pressure_pa=101325.0), key, at=1.1)
    assert shop.instrument(key).checks[0].by == "boiling check"


def test_boiling_water_alone_gives_the_same_amount_everywhere(shop: Workshop):
    key = shop.add("thermometer")
    shop.ice(key, 0.5, at=1)
    shop.note(BoilingPointChecked(99.3, pressure_pa=101325.0), key, at=3)
    found = correction(shop, key, "temperature", 4)
    assert found is not None
    assert found.gain == 1.0


def test_two_salts_give_a_line(shop: Workshop):
    key = shop.add(tolerance_humidity=0.02)
    shop.note(TwoSaltsChecked("nacl", 20.0, 0.78, "kcl", 20.0, 0.864), key, at=1)
    found = correction(shop, key, "humidity", 2)
    assert found is not None
    assert found.apply(0.864) == pytest.approx(0.8511, abs=1e-4)


def test_two_buffers_put_a_shown_ph_right(shop: Workshop):
    key = shop.add("ph-meter", "Pen")
    shop.buffers(key, seven=7.1, four=4.1)
    found = correction(shop, key, "ph", 2)
    assert found is not None
    assert found.apply(5.3) == pytest.approx(5.2)


def test_a_check_in_millivolts_judges_the_electrode_and_leaves_the_shown_ph(shop: Workshop):
    key = shop.add("ph-meter", "Pen")
    shop.note(BuffersChecked("mv", 7.0, 25.0, 0.0, 4.0, 25.0, PERFECT_MV), key, at=1)
    assert shop.instrument(key).checks[0].check.word == "accept"
    assert correction(shop, key, "ph", 2) is None


def test_a_scale_is_corrected_by_its_weight(shop: Workshop):
    key = shop.add("scale", "Bench")
    shop.weight(key, 1.008)
    found = correction(shop, key, "mass", 2)
    assert found is not None
    assert found.apply(1.26) == pytest.approx(1.25)


def test_a_tolerance_of_ones_own_judges_the_check(shop: Workshop):
    strict = shop.add(tolerance_humidity=0.01)
    shop.salt(strict, 0.78)
    assert shop.instrument(strict).checks[0].check.word == "adjust"


def test_a_check_that_cannot_be_worked_out_is_no_check(shop: Workshop):
    key = shop.add()
    shop.note(SaltChecked("a-new-salt", 12.0, 0.79), key, at=1)
    assert shop.instrument(key).checks == ()


def test_a_check_of_another_kind_of_instrument_is_no_check(shop: Workshop):
    key = shop.add("scale")
    shop.note(IcePointChecked(0.3), key, at=1)
    assert shop.instrument(key).checks == ()


@pytest.mark.parametrize(("at", "old"), [(0.0, False), (1e-5, True)], ids=["on the day", "a second later"])
@pytest.mark.parametrize(
    ("kind", "days"), [("thermometer", 180), ("hygrometer", 180), ("ph-meter", 30), ("scale", 180)]
)
def test_a_check_is_old_after_half_a_year_a_ph_meters_after_a_month(
    shop: Workshop, kind: str, days: float, at: float, old: bool
):
    """Common practice; no published source."""
    key = shop.add(kind)
    match kind:
        case "thermometer":
            shop.ice(key, 0.0, at=1)
        case "hygrometer":
            shop.salt(key, at=1)
        case "ph-meter":
            shop.buffers(key, seven=7.0, four=4.0, at=1)
        case _:
            shop.weight(key, 1.0, at=1)
    assert shop.instrument(key).is_old(day(1 + days + at)) is old


def test_ones_own_interval_goes_before_the_common_one(shop: Workshop):
    key = shop.add(check_every_s=30.0 * 86400)
    shop.salt(key, at=1)
    assert shop.instrument(key).is_old(day(32))


def test_never_checked_is_old(shop: Workshop):
    assert shop.instrument(shop.add()).is_old(day(0))


def test_a_hygrometer_is_old_by_its_salt_not_by_its_ice(shop: Workshop):
    key = shop.add()
    shop.ice(key, 0.0)
    assert shop.instrument(key).is_old(day(2))


def test_a_retired_instrument_is_not_in_use(shop: Workshop):
    key = shop.add()
    shop.note(InstrumentRetired("broken"), key, at=3)
    assert Shelf(shop.book).in_use() == []
    assert [each.id for each in instruments(shop.book)] == [key]


def test_retired_twice_it_was_out_of_use_with_the_first(shop: Workshop):
    key = shop.add()
    shop.note(InstrumentRetired("broken"), key, at=3)
    shop.note(InstrumentRetired("broken"), key, at=4)
    assert shop.instrument(key).retired_at == day(3)


def test_an_instrument_taken_back_is_none(shop: Workshop):
    key = shop.add()
    shop.take_back(key)
    assert fold_instrument(shop.book, key) is None
    assert instruments(shop.book) == []


def test_an_entry_that_is_no_instrument_is_none(shop: Workshop):
    assert fold_instrument(shop.book, shop.begin()) is None


def test_an_instrument_needs_a_name():
    with pytest.raises(ValueError, match="name"):
        InstrumentAdded("", "scale")


def test_an_old_check_is_a_line_on_today(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.76, at=1)
    assert said(shop, at=214) == ["Check the hygrometer Larder: last checked 7 months ago"]


def test_a_check_not_yet_old_is_no_line(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.76, at=1)
    assert said(shop, at=180) == []


def test_an_instrument_never_checked_is_a_line(shop: Workshop):
    shop.add("scale", "Bench {1}")
    assert said(shop, at=1) == ["Check the scale Bench {1}: never checked yet"]


def test_a_failed_check_is_a_line(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.95, at=1)
    assert said(shop, at=2) == ["Replace the hygrometer Larder: it failed its salt check of 3 Nov 2026"]


def test_a_bad_electrode_is_to_be_cleaned(shop: Workshop):
    key = shop.add("ph-meter", "Pen")
    shop.buffers(key, seven=7.0, four=4.9)
    assert said(shop, at=2) == ["Clean the pH meter Pen: it failed its buffer check of 3 Nov 2026"]


def test_recalibrated_is_a_line(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    shop.note(InstrumentRecalibrated(), key, at=5)
    assert said(shop, at=6) == ["Check the hygrometer Larder: it was adjusted"]


def test_a_failed_one_recalibrated_is_to_be_checked_and_no_longer_replaced(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.95, at=1)
    shop.note(InstrumentRecalibrated(), key, at=5)
    assert said(shop, at=6) == ["Check the hygrometer Larder: it failed, and was adjusted"]


def test_of_two_settings_the_later_one_counts_against_a_failed_check(shop: Workshop):
    key = shop.add()
    shop.note(InstrumentRecalibrated(), key, at=1)
    shop.salt(key, 0.95, at=3)
    shop.note(InstrumentRecalibrated(), key, at=5)
    assert said(shop, at=6) == ["Check the hygrometer Larder: it failed, and was adjusted"]


@pytest.mark.parametrize(("at", "told"), [(173.999, 0), (174.0, 1)])
def test_a_check_is_told_a_week_ahead(shop: Workshop, at: float, told: int):
    key = shop.add()
    shop.salt(key, 0.76, at=1)
    assert len(instruments_due(instruments(shop.book), day(at))) == told


@pytest.mark.parametrize(
    ("days", "ago"),
    [
        (0.999, "today"), (1.0, "1 day ago"), (2.0, "2 days ago"), (60.0, "60 days ago"), (61.0, "2 months ago"),
        (380.0, "12 months ago"), (381.0, "13 months ago"),
    ],
)  # fmt: skip
def test_it_says_how_long_ago_it_was_checked(shop: Workshop, days: float, ago: str):
    """A month of 30.44 days: the mean one of the calendar, 365.25 ÷ 12."""
    key = shop.add(check_every_s=3600.0)
    shop.salt(key, 0.76, at=1)
    assert said(shop, at=1 + days) == [f"Check the hygrometer Larder: last checked {ago}"]


@pytest.mark.parametrize(("at", "due"), [(4.999, []), (5.0, ["Check the hygrometer Larder: it was adjusted"])])
def test_it_was_recalibrated_from_that_very_moment(shop: Workshop, at: float, due: list[str]):
    key = shop.add()
    shop.salt(key, 0.76, at=0.5)
    shop.note(InstrumentRecalibrated(), key, at=5)
    assert said(shop, at) == due


def test_recalibrated_and_failed_at_one_moment_it_is_as_it_was_checked(shop: Workshop):
    key = shop.add()
    shop.note(InstrumentRecalibrated(), key, at=1)
    shop.salt(key, 0.95, at=1)
    assert said(shop, at=2) == ["Replace the hygrometer Larder: it failed its salt check of 3 Nov 2026"]


def test_a_retired_instrument_wants_nothing(shop: Workshop):
    key = shop.add()
    shop.note(InstrumentRetired(), key, at=3)
    assert instruments_due(instruments(shop.book), day(400)) == []
