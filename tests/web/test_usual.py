"""The question about a slip stands beside its box, what was typed stays, and typing the unit answers it."""

import pytest

from tests.web.conftest import Visitor

FINISHED = {"finished_kg": "8", "finished_kg-unit": "kg", "others": "4", "others-unit": "%"}


def test_a_single_sum_asks_beside_the_box_and_keeps_what_was_typed(visitor: Visitor):
    page = visitor.post("/sums/finished-mass", **FINISHED, **{"loss": "0.35", "loss-unit": "%"})
    assert page.status == 422
    assert "Is 35 % meant?" in page.beside("loss")
    assert page.form("/sums/finished-mass").values["loss"] == "0.35"


@pytest.mark.parametrize("typed", ["0.35 %", "35"])
def test_its_unit_or_the_number_meant_answers_it(visitor: Visitor, typed: str):
    page = visitor.post("/sums/finished-mass", **FINISHED, **{"loss": typed, "loss-unit": "%"})
    assert page.status == 200
    assert page.texts("p", "value")


def test_it_is_asked_while_one_types(visitor: Visitor):
    page = visitor.get("/sums/finished-mass", figures="1", **FINISHED, **{"loss": "0.35", "loss-unit": "%"})
    assert "Is 35 % meant?" in page.text


def test_a_unit_that_was_picked_beside_the_box_answers_it_too(visitor: Visitor):
    asked = visitor.post("/chamber/air", **{"temperature_c": "55", "temperature_c-unit": "°C", "humidity": "80"})
    assert "Is 55 °F meant?" in asked.beside("temperature_c")
    picked = visitor.post("/chamber/air", **{"temperature_c": "55", "temperature_c-unit": "°F", "humidity": "80"})
    assert visitor.fact(picked.saved).temperature_c == pytest.approx(12.7778, abs=1e-3)


def test_a_box_that_asks_opens_a_keyboard_that_has_units(visitor: Visitor):
    def box(page):
        return page.named("loss").attributes

    assert box(visitor.get("/sums/finished-mass"))["inputmode"] == "decimal"
    assert "inputmode" not in box(visitor.post("/sums/finished-mass", **FINISHED, loss="0.35"))


def test_an_entry_that_was_taken_at_its_word_is_not_asked_about_when_it_is_corrected(visitor: Visitor):
    saved = visitor.post("/chamber/air", temperature_c="55 °C", humidity="80").saved
    form = visitor.get(f"/entries/{saved}/correct").form("/correct")
    assert form.values["temperature_c"] == "55 °C"
    assert form.values["humidity"] == "80"
    again = visitor.post(f"/entries/{saved}/correct", **form.values | {"humidity": "81"})
    assert visitor.fact(again.saved).temperature_c == 55.0


def test_a_stock_typed_as_a_fraction_begins_no_preparation(visitor: Visitor):
    page = visitor.fill("/chamber/preparation", agent="chlorine", stock="0.0525", target="200", volume_m3="4")
    assert "Is 5.25 % meant?" in page.beside("stock")
