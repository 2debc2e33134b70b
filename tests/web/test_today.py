"""Today: what is to do, most dangerous first, the chamber now, and what hangs."""

from typing import get_args

import pytest

from core.daybook.due.line import Task
from tests.web.conftest import Visitor
from tests.web.reading import Element, Page
from web.screens.today import _BUTTONS, _OPENS, MOST_ROWS


def rows(page: Page) -> list[Element]:
    return page.all("li", "row")


def row(page: Page, words: str) -> Element:
    return next(each for each in rows(page) if words in each.text)


def button(of: Element) -> Element:
    return of.all("a.button")[0]


def opens(of: Element) -> str:
    return button(of)["href"].partition("?")[0]


def of_class(element: Element, name: str) -> str:
    return element.all(f".{name}")[0].text


def test_an_empty_book_says_whom_it_is_for_and_opens_three_doors(visitor: Visitor):
    page = visitor.get("/")
    assert page.status == 200
    assert "The daybook is for anyone who dry-cures sausage" in page.text
    doors = [door["href"] for list_ in page.all("ul", "doors") for door in list_.all("a")]
    assert doors == ["/sums", "/chamber/preparation", "/batches/new"]
    assert [visitor.get(path).status for path in doors] == [200] * 3


def test_an_empty_book_says_how_to_keep_it_and_leads_to_a_saved_copy(visitor: Visitor):
    page = visitor.get("/")
    assert "Add to Home Screen" in page.text
    assert "/yours" in [link["href"] for panel in page.all("section", "panel") for link in panel.all("a")]


def test_an_empty_book_has_its_drawing_with_words(visitor: Visitor):
    (drawing,) = visitor.get("/").all("svg", "drawing")
    assert "curing chamber" in drawing["aria-label"]


def test_the_day_heads_the_page(visitor: Visitor):
    visitor.start_batch()
    assert visitor.get("/").texts("h1") == ["Monday 2 November"]


def test_every_task_has_its_form_and_its_button():
    assert set(_OPENS) == set(_BUTTONS) == set(get_args(Task))


def test_a_line_has_its_words_and_the_button_that_opens_its_form(visitor: Visitor):
    batch = visitor.start_batch()
    line = row(visitor.get("/"), "Weigh the cure for Juniper coarse")
    assert (button(line).text, opens(line)) == ("Weigh", f"{batch}/cure")
    assert [bold.text for bold in line.all("b")] == ["Weigh the cure"]


def test_a_button_is_described_by_its_line(visitor: Visitor):
    visitor.start_batch()
    page = visitor.get("/")
    described = page.by_id(button(rows(page)[0])["aria-describedby"])
    assert described.text == "Weigh the cure for Juniper coarse"


def test_every_line_opens_a_page(visitor: Visitor):
    visitor.start_batch("uncured")
    visitor.cure(visitor.start_batch("sour"))
    visitor.cured_and_acid()
    visitor.hang(visitor.cured_and_acid())
    visitor.dried()
    visitor.wait(days=8)
    paths = [button(each)["href"] for each in rows(visitor.get("/"))]
    assert len(paths) >= 5
    assert [visitor.get(path).status for path in paths] == [200] * len(paths)


def test_the_first_line_has_the_one_filled_button(visitor: Visitor):
    visitor.start_batch("one")
    visitor.start_batch("two")
    page = visitor.get("/")
    filled = page.all("main")[0].all("a.main")
    assert [each.inside(rows(page)[0]) for each in filled] == [True]


def test_what_is_not_due_yet_is_told_apart_and_fills_no_button(visitor: Visitor):
    visitor.hang(visitor.cured_and_acid())
    page = visitor.get("/")
    assert "Nothing to do" in page.texts("h2")
    assert rows(page)[0].classes == ["row"]
    assert of_class(rows(page)[0], "when") == "9 Nov Monday"
    assert [each["href"] for each in page.all("main")[0].all("a.main")] == ["/batches/new"]


@pytest.mark.parametrize(
    ("later", "when"),
    [
        ({"days": 0}, "9 Nov Monday"), ({"days": 1}, "Monday 9 Nov"), ({"days": 6}, "Tomorrow 9 Nov"),
        ({"days": 6, "hours": 20}, "Today by 08:00"), ({"days": 7, "hours": 1}, "Today since 08:00"),
        ({"days": 8}, "Today since yesterday"), ({"days": 10}, "Today since Monday"),
        ({"days": 30}, "Today since 9 Nov"), ({"days": 90}, "Today since 9 Nov 2026"),
    ],
)  # fmt: skip
def test_by_when_is_said_as_one_says_it(visitor: Visitor, later: dict[str, float], when: str):
    visitor.hang(visitor.cured_and_acid())
    visitor.wait(**later)
    assert of_class(row(visitor.get("/"), "Weigh 1 piece"), "when") == when


def fermenting(visitor: Visitor) -> str:
    batch = visitor.start_batch()
    visitor.cure(batch)
    visitor.fill(f"{batch}/ferment", planned_c="24")
    visitor.fill(f"{batch}/reading", ph="5.8", temperature_c="24")
    return batch


def test_the_time_left_stands_large_with_the_last_reading(visitor: Visitor):
    """1200 °F·h ÷ (75.2 − 60) °F = 78.9 h at 24 °C (the American limit, below 90 °F)."""
    fermenting(visitor)
    visitor.wait(hours=12)
    line = row(visitor.get("/"), "Read pH")
    assert of_class(line, "when") == "66 h 56 min left"
    assert "at 24 °C; last pH 5.8, today 08:00" in line.text
    assert (button(line).text, line.classes) == ("Read pH", ["row", "late"])


def test_while_nothing_is_late_the_next_reading_is_told_beside_the_time_left(visitor: Visitor):
    fermenting(visitor)
    line = row(visitor.get("/"), "Read pH")
    assert of_class(line, "when") == "78 h 56 min left; read by today 20:00"
    assert line.classes == ["row"]
    assert visitor.get("/").texts("h2")[0] == "To do"


def test_a_clock_that_runs_stands_before_what_was_long_to_do(visitor: Visitor):
    visitor.start_batch("uncured")
    visitor.wait(days=3)
    fermenting(visitor)
    assert ["Read pH" in each.text for each in rows(visitor.get("/"))] == [True, False]


def test_what_was_done_leaves_the_list_and_comes_back_undone(visitor: Visitor):
    visitor.wait(hours=-30)
    _, piece = visitor.dried()
    assert "Look, smell, squeeze" in visitor.get("/").text
    saved = visitor.fill(f"{piece}/inspect", found="sound").saved
    assert "Look, smell, squeeze" not in visitor.get("/").all("main")[0].text
    visitor.post(f"/entries/{saved}/undo", back="/")
    assert "Look, smell, squeeze" in visitor.get("/").text


def test_what_a_line_opens_leads_back_to_today_with_the_way_back_of_what_was_saved(visitor: Visitor):
    batch = visitor.start_batch()
    form = visitor.get(button(row(visitor.get("/"), "Weigh the cure"))["href"])
    assert next(link["href"] for link in form.all("a", "quiet") if link.text == "Back") == "/"
    refused = visitor.send(form.form(f"{batch}/cure"), dose="")
    page = visitor.send(refused.form(f"{batch}/cure"), dose="0.25 %", nitrite="6.25")
    assert (page.path.partition("?")[0], page.texts("h1")) == ("/", ["Monday 2 November"])
    assert "Weigh the cure" not in page.texts("p", "what")
    assert "Undo" in page.texts("button")


def test_a_round_of_weighing_goes_on_to_the_next_piece(visitor: Visitor):
    batch = visitor.cured_and_acid()
    visitor.hang(batch, "J-1")
    second = visitor.hang(batch, "J-2")
    visitor.wait(days=8)
    form = visitor.get(button(row(visitor.get("/"), "Weigh 2 pieces"))["href"])
    sent = next(each for each in form.forms if each.action.endswith("/weigh"))
    assert visitor.send(sent, mass_kg="1100").path.startswith(f"{second}/weigh")


def test_a_form_that_was_opened_elsewhere_leads_where_it_did(visitor: Visitor):
    batch = visitor.start_batch()
    assert visitor.fill(f"{batch}/cure", dose="0.25 %", nitrite="6.25").path.startswith(batch)


def test_a_piece_to_be_thrown_away_is_one_tap_from_it(visitor: Visitor):
    _, piece = visitor.dried()
    visitor.fill(f"{piece}/inspect", signs="slime")
    line = row(visitor.get("/"), "Discard 1 piece of Juniper coarse")
    assert "J-1: A sign of spoilage: slime on the surface." in line.text
    assert (button(line).text, opens(line)) == ("Discard", f"{piece}/take-down")
    visitor.fill(f"{piece}/take-down")
    assert "Discard" not in visitor.get("/").all("main")[0].text


def test_beyond_eight_lines_the_rest_is_folded(visitor: Visitor):
    for number in range(11):
        visitor.start_batch(f"Batch {number}")
    page = visitor.get("/")
    folded = page.all("details", "more")[0]
    assert [each.inside(folded) for each in rows(page)] == [False] * MOST_ROWS + [True] * 3
    assert folded.all("summary")[0].text == "3 more"


def test_nothing_urgent_is_ever_folded(visitor: Visitor):
    for _ in range(10):
        fermenting(visitor)
    visitor.start_batch("uncured")
    page = visitor.get("/")
    folded = page.all("details", "more")[0]
    assert [each.text.count("Read pH") > 0 for each in rows(page) if not each.inside(folded)] == [True] * 10


def test_nothing_is_said_to_be_due_once_all_is_taken_down(visitor: Visitor):
    _, piece = visitor.dried()
    visitor.fill(f"{piece}/take-down", note="to the table")
    visitor.post("/yours/copied?entries=6")
    assert "Nothing to do" in visitor.get("/").texts("h2")


def test_a_batch_taken_back_wants_nothing(visitor: Visitor):
    batch = visitor.start_batch()
    visitor.post(f"/entries/{batch.split('/')[-1]}/withdraw")
    assert "Juniper coarse" not in visitor.get("/").all("main")[0].text


def test_a_copy_is_asked_for_after_a_week_and_again_a_week_after_it(visitor: Visitor):
    visitor.fill("/chamber/air", temperature_c="12.5", humidity="78")
    visitor.wait(days=7.1)
    line = row(visitor.get("/"), "Save a copy of the book")
    assert "no copy yet of 1 entry" in line.text
    assert button(line)["href"] == "/yours"
    visitor.post("/yours/copied?entries=1")
    visitor.fill("/chamber/air", temperature_c="12.5", humidity="79")
    assert rows(visitor.get("/")) == []
    visitor.wait(days=7.1)
    assert "1 entry since the last one" in row(visitor.get("/"), "Save a copy of the book").text


def test_what_no_page_has_sent_is_no_copy(visitor: Visitor):
    visitor.fill("/chamber/air", temperature_c="12.5", humidity="78")
    visitor.settings(copied="yesterday-all")
    visitor.wait(days=8)
    assert "no copy yet" in visitor.get("/").text


def test_the_page_is_told_where_to_say_that_a_copy_is_saved(visitor: Visitor):
    visitor.start_batch()
    copied = [link["data-copy"] for link in visitor.get("/yours").all("a") if link["data-copy"]]
    assert copied == ["/yours/copied?entries=1"]
    assert visitor.post(copied[0]).status == 204


def test_the_chambers_air_is_told_with_its_age_and_what_is_set(visitor: Visitor):
    visitor.fill("/chamber/air", temperature_c="12.5", humidity="78")
    visitor.fill("/chamber/set-points/choose/own", temperature_c="13", humidity="75")
    visitor.wait(hours=3)
    panel = visitor.get("/").all("section", "panel")[0]
    assert of_class(panel, "big") == "12.5 °C 78 %"
    assert "3 hours ago" in panel.text
    assert "set 13.0 °C · 75 %" in panel.text


@pytest.mark.parametrize(("readings", "drawn"), [(2, 0), (3, 1)])
def test_three_readings_of_a_day_make_a_line(visitor: Visitor, readings: int, drawn: int):
    for each in range(readings):
        visitor.fill("/chamber/air", temperature_c="12.5", humidity=str(74 + each))
        visitor.wait(hours=2)
    page = visitor.get("/")
    assert len(page.all("svg", "day")) == drawn
    assert ("24 h: 74 % to 76 %" in page.text) is bool(drawn)


def test_what_was_read_the_day_before_is_no_part_of_the_line(visitor: Visitor):
    for _ in range(3):
        visitor.fill("/chamber/air", temperature_c="12.5", humidity="75")
    visitor.wait(hours=24.1)
    assert visitor.get("/").all("svg", "day") == []


def test_the_line_stands_in_its_band_where_a_tolerance_is_set(visitor: Visitor):
    visitor.fill("/chamber/set-points/choose/own", temperature_c="13", humidity="75", humidity_differential="3")
    for humidity in ("72", "75", "78"):
        visitor.fill("/chamber/air", temperature_c="12.5", humidity=humidity)
    drawing = visitor.get("/").all("svg", "day")[0]
    band, line = drawing.all("rect")[0], drawing.all("polyline")[0]
    ys = [float(point.partition(",")[2]) for point in line["points"].split()]
    assert float(band["y"]) == pytest.approx(min(ys), abs=0.1)
    assert float(band["y"]) + float(band["height"]) == pytest.approx(max(ys), abs=0.1)


def test_what_hangs_is_told_with_a_tick_for_each_piece(visitor: Visitor):
    batch = visitor.cured_and_acid()
    first, second = visitor.hang(batch, "J-1", "1000"), visitor.hang(batch, "J-2", "1000")
    visitor.wait(days=8)
    visitor.fill(f"{first}/weigh", mass_kg="930")
    visitor.fill(f"{second}/weigh", mass_kg="860")
    (hangs,) = visitor.get("/").all("li", "hangs")
    assert "2 pieces, 10.5 % lost of 35.0 %" in hangs.text
    drawing = hangs.all("svg")[0]
    assert drawing["aria-label"] == "J-1 7.0 %, J-2 14.0 %"
    assert [float(tick["x1"]) for tick in drawing.all("line")] == [20.0, 40.0]
    assert [float(bar["width"]) for bar in drawing.all("rect")] == [100.0, 30.0]


def test_what_was_not_weighed_yet_has_no_tick(visitor: Visitor):
    visitor.hang(visitor.cured_and_acid())
    (hangs,) = visitor.get("/").all("li", "hangs")
    assert "1 piece, not weighed yet" in hangs.text
    assert hangs.all("line") == []


def test_a_finished_batch_no_longer_hangs(visitor: Visitor):
    _, piece = visitor.dried()
    visitor.fill(f"{piece}/take-down")
    assert "Hanging" not in visitor.get("/").texts("h2")


def test_a_name_with_braces_or_marks_is_told_as_it_is(visitor: Visitor):
    visitor.start_batch("{meat} <b>&</b> {0}")
    page = visitor.get("/")
    assert "Weigh the cure for {meat} <b>&</b> {0}" in rows(page)[0].text
    assert [bold.text for bold in rows(page)[0].all("b")] == ["Weigh the cure"]


def test_everything_is_told_in_the_readers_units(visitor: Visitor):
    visitor.fill("/chamber/air", temperature_c="12.5", humidity="78")
    fermenting(visitor)
    visitor.settings(units="us")
    page = visitor.get("/")
    assert "54.5 °F" in page.text
    assert "at 75.2 °F" in page.text
