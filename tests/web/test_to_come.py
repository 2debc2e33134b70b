"""When to weigh, worked out behind Today in slices: how far it is, what it changes, that it can be stopped."""

import pytest

from tests.web.conftest import Visitor
from web.work import Work


@pytest.fixture
def hung(visitor: Visitor) -> Visitor:
    batch = visitor.cured_and_acid()
    for tag in ("J-1", "J-2"):
        visitor.hang(batch, tag)
    visitor.app.extensions["work"] = Work(slice_s=60.0)
    return visitor


def asks(page) -> list[str]:
    """What the page asks for by itself."""
    return [each["hx-get"] for each in page.all("#work")]


def due(visitor: Visitor) -> str:
    return visitor.get("/").texts("p", "when")[0]


def test_today_stands_first_and_asks_for_the_days_then(hung: Visitor):
    assert asks(hung.get("/")) == ["/to-come?step=1"]
    assert due(hung) == "9 Nov Monday"


def test_once_they_are_worked_out_only_the_list_is_asked_for_anew(hung: Visitor):
    page = hung.get("/to-come", step="1")
    assert [(each["hx-get"], each["hx-target"]) for each in page.all("#work")] == [("/", "#today")]
    assert due(hung) == "Tomorrow 3 Nov"
    assert asks(hung.get("/")) == []


def test_it_says_how_many_pieces_are_done(hung: Visitor):
    hung.app.extensions["work"] = Work(slice_s=0.0)
    page = hung.get("/to-come", step="1")
    assert "Working out when to weigh: 1 of 2 pieces" in page.text
    assert asks(page) == ["/to-come?step=2"]


def test_stopped_it_goes_by_the_week_and_does_not_begin_again(hung: Visitor):
    hung.app.extensions["work"] = Work(slice_s=0.0)
    stop = hung.get("/to-come", step="1").all("a")[0]["href"]
    page = hung.get(stop)
    assert "Pieces are due a week after their last weighing." in page.text
    assert asks(page) == []
    assert hung.get("/to-come", step="2").status == 204


def test_stopped_it_can_be_begun_again(hung: Visitor):
    page = hung.get("/", by="week")
    link = next(each["href"] for each in page.all("a") if each.text == "Work out their days")
    assert asks(hung.get(link)) == ["/to-come?step=1"]


def test_after_an_entry_it_is_worked_out_anew(hung: Visitor):
    hung.get("/to-come", step="1")
    hung.fill("/chamber/air", temperature_c="12.5", humidity="78")
    assert asks(hung.get("/")) == ["/to-come?step=1"]


def test_where_nothing_hangs_nothing_is_asked_for(visitor: Visitor):
    visitor.start_batch()
    assert asks(visitor.get("/")) == []
