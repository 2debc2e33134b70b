"""The preparation list on the tablet: other words, another order, one's own tasks, and back to the usual one."""

import pytest

from tests.web.conftest import Visitor
from tests.web.reading import Page

PATH = "/chamber/preparation/list"


def shown(page: Page) -> list[str]:
    return [each.text for each in page.all("li") if each.within is not None and "edit" in each.within.classes]


def add(visitor: Visitor, text: str = "Look at the seal", timer: str = "") -> Page:
    return visitor.fill(PATH, text=text, timer_s=timer)


def test_the_usual_list_is_shown_first(visitor: Visitor):
    page = visitor.get(PATH)
    assert shown(page)[0].startswith("Unplug the chamber")
    assert "The usual list." in page.text


def test_a_task_is_added_at_the_end(visitor: Visitor):
    page = add(visitor, timer="10 min")
    assert shown(page)[-1].startswith("Look at the seal 10 min")


def test_an_added_task_is_in_the_next_run(visitor: Visitor):
    add(visitor)
    run = visitor.fill("/chamber/preparation", agent="quat", stock="10 %", target="200", volume_m3="4")
    assert visitor.fact(run.saved).tasks[-1].text == "Look at the seal"


def test_a_run_keeps_the_list_that_it_was_begun_with(visitor: Visitor):
    run = visitor.fill("/chamber/preparation", agent="quat", stock="10 %", target="200", volume_m3="4")
    add(visitor)
    assert "Look at the seal" not in visitor.get(run.path).text


@pytest.mark.parametrize(("action", "place"), [("up", 2), ("down", 4)])
def test_a_task_is_moved(visitor: Visitor, action: str, place: int):
    page = visitor.send(visitor.get(PATH).form(f"/wash/{action}"))
    assert shown(page)[place].startswith("Wash walls")


def test_a_task_is_removed(visitor: Visitor):
    page = visitor.send(visitor.get(f"{PATH}/cover").form("/cover/remove"))
    assert not any("Take out the sensors" in each for each in shown(page))


def test_a_removal_can_be_undone(visitor: Visitor):
    page = visitor.send(visitor.get(f"{PATH}/cover").form("/cover/remove"))
    visitor.send(page.form("/undo"))
    assert any("Take out the sensors" in each for each in shown(visitor.get(PATH)))


@pytest.mark.parametrize("key", ["contact", "sanitise", "rinse-descaler", "descale"])
def test_what_keeps_from_harm_is_not_left_out(visitor: Visitor, key: str):
    page = visitor.post(f"{PATH}/{key}/remove")
    assert page.status == 422
    assert "not left out" in page.text
    assert len(visitor.book) == 0


def test_a_task_is_reworded(visitor: Visitor):
    page = visitor.fill(f"{PATH}/wash", text="Wash with the blue brush", timer_s="")
    assert any("blue brush" in each for each in shown(page))


def test_a_task_saved_as_it_was_follows_the_usual_list(visitor: Visitor):
    page = visitor.fill(f"{PATH}/mix")
    assert [task.text for task in visitor.fact(page.saved).tasks if task.key == "mix"] == [""]


def test_a_timer_is_taken_with_a_comma(visitor: Visitor):
    visitor.settings(decimal="comma")
    page = add(visitor, timer="1,5 h")
    assert visitor.fact(page.saved).tasks[-1].timer_s == 5400


def test_a_bare_timer_is_in_minutes(visitor: Visitor):
    assert visitor.fact(add(visitor, timer="20").saved).tasks[-1].timer_s == 1200


@pytest.mark.parametrize(
    ("values", "field"),
    [
        ({"text": ""}, "text"),
        ({"text": "x" * 201}, "text"),
        ({"timer_s": "much"}, "timer_s"),
        ({"timer_s": "100 h"}, "timer_s"),
    ],
)
@pytest.mark.parametrize("path", [PATH, f"{PATH}/wash"])
def test_what_cannot_be_kept_is_refused_beside_its_box(visitor: Visitor, path: str, values: dict[str, str], field: str):
    page = visitor.fill(path, **{"text": "Look", "timer_s": ""} | values)
    assert page.status == 422
    assert page.beside(field)
    assert page.typed(field) == values[field]
    assert len(visitor.book) == 0


def test_back_to_the_usual_list(visitor: Visitor):
    page = visitor.send(add(visitor).form("/usual"))
    assert "The usual list." in page.text
    assert not any("Look at the seal" in each for each in shown(page))


@pytest.mark.parametrize("end", ["", "/up", "/down", "/remove"])
def test_a_task_that_is_not_there_is_no_page(visitor: Visitor, end: str):
    path = f"{PATH}/own-9{end}"
    assert (visitor.post(path) if end else visitor.get(path)).status == 404


def test_a_tap_sent_twice_moves_once(visitor: Visitor):
    form = visitor.get(PATH).form("/wash/up")
    visitor.send(form)
    assert shown(visitor.send(form))[2].startswith("Wash walls")


def test_a_text_that_is_markup_is_shown_as_it_is(visitor: Visitor):
    page = add(visitor, text="<b>Air</b> {it}")
    assert any("<b>Air</b> {it}" in each for each in shown(page))
