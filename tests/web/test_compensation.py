"""A pH meter that does not compensate for temperature: where it stands is asked, and seen wherever a pH is shown."""

from core.daybook.facts.instruments import InstrumentAdded
from tests.web.conftest import Visitor
from tests.web.workbench import add, key_of


def uncompensated(visitor: Visitor) -> str:
    return key_of(add(visitor, "ph-meter", "Dial", stands_at_c="25"))


def test_where_a_ph_meter_stands_is_kept(visitor: Visitor):
    key = uncompensated(visitor)
    assert visitor.fact(key) == InstrumentAdded("Dial", "ph-meter", stands_at_c=25.0)
    page = visitor.get(f"/chamber/instruments/{key}")
    assert "It is set to 25 °C: each pH is then compensated" in page.text
    assert "pH meter, set to 25.0 °C" in page.text


def test_only_a_ph_meter_is_asked_where_it_stands(visitor: Visitor):
    page = visitor.fill("/chamber/instruments/add", name="Bench", kind="scale", stands_at_c="25")
    assert page.beside("stands_at_c") == "Leave this empty: only a pH meter reads pH."


def test_a_ph_is_compensated_as_it_is_typed_in_the_batch_and_in_the_log(visitor: Visitor):
    batch = visitor.start_batch()
    visitor.cure(batch)
    key = uncompensated(visitor)
    texts = {"ph": "5.2", "temperature_c": "12", "place": "core", "meter": key}
    assert visitor.get(f"{batch}/reading", figures="1", **texts).figures["ph_corrected"] == "5.12"
    saved = visitor.fill(f"{batch}/reading", **texts).saved
    assert visitor.fact(saved).ph == 5.2
    page, noted = visitor.get(batch), "corrected from 5.2 (taken at 12 °C in the meat)"
    assert f"Read: pH 5.12 at 12.0 °C in the meat, {noted}" in page.texts("span", "words")
    assert page.text.count(noted) >= 2


def test_a_ph_without_a_temperature_says_that_it_is_not_compensated(visitor: Visitor):
    batch = visitor.start_batch()
    visitor.cure(batch)
    visitor.fill(f"{batch}/reading", ph="5.2", meter=uncompensated(visitor))
    assert "not compensated: no temperature" in visitor.get(batch).text


def test_where_it_stands_is_read_in_fahrenheit(visitor: Visitor):
    visitor.settings(units="us")
    key = key_of(add(visitor, "ph-meter", "Dial", stands_at_c="77"))
    assert abs(visitor.fact(key).stands_at_c - 25.0) < 1e-9


def test_a_correction_keeps_where_it_stands(visitor: Visitor):
    key = uncompensated(visitor)
    visitor.fill(f"/entries/{key}/correct", name="Knob")
    assert visitor.fact(key) == InstrumentAdded("Knob", "ph-meter", stands_at_c=25.0)


def test_a_correction_of_where_it_stands_is_followed_by_the_readings(visitor: Visitor):
    batch = visitor.start_batch()
    visitor.cure(batch)
    key = uncompensated(visitor)
    visitor.fill(f"{batch}/reading", ph="5.2", temperature_c="12", place="core", meter=key)
    visitor.fill(f"/entries/{key}/correct", stands_at_c="20")
    assert "Read: pH 5.15 at" in visitor.get(batch).text.replace("\u00a0", " ")
