"""When a screen breaks: it says so, leaves what was typed, and writes nothing."""

from collections.abc import Iterator

import pytest
from flask import Flask

from core.daybook.book import Book
from core.daybook.facts.chamber import CHAMBER, AirRead
from tests.web.conftest import MORNING, Visitor
from web.app import create_app
from web.journal import fresh_id, record

HTMX = {"HX-Request": "true"}


def break_after_recording() -> str:
    record(AirRead(12.0), about=CHAMBER, happened_at=MORNING, token=fresh_id())
    raise RuntimeError("the shelf fell <down>")


def refuse_after_recording() -> tuple[str, int]:
    record(AirRead(12.0), about=CHAMBER, happened_at=MORNING, token=fresh_id())
    return "no", 422


@pytest.fixture
def committed() -> list[dict]:
    return []


@pytest.fixture
def broken(committed: list[dict]) -> Iterator[Visitor]:
    """An application whose shelf falls down."""
    book = Book()
    app: Flask = create_app(book, committed.extend)
    app.add_url_rule("/shelf", view_func=break_after_recording, methods=["GET", "POST"])
    app.add_url_rule("/refused", view_func=refuse_after_recording, methods=["POST"])
    app.logger.disabled = True
    yield Visitor(app, book)
    app.logger.disabled = False


def test_a_broken_form_of_the_page_gets_a_fragment_for_the_problems_place(broken: Visitor):
    answer = broken.client.post("/shelf", data={"note": "typed"}, headers=HTMX)
    assert answer.status_code == 500
    assert answer.headers["HX-Retarget"] == "#problem"
    assert "<html" not in answer.get_data(as_text=True)


def test_a_broken_form_of_the_page_says_that_nothing_was_saved(broken: Visitor):
    answer = broken.client.post("/shelf", data={"note": "typed"}, headers=HTMX)
    assert "Nothing was saved, and what you typed is still below." in answer.get_data(as_text=True)


def test_a_broken_page_asked_for_by_the_page_is_a_whole_page(broken: Visitor):
    answer = broken.client.get("/shelf", headers=HTMX)
    assert answer.status_code == 500
    assert "HX-Retarget" not in answer.headers
    assert "<html" in answer.get_data(as_text=True)


def test_a_broken_form_sent_without_the_page_gives_back_what_was_typed(broken: Visitor):
    page = broken.post("/shelf", note="typed <b>", mass="1250")
    assert page.texts("dd") == ["typed <b>", "1250"]


def test_a_broken_form_does_not_tell_its_own_id(broken: Visitor):
    assert "entry" not in broken.post("/shelf", note="typed", entry="01a2").texts("dt")


@pytest.mark.parametrize("method", ["GET", "POST"])
@pytest.mark.parametrize("headers", [{}, HTMX], ids=["plain", "htmx"])
def test_what_breaks_commits_nothing(broken: Visitor, committed: list[dict], method: str, headers: dict[str, str]):
    broken.client.open("/shelf", method=method, headers=headers)
    assert committed == []


def test_what_is_refused_commits_nothing(broken: Visitor, committed: list[dict]):
    broken.post("/refused")
    assert committed == []


def test_what_breaks_leaves_nothing_for_the_next_request(broken: Visitor, committed: list[dict]):
    broken.post("/shelf")
    broken.post("/chamber/air", temperature_c="12")
    assert [entry["fact"]["temperature_c"] for entry in committed] == [12.0]


def test_the_report_says_what_broke(broken: Visitor):
    assert "RuntimeError: the shelf fell <down>" in broken.get("/shelf").texts("pre")[0]


def test_a_way_that_a_page_cannot_be_asked_is_told(broken: Visitor):
    page = broken.get("/refused")
    assert page.status == 405
    assert page.texts("h1") == ["This cannot be done here"]


def test_a_page_that_is_not_there_leads_back_to_today(broken: Visitor):
    page = broken.get("/nowhere")
    assert page.status == 404
    assert [each["href"] for each in page.all("a", "main")] == ["/"]


NAME = "<script>alert('x')</script>\"'&{{7*7}}"
SHORT = "<script>\"'&"


@pytest.fixture
def scripted(visitor: Visitor) -> list[str]:
    """Paths of every page that shows a name, a tag or a note which somebody meant to run."""
    batch = visitor.start_batch(NAME)
    visitor.cure(batch)
    for ph in ("5.6", "5.1"):
        visitor.fill(f"{batch}/reading", ph=ph)
    piece = visitor.hang(batch, SHORT)
    visitor.fill(f"{piece}/weigh", mass_kg="1000")
    look = visitor.fill(f"{piece}/inspect", found="sound", note=NAME).saved
    key = batch.split("/")[-1]
    log = visitor.fill(f"{piece}/weigh", mass_kg="990").path
    return [
        *("/", "/batches", batch, piece, f"{batch}/hang", f"{batch}/cure", f"{batch}/reading", log),
        *(f"{piece}/weigh", f"{piece}/activity", f"{piece}/inspect", f"{piece}/take-down"),
        *(f"/entries/{key}/correct", f"/entries/{look}/correct", f"/entries/{piece.split('/')[-1]}/correct"),
        *(f"{batch}?saved={key}", f"{batch}?saved={look}", f"/sums?find={NAME[:20]}", f"/yours?read={SHORT}"),
    ]


def test_a_script_in_a_name_is_shown_and_never_run(visitor: Visitor, scripted: list[str]):
    pages = [visitor.get(path) for path in scripted]
    assert [page.status for page in pages] == [200] * len(pages)
    assert [page.path for page in pages if page.all("script")] == []


def test_a_name_is_shown_to_the_letter(visitor: Visitor, scripted: list[str]):
    assert visitor.get(scripted[2]).texts("h1") == [NAME]


def test_no_handler_is_ever_set_by_what_was_typed(visitor: Visitor):
    batch = visitor.start_batch('" onload="alert(1)" x="')
    page = visitor.get(f"/entries/{batch.split('/')[-1]}/correct")
    assert [each for each in page.elements if any(name.startswith("on") for name in each.attributes)] == []


def test_a_form_whose_subject_was_deleted_in_another_tab_stays_as_it_was_typed(visitor: Visitor):
    batch = visitor.cured_and_acid()
    piece = visitor.hang(batch)
    visitor.post(f"/entries/{piece.split('/')[-1]}/withdraw")
    answer = visitor.client.post(f"{piece}/weigh", data={"mass_kg": "900"}, headers=HTMX)
    assert (answer.status_code, answer.headers["HX-Retarget"]) == (404, "#problem")
    assert "What you typed is still below." in answer.get_data(as_text=True)
    assert visitor.get(f"{piece}/weigh").status == 404
