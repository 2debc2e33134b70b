"""When something happened: now, yesterday at this time, or a day and time; kept through a round of entries."""

from datetime import timedelta

import pytest

from tests.web.conftest import Visitor
from tests.web.reading import Page

A_MOMENT = "2026-11-01T17:30"


def chosen(page: Page) -> str:
    return page.form_with("when").values["when"]


@pytest.fixture
def hanging(visitor: Visitor) -> str:
    batch = visitor.cured_and_acid()
    for tag in ("J-1", "J-2", "J-3"):
        visitor.hang(batch, tag)
    visitor.wait(days=10)
    return batch


def test_a_form_offers_now_yesterday_and_another_time_and_says_now(visitor: Visitor):
    page = visitor.get("/chamber/air")
    assert [each["value"] for each in page.all("input") if each["name"] == "when"] == ["now", "yesterday", "moment"]
    assert chosen(page) == "now"


def test_now_is_the_moment_of_saving_and_no_midnight(visitor: Visitor):
    form = visitor.get("/chamber/air").form("/air")
    visitor.wait(minutes=9)
    key = visitor.send(form, temperature_c="12.4").saved
    assert visitor.book.line(key).entry.happened_at == visitor.book.line(key).entry.written_at


def test_yesterday_is_the_same_time_of_the_day_before(visitor: Visitor):
    key = visitor.fill("/chamber/air", temperature_c="12.4", when="yesterday").saved
    entry = visitor.book.line(key).entry
    assert entry.written_at - entry.happened_at == timedelta(days=1)


def test_a_day_and_time_that_was_typed_before_now_was_chosen_again_does_not_count(visitor: Visitor):
    key = visitor.fill("/chamber/air", temperature_c="12.4", when="now", happened=A_MOMENT).saved
    entry = visitor.book.line(key).entry
    assert entry.happened_at == entry.written_at


@pytest.mark.parametrize(("when", "typed"), [("yesterday", ""), ("moment", A_MOMENT)])
def test_what_was_set_stands_in_the_next_form_of_the_round(visitor: Visitor, when: str, typed: str):
    batch = visitor.cured_and_acid()
    page = visitor.fill(f"{batch}/hang", tag="J-1", start_kg="1250", when=when, happened=typed)
    assert (chosen(page), page.typed("happened")) == (when, typed)
    page = visitor.send(page.form("/hang"), start_kg="1180", when=when, happened=typed)
    assert (chosen(page), page.typed("tag")) == (when, "J-3")


def test_a_round_of_weighings_keeps_it(visitor: Visitor, hanging: str):
    page = visitor.get(f"{hanging}/weigh")
    page = visitor.send(page.form("/weigh"), mass_kg="1200", when="yesterday")
    assert chosen(page) == "yesterday"


def test_now_is_not_kept_as_a_moment(visitor: Visitor, hanging: str):
    page = visitor.get(f"{hanging}/weigh")
    page = visitor.send(page.form("/weigh"), mass_kg="1200")
    assert chosen(page) == "now"
    assert "at=" not in page.path


def test_what_was_set_ends_with_the_round(visitor: Visitor, hanging: str):
    page = visitor.fill(f"{hanging}/hang", tag="J-9", start_kg="1250", when="yesterday")
    assert chosen(page) == "yesterday"
    assert chosen(visitor.get(f"{hanging}/hang")) == "now"


def test_a_correction_shows_the_moment_and_now_is_a_new_one(visitor: Visitor):
    key = visitor.fill("/chamber/air", temperature_c="12.4", happened=A_MOMENT).saved
    page = visitor.get(f"/entries/{key}/correct")
    assert (chosen(page), page.typed("happened")) == ("moment", A_MOMENT)
    visitor.send(page.form("/correct"), when="now")
    entry = visitor.book.line(key).entry
    assert entry.happened_at == entry.written_at
