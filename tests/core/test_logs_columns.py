"""What a column holds: a unit outranks a word, many distinct numbers outrank a head, a probe's name returns."""

import math

import pytest

from core.chamber.logs import Layout, answer, guess, read
from core.chamber.logs.fixed_width import cells_at, edges_of, heads_at
from tests.core.telling import told as words_of


def file_of(head: str, *columns: list[object], stamp: str = "2025-06-20 {:02}:{:02}") -> bytes:
    rows = [
        f"{stamp.format(i // 60, i % 60)},{','.join(str(each) for each in cells)}"
        for i, cells in enumerate(zip(*columns, strict=True))
    ]
    return "\n".join((f"Time,{head}", *rows, "")).encode()


def waves(mean: float = 12.0, count: int = 60) -> list[object]:
    return [f"{mean + math.sin(i / 5):.1f}" for i in range(count)]


def layout(head: str, *columns: list[object]) -> Layout:
    return guess(file_of(head, *columns))


@pytest.mark.parametrize(
    "head",
    ["Probe 1 (°C)", "Sensor A [°C]", "Channel 1 (°C)", "Sonde 1 (°C)", "Fühler 1 °C", "Anturi 1 (C)", "Kanal 1 (K)"],
)
def test_a_unit_outranks_a_word_for_a_probe(head: str):
    assert layout(head, waves(285) if "K" in head[-3:] else waves()).columns[1].role == "temperature"


@pytest.mark.parametrize("head", ["Probe 1", "Sonde 1", "Fühler 1", "Logger", "Kanal 1"])
def test_many_distinct_numbers_outrank_a_word_for_a_probe(head: str):
    question = layout(head, waves()).questions[0]
    assert question.about == "role 2"
    assert [choice.key for choice in question.choices] == ["temperature", "humidity", "ignored"]


@pytest.mark.parametrize("head", ["Channel", "Kanal", "Serial", "Sensor"])
def test_a_few_whole_numbers_under_a_probe_s_word_name_it(head: str):
    found = layout(f"{head},Temp (°C)", [1, 2] * 30, waves())
    assert (found.columns[1].role, found.probes) == ("probe", ("1", "2"))


def test_a_few_whole_numbers_under_no_head_are_asked_with_the_probe_offered():
    data = file_of("x,Temp (°C),RH (%)", [1, 2] * 30, waves(), waves(80)).split(b"\n", 1)[1]
    question = guess(data).questions[0]
    assert question.about == "role 2"
    assert [choice.key for choice in question.choices] == ["probe", "temperature", "humidity", "ignored"]


@pytest.mark.parametrize("head", ["Relay", "Sensor ok", "Door state"])
def test_a_state_is_no_probe(head: str):
    assert layout(f"{head},Temp (°C),RH (%)", [0, 1] * 30, waves(), waves(80)).columns[1].role == "ignored"


def test_a_second_probe_without_a_unit_is_not_lost_in_silence():
    assert [each.about for each in layout("Temp (°C),RH (%),Probe 2", waves(), waves(80), waves(14)).questions] == [
        "role 4"
    ]


@pytest.mark.parametrize(
    "head", ["Trend (°C/h)", "ΔT (°C)", "Error ± (°C)", "MKT (°C)", "SP (°C)", "Set (°C)", "Tmin", "Tmax (°C)"]
)
def test_what_is_no_reading_of_the_air_is_left_out(head: str):
    assert layout(f"Temp (°C),RH (%),{head}", waves(), waves(80), waves(1)).columns[3].role == "ignored"


@pytest.mark.parametrize("head", ["Hours", "Uptime h", "Run h"])
def test_a_letter_h_is_a_humidity_only_by_itself(head: str):
    numbers: list[object] = list(range(60))
    assert layout(f"Temp (°C),RH (%),{head}", waves(), waves(80), numbers).columns[3].role == "ignored"
    assert layout("Temp (°C),H", waves(), waves(80)).columns[2].role == "humidity"


@pytest.mark.parametrize("word", ["T", "Temp"])
def test_a_temperature_in_per_cent_is_asked(word: str):
    assert [each.about for each in layout(f"{word} (%)", waves(80)).questions] == ["role 2"]


def test_two_units_that_agree_are_told_by_each_other():
    fahrenheit: list[object] = [f"{float(str(each)) * 1.8 + 32:.1f}" for each in waves()]
    found = layout("Temp A,Temp B", waves(), fahrenheit)
    assert [column.unit for column in found.columns[1:]] == ["°C", "°F"]
    assert [column.role for column in found.columns[1:]] == ["temperature", "ignored"]


@pytest.mark.parametrize(("apart", "unit"), [(9.9, "°C"), (10.2, "")])
def test_a_temperature_near_one_with_a_unit_has_that_unit(apart: float, unit: str):
    assert layout("Temp 1 (°C),Temp 2", waves(20), waves(20 + apart)).columns[2].unit == unit


def test_one_answer_is_for_all_that_are_asked_alike():
    data = file_of("Temp 1,Temp 2,RH", waves(), waves(14), waves(80))
    found = guess(data)
    assert words_of(found.questions[0].sentence).startswith("In which unit are “Temp 1” (")
    told = answer(data, found, "unit 2", "°C")
    assert [column.unit for column in told.columns[1:]] == ["°C", "°C", "%"]


def test_a_column_may_have_a_decimal_mark_of_its_own():
    rows = [f"2025-06-20 10:{i:02};{12 + i % 7 / 10:.1f};{80 + i % 5 / 10:.1f}" for i in range(60)]
    data = (
        "Time;Temp (°C);RH (%)\n"
        + "\n".join(";".join((*row.split(";")[:2], row.split(";")[2].replace(".", ","))) for row in rows)
        + "\n"
    ).encode()
    log = read(data, guess(data))
    assert (log.series[0].temperatures_c[1], log.series[0].humidities[1]) == (12.1, pytest.approx(0.801))


def test_columns_set_out_under_each_other_show_an_empty_cell():
    lines = [
        "10:00   12.0   80.0",
        "10:10          80.1",
        "10:20   12.2   80.2",
        "10:30   12.3       ",
        "10:40   12.4   80.4",
    ]
    more = [*lines, *lines, "10:50          80.1"]
    edges = edges_of(more)
    assert edges == ((0, 5), (8, 12), (15, 19))
    assert cells_at("10:10          80.1", edges) == ["10:10", "", "80.1"]
    assert cells_at("10:30   12.3       ", edges) == ["10:30", "12.3", ""]


@pytest.mark.parametrize("line", ["10:10      12 80.1", "10:10   1 2   80.1", "10:10   12.0   80.1   5"])
def test_a_cell_that_stands_in_no_column_or_in_two_breaks_its_line(line: str):
    assert cells_at(line, ((0, 5), (8, 10), (15, 19))) is None


def test_rows_of_one_length_need_no_places():
    assert edges_of(["10:00   12.0   80.0"] * 10) == ()


def test_a_head_stands_over_the_column_that_is_nearest():
    rows = ["2025-06-20  10:00   12.0   80.0"] * 5
    assert heads_at("Time                 T °C    RH %", rows, 4) == ["Time", "", "T °C", "RH %"]


@pytest.mark.parametrize(("key", "clock"), [("2", "local"), ("3", "local")])
def test_one_of_two_running_clocks_is_chosen(key: str, clock: str):
    utc: list[object] = [f"2025-06-20 {i // 60 + 2:02}:{i % 60:02}" for i in range(60)]
    data = file_of("Start,Local,Temp (°C)", ["x"] * 60, utc, waves())
    found = guess(data)
    assert [each.about for each in found.questions][:1] == ["clocks"]
    told = answer(data, found, "clocks", "1" if key == "2" else "3")
    hours = read(data, told).series[0].times_s[0] % 86_400 / 3600
    assert hours == (0 if key == "2" else 2)


def test_logs_side_by_side_are_each_timed_by_their_own_clock():
    own: list[object] = [f"2025-06-20 {i // 60:02}:{i % 60:02}:30" for i in range(60)]
    data = file_of("Temp (°C),Time,Temp (°C)", waves(), own, waves(15))
    told = answer(data, guess(data), "clocks", "each")
    first, second = read(data, told).series
    assert second.times_s[0] - first.times_s[0] == 30
    assert (first.probe, second.probe) == ("Column 2", "Column 4")


def test_a_count_without_a_word_is_asked_as_the_time():
    rows = "\n".join(f"{i * 60},{12 + i % 7 / 10:.1f}" for i in range(60))
    data = f"ticks,Temp (°C)\n{rows}\n".encode()
    found = guess(data)
    assert [choice.key for choice in found.questions[0].choices] == ["1", "none"]
    told = answer(data, answer(data, found, "time", "1"), "elapsed", "s")
    assert read(data, told).series[0].times_s[1] == 60
