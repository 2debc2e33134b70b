"""The instruments' screens: added, checked, corrections seen where a reading is shown, recalibrated, retired."""

import pytest

from core.daybook.facts.batch import PieceWeighed, Reading
from core.daybook.facts.chamber import AirRead
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

CORRECTED = "corrected from 72 % (salt check of 2 Nov)"


def add(visitor: Visitor, kind: str = "hygrometer", name: str = "Larder", **more: str) -> str:
    """The instrument's path."""
    return visitor.fill("/chamber/instruments/add", name=name, kind=kind, **more).path.partition("?")[0]


def key_of(path: str) -> str:
    return path.rpartition("/")[2]


def checked(visitor: Visitor, reading: str = "79") -> str:
    """A hygrometer checked over table salt at 12 °C, where it should read 75.66 %; it is a day later."""
    path = add(visitor)
    visitor.fill(f"{path}/check/salt", temperature_c="12", reading=reading)
    visitor.wait(days=1)
    return path


def meter(visitor: Visitor, seven: str = "7.1", four: str = "4.1") -> str:
    path = add(visitor, "ph-meter", "Pen")
    texts = {"buffer": "7", "temperature_c": "25", "reading": seven, "other_temperature_c": "25"}
    visitor.fill(f"{path}/check/buffers", other_buffer="4", other_reading=four, **texts)
    visitor.wait(hours=1)
    return path


def scale(visitor: Visitor, reading: str = "1008") -> str:
    path = add(visitor, "scale", "Bench")
    visitor.fill(f"{path}/check/weights", mass_kg="1000", reading_kg=reading, division_kg="1")
    visitor.wait(hours=1)
    return path


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


def test_the_air_is_read_on_the_one_instrument_there_is(visitor: Visitor):
    path = checked(visitor)
    assert visitor.get("/chamber/air").typed("instrument") == key_of(path)


def test_the_one_used_last_is_chosen_again(visitor: Visitor):
    one, other = checked(visitor), add(visitor, "thermometer", "Stem")
    visitor.fill("/chamber/air", temperature_c="12", instrument=key_of(one))
    assert visitor.get("/chamber/air").typed("instrument") == key_of(one)
    visitor.fill("/chamber/air", temperature_c="12", instrument="another")
    assert visitor.get("/chamber/air").typed("instrument") == "another"
    assert key_of(other) in visitor.get("/chamber/air").html


def test_the_raw_reading_is_what_is_kept(visitor: Visitor):
    path = checked(visitor)
    saved = visitor.fill("/chamber/air", temperature_c="12", humidity="72").saved
    assert visitor.fact(saved) == AirRead(12.0, 0.72, key_of(path))


def test_the_corrected_reading_is_seen_while_it_is_typed(visitor: Visitor):
    path = checked(visitor)
    page = visitor.get("/chamber/air", figures="1", temperature_c="12", humidity="72", instrument=key_of(path))
    assert page.figures["humidity_corrected"] == "68.7 %"
    assert page.figures["dew_point"] == "6.4 °C"  # of 68.7 %; of 72 % it would be 7.1 °C


def test_the_corrected_reading_is_seen_in_the_chamber_in_the_log_and_today(visitor: Visitor):
    checked(visitor)
    visitor.fill("/chamber/air", temperature_c="12", humidity="72")
    chamber, today = visitor.get("/chamber"), visitor.get("/")
    assert chamber.texts("p", "value")[0] == "12.0 °C · 68.7 %"
    assert today.texts("p", "big") == ["12.0 °C 68.7 %"]
    assert all(CORRECTED in page.text for page in (chamber, today))
    assert f"Air: 12.0 °C, 68.7 %, {CORRECTED}" in chamber.texts("span", "words")


def test_an_earlier_reading_is_not_touched_by_a_later_check(visitor: Visitor):
    path = add(visitor)
    visitor.fill("/chamber/air", temperature_c="12", humidity="72")
    visitor.wait(hours=1)
    visitor.fill(f"{path}/check/salt", temperature_c="12", reading="79")
    assert visitor.get("/chamber").texts("p", "value")[0] == "12.0 °C · 72 %"


def test_a_failed_hygrometer_is_told_with_its_reading(visitor: Visitor):
    checked(visitor, "95")
    page = visitor.fill("/chamber/air", temperature_c="12", humidity="72")
    assert "proves nothing: Larder failed its salt check of 2 Nov" in page.text
    assert page.texts("p", "value")[0] == "12.0 °C · 72 %"


def test_a_ph_corrected_is_seen_in_the_batch_and_settles_it(visitor: Visitor):
    batch = visitor.start_batch()
    visitor.cure(batch)
    path = meter(visitor)
    saved = visitor.fill(f"{batch}/reading", ph="5.38").saved
    assert visitor.fact(saved) == Reading(5.38, None, key_of(path))
    page = visitor.get(batch)
    assert "pH 5.28" in page.text
    assert "corrected from 5.38 (buffer check of 2 Nov)" in page.text


def test_a_weight_corrected_is_seen_on_the_piece_and_in_its_loss(visitor: Visitor):
    batch = visitor.cured_and_acid()
    path = scale(visitor)
    piece = visitor.hang(batch, start="1260")
    visitor.wait(days=20)
    saved = visitor.fill(f"{piece}/weigh", mass_kg="1008").saved
    assert visitor.fact(saved) == PieceWeighed(1.008, key_of(path))
    page = visitor.get(piece)
    assert page.texts("p", "value")[0].replace("\u00a0", " ") in ("1 000 g", "1 000.0 g")
    assert "20" in page.text
    assert "corrected from 1" in page.text
    assert "corrected from" in visitor.get(batch).text


def test_a_weight_shows_loss_and_correction_while_it_is_typed(visitor: Visitor):
    batch = visitor.cured_and_acid()
    path = scale(visitor)
    piece = visitor.hang(batch, start="1260")
    page = visitor.get(f"{piece}/weigh", figures="1", mass_kg="1008", scale=key_of(path))
    assert page.figures["loss"] == "20.0 %"
    assert page.figures["mass_corrected"].startswith("1")


def test_an_instrument_that_is_not_listed_is_refused_in_words(visitor: Visitor):
    checked(visitor)
    page = visitor.fill("/chamber/air", temperature_c="12", instrument="<b>mine</b>")
    assert (page.status, page.beside("instrument")) == (422, "Choose one of those listed.")


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


def test_a_reading_on_a_retired_instrument_keeps_it_when_corrected(visitor: Visitor):
    path = checked(visitor)
    saved = visitor.fill("/chamber/air", temperature_c="12", humidity="72").saved
    visitor.fill(f"{path}/retire")
    visitor.fill(f"/entries/{saved}/correct", humidity="73")
    assert visitor.fact(saved) == AirRead(12.0, 0.73, key_of(path))


def test_a_check_can_be_corrected_and_the_readings_follow(visitor: Visitor):
    path = add(visitor)
    check = visitor.fill(f"{path}/check/salt", temperature_c="12", reading="79").saved
    visitor.wait(days=1)
    visitor.fill("/chamber/air", temperature_c="12", humidity="72")
    page = visitor.fill(f"/entries/{check}/correct", reading="80")
    assert page.path.startswith(path)
    assert visitor.get("/chamber").texts("p", "value")[0] == "12.0 °C · 67.7 %"


def test_a_check_can_be_undone(visitor: Visitor):
    path = add(visitor)
    page = visitor.fill(f"{path}/check/salt", temperature_c="12", reading="79")
    after = visitor.send(page.form("/undo"))
    assert after.path.startswith(path)
    assert "not checked yet" in after.text


def test_an_instrument_taken_back_leaves_its_page_for_the_list(visitor: Visitor):
    path = add(visitor)
    page = visitor.post(f"/entries/{key_of(path)}/withdraw")
    assert (page.status, page.path.partition("?")[0]) == (200, "/chamber/instruments")
    assert visitor.get(path).status == 404
    assert visitor.send(page.form("/undo")).status == 200
    assert visitor.get(path).status == 200


def test_an_old_check_is_a_line_on_today_that_opens_its_page(visitor: Visitor):
    path = checked(visitor, "76")
    visitor.wait(days=220)
    page = visitor.get("/")
    line = next(each for each in page.all("li") if "Check the hygrometer Larder" in each.text)
    assert "last checked 7 months ago" in line.text
    assert line.all("a")[0]["href"] == path
    assert "accept, old" in visitor.get("/chamber").text


def test_both_readings_travel_in_an_export(visitor: Visitor, other: Visitor):
    checked(visitor)
    visitor.fill("/chamber/air", temperature_c="12", humidity="72")
    exported = visitor.client.get("/yours/export").get_data(as_text=True)
    other.now = visitor.now
    other.read_in(exported)
    assert CORRECTED in other.get("/chamber").text


def test_one_that_passed_its_check_needs_no_correction(visitor: Visitor):
    path = add(visitor, "thermometer", "Stem")
    visitor.fill(f"{path}/check/ice", reading_c="0.5 °C")
    assert "No correction needed. By the ice check" in visitor.get(path).text


@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_correction_reads_in_either_system(visitor: Visitor, units: str):
    visitor.settings(units=units)
    path = add(visitor, "thermometer", "Stem", tolerance_k="0.2 K")
    visitor.fill(f"{path}/check/ice", reading_c="0.5 °C")
    expected = {"metric": "0.5 K is taken off every reading.", "us": "0.9 °F is taken off every reading."}
    assert expected[units] in visitor.get(path).text


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
