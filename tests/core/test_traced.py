"""An expression of traced amounts is worked out as floats are, and its line shows what was worked out."""

import pytest

from core.quantities import LOSS, MASS, METRIC, RATIO, US
from core.traced import Traced, traced

START, NOW = traced("start", 1.25, MASS), traced("now", 0.8, MASS)


def said(what: Traced, quantity=RATIO) -> str:
    return what.line(quantity).text


def test_a_difference_and_its_line():
    assert (START - NOW).value == 1.25 - 0.8
    assert (START - NOW).line(MASS).say(METRIC) == "1\u00a0250 g − 800 g = 450 g"


def test_a_sum_keeps_the_unit_of_its_largest_amount_in_the_other_system_too():
    assert (START - NOW).line(MASS).say(US) == "2.75578 lb − 1.7637 lb = 0.99208 lb"


def test_words_go_before_the_sum():
    line = (NOW / START).line(LOSS, "Now, of {piece}", {"piece": "the {ham}"})
    assert line.say(METRIC) == "Now, of the {ham}: 800 g ÷ 1\u00a0250 g = 64 %"


@pytest.mark.parametrize(
    ("what", "text"),
    [
        ((START - NOW) / START, "({start} − {now}) ÷ {start} = {result}"),
        (START - (NOW - START), "{start} − ({now} − {start}) = {result}"),
        (START - (NOW + START), "{start} − ({now} + {start}) = {result}"),
        (START + (NOW - START), "{start} + {now} − {start} = {result}"),
        (START / (NOW / START), "{start} ÷ ({now} ÷ {start}) = {result}"),
        (START / (NOW * START), "{start} ÷ ({now} × {start}) = {result}"),
        (START * (NOW / START), "{start} × {now} ÷ {start} = {result}"),
        (START / NOW / START, "{start} ÷ {now} ÷ {start} = {result}"),
        (START * NOW + START, "{start} × {now} + {start} = {result}"),
        (START * (1 - NOW), "{start} × (1 − {now}) = {result}"),
        (2 * START + 1, "2 × {start} + 1 = {result}"),
        (1 + START, "1 + {start} = {result}"),
        (START / 2, "{start} ÷ 2 = {result}"),
    ],
)
def test_brackets_stand_where_they_are_needed_and_nowhere_else(what: Traced, text: str):
    assert said(what) == text


def test_two_different_amounts_of_one_name_are_refused():
    with pytest.raises(ValueError, match="start"):
        START - traced("start", 2.0, MASS)


def test_a_figure_has_the_value_and_its_lines():
    before = (START - NOW).line(MASS)
    figure = ((START - NOW) / START).figure("loss", "Loss", LOSS, before=(before,))
    assert (figure.value, figure.quantity, len(figure.working)) == ((1.25 - 0.8) / 1.25, LOSS, 2)
    assert figure.working[1].amounts["result"] == figure.amount
