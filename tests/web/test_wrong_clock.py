"""A wrong clock is told when something is saved, and wherever an entry lies ahead of it."""

from datetime import timedelta

import pytest

from tests.web.conftest import MORNING, Visitor

LATER = "entry is later than that"


def save_air(visitor: Visitor, **more: str):
    return visitor.fill("/chamber/air", temperature_c="12", **more)


def test_a_clock_that_is_right_is_not_spoken_of(visitor: Visitor):
    visitor.dried()
    for path in ("/", "/yours", "/chamber"):
        assert "clock" not in visitor.get(path).text


def test_a_clock_of_1970_is_told_when_saving(visitor: Visitor):
    visitor.now = MORNING.replace(year=1971)
    visitor.get("/")
    assert "before this daybook was made" in visitor.get("/", saved="x").text


def test_a_clock_a_year_ahead_is_told_when_saving(visitor: Visitor):
    save_air(visitor)
    visitor.wait(days=365)
    assert "The entry before this one is of 2 Nov 2026" in save_air(visitor).text
    assert "The entry before this one" not in save_air(visitor).text


@pytest.mark.parametrize("path", ["/", "/yours", "/chamber"])
def test_set_back_again_it_is_told_wherever_an_entry_lies_ahead(visitor: Visitor, path: str):
    visitor.wait(days=365)
    save_air(visitor)
    visitor.now = MORNING
    assert LATER in visitor.get(path).text


def test_an_entry_ahead_whose_time_was_corrected_is_told_no_more(visitor: Visitor):
    visitor.wait(days=365)
    key = save_air(visitor).saved
    visitor.now = MORNING
    visitor.fill(f"/entries/{key}/correct", happened="2026-11-02T07:30")
    assert LATER not in visitor.get("/").text


def test_an_entry_ahead_that_was_taken_back_is_told_no_more(visitor: Visitor):
    visitor.wait(days=365)
    page = save_air(visitor)
    visitor.now = MORNING
    visitor.send(page.form("/undo"))
    assert LATER not in visitor.get("/").text


def test_two_tablets_some_minutes_apart_are_no_trouble(visitor: Visitor):
    visitor.wait(minutes=20)
    save_air(visitor)
    visitor.now -= timedelta(minutes=20)
    assert LATER not in visitor.get("/").text
