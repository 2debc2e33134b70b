"""A file's first look, at its edges: how often a word must return, which column names the probe, what is answered."""

import pytest

from core.chamber.logs import Layout, answer, change, guess, read
from core.chamber.logs.notes import Note
from core.refusals import OutOfRange, Refusal

A_ROW_EACH = "says in each row which quantity it measured"


def file_of(head: str, *rows: str) -> bytes:
    lines = [f"2025-06-20 {i // 60:02}:{i % 60:02},{row}" for i, row in enumerate(rows)]
    return "\n".join((f"Time,{head}", *lines, "")).encode()


def warm(count: int = 60) -> list[str]:
    return [f"{12 + i % 7 / 10:.1f}" for i in range(count)]


def refused(data: bytes) -> str:
    try:
        guess(data)
    except Refusal as refusal:
        return refusal.sentence
    return ""


def is_widened(data: bytes) -> bool:
    return guess(data).long is not None


@pytest.mark.parametrize(("temperatures", "humidities", "is_seen"), [(3, 3, True), (2, 3, False), (3, 2, False)])
def test_a_quantity_in_each_row_is_one_that_returns_three_times(temperatures: int, humidities: int, is_seen: bool):
    rows = ["Temperature,12.1"] * temperatures + ["Humidity,80.1"] * humidities
    assert is_widened(file_of("What,Value", *rows)) is is_seen


@pytest.mark.parametrize(("temperatures", "humidities", "is_refused"), [(3, 3, True), (2, 3, False), (3, 2, False)])
@pytest.mark.parametrize("unit", ["°C", "°F", "K"])
def test_so_is_one_told_by_the_units_of_its_cells(temperatures: int, humidities: int, is_refused: bool, unit: str):
    rows = [f"a,12.1 {unit}"] * temperatures + ["a,80.1 %"] * humidities
    assert (A_ROW_EACH in refused(file_of("x,Value", *rows))) is is_refused


@pytest.mark.parametrize(("length", "is_seen"), [(24, True), (25, False)])
def test_a_word_of_24_signs_may_be_a_quantity(length: int, is_seen: bool):
    rows = [f"{word:x<{length}},12.1" for word in ("Temperature ", "Humidity ")] * 3
    assert is_widened(file_of("What,Value", *rows)) is is_seen


@pytest.mark.parametrize(("others", "is_seen"), [(10, True), (11, False)])
def test_among_twelve_words_two_may_be_quantities(others: int, is_seen: bool):
    rows = ["Temperature,12.1", "Humidity,80.1"] * 3 + [f"{chr(97 + n)},1.1" for n in range(others)]
    assert is_widened(file_of("What,Value", *rows)) is is_seen


@pytest.mark.parametrize(("head", "named"), [("What,First,Second", "“What”"), (",First,Second", "Column 2")])
def test_the_column_of_quantities_beside_two_of_values_is_named(head: str, named: str):
    assert refused(file_of(head, *["Temperature,12.1,12.3", "Humidity,80.1,80.3"] * 3)).startswith(
        f"{named} {A_ROW_EACH}"
    )


@pytest.mark.parametrize("head", ["", "Temp"])
def test_a_column_of_both_units_is_named_by_its_head_or_its_place(head: str):
    named = f"“{head}”" if head else "Column 2"
    assert refused(file_of(f"{head},x", *["12.1 °C,a", "80.1 %,b"] * 3)).startswith(f"{named} {A_ROW_EACH}")


@pytest.mark.parametrize(("json", "is_json"), [(4, True), (3, False)])
def test_another_form_is_one_that_more_than_half_of_the_lines_begin_as(json: int, is_json: bool):
    lines = ['{"a": 1}'] * json + ["2025-06-20 10:00,12.1"] * 3
    assert ("is JSON" in refused("\n".join(lines).encode())) is is_json


def test_a_single_number_under_a_probe_s_word_is_the_one_probe_s():
    layout = guess(file_of("Sensor,Temp (°C)", *(f"7,{each}" for each in warm())))
    assert (layout.columns[1].role, layout.probes) == ("probe", ("7",))


def test_a_single_broken_number_under_a_probe_s_word_is_no_name():
    assert guess(file_of("Sensor,Temp (°C)", *(f"7.5,{each}" for each in warm()))).columns[1].role == "ignored"


def test_of_two_columns_that_name_the_probe_the_first_does():
    layout = guess(file_of("Sensor,Channel,Temp (°C)", *(f"{i % 2},{i % 2},{each}" for i, each in enumerate(warm()))))
    assert [each.role for each in layout.columns] == ["time", "probe", "ignored", "temperature"]


def names(*rows: str) -> tuple[str, ...]:
    return guess(file_of("Sensor,Temp (°C)", *rows)).probes


@pytest.mark.parametrize(("count", "known"), [(3, ("A", "B", "X")), (2, ("A", "B"))])
def test_of_150_rows_a_probe_s_name_has_three(count: int, known: tuple[str, ...]):
    rows = [f"{'AB'[i % 2]},{each}" for i, each in enumerate(warm(150 - count))] + ["X,12.1"] * count
    assert names(*rows) == known


@pytest.mark.parametrize(("of", "count", "known"), [(100, 2, True), (100, 1, False), (99, 1, True), (49, 1, True)])
def test_of_fewer_one_in_fifty(of: int, count: int, known: bool):
    rows = [f"{'AB'[i % 2]},{each}" for i, each in enumerate(warm(of - count))] + ["X,12.1"] * count
    assert ("X" in names(*rows)) is known


def test_a_head_that_is_repeated_and_an_empty_cell_are_no_names():
    rows = [f"{'AB'[i % 2]},{each}" for i, each in enumerate(warm())]
    assert names(*rows, *["Sensor,Temp (°C)"] * 3, *[",12.1"] * 3) == ("A", "B")


def test_eight_rows_are_shown():
    assert guess(file_of("Temp (°C)", *warm())).preview == tuple(
        (f"2025-06-20 00:0{n}", f"12.{n}" if n < 7 else "12.0") for n in range(8)
    )


@pytest.mark.parametrize(
    ("about", "key", "field", "sentence"),
    [
        ("role 9", "temperature", "role 9", "Choose one of the answers that are offered."),
        ("role 2", "probe", "role 2", "Choose one of the answers that are offered."),
    ],
)
def test_what_is_not_asked_or_not_offered_is_no_answer(about: str, key: str, field: str, sentence: str):
    data = file_of("x", *warm())
    with pytest.raises(OutOfRange) as told:
        answer(data, guess(data), about, key)
    assert (told.value.field, told.value.sentence) == (field, sentence)


def two_clocks() -> tuple[bytes, Layout]:
    data = file_of("Seen at,Temp (°C)", *(f"2025-06-20 01:{i:02},{each}" for i, each in enumerate(warm())))
    return data, guess(data)


@pytest.mark.parametrize(
    ("key", "roles", "is_side_by_side"),
    [("1", ["time", "ignored"], False), ("2", ["ignored", "time"], False), ("each", ["time", "time"], True)],
)
def test_which_of_two_clocks_times_the_readings(key: str, roles: list[str], is_side_by_side: bool):
    data, layout = two_clocks()
    assert layout.clocks_apart == (0, 1)
    told = answer(data, layout, "clocks", key)
    assert ([each.role for each in told.columns], told.side_by_side) == ([*roles, "temperature"], is_side_by_side)


def test_a_column_made_the_time_is_looked_at_anew():
    data, layout = two_clocks()
    without = change(data, answer(data, layout, "clocks", "1"), 0, role="ignored")
    assert without.times.kind == ""
    assert change(data, without, 1, role="time").times.kind == "text"


def test_a_column_made_the_probe_s_name_has_its_names():
    data = file_of("Relay,Temp (°C)", *(f"{i % 2},{each}" for i, each in enumerate(warm())))
    assert change(data, guess(data), 1, role="probe").probes == ("0", "1")


def test_a_column_made_a_humidity_has_its_unit_by_its_numbers():
    data = file_of("x,Temp (°C),RH (%)", *(f"{80 + i / 100:.2f},{each},81.{i % 10}" for i, each in enumerate(warm())))
    column = change(data, guess(data), 1, role="humidity").columns[1]
    assert (column.role, column.unit) == ("humidity", "%")


@pytest.mark.parametrize(("typed", "first"), [(",", "12,5"), (".", "12")])
def test_the_decimal_mark_that_is_told_is_taken(typed: str, first: str):
    data = "\n".join(f"2025-06-20 10:{i:02},12,{5 + i % 3},80,{1 + i % 4}" for i in range(30)).encode()
    layout = guess(data)
    assert [each.about for each in layout.questions] == ["decimal"]
    assert answer(data, layout, "decimal", typed).preview[0][1] == first


@pytest.mark.parametrize(("broken", "note"), [(0, ()), (2, (Note("no-text", {"count": 2, "encoding": "UTF-8"}),))])
def test_signs_that_are_no_text_are_told(broken: int, note: tuple[Note, ...]):
    good = file_of("Temp (°C),é", *(f"{each},éé" for each in warm()))
    lines = [f"2025-06-21 10:0{n},12.1,".encode() + b"\xff" for n in range(broken)]
    assert guess(good + b"\n".join([*lines, b""])).notes == note


@pytest.mark.parametrize(("count", "role"), [(4, "ignored"), (3, "unknown")])
def test_four_numbers_that_count_up_number_the_rows(count: int, role: str):
    layout = guess(file_of("x,Temp (°C)", *(f"{5 + i},12.{i}" for i in range(count))))
    assert layout.columns[1].role == role


@pytest.mark.parametrize("numbers", [[5, 6, 7, 9], [5, 7, 9, 11], [8, 7, 6, 5], [5, 5, 5, 6]])
def test_other_numbers_do_not(numbers: list[int]):
    layout = guess(file_of("x,Temp (°C)", *(f"{each},12.{i}" for i, each in enumerate(numbers))))
    assert layout.columns[1].role == "unknown"


@pytest.mark.parametrize("unit", ["°C", "°F", "K"])
def test_a_column_is_told_by_the_unit_of_its_cells(unit: str):
    assert guess(file_of("x", *(f"{each} {unit}" for each in warm()))).columns[1].role == "temperature"


def test_a_log_of_one_row_is_one():
    layout = guess(b"2025-06-20 10:00,12.5\n")
    assert [each.role for each in layout.columns] == ["time", "unknown"]
    assert layout.preview == (("2025-06-20 10:00", "12.5"),)


def shares(rows: list[tuple[int, str]]) -> str:
    """What is made of a column of names without a word for a probe; a row is a minute and a name."""
    lines = [
        f"2025-06-20 {10 + at // 60}:{at % 60:02},{name},{12 + i % 7 / 10:.1f}" for i, (at, name) in enumerate(rows)
    ]
    return guess("\n".join(("Time,Who,Temp (°C)", *lines, "")).encode()).columns[1].role


@pytest.mark.parametrize(("distinct", "role"), [(91, "probe"), (90, "unknown")])
def test_a_name_stands_hardly_ever_twice_beside_one_time(distinct: int, role: str):
    """Of a hundred rows."""
    rows = [(at, name) for at in range(46) for name in "AB"][:distinct]
    assert shares(rows + rows[: 100 - distinct]) == role


@pytest.mark.parametrize(("times", "role"), [(89, "probe"), (90, "unknown")])
def test_one_time_stands_beside_several_names(times: int, role: str):
    """Of a hundred rows."""
    assert shares([(at, "A") for at in range(times)] + [(at, "B") for at in range(100 - times)]) == role


@pytest.mark.parametrize(("names", "role"), [(50, "probe"), (51, "unknown")])
def test_of_probes_there_are_fifty_at_most(names: int, role: str):
    rows = [f"n{'x' * (i % names)},{each}" for i, each in enumerate(warm(3 * names))]
    assert guess(file_of("Sensor,Temp (°C)", *rows)).columns[1].role == role


def test_a_line_that_is_broken_names_no_probe():
    rows = [f"{'AB'[i % 2]},{each}" for i, each in enumerate(warm(200))]
    assert names(*rows, *["C,12.1,1"] * 4, *['"D,12.1'] * 4, *["E"] * 4) == ("A", "B")


def test_whole_readings_under_a_probe_s_word_are_no_names():
    layout = guess(file_of("Sensor", *(f"{10 + i % 20}" for i in range(60))))
    assert (layout.columns[1].role, layout.columns[1].may_be) == ("unknown", ())


def test_a_decimal_comma_that_parts_cells_is_joined_in_a_short_log():
    data = "\n".join(("Time,Temp (°C),RH (%)", *(f"2025-06-20 10:0{i},12,{i},80,5" for i in range(9)), "")).encode()
    log = read(data, guess(data))
    assert log.layout.joined
    assert list(log.series[0].temperatures_c) == [12.0, 12.1, 12.2, 12.3, 12.4, 12.5, 12.6, 12.7, 12.8]
    assert set(log.series[0].humidities) == {0.805}
