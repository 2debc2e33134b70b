"""What a tired or mischievous hand may type: refused beside its box, kept as typed, and nothing of it saved."""

import pytest
from attrs import frozen
from playwright.sync_api import Locator, Page, expect

from tests.browser import walking as walk
from tests.browser.conftest import entries_stored, show
from tests.browser.filled import FORMS, SUMS_DRAWN, Filled

LONG = 10_000_000
SCRIPT = "<script>window.ran=1</script><img src=x onerror=ran=1>"
PASTE = """(box, length) => {
  box.value = "7".repeat(length);
  box.dispatchEvent(new Event("input", { bubbles: true }));
}"""


@frozen
class Bad:
    screen: str
    box: str
    text: str


TYPED = {
    "letters for a mass": Bad("a new batch", "meat_kg", "a lot"),
    "a negative mass": Bad("weighing", "mass_kg", "-5"),
    "nothing for a weight": Bad("hanging", "start_kg", ""),
    "nothing for a tag": Bad("hanging", "tag", ""),
    "more water than air can hold": Bad("air", "humidity", "105"),
    "ten times the nitrite": Bad("cure", "dose", "2.5"),
    "an acid no meat has": Bad("reading", "ph", "14"),
    "more activity than water": Bad("water activity", "water_activity", "1.2"),
    "a unit of another kind": Bad("charge", "water_m3", "6 kg"),
    "a correction in words": Bad("a correction", "mass_kg", "less"),
    "a note without end": Bad("inspection", "note", "so " * 300),
    "a name without end": Bad("a new batch", "name", "x" * 61),
}
BUTTONS = {**FORMS, "a correction": "Save and next", "inspection": "Something is wrong"}


@frozen
class Refused:
    page: Page
    bad: Bad
    before: int

    @property
    def box(self) -> Locator:
        return self.page.locator(f"[name={self.bad.box}]")


@pytest.fixture(scope="module", params=TYPED)
def refused(filled_tablet: Page, filled: Filled, request: pytest.FixtureRequest) -> Refused:
    bad = TYPED[request.param]
    before = len(entries_stored(filled_tablet))
    show(filled_tablet, filled.path(bad.screen))
    filled_tablet.locator(f"[name={bad.box}]").fill(bad.text)
    send(filled_tablet, BUTTONS[bad.screen])
    return Refused(filled_tablet, bad, before)


def send(page: Page, button: str) -> None:
    walk.tap(page, page.get_by_role("button", name=button, exact=True))
    expect(page.locator("[data-focus]").first).to_be_focused()


def sentence_beside(box: Locator) -> str:
    """Read as a screen reader does, through aria-describedby."""
    return box.evaluate(
        """(box) => box.getAttribute("aria-describedby").split(" ").map((id) => document.getElementById(id))
          .find((each) => each.matches(".refusal"))?.textContent ?? "" """
    )


def test_a_sentence_stands_beside_the_box(refused: Refused):
    assert sentence_beside(refused.box).endswith(".")


def test_the_box_is_marked(refused: Refused):
    assert refused.box.get_attribute("aria-invalid") == "true"


def test_the_summary_leads_to_the_box(refused: Refused):
    box_id = refused.box.get_attribute("id")
    assert refused.page.locator(f".summary a[href='#{box_id}']").inner_text() == sentence_beside(refused.box)


def test_what_was_typed_stays(refused: Refused):
    assert refused.box.input_value() == refused.bad.text


def test_nothing_of_it_is_saved(refused: Refused):
    assert len(entries_stored(refused.page)) == refused.before


@pytest.mark.parametrize("name", SUMS_DRAWN)
def test_a_sum_refuses_letters_beside_the_box(filled_tablet: Page, filled: Filled, name: str):
    show(filled_tablet, filled.path(f"sum {name}"))
    box = filled_tablet.locator("main form input[type=text]").first
    box.fill("a handful")
    send(filled_tablet, "Work it out")
    assert sentence_beside(box).endswith(".")
    assert box.input_value() == "a handful"


def test_a_file_of_something_else_is_refused_beside_its_box(filled_tablet: Page, filled: Filled):
    before = len(entries_stored(filled_tablet))
    show(filled_tablet, filled.path("your data"))
    file = {"name": "holiday.json", "mimeType": "application/json", "buffer": b'{"photos": []}'}
    filled_tablet.locator("[type=file]").set_input_files(file)
    send(filled_tablet, "Read it in")
    described = filled_tablet.locator("[type=file]").get_attribute("aria-describedby")
    expect(filled_tablet.locator(f"#{described}")).to_contain_text("not a copy that a daybook has saved")
    assert len(entries_stored(filled_tablet)) == before


def test_the_count_on_your_data_is_that_of_the_disk(filled_tablet: Page, filled: Filled):
    assert walk.entry_count(filled_tablet) == len(entries_stored(filled_tablet))


def test_ten_million_characters_are_refused_and_kept(filled_tablet: Page, filled: Filled):
    box = "name"
    show(filled_tablet, filled.path("a new batch"))
    before = len(entries_stored(filled_tablet))
    filled_tablet.locator(f"[name={box}]").evaluate(PASTE, LONG)
    send(filled_tablet, "Start the batch")
    assert sentence_beside(filled_tablet.locator(f"[name={box}]")).endswith(".")
    assert filled_tablet.locator(f"[name={box}]").evaluate("(box) => box.value.length") == LONG
    assert len(entries_stored(filled_tablet)) == before


def test_a_sum_refuses_ten_million_characters_beside_the_box(filled_tablet: Page, filled: Filled):
    show(filled_tablet, filled.path("sum moist-air"))
    box = filled_tablet.locator("main form input[type=text]").first
    box.evaluate(PASTE, LONG)
    send(filled_tablet, "Work it out")
    assert sentence_beside(box).endswith(".")


def test_markup_in_a_name_is_shown_and_not_run(filled_tablet: Page):
    walk.start_batch(filled_tablet, SCRIPT, "12.4")
    assert filled_tablet.evaluate("() => window.ran") is None
