"""Sums: every worksheet's page shows the very numbers that the command line prints."""

import io
import json

import pytest

from core.__main__ import main
from core.quantities import METRIC
from core.sources import KNOWN_HOW
from core.worksheet import Choice, Number, Worksheet
from core.worksheets import WORKSHEETS
from tests.web.conftest import Visitor
from web.screens.sought import ALSO

every_sheet = pytest.mark.parametrize("sheet", WORKSHEETS.values(), ids=lambda sheet: sheet.name)


def printed(sheet: Worksheet, units: str = "metric") -> dict:
    values = [f"{key}={text}" for key, text in sheet.example.items()]
    out, complaint, status = main([sheet.name, "--json", "--units", units, *values], io.StringIO())
    assert (complaint, status) == ("", 0)
    return json.loads(out)


def units_for_metric(number: Number) -> str:
    return number.quantity.bare("metric").symbol


def shown(text: str) -> str:
    return " ".join(text.split())


def test_all_sums_are_listed(visitor: Visitor):
    hrefs = [link["href"] for link in visitor.get("/sums").all("a")]
    assert {f"/sums/{name}" for name in WORKSHEETS} <= set(hrefs)


def test_a_search_narrows_the_list(visitor: Visitor):
    links = [link["href"] for link in visitor.get("/sums", find="Nitrite").all("a") if "/sums/" in link["href"]]
    assert "/sums/cure-ppm" in links
    assert "/sums/shrink" not in links


def test_a_search_for_nothing_there_says_so(visitor: Visitor):
    assert "No sum holds these words" in visitor.get("/sums", find="xyzzy").text


def test_there_is_no_page_for_an_unknown_sum(visitor: Visitor):
    assert visitor.get("/sums/nonsense").status == 404


@every_sheet
def test_an_untouched_page_is_drawn_without_refusals(visitor: Visitor, sheet: Worksheet):
    page = visitor.get(f"/sums/{sheet.name}")
    assert (page.status, page.texts("p", "refusal")) == (200, [])


def shapes(sheet: Worksheet) -> list[str]:
    """Every choice that decides which boxes there are."""
    choices = (each for each in sheet.inputs if isinstance(each, Choice) and each.key in sheet.shaped_by)
    return [f"{each.key}={option}" for each in choices for option in each.options]


@every_sheet
def test_every_number_has_its_unit_in_its_label(visitor: Visitor, sheet: Worksheet):
    paths = [f"/sums/{sheet.name}", *(f"/sums/{sheet.name}?anew=1&{chosen}" for chosen in shapes(sheet))]
    labels = [label.replace(" optional", "") for path in paths for label in visitor.get(path).texts("label")]
    numbers = [each for each in sheet.inputs if isinstance(each, Number) and units_for_metric(each)]
    assert [each.label for each in numbers if f"{each.label} {units_for_metric(each)}" not in labels] == []


@every_sheet
def test_an_untouched_page_starts_with_its_defaults(visitor: Visitor, sheet: Worksheet):
    page = visitor.get(f"/sums/{sheet.name}")
    for each in sheet.inputs:
        if isinstance(each, Number) and each.default is not None:
            assert each.read(page.typed(each.key), METRIC) == pytest.approx(each.default, rel=1e-6)
        elif isinstance(each, Choice) and each.default is not None:
            assert page.typed(each.key) == each.default


@every_sheet
@pytest.mark.parametrize("units", ["metric", "us"])
def test_the_figures_are_those_of_the_command_line(visitor: Visitor, sheet: Worksheet, units: str):
    visitor.settings(units=units)
    page = visitor.fill(f"/sums/{sheet.name}", **sheet.example)
    assert page.status == 200
    assert page.figures == {each["key"]: shown(each["shown"]) for each in printed(sheet, units)["figures"]}


@every_sheet
def test_the_working_is_that_of_the_command_line(visitor: Visitor, sheet: Worksheet):
    page = visitor.fill(f"/sums/{sheet.name}", **sheet.example)
    lists = [each for each in page.all("ol") if each.within is not None and "working" in each.within.classes]
    lines = [line.text for each in lists for line in page.all("li") if line.inside(each)]
    assert lines == [shown(line) for each in printed(sheet)["figures"] for line in each["working"]]


def marked(cited: str) -> str:
    """As a screen says it: how it is known stands on the page of sources, and a mark leads there."""
    for verified, mark in (("copy", "copy"), ("memory", "memory"), ("computed", "worked out")):
        cited = cited.replace(f" ({KNOWN_HOW[verified]}).", f". {mark}")
    return cited


@every_sheet
def test_every_figure_names_its_source(visitor: Visitor, sheet: Worksheet):
    page = visitor.fill(f"/sums/{sheet.name}", **sheet.example)
    sources = [each.removeprefix("Source: ") for each in page.texts("p", "source")]
    assert sources == list(dict.fromkeys(shown(marked(each["source"])) for each in printed(sheet)["figures"]))


@every_sheet
def test_the_cautions_are_those_of_the_command_line(visitor: Visitor, sheet: Worksheet):
    answer = printed(sheet)
    expected = [
        *answer.get("verdict", {}).get("cautions", []),
        *(line for each in answer["figures"] for line in each["cautions"]),
    ]
    page = visitor.fill(f"/sums/{sheet.name}", **sheet.example)
    assert page.texts("p", "caution") == list(dict.fromkeys(map(shown, expected)))


@every_sheet
def test_the_figures_while_typing_are_the_same(visitor: Visitor, sheet: Worksheet):
    path = f"/sums/{sheet.name}"
    form = visitor.get(path).form(path)
    typing = visitor.get(path, figures="1", **form.values | sheet.example)
    assert typing.figures == visitor.send(form, **sheet.example).figures


@every_sheet
def test_a_sum_records_nothing(visitor: Visitor, sheet: Worksheet):
    visitor.fill(f"/sums/{sheet.name}", **sheet.example)
    assert len(visitor.book) == 0


@every_sheet
def test_what_was_typed_still_stands_after_the_answer(visitor: Visitor, sheet: Worksheet):
    page = visitor.fill(f"/sums/{sheet.name}", **sheet.example)
    assert {key: page.typed(key) for key in sheet.example} == dict(sheet.example)


def test_a_verdict_is_shown_with_its_reasons(visitor: Visitor):
    page = visitor.fill("/sums/ready", **WORKSHEETS["ready"].example)
    assert page.verdicts == ["ready"]


def test_while_typing_an_empty_box_is_no_fault(visitor: Visitor):
    page = visitor.get("/sums/cure-ppm", figures="1", meat_kg="12", dose="", nitrite="")
    assert page.text == "Still needed: Dose of the curing salt, Nitrite in the curing salt."


def test_while_typing_a_box_that_cannot_stand_is_told(visitor: Visitor):
    page = visitor.get("/sums/cure-ppm", figures="1", meat_kg="much", dose="", nitrite="")
    assert "“much” is not a weight" in page.texts("p", "refusal")[0]


def test_refusals_are_listed_in_the_order_of_the_boxes(visitor: Visitor):
    page = visitor.fill("/sums/cure-ppm", meat_kg="much", dose="more", nitrite="most")
    links = [link["href"].partition("-")[2] for link in page.all("a") if link["href"].startswith("#f")]
    assert links == ["meat_kg", "dose", "nitrite"]


def test_a_kind_of_meat_is_asked_what_belongs_to_it_and_nothing_else(visitor: Visitor):
    asked = {
        kind: visitor.get(f"/sums/ready?anew=1&style={kind}").text for kind in ("fermented", "slow", "whole-muscle")
    }
    assert {kind for kind, text in asked.items() if "Lowest pH" in text} == {"fermented", "slow"}
    assert {kind for kind, text in asked.items() if "Way of curing" in text} == {"whole-muscle"}
    assert {kind for kind, text in asked.items() if "Days in the cold" in text} == {"whole-muscle"}
    assert "Water activity" in visitor.get("/sums/ready").text


def test_what_was_typed_before_the_kind_was_chosen_again_comes_back_with_it(visitor: Visitor):
    page = visitor.get("/sums/ready?anew=1&style=whole-muscle&lowest_ph=4.9&now_kg=800")
    assert (page.typed("now_kg"), page.typed("lowest_ph")) == ("800", "4.9")


@pytest.mark.parametrize(
    ("word", "name"),
    [
        *(
            ("yield", "finished-mass"),
            ("target weight", "target-weight"),
            ("cure 1", "cure-dose"),
            ("pink salt", "cure-ppm"),
        ),
        *(
            ("salinity", "brine-recipe"),
            ("VPD", "drying-force"),
            ("bleach", "dilute-sanitiser"),
            ("calibr hygro", "salt-check"),
        ),
    ],
)
def test_a_sum_is_found_by_the_words_makers_use(visitor: Visitor, word: str, name: str):
    assert f"/sums/{name}" in [link["href"] for link in visitor.get("/sums", find=word).all("a")]


def test_every_sum_is_known_by_another_word(visitor: Visitor):
    assert set(ALSO) == set(WORKSHEETS)


def test_the_sum_opened_last_comes_first(visitor: Visitor):
    visitor.get("/sums/ham-days")
    links = [link["href"] for link in visitor.get("/sums").all("a") if link["href"].startswith("/sums/")]
    assert links[0] == "/sums/ham-days"


@every_sheet
def test_a_figure_is_five_taps_from_the_list(sheet: Worksheet):
    """One on the sum, whose first box has the focus, and *next* from box to box; what stands there needs none."""
    asked = [each for each in sheet.drawn({}) if each.default is None and not getattr(each, "optional", False)]
    assert 1 + max(0, len(asked) - 1) <= 5


def test_the_first_box_of_a_sum_has_the_focus(visitor: Visitor):
    focused = [box["name"] for box in visitor.get("/sums/cure-ppm").all("input") if "data-focus" in box.attributes]
    assert focused == ["meat_kg"]


def test_the_curing_salt_at_hand_is_asked_once(visitor: Visitor):
    visitor.get(
        "/sums/cure-ppm", figures="1", meat_kg="3", dose="0.25", nitrite="5", nitrate="4", method="comminuted", law="us"
    )
    page = visitor.get("/sums/cure-dose")
    assert (page.typed("nitrite"), page.typed("nitrate")) == ("5", "4")


def test_a_sum_without_an_answer_keeps_nothing_of_the_kitchen(visitor: Visitor):
    visitor.get("/sums/cure-ppm", figures="1", meat_kg="", dose="0.25", nitrite="5", nitrate="4")
    assert visitor.get("/sums/cure-dose").typed("nitrite") == ""


@pytest.mark.parametrize("name", ["dried-composition", "ready"])
def test_a_curing_salts_nitrite_is_not_taken_for_what_went_in(visitor: Visitor, name: str):
    visitor.client.set_cookie("kitchen", "nitrite:0.0625&nitrate:0")
    assert visitor.get(f"/sums/{name}").typed("nitrite") == ""


def test_what_went_in_is_not_taken_for_a_curing_salts_nitrite(visitor: Visitor):
    visitor.get(
        "/sums/dried-composition", figures="1", water="58", salt="2.8", loss="35", protein="16", nitrite="120 ppm"
    )
    assert visitor.get("/sums/cure-dose").typed("nitrite") == ""


def test_a_height_is_kept_in_meters_and_shown_in_feet(visitor: Visitor):
    visitor.get(
        "/sums/boiling-point", figures="1", altitude_m="305 m", reading_c="99", tolerance_k="1", division_k="0.1"
    )
    visitor.settings(units="us")
    assert visitor.get("/sums/moist-air").typed("altitude").startswith("1000")


@pytest.mark.parametrize("cookie", ["nitrite:ten", "law:mars", ":::", "nitrite", "nitrite:nan&altitude:1e999"])
def test_a_kitchen_that_another_hand_has_written_is_passed_over(visitor: Visitor, cookie: str):
    visitor.client.set_cookie("kitchen", cookie)
    assert [visitor.get(f"/sums/{name}").status for name in ("cure-dose", "moist-air")] == [200, 200]
