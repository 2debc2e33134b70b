"""The race against the clock on the screens: in time, too late, by steps, by the Canadian rule, and a slow style."""

from __future__ import annotations

import io
import re

import pytest

from core.daybook.facts.batch import Reading
from core.daybook.facts.ferment import DeviationDecided, FermentationBegun, FermentLogTaken
from core.daybook.facts.instruments import IcePointChecked, InstrumentAdded
from tests.core.kitchen import Kitchen
from tests.web.conftest import Visitor
from tests.web.reading import Page


def begun(visitor: Visitor, style: str = "fermented", rule: str = "us", **more: str) -> str:
    batch = visitor.start_batch(style=style)
    visitor.fill(f"{batch}/cure", dose="0.25 %", nitrite="6.25", other_salt_kg="310")
    visitor.fill(f"{batch}/ferment", rule=rule, **more)
    return batch


def read(visitor: Visitor, batch: str, hours: float, ph: str = "", warm: str = "", place: str = "chamber") -> Page:
    visitor.wait(hours=hours)
    return visitor.fill(f"{batch}/reading", ph=ph, temperature_c=warm, place=place)


def stage(page: Page) -> str:
    return page.by_id("ferment").text


def all_but_acid(visitor: Visitor, batch: str) -> str:
    """A piece that has everything else; its page's path."""
    piece = visitor.hang(batch)
    visitor.meat(piece)
    visitor.wait(days=30)
    visitor.fill(f"{piece}/weigh", mass_kg="800")
    visitor.fill(f"{piece}/activity", water_activity="0.89")
    visitor.fill(f"{piece}/inspect", found="sound")
    return piece


@pytest.fixture
def in_time(visitor: Visitor) -> str:
    batch = begun(visitor)
    read(visitor, batch, 0, "5.8", "24")
    read(visitor, batch, 12, "5.6", "24")
    read(visitor, batch, 12, "5.4", "24")
    read(visitor, batch, 12, "5.1", "24")
    return batch


@pytest.fixture
def too_late(visitor: Visitor) -> str:
    batch = begun(visitor)
    for _ in range(8):
        read(visitor, batch, 12, "5.5", "24")
    read(visitor, batch, 12, "5.2", "24")
    return batch


def test_the_clock_is_kept_as_it_was_started(visitor: Visitor):
    batch = begun(visitor, rule="canada", planned_c="24")
    assert FermentationBegun("canada", 24.0) in [line.fact for line in visitor.book.about(batch.split("/")[-1])]


def test_started_again_the_clock_is_corrected(visitor: Visitor):
    batch = begun(visitor)
    assert visitor.get(f"{batch}/ferment").path.endswith("/correct")


def test_a_running_batch_says_what_is_gone_what_is_left_and_until_when(visitor: Visitor):
    batch = begun(visitor)
    read(visitor, batch, 0, "5.8", "24")
    said = stage(read(visitor, batch, 12, "5.6", "24"))
    assert "101 °C·h of at most 667 °C·h used" in said
    assert "66 h 56 min left at 24.0 °C" in said
    assert "The last safe moment is Thursday 14:57" in said


def test_the_large_figure_is_in_the_readers_own_degrees(visitor: Visitor):
    batch = begun(visitor)
    read(visitor, batch, 0, "5.8", "24")
    visitor.settings(units="us")
    assert "182 °F·h of at most 1 200 °F·h used" in stage(read(visitor, batch, 12, "5.6", "75.2")).replace(
        "\u00a0", " "
    )


def test_three_readings_project_the_crossing_with_its_spread(visitor: Visitor):
    batch = begun(visitor)
    for ph in ("5.8", "5.7", "5.6"):
        page = read(visitor, batch, 6, ph, "24")
    assert "last 3 readings comes down to 5.3 about" in stage(page)


def test_the_chart_has_the_limit_and_the_crossing_to_come(visitor: Visitor):
    batch = begun(visitor)
    for ph in ("5.8", "5.7", "5.6"):
        page = read(visitor, batch, 6, ph, "24")
    assert "pH 5.3" in page.texts("text", "limit")
    assert page.all("polyline", "ahead")


def test_the_crossing_is_said_to_be_read_off_a_line(visitor: Visitor, in_time: str):
    assert "pH 5.3 was crossed about" in stage(visitor.get(in_time))
    assert "by a straight line between the readings" in stage(visitor.get(in_time))


def test_passed_is_said_to_prove_nothing_about_salmonella(visitor: Visitor, in_time: str):
    assert "no evidence against Salmonella" in stage(visitor.get(in_time))


def test_in_time_it_can_be_ready(visitor: Visitor, in_time: str):
    assert visitor.get(all_but_acid(visitor, in_time)).verdicts == ["ready"]


def test_too_late_it_is_held_though_it_is_sour_and_dry(visitor: Visitor, too_late: str):
    assert visitor.get(all_but_acid(visitor, too_late)).verdicts == ["hold"]


def test_too_late_the_page_says_why_and_whom_to_ask(visitor: Visitor, too_late: str):
    said = stage(visitor.get(too_late))
    assert said.startswith("hold Over its degree-hours")
    assert re.search(r"\d °C·h: over the limit of \d+ °C·h since \w+", said.replace("\u00a0", " "))
    assert "survives cooking" in said
    assert "food-safety authority" in said


def test_too_late_today_asks_for_a_decision(visitor: Visitor, too_late: str):
    page = visitor.get("/")
    line = next(each for each in page.texts("li", "row") if "note what is decided" in each)
    assert re.search(r"\d °C·h: over the limit of \d+ °C·h", line.replace("\u00a0", " "))


def decide(visitor: Visitor, batch: str, **changes: str) -> Page:
    good = {"result": "clean", "test": "staphylococcal toxin", "decision": "keep", "decided_by": "the district"}
    page = visitor.get(f"{batch}/deviation")
    return visitor.send(page.form_with("decided_by"), **good | changes)


def test_too_late_it_stays_held_until_a_clean_test_and_a_decision(visitor: Visitor, too_late: str):
    piece = all_but_acid(visitor, too_late)
    decide(visitor, too_late, result="not-tested", test="")
    assert visitor.get(piece).verdicts == ["hold"]
    decide(visitor, too_late)
    assert visitor.get(piece).verdicts == ["ready"]


def test_a_decision_taken_back_holds_it_again(visitor: Visitor, too_late: str):
    piece = all_but_acid(visitor, too_late)
    decided = decide(visitor, too_late).saved
    visitor.post(f"/entries/{decided}/withdraw")
    assert visitor.get(piece).verdicts == ["hold"]


@pytest.mark.parametrize("changes", [{"result": "found"}, {"decision": "discard"}])
def test_what_was_found_or_given_up_is_thrown_away(visitor: Visitor, too_late: str, changes: dict[str, str]):
    piece = all_but_acid(visitor, too_late)
    decide(visitor, too_late, **changes)
    assert visitor.get(piece).verdicts == ["discard"]


def test_a_test_without_its_name_is_refused(visitor: Visitor, too_late: str):
    assert "what was tested" in decide(visitor, too_late, test="").beside("test")


def test_a_decision_without_a_name_is_refused(visitor: Visitor, too_late: str):
    assert decide(visitor, too_late, decided_by="").beside("decided_by")


def test_the_decision_is_kept(visitor: Visitor, too_late: str):
    kept = visitor.fact(decide(visitor, too_late).saved)
    assert kept == DeviationDecided("keep", "the district", "clean", "staphylococcal toxin")


def test_stepped_temperatures_add_up_by_the_canadian_rule(visitor: Visitor):
    """10 h at 24, 10 h at 30 and 15 h at 35 °C: 519 of 555 (worked example of the CFIA, from memory)."""
    batch = begun(visitor, rule="canada")
    read(visitor, batch, 0, "5.8", "24")
    for hours, warm_before, warm_after in ((10, "24", "30"), (10, "30", "35"), (15, "35", "35")):
        read(visitor, batch, hours - 0.02, "", warm_before)
        page = read(visitor, batch, 0.02, "5.6", warm_after)
    assert "519 °C·h of at most 555 °C·h used" in stage(page)


def test_no_temperature_is_no_evidence(visitor: Visitor):
    batch = begun(visitor)
    read(visitor, batch, 1, "5.8")
    read(visitor, batch, 20, "5.1")
    assert "are not known. No temperature was read" in stage(visitor.get(batch))
    assert visitor.get(all_but_acid(visitor, batch)).verdicts == ["hold"]


def test_the_chamber_and_the_core_are_told_apart(visitor: Visitor):
    batch = begun(visitor)
    for warm, inside in (("26", "18"), ("26", "22"), ("26", "25")):
        read(visitor, batch, 6, "5.7", warm)
        page = read(visitor, batch, 0, "", inside, "core")
    assert {"chamber", "core"} <= set(page.figures)
    assert page.figures["chamber"] == page.figures["degree_hours"]


def test_a_reading_in_the_meat_is_kept_as_one(visitor: Visitor):
    batch = begun(visitor)
    kept = visitor.fact(read(visitor, batch, 1, "5.8", "20", "core").saved)
    assert kept == Reading(5.8, 20.0, place="core")


def test_a_slow_style_is_judged_by_its_warm_days_not_by_its_acid(visitor: Visitor):
    batch = begun(visitor, "slow")
    read(visitor, batch, 0, "5.7", "20")
    read(visitor, batch, 12, "5.6", "20")
    page = read(visitor, batch, 12, "5.6", "14")
    assert "in its warm days" in stage(page)
    assert "comes down to 5.3" not in stage(page)
    assert "Its readings reach 24 h of its first 72 h." in stage(page)
    read(visitor, batch, 24, "", "13")
    read(visitor, batch, 24, "", "13")
    assert visitor.get(all_but_acid(visitor, batch)).verdicts == ["ready"]


def test_a_slow_style_read_once_is_held_with_what_would_settle_it(visitor: Visitor):
    batch = begun(visitor, "slow")
    read(visitor, batch, 0, "", "4")
    page = visitor.get(all_but_acid(visitor, batch))
    assert page.verdicts == ["hold"]
    assert "How warm it was in its first days is not known. Its readings reach 0 min of its first 72 h" in page.text
    assert "Enter the temperatures of its first three days at least" in page.text
    assert "Note what is decided" in stage(visitor.get(batch))


def test_a_low_ph_that_the_next_one_contradicts_is_measured_again(visitor: Visitor):
    batch = begun(visitor)
    read(visitor, batch, 0, "5.8", "20")
    read(visitor, batch, 10, "5.2", "20")
    said = stage(read(visitor, batch, 11, "5.7", "20"))
    assert "hold" in said
    assert "pH 5.2 after 10 h was contradicted by pH 5.7 after 21 h: neither counts until" in said
    assert "measure the pH again now, in the middle of a piece" in said
    assert "left at 20.0 °C" in said
    assert "hold: measure the pH again" in visitor.get("/batches").text
    assert "Measure the pH of" in visitor.get("/").text
    assert visitor.get(all_but_acid(visitor, batch)).verdicts == ["hold"]


def test_two_low_readings_settle_what_was_contradicted(visitor: Visitor):
    batch = begun(visitor)
    for hours, ph in ((0, "5.8"), (10, "5.2"), (11, "5.7"), (1, "5.2"), (1, "5.1")):
        page = read(visitor, batch, hours, ph, "20")
    assert "pH 5.2 after 10 h was contradicted by pH 5.7 after 21 h: it does not count." in stage(page)
    assert visitor.get(all_but_acid(visitor, batch)).verdicts == ["ready"]


def test_what_two_high_readings_unsay_is_said_while_it_runs_on(visitor: Visitor):
    batch = begun(visitor)
    for hours, ph in ((0, "5.8"), (10, "5.2"), (11, "5.7"), (1, "5.7")):
        page = read(visitor, batch, hours, ph, "20")
    said = stage(page)
    assert "hold" not in said
    assert "left at 20.0 °C" in said
    assert "pH 5.2 after 10 h was contradicted by pH 5.7 after 21 h and by what followed: it does not count." in said


def test_planned_warmth_and_one_reading_are_not_the_days_that_followed(visitor: Visitor):
    batch = begun(visitor, planned_c="24")
    read(visitor, batch, 0.5, "5.8", "24")
    said = stage(read(visitor, batch, 30, "5.1"))
    assert "30 h without a temperature after the last reading; more than 12 h 30 min is no evidence" in said
    assert visitor.get(all_but_acid(visitor, batch)).verdicts == ["hold"]


def test_a_slow_style_too_warm_too_long_is_held(visitor: Visitor):
    batch = begun(visitor, "slow")
    for _ in range(12):
        read(visitor, batch, 12, "5.6", "22")
    read(visitor, batch, 12, "", "12")
    assert visitor.get(all_but_acid(visitor, batch)).verdicts == ["hold"]


def test_a_slow_style_whose_warmth_nobody_read_is_held(visitor: Visitor):
    batch = begun(visitor, "slow")
    assert visitor.get(all_but_acid(visitor, batch)).verdicts == ["hold"]


LOG = "Time,Temperature (°C)\n" + "".join(
    f"2026-11-02 {hour:02}:{minute:02}:00,{24.5 if hour == 12 and minute == 30 else 24.0}\n"
    for hour in range(8, 24)
    for minute in range(60)
)


def bring(visitor: Visitor, batch: str, text: str) -> Page:
    return visitor.post(f"{batch}/logger", file=(io.BytesIO(text.encode()), "shelf.csv"))


def taken_as(visitor: Visitor, page: Page, **values: str) -> Page:
    """The layout said to be right, the log taken."""
    form = next(form for form in page.forms if "/files/" in form.action)
    page = visitor.post(form.action, **form.values | {"do": "take"})
    return visitor.send(next(form for form in page.forms if "/logger/" in form.action), **values)


def test_a_loggers_file_counts_for_the_degree_hours(visitor: Visitor):
    batch = begun(visitor)
    visitor.wait(hours=16)
    page = taken_as(visitor, bring(visitor, batch, LOG), place="chamber")
    taken = visitor.fact(page.saved)
    assert isinstance(taken, FermentLogTaken)
    assert (taken.readings, taken.highest_c, taken.place) == (960, 24.5, "chamber")
    assert "135 °C·h of" in stage(visitor.get(batch))


def test_a_file_whose_day_and_month_may_be_swapped_is_asked_about_first(visitor: Visitor):
    batch = begun(visitor)
    visitor.wait(hours=16)
    page = bring(visitor, batch, LOG.replace("2026-11-02", "11/02/2026"))
    form = next(form for form in page.forms if "/files/" in form.action)
    page = visitor.post(form.action, **form.values | {"q-order": "mdy", "do": "take"})
    page = visitor.send(next(form for form in page.forms if "/logger/" in form.action), place="core")
    assert visitor.fact(page.saved).place == "core"


def test_a_log_is_corrected_by_the_check_of_its_thermometer(visitor: Visitor):
    kitchen = Kitchen()
    thermometer = kitchen.note(InstrumentAdded("shelf", "thermometer", tolerance_k=0.5), at=-1)
    kitchen.note(IcePointChecked(1.0), thermometer, at=-0.9)
    visitor.book.learn(kitchen.records)
    batch = begun(visitor)
    visitor.wait(hours=16)
    taken_as(visitor, bring(visitor, batch, LOG), place="chamber", thermometer=thermometer)
    assert "119 °C·h of" in stage(visitor.get(batch))


@pytest.mark.parametrize("text", ["", "\x00\x01", "not a log at all"])
def test_what_is_no_log_is_refused(visitor: Visitor, text: str):
    page = bring(visitor, begun(visitor), text)
    assert page.status == 422
    assert "summary" in page.html


def test_no_file_is_refused(visitor: Visitor):
    batch = begun(visitor)
    assert visitor.post(f"{batch}/logger").status == 422


def test_a_log_from_the_future_is_refused(visitor: Visitor):
    batch = begun(visitor)
    page = bring(visitor, batch, LOG.replace("2026", "2030"))
    page = taken_as(visitor, page, place="chamber")
    assert page.status == 422
    assert "later than now" in page.text


def test_a_batch_whose_cure_is_not_noted_can_be_read_all_the_same(visitor: Visitor):
    batch = visitor.start_batch()
    assert "Read pH and temperature" in visitor.get(batch).texts("a")


def test_what_was_read_before_the_cure_was_noted_is_shown(visitor: Visitor):
    batch = visitor.start_batch()
    read(visitor, batch, 1, ph="5.6", warm="22")
    assert "pH 5.6" in stage(visitor.get(batch))


@pytest.mark.parametrize(("hours", "said"), [(12, True), (13, False)])
def test_a_clock_is_not_said_to_stand_still_on_a_cold_reading_that_is_old(visitor: Visitor, hours: float, said: bool):
    batch = begun(visitor)
    read(visitor, batch, 1, "5.8", "24")
    read(visitor, batch, 1, "", "12")
    visitor.wait(hours=hours)
    assert ("no degree-hours are added" in stage(visitor.get(batch))) is said
