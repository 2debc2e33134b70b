"""A bare number that a slip of the finger makes is asked about; with its unit it is taken at its word."""

import pytest

from core.quantities import LENGTH, LOSS, MASS, METRIC, RATIO, TEMPERATURE, US, Manner
from core.reading import is_bare
from core.refusals import OutOfRange, Unusual
from core.usual import CHAMBER_C
from core.worksheet import Number

LOST = Number("loss", "Loss to reach", LOSS, 0.0, 0.7, usual=(0.05, 0.6))
THICK = Number("thickness_m", "Thickness", LENGTH, 0.001, 1.0, usual=(0.02, 0.25))
MEAT = Number("meat_kg", "Meat", MASS, 0.0, 1000.0, usual=(0.2, 100.0))
AIR = Number("temperature", "Air temperature", TEMPERATURE, -20.0, 60.0, usual=CHAMBER_C)


def question(number: Number, text: str, manner: Manner = METRIC) -> str:
    with pytest.raises(Unusual) as caught:
        number.read(text, manner)
    assert caught.value.field == number.key
    return caught.value.sentence


def test_the_question_says_how_it_was_read_what_is_usual_and_what_answers_it():
    assert question(LOST, "0.35") == (
        "Loss to reach: This is read as 0.35 %; usual here is 5 % to 60 %. Is 35 % meant? Then enter that. "
        "If 0.35 % is right, enter it with its unit."
    )


@pytest.mark.parametrize(
    ("number", "text", "manner", "meant"),
    [
        (THICK, "5", METRIC, "5 cm"),
        (MEAT, "500", METRIC, "500 g"),
        (AIR, "55", METRIC, "55 °F"),
        (AIR, "12", US, "12 °C"),
        (MEAT, "800", US, "800 g"),
        (LOST, "0,35", Manner("metric", ","), "35 %"),
    ],
)
def test_what_may_be_meant_is_named(number: Number, text: str, manner: Manner, meant: str):
    assert f"Is {meant}" in question(number, text, manner)


def test_where_no_unit_explains_it_what_is_meant_is_asked_for():
    assert "Enter what is meant." in question(LOST, "65")


@pytest.mark.parametrize("text", ["0.35 %", "65 %", "0.35%", "0.35 pct"])
def test_with_its_unit_it_is_taken_at_its_word(text: str):
    assert LOST.read(text, METRIC) is not None


def test_what_is_impossible_is_refused_with_its_unit_too():
    with pytest.raises(OutOfRange):
        LOST.read("71 %", METRIC)


@pytest.mark.parametrize(("text", "asked"), [("5", False), ("4.999", True), ("60", False), ("60.01", True)])
def test_both_ends_are_usual_and_a_hair_outside_is_not(text: str, asked: bool):
    assert LOST.asks(text, METRIC) is asked


def test_nothing_at_all_is_no_slip():
    assert LOST.read("0", METRIC) == 0.0


def test_where_nothing_is_usual_nothing_is_asked():
    assert not Number("ratio", "Ratio", RATIO, 0.0, 0.7).asks("0.0035", METRIC)


@pytest.mark.parametrize("text", ["12", "1 250", "½", "1,5"])
def test_a_number_alone_is_bare(text: str):
    assert is_bare(text)


@pytest.mark.parametrize("text", ["12 %", "12%", "12 lb 4 oz", "5'", "", "x"])
def test_a_number_with_a_unit_is_not_bare(text: str):
    assert not is_bare(text)
