"""Fermenting: pH, temperature, or both."""

import pytest

from core.daybook.facts.batch import Reading
from tests.web.conftest import Visitor, alike


@pytest.fixture
def batch(visitor: Visitor) -> str:
    batch = visitor.start_batch()
    visitor.cure(batch)
    return batch


def test_the_form_of_a_batch_never_read(visitor: Visitor, batch: str):
    assert visitor.get(f"{batch}/reading").status == 200


def test_both_are_kept(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/reading", ph="5,6", temperature_c="72 °F")
    assert alike(visitor.fact(page.saved), Reading(5.6, 200 / 9, place="chamber"))


@pytest.mark.parametrize(
    ("key", "text", "fact"),
    [("ph", "5.6", Reading(5.6)), ("temperature_c", "22", Reading(None, 22.0, place="chamber"))],
)
def test_one_alone_is_enough(visitor: Visitor, batch: str, key: str, text: str, fact: Reading):
    assert visitor.fact(visitor.fill(f"{batch}/reading", **{key: text}).saved) == fact


def test_neither_is_refused(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/reading", ph="", temperature_c="")
    assert page.beside("ph") == "Enter the pH, the temperature, or both."


def test_the_last_reading_stands_above_the_form(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/reading", ph="5.6", temperature_c="22")
    visitor.wait(hours=12)
    assert "Last: pH 5.6 at 22.0 °C, 12 hours ago" in visitor.get(f"{batch}/reading").text


def test_a_ph_no_meat_has_is_refused(visitor: Visitor, batch: str):
    assert "between 3.0 and 8.0" in visitor.fill(f"{batch}/reading", ph="56").beside("ph")


def test_acid_meat_moves_on_to_drying(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/reading", ph="5.3")
    assert "drying" in visitor.get("/batches").text


def test_a_whole_muscle_has_no_place_for_fermenting(visitor: Visitor):
    batch = visitor.start_batch(style="whole-muscle")
    assert "Ferment" not in visitor.get(batch).texts("h2")
