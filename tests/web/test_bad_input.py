"""Whatever is put into a form: a sentence beside its box, what was typed still in it, and nothing recorded."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from attrs import frozen

from core.daybook.facts.formula import FormulaKept
from core.daybook.facts.instruments import InstrumentAdded
from core.daybook.instruments import KIND_WORDS
from core.worksheet import Choice, Number, Worksheet
from core.worksheets import WORKSHEETS
from tests.core.effort import effort_s
from tests.core.kitchen import Kitchen
from tests.core.mixing import FORMULA, fields
from tests.core.test_ready_sheet import MUSCLE
from tests.web.conftest import Visitor
from tests.web.reading import Page
from tests.web.test_formulas import TYPED
from web.forms import Input, Ticks, Words
from web.screens.batches import START
from web.screens.chamber.air import AIR
from web.screens.chamber.instrument_checks import BOILING, BUFFERS, ICE, MASSES, SALT, TWO_SALTS
from web.screens.chamber.instruments import ADD, RECALIBRATED, RETIRE
from web.screens.chamber.load import STATED
from web.screens.chamber.prepare import BEGIN as PREPARE
from web.screens.chamber.set_points import CHOOSE
from web.screens.chamber.water import BASIN, CHARGE, EMPTY, FILL
from web.screens.dry import HANG, WEIGH
from web.screens.ferment.beginning import START_CLOCK
from web.screens.ferment.deviation import DEVIATION
from web.screens.ferment.reading import READING
from web.screens.mix import formula_rows
from web.screens.mix.cure import CURE
from web.screens.mix.formula_batch import AMOUNTS, NAME
from web.screens.mix.licence import EXCEPTION
from web.screens.mix.rules import HOUSE
from web.screens.mix.salting import INTO_SALT, OUT_OF_SALT, TURN_IT
from web.screens.mix.sheet import WEIGH_ROW
from web.screens.release import ACTIVITY, INSPECT, TAKE_DOWN

BANNED = ("please", "sorry", "invalid", "oops")
NO_NUMBERS = ("much", "NaN", "1e3", "<script>alert(1)</script>", "12 stone", "3 4", "--", "\u202e5")
NOTHING_NEEDED = ("take-down", "recalibrate", "retire", "turn", "unsalt", "formula-rows")
LONGEST_SENT = 20_001
"""The page sends no more of a text than this."""
MEGABYTE = 1_000_000


@frozen
class Tried:
    """A form by its path, its inputs, and texts that would be taken."""

    name: str
    path: str
    inputs: tuple[Input, ...]
    good: dict[str, str]


OVER = {"salt": "nacl", "temperature_c": "12", "division": "0.1", "apart_k": "0.2", "bulk": "bulky"}
SET_POINTS = {"temperature_c": "12", "humidity": "80", "surface_activity": "0.97", "piece_c": "2", "thickness_m": "60"}
DILUTION = {"agent": "quat", "stock": "10 %", "target": "200", "volume_m3": "4", "after": "drain"}
PREPARATION = DILUTION | {"stated": "active", "stock_kg_m3": "1", "descaled": "no"}
ROWS = (formula_rows.draft(TYPED, "").meats[0], formula_rows.draft(TYPED, "").parts[1])
SHEET_ROW = tuple(each for each in WEIGH_ROW.inputs if each.key != "scale")
CASINGS = {"name": "Try", "count": "10", "diameter_m": "60", "length_m": "500", "density": "1.05"}

ENTRIES = (
    Tried(
        "batch",
        "/batches/new",
        START.inputs,
        {"name": "Fennel", "style": "fermented", "meat_kg": "2", "target_loss": "35"},
    ),
    Tried(
        "cure",
        "{batch}/cure",
        CURE.inputs,
        {"dose": "0.25 %", "nitrite": "6.25", "nitrate": "0"},
    ),
    Tried(
        "exception",
        "{batch}/exception",
        EXCEPTION.inputs,
        {"why": "a trial", "authority": "letter 12", "decided_by": "Ana", "rule": "food act, section 9"}
        | {"substance": "nitrite", "most": "190"},
    ),
    Tried("house-rule", "/rules/house", HOUSE.inputs, {"rules": "us", "nitrite": "120"}),
    Tried("reading", "{batch}/reading", READING.inputs, {"ph": "5.4", "temperature_c": "22"}),
    Tried("ferment", "{batch}/ferment", START_CLOCK.inputs, {"rule": "canada", "planned_c": "24"}),
    Tried(
        "deviation",
        "{batch}/deviation",
        DEVIATION.inputs,
        {"result": "clean", "test": "toxin", "decision": "keep", "decided_by": "Ana"},
    ),
    Tried(
        "into-salt",
        "{batch}/salt",
        INTO_SALT.inputs,
        {"method": "weighed", "shape": "slab", "thickness_m": "50", "temperature_c": "3", "centre_share": "90"}
        | {"way": "diffusion"},
    ),
    Tried("turn", "{batch}/turn", TURN_IT.inputs, {"note": "much brine"}),
    Tried(
        "unsalt",
        "{batch}/unsalt",
        OUT_OF_SALT.inputs,
        {"note": "rinsed", "coldest_c": "2", "warmest_c": "4", "rested_s": "0"},
    ),
    Tried("hang", "{batch}/hang", HANG.inputs, {"tag": "J-9", "start_kg": "900"}),
    Tried("weigh", "{piece}/weigh", WEIGH.inputs, {"mass_kg": "900"}),
    Tried("activity", "{piece}/activity", ACTIVITY.inputs, {"water_activity": "0.9"}),
    Tried("inspect", "{piece}/inspect", INSPECT.inputs, {"signs": "slime", "note": "at the string"}),
    Tried("take-down", "{piece}/take-down", TAKE_DOWN.inputs, {"note": "to the table"}),
    Tried("air", "/chamber/air", AIR.inputs, {"temperature_c": "12", "humidity": "80"}),
    Tried("charge", "/chamber/charge", CHARGE.inputs, {"water_m3": "5", "soda_kg_per_m3": "10"}),
    Tried("instrument", "/chamber/instruments/add", ADD.inputs, {"name": "North", "kind": "hygrometer"}),
    Tried("ice", "{thermometer}/check/ice", ICE.inputs, {"reading_c": "0.3", "division_k": "0.1"}),
    Tried("boiling", "{thermometer}/check/boiling", BOILING.inputs, {"reading_c": "99", "division_k": "0.1"}),
    Tried("salt", "{hygrometer}/check/salt", SALT.inputs, {**OVER, "reading": "79"}),
    Tried(
        "two-salts",
        "{hygrometer}/check/salts",
        TWO_SALTS.inputs,
        {**OVER, "reading": "78", "other_salt": "kcl", "other_temperature_c": "12", "other_reading": "88"},
    ),
    Tried(
        "buffers",
        "{ph-meter}/check/buffers",
        BUFFERS.inputs,
        {"shows": "ph", "cleaned": "no", "buffer": "7", "temperature_c": "20", "reading": "7.1"}
        | {"other_buffer": "4", "other_temperature_c": "20", "other_reading": "4.1"},
    ),
    Tried(
        "weights",
        "{scale}/check/weights",
        MASSES.inputs,
        {"mass_kg": "100", "reading_kg": "100.3", "division_kg": "0.1"},
    ),
    Tried("recalibrate", "{scale}/recalibrate", RECALIBRATED.inputs, {"note": "calibrated"}),
    Tried("retire", "{scale}/retire", RETIRE.inputs, {"note": "broken"}),
    Tried("fill", "/chamber/fill", FILL.inputs, {"water_m3": "2"}),
    Tried("basin", "/chamber/basin", BASIN.inputs, {"holds_m3": "3"}),
    Tried("empty", "/chamber/basin/empty", EMPTY.inputs, {"volume_m3": "1"}),
    Tried("set-points", "/chamber/set-points/choose/own", CHOOSE.inputs, SET_POINTS),
    Tried("capacity", "/chamber/capacity", STATED.inputs, {"rated_m3_s": "0.5"}),
    Tried("prepare", "/chamber/preparation", PREPARE.inputs, PREPARATION),
    Tried("formula", "/formulas/new", formula_rows.HEAD, TYPED),
    Tried("formula-rows", "/formulas/new", tuple(each for row in ROWS for each in row.inputs), TYPED),
    Tried("by-raw", "{formula}/batch/raw", (NAME, *AMOUNTS["raw"]), {"name": "Try", "raw_kg": "10"}),
    Tried("by-casings", "{formula}/batch/casings", (NAME, *AMOUNTS["casings"]), CASINGS),
    Tried("sheet-row", "{sheet}/part-1", SHEET_ROW, {"mass_kg": "260", "division_kg": "1"}),
    Tried("correct-weighing", "/entries/{weighing}/correct", WEIGH.inputs, {"mass_kg": "900"}),
    Tried("correct-piece", "/entries/{hung}/correct", HANG.inputs, {"tag": "J-1", "start_kg": "900"}),
)


def tried_sum(sheet: Worksheet, texts: Mapping[str, str], more: str = "") -> Tried:
    chosen = {each.key: each.default for each in sheet.inputs if isinstance(each, Choice) and each.default}
    return Tried(f"sum-{sheet.name}{more}", f"/sums/{sheet.name}", sheet.drawn(texts), {**chosen, **texts})


SUMS = (
    *(tried_sum(sheet, sheet.example) for sheet in WORKSHEETS.values()),
    tried_sum(WORKSHEETS["ready"], MUSCLE, " of a whole muscle"),
)
EVERY = ENTRIES + SUMS


def entry(name: str) -> Tried:
    return next(tried for tried in ENTRIES if tried.name == name)


def is_typed_number(each: Input) -> bool:
    return isinstance(each, Number) or each.key == "dose"


def cases(of: tuple[Tried, ...], wanted) -> pytest.MarkDecorator:
    found = [(tried, each) for tried in of for each in tried.inputs if wanted(each)]
    ids = [f"{tried.name}-{each.key}" for tried, each in found]
    return pytest.mark.parametrize(("tried", "each"), found, ids=ids)


every_number = cases(ENTRIES, is_typed_number)
every_number_without_minus = cases(ENTRIES, lambda each: is_typed_number(each) and getattr(each, "low", 0) >= 0)
every_line = cases(ENTRIES, lambda each: isinstance(each, Words))
every_choice = cases(ENTRIES, lambda each: isinstance(each, Choice))
every_box = cases(ENTRIES, lambda each: is_typed_number(each) or isinstance(each, Words))


@pytest.fixture
def paths(visitor: Visitor) -> dict[str, str]:
    kitchen = Kitchen()
    batch = kitchen.begin()
    kitchen.cure(batch)
    kitchen.read(batch, 5.1)
    piece = kitchen.hang(batch)
    weighing = kitchen.weigh(piece, 0.9, at=3)
    formula = kitchen.note(FormulaKept(**fields(FORMULA)))
    weighed_out = kitchen.begin(meat_kg=10.0, formula=formula)
    table = {"formula": f"/formulas/{formula}", "sheet": f"/batches/{weighed_out}/sheet"}
    kept = {kind: f"/chamber/instruments/{kitchen.note(InstrumentAdded(kind, kind))}" for kind in KIND_WORDS}
    visitor.book.learn(kitchen.records)
    visitor.wait(days=30)
    pieces = {"piece": f"/pieces/{piece}", "weighing": weighing, "hung": piece}
    return {"batch": f"/batches/{batch}", **pieces, **kept, **table}


@pytest.fixture
def send(visitor: Visitor, paths: dict[str, str]):
    """Sends the form with one text changed; makes sure that nothing was recorded."""

    def send(tried: Tried, **texts: str) -> Page:
        before = len(visitor.book)
        page = visitor.post(tried.path.format(**paths), **tried.good | texts)
        assert len(visitor.book) == before
        return page

    return send


def refused_beside(page: Page, key: str, typed: str) -> None:
    sentence = page.beside(key)
    assert page.status == 422
    assert sentence.endswith((".", "?"))
    assert not any(word in page.all("main")[0].text.lower() for word in BANNED)
    assert page.named(key)["aria-invalid"] == "true"
    assert page.typed(key) == typed
    assert sentence in page.all("div", "summary")[0].text


@pytest.mark.parametrize("tried", ENTRIES, ids=lambda tried: tried.name)
def test_what_is_good_is_taken(visitor: Visitor, paths: dict[str, str], tried: Tried):
    before = len(visitor.book)
    assert visitor.post(tried.path.format(**paths), **tried.good).status == 200
    assert len(visitor.book) == before + 1


@pytest.mark.parametrize("tried", SUMS, ids=lambda tried: tried.name)
def test_what_is_good_is_worked_out(send, tried: Tried):
    assert send(tried).status == 200


@pytest.mark.parametrize(
    "text", ["much", "NaN", "1e3", "<script>alert(1)</script>", "12 stone", "3 4", "--", "\u202e5"]
)
@every_number
def test_what_is_no_number(send, tried: Tried, each: Input, text: str):
    refused_beside(send(tried, **{each.key: text}), each.key, text)


@pytest.mark.parametrize("text", [*NO_NUMBERS, "99999999999999", "9" * LONGEST_SENT])
@pytest.mark.parametrize("tried", SUMS, ids=lambda tried: tried.name)
def test_what_is_no_number_in_every_box_of_a_sum(send, tried: Tried, text: str):
    keys = [each.key for each in tried.inputs if isinstance(each, Number)]
    page = send(tried, **dict.fromkeys(keys, text))
    for key in keys:
        refused_beside(page, key, text)


@every_number_without_minus
def test_less_than_nothing(send, tried: Tried, each: Input):
    refused_beside(send(tried, **{each.key: "-5"}), each.key, "-5")


@every_number
def test_more_than_there_is_in_any_kitchen(send, tried: Tried, each: Input):
    refused_beside(send(tried, **{each.key: "99999999999"}), each.key, "99999999999")


@every_box
def test_a_text_as_long_as_the_page_ever_sends(send, tried: Tried, each: Input):
    refused_beside(send(tried, **{each.key: "9" * LONGEST_SENT}), each.key, "9" * LONGEST_SENT)


@pytest.mark.parametrize("kind", ["application/x-www-form-urlencoded", "multipart/form-data; boundary=x"])
@pytest.mark.parametrize("tried", [entry("batch"), entry("weigh"), SUMS[0]], ids=lambda tried: tried.name)
def test_ten_megabytes_cost_no_more_than_ten_times_one(visitor, paths, tried: Tried, kind: str):
    def answer(size: int) -> int:
        key, long = tried.inputs[0].key.encode(), b"9" * size
        in_parts = b'--x\r\nContent-Disposition: form-data; name="' + key + b'"\r\n\r\n' + long + b"\r\n--x--\r\n"
        body = in_parts if kind.startswith("multipart") else key + b"=" + long
        return visitor.client.post(tried.path.format(**paths), data=body, content_type=kind).status_code

    before = len(visitor.book)
    answer(MEGABYTE)
    assert effort_s(lambda: answer(10 * MEGABYTE)) < 2 * 10 * effort_s(lambda: answer(MEGABYTE))
    assert (answer(10 * MEGABYTE), len(visitor.book)) == (413 if kind.startswith("multipart") else 422, before)


@pytest.mark.parametrize("tried", SUMS, ids=lambda tried: tried.name)
def test_a_choice_that_is_none_in_a_sum(send, tried: Tried):
    keys = [each.key for each in tried.inputs if isinstance(each, Choice)]
    page = send(tried, **dict.fromkeys(keys, "<script>"))
    drawn = [key for key in keys if page.draws(key)]
    assert drawn[:1] == keys[:1]  # what a kind of meat is asked goes with the choice of the kind
    assert [key for key in drawn if not page.beside(key)] == []


@every_choice
def test_a_choice_that_is_none(send, tried: Tried, each: Choice):
    page = send(tried, **{each.key: "<script>"})
    assert page.status == 422
    assert page.beside(each.key)


@pytest.mark.parametrize("tried", EVERY, ids=lambda tried: tried.name)
def test_a_script_in_every_box_is_never_run(visitor: Visitor, paths: dict[str, str], tried: Tried):
    texts = {each.key: "<script>alert(1)</script>\"'" for each in tried.inputs if not isinstance(each, Choice | Ticks)}
    page = visitor.post(tried.path.format(**paths), **tried.good | texts)
    assert page.all("script") == []


@pytest.mark.parametrize(
    "tried", [tried for tried in EVERY if tried.name not in NOTHING_NEEDED], ids=lambda tried: tried.name
)
def test_an_empty_form(send, tried: Tried):
    page = send(tried, **{each.key: "" for each in tried.inputs})
    may_be_empty = {each.key for each in tried.inputs if getattr(each, "optional", isinstance(each, Ticks))}
    needed = [each.key for each in tried.inputs if each.key not in may_be_empty] or [tried.inputs[0].key]
    assert page.status == 422
    assert [key for key in needed if page.draws(key) and not page.beside(key)] == []
    assert page.draws(needed[0])


@pytest.mark.parametrize("tried", [entry("batch"), entry("cure"), SUMS[0]], ids=lambda tried: tried.name)
def test_a_summary_takes_the_focus_and_leads_to_each_box_in_order(send, tried: Tried):
    page = send(tried, **{each.key: "" for each in tried.inputs})
    summary = page.all("div", "summary")[0]
    ids = [link["href"].removeprefix("#") for link in page.all("a") if link.inside(summary)]
    assert "data-focus" in summary.attributes
    assert ids == sorted(ids, key=[each["id"] for each in page.elements].index)


@pytest.mark.parametrize("humidity", ["105 %", "105", "1.05e2", "101 %"])
def test_more_water_than_the_air_holds(send, humidity: str):
    refused_beside(send(entry("air"), humidity=humidity), "humidity", humidity)


@pytest.mark.parametrize("dose", ["2.5 %", "2.5", "310 g", "10.9 oz"])
def test_a_dose_ten_times_too_high(send, dose: str):
    refused_beside(send(entry("cure"), dose=dose), "dose", dose)


@every_line
def test_a_line_of_blanks_or_a_line_too_long(send, tried: Tried, each: Words):
    texts = ["x" * (each.longest + 1)] + ([] if each.optional else ["", "  \t "])
    for text in texts:
        refused_beside(send(tried, **{each.key: text}), each.key, text)


@pytest.mark.parametrize("tried", EVERY, ids=lambda tried: tried.name)
def test_figures_of_anything_typed_are_answered_and_record_nothing(visitor, paths, tried: Tried):
    before = len(visitor.book)
    for text in ("", "much", "-5", "<script>", "9" * 30, "½", "0"):
        texts = {each.key: text for each in tried.inputs}
        for given in (texts, tried.good | {next(iter(texts)): text}):
            page = visitor.get(tried.path.format(**paths), figures="1", **given)
            assert page.status == 200
            assert not any(word in page.text.lower() for word in BANNED)
            assert page.all("script") == []
    assert len(visitor.book) == before
