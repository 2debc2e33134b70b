"""The whole way from an empty book to a verdict with keys only: nothing is tapped, and the focus is never lost."""

import pytest
from attrs import define, field
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import Site, new_device, open_daybook, show
from tests.browser.hand import Hand
from tests.browser.walking import days_ago, rest

BATCH = "Juniper coarse"
HUNG = {"J-1": "1250", "J-2": "1180"}
DRIED = {"J-1": "790", "J-2": "960"}


@define
class Walked:
    hand: Hand
    verdicts: dict[str, str] = field(factory=dict)
    next_box: str = ""


@pytest.fixture(scope="module")
def walked(browser: Browser, site: Site):
    context = new_device(browser)
    page = open_daybook(context.new_page(), site.url())
    walked = Walked(Hand(page))
    _mix_and_ferment(walked.hand)
    _hang_and_weigh(walked)
    _settle(walked)
    yield walked
    context.close()


SET_BEHIND = """(when, moment) => {
  when.querySelector("[value=moment]").checked = true;
  when.querySelector("[name=happened]").value = moment;
}"""


def _happened(hand: Hand, days: float) -> None:
    """So many days ago, set behind the hand's back: a third of the weight lost at once is not believed."""
    moment = days_ago(days).strftime("%Y-%m-%dT%H:%M")
    hand.page.locator("main .when").evaluate(SET_BEHIND, moment)


def _mix_and_ferment(hand: Hand) -> None:
    hand.open("Start a batch", "Start a batch")
    hand.fill("Name", BATCH)
    hand.press("fermented sausage", "input", key="Space")
    hand.fill("Meat and fat", "12.4")
    _happened(hand, 45)
    hand.send("Start the batch", BATCH)
    hand.open("Weigh the cure", "Weigh the cure")
    hand.fill("Dose of the curing salt", "0.25")
    expect(hand.page.locator("form .figures")).to_contain_text("156 ppm")
    _happened(hand, 45)
    hand.send("Save the weighed cure", BATCH)
    for days, ph in ((44.9, "5.6"), (44, "5.4"), (43, "5.1")):
        hand.open("Read pH and temperature", "Read pH and temperature")
        hand.fill("pH", ph)
        hand.fill("Temperature", "22")
        _happened(hand, days)
        hand.send("Save the reading", BATCH)


def _hang_and_weigh(walked: Walked) -> None:
    hand = walked.hand
    hand.open("Hang a piece", "Hang a piece")
    for tag, grams in HUNG.items():
        if hand.focus()["name"].startswith("Weight"):  # the tag goes on in its series
            hand.page.keyboard.type(grams)
        else:
            hand.reach("Tag", "input")
            hand.page.keyboard.type(tag)
            hand.fill("Weight", grams)
        _happened(hand, 40)
        hand.send("Save and next piece", "Hang a piece")
    walked.next_box = hand.focus()["name"]
    hand.open("Back", BATCH)
    hand.open("Weigh them", "Weigh J-1")
    for grams, then in zip(DRIED.values(), ["Weigh J-2", BATCH], strict=True):
        hand.fill("Weight", grams)
        hand.send("Save and next", then)


def _settle(walked: Walked) -> None:
    hand = walked.hand
    hand.open("J-1", "J-1")
    hand.open("Meat and trichinella", "The meat, and trichinella")
    hand.press("no pork, no game, no horse", "input", key="Space")
    hand.send("Save it", "J-1")
    hand.open("Water activity", "Water activity")
    hand.fill("Water activity", "0.88")
    hand.send("Save the measurement", "J-1")
    hand.open("Look, smell, squeeze", "Look, smell, squeeze")
    hand.send("Sound", "J-1")
    walked.verdicts["J-1"] = hand.page.locator(".judgement .word").inner_text()
    hand.open(BATCH, BATCH, "Shift+Tab")
    hand.open("J-2", "J-2")
    walked.verdicts["J-2"] = hand.page.locator(".judgement .word").inner_text()


@pytest.fixture
def hand(tablet: Page) -> Hand:
    return Hand(show(tablet, "/"))


def test_a_verdict_is_reached_with_keys_alone(walked: Walked):
    assert walked.verdicts == {"J-1": "ready", "J-2": "hold"}


def test_the_focus_is_never_lost_after_a_save_or_a_link(walked: Walked):
    assert walked.hand.lost == []


def test_the_focus_can_always_be_seen(walked: Walked):
    assert walked.hand.unseen == []


def test_the_next_piece_waits_for_its_weight(walked: Walked):
    assert walked.next_box.startswith("Weight")


def test_the_first_key_offers_to_skip_to_the_page(daybook: Page):
    hand = Hand(daybook)
    assert hand.step()["name"] == "To the page"
    hand.page.keyboard.press("Enter")
    hand.step()
    assert hand.page.evaluate("() => document.activeElement.closest('main') !== null")


def test_arrows_choose_among_the_kinds(hand: Hand):
    hand.open("Start a batch", "Start a batch")
    hand.press("fermented sausage", "input", key="Space")
    hand.page.keyboard.press("ArrowDown")
    expect(hand.page.get_by_role("radio", name="slow sausage")).to_be_checked()


def test_arrows_choose_the_unit(hand: Hand):
    hand.open("Start a batch", "Start a batch")
    hand.reach("Meat and fat", "input")
    hand.step()
    unit = hand.page.locator("select[name=meat_kg-unit]")
    expect(unit).to_be_focused()
    before = unit.input_value()
    hand.page.keyboard.press("ArrowDown")
    assert unit.input_value() != before


def test_a_fold_opens_and_closes_with_the_space_bar(hand: Hand):
    hand.open("Book", "Book")
    hand.open("Sources", "Sources")
    fold = hand.page.locator("main details").first
    was_open = fold.evaluate("(fold) => fold.open")
    hand.press(fold.locator("h2").inner_text(), "summary", key="Space")
    assert fold.evaluate("(fold) => fold.open") != was_open
    rest(hand.page)
    hand.page.keyboard.press("Space")
    assert fold.evaluate("(fold) => fold.open") == was_open


def test_a_refused_form_leads_from_the_sentence_to_its_box(hand: Hand):
    hand.open("Start a batch", "Start a batch")
    hand.fill("Meat and fat", "plenty")
    hand.press("Start the batch", "button")
    expect(hand.page.locator(".summary")).to_be_focused()
    hand.reach("“plenty”" if hand.page.locator(".summary a", has_text="plenty").count() else "Enter ", "a")
    wanted = hand.page.evaluate("() => document.activeElement.getAttribute('href').slice(1)")
    hand.page.keyboard.press("Enter")
    hand.page.wait_for_function("(id) => document.activeElement.id === id", arg=wanted)


def test_a_save_is_taken_back_with_keys(hand: Hand):
    hand.open("Start a batch", "Start a batch")
    hand.fill("Name", BATCH)
    hand.press("fermented sausage", "input", key="Space")
    hand.fill("Meat and fat", "12.4")
    hand.send("Start the batch", BATCH)
    hand.press("Undo", "button", way="Shift+Tab")
    expect(hand.page.locator(".saved")).to_contain_text("Undone")
    assert hand.focus()["element"] != "body"
