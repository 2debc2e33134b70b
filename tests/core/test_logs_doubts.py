"""What a head seems to say and the file makes doubtful is asked: each bound from both sides."""

import math

import pytest

from core.chamber.logs import Layout, answer, guess, read
from tests.core.telling import told


def file_of(head: str, *columns: list[object]) -> bytes:
    rows = [
        f"2025-06-20 {i // 60:02}:{i % 60:02},{','.join(str(each) for each in cells)}"
        for i, cells in enumerate(zip(*columns, strict=True))
    ]
    return "\n".join((f"Time,{head}", *rows, "")).encode()


def waves(mean: float = 12.0, count: int = 60) -> list[object]:
    return [f"{mean + math.sin(i / 5):.1f}" for i in range(count)]


def layout(head: str, *columns: list[object]) -> Layout:
    return guess(file_of(head, *columns))


def asked(found: Layout) -> list[str]:
    return [question.about for question in found.questions]


def test_a_set_value_beside_a_temperature_that_moves_is_asked():
    found = layout("Temp (°C),Cellar (°C)", waves(), ["12.0"] * 60)
    assert asked(found) == ["role 3"]
    assert "It says 12.0 in every row" in told(found.questions[0].sentence)
    assert [choice.key for choice in found.questions[0].choices] == ["temperature", "ignored"]


def test_one_number_in_every_row_of_the_only_temperature_is_a_steady_chamber():
    assert asked(layout("Temp (°C)", ["12.0"] * 60)) == []


@pytest.mark.parametrize(("count", "questions"), [(19, []), (20, ["role 2"])])
def test_nineteen_rows_of_nought_are_too_few_to_doubt(count: int, questions: list[str]):
    assert asked(layout("Temp (°C)", ["0.0"] * count)) == questions


@pytest.mark.parametrize(
    "said", ["-200.0", "-127.0", "-50.0", "-40.0", "0.0", "85.0", "100.0", "125.0", "150.0", "850.0"]
)
def test_what_a_sensor_that_is_not_plugged_in_says_is_asked(said: str):
    assert asked(layout("Temp 1 (°C),Temp 2 (°C)", waves(), [said] * 60))[:1] == ["role 3"]


@pytest.mark.parametrize(("apart", "questions"), [(7.9, []), (8.1, ["nothing 2"])])
def test_a_known_number_that_returns_is_asked_eight_apart(apart: float, questions: list[str]):
    values = [f"{apart + i % 20 / 10:.1f}" for i in range(58)]
    assert asked(layout("Temp (°C)", [*values, "0.0", "0.0"])) == questions


def test_a_known_number_that_comes_once_is_not_asked():
    assert asked(layout("Temp (°C)", [*waves(), "0.0"])) == []


@pytest.mark.parametrize(("times", "questions"), [(2, []), (3, ["nothing 2"])])
def test_another_number_is_asked_where_it_returns_three_times(times: int, questions: list[str]):
    assert asked(layout("Temp (°C)", [*waves(), *["33.3"] * times])) == questions


@pytest.mark.parametrize(("number", "questions"), [("27.9", []), ("28.1", ["nothing 2"])])
def test_another_number_stands_fifteen_apart(number: str, questions: list[str]):
    assert asked(layout("Temp (°C)", [*waves(), *[number] * 3])) == questions


def test_what_returns_within_a_wide_swing_is_measured():
    wide = [f"{i % 30 - 5:.1f}" for i in range(60)]
    assert asked(layout("Temp (°C)", [*wide, *["60.0"] * 3])) == []


@pytest.mark.parametrize(("key", "kept"), [("nothing", 60), ("readings", 66)])
def test_the_answer_says_whether_it_was_measured(key: str, kept: int):
    data = file_of("Temp (°C)", [*waves(), *["-40.0"] * 6])
    found = guess(data)
    assert "Again and again “Temp (°C)” says −40" in told(found.questions[0].sentence)
    log = read(data, answer(data, found, "nothing 2", key))
    assert len(log.series[0].times_s) == kept
    assert not log.skipped


@pytest.mark.parametrize(
    ("head", "questions"),
    [
        ("Temp (°C),Left (°C)", []),
        ("Temp (°C),Temp 2 (°C)", []),
        ("Temp (°C),B (°C)", []),
        ("Temp (°C),Sonde 2 (°C)", []),
        ("Temp (°C),Board (°C)", ["role 3"]),
        ("Kuxuq (°C),Temp (°C)", ["role 2"]),
        ("Edessä (°C),Takana (°C)", ["role 2", "role 3"]),
    ],
)
def test_a_head_that_is_no_place_is_asked_beside_another(head: str, questions: list[str]):
    assert asked(layout(head, waves(), waves(15))) == questions


def test_a_head_that_is_no_place_is_taken_where_it_is_alone():
    assert asked(layout("Kuxuq (°C)", waves())) == []


@pytest.mark.parametrize(
    ("head", "questions"),
    [
        ("Temp (°C),RH (%)", []),
        ("Temp (°C),Fan (%)", ["role 3"]),
        ("Kuxuq (°C),Kuxuq (%)", []),
        ("Temp (°C),Output %", ["role 3"]),
        ("Temp (°C),Battery %", []),
    ],
)
def test_a_per_cent_is_a_humidity_by_its_word_or_its_probe(head: str, questions: list[str]):
    assert asked(layout(head, waves(), waves(78))) == questions


def test_an_answer_makes_it_a_probe_or_leaves_it_out():
    data = file_of("Temp (°C),Board (°C)", waves(), waves(15))
    found = guess(data)
    kept, left = (read(data, answer(data, found, "role 3", key)) for key in ("temperature", "ignored"))
    assert [series.probe for series in kept.series] == ["Probe 1", "Board"]
    assert [series.probe for series in left.series] == ["Probe 1"]


@pytest.mark.parametrize(("head", "beside", "with_humidity"), [("Temp 1,Temp 2", "2", 0), ("Temp 1,Temp 2", "3", 1)])
def test_a_humidity_is_joined_to_the_temperature_it_was_measured_beside(head: str, beside: str, with_humidity: int):
    data = file_of("Temp 1 (°C),Temp 2 (°C),Humidity (%)", waves(), waves(15), waves(78))
    found = guess(data)
    assert asked(found) == ["beside 4"]
    assert [choice.key for choice in found.questions[0].choices] == ["2", "3", "0"]
    log = read(data, answer(data, found, "beside 4", beside))
    assert [series.has_humidity for series in log.series] == [with_humidity == 0, with_humidity == 1]


def test_a_humidity_beside_none_of_them_is_by_itself():
    data = file_of("Temp 1 (°C),Temp 2 (°C),Humidity (%)", waves(), waves(15), waves(78))
    log = read(data, answer(data, guess(data), "beside 4", "0"))
    assert [(any(each == each for each in series.temperatures_c), series.has_humidity) for series in log.series] == [
        (True, False),
        (True, False),
        (False, True),
    ]
