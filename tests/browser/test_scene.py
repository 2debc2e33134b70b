"""A batch from the mixing table to the verdict on a device whose network is gone, and whose browser is killed midway.

The whole scene is walked once; each test then asks one thing of what was seen.
"""

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser import walking as walk
from tests.browser.conftest import (
    Site,
    heading,
    open_daybook,
    path_of,
    wait_until_offline_works,
    wait_until_open,
)
from tests.browser.scene import Seen, offline, start

BATCH = "Juniper coarse"
HUNG = {"J-1": "1250", "J-2": "1180", "J-3": "1310", "J-4": "990"}
WEIGHED = (
    (25, {"J-1": "1050", "J-2": "1010", "J-3": "1150", "J-4": "850"}),
    (10, {"J-1": "880", "J-2": "930", "J-3": "1040", "J-4": "720"}),
    (0, {"J-1": "800", "J-2": "965", "J-3": "985", "J-4": "640"}),
)


@pytest.fixture(scope="module")
def seen(browser: Browser, dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Seen:
    with offline(browser, dist, tmp_path_factory.mktemp("tablet")) as (device, page, seen):
        _mix_and_ferment(page, seen)
        _hang_and_weigh(page, seen)
        piece = page.url
        device.kill()
        page = start(device, seen)
        _after_the_kill(page, piece, seen)
        _correct_a_weighing(page, seen)
        _settle(page, seen)
    return seen


def _mix_and_ferment(page: Page, seen: Seen) -> None:
    walk.start_batch(page, BATCH, "12.4", walk.days_ago(45))
    walk.open_cure(page, "0.25")
    expect(page.locator("form .figures")).to_contain_text("156 ppm")
    walk.tap(page, page.get_by_text("How this was worked out").first)
    seen.note("dose", page, "form .figures")
    walk.set_when(page, walk.days_ago(45))
    walk.save(page, "Save the weighed cure")
    walk.read_meat(page, "5.7", "22", walk.days_ago(45))
    walk.read_meat(page, "5.6", "22", walk.days_ago(44))
    walk.read_meat(page, "5.4", "22", walk.days_ago(43))
    walk.read_meat(page, "5.1", "21.5", walk.days_ago(42))
    walk.open_log(page)
    seen.note("log of readings", page, ".log")


def _hang_and_weigh(page: Page, seen: Seen) -> None:
    walk.hang_pieces(page, HUNG, walk.days_ago(40))
    for days, weights in WEIGHED:
        walk.weigh_pieces(page, weights, walk.days_ago(days))
        if days == 0:
            walk.is_at(page, BATCH)
        else:
            walk.open_batch(page, BATCH)
    seen.note("before the kill", page, ".rows.pieces")
    seen.texts["count before"] = str(walk.entry_count(page))
    walk.open_piece(page, BATCH, "J-3")


def _after_the_kill(page: Page, piece: str, seen: Seen) -> None:
    page.goto(piece)
    wait_until_open(page)
    seen.texts["deep link"] = heading(page)
    seen.texts["count after"] = str(walk.entry_count(page))
    walk.open_batch(page, BATCH)
    seen.note("after the kill", page, ".rows.pieces")


def _correct_a_weighing(page: Page, seen: Seen) -> None:
    walk.open_log(page)
    walk.tap(page, page.get_by_role("link", name="Correct: Weighed: 965"))
    expect(page.locator("main h1")).to_contain_text("Correct")
    walk.box(page, "Weight").fill("865")
    walk.save(page, "Save and next")
    walk.open_batch(page, BATCH)
    walk.open_log(page)
    seen.note("corrected log", page, ".log")
    walk.tap(page, page.get_by_role("link", name="Correct: Weighed: 865"))
    expect(page.locator("main h1")).to_contain_text("Correct")
    seen.note("both versions", page, ".log")


def _settle(page: Page, seen: Seen) -> None:
    walk.open_piece(page, BATCH, "J-1")
    seen.note("nobody has looked", page, ".judgement")
    walk.note_tested_meat(page)
    walk.measure_activity(page, "0.88")
    walk.find_nothing_wrong(page)
    seen.note("settled", page, ".judgement")
    walk.open_piece(page, BATCH, "J-3")
    seen.note("still wet", page, ".judgement")


def test_a_dose_of_a_quarter_per_cent_is_156_ppm_with_its_working(seen: Seen):
    assert "156 ppm" in seen["dose"]
    assert re.search(r"0\.25.*6\.25|6\.25.*0\.25|31(\.0)?\s*g.*6\.25", seen["dose"], re.DOTALL)


def test_the_log_holds_both_readings_with_their_temperatures(seen: Seen):
    assert "pH 5.6" in seen["log of readings"]
    assert "pH 5.1" in seen["log of readings"]
    assert "21.5" in seen["log of readings"]


def test_four_pieces_stand_with_their_last_weights(seen: Seen):
    for tag, grams in WEIGHED[-1][1].items():
        assert re.search(rf"{tag}\s+[0-9.]+\s*%, {grams}\s*g", seen["before the kill"])


def test_a_killed_browser_has_lost_nothing(seen: Seen):
    assert seen["after the kill"] == seen["before the kill"]


def test_a_killed_browser_has_written_nothing_twice(seen: Seen):
    entries = 1 + 1 + 4 + len(HUNG) * (1 + len(WEIGHED))
    assert (seen["count before"], seen["count after"]) == (str(entries), str(entries))


def test_a_piece_opens_by_its_own_address_with_no_network(seen: Seen):
    assert seen["deep link"] == "J-3"


def test_a_corrected_weighing_is_marked_in_the_log(seen: Seen):
    assert re.search(r"Weighed: 865\s*g\s+corrected", seen["corrected log"])


def test_a_correction_keeps_both_versions_in_sight(seen: Seen):
    assert re.search(r"965\s*g.*865\s*g|865\s*g.*965\s*g", seen["both versions"], re.DOTALL)


def test_nothing_is_ready_before_somebody_has_looked(seen: Seen):
    assert seen["nobody has looked"].startswith("hold")


def test_a_piece_with_all_its_evidence_is_ready(seen: Seen):
    assert seen["settled"].startswith("ready")


def test_a_piece_too_wet_is_held_and_says_why(seen: Seen):
    assert seen["still wet"].startswith("hold")
    assert re.search(r"lost 24\.8\d?\s*%; not yet enough for a target of 35\s*%", seen["still wet"])


def test_no_page_and_no_worker_asked_anything_of_another_origin(seen: Seen):
    assert seen.asked_elsewhere() == []


def test_nothing_broke_the_policy_or_failed_aloud(seen: Seen):
    seen.watch.check(seen.served)


def test_under_a_path_of_a_static_host_a_saved_batch_is_there_again_offline(page: Page, own_site: Callable[..., Site]):
    site = own_site(at="/cellar/book/")
    wait_until_offline_works(open_daybook(page, site.url()))
    site.stop()
    walk.start_batch(page, BATCH, "12.4")
    assert path_of(page).startswith("/cellar/book/batches/")
    page.reload()
    wait_until_open(page)
    assert heading(page) == BATCH
