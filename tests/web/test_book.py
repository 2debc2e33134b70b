"""Book: a file out, the same file in, nothing lost and nothing taken that cannot be read. And the settings."""

import json

import pytest

from core.daybook.facts import Unknown
from core.daybook.facts.chamber import CHAMBER, AirRead
from tests.core.kitchen import Kitchen
from tests.web.conftest import Visitor, alike


def exported(visitor: Visitor) -> str:
    return visitor.get("/yours/export").html


def a_file(*entries: object) -> str:
    return json.dumps({"format": "curing-daybook-journal", "version": 1, "entries": list(entries)})


def an_air_reading(**changes: object) -> dict:
    kitchen = Kitchen()
    kitchen.note(AirRead(12.5, 0.78), CHAMBER)
    return kitchen.records[0] | changes


def test_an_empty_book_counts_none(visitor: Visitor):
    page = visitor.get("/yours")
    assert (page.status, page.texts("p", "value")) == (200, ["0 entries"])


def test_one_entry_is_counted_as_one(visitor: Visitor):
    visitor.start_batch()
    assert visitor.get("/yours").texts("p", "value") == ["1 entry"]


@pytest.mark.parametrize(
    ("answer", "said"), [("yes", "has promised"), ("no", "may clear them"), ("odd", "says whether")]
)
def test_what_the_browser_answered_is_told(visitor: Visitor, answer: str, said: str):
    page = visitor.client.get("/yours", headers={"Daybook-Kept": answer}).get_data(as_text=True)
    assert said in page


def test_an_export_is_a_file_named_by_the_day(visitor: Visitor):
    head = visitor.get("/yours/export").headers
    assert head["Content-Disposition"] == 'attachment; filename="curing-daybook-2026-11-02.json"'


def test_an_export_of_an_empty_book_is_a_file(visitor: Visitor):
    assert json.loads(exported(visitor))["entries"] == []


def test_an_export_holds_every_entry(visitor: Visitor):
    visitor.dried()
    assert json.loads(exported(visitor))["entries"] == list(visitor.book.records())


def test_an_export_holds_corrections_and_what_was_taken_back(visitor: Visitor):
    key = visitor.fill("/chamber/air", temperature_c="12").saved
    visitor.fill(f"/entries/{key}/correct", temperature_c="13")
    visitor.post(f"/entries/{key}/withdraw")
    kinds = [entry["kind"] for entry in json.loads(exported(visitor))["entries"]]
    assert sorted(kinds) == ["air-read", "air-read", "withdrawn"]


def test_an_export_read_into_an_empty_book_is_the_same_book(visitor: Visitor, other: Visitor):
    visitor.dried()
    other.read_in(exported(visitor))
    assert list(other.book.records()) == list(visitor.book.records())


def test_an_export_of_an_import_is_the_same_file(visitor: Visitor, other: Visitor):
    visitor.dried()
    other.read_in(exported(visitor))
    assert exported(other) == exported(visitor)


def test_every_page_of_an_import_is_the_same(visitor: Visitor, other: Visitor):
    batch, piece = visitor.dried()
    other.read_in(exported(visitor))
    other.now = visitor.now
    for path in (batch, piece, "/batches"):
        assert other.get(path).all("main")[0].text == visitor.get(path).all("main")[0].text


def test_reading_in_tells_how_many_were_new(visitor: Visitor, other: Visitor):
    visitor.start_batch()
    assert "Read in 1 new" in other.read_in(exported(visitor)).text


def test_a_second_reading_in_adds_nothing(visitor: Visitor, other: Visitor):
    visitor.dried()
    for _ in range(2):
        page = other.read_in(exported(visitor))
    assert "Read in 0 new" in page.text
    assert len(other.book) == len(visitor.book)


def test_an_entry_that_was_altered_elsewhere_is_told_and_not_taken(visitor: Visitor):
    written = an_air_reading()
    visitor.read_in(a_file(written))
    page = visitor.read_in(a_file(written | {"fact": {"temperature_c": 30.0}}))
    assert "1 in the file is not as it is written here" in page.text
    assert list(visitor.book.records()) == [written]


def test_two_books_become_their_union_either_way(visitor: Visitor, other: Visitor):
    visitor.dried()
    other.start_batch("Loin", "whole-muscle")
    mine, theirs = exported(visitor), exported(other)
    visitor.read_in(theirs)
    other.read_in(mine)
    assert exported(visitor) == exported(other)


def test_a_kind_of_a_newer_version_survives_the_way_there_and_back(visitor: Visitor, other: Visitor):
    kitchen = Kitchen()
    kitchen.note(Unknown("ripeness-felt", {"thumb": 3, "words": ["firm", None]}), CHAMBER)
    visitor.read_in(a_file(*kitchen.records))
    other.read_in(exported(visitor))
    assert list(other.book.records()) == kitchen.records


def test_a_field_of_a_newer_version_survives_the_way_there_and_back(visitor: Visitor):
    newer = an_air_reading(by="the left hand")
    visitor.read_in(a_file(newer))
    assert json.loads(exported(visitor))["entries"] == [newer]


def test_letters_of_every_script_survive(visitor: Visitor, other: Visitor):
    visitor.start_batch("Würzig №5 辛い 🌶")
    other.read_in(exported(visitor))
    assert exported(other) == exported(visitor)


def test_a_file_saved_by_an_editor_with_a_byte_order_mark_is_read(visitor: Visitor):
    assert visitor.read_in(b"\xef\xbb\xbf" + a_file(an_air_reading()).encode()).status == 200


def test_an_entry_twice_in_a_file_is_one(visitor: Visitor):
    entry = an_air_reading()
    visitor.read_in(a_file(entry, entry))
    assert len(visitor.book) == 1


NO_EXPORT = {
    "empty": "",
    "no JSON": "salt, 300 g",
    "cut off": a_file(an_air_reading())[:-9],
    "a picture": b"\x89PNG\r\n\x1a\n\x00\x00\xff\xfe",
    "a list": "[]",
    "a number": "7",
    "a text": '"curing-daybook-journal"',
    "nothing": "null",
    "another format": json.dumps({"format": "shopping-list", "entries": []}),
    "no format": json.dumps({"entries": []}),
    "no entries": json.dumps({"format": "curing-daybook-journal"}),
    "entries no list": json.dumps({"format": "curing-daybook-journal", "entries": {"a": 1}}),
    "deeper than any file": "[" * 100_000,
    "a number too long": '{"format": ' + "9" * 10_000 + "}",
    "no number": a_file(an_air_reading(fact={"temperature_c": float("nan")})),
    "half a letter": a_file(an_air_reading(kind="ripeness-felt", fact={"name": "\ud800"})),
}
SPOILT = {
    "a number": 5,
    "nothing": None,
    "a list": [],
    "an empty one": {},
    "about a list": an_air_reading(about=["chamber"]),
    "kind a list": an_air_reading(kind=["air-read"]),
    "corrects a list": an_air_reading(corrects=["x"]),
}
UNREAD = {
    "id a word": an_air_reading(id="mine"),
    "too cold": an_air_reading(fact={"temperature_c": -300}),
    "moment without offset": an_air_reading(happened_at="2026-11-02T12:00:00"),
    "end of the calendar": an_air_reading(happened_at="9999-12-31T23:59:59+00:00"),
}


@pytest.mark.parametrize("content", NO_EXPORT.values(), ids=NO_EXPORT)
def test_what_no_daybook_exported_is_refused_with_a_sentence(visitor: Visitor, content: str | bytes):
    page = visitor.read_in(content)
    assert page.status == 422
    assert page.beside_file() == "This is not a copy that a daybook has saved. Its name ends in .zip or .json."


@pytest.mark.parametrize("spoilt", SPOILT.values(), ids=SPOILT)
def test_what_is_no_entry_is_left_out_and_told(visitor: Visitor, spoilt: object):
    page = visitor.read_in(a_file(an_air_reading(), spoilt))
    assert (page.status, len(visitor.book)) == (200, 1)
    assert "1 thing in the file is no entry and was left out." in page.text


@pytest.mark.parametrize("unread", UNREAD.values(), ids=UNREAD)
def test_an_entry_that_cannot_be_read_is_kept_and_told(visitor: Visitor, unread: object):
    page = visitor.read_in(a_file(an_air_reading(), unread))
    assert (page.status, len(visitor.book)) == (200, 2)
    assert "1 entry of the file cannot be read here: it is kept as it came" in page.text


def test_a_file_of_nothing_but_spoilt_entries_is_refused(visitor: Visitor):
    page = visitor.read_in(a_file(5, {}))
    assert (page.status, len(visitor.book)) == (422, 0)
    assert page.beside_file() == "None of the 2 entries in it can be read."


def test_no_file_at_all_is_asked_for(visitor: Visitor):
    page = visitor.read_in("", name="")
    assert (page.status, page.beside_file()) == (422, "Choose a copy that a daybook has saved.")


def test_a_form_without_a_file_is_asked_for_one(visitor: Visitor):
    assert visitor.post("/yours/import", file="text").status == 422


def test_ten_thousand_entries_are_read_in(visitor: Visitor):
    kitchen = Kitchen()
    for number in range(10_000):
        kitchen.note(AirRead(12.5, 0.78), CHAMBER, at=number / 100)
    assert "Read in 10 000 new" in visitor.read_in(a_file(*kitchen.records)).text


def test_after_a_refused_file_the_units_can_still_be_switched(visitor: Visitor):
    page = visitor.read_in("no daybook")
    assert visitor.send(page.form("/settings"), units="us").status == 200


def test_a_switch_of_units_comes_back_to_the_same_page(visitor: Visitor):
    page = visitor.get("/sums", find="salt")
    assert visitor.send(page.form("/settings"), units="us").path == "/sums?find=salt"


def test_a_switch_of_units_after_a_refusal_comes_back_to_the_form(visitor: Visitor):
    page = visitor.fill("/chamber/air", temperature_c="much")
    assert visitor.send(page.form("/settings"), units="us").path == "/chamber/air"


def test_units_are_kept(visitor: Visitor):
    visitor.post("/settings", units="us")
    assert visitor.client.get_cookie("units").value == "us"  # type: ignore[union-attr]


def test_units_change_what_is_shown(visitor: Visitor):
    visitor.fill("/chamber/air", temperature_c="12.5")
    page = visitor.post("/settings", units="us", back="/chamber")
    assert page.texts("p", "value")[0] == "54.5 °F"


def test_the_pressed_switch_tells_the_units(visitor: Visitor):
    page = visitor.post("/settings", units="us", back="/")
    pressed = [each["value"] for each in page.all("button") if each["aria-pressed"] == "true"]
    assert "us" in pressed
    assert "metric" not in pressed


def test_a_decimal_comma_is_shown_and_read(visitor: Visitor):
    page = visitor.post("/settings", decimal="comma", back="/chamber/air")
    saved = visitor.send(page.form("/chamber/air"), temperature_c="12,5", humidity="78,5")
    assert alike(visitor.fact(saved.saved), AirRead(12.5, 0.785))
    assert "12,5 °C" in saved.text


def test_a_decimal_comma_is_read_back_as_it_is_shown(visitor: Visitor):
    visitor.settings(decimal="comma")
    assert visitor.get("/batches/new").typed("target_loss") == "35"
    key = visitor.fill("/chamber/air", temperature_c="12,5").saved
    assert visitor.get(f"/entries/{key}/correct").typed("temperature_c") == "12,5"


@pytest.mark.parametrize("theme", ["light", "dark", "auto"])
def test_the_light_is_kept_and_told_to_the_page(visitor: Visitor, theme: str):
    page = visitor.post("/settings", theme=theme, back="/")
    assert page.all("html")[0]["data-theme"] == theme


@pytest.mark.parametrize(
    ("name", "value"), [("units", "stone"), ("theme", '"><script>'), ("decimal", "dot"), ("odd", "x")]
)
def test_a_setting_that_is_none_is_not_kept(visitor: Visitor, name: str, value: str):
    visitor.post("/settings", **{name: value})
    assert visitor.client.get_cookie(name) is None


def test_a_cookie_that_is_none_is_passed_over(visitor: Visitor):
    visitor.settings(theme="pink", units="stone", decimal="dot")
    assert visitor.get("/").all("html")[0]["data-theme"] == "auto"


# Who wrote it, and on which tablet


def test_every_entry_bears_its_tablet_and_one_more_than_the_greatest_clock(visitor: Visitor):
    visitor.dried()
    records = sorted(visitor.book.records(), key=lambda record: record["clock"])
    assert [record["clock"] for record in records] == list(range(1, len(records) + 1))
    assert len({record["device"] for record in records}) == 1
    assert len(records[0]["device"]) == 16


def test_two_tablets_are_two(visitor: Visitor, other: Visitor):
    written = [each.fill("/chamber/air", temperature_c="12").saved for each in (visitor, other)]
    assert visitor.book.entry(written[0]).device != other.book.entry(written[1]).device


def test_looking_makes_no_tablet_of_a_page(visitor: Visitor):
    visitor.get("/")
    assert visitor.client.get_cookie("device") is None


def test_nobody_is_named_who_did_not_say_so(visitor: Visitor):
    key = visitor.fill("/chamber/air", temperature_c="12").saved
    assert visitor.book.entry(key).by == ""
    assert "by" not in next(iter(visitor.book.records()))


@pytest.mark.parametrize(
    ("typed", "kept"), [("Ana", "Ana"), ("  Jörg; the  second ", "Jörg; the second"), ("a" * 80, "a" * 60)]
)
def test_who_writes_stands_beside_what_is_written_from_then_on(visitor: Visitor, typed: str, kept: str):
    before = visitor.fill("/chamber/air", temperature_c="12").saved
    visitor.post("/settings/writer", writer=typed)
    after = visitor.fill("/chamber/air", temperature_c="13").saved
    assert (visitor.book.entry(before).by, visitor.book.entry(after).by) == ("", kept)
    assert visitor.get("/yours").typed("writer") == kept


def test_an_empty_name_takes_it_away(visitor: Visitor):
    visitor.post("/settings/writer", writer="Ana")
    visitor.post("/settings/writer", writer="  ")
    assert visitor.book.entry(visitor.fill("/chamber/air", temperature_c="12").saved).by == ""


def test_both_stand_in_the_record_of_an_entry(visitor: Visitor, other: Visitor):
    visitor.post("/settings/writer", writer="Ana")
    visitor.fill("/yours/tablet", name="Kitchen")
    key = visitor.fill("/chamber/air", temperature_c="12").saved
    other.read_in(exported(visitor))
    other.fill(f"/entries/{key}/correct", temperature_c="13")
    visitor.read_in(exported(other))
    for each in (visitor, other):
        history = each.get(f"/entries/{key}/correct").texts("section", "log")[0]
        assert "Ana, Kitchen" in history
        assert "13" in history


def test_the_tablets_name_is_said_and_can_be_corrected(visitor: Visitor):
    assert "no name yet" in visitor.get("/yours").text
    key = visitor.fill("/yours/tablet", name="Kitchen").saved
    assert "is called Kitchen" in visitor.get("/yours").text
    device = visitor.fact(key).device
    visitor.fill(f"/entries/{key}/correct", name="Cellar")
    assert "is called Cellar" in visitor.get("/yours").text
    assert visitor.fact(key).device == device


def test_a_correction_made_with_the_other_in_sight_counts_though_its_clock_is_years_behind(
    visitor: Visitor, other: Visitor
):
    key = visitor.fill("/chamber/air", temperature_c="12").saved
    visitor.fill(f"/entries/{key}/correct", temperature_c="13")
    other.read_in(exported(visitor))
    other.wait(days=-2000)
    other.fill(f"/entries/{key}/correct", temperature_c="14", happened="")
    visitor.read_in(exported(other))
    assert (visitor.fact(key).temperature_c, other.fact(key).temperature_c) == (14.0, 14.0)


def test_the_help_has_a_paragraph_for_each_tab(visitor: Visitor):
    heads = [each.text for each in visitor.get("/yours/help").all("dt")]
    assert heads[:5] == ["Today", "Batches", "Chamber", "Sums", "Book"]


def test_starting_over_says_how_much_would_go(visitor: Visitor):
    visitor.fill("/chamber/air", temperature_c="12")
    page = visitor.get("/yours/start-over")
    assert "1 entry and every log on this device will be deleted." in page.text
    assert "No copy was saved on this device yet." in page.text


def test_the_book_says_since_when_and_how_old_the_last_copy_is(visitor: Visitor):
    visitor.fill("/chamber/air", temperature_c="12")
    visitor.post("/yours/copied?entries=1")
    visitor.fill("/chamber/air", temperature_c="13")
    page = visitor.get("/yours")
    assert "Since today." in page.text
    assert "1 entry written since." in page.text
