"""What is read on an instrument is kept raw, and shown corrected wherever it is shown."""

import pytest

from core.daybook.facts.batch import PieceWeighed, Reading
from core.daybook.facts.chamber import AirRead
from tests.web.conftest import Visitor
from tests.web.workbench import add, checked, key_of, meter, scale

CORRECTED = "corrected from 72 % (salt check of 2 Nov)"


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
