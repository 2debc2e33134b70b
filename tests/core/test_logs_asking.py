"""Each question that a layout leaves open: when it is asked, its whole sentence and every answer it offers."""

import pytest
from attrs import evolve

from core.chamber.logs import Column, Layout, Question, TimeStyle
from core.chamber.logs.asking import alike
from core.chamber.logs.column import Loss
from core.chamber.logs.notes import Note
from tests.core.telling import told as words_of

TIME = Column("time", "Time")
WARM = Column("temperature", "Temp", unit="°C")
DAMP = Column("humidity", "RH", unit="%")
TEXT = TimeStyle("text", order="ymd", orders=("ymd",))
ROWS = (("t1", "12.1", "80"), ("t2", " 12.2 ", ""), ("t3", "12.3", "81"), ("t4", "12.4", "82"), ("t5", "12.5", "83"))


def layout(*columns: Column, times: TimeStyle = TEXT, **more: object) -> Layout:
    known: dict[str, object] = {"decimal": ".", "preview": ROWS, **more}
    return Layout("utf-8", ",", first_line=2, width=len(columns), columns=columns, times=times, **known)  # type: ignore[arg-type]


def asked(*columns: Column, times: TimeStyle = TEXT, **more: object) -> Question:
    """The only one."""
    (question,) = layout(*columns, times=times, **more).questions
    return question


def choices(question: Question) -> dict[str, str]:
    return {choice.key: words_of(choice.words) for choice in question.choices}


def test_a_layout_that_is_settled_asks_nothing():
    assert layout(TIME, WARM, DAMP).questions == ()


def test_the_decimal_mark_is_asked_alone_with_the_first_row_both_ways():
    row, other = ("t1", "12", "5", "80", "1"), ("t2", "13", "6", "81", "2")
    question = asked(TIME, Column("unknown"), decimal="", preview=(row, other))
    assert question.about == "decimal"
    assert (
        words_of(question.sentence) == "“12,5,80,1”: is the comma a decimal mark here, or does it separate two values?"
    )
    offered = {",": "a decimal mark: 12,5 and 80,1", ".": "it separates values: 12, 5, 80 and 1"}
    assert choices(question) == offered


def test_date_and_clock_are_two_cells_before_the_values():
    row = ("2025-06-20", "10:00", "12", "5")
    question = asked(Column("date"), Column("clock"), Column("unknown"), decimal="", preview=(row,))
    assert choices(question)[","] == "a decimal mark: 12,5"


def test_without_a_row_to_show_the_decimal_mark_is_asked_all_the_same():
    assert words_of(asked(TIME, decimal="", preview=()).sentence).startswith("“”: is the comma")


def test_the_time_is_asked_alone_with_every_column_that_may_be_it():
    question = asked(Column("unknown", "n"), Column("unknown"), times=TimeStyle(), may_be_time=(0, 1))
    assert (question.about, words_of(question.sentence)) == ("time", "Which column counts the time?")
    assert choices(question) == {
        "1": "“n” (t1, t2, t3 …)",
        "2": "column 2 (12.1, 12.2, 12.3 …)",
        "none": "none of these",
    }


@pytest.mark.parametrize("role", ["time", "date"])
def test_a_column_that_holds_the_time_leaves_nothing_to_ask_of_it(role: str):
    assert layout(evolve(TIME, role=role), WARM, may_be_time=(0, 1)).questions == ()


def test_clocks_apart_are_asked_alone():
    question = asked(TIME, Column("time"), Column("unknown"), clocks_apart=(0, 1))
    assert question.about == "clocks"
    assert words_of(question.sentence) == "More than one column holds a time that runs. Which one times the readings?"
    assert choices(question) == {
        "1": "“Time”, column 1 (t1, t2, t3 …), for every row",
        "2": "column 2 (12.1, 12.2, 12.3 …), for every row",
        "each": "each of them, for the columns that follow it: logs side by side",
    }


@pytest.mark.parametrize("told", [True, False])
def test_clocks_that_were_told_are_not_asked_about(told: bool):
    assert layout(TIME, WARM, clocks_apart=(0, 1), side_by_side=told).questions == ()


@pytest.mark.parametrize(
    ("times", "about", "sentence", "offered"),
    [
        (
            TimeStyle("text", order="dmy", orders=("dmy",), shared_month="lip"),
            "month",
            "“lip” is another month in other languages. Which one is meant?",
            {"hr": "Jun", "pl": "Jul"},
        ),
        (
            TimeStyle("count", counts=("s1904", "s2000"), example="803000000"),
            "count",
            "What does the time “803000000” count?",
            {"s1904": "seconds since 1904", "s2000": "seconds since 2000", "none": "none of these"},
        ),
        (
            TimeStyle("text", orders=("dmy", "mdy"), likelier="dmy"),
            "order",
            "All the dates of this file can be read in more than one way. Which comes first, the day or the month?",
            {"dmy": "day before month", "mdy": "month before day"},
        ),
        (
            TimeStyle("span", example="36:10"),
            "elapsed",
            "The times count from a start, as “36:10”. What are they?",
            {"h": "hours and minutes", "min": "minutes and seconds"},
        ),
        (
            TimeStyle("elapsed"),
            "elapsed",
            "The times count from a start. In which unit?",
            {
                "ms": "milliseconds", "s": "seconds", "min": "minutes", "h": "hours", "d": "days",
                "none": "none of these",
            },
        ),
    ],
)  # fmt: skip
def test_what_is_asked_of_the_time(times: TimeStyle, about: str, sentence: str, offered: dict[str, str]):
    question = asked(TIME, WARM, times=times)
    assert (question.about, words_of(question.sentence), choices(question)) == (about, sentence, offered)
    assert question.likelier == times.likelier


@pytest.mark.parametrize(
    "times",
    [
        TimeStyle("text", order="dmy", shared_month="lip", tongue="pl"),
        TimeStyle("count", counts=("s1904", "s2000"), count="s2000"),
        TimeStyle("text", order="dmy", orders=("dmy", "mdy")),
        TimeStyle("text", orders=("dmy",)),
        TimeStyle("epoch_s", orders=("dmy", "mdy")),
        TimeStyle("span", elapsed_unit="min"),
        TimeStyle("elapsed", elapsed_unit="s"),
    ],
)
def test_what_is_told_of_the_time_is_not_asked(times: TimeStyle):
    assert layout(TIME, WARM, times=times).questions == ()


@pytest.mark.parametrize(
    ("column", "sentence", "offered"),
    [
        (
            Column("unknown", "x"),
            "What does “x” (12.1, 12.2, 12.3 …) hold?",
            {"temperature": "temperature", "humidity": "relative humidity", "ignored": "not needed"},
        ),
        (
            Column("unknown", holds_text=True),
            "What does column 2 (12.1, 12.2, 12.3 …) hold?",
            {"probe": "name of the probe", "ignored": "not needed"},
        ),
        (
            Column("unknown", "x", holds_text=True, may_be=("temperature", "ignored"), doubt=Note("Is it air?")),
            "What does “x” (12.1, 12.2, 12.3 …) hold? Is it air?",
            {"temperature": "temperature", "ignored": "not needed"},
        ),
    ],
)
def test_what_a_column_holds(column: Column, sentence: str, offered: dict[str, str]):
    question = asked(TIME, column)
    assert (question.about, words_of(question.sentence), choices(question)) == ("role 2", sentence, offered)


@pytest.mark.parametrize(
    ("column", "offered", "likelier"),
    [
        (Column("temperature", "T"), {"°C": "degrees Celsius", "°F": "degrees Fahrenheit"}, ""),
        (Column("humidity", "T"), {"%": "per cent", "fraction": "0 to 1"}, ""),
        (
            Column("temperature", "T", units=("°F", "K"), is_likelier=True),
            {"°F": "degrees Fahrenheit", "K": "kelvin"},
            "°F",
        ),
        (Column("temperature", "T", units=("°F", "K")), {"°F": "degrees Fahrenheit", "K": "kelvin"}, ""),
    ],
)
def test_in_which_unit_a_column_is(column: Column, offered: dict[str, str], likelier: str):
    question = asked(TIME, column)
    assert (question.about, words_of(question.sentence)) == ("unit 2", "In which unit is “T” (12.1, 12.2, 12.3 …)?")
    assert (choices(question), question.likelier) == (offered, likelier)


def test_one_answer_is_for_all_columns_that_are_alike():
    open_ = layout(TIME, Column("temperature", "A"), Column("temperature"), Column("temperature", "B", unit="°C"))
    assert [words_of(each.sentence) for each in open_.questions] == [
        "In which unit are “A” (12.1, 12.2, 12.3 …) and column 3?"
    ]
    assert alike(open_, 2) == (1, 2)


@pytest.mark.parametrize(
    "other",
    [
        Column("humidity"),
        Column("temperature", units=("°C",)),
        Column("temperature", doubt=Note("unlikely", {"unit": "°C", "low": 70.0, "high": 80.0})),
    ],
)
def test_columns_that_differ_are_asked_one_by_one(other: Column):
    assert [each.about for each in layout(TIME, Column("temperature"), other).questions] == ["unit 2", "unit 3"]
    assert alike(layout(TIME, Column("temperature"), other), 2) == (2,)


def test_a_doubt_is_told_with_the_question():
    sentence = asked(TIME, Column("temperature", "T", doubt=Note("Its head says °C."))).sentence
    assert words_of(sentence) == "In which unit is “T” (12.1, 12.2, 12.3 …)? Its head says °C."


def test_numbers_that_may_mean_nothing_are_asked_about():
    question = asked(TIME, evolve(WARM, may_mean_nothing=(-127.0, 85.0)))
    assert (question.about, words_of(question.sentence)) == (
        "nothing 2",
        "Again and again “Temp” says −127 and 85, far from all its other values. Are these readings?",
    )
    assert choices(question) == {"nothing": "no: nothing was measured then", "readings": "yes, it was measured so"}


@pytest.mark.parametrize("told", [(), (85.0,)])
def test_numbers_that_were_told_are_not_asked_about(told: tuple[float, ...]):
    assert layout(TIME, evolve(WARM, may_mean_nothing=(85.0,), means_nothing=told)).questions == ()


def test_a_humidity_astray_asks_for_the_temperature_beside_it():
    columns = (TIME, WARM, evolve(WARM, label="", probe="B"), evolve(DAMP, asks_beside=True))
    question = asked(*columns)
    assert (question.about, words_of(question.sentence)) == ("beside 4", "Which temperature was measured beside “RH”?")
    assert choices(question) == {"2": "“Temp”", "3": "column 3", "0": "none of these"}
    assert layout(*columns[:3], evolve(columns[3], beside=0)).questions == ()


def test_what_would_be_lost_is_asked_about_until_it_is_told():
    losses = (Loss(6, 100, 7, "x"), Loss(9, 100, 8, "ERR", 2))
    question = asked(TIME, WARM, DAMP, losses=losses)
    assert (question.about, words_of(question.sentence)) == (
        "loss",
        "6 of 100 lines are not read, for example “x” in line 7. 9 of 100 values of “RH” are not read, for example "
        "“ERR” in line 8. May they be left out?",
    )
    assert choices(question) == {
        "leave": "leave them out and read the rest",
        "none": "no, this file is not to be read so",
    }
    assert layout(TIME, WARM, losses=losses, losses_taken=True).questions == ()


def test_an_empty_cell_is_not_shown_nor_one_that_a_short_row_has_not():
    rows = (("t1", " ", ""), ("t2",), ("t3", "12.3", "81"))
    assert words_of(asked(TIME, Column("unknown"), preview=rows).sentence) == "What does column 2 (12.3 …) hold?"


def test_of_a_column_without_cells_none_are_shown():
    assert words_of(asked(TIME, Column("unknown"), preview=()).sentence) == "What does column 2 hold?"
