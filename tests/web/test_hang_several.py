"""Several pieces hung by one form: all of them or none."""

import pytest

from tests.web.conftest import Visitor


@pytest.fixture
def batch(visitor: Visitor) -> str:
    return visitor.cured_and_acid()


def hung(visitor: Visitor, batch: str) -> list[tuple[str, float]]:
    facts = [visitor.book.line(key).fact for key in visitor.book.beginnings("piece-hung", about=batch.split("/")[-1])]
    return sorted((fact.tag, fact.start_kg) for fact in facts)


def test_each_weight_hangs_the_piece_of_its_row(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/hang/several", tag="F-1", **{"start_kg-1": "1250", "start_kg-2": "1180"})
    assert hung(visitor, batch) == [("F-1", 1.25), ("F-2", 1.18)]


def test_a_row_left_empty_hangs_nothing(visitor: Visitor, batch: str):
    visitor.fill(f"{batch}/hang/several", tag="F-1", **{"start_kg-1": "1250", "start_kg-3": "1180"})
    assert [tag for tag, _ in hung(visitor, batch)] == ["F-1", "F-3"]


def test_what_is_said_once_is_said_of_each(visitor: Visitor, batch: str):
    typed = {"start_kg-1": "1250", "start_kg-2": "1180", "diameter_m": "55 mm", "casing": "natural"}
    visitor.fill(f"{batch}/hang/several", tag="F-1", **typed)
    facts = [visitor.book.line(key).fact for key in visitor.book.beginnings("piece-hung")]
    assert [(fact.diameter_m, fact.casing) for fact in facts] == [(0.055, "natural")] * 2


def test_the_rows_say_their_tags(visitor: Visitor, batch: str):
    page = visitor.get(f"{batch}/hang/several", anew="1", tag="F-9", **{"token-start_kg-1": "", "token-start_kg-2": ""})
    assert [each.text for each in page.all("span", "tag")] == ["F-9", "F-10"]


def test_the_series_goes_on_where_it_stopped(visitor: Visitor, batch: str):
    visitor.hang(batch, "F-2")
    assert visitor.get(f"{batch}/hang/several").typed("tag") == "F-3"


def test_one_wrong_weight_hangs_none(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/hang/several", tag="F-1", **{"start_kg-1": "1250", "start_kg-2": "heavy"})
    assert page.beside("start_kg-2")
    assert hung(visitor, batch) == []


def test_a_tag_that_hangs_already_hangs_none(visitor: Visitor, batch: str):
    visitor.hang(batch, "F-2")
    page = visitor.fill(f"{batch}/hang/several", tag="F-1", **{"start_kg-1": "1250", "start_kg-2": "1180"})
    assert page.beside("tag") == "There is a piece F-2 already. Give the first one another tag."
    assert [tag for tag, _ in hung(visitor, batch)] == ["F-2"]


def test_a_tag_without_a_number_starts_no_series(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/hang/several", tag="loin", **{"start_kg-1": "1250", "start_kg-2": "1180"})
    assert page.beside("tag").startswith("A tag that several are numbered after ends in a number")


def test_nothing_weighed_hangs_nothing(visitor: Visitor, batch: str):
    page = visitor.fill(f"{batch}/hang/several", tag="F-1")
    assert page.beside("start_kg-1") == "Enter the weight of at least one piece."


def test_sent_twice_each_hangs_once(visitor: Visitor, batch: str):
    form = visitor.get(f"{batch}/hang/several").form(f"{batch}/hang/several")
    typed = {"tag": "F-1", "start_kg-1": "1250", "start_kg-2": "1180"}
    visitor.send(form, **typed)
    visitor.send(form, **typed)
    assert [tag for tag, _ in hung(visitor, batch)] == ["F-1", "F-2"]


def test_more_rows_keep_what_was_typed(visitor: Visitor, batch: str):
    form = visitor.get(f"{batch}/hang/several").form(f"{batch}/hang/several")
    page = visitor.send(form, tag="F-1", more="1", **{"start_kg-1": "1250"})
    assert len(page.all("span", "tag")) == 12
    assert page.typed("start_kg-1") == "1250"
    assert hung(visitor, batch) == []
