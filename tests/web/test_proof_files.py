"""The files of a proof: chosen, their layout shown, asked about, changed, taken or left out."""

from __future__ import annotations

import pytest

from tests.core.proof_files import high, low
from tests.web.conftest import Visitor
from tests.web.proving import AMBIGUOUS, PICTURE, hand


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
        page.form_with("do").action, do="look", **{"role-99": "time", "unit-2": "mm", "role-3": "colour"}
    )
    assert again.status == 422
    assert again.typed("unit-2") == "°C"


UNITLESS = "Time,Temp,RH\n" + "".join(
    f"2026-11-23 {i // 60:02}:{i % 60:02},{12 + i % 9 / 10:.1f},80.{i % 7}\n" for i in range(120)
)
UNREAD = "Time,Temp (°C)\n" + "".join(
    f"2026-11-23 00:{i:02},{'ERR' if i % 3 else 12 + i % 9 / 10}\n" for i in range(60)
)
COUNTED = "ticks,Temp (°C)\n" + "".join(f"{i * 60},{12 + i % 9 / 10:.1f}\n" for i in range(60))


def asked(visitor: Visitor, text: str, about: str, key: str):
    page = hand(visitor, ("low.csv", text.encode()))
    return visitor.post(page.form_with("do").action, do="take", **{f"q-{about}": key})


def test_the_likelier_unit_is_named_and_not_chosen(visitor: Visitor):
    page = hand(visitor, ("low.csv", UNITLESS.encode()))
    assert "degrees Celsius likelier" in " ".join(page.text.split())
    assert "by its dates" not in page.text
    assert page.typed("q-unit 2") == ""


def test_what_would_be_lost_is_asked_with_its_number_and_an_example(visitor: Visitor):
    page = hand(visitor, ("low.csv", UNREAD.encode()))
    assert page.texts("legend")[0] == (
        "40 of 60 values of “Temp (°C)” are not read, for example “ERR” in line 3. May they be left out?"
    )


def test_none_of_the_answers_is_said_beside_the_question(visitor: Visitor):
    again = asked(visitor, UNREAD, "loss", "none")
    assert again.status == 422
    assert again.beside("q-loss").startswith("Then nothing is read: export the log again")


def test_a_question_that_an_answer_opens_is_shown_and_is_no_fault_yet(visitor: Visitor):
    again = asked(visitor, COUNTED, "time", "1")
    assert again.status == 200
    assert "In which unit?" in again.texts("legend")[0]
    assert not again.texts("div", "summary")


def test_where_the_loggers_hang_is_drawn_until_files_are_there(visitor: Visitor):
    (drawn,) = visitor.get("/chamber/proofs/new").all("figure", "drawing")
    assert "One high at the back, one low at the front" in drawn.text
