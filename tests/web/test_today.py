"""Today: what wants doing, the chamber now, and what is hanging."""

from tests.web.conftest import Visitor


def test_an_empty_book_is_welcomed(visitor: Visitor):
    page = visitor.get("/")
    assert page.status == 200
    assert "The book is empty" in page.text


def test_an_empty_book_offers_to_start_a_batch(visitor: Visitor):
    assert "/batches/new" in [link["href"] for link in visitor.get("/").all("a", "main")]


def test_a_new_batch_is_told_with_the_form_it_wants(visitor: Visitor):
    batch = visitor.start_batch()
    links = {link.text: link["href"] for link in visitor.get("/").all("a")}
    assert links["Weigh the cure for Juniper coarse"] == f"{batch}/cure"


def test_every_task_opens_a_page(visitor: Visitor):
    visitor.start_batch("uncured")
    visitor.cure(visitor.start_batch("sour"))
    visitor.cured_and_acid()
    hanging = visitor.cured_and_acid()
    visitor.hang(hanging)
    visitor.dried()
    visitor.wait(days=8)
    page = visitor.get("/")
    tasks = [link["href"] for section in page.all("ul", "lines") for link in page.all("a") if link.inside(section)]
    assert len(tasks) >= 5
    assert [visitor.get(path).status for path in tasks] == [200] * len(tasks)


def test_what_is_not_yet_due_is_told_apart(visitor: Visitor):
    visitor.hang(visitor.cured_and_acid())
    page = visitor.get("/")
    assert "Nothing to do" in page.texts("h2")
    assert "Weigh 1 piece of Juniper coarse" in page.all("li", "later")[0].text


def test_nothing_is_said_to_be_due_once_all_is_taken_down(visitor: Visitor):
    _, piece = visitor.dried()
    visitor.fill(f"{piece}/take-down", note="to the table")
    assert "Nothing to do" in visitor.get("/").texts("h2")


def test_a_finished_batch_is_no_longer_in_the_cellar(visitor: Visitor):
    _, piece = visitor.dried()
    visitor.fill(f"{piece}/take-down")
    assert "In the cellar" not in visitor.get("/").texts("h2")


def test_a_batch_taken_back_wants_nothing(visitor: Visitor):
    batch = visitor.start_batch()
    visitor.post(f"/entries/{batch.split('/')[-1]}/withdraw")
    assert "Juniper coarse" not in visitor.get("/").all("main")[0].text


def test_the_chambers_air_is_told(visitor: Visitor):
    visitor.fill("/chamber/air", temperature_c="12.5", humidity="78")
    visitor.wait(hours=3)
    page = visitor.get("/")
    assert "12.5 °C · 78 %" in page.text
    assert "3 hours ago" in page.text


def test_a_name_with_braces_is_told_as_it_is(visitor: Visitor):
    visitor.start_batch("{meat} & {0}")
    assert "Weigh the cure for {meat} & {0}" in visitor.get("/").text


def test_everything_but_the_last_click_is_told_in_the_readers_units(visitor: Visitor):
    visitor.fill("/chamber/air", temperature_c="12.5", humidity="78")
    visitor.settings(units="us")
    assert "54.5 °F" in visitor.get("/").text
