"""The chamber: its air and the humidifier's charge."""

import io

import pytest

from core.daybook.facts.chamber import AirRead, HumidifierCharged
from tests.core.kitchen import Kitchen
from tests.web.conftest import Visitor, alike
from tests.web.reading import Page


def test_an_empty_chamber(visitor: Visitor):
    page = visitor.get("/chamber")
    assert page.status == 200
    assert "Not charged yet." in page.text


def test_air_is_kept(visitor: Visitor):
    page = visitor.fill("/chamber/air", temperature_c="55 °F", humidity="78")
    assert alike(visitor.fact(page.saved), AirRead(115 / 9, 0.78))


def test_air_without_humidity_is_kept(visitor: Visitor):
    assert visitor.fact(visitor.fill("/chamber/air", temperature_c="12").saved) == AirRead(12.0)


def test_air_shows_its_figures(visitor: Visitor):
    assert "dew_point" in visitor.fill("/chamber/air", temperature_c="12", humidity="80").figures


def test_humidity_of_all_but_the_last_digit_is_all(visitor: Visitor):
    page = visitor.fill("/chamber/air", temperature_c="12", humidity="100.00000005")
    assert visitor.fact(page.saved).humidity == 1


@pytest.mark.parametrize("humidity", ["105", "105 %", "-5", "0"])
def test_humidity_beyond_all_or_nothing_is_refused(visitor: Visitor, humidity: str):
    page = visitor.fill("/chamber/air", temperature_c="12", humidity=humidity)
    assert page.beside("humidity") == "Relative humidity must be between 1 % and 100 %."


def test_a_charge_is_kept(visitor: Visitor):
    page = visitor.fill("/chamber/charge", water_m3="6 qt", soda_kg_per_m3="1 tbsp/qt", tank_m3="7 qt")
    charge = HumidifierCharged(water_m3=0.00567812, soda_kg=0.0828, tank_m3=0.00662447)
    assert alike(visitor.fact(page.saved), charge, rel=1e-5)


@pytest.mark.parametrize(
    ("units", "decimal", "shown"), [("metric", ".", "14.6"), ("metric", "comma", "14,6"), ("us", ".", "1")]
)
def test_the_usual_strength_is_shown_no_finer_than_it_is_known(visitor: Visitor, units: str, decimal: str, shown: str):
    visitor.settings(units=units, decimal=decimal)
    assert visitor.get("/chamber/charge").typed("soda_kg_per_m3") == shown


def test_the_usual_charge_is_a_tablespoon_to_the_quart(visitor: Visitor):
    visitor.settings(units="us")
    page = visitor.fill("/chamber/charge", water_m3="6")
    assert visitor.fact(page.saved).soda_kg == pytest.approx(6 * 0.0138)


def test_plain_water_is_a_charge(visitor: Visitor):
    page = visitor.fill("/chamber/charge", water_m3="5", soda_kg_per_m3="0", tank_m3="")
    assert visitor.fact(page.saved) == HumidifierCharged(0.005, 0.0)


def test_more_than_the_tank_holds_is_refused_beside_the_water(visitor: Visitor):
    page = visitor.fill("/chamber/charge", water_m3="8", tank_m3="6")
    assert "fill it no higher" in page.beside("water_m3")


def test_a_new_charge_starts_from_the_last_but_for_its_water(visitor: Visitor):
    visitor.fill("/chamber/charge", water_m3="5", soda_kg_per_m3="7.5", tank_m3="6")
    page = visitor.get("/chamber/charge")
    assert [page.typed(name) for name in ("water_m3", "soda_kg_per_m3", "tank_m3")] == ["", "7.5", "6"]


def test_the_last_charge_stands_on_the_page(visitor: Visitor):
    visitor.fill("/chamber/charge", water_m3="5", soda_kg_per_m3="10", tank_m3="")
    assert "with 50.0 g of baking soda" in visitor.get("/chamber").text


def test_the_log_tells_both(visitor: Visitor):
    visitor.fill("/chamber/charge", water_m3="5", tank_m3="")
    visitor.fill("/chamber/air", temperature_c="12")
    words = visitor.get("/chamber").texts("span", "words")
    assert [each.split(":")[0] for each in words] == ["Air", "Humidifier charged"]


def test_air_taken_back_is_not_the_chambers_air(visitor: Visitor):
    visitor.fill("/chamber/air", temperature_c="12")
    wrong = visitor.fill("/chamber/air", temperature_c="21").saved
    page = visitor.post(f"/entries/{wrong}/withdraw")
    assert page.texts("p", "value")[0] == "12.0 °C"


def test_one_reading_has_no_line_and_two_have_one(visitor: Visitor):
    visitor.fill("/chamber/set-points/choose/own", temperature_c="13", humidity="78")
    visitor.fill("/chamber/air", temperature_c="12")
    assert "readings since" not in visitor.get("/chamber").text
    visitor.wait(days=1)
    visitor.fill("/chamber/air", temperature_c="13")
    page = visitor.get("/chamber")
    assert "2 readings since yesterday" in page.text
    assert len(page.all("polyline")) == 1


def test_readings_of_last_month_are_not_these_days(visitor: Visitor):
    visitor.fill("/chamber/set-points/choose/own", temperature_c="13", humidity="78")
    visitor.fill("/chamber/air", temperature_c="12")
    visitor.wait(days=30)
    visitor.fill("/chamber/air", temperature_c="13")
    assert visitor.get("/chamber").all("polyline") == []


def test_an_instrument_never_checked_is_one_tap_from_its_check(visitor: Visitor):
    visitor.fill("/chamber/instruments/add", name="Needle", kind="thermometer")
    link = next(each for each in visitor.get("/chamber").all("a") if each["aria-label"] == "Check it: Needle")
    assert link.text == "Check it"


def test_an_instrument_checked_today_asks_for_nothing(visitor: Visitor):
    path = visitor.fill("/chamber/instruments/add", name="Needle", kind="thermometer").path.partition("?")[0]
    visitor.fill(f"{path}/check/ice", reading_c="0", division_k="0.1")
    page = visitor.get("/chamber")
    assert "Check it" not in page.text
    assert "accept" in page.texts("strong", "state")


def test_the_log_is_folded(visitor: Visitor):
    visitor.fill("/chamber/air", temperature_c="12")
    assert visitor.get("/chamber").by_id("log").attributes.get("open", "shut") == "shut"


def test_what_hangs_is_drawn_as_its_share_of_what_the_chamber_carries(visitor: Visitor):
    visitor.hang(visitor.cured_and_acid(), start="10 kg")
    visitor.fill("/chamber/capacity", rated_m3_s="0.3")
    page = visitor.get("/chamber")
    assert "10 kg of 20 kg it can carry" in page.text
    assert [each["width"] for each in page.all("rect", "gone")] == ["50.0"]


def test_more_than_the_chamber_carries_fills_the_bar_and_says_so(visitor: Visitor):
    visitor.hang(visitor.cured_and_acid(), start="30 kg")
    visitor.fill("/chamber/capacity", rated_m3_s="0.3")
    page = visitor.get("/chamber")
    assert "Overloaded" in page.texts("strong", "state")
    assert [each["width"] for each in page.all("rect", "gone")] == ["100.0"]


LOG = "Time,Temperature (°C),Humidity (%)\n" + "".join(
    f"2026-11-{day:02} {hour:02}:{minute:02}:00,{14.5 if hour == 3 else 12.0},80\n"
    for day in (1, 2)
    for hour in range(24)
    for minute in range(0, 60, 10)
    if (day, hour) < (2, 11)
)


def air_logged(visitor: Visitor, text: str = LOG, **values: str) -> Page:
    page = visitor.post("/chamber/air/logger", file=(io.BytesIO(text.encode()), "shelf.csv"))
    page = visitor.send(next(form for form in page.forms if "/files/" in form.action), do="take")
    return visitor.send(next(form for form in page.forms if "/air/logger/" in form.action), **values)


def test_a_loggers_file_of_the_air_is_kept_hour_by_hour(visitor: Visitor):
    page = air_logged(visitor)
    log = visitor.fact(page.saved)
    assert (len(log.begins_s), log.readings, max(log.highest_c)) == (35, 210, 14.5)
    assert set(log.humidities) == {0.8}
    assert "Air logged Probe 1: 210 readings over 35 h" in page.text


def test_no_file_of_the_air_is_refused(visitor: Visitor):
    assert visitor.post("/chamber/air/logger").status == 422


def test_a_piece_says_how_warm_it_was_by_the_log_and_for_how_long_nothing_is_known(visitor: Visitor):
    kitchen = Kitchen()
    piece = kitchen.hang(kitchen.begin(at=-3), at=-2)
    visitor.book.learn(kitchen.records)
    air_logged(visitor)
    page = visitor.get(f"/pieces/{piece}")
    assert "Mean kinetic temperature 12.2 °C, 14.5 °C at the warmest, over 32 h logged." in page.text
    assert "since it was hung: nothing was logged." in page.text


def test_bounds_of_the_house_are_kept_and_said(visitor: Visitor):
    page = visitor.fill("/chamber/drying-bounds", early_most="1.5")
    assert visitor.fact(page.saved).early_most == pytest.approx(0.015 / 86400)
    assert "first third 0.50 % a day to 1.50 % a day" in page.text


def test_a_bound_below_what_is_slow_is_refused(visitor: Visitor):
    page = visitor.fill("/chamber/drying-bounds", early_most="0.4")
    assert "It must be more than 0.50 % a day" in page.beside("early_most")
