"""Lines that are not taken, with the sentence that says why; and what a broken line costs the one before it."""

import pytest

from core.chamber.logs import Log, answer, guess, read
from core.refusals import Refusal
from tests.core.telling import told as words_of

ASTRAY = "The line after this one is broken: the last value here may be cut off."


def file_of(head: str, rows: list[str]) -> bytes:
    """A row a minute; one with a "!" in front has no time but what it says."""
    lines = [
        row.removeprefix("!") if row.startswith("!") else f"2025-06-20 {i // 60:02}:{i % 60:02},{row}"
        for i, row in enumerate(rows)
    ]
    return "\n".join((f"Time,{head}", *lines, "")).encode()


def log_of(head: str, rows: list[str]) -> Log:
    data = file_of(head, rows)
    return read(data, guess(data))


def why(log: Log) -> dict[int, str]:
    return {each.line: words_of(each.why) for each in log.skipped}


def steady(count: int = 40) -> list[str]:
    return [f"{12 + i % 7 / 10:.1f},{80 + i % 5 / 10:.1f}" for i in range(count)]


def drop_zeros(count: int = 40, *, warm: bool = False, damp: bool = False) -> list[str]:
    """As a logger writes that leaves a zero out at the end: then a cut value does not show."""
    return [
        f"{12 + i % 7 / 10:{'g' if warm else '.1f'}},{80 + i % 5 / 10:{'g' if damp else '.1f'}}" for i in range(count)
    ]


@pytest.mark.parametrize(
    ("rows", "head", "is_in_doubt"),
    [
        (drop_zeros(damp=True), "Temp (°C),RH (%)", True),
        (drop_zeros(warm=True), "Temp (°C),RH (%)", False),
        (drop_zeros(damp=True), "Temp (°C),Battery (V)", False),
        (steady(), "Temp (°C),RH (%)", False),
    ],
)
def test_a_broken_line_puts_the_last_value_before_it_in_doubt_where_its_decimals_vary(
    rows: list[str], head: str, is_in_doubt: bool
):
    rows[20] = "12.5"
    log = log_of(head, rows)
    assert why(log)[22] == "This line has 2 cells where 3 belong."
    assert (why(log).get(21) == ASTRAY) is is_in_doubt
    assert len(log.series[0].times_s) == 39 - is_in_doubt


def test_only_the_line_just_before_it_is_in_doubt():
    rows = drop_zeros(damp=True)
    rows[19], rows[20] = "!yesterday,12.5,80.1", "12.5"
    assert why(log_of("Temp (°C),RH (%)", rows)) == {
        21: "“yesterday” is not a time as this file writes them.",
        22: "This line has 2 cells where 3 belong.",
    }


def test_of_two_broken_lines_the_first_puts_it_in_doubt_once():
    rows = drop_zeros(damp=True)
    rows[20] = rows[21] = "12.5"
    assert [each.line for each in log_of("Temp (°C),RH (%)", rows).skipped] == [21, 22, 23]


@pytest.mark.parametrize(
    ("row", "told"),
    [
        ("!,12.5,80.1", "This line has no time."),
        ("!,,80.1", "This line has no time."),
        ("!,,", None),
        ("! , , ", None),
        ("!", None),
        ("!   ", None),
        ("!Time,Temp (°C),RH (%)", "The column heads are repeated here."),
        ("12.5,80.1,", None),
        ("12.5,80.1,,", None),
        ("12.5,80.1,,x", "This line has 5 cells where 3 belong."),
        ("12.5", "This line has 2 cells where 3 belong."),
        ('12.5,"80.1', "A quotation mark is not closed in this line."),
        ("ERR,80.1", "Temp (°C): “ERR” is not a temperature."),
        ("12.5,1x", "RH (%): “1x” is not a humidity. Nothing of this line was taken."),
    ],
)
def test_why_a_line_or_a_value_is_not_taken(row: str, told: str | None):
    rows = steady()
    rows[20] = row
    assert why(log_of("Temp (°C),RH (%)", rows)).get(22) == told


def test_a_column_without_a_head_is_told_by_its_place():
    rows = [f"2025-06-20 10:{i:02},{each} °C" for i, each in enumerate(["12.1"] * 30 + ["ERR"] + ["12.2"] * 20)]
    data = "\n".join((*rows, "")).encode()
    assert why(read(data, guess(data))) == {31: "Column 2: “ERR °C” is not a temperature."}


def test_another_name_than_the_probes_is_told():
    rows = [f"{each.split(',')[0]},{'AB'[i % 2]}" for i, each in enumerate(steady(200))]
    rows[20] = "12.5,Z"
    assert why(log_of("Temp (°C),Sensor", rows)) == {22: "“Z” is not one of this file's probes."}


@pytest.mark.parametrize(("word", "told"), [("avg", "This line sums up others: it is not a reading."), ("ok", None)])
def test_a_row_that_sums_up_others_is_told(word: str, told: str | None):
    rows = [f"{each},ok" for each in steady()]
    rows[20] = f"12.5,80.1,{word}"
    assert why(log_of("Temp (°C),RH (%),Note", rows)).get(22) == told


def side_by_side() -> bytes:
    rows = [
        f"2025-06-20 10:{i:02},{12 + i % 7 / 10:.1f},2025-06-20 11:{10 + i:02},{5 + i % 7 / 10:.1f}" for i in range(40)
    ]
    return "\n".join(("Time,Front (°C),Time 2,Back (°C)", *rows, "")).encode()


def test_logs_side_by_side_have_each_their_own_times():
    data = side_by_side()
    log = read(data, answer(data, guess(data), "clocks", "each"))
    front, back = log.series
    assert (front.probe, back.probe) == ("Front", "Back")
    assert (front.temperatures_c[0], back.temperatures_c[0]) == (12.0, 5.0)
    assert back.times_s[0] - front.times_s[0] == 4200.0
    assert log.layout.side_by_side


@pytest.mark.parametrize(
    ("title", "told"),
    [
        ("Chamber two", "At line 45 another log begins (“Chambertwo”). Save each as a file of its own."),
        ("Chamber one", None),
        ("Chamber one page 2", None),
        ("", None),
    ],
)
def test_another_title_is_told_with_the_line_of_its_heads(title: str, told: str | None):
    head = "Time,Temp (°C),RH (%)"
    rows = [f"2025-06-20 {10 + i // 60}:{i % 60:02},{each}" for i, each in enumerate(steady(80))]
    data = "\n".join(("Chamber one", head, *rows[:40], *([""] if title else []), title, head, *rows[40:], "")).encode()
    try:
        read(data, guess(data))
        refused = None
    except Refusal as refusal:
        refused = refusal.sentence
    assert refused == told


@pytest.mark.parametrize(
    ("last", "is_cut"), [("12.5,80.1", False), ("12.5,80.", True), ("12.5,8", True), ("12.5,80.1\n", False)]
)
@pytest.mark.parametrize("count", [2, 60])
def test_a_last_line_without_an_end_is_cut_where_it_ends_as_no_other_does(count: int, last: str, is_cut: bool):
    data = file_of("Temp (°C),RH (%)", [*steady(count - 1), last]).removesuffix(b"\n")
    told = why(read(data, guess(data)))
    assert told == ({count + 1: "The file ends inside this line: its last value may be cut off."} if is_cut else {})
