"""A layout changed by hand, and why one cannot be read: each refusal with its field and its whole sentence."""

import pytest
from attrs import evolve

from core.chamber.logs import Column, Layout, TimeStyle, check, with_order
from core.chamber.logs.changing import NOT_READ, with_column
from core.chamber.logs.notes import Note
from core.refusals import OutOfRange, Refused

TIME, WARM = Column("time", "Time"), Column("temperature", "Temp", unit="°C", probe="A")
DAMP = Column("humidity", "RH", unit="%", probe="A")
DATE, CLOCK = Column("date", "Date"), Column("clock", "Clock")
TEXT = TimeStyle("text", order="ymd", orders=("ymd",))
ONE_OR_TWO = "Say which one column holds date and time, or which two hold the date and the time of day."
NO_VALUE = "Say which column holds the temperature or the humidity."


def layout(*columns: Column, times: TimeStyle = TEXT, **more: object) -> Layout:
    known: dict[str, object] = {"decimal": ".", **more}
    return Layout("utf-8", ",", first_line=2, width=len(columns), columns=columns, times=times, **known)  # type: ignore[arg-type]


def problems(given: Layout) -> list[tuple[str, str]]:
    try:
        check(given)
    except Refused as refused:
        return [(each.field, str(each)) for each in refused.refusals]
    return []


@pytest.mark.parametrize(
    "given",
    [
        layout(TIME, WARM),
        layout(TIME, DAMP),
        layout(DATE, CLOCK, WARM, DAMP),
        layout(TIME, WARM, evolve(WARM, probe="B"), evolve(DAMP, probe="B")),
        layout(TIME, WARM, TIME, evolve(WARM, probe="B"), side_by_side=True),
        layout(TIME, Column("probe"), WARM, DAMP, probes=("1",)),
        layout(TIME, WARM, times=TimeStyle("epoch_s")),
    ],
)
def test_what_can_be_read(given: Layout):
    assert problems(given) == []


@pytest.mark.parametrize(
    ("given", "field", "sentence"),
    [
        (layout(WARM), "time", ONE_OR_TWO),
        (layout(TIME, TIME, WARM), "time", ONE_OR_TWO),
        (layout(TIME, TIME, WARM, side_by_side=False), "time", ONE_OR_TWO),
        (layout(TIME, TIME, DATE, WARM, side_by_side=True), "time", ONE_OR_TWO),
        (layout(TIME, CLOCK, WARM), "time", ONE_OR_TWO),
        (layout(DATE, WARM), "time", ONE_OR_TWO),
        (layout(CLOCK, WARM), "time", ONE_OR_TWO),
        (layout(TIME, CLOCK, WARM, side_by_side=True), "time", ONE_OR_TWO),
        (layout(DATE, DATE, CLOCK, WARM), "time", ONE_OR_TWO),
        (layout(TIME, DATE, CLOCK, WARM), "time", ONE_OR_TWO),
        (layout(TIME, WARM, times=TimeStyle()), "time", NOT_READ),
        (layout(TIME, TIME, WARM, times=TimeStyle(), side_by_side=True), "time", NOT_READ),
        (
            layout(DATE, CLOCK, WARM, times=TimeStyle("spreadsheet")),
            "time",
            "A number for the date needs no second column: set it to “date and time”.",
        ),
        (layout(TIME), "role", NO_VALUE),
        (
            layout(TIME, Column("probe"), Column("probe"), WARM, probes=("1",)),
            "role",
            "Only one column can hold the name of the probe.",
        ),
        (
            layout(TIME, Column("probe"), WARM),
            "probe",
            "The column of probe names holds no name that returns.",
        ),
        (
            layout(TIME, WARM, evolve(WARM, probe="B"), WARM),
            "probe 4",
            "Column 4 is a second temperature of the same probe: give it another probe's name.",
        ),
        (
            layout(TIME, Column("probe"), DAMP, evolve(DAMP, probe="B"), probes=("1",)),
            "probe 4",
            "Column 4 is a second humidity of the same probe: give it another probe's name.",
        ),
    ],
)
def test_why_a_layout_cannot_be_read(given: Layout, field: str, sentence: str):
    assert problems(given) == [(field, sentence)]


def test_every_reason_is_told_at_once_and_open_questions_with_them():
    open_ = layout(TIME, Column("unknown"), times=TimeStyle())
    assert [field for field, _ in problems(open_)] == ["time", "role", "role 2"]


@pytest.mark.parametrize("index", [-1, 2])
def test_a_column_that_does_not_exist_is_not_changed(index: int):
    with pytest.raises(OutOfRange, match=r"^This file has columns 1 to 2\.$") as refused:
        with_column(layout(TIME, WARM), index, role="ignored")
    assert refused.value.field == "column"


@pytest.mark.parametrize("index", [0, 1])
def test_the_first_and_the_last_column_are_changed_and_the_other_stays(index: int):
    changed = with_column(layout(TIME, WARM), index, role="ignored").columns
    assert [each.role for each in changed] == (["ignored", "temperature"], ["time", "ignored"])[index]


def test_a_role_is_one_of_the_list():
    with pytest.raises(OutOfRange, match=r"^Choose what the column holds from the list\.$") as refused:
        with_column(layout(TIME, WARM), 1, role="pressure")  # type: ignore[arg-type]
    assert refused.value.field == "role"


@pytest.mark.parametrize(
    ("column", "role", "unit"),
    [
        (WARM, "temperature", "°C"),
        (WARM, "humidity", ""),
        (WARM, "ignored", ""),
        (evolve(DAMP, unit="written"), "temperature", "written"),
    ],
)
def test_a_new_role_drops_a_unit_that_does_not_fit_it(column: Column, role: str, unit: str):
    assert with_column(layout(TIME, column), 1, role=role).columns[1].unit == unit  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("column", "unit", "sentence"),
    [
        (WARM, "%", "Choose °C or °F."),
        (DAMP, "°C", "Choose % or fraction."),
        (TIME, "°C", "This column takes no unit."),
    ],
)
def test_a_unit_that_does_not_fit_is_refused_with_those_that_do(column: Column, unit: str, sentence: str):
    with pytest.raises(OutOfRange) as refused:
        with_column(layout(TIME, column), 1, unit=unit)  # type: ignore[arg-type]
    assert (refused.value.field, str(refused.value)) == ("unit", sentence)


@pytest.mark.parametrize(("unit", "why"), [("°F", Note("chosen")), ("", None)])
def test_a_unit_told_by_hand_says_so_and_none_takes_it_back(unit: str, why: Note | None):
    column = with_column(layout(TIME, WARM), 1, unit=unit).columns[1]  # type: ignore[arg-type]
    assert (column.unit, column.why_unit, column.role, column.probe) == (unit, why, "temperature", "A")


def test_a_probe_s_name_is_kept_without_blanks_around_it():
    assert with_column(layout(TIME, WARM), 1, probe=" Door ").columns[1] == evolve(WARM, probe="Door")


def test_what_is_not_told_stays():
    assert with_column(layout(TIME, WARM), 1) == layout(TIME, WARM)


@pytest.mark.parametrize(
    ("orders", "sentence"),
    [
        (("dmy", "mdy"), "The dates of this file fit day before month or month before day."),
        ((), "This file's dates are not read."),
    ],
)
def test_an_order_that_the_dates_do_not_fit_is_refused(orders: tuple[str, ...], sentence: str):
    given = layout(TIME, WARM, times=TimeStyle("text", orders=orders))  # type: ignore[arg-type]
    with pytest.raises(OutOfRange) as refused:
        with_order(given, "ymd")
    assert (refused.value.field, str(refused.value)) == ("order", sentence)


def test_an_order_that_they_fit_is_taken():
    given = layout(TIME, WARM, times=TimeStyle("text", orders=("dmy", "mdy")))
    assert with_order(given, "mdy").times.order == "mdy"
