"""A new chamber on a device whose network is gone: instruments checked, the run, set-points, two days empty, the water.

The whole scene is walked once; each test then asks one thing of what was seen.
"""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.browser import new_chamber as chamber
from tests.browser.new_chamber import LARDER_A, LARDER_B, first_files
from tests.browser.scene import Seen, offline, start


@pytest.fixture(scope="module")
def seen(browser: Browser, dist: Path, tmp_path_factory: pytest.TempPathFactory) -> Seen:
    with offline(browser, dist, tmp_path_factory.mktemp("tablet")) as (device, page, seen):
        chamber.check_instruments(page, seen)
        chamber.prepare_it(page, seen)
        chamber.set_it(page, seen)
        run = chamber.prove_too_cold(page, seen)
        device.kill()
        page = start(device, seen)
        chamber.find_it_again(page, run, seen)
        chamber.prove_again(page, seen)
        chamber.use_it(page, seen)
    return seen


def test_a_thermometer_through_ice_and_boiling_water_at_a_height_has_its_line(seen: Seen):
    assert re.search(r"Boiling point here\s+98\.0\s*°C", seen["boiling"])
    assert re.search(r"1\.3\s*°C read is 0\s*°C, 98\.4\s*°C read is 98\s*°C", seen["thermometer"])


def test_a_hygrometer_that_reads_72_over_salt_is_corrected_by_3_and_a_half(seen: Seen):
    assert re.search(r"Add to every reading\s+3\.5\s*%", seen["salt"])
    assert re.search(r"sodium chloride\s+75\.5\s*%", seen["salt"])
    assert re.search(r"3\.\d+\s*% is added to every reading", seen["hygrometer"])


def test_a_probe_that_was_not_checked_says_that_its_readings_are_taken_as_they_are(seen: Seen):
    assert "No valid check" in seen["unchecked"]


def test_a_meters_slope_and_a_scales_error_are_judged(seen: Seen):
    assert re.search(r"(?s)98\.3\s*%.*Accept", seen["buffers"])
    assert re.search(r"(?s)0\.20\s*g.*Accept", seen["weights"])


def test_the_sanitiser_is_measured_in_millilitres(seen: Seen):
    assert re.search(r"to measure\s+8\s*ml", seen["dilution"])


@pytest.mark.parametrize("moment", ["dilution", "run begun"])
def test_vinegar_in_the_same_run_never_meets_the_chlorine(seen: Seen, moment: str):
    assert "Never mix chlorine bleach with vinegar: it sets free chlorine gas" in seen[moment]


def test_the_run_is_ticked_off_in_its_order(seen: Seen):
    steps = seen["steps"].splitlines()
    begins = [
        "Unplug",
        "Wash",
        "Soak limescaled parts",
        "Rinse all the vinegar",
        "Mix",
        "Keep it all wet",
        "Let it drain",
    ]
    places = [next(at for at, step in enumerate(steps) if step.startswith(words)) for words in begins]
    assert places == sorted(places)


def test_the_contact_timer_counts_down_and_the_run_counts_as_sanitised(seen: Seen):
    assert seen["timer of: Keep it all wet for the contact time."] == "1:00 left"
    assert "Sanitised by the rule" in seen["run done"]


def test_a_tick_before_the_time_is_over_is_asked_about(seen: Seen):
    assert re.search(r"contact time is not over: (60 s|1(\.0)? min) are left", seen["too soon"])


def test_set_points_show_dew_point_and_deficit(seen: Seen):
    assert re.search(r"Vapour pressure deficit\s+271\s*Pa", seen["set-points"])
    assert re.search(r"Dew point\s+9\.4\s*°C", seen["set-points"])


def test_the_humidifier_holds_six_quarts_with_six_tablespoons(seen: Seen):
    assert re.search(r"Charged with 82\.8\s*g of baking soda", seen["chamber set"])
    assert re.search(r"holds 5\.68\s*L", seen["chamber set"])


def test_the_day_and_the_month_are_asked_where_the_file_leaves_them_open(seen: Seen):
    assert "Which comes first, the day or the month?" in seen["question"]
    assert "day before month likelier by its dates" in seen["question"]


def test_the_layout_of_the_other_file_is_shown_and_not_asked(seen: Seen):
    assert re.search(r"first of them was measured on 7\s+Nov\s+2026, 10:00", seen["layout"])
    assert "temperature, °C, Larder B" in seen["layout"]


def test_the_band_begins_with_the_set_points_and_each_probe_finds_its_instrument(seen: Seen):
    assert seen["band"] == "13"
    assert seen["assigned"] == f"{LARDER_A}, {LARDER_B}"


def test_the_reading_tells_how_far_it_is(seen: Seen):
    assert "Analysing" in seen["progress"]


def test_too_cold_a_chamber_is_not_settled_and_says_why_and_what_to_change(seen: Seen):
    assert "not settled" in seen["verdict"]
    assert re.search(r"its temperature (is outside|still leaves) 11\.5\s*°C to 14\.5\s*°C", seen["verdict"])
    assert re.search(r"Set the thermostat 1\s*K higher", seen["verdict"])


def test_the_log_of_a_checked_probe_is_corrected_and_says_so(seen: Seen):
    assert re.search(r"its humidity is corrected by \+3\.\d+\s*% \(salt check of 1 Nov 2026\)", seen["verdict"])


def test_the_chart_is_drawn_and_the_table_says_the_same(seen: Seen):
    wide, high = map(int, seen["chart"].split(" x "))
    assert (wide > 300, high > 100) == (True, True)
    assert re.search(r"4\s+Nov\s+2026,\s+10:00\s+12\.78\s*°C", seen["table"])


def test_a_killed_browser_has_lost_nothing_of_the_run(seen: Seen):
    assert seen["deep link"] == "Before the fix"
    assert seen["because after the kill"] == seen["because"]


def test_the_loggers_files_come_back_byte_for_byte(seen: Seen):
    assert seen.files == first_files()


def test_after_the_fix_it_is_settled_and_says_since_when(seen: Seen):
    assert re.search(r"settled\s+Settled since 7 Nov 2026", seen["second verdict"])


def test_the_two_runs_stand_side_by_side(seen: Seen):
    assert re.search(r"Before the fix\s+not settled\s+After the fix\s+settled", seen["compared"])
    assert "Differential 1 K" in seen["compared"]
    assert re.search(r"Mean temperature\s+11\.96\s*°C\s+12\.88\s*°C", seen["compared"])


def test_the_air_is_shown_corrected_beside_what_was_read(seen: Seen):
    assert re.search(r"13\.1\s*°C · 78\.5\s*%", seen["air"])
    assert re.search(r"corrected from 75\s*% \(salt check of 1 Nov\)", seen["air"])


def test_two_fillings_tell_the_litres_a_day_and_the_day_it_runs_dry(seen: Seen):
    assert re.search(r"0\.44\s*L a day of 5\.68\s*L\. Dry about 25 Nov 2026", seen["water"])
    assert re.search(r"Wednesday\s+\d+ Nov\s+Fill the humidifier\s+filled", seen["today"])


def test_today_asks_for_the_probe_that_was_never_checked(seen: Seen):
    assert re.search(r"Check the hygrometer Larder B\s+never checked yet", seen["today"])


def test_no_page_and_no_worker_asked_anything_of_another_origin(seen: Seen):
    assert seen.asked_elsewhere() == []


def test_nothing_broke_the_policy_or_failed_aloud(seen: Seen):
    seen.watch.check(seen.served)
