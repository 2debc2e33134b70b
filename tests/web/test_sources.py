"""The page of sources, and the marks that lead there."""

from core.quantities import METRIC
from core.sources import every_source
from tests.web.conftest import Visitor


def test_every_source_stands_on_its_page(visitor: Visitor):
    said = visitor.get("/sources").texts("li")
    assert [
        where
        for where in (each.where.say(METRIC) for each in every_source() if each.verified != "practice")
        if f"{where}." not in said
    ] == []


def test_each_stands_under_how_it_is_known(visitor: Visitor):
    heads = visitor.get("/sources").texts("h2")
    assert heads == [
        "Read in the text itself",
        "Read in a copy",
        "From memory, not checked",
        "Common practice; no published source",
        "Worked out from the definition",
    ]


def test_a_line_says_how_its_source_is_known_with_a_mark_only(visitor: Visitor):
    page = visitor.get(visitor.hang(visitor.start_batch(), start="1260"))
    marks = {(link.text, link["href"].partition("#")[2]) for link in page.all("a") if "/sources?" in link["href"]}
    assert ("copy", "copy") in marks
    assert "(read in a copy)" not in page.text


def test_sums_lead_to_the_sources(visitor: Visitor):
    assert "/sources" in [link["href"] for link in visitor.get("/sums").all("a")]


def test_a_mark_leads_to_its_sources_unfolded(visitor: Visitor):
    page = visitor.get("/sources?known=copy")
    assert [fold["id"] for fold in page.all("details") if "open" in fold.attributes] == ["copy"]
