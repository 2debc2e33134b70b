"""Set-points and moisture at their limits: each from both sides, and the figures worked by hand."""

from collections.abc import Callable

import pytest

from core.chamber.moisture import humidifier_need, moisture_load, wet_limit
from core.chamber.programmes import BY_KEY, beef_ageing
from core.chamber.setpoints import beside, equal_humidity, equal_line, equal_temperature
from core.quantities import METRIC
from core.refusals import OutOfRange
from core.sentence import said
from tests.core.telling import in_words

DAY_S = 86_400.0


def figure(figures, key: str):
    return next(each for each in figures if each.key == key)


@pytest.mark.parametrize(
    ("temperature_c", "where"),
    [(11.95, ""), (11.94, "below"), (16.05, ""), (16.06, "above"), (12.0, ""), (16.0, "")],
)
def test_a_set_point_is_held_to_a_twentieth_of_a_degree(temperature_c: float, where: str):
    """The cellar is printed as 12 to 16 °C."""
    told = beside(BY_KEY["dry-cellar"], temperature_c, 0.75)[0]
    assert in_words(told.cautions) == ((f"The set-point lies {where} what is printed.",) if where else ())
    assert (told.value, told.low, told.high) == (14, 12, 16)


@pytest.mark.parametrize(
    ("humidity", "where"), [(0.6995, ""), (0.6994, "below"), (0.8005, ""), (0.8006, "above"), (0.75, "")]
)
def test_and_to_half_a_tenth_of_a_per_cent(humidity: float, where: str):
    """It is printed as 70 to 80 %."""
    told = beside(BY_KEY["dry-cellar"], 14.0, humidity)[1]
    assert in_words(told.cautions) == ((f"The set-point lies {where} what is printed.",) if where else ())
    assert (told.value, told.low, told.high) == (0.75, 0.70, 0.80)


def test_a_single_point_that_is_printed_has_no_range():
    told = beside(BY_KEY["dry-65mm"], 12.0, 0.84)
    assert [(each.value, each.low, each.high) for each in told] == [(12, None, None), (0.84, None, None)]
    assert told[0].working[0].say(METRIC) == (
        "65 mm sausage, day 5 to 28: 12 °C. The set-point of 12 °C lies within it."
    )


def test_a_rule_without_a_lower_limit_says_at_most():
    told = beside(BY_KEY["beef-eu"], 2.0, 0.80)
    assert [said(each.name).say(METRIC) for each in told] == ["Temperature printed", "Humidity printed, at most"]
    assert (told[1].value, told[1].low, told[1].high) == (0.85, None, None)
    assert told[1].working[0].say(METRIC) == "EU rule of 2024: at most 85 %. The set-point of 80 % lies within it."
    assert in_words(told[1].cautions) == (BY_KEY["beef-eu"].note,)


@pytest.mark.parametrize(
    ("place", "value", "met"),
    [
        (0, -0.5, True), (0, -0.5001, False), (0, 3.0, True), (0, 3.0001, False), (0, 3.0 + 1e-9 * 3.0, True),
        (1, 0.0, True), (1, -0.0001, False), (1, 0.85, True), (1, 0.8501, False),
        (2, 0.2, True), (2, 0.1999, False), (2, 0.5, True), (2, 0.5001, False),
        (3, 0.0, True), (3, 35.0, True), (3, 35 * (1 + 5e-10), True), (3, 35 * (1 + 2e-9), False),
        (0, -0.5 - 1e-9 * 3.0, True), (3, -0.001, False),
    ],
)  # fmt: skip
def test_the_limits_for_aged_beef_are_met_at_their_bounds(place: int, value: float, met: bool):
    """Delegated Reg. (EU) 2024/1141: −0.5 to 3 °C, 85 % at most, 0.2 to 0.5 m/s, 35 days."""
    given: list[float | None] = [2.0, 0.8, 0.3, 20.0]
    given[place] = value
    because = beef_ageing(*given)
    assert because[place].met is met
    assert all(reason.met for at, reason in enumerate(because) if at != place)


@pytest.mark.parametrize(
    ("place", "name", "allowed"),
    [
        (0, "Surface", "−0.5 °C to 3 °C"),
        (1, "Humidity", "at most 85 %"),
        (2, "Air speed", "0.2 m/s to 0.5 m/s"),
        (3, "Time since it settled", "at most 35 d"),
    ],
)
def test_what_is_not_measured_is_told_with_what_the_rule_allows(place: int, name: str, allowed: str):
    given: list[float | None] = [2.0, 0.8, 0.3, 20.0]
    given[place] = None
    reason = beef_ageing(*given)[place]
    assert reason.settle is not None
    assert (reason.met, reason.text.say(METRIC)) == (None, f"{name} is not measured; the rule allows {allowed}.")
    assert reason.settle.say(METRIC) == f"Measure it; the rule allows {allowed}."


def refused(call: Callable[[], object]) -> str | None:
    try:
        call()
    except OutOfRange as refusal:
        return refusal.field
    return None


KILO, A_DAY = 10.0, 0.01 / DAY_S


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: equal_humidity(12.0, 0.8, 0.97, -20.0), "other_temperature"),
        (lambda: equal_humidity(-19.0, 0.9, 0.97, -20.0), None),
        (lambda: equal_humidity(-19.0, 0.9, 0.97, -20.1), "other_temperature"),
        (lambda: equal_humidity(30.0, 0.8, 0.97, 60.0), None),
        (lambda: equal_humidity(30.0, 0.8, 0.97, 60.1), "other_temperature"),
        (lambda: equal_temperature(12.0, 0.8, 0.97, 0.0), None),
        (lambda: equal_temperature(12.0, 0.8, 0.97, -0.001), "other_humidity"),
        (lambda: moisture_load(999.9, A_DAY), None),
        (lambda: moisture_load(1000.0, A_DAY), "hanging"),
        (lambda: moisture_load(0.0, A_DAY), "hanging"),
        (lambda: moisture_load(KILO, 0.1 / DAY_S), None),
        (lambda: moisture_load(KILO, 0.1001 / DAY_S), "loss"),
        (lambda: moisture_load(KILO, 0.0), None),
        (lambda: moisture_load(KILO, -1e-12), "loss"),
        (lambda: moisture_load(KILO, A_DAY, peak_per_s=0.1001 / DAY_S), "peak"),
        (lambda: moisture_load(KILO, A_DAY, -5.0), None),
        (lambda: moisture_load(KILO, A_DAY, -5.1), "temperature"),
        (lambda: moisture_load(KILO, A_DAY, 40.0), None),
        (lambda: moisture_load(KILO, A_DAY, 40.1), "temperature"),
        (lambda: moisture_load(KILO, A_DAY, chamber_m3=100.0), None),
        (lambda: moisture_load(KILO, A_DAY, chamber_m3=100.1), "chamber"),
        (lambda: moisture_load(KILO, A_DAY, chamber_m3=-0.1), "chamber"),
        (lambda: humidifier_need(0.5, 12.0, 0.8, 20.0, 0.5, 0.0), None),
        (lambda: humidifier_need(0.5, 12.0, 0.8, 20.0, 0.5, -0.1), "changes"),
        (lambda: humidifier_need(0.5, 12.0, 0.8, 20.0, 0.5, 1000.0), None),
        (lambda: humidifier_need(0.5, 12.0, 0.8, 20.0, 0.5, 1000.1), "changes"),
        (lambda: humidifier_need(0.5, 12.0, 0.8, 20.0, 0.5, 1.0, 0.999), None),
        (lambda: humidifier_need(0.5, 12.0, 0.8, 20.0, 0.5, 1.0, 1.0), "drained"),
        (lambda: humidifier_need(0.5, 12.0, 0.8, 20.0, 0.5, 1.0, -1e-9), "drained"),
        (lambda: wet_limit(0.0, 0.06, 12.0, 0.8, 0.1), "hanging"),
    ],
)
def test_each_limit_has_a_hair_on_either_side(call: Callable[[], object], field: str | None):
    assert refused(call) == field


def test_the_line_of_equal_force_ends_at_dry_and_at_full_air():
    """At 12 °C and 80 % the surface of 0.97 is 0.17 of saturation above the air."""
    assert equal_line(12.0, 0.97, 0.97, (5.0, 40.0)) == ((5.0, 0.97), (40.0, 0.97))
    assert equal_line(12.0, 0.0, 1.0, (12.0, 11.9)) == ((12.0, 0.0),)
    assert equal_line(12.0, 1.0, 0.9, (12.0, 11.9)) == ((12.0, 1.0),)


def test_ten_kilograms_that_lose_one_per_cent_a_day_by_hand():
    """100 g a day, 4.1667 g/h; in the first days 1.5 % where nothing is told, from 1 to 2."""
    figures = moisture_load(KILO, A_DAY)
    mean, peak, coil = (figure(figures, key) for key in ("given_off", "peak", "coil"))
    assert mean.value * DAY_S == pytest.approx(0.1)
    assert [each * DAY_S for each in (peak.low, peak.value, peak.high)] == pytest.approx([0.1, 0.15, 0.2])
    assert [each * DAY_S * 1000 for each in (coil.low, coil.value, coil.high)] == pytest.approx([0.1, 0.1, 0.15])
    heat, most = figure(figures, "latent"), figure(figures, "latent_peak")
    assert heat.value == pytest.approx(0.1 / DAY_S * 2.473e6, rel=0.002)  # 2501 − 2.36 × 12 kJ/kg, ASHRAE
    assert (heat.low, heat.high) == (None, None)
    assert (most.low / most.value, most.high / most.value) == pytest.approx((1 / 1.5, 2 / 1.5))


@pytest.mark.parametrize(
    ("loss", "spread"), [(0.015, (0.015, 0.015, 0.02)), (0.012, (0.012, 0.015, 0.02)), (0.03, (0.03, 0.03, 0.03))]
)
def test_the_first_days_lose_no_less_than_the_mean(loss: float, spread: tuple[float, ...]):
    peak = figure(moisture_load(KILO, loss / DAY_S), "peak")
    assert [each * DAY_S / KILO for each in (peak.low, peak.value, peak.high)] == pytest.approx(spread)


def test_a_first_loss_that_is_told_has_no_range():
    figures = moisture_load(KILO, A_DAY, peak_per_s=0.03 / DAY_S)
    peak = figure(figures, "peak")
    assert (peak.value * DAY_S, peak.low, peak.high, in_words(peak.cautions)) == (pytest.approx(0.3), None, None, ())
    assert figure(figures, "latent_peak").low is None
    slower = figure(moisture_load(KILO, A_DAY, peak_per_s=0.005 / DAY_S), "coil")
    assert [each * DAY_S * 1000 for each in (slower.low, slower.high)] == pytest.approx([0.05, 0.1])


def test_how_fast_the_humidity_rises_by_hand():
    """Air of 12 °C holds 10.7 g/m³ (ASHRAE's tables give 10.66): in 500 L one per cent is 0.0533 g."""
    figures = moisture_load(KILO, A_DAY, chamber_m3=0.5)
    assert figure(figures, "one_per_cent").value == pytest.approx(5.33e-5, rel=0.01)
    assert figure(figures, "rises_in").value == pytest.approx(5.33e-5 / (0.1 / DAY_S), rel=0.01)
    assert not [each for each in moisture_load(KILO, 0.0, chamber_m3=0.5) if each.key == "rises_in"]
    assert not [each for each in moisture_load(KILO, A_DAY) if each.key == "one_per_cent"]


def test_the_surface_of_a_kilogram_by_hand():
    """4 ÷ (1050 kg/m³ × 0.06 m) = 0.06349 m²/kg."""
    limit = wet_limit(KILO, 0.06, 12.0, 0.8, 0.1)
    assert limit.working[2].say(METRIC) == "A kilogram of it has 0.0634921 m²/kg: 4 ÷ (1050 kg/m³ × thickness)."
    assert wet_limit(2 * KILO, 0.06, 12.0, 0.8, 0.1).value == pytest.approx(2 * limit.value)


@pytest.mark.parametrize(("room", "brings"), [(0.2, False), (0.9, True)])
def test_what_a_humidifier_adds_by_hand(room: float, brings: bool):
    """10.66 g/m³ × 0.8 inside at 12 °C, 17.28 g/m³ × the room's at 20 °C; half a cubic metre, ten changes a day."""
    need, once = humidifier_need(0.5, 12.0, 0.8, 20.0, room, 10.0, 1e-7)
    short = 0.5 * (0.01066 * 0.8 - 0.01728 * room)
    assert once.value == pytest.approx(short, rel=0.01)
    assert need.value * DAY_S * 1000 == pytest.approx(short * 10 + 0.00864, rel=0.01)
    assert any("brings more water" in each for each in in_words(need.cautions)) is (need.value < 0) is brings


def test_meat_hangs_at_12_degrees_where_nothing_else_is_told():
    assert moisture_load(KILO, A_DAY) == moisture_load(KILO, A_DAY, 12.0)


@pytest.mark.parametrize("other", [-0.001, 1.001])
def test_a_humidity_that_cannot_be_is_told_as_that(other: float):
    with pytest.raises(OutOfRange, match=r"^The other humidity must be between 0 % and 100 %\.$"):
        equal_temperature(12.0, 0.8, 0.97, other)
