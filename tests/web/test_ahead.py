"""What is to come of the pieces that hang, on Today, on the batch's page and on the piece's: of weight only."""

from datetime import timedelta

import pytest

from core.daybook.facts.batch import PieceTakenDown
from core.daybook.facts.chamber import CHAMBER, SetPointsChosen
from tests.core.kitchen import NOON, Kitchen
from tests.web.conftest import Visitor
from web.work import Work


class Cellar:
    """A batch whose pieces lose by the root of time, seen by a visitor."""

    def __init__(self, visitor: Visitor) -> None:
        self.visitor, self.kitchen = visitor, Kitchen()
        self.batch = self.kitchen.begin()
        self.kitchen.cure(self.batch)
        self.kitchen.read(self.batch, 5.1)

    def hang(self, tag: str = "J-1", until: int = 20, pace: float = 0.06, every: int = 3) -> str:
        piece = self.kitchen.hang(self.batch, tag, at=2)
        for day in range(every, until, every):
            self.kitchen.weigh(piece, round(1 - pace * day**0.5, 3), at=2 + day)
        return piece

    def learn(self, day: float = 22) -> Visitor:
        self.visitor.book.learn(self.kitchen.records)
        self.visitor.now = NOON + timedelta(days=day)
        return self.visitor


@pytest.fixture
def cellar(visitor: Visitor) -> Cellar:
    return Cellar(visitor)


def expected(visitor: Visitor) -> str:
    """What Today says beside the batch, once its days are worked out."""
    visitor.app.extensions["work"] = Work(slice_s=60.0)
    visitor.get("/to-come", step="1")
    return " ".join(visitor.get("/").texts("small", "expected"))


def test_today_names_the_days_of_the_first_and_the_last_piece(cellar: Cellar):
    cellar.hang("J-1", pace=0.06)
    cellar.hang("J-2", pace=0.05)
    told = expected(cellar.learn())
    assert told.startswith("35.0 % about ")
    assert " to " in told
    assert told.endswith(", by weight")


def test_today_says_nothing_of_pieces_that_lost_their_target(cellar: Cellar):
    cellar.hang(until=60)
    assert expected(cellar.learn(70)) == ""


def test_in_air_as_moist_as_the_meat_no_day_is_named(cellar: Cellar):
    cellar.kitchen.note(SetPointsChosen(12.0, 0.95), CHAMBER, 0)
    cellar.hang(until=20, pace=0.01)
    assert expected(cellar.learn()) == "no day can be named for 35.0 %"


def test_the_batch_shows_each_pieces_days(cellar: Cellar):
    cellar.hang("J-1")
    cellar.hang("J-2", pace=0.05)
    page = cellar.learn().get(f"/batches/{cellar.batch}/ahead")
    assert [each.text for each in page.all("details table th")[-2:]] == ["J-1", "J-2"]


def test_a_piece_that_lost_its_target_has_no_day_to_come(cellar: Cellar):
    cellar.hang("J-1", until=60)
    cellar.hang("J-2", pace=0.03)
    cells = cellar.learn(70).get(f"/batches/{cellar.batch}/ahead").texts("td")
    assert len([each for each in cells if each.startswith("reached, weighed ")]) == 1


def test_the_chart_has_a_fan_and_its_headline_says_the_day(cellar: Cellar):
    cellar.hang()
    page = cellar.learn().get(f"/batches/{cellar.batch}/ahead")
    assert len(page.all("polygon", "fan")) == 1
    assert "by weight" in page.all("figcaption")[0].text


def test_the_fan_begins_at_the_last_weighing_and_opens(cellar: Cellar):
    cellar.hang()
    (fan,) = cellar.learn().get(f"/batches/{cellar.batch}/ahead").all("polygon", "fan")
    points = [tuple(map(float, each.split(","))) for each in fan["points"].split()]
    widths = [abs(low[1] - high[1]) for low, high in zip(points, reversed(points), strict=True)][: len(points) // 2]
    assert widths[0] == 0
    assert widths == sorted(widths)


def test_a_piece_says_its_day_and_that_it_is_of_weight_only(cellar: Cellar):
    piece = cellar.hang()
    page = cellar.learn().get(f"/pieces/{piece}/ahead")
    assert "35.0 % lost about" in page.text
    assert "It says nothing of whether the piece is safe or done." in page.text
    assert "ready" not in page.text


def test_a_piece_says_when_to_weigh_it_and_never_a_day_that_is_gone(cellar: Cellar):
    piece = cellar.hang()
    assert "Weigh it next today." in cellar.learn(60).get(f"/pieces/{piece}/ahead").text


def test_a_piece_that_dries_too_fast_says_what_to_change(cellar: Cellar):
    cellar.kitchen.note(SetPointsChosen(12.0, 0.70), CHAMBER, 0)
    piece = cellar.hang(until=8, pace=0.09, every=2)
    page = cellar.learn(9).get(f"/pieces/{piece}/ahead")
    assert "is too fast." in page.text
    assert "Raise the humidity" in page.text


def test_where_nobody_set_the_chamber_no_pace_is_judged(cellar: Cellar):
    piece = cellar.hang(until=8, pace=0.09, every=2)
    assert "too fast" not in cellar.learn(9).get(f"/pieces/{piece}/ahead").text


def test_a_piece_taken_down_has_no_day(cellar: Cellar):
    piece = cellar.hang()
    cellar.kitchen.note(PieceTakenDown("hold"), piece, at=21)
    assert cellar.learn().get(f"/pieces/{piece}/ahead").text == ""


def test_a_slipped_digit_is_asked_about_while_it_is_typed(cellar: Cellar):
    piece = cellar.hang()
    page = cellar.learn().get(f"/pieces/{piece}/weigh", figures="1", mass_kg="572")
    assert any("lost much more than it did so far" in each for each in page.texts("p", "caution"))


def test_an_honest_weight_is_not_asked_about(cellar: Cellar):
    piece = cellar.hang()
    page = cellar.learn().get(f"/pieces/{piece}/weigh", figures="1", mass_kg="732")
    assert page.texts("p", "caution") == []


def test_neighbours_that_were_swapped_are_asked_about(cellar: Cellar):
    one, other = cellar.hang("J-1", pace=0.05), cellar.hang("J-2", pace=0.075)
    visitor = cellar.learn()
    visitor.fill(f"/pieces/{one}/weigh", mass_kg="665")
    page = visitor.get(f"/pieces/{other}/weigh", figures="1", mass_kg="776")
    assert any(each.endswith("Were the two swapped?") for each in page.texts("p", "caution"))


def test_what_is_asked_about_can_be_saved_all_the_same(cellar: Cellar):
    piece = cellar.hang()
    saved = cellar.learn().fill(f"/pieces/{piece}/weigh", mass_kg="572").saved
    assert cellar.visitor.fact(saved).mass_kg == pytest.approx(0.572)


def test_a_first_weight_that_lost_too_much_overnight_is_asked_about(cellar: Cellar):
    piece = cellar.kitchen.hang(cellar.batch, "J-1", at=2)
    page = cellar.learn(3).get(f"/pieces/{piece}/weigh", figures="1", mass_kg="910")
    assert any("much for so short a time" in each for each in page.texts("p", "caution"))
