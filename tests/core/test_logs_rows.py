"""What is taken from a log's rows, what is not, and what is said about it."""

import hashlib
import math

import pytest

from core.chamber.logs import Log, Progress, answer, change, guess, read, reading
from core.refusals import OutOfRange, Refusal, Refused
from tests.core.telling import in_words
from tests.core.telling import told as words_of

HEAD = "Time,Temp (°C),RH (%)"


def text(*rows: str, head: str = HEAD) -> bytes:
    return "\n".join((head, *rows, "")).encode()


def minutes(count: int = 30, day: str = "2025-06-20", hour: int = 10) -> list[str]:
    return [
        f"{day} {hour + i // 60:02}:{i % 60:02}:00,{12 + i % 7 / 10:.1f},{80 + i % 5 / 10:.1f}" for i in range(count)
    ]


def log_of(*rows: str, head: str = HEAD) -> Log:
    data = text(*rows, head=head)
    return read(data, guess(data))


def why(log: Log) -> dict[int, str]:
    return {each.line: words_of(each.why) for each in log.skipped}


def test_a_log_is_named_by_its_bytes():
    data = text(*minutes())
    assert read(data, guess(data)).name == hashlib.sha256(data).hexdigest()


@pytest.mark.parametrize("code", ["999.9", "-127.0", "850.0", "-60.1", "120.1"])
def test_a_temperature_no_chamber_has_is_listed_and_not_taken(code: str):
    log = log_of(*minutes(), f"2025-06-20 11:00:00,{code},80.0")
    assert why(log) == {32: f"Temp (°C): “{code}” is outside −60 °C to 120 °C: no chamber is."}
    assert math.isnan(log.series[0].temperatures_c[-1])


def test_what_a_sensor_says_before_it_has_measured_is_not_taken():
    log = log_of("2025-06-20 09:59:00,85.0,80.0", *minutes())
    assert why(log) == {2: "Temp (°C): “85.0” is what a sensor says before it has measured."}


@pytest.mark.parametrize("word", ["ERR", "---", "NaN", "n/a", "OL", "#N/A"])
def test_a_word_for_a_missing_value_costs_that_value_only(word: str):
    log = log_of(*minutes(), f"2025-06-20 11:00:00,{word},80.0")
    assert why(log) == {32: f"Temp (°C): “{word}” is not a temperature."}
    assert log.series[0].humidities[-1] == pytest.approx(0.8)


def test_an_empty_cell_is_nothing_measured_and_nothing_to_tell():
    log = log_of(*minutes(), "2025-06-20 11:00:00,,80.0")
    assert not log.skipped
    assert math.isnan(log.series[0].temperatures_c[-1])


def test_a_cell_that_breaks_within_a_number_costs_its_line():
    log = log_of(*minutes(), "2025-06-20 11:00:00,12#5,80.0")
    assert why(log) == {32: "Temp (°C): “12#5” is not a temperature. Nothing of this line was taken."}
    assert len(log.series[0].times_s) == 30


def test_a_cell_with_a_decimal_less_than_its_column_may_be_cut_and_is_not_taken():
    log = log_of(*minutes(), "2025-06-20 11:00:00,12.5,8")
    assert "a part may be missing" in why(log)[32]


@pytest.mark.parametrize("cells", ["2025-06-20 11:00:00,12.5", "2025-06-20 11:00:00,12.5,80.0,7"])
def test_a_line_of_another_width_is_not_taken(cells: str):
    count = len(cells.split(","))
    assert why(log_of(*minutes(), cells)) == {32: f"This line has {count} cells where 3 belong."}


def test_humidity_a_little_above_all_there_is_counts_as_full_and_is_told():
    log = log_of(*minutes(), "2025-06-20 11:00:00,12.5,104.0", "2025-06-20 11:01:00,12.5,110.1")
    assert log.series[0].humidities[30] == 1.0
    assert in_words(log.remarks) == ("Probe 1: 1 humidity above 100 % was taken as 100 %.",)
    assert why(log) == {33: "RH (%): “110.1” is outside 0 to 110 % relative humidity: no air is."}


def test_a_repeated_line_is_taken_once():
    rows = minutes()
    assert why(log_of(*rows, rows[3])) == {32: "This repeats line 5."}


def test_of_two_readings_at_one_time_the_first_is_taken_and_the_other_told():
    log = log_of(*minutes(), "2025-06-20 10:29:00,19.9,80.0")
    assert why(log) == {32: "Line 31 has the same time with other values; that one was taken."}


def test_rows_out_of_order_are_put_in_order_and_that_is_said():
    rows = minutes()
    log = log_of(*rows[:10], *rows[20:], *rows[10:20])
    assert list(log.series[0].times_s) == sorted(log.series[0].times_s)
    assert in_words(log.remarks) == ("The rows were not in order of time; they were sorted.",)


def test_missing_rows_leave_a_gap_that_is_told():
    rows = minutes()
    series = log_of(*rows[:10], *rows[15:]).series[0]
    assert series.gaps == ((series.times_s[9], series.times_s[10]),)
    assert series.interval_s == 60


@pytest.mark.parametrize("end", ["80", "80.", "8", "", "80.0,"])
def test_a_last_line_that_may_be_cut_is_not_taken(end: str):
    data = text(*minutes())[:-1] + f"\n2025-06-20 11:00:00,12.5,{end}".encode()
    log = read(data, guess(data))
    assert len(log.series[0].times_s) == 30
    assert "The file ends inside this line" in why(log)[32]


def test_a_last_line_that_shows_itself_whole_is_taken():
    data = text(*minutes())[:-1]
    assert len(read(data, guess(data)).series[0].times_s) == 30


@pytest.mark.parametrize(
    "junk", [b"", b"\0\0\0", b" \n\n", b"PK\x03\x04....", b"%PDF-1.7", b"hello", b"a,b,c\nd,e,f\n"]
)
def test_what_is_no_log_is_refused_in_a_sentence(junk: bytes):
    with pytest.raises(Refusal, match=r"^(This file|No rows)"):
        guess(junk)


def test_a_reading_tells_how_far_it_is_and_may_be_left_off():
    data = text(*minutes(600))
    steps = reading(data * 20, guess(data))
    first, second = next(steps), next(steps)
    assert isinstance(first, Progress)
    assert (first.done, second.done, first.of) == (1, 4097, 12021)
    steps.close()


def test_a_layout_with_an_open_question_reads_nothing():
    data = text("05/06/2025 10:00,12.0,80.0", "05/06/2025 10:01,12.0,80.0")
    with pytest.raises(Refused, match="day or the month"):
        read(data, guess(data))


def test_a_column_may_be_left_out_by_hand():
    data = text(*minutes())
    layout = change(data, guess(data), 1, role="ignored")
    assert all(map(math.isnan, read(data, layout).series[0].temperatures_c))


def test_another_column_may_be_made_the_time():
    data = text(*(f"2020-01-01 00:00:00,{row}" for row in minutes()), head="Start," + HEAD)
    layout = change(data, change(data, guess(data), 1, role="ignored"), 0, role="time")
    assert len(read(data, layout).series[0].times_s) == 1


def test_two_columns_of_time_are_refused():
    data = text(*(f"2020-01-01 00:00:00,{row}" for row in minutes()), head="Start," + HEAD)
    with pytest.raises(Refused, match="which one column holds date and time"):
        read(data, change(data, guess(data), 0, role="time"))


def test_a_second_temperature_of_one_probe_is_refused():
    data = text(*(f"{row},{13 + i % 7 / 10:.1f}" for i, row in enumerate(minutes())), head=HEAD + ",Temp B (°C)")
    layout = guess(data)
    with pytest.raises(Refused, match="second temperature of the same probe"):
        read(data, change(data, layout, 3, probe=layout.columns[1].probe))


@pytest.mark.parametrize(
    ("index", "change_to"), [(9, {"role": "ignored"}), (1, {"unit": "%"}), (0, {"unit": "°C"}), (1, {"role": "colour"})]
)
def test_a_change_that_does_not_fit_is_refused(index: int, change_to: dict[str, str]):
    data = text(*minutes())
    with pytest.raises(OutOfRange):
        change(data, guess(data), index, **change_to)  # type: ignore[arg-type]


def test_an_answer_that_is_not_offered_is_refused():
    data = text("05/06/2025 10:00,12.0,80.0", "05/06/2025 10:01,12.0,80.0")
    with pytest.raises(OutOfRange):
        answer(data, guess(data), "order", "ymd")


def test_a_fahrenheit_column_may_be_told_by_hand():
    data = text(*minutes(), head="Time,Temp,RH")
    log = read(data, change(data, guess(data), 1, unit="°F"))
    assert log.series[0].temperatures_c[0] == pytest.approx((12 - 32) * 5 / 9)
