"""Writing: a form sent twice is one entry, sent with another value it is another; nothing else is ever written."""

import pytest

from core.daybook.entries import is_entry_id
from tests.web.conftest import BETWEEN_ASKING, Visitor
from tests.web.reading import SentForm

FORMS = {
    "a batch": ("/batches/new", {"name": "Fennel", "style": "fermented", "meat_kg": "2", "target_loss": "35"}),
    "a cure": ("{batch}/cure", {"dose": "0.25 %", "nitrite": "6.25"}),
    "a reading": ("{batch}/reading", {"ph": "5.4"}),
    "a piece": ("{batch}/hang", {"tag": "J-9", "start_kg": "900"}),
    "a weighing": ("{piece}/weigh", {"mass_kg": "900"}),
    "a sample": ("{piece}/activity", {"water_activity": "0.9"}),
    "a look": ("{piece}/inspect", {"found": "sound", "note": "sound"}),
    "a taking down": ("{piece}/take-down", {"note": "to the table"}),
    "air": ("/chamber/air", {"temperature_c": "12", "humidity": "80"}),
    "a charge": ("/chamber/charge", {"water_m3": "5"}),
    "a filling": ("/chamber/fill", {"water_m3": "2"}),
    "a basin": ("/chamber/basin", {"holds_m3": "3"}),
    "an emptying": ("/chamber/basin/empty", {"volume_m3": "1"}),
    "set-points": ("/chamber/set-points/choose/own", {"temperature_c": "12", "humidity": "80"}),
    "a capacity": ("/chamber/capacity", {"rated_m3_s": "0.5"}),
    "a preparation run": ("/chamber/preparation", {"agent": "quat", "stock": "10", "target": "200", "volume_m3": "4"}),
}
ANOTHER = {
    "a batch": {"meat_kg": "3"},
    "a cure": {"dose": "0.2 %"},
    "a reading": {"ph": "5.3"},
    "a piece": {"start_kg": "910", "tag": "J-10"},
    "a weighing": {"mass_kg": "890"},
    "a sample": {"water_activity": "0.91"},
    "a look": {"note": "soft"},
    "a taking down": {"note": "thrown away"},
    "air": {"temperature_c": "13"},
    "a charge": {"water_m3": "4"},
    "a filling": {"water_m3": "2.5"},
    "a basin": {"holds_m3": "4"},
    "an emptying": {"volume_m3": "1.5"},
    "set-points": {"humidity": "78"},
    "a capacity": {"rated_m3_s": "0.6"},
    "a preparation run": {"volume_m3": "5"},
}
every_form = pytest.mark.parametrize("name", FORMS)


@pytest.fixture
def drawn(visitor: Visitor, name: str) -> SentForm:
    """The form as drawn and filled in, not yet sent."""
    path, values = FORMS[name]
    batch = visitor.start_batch() if name == "a cure" else visitor.cured_and_acid()
    path = path.format(batch=batch, piece=visitor.hang(batch))
    form = visitor.get(path).form(path)
    return SentForm(form.action, form.method, form.values | values)


@every_form
def test_a_form_writes_one_entry_under_the_id_it_was_drawn_with(visitor: Visitor, drawn: SentForm, name: str):
    before = len(visitor.book)
    page = visitor.send(drawn)
    assert (page.status, page.saved) == (200, drawn.values["entry"])
    assert len(visitor.book) == before + 1


@every_form
def test_a_form_of_yesterday_sent_twice_is_one_entry(visitor: Visitor, drawn: SentForm, name: str):
    first = visitor.send(drawn, when="yesterday")
    known = len(visitor.book)
    visitor.wait(seconds=70)
    assert visitor.send(drawn, when="yesterday").saved == first.saved
    assert len(visitor.book) == known


@every_form
def test_a_form_sent_twice_is_one_entry(visitor: Visitor, drawn: SentForm, name: str):
    first = visitor.send(drawn)
    known = len(visitor.book)
    visitor.wait(seconds=2)
    again = visitor.send(drawn)
    assert (again.status, again.saved) == (200, first.saved)
    assert len(visitor.book) == known


@every_form
def test_a_form_sent_again_with_another_value_is_another_entry(visitor: Visitor, drawn: SentForm, name: str):
    first = visitor.send(drawn)
    known = len(visitor.book)
    again = visitor.send(drawn, **ANOTHER[name])
    assert (again.status, len(visitor.book)) == (200, known + 1)
    assert again.saved != first.saved


def test_a_form_sent_again_with_another_time_is_another_entry(visitor: Visitor):
    form = visitor.get("/chamber/air").form("/air")
    visitor.send(form, temperature_c="12")
    visitor.send(form, temperature_c="12", happened="2026-11-02T06:00")
    assert len(visitor.book) == 2


def test_a_refused_form_keeps_its_id(visitor: Visitor):
    form = visitor.get("/chamber/air").form("/air")
    assert visitor.send(form, temperature_c="much").form("/air").values["entry"] == form.values["entry"]


def test_two_forms_drawn_at_once_write_two_entries(visitor: Visitor):
    forms = [visitor.get("/chamber/air").form("/air") for _ in range(2)]
    for form in forms:
        visitor.send(form, temperature_c="12")
    assert len(visitor.book) == 2


@pytest.mark.parametrize("token", ["", "garbage", "{}", "01A2138B-1620-7C23-A1D4-5AB52D4A3D83", "<script>", "x" * 5000])
def test_an_id_that_could_be_none_is_replaced(visitor: Visitor, token: str):
    page = visitor.post("/chamber/air", temperature_c="12", entry=token)
    assert is_entry_id(page.saved)
    assert visitor.get("/chamber").status == 200


def test_an_id_of_something_else_is_never_written_over(visitor: Visitor):
    batch = visitor.start_batch()
    page = visitor.post("/chamber/air", temperature_c="12", entry=batch.split("/")[-1])
    assert page.saved != batch.split("/")[-1]
    assert visitor.get(batch).status == 200


def test_what_is_written_tells_when_it_happened_and_when_it_was_written(visitor: Visitor):
    key = visitor.fill("/chamber/air", temperature_c="12", happened="2026-11-01T07:30").saved
    entry = visitor.book.entry(key)
    assert (entry.happened_at.isoformat(), entry.written_at) == (
        "2026-11-01T07:30:00+01:00",
        visitor.now - BETWEEN_ASKING,
    )


@pytest.mark.parametrize("happened", ["2026-11-02T08:30", "2027-01-01T00:00", "9999-12-31T23:59"])
def test_what_has_not_happened_yet_is_refused(visitor: Visitor, happened: str):
    page = visitor.fill("/chamber/air", temperature_c="12", happened=happened)
    assert page.beside("happened") == "The time must not be later than now."


@pytest.mark.parametrize("happened", ["1999-12-31T23:59", "0001-01-01T00:00"])
def test_what_happened_in_another_century_is_refused(visitor: Visitor, happened: str):
    page = visitor.fill("/chamber/air", temperature_c="12", happened=happened)
    assert page.beside("happened") == "The day must be in this century."


@pytest.mark.parametrize("happened", ["last week", "2026-13-01T00:00", "12:30", "2026-11-02T25:00", "-1"])
def test_what_is_no_day_and_time_is_refused_with_an_example(visitor: Visitor, happened: str):
    page = visitor.fill("/chamber/air", temperature_c="12", happened=happened)
    assert page.beside("happened") == "Enter the day and time, for example 2026-11-25 17:30."


@pytest.mark.parametrize("clock", ["", "noon", "2026-11-02T08:00:00", "2026-11-02T08:00:00Z"])
def test_any_clock_of_the_page_is_borne(visitor: Visitor, clock: str):
    answer = visitor.client.post("/chamber/air", data={"temperature_c": "12"}, headers={"Daybook-Now": clock})
    assert answer.status_code == 303
    assert visitor.get("/chamber").status == 200


@pytest.mark.parametrize(
    ("text", "unit", "celsius"),
    [
        ("55", "°F", 12.7778),
        ("25", "°C", 25),
        ("12", "", 12),
        ("55 °F", "°C", 12.7778),
        ("12 c", "°F", 12),
        ("12,5", "°C", 12.5),
    ],
)
def test_a_unit_typed_wins_over_the_one_beside_the_box(visitor: Visitor, text: str, unit: str, celsius: float):
    page = visitor.post("/chamber/air", **{"temperature_c": text, "temperature_c-unit": unit})
    assert visitor.fact(page.saved).temperature_c == pytest.approx(celsius, abs=1e-3)


@pytest.mark.parametrize(
    ("text", "unit", "kg"),
    [
        ("1'250", "oz", 35.43690),
        ("44", "oz", 1.2473790),
        ("2 lb 12 oz", "g", 1.2473790),
        ("1½", "lb", 0.6803886),
        ("1.25kg", "oz", 1.25),
    ],
)
def test_a_weight_is_read_in_the_unit_beside_it(visitor: Visitor, text: str, unit: str, kg: float):
    batch = visitor.cured_and_acid()
    page = visitor.post(f"{batch}/hang", **{"tag": "J-1", "start_kg": text, "start_kg-unit": unit})
    assert visitor.fact(page.saved).start_kg == pytest.approx(kg, rel=1e-6)


def test_a_unit_chosen_beside_the_box_stays_chosen_after_a_refusal(visitor: Visitor):
    page = visitor.fill("/chamber/air", **{"temperature_c": "12", "temperature_c-unit": "°F", "humidity": "105"})
    assert page.form("/air").values["temperature_c-unit"] == "°F"


def test_the_unit_beside_the_box_starts_with_that_of_a_bare_number(visitor: Visitor):
    visitor.settings(units="us")
    assert visitor.get("/chamber/air").form("/air").values["temperature_c-unit"] == "°F"


def test_a_unit_that_is_none_is_refused_and_not_guessed(visitor: Visitor):
    page = visitor.post("/chamber/air", **{"temperature_c": "12", "temperature_c-unit": "stone"})
    assert "is not a unit for a temperature" in page.beside("temperature_c")
