"""A preparation run on the tablet: begun, ticked off one thing at a time, timed, corrected."""

from datetime import timedelta

import pytest

from core.daybook.facts.preparation import PreparationBegun, PreparationEnded, TaskBegun, TaskDone
from tests.web.conftest import Visitor
from tests.web.reading import Page

QUAT = {"agent": "quat", "stock": "10 %", "target": "200", "volume_m3": "4"}
BEFORE_CONTACT = ("unplug", "clear", "cover", "wash", "rinse", "mix", "sanitise")


def begin(visitor: Visitor, **values: str) -> str:
    """The run's path."""
    return visitor.fill("/chamber/preparation", **QUAT | values).path.partition("?")[0]


def tick(visitor: Visitor, path: str, **more: str) -> Page:
    """Taps the button of the open task."""
    return visitor.send(visitor.get(path).form("/done"), **more)


def start(visitor: Visitor, path: str) -> Page:
    return visitor.send(visitor.get(path).form("/timer"))


def at_contact(visitor: Visitor, **values: str) -> str:
    path = begin(visitor, **values)
    for _ in BEFORE_CONTACT:
        tick(visitor, path)
    return path


def finish(visitor: Visitor, path: str) -> Page:
    page = visitor.get(path)
    while any(form.action.endswith("/done") for form in page.forms):
        page = tick(visitor, path, as_it_is="yes")
    return page


def open_task(page: Page) -> str:
    return page.by_id("step-head").text


def test_a_run_is_kept_with_its_list(visitor: Visitor):
    fact = visitor.fact(visitor.fill("/chamber/preparation", **QUAT).saved)
    assert isinstance(fact, PreparationBegun)
    assert (fact.agent, fact.stock, fact.volume_m3) == ("quat", 0.1, 0.004)
    assert fact.target == pytest.approx(2e-4)
    assert [task.key for task in fact.tasks][:8] == [*BEFORE_CONTACT, "contact"]


def test_the_dilution_shows_on_the_form(visitor: Visitor):
    page = visitor.get(
        "/chamber/preparation", figures="1", **QUAT, after="drain", stated="active", stock_kg_m3="1", descaled="no"
    )
    assert page.figures["stock"] == "8 ml"
    assert {"spoons", "water", "limit", "temperature", "contact"} <= set(page.figures)


def test_us_units_show_the_same_dilution(visitor: Visitor):
    visitor.settings(units="us")
    page = visitor.get(
        "/chamber/preparation", figures="1", agent="chlorine", stock="5.25", target="200", volume_m3="1 gal",
        after="drain", stated="active", stock_kg_m3="1", descaled="no",
    )  # fmt: skip
    assert (page.figures["stock"], page.figures["temperature"]) == ("14.4 ml", "55.0 °F")


def test_a_decimal_comma_is_taken(visitor: Visitor):
    visitor.settings(decimal="comma")
    assert visitor.fact(visitor.fill("/chamber/preparation", **QUAT | {"volume_m3": "2,5"}).saved).volume_m3 == 0.0025


@pytest.mark.parametrize(
    ("values", "field"),
    [
        ({"target": "500"}, "target"),
        ({"agent": "chlorine", "target": "10"}, "target"),
        ({"agent": "chlorine", "ph": "3"}, "ph"),
        ({"stated": "hypochlorite"}, "stated"),
        ({"agent": ""}, "agent"),
        ({"volume_m3": "0"}, "volume_m3"),
        ({"contact_s": "-5"}, "contact_s"),
    ],
)
def test_what_may_not_be_made_is_refused_beside_its_box(visitor: Visitor, values: dict[str, str], field: str):
    page = visitor.fill("/chamber/preparation", **QUAT | values)
    assert page.status == 422
    assert page.beside(field)
    assert len(visitor.book) == 0


def test_vinegar_beside_chlorine_is_warned_of_on_the_form(visitor: Visitor):
    page = visitor.get(
        "/chamber/preparation", figures="1", agent="chlorine", stock="5", target="100", volume_m3="4",
        after="drain", stated="active", stock_kg_m3="1", descaled="yes",
    )  # fmt: skip
    assert "Never mix chlorine bleach with vinegar: it sets free chlorine gas, which harms the lungs." in page.text
    assert "label and local rules" in page.text


def test_vinegar_is_called_no_sanitiser(visitor: Visitor):
    page = visitor.get(
        "/chamber/preparation", figures="1", **QUAT, after="drain", stated="active", stock_kg_m3="1", descaled="yes"
    )
    assert "It is not a sanitiser" in page.html
    assert page.figures["descaler_vinegar"] == "2 L"


@pytest.mark.parametrize("other", ["ammonia", "acid", "peroxide", "alcohol"])
def test_the_run_keeps_apart_what_else_is_used(visitor: Visitor, other: str):
    path = begin(visitor, agent="chlorine", others=other)
    words = " ".join(visitor.get(path).texts("p", "caution"))
    assert "Never mix chlorine bleach with" in words
    assert "Keep apart" in visitor.get(path).texts("h2")


def test_a_run_opens_with_one_thing_to_do(visitor: Visitor):
    page = visitor.get(begin(visitor))
    assert open_task(page).startswith("Unplug the chamber")
    assert len([form for form in page.forms if form.action.endswith("/done")]) == 1


def test_done_opens_the_next(visitor: Visitor):
    path = begin(visitor)
    assert open_task(tick(visitor, path)).startswith("Take out racks")


def test_a_tick_is_kept_with_its_moment(visitor: Visitor):
    path = begin(visitor)
    page = tick(visitor, path)
    fact = visitor.fact(page.saved)
    assert (fact.key, fact.in_short) == ("unplug", False)
    assert visitor.book.line(page.saved).entry.about == path.rpartition("/")[2]


def test_a_tap_sent_twice_is_one_tick(visitor: Visitor):
    form = visitor.get(begin(visitor)).form("/done")
    visitor.send(form)
    known = len(visitor.book)
    assert open_task(visitor.send(form)).startswith("Take out racks")
    assert len(visitor.book) == known


def test_a_task_ticked_on_two_pages_is_ticked_once(visitor: Visitor):
    path = begin(visitor)
    other_page = visitor.get(path).form("/done")
    tick(visitor, path)
    known = len(visitor.book)
    visitor.send(other_page)
    assert len(visitor.book) == known


def test_a_tick_can_be_undone(visitor: Visitor):
    path = begin(visitor)
    page = tick(visitor, path)
    assert open_task(visitor.send(page.form("/undo"))).startswith("Unplug")


def test_each_tick_can_be_undone_from_the_list(visitor: Visitor):
    path = begin(visitor)
    first = tick(visitor, path).saved
    page = tick(visitor, path)
    assert open_task(visitor.send(page.form(f"/entries/{first}/withdraw"))).startswith("Unplug")


def test_a_task_out_of_turn_is_refused(visitor: Visitor):
    path = begin(visitor)
    page = visitor.post(f"{path}/done", task="dry")
    assert page.status == 422
    assert "waits for the task above" in page.text


def test_an_unknown_task_is_no_page(visitor: Visitor):
    assert visitor.post(f"{begin(visitor)}/done", task="moonlight").status == 404


@pytest.mark.parametrize("end", ["", "/done", "/timer", "/end"])
def test_an_unknown_run_is_no_page(visitor: Visitor, end: str):
    path = f"/chamber/preparation/nonsense{end}"
    assert (visitor.post(path, task="wash") if end else visitor.get(path)).status == 404


def test_the_mixing_step_shows_the_dilution(visitor: Visitor):
    path = begin(visitor)
    for _ in BEFORE_CONTACT[:5]:
        page = tick(visitor, path)
    assert page.figures["stock"] == "8 ml"


def test_the_descaling_step_shows_the_vinegar(visitor: Visitor):
    path = begin(visitor, descaled="yes")
    for _ in BEFORE_CONTACT[:5]:
        page = tick(visitor, path)
    assert page.figures["descaler_vinegar"] == "2 L"


def test_a_timer_shows_the_moment_it_ends_at(visitor: Visitor):
    path = at_contact(visitor)
    page = start(visitor, path)
    (clock,) = page.all("time-left")
    assert isinstance(visitor.fact(page.saved), TaskBegun)
    ends = visitor.book.line(page.saved).entry.happened_at + timedelta(seconds=30)
    assert clock["until"] == ends.isoformat()
    assert clock.text == "0:30 left"


def test_the_time_left_survives_a_fresh_page(visitor: Visitor):
    path = at_contact(visitor)
    start(visitor, path)
    visitor.wait(seconds=10)
    assert visitor.get(path).all("time-left")[0].text == "0:20 left"


def test_a_time_that_is_over_says_so(visitor: Visitor):
    path = at_contact(visitor)
    start(visitor, path)
    visitor.wait(seconds=31)
    assert visitor.get(path).all("time-left")[0].text == "The time is over."


def test_hours_are_told_as_hours(visitor: Visitor):
    path = at_contact(visitor, contact_s="2 h")
    assert start(visitor, path).all("time-left")[0].text == "2:00:00 left"


def test_a_contact_time_not_over_is_answered_with_a_sentence(visitor: Visitor):
    path = at_contact(visitor)
    start(visitor, path)
    visitor.wait(seconds=10)
    known = len(visitor.book)
    page = tick(visitor, path)
    assert page.status == 422
    assert "Its contact time is not over" in page.by_id("step-refusal").text
    assert "not sanitised by the rule" in page.by_id("step-refusal").text
    assert len(visitor.book) == known


def test_a_contact_time_not_started_is_answered_with_a_sentence(visitor: Visitor):
    page = tick(visitor, at_contact(visitor))
    assert page.status == 422
    assert "was not started" in page.by_id("step-refusal").text


def test_a_shorter_contact_is_recorded_as_what_it_is(visitor: Visitor):
    path = at_contact(visitor)
    start(visitor, path)
    visitor.wait(seconds=10)
    page = tick(visitor, path, as_it_is="yes")
    fact = visitor.fact(page.saved)
    assert isinstance(fact, TaskDone)
    assert fact.in_short
    assert "before its time" in page.texts("strong", "short")


def test_the_refusal_offers_to_record_it_as_what_it_is(visitor: Visitor):
    path = at_contact(visitor)
    start(visitor, path)
    refused = tick(visitor, path)
    offered = next(form for form in refused.forms if form.values.get("as_it_is"))
    assert visitor.fact(visitor.send(offered).saved).in_short


def test_a_run_with_a_shorter_contact_has_not_sanitised(visitor: Visitor):
    page = finish(visitor, at_contact(visitor))
    assert page.texts("h2", "standing") == ["Not sanitised by the rule"]
    assert "Not sanitised by the rule" in visitor.get("/chamber").text


def test_a_run_with_all_its_time_has_sanitised(visitor: Visitor):
    path = at_contact(visitor)
    start(visitor, path)
    visitor.wait(seconds=31)
    tick(visitor, path)
    page = finish(visitor, path)
    assert page.texts("h2", "standing") == ["Sanitised by the rule"]


def test_a_time_corrected_changes_the_word(visitor: Visitor):
    path = at_contact(visitor)
    started = start(visitor, path).saved
    page = finish(visitor, path)
    visitor.wait(days=1)
    visitor.fill(f"/entries/{started}/correct", happened="2026-11-02T07:30")
    assert page.texts("h2", "standing") == ["Not sanitised by the rule"]
    assert visitor.get(path).texts("h2", "standing") == ["Sanitised by the rule"]


def test_a_run_corrected_says_its_new_strength(visitor: Visitor):
    path = begin(visitor)
    key = path.rpartition("/")[2]
    page = visitor.fill(f"/entries/{key}/correct", target="150")
    assert page.path.startswith(path)
    assert "150 ppm" in page.text


def test_a_run_taken_back_leads_to_the_chamber(visitor: Visitor):
    path = begin(visitor)
    page = visitor.post(f"/entries/{path.rpartition('/')[2]}/withdraw")
    assert page.path.startswith("/chamber?")
    assert visitor.get(path).status == 404


def test_a_run_broken_off_has_not_sanitised(visitor: Visitor):
    path = begin(visitor)
    page = visitor.send(visitor.get(path).form("/end"))
    assert isinstance(visitor.fact(page.saved), PreparationEnded)
    assert page.texts("h2", "standing") == ["Not sanitised by the rule"]


def test_an_ended_run_takes_no_more_ticks(visitor: Visitor):
    path = begin(visitor)
    form = visitor.get(path).form("/done")
    visitor.send(visitor.get(path).form("/end"))
    assert visitor.send(form).status == 422


def test_today_leads_to_the_open_run(visitor: Visitor):
    path = begin(visitor)
    tick(visitor, path)
    line = next(each for each in visitor.get("/").all("li") if "Continue preparing the chamber" in each.text)
    assert (line.all("a")[0]["href"], line.all("a")[0].text) == (path, "Continue")
    assert "1 of 16 done" in line.text


def test_a_finished_run_is_not_told_on_today(visitor: Visitor):
    finish(visitor, begin(visitor))
    assert "Continue preparing" not in visitor.get("/").text


def test_a_new_run_starts_from_the_last_ones_agents(visitor: Visitor):
    finish(visitor, begin(visitor, volume_m3="5"))
    assert visitor.get("/chamber/preparation").typed("volume_m3") == "5"


def test_only_the_tap_that_starts_a_time_may_ring(visitor: Visitor):
    page = visitor.get(at_contact(visitor))
    assert [each["action"].rpartition("/")[2] for each in page.all("form") if "data-rings" in each.attributes] == [
        "timer"
    ]


def test_the_countdown_is_where_one_stands_and_says_what_is_over(visitor: Visitor):
    page = start(visitor, at_contact(visitor))
    assert "data-focus" in page.by_id("time-left").attributes
    (clock,) = page.all("time-left")
    assert (clock["of"], clock["over"]) == (open_task(page), "The time is over.")


def test_a_refusal_is_where_one_stands(visitor: Visitor):
    path = at_contact(visitor)
    start(visitor, path)
    page = tick(visitor, path)
    assert "data-focus" in page.by_id("step-refusal").attributes
    assert "data-focus" not in page.by_id("time-left").attributes


def test_a_run_that_failed_offers_to_sanitise_again(visitor: Visitor):
    page = finish(visitor, begin(visitor))
    link = next(each for each in page.all("a") if each.text == "Sanitise again")
    assert visitor.get(link["href"]).typed("target") == "200"


def test_the_gas_is_warned_of_first(visitor: Visitor):
    page = visitor.get(begin(visitor, agent="chlorine", stock="5", target="100", others="alcohol acid"))
    assert "chlorine gas" in page.texts("p", "caution")[0]


def test_what_was_done_is_folded(visitor: Visitor):
    path = begin(visitor)
    tick(visitor, path)
    assert visitor.get(path).by_id("done").text.startswith("1 done")
    assert "open" not in visitor.get(path).by_id("done").attributes
