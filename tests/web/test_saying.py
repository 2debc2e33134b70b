"""A reader of the decimal comma finds it in refusals and cautions too, and the law's sections as they are printed."""

import pytest
from flask import Flask
from markupsafe import Markup

from core.quantities import Reader
from core.sentence import Sentence
from tests.web.conftest import Visitor
from web.saying import say


@pytest.mark.parametrize(
    ("worded", "read"),
    [
        ("Meat must be between 0.05 kg and 500 kg.", "Meat must be between 0,05 kg and 500 kg."),
        ("The dose is 0.25 % of it.", "The dose is 0,25 % of it."),
        ("±0.5 K (0.9 °F)", "±0,5 K (0,9 °F)"),
        ("The pH must reach pH 5.3.", "The pH must reach pH 5,3."),
        ("a water activity 0.92 or less", "a water activity 0,92 or less"),
        ("It is 200 ppm (9 CFR 424.21(c)).", "It is 200 ppm (9 CFR 424.21(c))."),
        ("food category 1.3, limits", "food category 1.3, limits"),
        ("Reg. 8.3.6 grams", "Reg. 8.3.6 grams"),
    ],
)
def test_amounts_take_the_comma_and_sections_do_not(apps: tuple[Flask, Flask], worded: str, read: str):
    with apps[0].test_request_context(headers={"Cookie": "decimal=comma"}):
        assert say(worded) == read


def test_in_a_sum_every_number_takes_the_comma():
    assert Sentence("1.006 × {air} = 5").worded(Reader(decimal=",")) == "1,006 × {air} = 5"


def test_what_was_typed_stays_as_it_was_typed(apps: tuple[Flask, Flask]):
    with apps[0].test_request_context(headers={"Cookie": "decimal=comma"}):
        assert say("{name}: 0.5 % more", name="Loin 1.5 kg") == "Loin 1.5 kg: 0,5 % more"


def test_a_reader_of_the_point_reads_it_as_worded(apps: tuple[Flask, Flask]):
    with apps[0].test_request_context():
        assert say("0.25 %") == "0.25 %"


def test_a_refusal_on_the_page_has_the_comma(visitor: Visitor):
    visitor.settings(decimal="comma")
    page = visitor.fill(f"{visitor.start_batch(meat_kg='12,4')}/cure", dose="0,5 %", nitrite="6,25")
    assert "(0,25 % of the meat)" in page.text


def test_an_example_on_the_page_has_the_comma(visitor: Visitor):
    visitor.settings(decimal="comma")
    assert "for example 6,25" in visitor.get("/sums/cure-ppm").text


def test_a_value_that_is_markup_keeps_its_tags_and_what_was_typed_does_not(apps: tuple[Flask, Flask]):
    with apps[0].test_request_context():
        told = say("{name} & {link}", name="<b>{it}</b>", link=Markup("<a>here</a>"))
    assert told == "&lt;b&gt;{it}&lt;/b&gt; &amp; <a>here</a>"
