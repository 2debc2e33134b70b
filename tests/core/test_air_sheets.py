"""The worksheets about moist air, asked as a cook would ask them."""

import pytest

from core.air_sheets import DRYING_FORCE, MOIST_AIR, WORKSHEETS
from core.quantities import METRIC, US
from core.refusals import Refused


def shown(worksheet, reader=METRIC, **texts):
    return {figure.key: figure.show(reader) for figure in worksheet.answer(texts, reader).figures}


def refusals(worksheet, **texts):
    with pytest.raises(Refused) as caught:
        worksheet.answer(texts)
    return {refusal.field: refusal.sentence for refusal in caught.value.refusals}


@pytest.mark.parametrize("worksheet", WORKSHEETS, ids=lambda sheet: sheet.name)
def test_the_example_is_answered(worksheet):
    assert worksheet.answer(worksheet.example).figures


@pytest.mark.parametrize("worksheet", WORKSHEETS, ids=lambda sheet: sheet.name)
def test_the_defaults_are_answered(worksheet):
    assert worksheet.answer({}).figures


@pytest.mark.parametrize("worksheet", WORKSHEETS, ids=lambda sheet: sheet.name)
def test_the_question_is_a_question(worksheet):
    assert worksheet.question.endswith("?")


def test_the_dew_point_is_answered_in_the_reader_s_units():
    assert shown(MOIST_AIR, US, temperature="55", humidity="75")["dew_point"] == "47.2 °F"


def test_the_height_above_the_sea_is_turned_into_a_pressure_and_shown():
    assert shown(MOIST_AIR, temperature="12", humidity="75", altitude="300 m")["pressure"] == "977.7 hPa"


def test_a_pressure_that_was_read_goes_before_the_height():
    assert "pressure" not in shown(MOIST_AIR, temperature="12", humidity="75", altitude="300", pressure="950")


def test_thinner_air_carries_more_water_a_kilogram():
    figures = [shown(MOIST_AIR, temperature="12", humidity="75", pressure=p) for p in ("1013.25 hPa", "70 kPa")]
    assert [each["humidity_ratio"] for each in figures] == ["6.55 g/kg", "9.52 g/kg"]


def test_drying_force_takes_the_surface_as_warm_as_the_air_unless_told():
    assert shown(DRYING_FORCE, temperature="12", humidity="75", surface_activity="0.95") == {
        "vapour_pressure_deficit": "282 Pa"
    }


def test_every_field_that_cannot_stand_is_answered_at_once():
    assert refusals(MOIST_AIR, temperature="70 °C", humidity="0", altitude="high").keys() == {
        "temperature",
        "humidity",
        "altitude",
    }


def test_air_too_dry_for_a_dew_point_is_refused_beside_the_humidity():
    assert "dew point" in refusals(MOIST_AIR, temperature="-20 °C", humidity="5 %")["humidity"]


def test_a_humidity_typed_as_a_fraction_is_not_taken_for_less_than_one_per_cent():
    assert refusals(MOIST_AIR, temperature="12", humidity="0.75").keys() == {"humidity"}
