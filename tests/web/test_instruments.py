"""Instruments kept, checked, set right and retired."""

import pytest

from core.daybook.facts.instruments import (
    BoilingPointChecked,
    BuffersChecked,
    IcePointChecked,
    InstrumentAdded,
    MassesChecked,
    SaltChecked,
    TwoSaltsChecked,
)
from tests.web.conftest import Visitor, alike
from tests.web.workbench import add, checked, key_of, meter, scale


def test_no_instrument_no_question(visitor: Visitor):
    batch = visitor.start_batch()
    for path in ("/chamber/air", f"{batch}/reading", f"{batch}/hang"):
        names = visitor.get(path).form(path).values
        assert not {"instrument", "meter", "thermometer", "scale"} & set(names)


def test_an_empty_list_says_what_to_do(visitor: Visitor):
    assert "None yet." in visitor.get("/chamber/instruments").text


def test_an_instrument_is_kept(visitor: Visitor):
    path = add(visitor, name="North", check_every_s="90", tolerance_k="0.5", tolerance_humidity="2", probe="ch 1")
    kept = visitor.fact(key_of(path))
    assert alike(kept, InstrumentAdded("North", "hygrometer", 90.0 * 86400, 0.5, 0.02, "ch 1"))


def test_its_page_says_that_it_was_never_checked(visitor: Visitor):
    assert "not checked yet" in visitor.get(add(visitor)).text


def test_the_chamber_lists_it(visitor: Visitor):
    add(visitor)
    assert "Larder" in visitor.get("/chamber").texts("a")


def test_a_name_is_given_once(visitor: Visitor):
    add(visitor)
    page = visitor.fill("/chamber/instruments/add", name="larder", kind="scale")
    assert page.status == 422
    assert page.beside("name") == "There is an instrument larder already. Give this one another name."


def test_a_scale_has_no_tolerance_of_humidity(visitor: Visitor):
    page = visitor.fill("/chamber/instruments/add", name="Bench", kind="scale", tolerance_humidity="3")
    assert "only a hygrometer reads humidity" in page.beside("tolerance_humidity")


def test_a_thermometer_is_offered_its_own_checks(visitor: Visitor):
    page = visitor.get(add(visitor, "thermometer", "Stem"))
    assert page.texts("a", "button")[:2] == ["In ice", "In boiling water"]


def test_a_check_of_another_kind_is_not_here(visitor: Visitor):
    path = add(visitor, "scale", "Bench")
    assert visitor.get(f"{path}/check/ice").status == 404


def test_a_salt_check_is_kept_raw(visitor: Visitor):
    path = add(visitor)
    key = visitor.fill(f"{path}/check/salt", temperature_c="12", reading="79").saved
    assert alike(visitor.fact(key), SaltChecked("nacl", 12.0, 0.79))


def test_a_check_in_us_units_and_with_a_comma(visitor: Visitor):
    visitor.settings(units="us", decimal="comma")
    path = add(visitor)
    key = visitor.fill(f"{path}/check/salt", temperature_c="53,6", reading="79,5").saved
    assert alike(visitor.fact(key), SaltChecked("nacl", 12.0, 0.795))


def test_a_check_figures_as_one_types(visitor: Visitor):
    path = f"{add(visitor)}/check/salt"
    page = visitor.get(
        path, figures="1", salt="nacl", temperature_c="12", reading="79", division="0.1", apart_k="0.2", bulk="small"
    )
    assert page.figures["offset"] == "−3.3 %"
    assert page.figures["wait"] == "20 min"


def test_how_long_to_wait_is_said_before_anything_is_typed(visitor: Visitor):
    page = visitor.get(f"{add(visitor)}/check/salt")
    assert "wait at least 20 min with a small bare sensor, 60 min with a bulky one" in page.text


def test_no_reading_and_no_temperature_is_guessed(visitor: Visitor):
    path = f"{add(visitor, 'ph-meter', 'Pen')}/check/buffers"
    values = visitor.get(path).form(path).values
    names = ("buffer", "temperature_c", "reading", "other_buffer", "other_temperature_c", "other_reading")
    assert [values[name] for name in names] == [""] * 6


def test_a_check_outside_the_salts_range_is_refused_beside_its_box(visitor: Visitor):
    path = add(visitor)
    page = visitor.fill(f"{path}/check/salt", salt="k2co3", temperature_c="35 °C", reading="45")
    assert "let the salt stand within that" in page.beside("temperature_c")


def test_buffers_too_close_are_refused_beside_the_second(visitor: Visitor):
    path = add(visitor, "ph-meter", "Pen")
    texts = {"buffer": "7", "temperature_c": "25", "reading": "7", "other_buffer": "6.5", "other_temperature_c": "25"}
    page = visitor.fill(f"{path}/check/buffers", other_reading="6.5", **texts)
    assert "at least 1 pH apart" in page.beside("other_buffer")


def test_the_page_of_a_checked_instrument_says_its_word_and_its_correction(visitor: Visitor):
    page = visitor.get(checked(visitor))
    assert "3.34 % is taken off every reading." in page.text
    assert "adjust" in page.texts("strong")


def test_boiling_water_knows_the_height_from_the_last_check(visitor: Visitor):
    one, other = add(visitor, "thermometer", "Stem"), add(visitor, "thermometer", "Needle")
    key = visitor.fill(f"{one}/check/boiling", reading_c="98.4", altitude_m="300").saved
    assert alike(visitor.fact(key), BoilingPointChecked(98.4, 300.0))
    assert visitor.get(f"{other}/check/boiling").typed("altitude_m") == "300"


def test_ice_is_kept(visitor: Visitor):
    path = add(visitor, "thermometer", "Stem")
    assert visitor.fact(visitor.fill(f"{path}/check/ice", reading_c="-0.3").saved) == IcePointChecked(-0.3)


def test_the_first_salt_begins_the_check_over_two(visitor: Visitor):
    path = add(visitor)
    visitor.fill(f"{path}/check/salt", temperature_c="20", reading="78")
    visitor.wait(hours=2)
    key = visitor.fill(f"{path}/check/salts", other_temperature_c="20", other_reading="86.4").saved
    assert alike(visitor.fact(key), TwoSaltsChecked("nacl", 20.0, 0.78, "kcl", 20.0, 0.864))


def test_buffers_are_kept(visitor: Visitor):
    path = meter(visitor)
    found = next(line.fact for line in visitor.book.about(key_of(path)) if isinstance(line.fact, BuffersChecked))
    assert found == BuffersChecked("ph", 7.0, 25.0, 7.1, 4.0, 25.0, 4.1)


def test_weights_are_kept(visitor: Visitor):
    path = scale(visitor)
    found = next(line.fact for line in visitor.book.about(key_of(path)) if isinstance(line.fact, MassesChecked))
    assert alike(found, MassesChecked(1.0, 1.008, 0.001))


def test_who_sets_it_right_by_hand_is_asked_to_say_so(visitor: Visitor):
    path = checked(visitor)
    assert "Otherwise its readings are corrected twice." in visitor.get(path).text
    assert "corrected twice" not in visitor.fill(f"{path}/recalibrate").text


def test_recalibrated_ends_the_correction(visitor: Visitor):
    path = checked(visitor)
    page = visitor.fill(f"{path}/recalibrate", note="calibrated")
    assert "No valid check" in page.text
    visitor.fill("/chamber/air", temperature_c="12", humidity="72")
    assert visitor.get("/chamber").texts("p", "value")[0] == "12.0 °C · 72 %"


def test_a_retired_instrument_is_offered_no_more(visitor: Visitor):
    path = checked(visitor)
    visitor.fill(f"{path}/retire", note="broken")
    assert "instrument" not in visitor.get("/chamber/air").form("/air").values
    assert "Retired" in visitor.get("/chamber/instruments").texts("h2")


def test_an_old_check_is_a_line_on_today_that_opens_its_page(visitor: Visitor):
    path = checked(visitor, "76")
    visitor.wait(days=220)
    page = visitor.get("/")
    line = next(each for each in page.all("li") if "Check the hygrometer Larder" in each.text)
    assert "last checked 7 months ago" in line.text
    assert line.all("a")[0]["href"] == path
    assert "accept, old" in visitor.get("/chamber").text


def test_what_an_instrument_is_nobody_chooses_but_its_owner(visitor: Visitor):
    page = visitor.fill("/chamber/instruments/add", name="Needle")
    assert page.beside("kind") == "Choose one for “What it is”."
    assert len(visitor.book) == 0


@pytest.mark.parametrize(
    ("kind", "way", "words"),
    [("hygrometer", "salt", "salt as wet as sand"), ("hygrometer", "salts", "salt as wet as sand"),
     ("ph-meter", "buffers", "Rinse and dab dry"), ("thermometer", "ice", "")],
)  # fmt: skip
def test_where_words_tire_a_check_is_drawn_with_its_words(visitor: Visitor, kind: str, way: str, words: str):
    page = visitor.get(f"{add(visitor, kind)}/check/{way}")
    drawn = page.all("figure", "drawing")
    assert len(drawn) == bool(words)
    assert all(words in each.text for each in drawn)
