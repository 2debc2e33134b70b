"""Readings corrected: both are kept; it says what was read and by which check; a failed one proves nothing."""

import pytest

from core.daybook.corrections.figures import correction_in_words, figures, working
from core.daybook.corrections.readings import corrected
from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import PieceHung, PieceWeighed, Reading
from core.daybook.facts.instruments import (
    BoilingPointChecked,
    InstrumentRecalibrated,
    MassesChecked,
    SaltChecked,
    TwoSaltsChecked,
)
from core.daybook.instruments import Shelf
from core.quantities import METRIC, US
from core.sources import DEFINITION, NERNST
from tests.core.telling import in_words
from tests.core.workshop import OVER_SALT_12, Workshop, day


@pytest.fixture
def shop() -> Workshop:
    return Workshop()


def fermented(shop: Workshop) -> str:
    batch = shop.begin()
    shop.cure(batch)
    return batch


def test_a_humidity_is_corrected_and_the_raw_one_kept(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    result = shop.air(0.72, key, at=2)
    assert result.fact.humidity == pytest.approx(0.72 - 0.79 + OVER_SALT_12, abs=1e-6)
    found = result.of("humidity")
    assert found is not None
    assert (found.raw, found.check.at) == (0.72, day(1))


def test_it_says_from_what_and_by_which_check(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    notes = shop.air(0.72, key, at=2).notes
    assert [note.say(METRIC, 4) for note in notes] == ["corrected from 72 % (salt check of 3 Nov)"]


def test_two_corrections_are_said_in_one(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    shop.ice(key, 0.5, at=1.5)
    (note,) = shop.air(0.72, key, at=2).notes
    assert note.say(METRIC, 4) == "corrected from 12 °C (ice check of 4 Nov) and 72 % (salt check of 3 Nov)"


def test_a_check_of_another_year_is_said_with_it(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    assert "salt check of 3 Nov 2026" in shop.air(0.72, key, at=100).notes[0].say(METRIC, 4)


def test_humidity_is_never_put_above_all(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.68, at=1)
    assert shop.air(0.97, key, at=2).fact.humidity == 1.0


def test_no_instrument_named_leaves_the_reading(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    result = shop.air(0.72, None, at=2)
    assert (result.fact.humidity, result.readings, figures(result)) == (0.72, (), ())


def test_an_instrument_taken_back_leaves_the_reading(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    shop.take_back(key)
    assert shop.air(0.72, key, at=2).fact.humidity == 0.72


def test_what_a_failed_instrument_shows_stays_as_read_and_says_so(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.95, at=1)
    result = shop.air(0.72, key, at=2)
    assert result.fact.humidity == 0.72
    assert [note.say(METRIC, 4) for note in result.notes] == ["proves nothing: Larder failed its salt check of 3 Nov"]
    assert in_words(figures(result)[0].cautions) == (
        "Larder failed its salt check of 3 Nov: this reading proves nothing.",
    )


def test_a_check_that_finds_nothing_says_nothing(shop: Workshop):
    key = shop.add()
    shop.ice(key, 0.0, at=1)
    result = shop.air(0.72, key, at=2)
    assert (result.notes, figures(result)) == ((), ())


def test_the_figure_has_its_working_and_its_range(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    (found,) = figures(shop.air(0.72, key, at=2))
    assert found.show(METRIC) == "68.7 %"
    assert [step.say(METRIC) for step in found.working] == [
        "Larder: salt check of 3 Nov.",
        "72 % − 3.33866 % = 68.6613 %",
    ]
    assert found.low is not None
    assert found.low < found.value < found.high  # type: ignore[operator]


def test_the_range_is_as_wide_as_the_check_is_unsure(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    result = shop.air(0.72, key, at=2)
    correction = result.of("humidity").correction  # type: ignore[union-attr]
    assert correction is not None
    assert correction.uncertainty > 0
    (found,) = figures(result)
    assert (found.low, found.high) == (
        pytest.approx(0.72 - 0.79 + OVER_SALT_12 - correction.uncertainty, abs=1e-6),
        pytest.approx(0.72 - 0.79 + OVER_SALT_12 + correction.uncertainty, abs=1e-6),
    )


def test_the_range_of_a_compensated_ph_grows_with_its_distance_from_7(shop: Workshop):
    key = shop.add("ph-meter", "Pen", stands_at_c=25.0)
    shop.buffers(key, seven=7.1, four=4.1, at=1)
    result = corrected(Shelf(shop.book), Reading(5.3, 12.0, key, place="core"), day(2))
    correction = result.of("ph").correction  # type: ignore[union-attr]
    assert correction is not None
    unsure = correction.uncertainty_at(5.3)
    assert unsure > 0
    (found,) = figures(result)
    assert found.high - found.value == pytest.approx(unsure * 298.15 / 285.15)  # type: ignore[operator]


def worked(shop: Workshop, key: str, fact: Reading | PieceWeighed) -> list[str]:
    """The working of its first reading, whether it is changed or not."""
    return [step.say(METRIC) for step in working(corrected(Shelf(shop.book), fact, day(2)).readings[0])][1:]


@pytest.mark.parametrize(
    ("in_ice", "step"),
    [(-0.5, "12 °C + 0.5 K = 12.5 °C"), (0.5, "12 °C − 0.5 K = 11.5 °C")],
)
def test_the_working_adds_or_takes_off_what_one_point_tells(shop: Workshop, in_ice: float, step: str):
    key = shop.add("thermometer")
    shop.ice(key, in_ice, at=1)
    assert worked(shop, key, Reading(None, 12.0, thermometer=key)) == [step]


@pytest.mark.parametrize(
    ("in_ice", "in_boiling", "sign"), [(0.5, 99.3, "−"), (-0.5, 99.3, "+"), (1.2, 101.0, "−"), (-1.2, 99.3, "+")]
)
def test_the_working_of_a_line_is_in_celsius_for_it_holds_there_alone(
    shop: Workshop, in_ice: float, in_boiling: float, sign: str
):
    key = shop.add("thermometer")
    shop.ice(key, in_ice, at=1)
    shop.note(BoilingPointChecked(in_boiling, pressure_pa=101325.0), key, at=1.02)
    result = corrected(Shelf(shop.book), Reading(None, 12.0, thermometer=key), day(2))
    metric, us = (working(result.readings[0])[1].say(reader) for reader in (METRIC, US))
    assert f" × 12 °C {sign} " in metric
    assert us == metric


def test_the_working_of_a_factor_alone_adds_nothing(shop: Workshop):
    key = shop.add("scale")
    shop.weight(key, 1.25, mass_kg=1.0, at=1)
    result = corrected(Shelf(shop.book), PieceWeighed(0.5, key), day(2))
    assert result.readings[0].proves_nothing
    shop.weight(key, 1.008, at=1.5)
    assert worked(shop, key, PieceWeighed(1.26, key)) == [
        "0.992063 × 1\N{NO-BREAK SPACE}260 g = 1\N{NO-BREAK SPACE}250 g"
    ]


def test_a_meter_whose_thermometer_alone_was_read_leaves_no_ph(shop: Workshop):
    key = shop.add("ph-meter", "Pen")
    shop.buffers(key, seven=7.1, four=4.1, at=1)
    result = corrected(Shelf(shop.book), Reading(None, 12.0, key), day(2))
    assert (result.fact.ph, result.readings) == (None, ())


def test_a_ph_left_alone_is_named_as_read_and_its_source_is_no_law(shop: Workshop):
    key = shop.add("ph-meter", "Pen", stands_at_c=25.0)
    (found,) = figures(corrected(Shelf(shop.book), Reading(5.3, None, key), day(2)))
    assert (found.name, found.source) == ("pH, as read", DEFINITION)


def test_a_compensated_ph_is_named_corrected_and_rests_on_nernst(shop: Workshop):
    key = shop.add("ph-meter", "Pen", stands_at_c=25.0)
    (found,) = figures(corrected(Shelf(shop.book), Reading(5.3, 12.0, key), day(2)))
    assert (found.name, found.source) == ("Corrected pH", NERNST)


def test_what_its_check_alone_changed_is_named_corrected(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    (found,) = figures(shop.air(0.72, key, at=2))
    assert (found.name, found.source) == ("Corrected humidity", DEFINITION)


def test_a_temperature_is_corrected_in_fahrenheit_alike(shop: Workshop):
    key = shop.add()
    shop.ice(key, 0.5, at=1)
    (found,) = figures(shop.air(0.72, key, at=2, temperature_c=12.5))
    assert found.working[1].say(US) == "54.5 °F − 0.9 °F = 53.6 °F"


def test_a_reading_far_from_the_one_salt_is_cautioned(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    assert "check it over two" in in_words(figures(shop.air(0.92, key, at=2))[0].cautions)[0]


def cautions(shop: Workshop, key: str, humidity: float) -> list[str]:
    return [each for found in figures(shop.air(humidity, key, at=2)) for each in in_words(found.cautions)]


FAR = "It lies far from the one salt Larder was checked over: check it over two."


@pytest.mark.parametrize(("humidity", "found"), [(0.2, []), (0.2001, [FAR]), (0.0, []), (0.1, [])])
def test_far_from_the_one_salt_is_more_than_ten_points(shop: Workshop, humidity: float, found: list[str]):
    """Common practice; no published source. 0.2 - 0.1 is 0.1 to the last bit."""
    key = shop.add(tolerance_humidity=0.01)
    shop.note(SaltChecked("licl", 20.0, 0.1), key, at=1)
    assert cautions(shop, key, humidity) == found


def test_checked_over_two_salts_no_reading_is_far_from_the_one(shop: Workshop):
    key = shop.add(tolerance_humidity=0.02)
    shop.note(TwoSaltsChecked("nacl", 20.0, 0.78, "kcl", 20.0, 0.864), key, at=1)
    assert cautions(shop, key, 0.5) == []


def test_a_temperature_is_far_from_no_salt(shop: Workshop):
    key = shop.add("thermometer")
    shop.ice(key, 0.5, at=1)
    assert cautions(shop, key, 0.5) == []


def test_an_old_check_is_still_applied_and_cautioned(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    result = shop.air(0.72, key, at=300)
    assert result.fact.humidity == pytest.approx(0.6866, abs=1e-4)
    assert "old by now" in in_words(figures(result)[0].cautions)[0]


def test_a_weight_that_would_fall_below_nothing_stays_as_read(shop: Workshop):
    key = shop.add("scale")
    shop.note(MassesChecked(0.1, 0.11, 0.01, 1.0, 1.01), key, at=1)  # 10 g too much everywhere
    result = corrected(Shelf(shop.book), PieceWeighed(0.005, key), day(2))
    assert result.fact.mass_kg == 0.005


def test_the_batchs_ph_is_the_one_corrected(shop: Workshop):
    meter, batch = shop.add("ph-meter", "Pen"), fermented(shop)
    shop.buffers(meter, seven=7.1, four=4.1, at=1)
    shop.note(Reading(5.3, None, meter), batch, at=2)
    folded = shop.batch(batch)
    assert folded.last_ph == pytest.approx(5.2)
    assert folded.stage == "dry"  # 5.3 as read would still ferment
    assert folded.phs[0].corrected.of("ph").raw == 5.3  # type: ignore[union-attr]


def test_the_loss_is_of_weights_corrected_each_by_its_own_scale(shop: Workshop):
    scale, batch = shop.add("scale", "Bench"), fermented(shop)
    shop.weight(scale, 1.008, at=1)
    piece = shop.note(PieceHung("J-1", 1.26, scale), batch, at=2)
    shop.weigh(piece, 1.0, at=9)
    folded = shop.piece(batch, piece)
    assert folded.start_kg == pytest.approx(1.25)
    assert folded.loss == pytest.approx(0.2)


def test_a_pieces_weight_is_told_with_what_its_own_scale_showed_then(shop: Workshop):
    scale, batch = shop.add("scale", "Bench"), fermented(shop)
    shop.weight(scale, 1.008, at=1)
    key = shop.note(PieceHung("J-1", 1.26, scale), batch, at=2)

    def shown() -> float:
        result = shop.piece(batch, key).mass_reading
        assert result is not None
        return result.raw

    assert shown() == 1.26
    for at, mass_kg in [(9, 1.1), (16, 1.0), (23, 0.9)]:
        shop.note(PieceWeighed(mass_kg, scale), key, at=at)
    assert shown() == 0.9


def test_the_verdict_uses_the_values_corrected(shop: Workshop):
    meter, batch = shop.add("ph-meter", "Pen"), fermented(shop)
    shop.buffers(meter, seven=6.9, four=3.9, at=1)
    shop.note(Reading(5.25, None, meter), batch, at=2)
    piece = shop.hang(batch, at=3)
    found = evidence_for(shop.batch(batch), shop.piece(batch, piece), day(30))
    assert found.lowest_ph == pytest.approx(5.35)


def test_a_ph_on_a_failed_meter_is_no_evidence(shop: Workshop):
    meter, batch = shop.add("ph-meter", "Pen"), fermented(shop)
    shop.buffers(meter, seven=7.0, four=4.9, at=1)
    shop.note(Reading(5.0, None, meter), batch, at=2)
    piece = shop.hang(batch, at=3)
    found = evidence_for(shop.batch(batch), shop.piece(batch, piece), day(30))
    assert (found.lowest_ph, found.last_ph) == (None, None)
    assert shop.batch(batch).stage == "ferment"


def ph_read_on(shop: Workshop, meter: str, batch: str, at: float) -> float | None:
    shop.note(Reading(5.0, None, meter), batch, at=at)
    piece = shop.hang(batch, at=20)
    return evidence_for(shop.batch(batch), shop.piece(batch, piece), day(30)).lowest_ph


def test_a_ph_on_a_meter_that_failed_the_day_after_is_no_evidence(shop: Workshop):
    meter, batch = shop.add("ph-meter", "Pen"), fermented(shop)
    shop.buffers(meter, seven=7.0, four=4.0, at=1)
    shop.buffers(meter, seven=7.0, four=4.9, at=3)
    assert ph_read_on(shop, meter, batch, at=2) is None


def test_a_ph_on_a_meter_never_checked_before_it_failed_is_no_evidence(shop: Workshop):
    meter, batch = shop.add("ph-meter", "Pen"), fermented(shop)
    shop.buffers(meter, seven=7.0, four=4.9, at=3)
    assert ph_read_on(shop, meter, batch, at=2) is None


def test_a_check_passed_between_the_reading_and_the_failed_one_vouches_for_it(shop: Workshop):
    meter, batch = shop.add("ph-meter", "Pen"), fermented(shop)
    shop.buffers(meter, seven=7.0, four=4.0, at=3)
    shop.buffers(meter, seven=7.0, four=4.9, at=4)
    assert ph_read_on(shop, meter, batch, at=2) == pytest.approx(5.0)


def test_a_meter_recalibrated_between_the_reading_and_the_failed_check_was_another_one(shop: Workshop):
    meter, batch = shop.add("ph-meter", "Pen"), fermented(shop)
    shop.buffers(meter, seven=7.0, four=4.0, at=1)
    shop.note(InstrumentRecalibrated(), meter, at=2.5)
    shop.buffers(meter, seven=7.0, four=4.9, at=3)
    assert ph_read_on(shop, meter, batch, at=2) == pytest.approx(5.0)


def test_a_failed_meter_recalibrated_proves_nothing_until_it_is_checked(shop: Workshop):
    meter, batch = shop.add("ph-meter", "Pen"), fermented(shop)
    shop.buffers(meter, seven=7.0, four=4.9, at=1)
    shop.note(InstrumentRecalibrated(), meter, at=1.5)
    assert ph_read_on(shop, meter, batch, at=2) is None
    shop.buffers(meter, seven=7.0, four=4.0, at=2.5)
    assert ph_read_on(shop, meter, batch, at=3) == pytest.approx(5.0)


def test_a_worse_ph_on_a_failed_meter_still_speaks_against(shop: Workshop):
    meter, batch = shop.add("ph-meter", "Pen"), fermented(shop)
    shop.read(batch, 5.1, at=0.5)
    shop.buffers(meter, seven=7.0, four=4.9, at=1)
    shop.note(Reading(5.9, None, meter), batch, at=2)
    piece = shop.hang(batch, at=3)
    assert evidence_for(shop.batch(batch), shop.piece(batch, piece), day(30)).last_ph == 5.9


def test_a_weight_on_a_failed_scale_is_no_evidence_of_loss(shop: Workshop):
    scale, batch = shop.add("scale", "Bench"), fermented(shop)
    shop.weight(scale, 1.2, at=1)
    piece = shop.hang(batch, at=2)
    shop.weigh(piece, 0.9, at=9)
    shop.note(PieceWeighed(0.6, scale), piece, at=20)
    assert evidence_for(shop.batch(batch), shop.piece(batch, piece), day(30)).loss == pytest.approx(0.1)


def test_a_smaller_loss_on_a_failed_scale_still_speaks_against(shop: Workshop):
    scale, batch = shop.add("scale", "Bench"), fermented(shop)
    shop.weight(scale, 1.2, at=1)
    piece = shop.hang(batch, at=2)
    shop.weigh(piece, 0.6, at=20)
    shop.note(PieceWeighed(0.7, scale), piece, at=21)
    assert evidence_for(shop.batch(batch), shop.piece(batch, piece), day(30)).loss == pytest.approx(0.3)


def test_a_start_weight_on_a_failed_scale_proves_no_loss(shop: Workshop):
    scale, batch = shop.add("scale", "Bench"), fermented(shop)
    shop.weight(scale, 1.2, at=1)
    piece = shop.note(PieceHung("J-1", 1.0, scale), batch, at=2)
    shop.weigh(piece, 0.6, at=9)
    assert evidence_for(shop.batch(batch), shop.piece(batch, piece), day(30)).loss is None


def test_the_correction_in_words(shop: Workshop):
    key = shop.add()
    shop.salt(key, 0.79, at=1)
    found = shop.instrument(key).correction("humidity", day(2))
    assert found is not None
    assert correction_in_words("humidity", found).say(METRIC, 3) == "3.34 % is taken off every reading."
