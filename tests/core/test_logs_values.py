"""What one cell says, how it is quoted, and how long its meaning is kept: a row on each side of each bound."""

import pytest

from core.chamber.logs.column import Column
from core.chamber.logs.scales import Unit
from core.chamber.logs.values import Memo, echo, value_of
from core.sentence import Sentence
from tests.core.telling import told


@pytest.mark.parametrize(
    ("cell", "unit", "is_read"),
    [
        ("358.15", "K", False), ("358.16", "K", True), ("185", "°F", False), ("185.1", "°F", True),
        ("84.9999", "°C", True), ("85.0001", "°C", True), ("850", "°C/10", False),
    ],
)  # fmt: skip
def test_what_a_sensor_says_before_it_has_measured_is_known_in_each_unit(cell: str, unit: Unit, is_read: bool):
    why = value_of(cell, Column("temperature", unit=unit), ".")[1]
    assert ("before it has measured" not in told(why)) is is_read


@pytest.mark.parametrize(
    ("cell", "unit", "is_read"),
    [
        ("110", "%", True), ("110.000001", "%", False), ("1.1", "fraction", True), ("1.10000001", "fraction", False),
        ("1100", "%/10", True), ("1101", "%/10", False), ("11000", "%/100", True), ("11001", "%/100", False),
        ("0", "%", True), ("-0.000001", "%", False),
    ],
)  # fmt: skip
def test_humidity_ends_at_110_per_cent_in_each_unit(cell: str, unit: Unit, is_read: bool):
    assert (not value_of(cell, Column("humidity", unit=unit), ".")[1]) is is_read


@pytest.mark.parametrize("unit", ["", "written"])
def test_a_number_without_a_unit_means_nothing_where_the_column_has_none(unit: Unit):
    assert value_of("12.5", Column("temperature", unit=unit), ".")[1] == Sentence(
        "{cell} is not a temperature.", {"cell": "“12.5”"}
    )


@pytest.mark.parametrize(
    ("cell", "shown"),
    [
        ("x" * 24, "“" + "x" * 24 + "”"),
        ("x" * 25, "“" + "x" * 23 + "…”"),
        ("a\0b\n c\u200ed", "“a b c d”"),
        (" " * 60 + "ERR" + " " * 60, "“ERR”"),
    ],
)
def test_a_cell_is_quoted_on_one_line_with_24_signs_at_most(cell: str, shown: str):
    assert echo(cell) == shown


def test_meanings_are_kept_up_to_50_000_texts_and_then_anew():
    meanings = Memo(float)
    for text in map(str, range(50_000)):
        assert meanings[text] == float(text)
    assert len(meanings) == 50_000
    assert (meanings["7"], len(meanings)) == (7.0, 50_000)
    assert (meanings["0.5"], len(meanings)) == (0.5, 1)
