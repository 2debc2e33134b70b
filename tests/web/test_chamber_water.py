"""The chamber's water on the tablet: filled up, emptied, and told in time."""

import pytest

from core.daybook.facts.chamber import BasinEmptied, BasinKnown, HumidifierFilled
from tests.web.conftest import Visitor


def two_fillings(visitor: Visitor) -> None:
    visitor.fill("/chamber/charge", water_m3="6", tank_m3="7")
    for _ in range(2):
        visitor.wait(days=2)
        visitor.fill("/chamber/fill", water_m3="2", now_holds_m3="6")


def two_emptyings(visitor: Visitor) -> None:
    visitor.fill("/chamber/basin", holds_m3="2")
    for _ in range(3):
        visitor.wait(days=1)
        visitor.fill("/chamber/basin/empty", volume_m3="0.5")


def test_a_filling_is_kept(visitor: Visitor):
    assert visitor.fact(visitor.fill("/chamber/fill", water_m3="2", now_holds_m3="4").saved) == HumidifierFilled(
        0.002, 0.004
    )


def test_a_filling_to_the_mark_needs_no_more_words(visitor: Visitor):
    assert visitor.fact(visitor.fill("/chamber/fill", water_m3="2").saved) == HumidifierFilled(0.002)


def test_a_filling_in_quarts(visitor: Visitor):
    visitor.settings(units="us")
    assert visitor.fact(visitor.fill("/chamber/fill", water_m3="2").saved).water_m3 == pytest.approx(
        0.00189271, rel=1e-5
    )


def test_an_emptying_with_a_comma(visitor: Visitor):
    visitor.settings(decimal="comma")
    assert visitor.fact(visitor.fill("/chamber/basin/empty", volume_m3="0,75").saved) == BasinEmptied(0.00075)


def test_a_dry_basin_is_an_emptying(visitor: Visitor):
    assert visitor.fact(visitor.fill("/chamber/basin/empty", volume_m3="0").saved) == BasinEmptied(0.0)


def test_what_the_basin_holds_is_kept(visitor: Visitor):
    assert visitor.fact(visitor.fill("/chamber/basin", holds_m3="3").saved) == BasinKnown(0.003)


@pytest.mark.parametrize("key", ["water_m3", "now_holds_m3"])
def test_more_than_the_mark_is_refused_beside_its_box(visitor: Visitor, key: str):
    visitor.fill("/chamber/charge", water_m3="6", tank_m3="7")
    page = visitor.fill("/chamber/fill", **{"water_m3": "1"} | {key: "8"})
    assert page.status == 422
    assert "fill it no higher" in page.beside(key)


def test_more_than_the_basin_holds_is_refused(visitor: Visitor):
    visitor.fill("/chamber/basin", holds_m3="2")
    page = visitor.fill("/chamber/basin/empty", volume_m3="3")
    assert page.status == 422
    assert page.beside("volume_m3") == "The basin holds 2 L at most. Say on its page if it holds more."


def test_the_page_tells_when_the_tank_runs_dry(visitor: Visitor):
    two_fillings(visitor)
    text = visitor.get("/chamber").text
    assert "1 L a day" in text
    assert "Dry about Thursday" in text
    assert "Wednesday at the earliest" in text


def test_the_tank_is_drawn_as_full_as_it_is_now(visitor: Visitor):
    two_fillings(visitor)
    visitor.wait(days=3)
    page = visitor.get("/chamber")
    assert "About 3 L left of 7 L" in page.text
    (level,) = page.all("rect", "level")
    assert float(level["height"]) == pytest.approx(98 * 3 / 7, abs=0.3)


def test_a_tank_that_may_be_dry_is_not_called_full(visitor: Visitor):
    two_fillings(visitor)
    visitor.wait(days=5)
    assert "It may be dry already." in visitor.get("/chamber").text
    visitor.wait(days=5)
    assert "Probably dry since Thursday" in visitor.get("/chamber").text


def test_the_page_tells_when_the_basin_is_full(visitor: Visitor):
    two_emptyings(visitor)
    text = visitor.get("/chamber").text
    assert "The basin gathers 0.5 L a day" in text
    assert "Full about Monday" in text


def test_today_leads_to_the_filling(visitor: Visitor):
    two_fillings(visitor)
    line = next(each for each in visitor.get("/").all("li") if "Fill the humidifier" in each.text)
    assert line.all("a")[0]["href"].startswith("/chamber/fill")
    assert line.text.startswith("Wednesday ")


def test_today_leads_to_the_emptying(visitor: Visitor):
    two_emptyings(visitor)
    line = next(each for each in visitor.get("/").all("li") if "Empty the basin" in each.text)
    assert line.all("a")[0]["href"].startswith("/chamber/basin/empty")


def test_what_is_overdue_is_told_as_due(visitor: Visitor):
    two_fillings(visitor)
    visitor.wait(days=20)
    line = next(each for each in visitor.get("/").all("li") if "Fill the humidifier" in each.text)
    assert "since" in line.text


def test_one_filling_says_what_is_missing(visitor: Visitor):
    visitor.fill("/chamber/charge", water_m3="6", tank_m3="7")
    assert "After two fillings" in visitor.get("/chamber").text


def test_a_filling_corrected_counts(visitor: Visitor):
    key = visitor.fill("/chamber/fill", water_m3="2").saved
    visitor.fill(f"/entries/{key}/correct", water_m3="3")
    assert visitor.fact(key) == HumidifierFilled(0.003)
