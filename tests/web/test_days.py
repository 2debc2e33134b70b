"""A day is said as one says it; its date only where it is a week off or more."""

from datetime import datetime

import pytest

from core.quantities import METRIC
from core.sentence import Sentence
from tests.web.conftest import MORNING, Visitor
from web import days
from web.visitor import CLOCK_HEADER


def begun_line(visitor: Visitor, days: float) -> str:
    visitor.start_batch()
    visitor.wait(days=days)
    return visitor.get("/batches").texts("li")[0]


@pytest.mark.parametrize(
    ("off", "said"),
    [(0, "today"), (1, "yesterday"), (2, "Monday"), (6, "Monday"), (7, "2026")],
)
def test_the_day_a_batch_was_begun_is_said_as_one_says_it(visitor: Visitor, off: float, said: str):
    line = begun_line(visitor, off)
    assert said in line
    assert ("2026" in line) is (off >= 7)


def test_today_says_whether_anything_hangs(visitor: Visitor):
    batch = visitor.start_batch()
    assert "Hanging" not in visitor.get("/").texts("h2")
    visitor.hang(batch)
    assert "1 piece, not weighed yet" in visitor.get("/").text


def test_the_moments_within_a_sentence_are_said_as_one_says_them(visitor: Visitor):
    """Also in a sentence within it; what else it tells stays as it is."""
    moment = datetime(2026, 11, 1, 22, 40, tzinfo=MORNING.tzinfo)
    inner = Sentence("pH {ph}, {moment}", {"ph": "5.6", "moment": moment})
    with visitor.app.test_request_context(headers={CLOCK_HEADER: MORNING.isoformat()}):
        said = days.near(Sentence("{inner}; {day}", {"inner": inner, "day": moment.date()})).say(METRIC)
    assert said == "pH 5.6, yesterday 22:40; 1 Nov 2026"


@pytest.mark.parametrize("month", range(1, 13))
def test_a_day_is_named_in_full_as_the_calendar_names_it(month: int):
    moment = datetime(2026, month, 3, tzinfo=MORNING.tzinfo)
    assert days.in_full(moment).say(METRIC) == f"{moment:%A} 3 {moment:%B}"


def test_a_piece_says_what_it_lost_and_its_target(visitor: Visitor):
    piece = visitor.hang(visitor.start_batch(), start="1000")
    visitor.wait(days=9)
    visitor.fill(f"{piece}/weigh", mass_kg="650")
    assert "lost 35.0 %, target 35.0 %" in visitor.get(piece).text.replace("\u00a0", " ")
