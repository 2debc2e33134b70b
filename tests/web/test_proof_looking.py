"""The logs looked at: in slices, with all that the result shows, and the chart's points."""

from __future__ import annotations

import struct

from core.chamber.proof_run import Found, find
from core.daybook.proofs import result_of
from tests.core.proof_files import disturbed, high, low
from tests.web.conftest import Visitor
from tests.web.proving import BAND, laid_out, looked, points_of, tables_of, two, waited
from tests.web.reading import Page
from web.work import Work


def slow(visitor: Visitor) -> Page:
    """The page that waits: each request does one step only."""
    page = laid_out(visitor, ("low.csv", low()), ("high.csv", high()))
    visitor.app.extensions["work"] = Work(slice_s=0.0)
    return visitor.send(page.form_with("temperature_c"), **BAND)


def test_long_work_says_how_far_it_is(visitor: Visitor):
    page = slow(visitor)
    assert page.all("progress")[0]["max"] == "100"
    assert "Reading low.csv" in [each.text for each in page.elements if each["role"] == "status"]


def test_each_asking_differs_so_that_the_page_asks_again(visitor: Visitor):
    page = slow(visitor)
    (first,) = (each["hx-get"] for each in page.elements if each["hx-trigger"] == "load")
    (second,) = (each["hx-get"] for each in visitor.get(first).elements if each["hx-trigger"] == "load")
    assert first != second


def test_the_result_takes_the_whole_pages_place(visitor: Visitor):
    page = waited(visitor, slow(visitor))
    assert page.headers["HX-Retarget"] == "body"
    assert page.verdicts == ["settled"]


def test_a_switch_of_the_light_comes_back_to_the_result_not_to_the_waiting(visitor: Visitor):
    page = waited(visitor, slow(visitor))
    assert "?step=" in page.path
    assert {form.values["back"] for form in page.forms if "back" in form.values} == {page.path.partition("?")[0]}


def test_in_slices_it_comes_to_the_same_as_at_once(visitor: Visitor):
    waited(visitor, slow(visitor))
    (in_slices,) = visitor.app.extensions["work"]._results.values()
    assert result_of(find(in_slices.given)) == result_of(in_slices)


def test_stopped_work_goes_back_to_the_band(visitor: Visitor):
    page = slow(visitor)
    again = visitor.send(page.form("/stop"))
    assert again.path.endswith("/settings")
    assert again.typed("temperature_c") == "11.5"


def test_a_page_that_still_waits_does_not_begin_again_what_was_stopped(visitor: Visitor):
    page = slow(visitor)
    (asking,) = (each["hx-get"] for each in page.elements if each["hx-trigger"] == "load")
    visitor.send(page.form("/stop"))
    assert visitor.get(asking).status == 204


def test_a_part_without_readings_is_told_in_a_sentence(visitor: Visitor):
    page = two(visitor, from_s="2020-01-01T10:00", until_s="2020-01-02T10:00")
    assert "No probe has two temperatures or more" in page.text


def test_the_verdict_says_since_when(visitor: Visitor):
    page = two(visitor)
    assert page.verdicts == ["settled"]
    assert "Settled since 23 Nov 2026" in page.text


def test_one_probe_is_not_settled_and_it_says_why(visitor: Visitor):
    page = looked(visitor, ("low.csv", low()))
    assert page.verdicts == ["not settled"]
    assert "Fewer than two probes" in page.text


def test_a_missed_target_is_advised_on(visitor: Visitor):
    page = two(visitor, temperature_c="15")
    assert page.texts("li")[0:]
    assert any("Set the thermostat" in each for each in page.texts("li"))


def test_every_probe_and_pair_has_its_figures(visitor: Visitor):
    heads = two(visitor).texts("th")
    assert {"low", "high", "low − high", "Mean temperature", "Compressor starts", "Mean difference"} <= set(heads)


def test_a_figure_shows_its_working(visitor: Visitor):
    assert "Each reading weighs by the time it covers" in two(visitor).text


def test_doors_and_defrosts_are_listed(visitor: Visitor):
    cells = looked(visitor, ("low.csv", disturbed())).texts("td")
    assert {"defrost", "door opened"} <= set(cells)


def test_the_tables_come_when_they_are_seen(visitor: Visitor):
    page = two(visitor)
    asking = page.by_id("tables")
    assert (asking["hx-trigger"], asking["hx-select"]) == ("intersect once", "#tables")
    assert asking.inside(page.by_id("hourly"))
    assert visitor.get(asking["hx-get"]).by_id("tables")["hx-get"] == ""  # so that they are asked for once


def test_the_tables_can_be_had_on_a_page_of_their_own(visitor: Visitor):
    page = two(visitor)
    (link,) = (each for each in page.all("a") if each.inside(page.by_id("tables")))
    assert link["href"] == page.by_id("tables")["hx-get"]
    assert "hour by hour" in visitor.get(link["href"]).texts("h1")[0]


def test_cycles_are_listed(visitor: Visitor):
    assert any("runs of the compressor" in each for each in tables_of(visitor, two(visitor)).texts("caption"))


def test_of_a_log_that_pauses_runs_are_counted_for_the_time_it_covers(visitor: Visitor):
    head, *lines = low().splitlines(keepends=True)
    page = looked(visitor, ("low.csv", b"".join([head, *lines[:600], *lines[700:]])))
    assert any("h from its usual level on" in each for each in tables_of(visitor, page).texts("caption"))
    assert "The log pauses" in page.text


def test_every_hour_stands_in_the_table(visitor: Visitor):
    assert "23 Nov 2026, 11:00" in tables_of(visitor, two(visitor)).texts("th")


def test_the_tables_of_a_run_let_go_since_are_worked_out_once_more(visitor: Visitor):
    page = two(visitor)
    before = tables_of(visitor, page)
    visitor.app.extensions["work"] = Work()
    assert tables_of(visitor, page).texts("td") == before.texts("td")


def test_skipped_lines_are_listed_with_their_numbers(visitor: Visitor):
    lines = low().decode().splitlines()
    lines[100] = "2026-11-23 11:39:00,ERR,80.0"
    lines[200:200] = ["2026-11-23 13:19"]
    page = looked(visitor, ("low.csv", "\n".join([*lines, ""]).encode()))
    table = page.texts("th")
    assert {"101", "201"} <= set(table)


def test_what_is_looked_at_twice_is_known_at_once(visitor: Visitor):
    page = two(visitor)
    again = visitor.get(page.path.partition("?")[0])
    assert again.verdicts == ["settled"]


def test_us_units_are_shown_throughout(visitor: Visitor):
    visitor.settings(units="us")
    page = two(visitor, temperature_c="52.7", temperature_half_k="2.7", room_c="68")
    assert page.verdicts == ["settled"]
    assert not any("°C" in each for each in page.texts("td"))


def test_the_chart_has_its_points(visitor: Visitor):
    header, times, columns = points_of(visitor, two(visitor))
    assert [each["quantity"] for each in header["columns"]] == ["temperature", "humidity", "dew point", "deficit"] * 2
    assert [each["label"] for each in header["columns"]][2] == f"{header['columns'][2]['name']} dew point"
    assert header["titles"] == {"°C": "Temperature and dew point, °C", "%": "Humidity, %", "Pa": "Deficit, Pa"}
    assert len(times) == header["rows"] == len(columns[0]) == 2880
    assert 5 < columns[0][-1] < 15


def test_the_points_are_in_the_readers_units(visitor: Visitor):
    visitor.settings(units="us")
    header, _, columns = points_of(visitor, two(visitor, temperature_c="52.7", temperature_half_k="2.7", room_c="68"))
    assert header["columns"][0]["unit"] == "°F"
    assert 45 < columns[0][-1] < 60


def test_the_points_carry_the_band_and_the_marks(visitor: Visitor):
    header, _, _ = points_of(visitor, two(visitor))
    assert header["bands"][0] == {"quantity": "temperature", "low": 10.0, "high": 13.0}
    assert {"cooling", "settled"} <= {each["kind"] for each in header["marks"]}


def test_an_event_that_only_one_probe_shows_is_marked_once(visitor: Visitor):
    page = looked(visitor, ("low.csv", low()), ("high.csv", disturbed()))
    kinds = [each["kind"] for each in points_of(visitor, page)[0]["marks"]]
    assert [kinds.count(kind) for kind in ("defrost", "door")] == [1, 1]


def test_the_points_begin_where_eight_bytes_do(visitor: Visitor):
    body = visitor.client.get(two(visitor).all("log-chart")[0]["src"]).data
    assert (4 + struct.unpack_from("<I", body)[0]) % 8 == 0


def test_a_draft_that_is_gone_says_so(visitor: Visitor):
    page = visitor.get("/chamber/proofs/drafts/none/settings")
    assert page.status == 410
    assert "Choose the files again" in page.text


def test_the_work_is_done_on_the_found_record(visitor: Visitor):
    two(visitor)
    assert all(isinstance(each, Found) for each in visitor.app.extensions["work"]._results.values())
