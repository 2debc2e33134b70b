"""A figure's working is said in the reader's own units, and a source says how it is known."""

import re

import pytest

from core.quantities import FRACTION, MASS, METRIC, US, Amount, Reader
from core.sentence import Sentence
from core.sources import COMMON_PRACTICE, Source
from core.working import Figure
from core.worksheets import WORKSHEETS

STEP = Sentence(
    "{salt} × {strength} = {nitrite}",
    {"salt": Amount(0.0315, MASS), "strength": Amount(0.0625, FRACTION), "nitrite": Amount(0.00196875, MASS)},
)
FIGURE = Figure("salt", "Curing salt", 0.0315, MASS, (STEP,), COMMON_PRACTICE)


def test_a_step_puts_the_numbers_in():
    assert STEP.say(METRIC) == "31.5 g × 6.25 % = 1.96875 g"


def test_a_step_is_said_in_the_reader_s_units():
    assert STEP.say(US) == "1.11113 oz × 6.25 % = 0.0694456 oz"


def test_a_step_is_said_with_the_reader_s_decimal_mark():
    assert STEP.say(Reader("metric", ",")) == "31,5 g × 6,25 % = 1,96875 g"


def test_a_step_without_numbers_is_said_as_it_stands():
    assert Sentence("Meat and salt together").say(METRIC) == "Meat and salt together"


def test_a_figure_is_shown_rounded():
    assert FIGURE.show(METRIC) == "31.5 g"


def test_a_figure_has_no_range_unless_it_is_given_one():
    assert (FIGURE.low, FIGURE.high) == (None, None)


@pytest.mark.parametrize(
    ("verified", "cited"),
    [
        ("seen", "A Handbook, table 2."),
        ("copy", "A Handbook, table 2 (read in a copy)."),
        ("memory", "A Handbook, table 2 (from memory, not checked)."),
        ("computed", "A Handbook, table 2 (worked out from the definition)."),
    ],
)
def test_a_source_says_how_it_is_known(verified, cited):
    assert Source("A Handbook", "table 2", verified).cite().say(METRIC) == cited


def test_a_source_without_a_section_is_cited_by_its_title():
    assert Source("A Handbook", "", "seen").cite().say(METRIC) == "A Handbook."


_UNITS = "kg|g|lb|oz|L|ml|qt|tbsp|tsp|d|h|min|s"
_ADDED = re.compile(rf"\d ({_UNITS})\)? [+−] \(?[\d.\u00a0]+ ({_UNITS})(?![\w/])")


@pytest.mark.parametrize("reader", [METRIC, US], ids=["metric", "us"])
def test_what_is_added_in_a_line_of_any_worksheet_has_one_unit(reader: Reader):
    sheets = [sheet.answer(sheet.example) for sheet in WORKSHEETS.values()]
    lines = [step.say(reader) for answer in sheets for figure in answer.figures for step in figure.working]
    pairs = [(line, found) for line in lines for found in _ADDED.findall(line)]
    assert len(pairs) > 10
    assert [line for line, (one, other) in pairs if one != other] == []
