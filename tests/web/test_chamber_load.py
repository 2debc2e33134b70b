"""The moisture load on the tablet: what hangs by the book, what is asked of the chamber, and its word."""

import pytest

from tests.web.conftest import Visitor
from tests.web.reading import Page


def hang(visitor: Visitor, start: str = "10 kg") -> None:
    visitor.hang(visitor.cured_and_acid(), start=start)


def state(visitor: Visitor, litres: str) -> None:
    visitor.fill("/chamber/capacity", rated_m3_s=litres)


def word(page: Page) -> list[str]:
    return page.texts("strong", "load-word")


def test_an_empty_book_asks_for_what_hangs(visitor: Visitor):
    page = visitor.get("/chamber/load")
    assert (page.status, page.typed("hanging")) == (200, "")
    assert "Nothing is recorded as hanging." in page.text


def test_what_hangs_comes_from_the_book(visitor: Visitor):
    hang(visitor)
    page = visitor.get("/chamber/load")
    assert (page.typed("hanging"), page.typed("loss")) == ("10", "1.5")
    assert page.figures["given_off"] == "6.25 g/h"


def test_a_weighed_piece_brings_its_own_loss(visitor: Visitor):
    piece = visitor.hang(visitor.cured_and_acid(), start="1000")
    visitor.wait(days=5)
    visitor.fill(f"{piece}/weigh", mass_kg="960")
    page = visitor.get("/chamber/load")
    assert page.typed("loss") == "0.83"
    assert "the loss of 1 is known" in page.text


def test_other_figures_may_be_put_in(visitor: Visitor):
    page = visitor.fill("/chamber/load", hanging="20", loss="1")
    assert page.figures["given_off"] == "8.33 g/h"
    assert {"peak", "coil", "latent"} <= set(page.figures)


def test_us_units_and_pounds(visitor: Visitor):
    visitor.settings(units="us")
    page = visitor.fill("/chamber/load", hanging="22 lb", loss="1")
    assert page.figures["given_off"] == "4.16 g/h"


def test_a_decimal_comma_is_taken(visitor: Visitor):
    visitor.settings(decimal="comma")
    assert visitor.fill("/chamber/load", hanging="20", loss="0,5").figures["given_off"] == "4,17 g/h"


@pytest.mark.parametrize(
    ("values", "field"),
    [
        ({"hanging": ""}, "hanging"),
        ({"hanging": "much"}, "hanging"),
        ({"loss": "20"}, "loss"),
        ({"temperature": "99"}, "temperature"),
        ({"changes": "20"}, "chamber"),
    ],
)
def test_what_cannot_be_is_refused_beside_its_box(visitor: Visitor, values: dict[str, str], field: str):
    page = visitor.fill("/chamber/load", **{"hanging": "10"} | values)
    assert page.status == 422
    assert page.beside(field)


def test_nothing_is_written_by_working_it_out(visitor: Visitor):
    visitor.fill("/chamber/load", hanging="20")
    assert len(visitor.book) == 0


def test_without_a_capacity_the_word_says_what_is_missing(visitor: Visitor):
    page = visitor.fill("/chamber/load", hanging="20")
    assert word(page) == ["Not known"]
    assert "Log the basin twice" in page.text


@pytest.mark.parametrize(("litres", "said"), [("1", "Carries it"), ("0.22", "Near its limit"), ("0.1", "Overloaded")])
def test_the_word_follows_what_is_stated(visitor: Visitor, litres: str, said: str):
    state(visitor, litres)
    page = visitor.fill("/chamber/load", hanging="20", loss="1")
    assert word(page) == [said]
    assert "carries" in page.figures


def test_overloaded_says_why(visitor: Visitor):
    state(visitor, "0.1")
    assert "20 kg give off 8.3 g/h; the chamber takes out 4.2 g/h" in visitor.fill("/chamber/load", hanging="20").text


def test_the_capacity_is_learned_from_the_basin(visitor: Visitor):
    visitor.fill("/chamber/basin/empty", volume_m3="0.4")
    visitor.wait(days=1)
    visitor.fill("/chamber/basin/empty", volume_m3="0.4")
    page = visitor.get("/chamber/load")
    assert "0.4 L a day, the most the basin has shown" in page.text


def test_an_empty_chamber_tells_what_the_humidifier_adds(visitor: Visitor):
    page = visitor.fill("/chamber/load", hanging="10", chamber="500", changes="20", room_humidity="30")
    assert "need" in page.figures
    assert "rises_in" in page.figures


def test_the_figures_are_live(visitor: Visitor):
    page = visitor.get("/chamber/load", figures="1", hanging="10", loss="1", temperature="12", humidity="80",
                       room_temperature="20", room_humidity="50")  # fmt: skip
    assert page.figures["given_off"] == "4.17 g/h"


@pytest.mark.parametrize("text", ["", "much", "-5", "<script>", "9" * 30, "½", "0"])
def test_figures_of_anything_typed_are_answered(visitor: Visitor, text: str):
    page = visitor.get("/chamber/load", figures="1", hanging=text, loss="1", temperature=text, humidity="80")
    assert page.status == 200


def test_the_chamber_page_tells_the_load_in_a_line(visitor: Visitor):
    hang(visitor)
    state(visitor, "0.1")
    assert "Overloaded" in visitor.get("/chamber").text


def test_a_stated_capacity_is_kept(visitor: Visitor):
    fact = visitor.fact(visitor.fill("/chamber/capacity", rated_m3_s="0.5", chamber_m3="500").saved)
    assert fact.rated_m3_s * 86400 == pytest.approx(0.0005)
    assert fact.chamber_m3 == 0.5


def test_neither_stated_is_refused(visitor: Visitor):
    page = visitor.fill("/chamber/capacity")
    assert page.status == 422
    assert page.beside("rated_m3_s")
