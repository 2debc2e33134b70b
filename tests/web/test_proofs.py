"""The two-day proof, step by step: files, layout, band, looking, saving, and coming back to it."""

from __future__ import annotations

import io
import json
import struct
from array import array
from typing import Any

import pytest

from core.chamber.proof_run import Found, find
from core.daybook.entries import Entry, entry_id, to_record
from core.daybook.facts import CHAMBER, Fact, IcePointChecked, InstrumentAdded, ProofRun
from core.daybook.facts.chamber import SetPointsChosen
from core.daybook.proofs import result_of
from core.outside_json import parse
from tests.core.proof_files import disturbed, high, low
from tests.web.conftest import Visitor
from tests.web.reading import Page
from web.work import Work

BAND = {"temperature_c": "11.5", "temperature_half_k": "1.5", "humidity": "80", "humidity_half": "10", "room_c": "20"}
MINUTES = [f"05/06/2025 {at // 60:02}:{at % 60:02},12.{at % 10}" for at in range(300)]
AMBIGUOUS = "\n".join(("Time,Temp (°C)", *MINUTES, ""))
PICTURE = b"\x89PNG\r\n\x1a\n" + bytes(200)


@pytest.fixture(autouse=True)
def no_files(visitor: Visitor) -> None:
    for name in ("work", "proof_drafts"):
        visitor.app.extensions.pop(name, None)
    visitor.app.extensions["files"] = {}


def enter(visitor: Visitor, fact: Fact, about: str | None = CHAMBER) -> str:
    """An entry written by another screen; its id."""
    key = entry_id(visitor.now, str(len(visitor.book)).encode() * 10)
    visitor.book.learn([to_record(Entry(key, key if about is None else about, visitor.now, visitor.now, fact))])
    return key


def hand(visitor: Visitor, *files: tuple[str, bytes], path: str = "/chamber/proofs/new", **values: str) -> Page:
    return visitor.post(path, file=[(io.BytesIO(data), name) for name, data in files], **values)


def laid_out(visitor: Visitor, *files: tuple[str, bytes]) -> Page:
    """The settings page, every file's layout taken as guessed."""
    page = hand(visitor, *files)
    for _ in files:
        page = visitor.send(page.form_with("do"), do="take")
    return page


def waited(visitor: Visitor, page: Page) -> Page:
    """What the page becomes by asking again, as it does by itself."""
    for _ in range(200):
        asking = [each for each in page.elements if each["hx-trigger"] == "load"]
        if not asking:
            return page
        page = visitor.get(asking[0]["hx-get"])
    raise AssertionError("it never ends")


def looked(visitor: Visitor, *files: tuple[str, bytes], **changes: str) -> Page:
    settings = laid_out(visitor, *files)
    return waited(visitor, visitor.send(settings.form_with("temperature_c"), **(BAND | changes)))


def two(visitor: Visitor, **changes: str) -> Page:
    return looked(visitor, ("low.csv", low()), ("high.csv", high()), **changes)


def saved(visitor: Visitor, page: Page) -> str:
    """The id of the run."""
    return visitor.send(page.form("/save")).saved


def points_of(visitor: Visitor, page: Page) -> tuple[dict[str, Any], array[float], list[array[float]]]:
    body = visitor.client.get(page.all("log-chart")[0]["src"]).data
    (length,) = struct.unpack_from("<I", body)
    header = json.loads(body[4 : 4 + length])
    start, rows = 4 + length, header["rows"]
    times = array("d", body[start : start + 8 * rows])
    rest = array("f", body[start + 8 * rows :])
    return header, times, [rest[at : at + rows] for at in range(0, len(rest), rows)]


def test_the_chamber_page_leads_to_it(visitor: Visitor):
    assert "/chamber/proofs/new" in [each["href"] for each in visitor.get("/chamber").all("a")]


def test_files_are_asked_for_as_text(visitor: Visitor):
    box = visitor.get("/chamber/proofs/new").named("file")
    assert box["accept"] == ".csv,.txt,.tsv,text/*"
    assert "multiple" in box.attributes


def test_no_file_is_refused_in_a_sentence(visitor: Visitor):
    page = hand(visitor)
    assert page.status == 422
    assert page.texts("div", "summary") == ["Choose the text file that a logger saved, or several."]


def test_a_picture_is_refused_and_the_log_beside_it_kept(visitor: Visitor):
    page = hand(visitor, ("shelf.png", PICTURE), ("low.csv", low()))
    assert page.status == 422
    assert "shelf.png: This file is not text" in page.text
    assert "low.csv" in page.texts("a")


def test_the_first_rows_stand_under_the_guess(visitor: Visitor):
    page = hand(visitor, ("low.csv", low()))
    assert page.texts("th")[:2] == ["Timedate and time", "Temp (°C)temperature, °C, Probe 1"]
    assert page.texts("td")[0] == "2026-11-23 10:00:00"


def test_the_first_moment_is_said_in_words(visitor: Visitor):
    assert "23 Nov 2026, 10:00" in hand(visitor, ("low.csv", low())).text


def test_the_order_of_day_and_month_is_asked(visitor: Visitor):
    page = hand(visitor, ("low.csv", AMBIGUOUS.encode()))
    assert page.texts("legend")[0].endswith("Which comes first, the day or the month?")
    assert page.typed("q-order") == ""


def test_without_an_answer_nothing_is_taken(visitor: Visitor):
    page = hand(visitor, ("low.csv", AMBIGUOUS.encode()))
    again = visitor.send(page.form_with("do"), do="take")
    assert again.status == 422
    assert again.beside("q-order") == "Choose one of these."


@pytest.mark.parametrize(("order", "shown"), [("dmy", "5 Jun 2025"), ("mdy", "6 May 2025")])
def test_the_answer_settles_what_the_first_moment_is(visitor: Visitor, order: str, shown: str):
    page = hand(visitor, ("low.csv", AMBIGUOUS.encode()))
    again = visitor.send(page.form_with("do"), do="look", **{"q-order": order})
    assert shown in again.text


def test_an_answered_file_leads_on_to_the_band(visitor: Visitor):
    page = hand(visitor, ("low.csv", AMBIGUOUS.encode()))
    assert visitor.send(page.form_with("do"), do="take", **{"q-order": "dmy"}).path.endswith("/settings")


def test_a_column_may_be_changed(visitor: Visitor):
    page = hand(visitor, ("low.csv", low()))
    again = visitor.send(page.form_with("do"), do="look", **{"role-3": "ignored"})
    assert again.texts("th")[2] == "RH (%)not needed"


def test_a_probe_may_be_named(visitor: Visitor):
    page = hand(visitor, ("low.csv", low()))
    again = visitor.send(page.form_with("do"), do="look", **{"probe-2": "Left shelf"})
    assert again.typed("probe-2") == "Left shelf"


def test_a_file_without_a_time_is_refused_when_it_is_taken(visitor: Visitor):
    page = hand(visitor, ("low.csv", low()))
    again = visitor.send(page.form_with("do"), do="take", **{"role-1": "ignored"})
    assert again.status == 422
    assert "Say which one column holds date and time" in again.text


def test_a_file_may_be_left_out(visitor: Visitor):
    page = hand(visitor, ("low.csv", low()), ("high.csv", high()))
    page = visitor.send(page.form_with("do"), do="leave")
    assert "high.csv" in page.text
    assert "low.csv" not in page.text


def test_utf_16_is_read_like_any_other(visitor: Visitor):
    page = hand(visitor, ("low.txt", b"\xff\xfe" + low().decode().replace(",", "\t").encode("utf-16-le")))
    assert page.texts("td")[0] == "2026-11-23 10:00:00"


def test_the_band_starts_from_common_practice_and_says_so(visitor: Visitor):
    page = laid_out(visitor, ("low.csv", low()))
    assert [page.typed(name) for name in ("temperature_c", "humidity")] == ["12.8", "80"]
    assert "common practice" in page.text


def test_the_band_starts_from_the_set_points_in_force(visitor: Visitor):
    enter(visitor, SetPointsChosen(11.0, 0.75))
    page = laid_out(visitor, ("low.csv", low()))
    assert [page.typed(name) for name in ("temperature_c", "humidity")] == ["11", "75"]


def test_two_files_with_one_probe_each_are_called_by_their_files(visitor: Visitor):
    page = laid_out(visitor, ("low.csv", low()), ("high.csv", high()))
    assert [page.typed(name) for name in ("probe-0", "probe-1")] == ["low", "high"]


def test_two_files_whose_heads_name_the_probes_keep_those_names(visitor: Visitor):
    one = low().replace(b"Temp", b"Larder 1 Temp").replace(b"RH", b"Larder 1 RH")
    page = laid_out(visitor, ("low.csv", one), ("high.csv", one.replace(b"Larder 1", b"Larder 2")))
    assert [page.typed(name) for name in ("probe-0", "probe-1")] == ["Larder 1", "Larder 2"]


def test_two_probes_of_one_name_are_refused(visitor: Visitor):
    page = laid_out(visitor, ("low.csv", low()), ("high.csv", high()))
    again = visitor.send(page.form_with("temperature_c"), **{"probe-1": "low"})
    assert "Another probe is called low already" in again.beside("probe-1")


def test_a_band_that_is_no_number_is_refused_and_stays_as_typed(visitor: Visitor):
    page = laid_out(visitor, ("low.csv", low()))
    again = visitor.send(page.form_with("temperature_c"), temperature_c="cool")
    assert again.status == 422
    assert again.typed("temperature_c") == "cool"


@pytest.mark.parametrize("name", ["temperature_c", "temperature_half_k", "humidity", "humidity_half", "room_c"])
@pytest.mark.parametrize("text", ["much", "NaN", "1e3", "-80", "<script>alert(1)</script>", "9" * 400])
def test_whatever_is_typed_for_a_number_is_refused_beside_it(visitor: Visitor, name: str, text: str):
    page = laid_out(visitor, ("low.csv", low()))
    again = visitor.send(page.form_with("temperature_c"), **{name: text})
    assert again.status == 422
    assert again.beside(name)


@pytest.mark.parametrize(
    "junk", [b"", b"\0" * 50, b"hello", b"a,b\nc,d\n", b"PK\x03\x04" + bytes(50), b"\xff\xfe"], ids=range(6)
)
def test_whatever_is_no_log_is_refused_with_its_name(visitor: Visitor, junk: bytes):
    page = hand(visitor, ("junk.csv", junk))
    assert page.status == 422
    assert page.beside("file").startswith("junk.csv:")


def test_a_form_that_names_no_column_changes_nothing(visitor: Visitor):
    page = hand(visitor, ("low.csv", low()))
    again = visitor.post(
        page.form_with("do").action, do="look", **{"role-99": "time", "unit-2": "K", "role-3": "colour"}
    )
    assert again.status == 422
    assert again.typed("unit-2") == "°C"


def test_a_humidity_without_its_width_is_refused(visitor: Visitor):
    page = laid_out(visitor, ("low.csv", low()))
    again = visitor.send(page.form_with("temperature_c"), humidity="80", humidity_half="")
    assert "how far the humidity may stray" in again.beside("humidity_half")


def test_a_part_that_ends_before_it_begins_is_refused(visitor: Visitor):
    page = laid_out(visitor, ("low.csv", low()))
    again = visitor.send(page.form_with("temperature_c"), from_s="2026-11-24T10:00", until_s="2026-11-23T10:00")
    assert "later than the beginning" in again.beside("until_s")


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
    assert "Each reading weighs by the time it stands for" in two(visitor).text


def test_doors_and_defrosts_are_listed(visitor: Visitor):
    cells = looked(visitor, ("low.csv", disturbed())).texts("td")
    assert {"defrost", "door opened"} <= set(cells)


def test_cycles_are_listed(visitor: Visitor):
    assert any("runs of the compressor" in each for each in two(visitor).texts("caption"))


def test_every_hour_stands_in_the_table(visitor: Visitor):
    rows = two(visitor).texts("th")
    assert "23 Nov 2026, 11:00" in rows


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


def test_a_saved_run_keeps_its_files(visitor: Visitor):
    fact = visitor.fact(saved(visitor, two(visitor)))
    assert [visitor.app.extensions["files"][file.sha256] for file in fact.files] == [low(), high()]


def test_nothing_is_saved_before_it_is_asked_for(visitor: Visitor):
    two(visitor)
    assert len(visitor.book) == 0
    assert visitor.app.extensions["files"] == {}


def test_the_same_tap_twice_saves_once(visitor: Visitor):
    form = two(visitor).form("/save")
    visitor.send(form)
    visitor.send(form)
    assert len(visitor.book) == 1


def test_a_saved_run_stands_on_the_chamber_page_with_its_picture(visitor: Visitor):
    saved(visitor, two(visitor, name="First run"))
    page = visitor.get("/chamber")
    assert "First run" in page.texts("a")
    assert page.all("svg", "outline")[0]["aria-label"] == "Temperature over 48 h, settled"


def test_the_log_of_the_chamber_tells_it(visitor: Visitor):
    saved(visitor, two(visitor, name="First run"))
    assert "Proof “First run”: settled" in visitor.get("/chamber").texts("span", "words")


def test_a_saved_run_opens_at_once_in_the_same_session(visitor: Visitor):
    run_id = saved(visitor, two(visitor))
    assert visitor.get(f"/chamber/proofs/{run_id}").all("log-chart")


def test_after_a_restart_a_saved_run_is_read_again(visitor: Visitor):
    run_id = saved(visitor, two(visitor))
    visitor.app.extensions.pop("work")
    page = visitor.get(f"/chamber/proofs/{run_id}")
    assert page.verdicts == ["settled"]
    assert waited(visitor, page).all("log-chart")


def without_files(visitor: Visitor) -> str:
    run_id = saved(visitor, two(visitor))
    visitor.app.extensions.pop("work")
    visitor.app.extensions["files"] = {}
    return f"/chamber/proofs/{run_id}"


def test_without_its_files_a_run_shows_what_was_saved(visitor: Visitor):
    page = visitor.get(without_files(visitor))
    assert page.verdicts == ["settled"]
    assert "The log is not on this device" in page.text
    assert "Mean temperature" in page.texts("th")


def test_the_same_files_handed_in_bring_the_log_back(visitor: Visitor):
    path = without_files(visitor)
    page = hand(visitor, ("renamed.csv", low()), ("high.csv", high()), path=f"{path}/hand-in")
    assert waited(visitor, page).all("log-chart")


def test_another_file_is_not_taken_for_the_one_saved(visitor: Visitor):
    path = without_files(visitor)
    page = hand(visitor, ("low.csv", low() + b"\n"), path=f"{path}/hand-in")
    assert page.status == 422
    assert "not the same file" in page.beside_file()


def test_the_raw_file_comes_back_byte_for_byte(visitor: Visitor):
    run_id = saved(visitor, two(visitor))
    response = visitor.client.get(f"/chamber/proofs/{run_id}/files/0")
    assert response.data == low()
    assert "low.csv" in response.headers["Content-Disposition"]


def test_a_run_may_be_renamed(visitor: Visitor):
    run_id = saved(visitor, two(visitor))
    visitor.fill(f"/entries/{run_id}/correct", name="After the fan")
    fact = visitor.fact(run_id)
    assert isinstance(fact, ProofRun)
    assert (fact.name, fact.result.settled) == ("After the fan", True)


def test_a_run_taken_back_is_gone(visitor: Visitor):
    run_id = saved(visitor, two(visitor))
    visitor.post(f"/entries/{run_id}/withdraw")
    assert visitor.get(f"/chamber/proofs/{run_id}").status == 404


def test_a_run_looked_at_otherwise_is_corrected(visitor: Visitor):
    run_id = saved(visitor, two(visitor))
    settings = visitor.post(f"/chamber/proofs/{run_id}/again")
    assert settings.typed("temperature_c") == "11.5"
    page = waited(visitor, visitor.send(settings.form_with("temperature_c"), temperature_c="15"))
    visitor.send(page.form("/save"))
    assert not visitor.fact(run_id).result.settled
    assert len(visitor.book.line(run_id).versions) == 2


def test_two_runs_are_compared_side_by_side(visitor: Visitor):
    saved(visitor, two(visitor, name="First"))
    saved(visitor, two(visitor, name="Second", temperature_c="15"))
    page = visitor.get("/chamber/proofs/compare")
    assert page.verdicts == ["settled", "not settled"]
    assert "Mean temperature" in page.texts("th")


def test_one_run_alone_is_not_compared(visitor: Visitor):
    assert "It takes two saved runs" in visitor.get("/chamber/proofs/compare").text


def test_an_export_holds_the_run(visitor: Visitor, other: Visitor):
    run_id = saved(visitor, two(visitor, name="First run"))
    exported = visitor.client.get("/yours/export").data
    assert parse(exported.decode())["entries"][0]["kind"] == "proof-run"
    other.read_in(exported)
    assert "The log is not on this device" in other.get(f"/chamber/proofs/{run_id}").text


def test_an_instrument_puts_its_probe_right_and_that_is_said(visitor: Visitor):
    instrument = enter(visitor, InstrumentAdded("Left logger", "thermometer", probe="low"), about=None)
    enter(visitor, IcePointChecked(0.4), about=instrument)
    page = two(visitor)
    assert "“low”: its temperature is corrected by −0.4 K (ice check of 2 Nov)." in page.text
    assert "Mean temperature as logged" in page.texts("th")


def test_a_draft_that_is_gone_says_so(visitor: Visitor):
    page = visitor.get("/chamber/proofs/drafts/none/settings")
    assert page.status == 410
    assert "Choose the files again" in page.text


def test_the_work_is_done_on_the_found_record(visitor: Visitor):
    two(visitor)
    assert all(isinstance(each, Found) for each in visitor.app.extensions["work"]._results.values())
