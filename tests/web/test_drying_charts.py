"""A batch that hangs, drawn: each piece a line, how fast it loses, and the chamber's air on the same axis of days."""

import pytest

from core.daybook.facts.chamber import CHAMBER
from tests.core.test_air_logs import log
from tests.web.conftest import Visitor
from tests.web.reading import Element
from tests.web.test_ahead import Cellar


@pytest.fixture
def cellar(visitor: Visitor) -> Cellar:
    return Cellar(visitor)


def charts(cellar: Cellar) -> dict[str, Element]:
    """By what stands at their axis."""
    page = cellar.learn().get(f"/batches/{cellar.batch}/ahead")
    return {each.all("text.axis")[1].text: each for each in page.all("figure", "chart")}


def days(chart: Element) -> list[str]:
    """What stands along the foot."""
    return [each.text for each in chart.all("text") if each["text-anchor"] == "middle"]


def test_each_piece_is_a_line_from_the_day_it_was_hung(cellar: Cellar):
    cellar.hang("J-1")
    cellar.hang("J-2", pace=0.05)
    loss = charts(cellar)["loss, %"]
    assert {"J-1", "J-2", "forecast"} <= {each.text for each in loss.all("text.label")}
    assert len(loss.all("polyline")) == 3


def test_a_piece_hung_later_begins_later_on_the_same_axis(cellar: Cellar):
    cellar.hang("J-1")
    later = cellar.kitchen.hang(cellar.batch, "J-2", at=7)
    cellar.kitchen.weigh(later, 0.9, at=12)
    cells = [[cell.text for cell in row.all("td")] for row in charts(cellar)["loss, %"].all("tr")]
    assert ["J-2", "5.0", "0.0"] in cells
    assert ["J-2", "10.0", "10.0"] in cells


def test_without_a_log_there_is_no_air(cellar: Cellar):
    cellar.hang()
    assert set(charts(cellar)) == {"loss, %", "loss a day, %"}


def test_the_air_that_was_logged_stands_under_the_losses_on_the_same_days(cellar: Cellar):
    cellar.hang()
    cellar.kitchen.note(log(days=10, humidity=0.8), CHAMBER, 2)
    drawn = charts(cellar)
    assert list(drawn)[:3] == ["loss, %", "humidity, %", "temperature, °C"]
    assert days(drawn["humidity, %"]) == days(drawn["temperature, °C"]) == days(drawn["loss, %"])


def test_the_air_stands_in_the_readers_units(cellar: Cellar):
    cellar.hang()
    cellar.kitchen.note(log(days=10, temperature_c=12.0), CHAMBER, 2)
    cellar.visitor.settings(units="us")
    warm = charts(cellar)["temperature, °F"]
    assert warm.all("figcaption")[0].text == "Temperature 53.6 °F to 53.6 °F"
    assert warm.all("td")[-1].text == "53.6"


def test_a_probe_without_a_hygrometer_shows_its_temperature_only(cellar: Cellar):
    cellar.hang()
    cellar.kitchen.note(log(days=10, humidity=None), CHAMBER, 2)
    assert set(charts(cellar)) == {"loss, %", "temperature, °C", "loss a day, %"}


def test_the_rate_is_that_between_two_weighings(cellar: Cellar):
    """1000 g lose 30 g in three days and 15 g in the next three: 1 and 0.5 % a day."""
    piece = cellar.kitchen.hang(cellar.batch, "J-1", at=2)
    for day, share in ((3, 0.97), (6, 0.955)):
        cellar.kitchen.weigh(piece, share, at=2 + day)
    rates = charts(cellar)["loss a day, %"]
    cells = [[cell.text for cell in row.all("td")] for row in rates.all("tr")[1:]]
    assert cells == [["J-1", "1.5", "1.00"], ["J-1", "4.5", "0.50"]]


def test_one_weighing_is_no_course_of_a_rate(cellar: Cellar):
    cellar.hang(until=4)
    assert "loss a day, %" not in charts(cellar)
