"""What would not be read is asked about or refused, never one line among remarks: each bound from both sides."""

import pytest

from core.chamber.logs import answer, guess, read
from core.refusals import Refusal, Refused
from tests.core.telling import told

HEAD = "Time,Temp (°C),RH (%)"


def rows(count: int = 100, day: str = "2025-06-20") -> list[str]:
    return [f"{day} {i // 60 % 24:02}:{i % 60:02}:00,{12 + i % 7 / 10:.1f},{80 + i % 5 / 10:.1f}" for i in range(count)]


def text(lines: list[str], head: str = HEAD) -> bytes:
    return "\n".join((head, *lines, "")).encode()


def with_some(count: int, change: str, of: int = 100) -> bytes:
    """Rows of which some have lost their humidity's cell, or their temperature's value."""
    kept = rows(of)
    for at in range(count):
        cells = kept[3 * at].split(",")
        kept[3 * at] = ",".join(cells[:2]) if change == "cell" else f"{cells[0]},{change},{cells[2]}"
    return text(kept)


@pytest.mark.parametrize(("count", "asked"), [(5, False), (6, True)])
def test_more_than_one_line_in_twenty_is_asked_about(count: int, asked: bool):
    assert [each.about for each in guess(with_some(count, "cell")).questions] == ["loss"] * asked


@pytest.mark.parametrize(("count", "asked"), [(5, False), (6, True)])
def test_more_than_one_value_in_twenty_is_asked_about(count: int, asked: bool):
    assert [each.about for each in guess(with_some(count, "ERR")).questions] == ["loss"] * asked


@pytest.mark.parametrize(("count", "asked"), [(2, False), (3, True)])
def test_one_or_two_are_not_asked_about(count: int, asked: bool):
    assert bool(guess(with_some(count, "ERR", of=20)).questions) == asked


def test_an_empty_cell_is_nothing_that_is_lost():
    assert guess(with_some(30, "")).questions == ()


def test_the_question_has_the_number_and_one_of_them():
    question = guess(with_some(30, "ERR")).questions[0]
    assert told(question.sentence) == (
        "30 of 100 values of “Temp (°C)” are not read, for example “ERR” in line 2. May they be left out?"
    )
    assert [choice.key for choice in question.choices] == ["leave", "none"]


def test_its_line_is_counted_from_the_file_s_first():
    data = "\n".join(("Recorder report", "", HEAD, *rows(20), *["2025-06-20 09:00:00,12.0"] * 3, "")).encode()
    assert "3 of 23 lines are not read, for example “2025-06-20 09:00:00,12.0” in line 24." in told(
        guess(data).questions[0].sentence
    )


def test_without_an_answer_nothing_is_read():
    data = with_some(30, "ERR")
    with pytest.raises(Refused, match="May they be left out"):
        read(data, guess(data))


def test_left_out_the_rest_is_read():
    data = with_some(30, "cell")
    log = read(data, answer(data, guess(data), "loss", "leave"))
    assert len(log.series[0].times_s) == 70
    assert len(log.skipped) == 30


def test_none_of_it_is_refused_in_a_sentence():
    data = with_some(30, "cell")
    with pytest.raises(Refusal, match="with every row written alike"):
        answer(data, guess(data), "loss", "none")


def hidden(count: int) -> bytes:
    """Broken lines that no sampled line shows: between two that are looked at."""
    kept = rows(1200)
    for at in range(count):
        kept[205 + 5 * at + 1] = "broken"
    return text(kept)


@pytest.mark.parametrize(("count", "refused"), [(60, False), (61, True)])
def test_what_the_sample_does_not_show_is_refused_when_it_is_read(count: int, refused: bool):
    data = hidden(count)
    layout = guess(data)
    assert not layout.questions
    if refused:
        with pytest.raises(
            Refusal, match=rf"{count} of 1\u00a0200 lines of this log cannot be read, the first of them line"
        ):
            read(data, layout)
    else:
        assert len(read(data, layout).skipped) == count


@pytest.mark.parametrize(("count", "refused"), [(5, False), (6, True)])
def test_times_that_come_again_with_other_values_are_another_probe(count: int, refused: bool):
    again = [line.replace(",12.", ",17.") for line in rows()[:: 100 // count][:count]]
    data = text([*rows(), *again])
    if refused:
        with pytest.raises(Refusal, match="6 of 106 lines have a time that an earlier line has with other values"):
            read(data, guess(data))
    else:
        assert len(read(data, guess(data)).skipped) == count


def test_a_log_laid_into_another_is_refused():
    later = [line.replace(":00,", ":30,") for line in rows(100)]
    data = text([*rows(100), *later])
    with pytest.raises(Refusal, match="the log begins again"):
        read(data, guess(data))


@pytest.mark.parametrize("title", ["Back", "Rear shelf"])
def test_another_title_over_the_heads_is_another_log(title: str):
    data = "\n".join(("Front", HEAD, *rows(30), title, HEAD, *rows(30, "2025-06-21"), "")).encode()
    with pytest.raises(Refusal, match=f"At line 34 another log begins \\(“{title.replace(' ', '')}”\\)"):
        read(data, guess(data))


@pytest.mark.parametrize("title", ["Front", "", "Page 2"])
def test_the_same_title_or_a_page_s_is_the_same_log(title: str):
    data = "\n".join(("Front", HEAD, *rows(30), title, HEAD, *rows(30, "2025-06-21"), "")).encode()
    assert len(read(data, guess(data)).series[0].times_s) == 60


def test_other_heads_are_another_log():
    other = "Time,Temp back (°C),RH back (%)"
    data = "\n".join((HEAD, *rows(30), other, *rows(30, "2025-06-21"), "")).encode()
    with pytest.raises(Refusal, match=r"^At line 32 another log begins \(“RH back \(%\)”\)\."):
        read(data, guess(data))


@pytest.mark.parametrize("word", ["Min", "max", "Average", "MEAN:", "Mittelwert", "Moyenne", "Keskiarvo", "平均"])
def test_a_row_that_sums_up_others_is_no_reading(word: str):
    data = text([*(f"{row}," for row in rows(30)), f"2025-06-20 02:00:00,19.9,90.0,{word}"], head=HEAD + ",Note")
    log = read(data, guess(data))
    assert [(each.line, told(each.why)) for each in log.skipped] == [
        (32, "This line sums up others: it is not a reading.")
    ]


@pytest.mark.parametrize("word", ["ok", "Minister", "maximal opening", ""])
def test_another_word_beside_a_reading_costs_nothing(word: str):
    data = text([*(f"{row}," for row in rows(30)), f"2025-06-20 02:00:00,12.3,80.0,{word}"], head=HEAD + ",Note")
    assert len(read(data, guess(data)).series[0].times_s) == 31


@pytest.mark.parametrize(
    ("form", "lines"),
    [
        ("JSON", ['{"t": "2025-06-20 10:00", "temp": 12.0}'] * 5),
        ("JSON", ["[", '["2025-06-20 10:00", 12.0],', "]"]),
        ("XML", ["<log>", '<r t="2025-06-20 10:00">12.0</r>', "</log>"]),
    ],
)
def test_another_form_than_a_table_is_named(form: str, lines: list[str]):
    with pytest.raises(Refusal, match=f"This file is {form}. Export the log as a table"):
        guess("\n".join(lines).encode())


def test_a_quantity_in_each_row_is_refused_with_the_column_s_name():
    lines = [
        f"2025-06-20 10:{i:02},{kind},{value}" for i in range(30) for kind, value in (("Temp", 12.0), ("RH", 80.0))
    ]
    with pytest.raises(Refusal, match="“What” says in each row which quantity it measured"):
        guess(text(lines, head="Time,What,Value"))


@pytest.mark.parametrize("stamp", ["yesterday 22:00", "20/06 22:00", "Fri 22:00", "0x6855D9E0"])
def test_a_time_that_is_not_understood_is_named(stamp: str):
    lines = [f"{stamp},{12 + i % 7 / 10:.1f},{80 + i % 5 / 10:.1f}" for i in range(30)]
    with pytest.raises(Refusal) as refused:
        guess(text(lines))
    assert refused.value.sentence == (
        f"No column holds a date and time that is understood; “{stamp}” comes nearest. Export it with both, such as "
        "2025-06-20 22:05 or 20.06.2025 22:05."
    )
