"""Moist air: what is said, what is refused, and that the working adds up."""

import pytest

from core.air import (
    COIL_ICES,
    EITHER_BULB,
    ICED_BULB,
    ICED_NEAR_FREEZING,
    OVER_ICE,
    TAKES_UP,
    WET_NEAR_FREEZING,
    moist_air,
    station_pressure,
)
from core.air import vapour_pressure_deficit as deficit
from core.quantities import METRIC, US
from core.refusals import OutOfRange
from core.saturation import ice_saturation_pressure_pa, saturation_pressure_pa
from core.vapour import (
    STANDARD_PA,
    dew_point_c,
    frost_point_c,
    humidity_ratio,
    ice_bulb_ratio,
    liquid_bulb_ratio,
    other_bulb_c,
    require_air,
    station_pressure_pa,
    vapour_pressure_pa,
    wet_bulb_c,
)
from tests.core.telling import in_words
from tests.core.worked import sums_in


def by_key(figures):
    return {figure.key: figure for figure in figures}


CELLAR = moist_air(12.0, 0.75)
COOLED = moist_air(5.0, 0.5)
FREEZING = moist_air(-5.0, 0.99)


def test_a_cellar_at_12_degrees_and_75_per_cent():
    shown = {figure.name: figure.show(METRIC) for figure in CELLAR}
    assert shown == {
        "Dew point": "7.7 °C",
        "Wet bulb": "9.7 °C",
        "Humidity ratio": "6.55 g/kg",
        "Absolute humidity": "8.03 g/m³",
        "Enthalpy": "28.6 kJ/kg",
        "Vapour pressure": "1\u00a0056 Pa",
        "Vapour pressure deficit": "352 Pa",
    }


def test_the_dew_point_comes_first():
    assert CELLAR[0].key == "dew_point"


def test_the_frost_point_is_given_only_below_freezing():
    assert ("frost_point" in by_key(CELLAR), "frost_point" in by_key(COOLED)) == (False, True)


def test_dew_and_frost_point_of_cold_dry_air_are_told_apart():
    figures = by_key(COOLED)
    assert (figures["dew_point"].show(METRIC), figures["frost_point"].show(METRIC)) == ("−4.6 °C", "−4.0 °C")


def test_the_frost_point_says_that_the_coil_ices_there():
    assert COIL_ICES in in_words(by_key(COOLED)["frost_point"].cautions)


def test_air_moister_than_ice_is_warned_of():
    assert OVER_ICE in in_words(by_key(FREEZING)["frost_point"].cautions)


def test_humidity_counts_over_liquid_water_below_freezing_too():
    assert dew_point_c(-5.0, 1.0) == pytest.approx(-5.0, abs=1e-9)


def test_a_wet_bulb_below_freezing_is_said_to_be_iced():
    assert in_words(by_key(FREEZING)["wet_bulb"].cautions) == (ICED_BULB,)


def test_a_wet_bulb_just_above_freezing_is_said_to_have_an_iced_twin():
    assert in_words(by_key(moist_air(8.0, 0.1225))["wet_bulb"].cautions) == (EITHER_BULB,)


@pytest.mark.parametrize("humidity", [0.54, 0.545, 0.55])
def test_a_wet_bulb_within_three_tenths_of_freezing_says_which_bulb_it_is_and_how_the_other_reads(humidity: float):
    """ASHRAE Fundamentals 2017, ch. 1, eqs. 33 (wet) and 35 (iced), each put back into its own."""
    bulb = by_key(moist_air(3.0, humidity))["wet_bulb"]
    ratio = humidity_ratio(vapour_pressure_pa(3.0, humidity), STANDARD_PA)
    assert abs(bulb.value) <= 0.3
    assert bulb.low is not None
    assert bulb.high is not None
    assert bulb.low < bulb.high
    if bulb.value >= 0:
        assert in_words(bulb.cautions) == (WET_NEAR_FREEZING,)
        assert liquid_bulb_ratio(3.0, bulb.high, STANDARD_PA) == pytest.approx(ratio, rel=1e-6)
        assert ice_bulb_ratio(3.0, bulb.low, STANDARD_PA) == pytest.approx(ratio, rel=1e-6)
    else:
        assert in_words(bulb.cautions) == (ICED_NEAR_FREEZING,)
        assert {bulb.value, other_bulb_c(3.0, humidity)} == {bulb.low, bulb.high}


def test_far_from_freezing_no_range_is_claimed():
    bulb = by_key(CELLAR)["wet_bulb"]
    assert bulb.low is bulb.high is None
    assert other_bulb_c(20.0, 0.6) is None


@pytest.mark.parametrize("temperature_c", [1.0, 3.0])
@pytest.mark.parametrize(("moister", "may_be_iced"), [(-1e-4, True), (1e-4, False)])
def test_ice_lasts_on_a_bulb_up_to_nothing_and_no_further(temperature_c: float, moister: float, may_be_iced: bool):
    """The air in which a bulb of ice stands at 0 °C exactly, and a hair drier and moister than that."""
    ratio = ice_bulb_ratio(temperature_c, 0.0, STANDARD_PA)
    vapour_pa = STANDARD_PA * ratio / (0.621945 + ratio)
    humidity = vapour_pa / vapour_pressure_pa(temperature_c, 1.0)
    assert wet_bulb_c(temperature_c, humidity)[1] is False
    assert (other_bulb_c(temperature_c, humidity * (1 + moister)) is not None) is may_be_iced


def test_a_wet_bulb_well_above_freezing_needs_no_caution():
    assert in_words(by_key(CELLAR)["wet_bulb"].cautions) == ()


@pytest.mark.parametrize("reader", [METRIC, US], ids=lambda reader: reader.system)
@pytest.mark.parametrize(
    "figure",
    [*CELLAR, *COOLED, *moist_air(-5.0, 0.8, 70e3), deficit(12.0, 0.75, 0.9, 10.0), station_pressure(300.0)],
    ids=lambda figure: figure.key,
)
def test_the_numbers_put_in_give_the_number_got_out(figure, reader):
    sums = sums_in(figure, reader)
    assert sums
    for line, left, right in sums:
        assert left == pytest.approx(right, rel=1e-4), line


@pytest.mark.parametrize("figure", [*COOLED, station_pressure(300.0)], ids=lambda figure: figure.key)
def test_the_last_line_of_working_ends_in_the_figure(figure):
    assert figure.working[-1].say(METRIC).endswith(figure.amount.show_exact(METRIC))


@pytest.mark.parametrize("figure", [*COOLED, station_pressure(300.0)], ids=lambda figure: figure.key)
def test_every_figure_names_a_source(figure):
    assert figure.source.verified in {"copy", "computed"}


def test_drying_force_is_zero_where_surface_and_air_agree():
    assert deficit(12.0, 0.8, surface_activity=0.8).value == pytest.approx(0, abs=1e-9)


def test_drying_force_over_pure_water_is_what_the_air_lacks():
    assert deficit(12.0, 0.75).value == pytest.approx(vapour_pressure_pa(12.0, 0.25))


def test_a_cooler_surface_dries_less():
    assert deficit(12.0, 0.75, 0.97, surface_c=10.0).value < deficit(12.0, 0.75, 0.97).value


def test_a_surface_that_takes_up_water_is_negative_and_says_so():
    figure = deficit(12.0, 0.9, surface_activity=0.8)
    assert figure.value < 0
    assert in_words(figure.cautions) == (TAKES_UP,)


def test_a_surface_that_dries_carries_no_caution():
    assert in_words(deficit(12.0, 0.75).cautions) == ()


def test_air_at_sea_level_has_standard_pressure():
    assert station_pressure(0.0).value == 101_325.0


def test_a_pressure_from_the_height_warns_of_the_weather():
    assert "Weather" in in_words(station_pressure(300.0).cautions)[0]


@pytest.mark.parametrize(
    ("compute", "field", "sentence"),
    [
        (lambda: moist_air(-20.1, 0.5), "temperature", "Temperature must be between −20 °C and 60 °C."),
        (lambda: moist_air(60.1, 0.5), "temperature", "Temperature must be between −20 °C and 60 °C."),
        (lambda: moist_air(float("nan"), 0.5), "temperature", None),
        (lambda: moist_air(12.0, 1.001), "humidity", "Humidity must be between 0 % and 100 %."),
        (lambda: moist_air(12.0, -0.001), "humidity", "Humidity must be between 0 % and 100 %."),
        (lambda: moist_air(12.0, float("nan")), "humidity", None),
        (lambda: moist_air(12.0, 0.0), "humidity", "Humidity must be above 0 %: air without water has no dew point."),
        (lambda: moist_air(12.0, 0.001), "humidity", None),
        (lambda: moist_air(12.0, 0.5, 59_999.0), "pressure", None),
        (lambda: moist_air(12.0, 0.5, 110_001.0), "pressure", None),
        (
            lambda: deficit(12.0, 0.5, 1.01),
            "surface_activity",
            "Water activity of the surface must be between 0 and 1.",
        ),
        (lambda: deficit(12.0, 0.5, 0.9, 61.0), "surface_temperature", None),
        (lambda: station_pressure(-501.0), "altitude", None),
        (lambda: station_pressure(4001.0), "altitude", None),
        (lambda: saturation_pressure_pa(-40.1), "temperature", None),
        (lambda: ice_saturation_pressure_pa(0.1), "temperature", None),
    ],
)
def test_what_is_out_of_range_is_refused_by_field(compute, field, sentence):
    with pytest.raises(OutOfRange) as caught:
        compute()
    assert caught.value.field == field
    assert sentence in (None, caught.value.sentence)


@pytest.mark.parametrize("temperature_c", [-20.0, 0.0, 0.01, 60.0])
@pytest.mark.parametrize("pressure_pa", [60e3, 110e3])
def test_every_corner_of_the_range_is_answered(temperature_c, pressure_pa):
    assert len(moist_air(temperature_c, 1.0, pressure_pa)) >= 7


def test_drying_force_of_dry_air_needs_no_dew_point():
    assert deficit(12.0, 0.0).value == pytest.approx(vapour_pressure_pa(12.0, 1.0))


def test_the_guard_lets_the_bounds_through():
    require_air(-20.0, 0.0, 60e3)
    require_air(60.0, 1.0, 110e3)


def test_saturated_air_is_its_own_dew_point_and_wet_bulb():
    assert (dew_point_c(20.0, 1.0), wet_bulb_c(20.0, 1.0)) == (20.0, (20.0, False))


def test_there_is_no_frost_point_above_freezing():
    assert frost_point_c(12.0, 0.75) is None


def test_pressure_falls_with_height():
    assert station_pressure_pa(-500) > station_pressure_pa(0) > station_pressure_pa(1000) > station_pressure_pa(4000)


@pytest.mark.parametrize(
    ("humidity", "sentence"), [(0.0, "air without water has no dew point"), (1e-4, "dew point below −40 °C")]
)
def test_air_without_water_and_air_too_dry_are_told_apart(humidity: float, sentence: str):
    for point in (dew_point_c, frost_point_c):
        with pytest.raises(OutOfRange, match=sentence) as caught:
            point(20.0, humidity)
        assert caught.value.field == "humidity"


@pytest.mark.parametrize("surface_c", [-20.001, 60.001])
def test_a_surface_out_of_range_is_refused_as_that(surface_c: float):
    with pytest.raises(OutOfRange, match=r"^Surface temperature must be between −20 °C and 60 °C") as caught:
        deficit(12.0, 0.8, 0.97, surface_c)
    assert caught.value.field == "surface_temperature"
