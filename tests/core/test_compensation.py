"""A pH on a meter that does not compensate: first its check, then the temperature that was read along with it."""

import pytest

from core.daybook.corrections.compensation import NO_TEMPERATURE, NOT_TRUSTED, OUT_OF_RANGE, Compensation
from core.daybook.corrections.figures import figures
from core.daybook.corrections.readings import CorrectedFact, corrected
from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import Reading
from core.daybook.facts.instruments import InstrumentRecalibrated
from core.daybook.instruments import Shelf
from core.quantities import METRIC, US, Reader
from tests.core.telling import in_words
from tests.core.workshop import Workshop, day

AT_12 = 298.15 / 285.15


@pytest.fixture
def shop() -> Workshop:
    return Workshop()


def pen(shop: Workshop, stands_at_c: float | None = 25.0) -> str:
    return shop.add("ph-meter", "Pen", stands_at_c=stands_at_c)


def read(
    shop: Workshop, meter: str, ph: float = 5.2, temperature_c: float | None = 12.0, at: float = 2, **more
) -> CorrectedFact:
    return corrected(Shelf(shop.book), Reading(ph, temperature_c, meter, **more), day(at))


def notes(result: CorrectedFact, reader: Reader = METRIC) -> list[str]:
    return [note.say(reader, 4) for note in result.notes]


def test_a_meter_that_compensates_by_itself_is_left_alone(shop: Workshop):
    result = read(shop, pen(shop, None))
    assert (result.fact.ph, result.notes) == (5.2, ())


def test_it_is_compensated_with_the_temperature_of_the_meat(shop: Workshop):
    result = read(shop, pen(shop), place="core")
    assert result.fact.ph == pytest.approx(7 - 1.8 * AT_12)
    assert notes(result) == ["corrected from 5.2 (taken at 12 °C in the meat)"]


@pytest.mark.parametrize("place", ["chamber", None])
def test_a_temperature_beside_the_meat_is_used_and_said(shop: Workshop, place):
    result = read(shop, pen(shop), place=place)
    assert notes(result) == ["corrected from 5.2 (taken at 12 °C beside the meat)"]
    assert "beside the meat" in in_words(figures(result)[0].cautions)[0]


def test_the_note_is_said_in_the_readers_units(shop: Workshop):
    assert notes(read(shop, pen(shop), place="core"), US) == ["corrected from 5.2 (taken at 53.6 °F in the meat)"]


def test_without_any_temperature_it_is_left_and_said(shop: Workshop):
    result = read(shop, pen(shop), temperature_c=None)
    assert (result.fact.ph, notes(result)) == (5.2, ["not compensated: no temperature"])
    assert "Read the temperature of the meat" in in_words(figures(result)[0].cautions)[0]


def test_the_check_comes_first_and_its_buffers_set_the_slope(shop: Workshop):
    meter = pen(shop)
    shop.buffers(meter, seven=7.1, four=4.1, at=1, temperature_c=20.0, other_temperature_c=18.0)
    result = read(shop, meter, ph=5.3, place="core")
    assert result.fact.ph == pytest.approx(7 - 1.8 * (273.15 + 19) / 285.15, abs=2e-3)
    assert notes(result) == ["corrected from 5.3 (buffer check of 3 Nov; taken at 12 °C in the meat)"]


def test_the_working_shows_both(shop: Workshop):
    meter = pen(shop)
    shop.buffers(meter, seven=7.1, four=4.1, at=1)
    (found,) = figures(read(shop, meter, ph=5.3, place="core"))
    assert [step.say(METRIC) for step in found.working] == [
        "Pen: buffer check of 3 Nov.",
        "5.3 − 0.1 = 5.2",
        "Its buffers were at 25 °C.",
        "Taken at 12 °C, with the meter set to 25 °C:",
        "7 + (5.2 − 7) × 298.15 K ÷ 285.15 K = 5.11794",
    ]
    assert found.low < found.value < found.high  # type: ignore[operator]


@pytest.mark.parametrize(
    ("temperature_c", "why_not", "ratio"),
    [
        (12.0, "", AT_12),
        (25.0, "", 1.0),
        (None, NO_TEMPERATURE, 1.0),
        (12.0, NOT_TRUSTED, 1.0),
        (-2.0, OUT_OF_RANGE, 1.0),
    ],
)
def test_what_is_unsure_grows_only_where_it_was_compensated(temperature_c: float | None, why_not: str, ratio: float):
    assert Compensation(5.2, 5.2, 25.0, False, temperature_c, False, why_not).ratio == pytest.approx(ratio, rel=1e-9)


@pytest.mark.parametrize("temperature_c", [None, 12.0])
def test_the_working_of_what_was_not_compensated_is_why_not(temperature_c: float | None):
    (said,) = Compensation(5.2, 5.2, 25.0, True, temperature_c, False, NOT_TRUSTED).working
    assert said.say(METRIC) == (
        "The meter does not compensate, and this pH is not compensated: its thermometer failed its check."
    )


def test_a_check_without_a_temperature_still_corrects(shop: Workshop):
    meter = pen(shop)
    shop.buffers(meter, seven=7.1, four=4.1, at=1)
    result = read(shop, meter, ph=5.3, temperature_c=None)
    assert result.fact.ph == pytest.approx(5.2)
    assert notes(result) == ["corrected from 5.3 (buffer check of 3 Nov; not compensated: no temperature)"]


def test_a_check_in_millivolts_leaves_it_standing_where_it_is_set(shop: Workshop):
    meter = pen(shop, 20.0)
    shop.buffers(meter, seven=0.0, four=177.5, at=1, shows="mv")
    result = read(shop, meter, place="core")
    assert result.fact.ph == pytest.approx(7 - 1.8 * 293.15 / 285.15)
    assert notes(result) == ["corrected from 5.2 (taken at 12 °C in the meat)"]
    assert figures(result)[0].low is None


def test_recalibrated_it_stands_where_it_is_set(shop: Workshop):
    meter = pen(shop)
    shop.buffers(meter, seven=7.1, four=4.1, at=1, temperature_c=15.0, other_temperature_c=15.0)
    shop.note(InstrumentRecalibrated(), meter, at=1.5)
    assert read(shop, meter, place="core").fact.ph == pytest.approx(7 - 1.8 * AT_12)


def test_a_failed_meter_is_not_compensated_and_proves_nothing(shop: Workshop):
    meter = pen(shop)
    shop.buffers(meter, seven=7.0, four=4.9, at=1)
    result = read(shop, meter)
    assert (result.fact.ph, notes(result)) == (5.2, ["proves nothing: Pen failed its buffer check of 3 Nov"])


def test_the_temperature_is_corrected_before_it_is_used(shop: Workshop):
    meter, stem = pen(shop), shop.add("thermometer", "Stem")
    shop.ice(stem, 0.5, at=1)
    result = read(shop, meter, temperature_c=12.5, thermometer=stem, place="core")
    assert result.fact.ph == pytest.approx(7 - 1.8 * AT_12)
    assert notes(result) == [
        "corrected from 5.2 (taken at 12 °C in the meat) and 12.5 °C (ice check of 3 Nov)",
    ]


def test_a_failed_thermometer_compensates_nothing(shop: Workshop):
    meter, stem = pen(shop), shop.add("thermometer", "Stem")
    shop.ice(stem, 9.0, at=1)
    result = read(shop, meter, thermometer=stem)
    assert result.fact.ph == 5.2
    assert notes(result)[0] == "not compensated: its thermometer failed its check"


def test_what_the_formula_does_not_hold_for_is_left_and_said(shop: Workshop):
    result = read(shop, pen(shop), temperature_c=-2.0)
    assert result.fact.ph == 5.2
    assert notes(result) == ["not compensated: outside 0 °C to 60 °C or pH 2 to 12"]


def test_as_warm_as_the_meter_stands_nothing_is_said(shop: Workshop):
    result = read(shop, pen(shop), temperature_c=25.0)
    assert (result.fact.ph, result.notes, figures(result)) == (pytest.approx(5.2), (), ())


def test_only_a_ph_meter_stands_anywhere(shop: Workshop):
    other = shop.add("thermometer", "Stem", stands_at_c=25.0)
    assert read(shop, other).fact.ph == 5.2


def test_the_batch_and_its_evidence_take_the_compensated_ph(shop: Workshop):
    batch, meter = shop.begin(), pen(shop)
    shop.cure(batch)
    shop.note(Reading(5.28, 35.0, meter, place="core"), batch, at=2)
    piece = shop.hang(batch, at=3)
    assert shop.batch(batch).stage == "ferment"  # 5.28 as read would be acid enough; it is 5.34
    found = evidence_for(shop.batch(batch), shop.piece(batch, piece), day(30))
    assert found.lowest_ph == pytest.approx(7 - 1.72 * 298.15 / 308.15)
