"""°C or °F, % or a fraction, a point or a comma: decided by head, units, cells or values, or asked."""

import pytest

from core.chamber.logs import Column, Layout, guess
from core.chamber.logs.notes import Note


def file_of(values: list[str], head: str = "Time,Temp", separator: str = ",") -> bytes:
    rows = [f"2025-06-20 {i // 60:02}:{i % 60:02}{separator}{value}" for i, value in enumerate(values)]
    return "\n".join((head.replace(",", separator), *rows, "")).encode()


def spread(low: float, high: float, count: int = 60) -> list[str]:
    return [f"{low + (high - low) * i / (count - 1):.1f}" for i in range(count)]


def column(head: str, values: list[str]) -> Column:
    return guess(file_of(values, f"Time,{head}")).columns[1]


def asked(layout: Layout) -> list[str]:
    return [question.about for question in layout.questions]


@pytest.mark.parametrize(
    ("head", "unit"),
    [
        *(
            ("Temp (°C)", "°C"),
            ("Temp [C]", "°C"),
            ("Temp degC", "°C"),
            ("Temp ℃", "°C"),
            ("Temp_C", "°C"),
            ("T ºC", "°C"),
        ),
        *(("Temp (°F)", "°F"), ("Temp (F)", "°F"), ("Temp deg F", "°F"), ("Temp Fahrenheit", "°F"), ("temp_f", "°F")),
    ],
)
def test_a_head_may_say_the_unit(head: str, unit: str):
    assert column(head, spread(30, 40)).unit == unit


@pytest.mark.parametrize(("low", "high", "unit"), [(71, 95, "°F"), (-29, -23, "°C"), (280, 290, "K")])
def test_values_that_leave_one_meaning_decide(low: float, high: float, unit: str):
    assert column("Temp", spread(low, high)).unit == unit


@pytest.mark.parametrize(
    ("low", "high"), [(5, 25), (11, 13), (45, 70), (26, 44), (30, 31), (-20, -5), (0, 12), (20, 55)]
)
def test_values_that_may_be_either_are_asked_about(low: float, high: float):
    assert asked(guess(file_of(spread(low, high)))) == ["unit 2"]


def test_a_reading_in_thirty_that_is_broken_does_not_decide():
    assert column("Temp", [*spread(280, 290, 58), "55.0", "999.9"]).unit == "K"


@pytest.mark.parametrize(
    ("low", "high", "likelier"),
    [(5, 25, "°C"), (4.9, 25, ""), (5, 25.1, ""), (45.1, 69, "°F"), (44.9, 69, "")],
)
def test_the_unit_of_a_chamber_is_named_as_likelier_and_not_taken(low: float, high: float, likelier: str):
    values = [f"{low:.1f}", f"{high:.1f}"] * 30
    assert guess(file_of(values)).questions[0].likelier == likelier


def test_a_letter_at_the_end_of_lettered_probes_is_no_unit():
    rows = [f"{value},{value},{value}" for value in spread(30, 35)]
    layout = guess(file_of(rows, "Time,Temp A,Temp B,Temp C"))
    assert asked(layout) == ["unit 2"]
    assert [each.probe for each in layout.columns[1:]] == ["A", "B", "C"]


def test_a_humidity_that_may_be_either_is_asked_about():
    assert asked(guess(file_of(spread(0, 1), "Time,RH"))) == ["unit 2"]


def test_a_column_that_nothing_tells_is_asked_about():
    assert asked(guess(file_of(spread(11, 13), "Time,Blib"))) == ["role 2"]


def test_a_dew_point_its_head_does_not_name_is_no_probe():
    rows = [f"{12 + i / 10:.1f},60.0,{4.49 + i * 0.094:.1f}" for i in range(30)]
    layout = guess(file_of(rows, "Time,Temp (°C),RH (%),Blob (°C)"))
    assert layout.columns[3].role == "ignored"


@pytest.mark.parametrize(
    "head", ["Dew point (°C)", "Taupunkt (°C)", "Temp setpoint (°C)", "Temp max (°C)", "Pressure (hPa)"]
)
def test_what_is_no_measurement_of_the_air_is_not_needed(head: str):
    rows = [f"{value},{value}" for value in spread(11, 13)]
    assert guess(file_of(rows, f"Time,Temp (°C),{head}")).columns[2].role == "ignored"


def test_a_comma_that_may_part_a_number_or_two_is_asked_about():
    data = file_of([f"{12 + i % 2},{80 + i % 5}" for i in range(40)], "").lstrip(b"\n")
    assert asked(guess(data)) == ["decimal"]


def test_a_head_for_each_cell_makes_the_comma_a_separator():
    assert guess(file_of([f"{12 + i % 2},{80 + i % 5}" for i in range(40)], "Time,Temp,RH")).decimal == "."


def test_a_unit_says_what_told_it():
    assert column("Temp", spread(71, 95)).why_unit == Note("numbers", {"low": 72.2, "high": 93.8})
