"""Files whose rows hold one quantity each, named in a column of its own: read as rows of a moment, or asked about."""

import pytest

from core.chamber.logs import answer, guess, read
from core.chamber.logs.log import Log
from core.refusals import Refusal
from tests.core.telling import told

MOMENTS = [f"2026-03-01 {8 + at // 12:02d}:{at % 12 * 5:02d}" for at in range(30)]
WARM = [12.1 + (at * 7 % 11) / 10 for at in range(30)]
HUMID = [74.3 + (at * 5 % 13) / 10 for at in range(30)]


def read_of(lines: list[str], *answers: tuple[str, str]) -> Log:
    data = ("\n".join(lines) + "\n").encode()
    layout = guess(data)
    for about, key in answers:
        layout = answer(data, layout, about, key)
    assert layout.questions == ()
    return read(data, layout)


def one_probe(log: Log) -> None:
    (series,) = log.series
    assert list(series.temperatures_c) == pytest.approx(WARM)
    assert list(series.humidities) == pytest.approx([each / 100 for each in HUMID])


def rows(words: tuple[str, str], row: str) -> list[str]:
    """Both of a moment after one another."""
    return [
        row.format(at=at, what=what, value=f"{value:.1f}", unit=unit)
        for at, warm, humid in zip(MOMENTS, WARM, HUMID, strict=True)
        for what, value, unit in zip(words, (warm, humid), ("°C", "%"), strict=True)
    ]


@pytest.mark.parametrize(
    "words",
    [
        ("Temperature", "Humidity"),
        ("Temperatur", "Luftfeuchte"),
        ("Température", "Humidité"),
        ("temperatura", "umidità"),
        ("Temperatura", "Humedad"),
        ("Lämpötila", "Kosteus"),
    ],
)
def test_with_a_column_of_units_it_is_read(words: tuple[str, str]):
    one_probe(read_of(["Time;What;Value;Unit", *rows(words, "{at};{what};{value};{unit}")]))


def test_a_unit_in_the_quantitys_own_name_is_read():
    one_probe(read_of(["Time,What,Value", *rows(("Temperature (°C)", "Humidity (%)"), "{at},{what},{value}")]))


def test_the_quantity_may_come_first():
    one_probe(read_of(["What,Time,Unit,Value", *rows(("Temperature", "Humidity"), "{what},{at},{unit},{value}")]))


def test_all_temperatures_may_come_before_all_humidities():
    lines = rows(("Temperature", "Humidity"), "{at},{what},{value},{unit}")
    one_probe(read_of(["Time,What,Value,Unit", *lines[::2], *lines[1::2]]))


def test_what_is_another_quantity_is_left_out_and_said():
    lines = rows(("Temperature", "Humidity"), "{at},{what},{value},{unit}")
    battery = [f"{at},Battery,3.61,V" for at in MOMENTS]
    data = "\n".join(["Time,What,Value,Unit", *lines, *battery, ""]).encode()
    layout = guess(data)
    one_probe(read(data, layout))
    assert any("neither temperature nor humidity is left out" in told(note.said) for note in layout.notes)


def test_two_probes_in_a_column_of_their_own_are_two():
    lines = [
        line
        for probe in ("front", "back")
        for line in rows(("Temperature", "Humidity"), f"{{at}},{probe},{{what}},{{value}},{{unit}}")
    ]
    log = read_of(["Time,Probe,What,Value,Unit", *lines])
    assert [series.probe for series in log.series] == ["front", "back"]
    assert list(log.series[1].temperatures_c) == pytest.approx(WARM)


def test_a_cell_that_holds_the_separator_stays_one():
    lines = rows(("Temperature", "Humidity"), '{at},"shelf, back",{what},{value},{unit}')
    one_probe(read_of(["Time,Probe,What,Value,Unit", *lines]))


def test_a_quantity_that_is_missing_now_and_then_leaves_the_other():
    lines = rows(("Temperature", "Humidity"), "{at},{what},{value},{unit}")
    del lines[21], lines[10]
    (series,) = read_of(["Time,What,Value,Unit", *lines]).series
    assert sum(each != each for each in series.humidities) == 1
    assert len(series.warm()) == len(MOMENTS) - 1


def test_a_last_line_that_is_cut_off_is_no_reading():
    lines = rows(("Temperature", "Humidity"), "{at},{what},{value}")
    data = "\n".join(["Time,What,Value", *lines]).encode()[:-2]
    layout = guess(data)
    for question in layout.questions:
        layout = answer(data, layout, question.about, question.choices[0].key)
    (series,) = read(data, layout).series
    assert series.humidities[-1] != series.humidities[-1]


def test_without_a_unit_it_is_read_or_asked_with_the_right_answer_among_those_offered():
    data = "\n".join(["Time,What,Value", *rows(("Temperature", "Humidity"), "{at},{what},{value}"), ""]).encode()
    layout = guess(data)
    for question in layout.questions:
        key = next(choice.key for choice in question.choices if choice.key in ("°C", "%"))
        layout = answer(data, layout, question.about, key)
    one_probe(read(data, layout))


def test_where_the_values_stand_in_no_single_column_it_is_refused_in_words():
    lines = rows(("Temperature", "Humidity"), "{at},{what},{value},{value}")
    with pytest.raises(Refusal, match="says in each row which quantity it measured"):
        guess("\n".join(["Time,What,First,Second", *lines, ""]).encode())
