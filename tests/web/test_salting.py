"""A whole muscle goes into salt, is turned, comes out, and only then wants to be hung."""

import pytest

from core.daybook.facts.salting import PieceTurned, SaltingBegun, SaltingEnded
from tests.web.conftest import Visitor, alike

INTO = {
    "method": "weighed",
    "shape": "slab",
    "way": "diffusion",
    "thickness_m": "50",
    "temperature_c": "3",
    "centre_share": "95",
    "mass_kg": "1.8",
}


@pytest.fixture
def loin(visitor: Visitor) -> str:
    batch = visitor.start_batch("Loin", style="whole-muscle")
    visitor.cure(batch, "0.5 %")
    return batch


@pytest.fixture
def salted(visitor: Visitor, loin: str) -> str:
    visitor.fill(f"{loin}/salt", **INTO)
    return loin


def wants(visitor: Visitor) -> list[str]:
    return [each for each in visitor.get("/").texts("p", "what") if "Loin" in each]


def test_a_cured_loin_wants_to_go_into_salt(visitor: Visitor, loin: str):
    assert "Put Loin into salt" in wants(visitor)


def test_the_loins_page_shows_the_salt_as_its_one_main_action(visitor: Visitor, loin: str):
    page = visitor.get(loin)
    assert page.by_id("mix").tag == "section"
    assert page.texts("a", "main") == ["Put it into salt"]


def test_it_is_kept_as_typed(visitor: Visitor, loin: str):
    kept = visitor.fact(visitor.fill(f"{loin}/salt", **INTO, planned_s="14").saved)
    typed = SaltingBegun("weighed", "slab", 0.05, 3.0, centre_share=0.95, mass_kg=1.8, planned_s=14.0 * 86400)
    assert alike(kept, typed)


def test_both_rules_stand_beside_each_other_while_one_types(visitor: Visitor, loin: str):
    figures = visitor.get(f"{loin}/salt", figures="1", **INTO).figures
    assert figures["equalised"] == "13.5 d"
    assert figures["rule_inch"] == "13.8 d"


def test_a_thick_piece_without_its_width_is_asked_for_it(visitor: Visitor, loin: str):
    page = visitor.fill(f"{loin}/salt", **INTO | {"shape": "block"})
    assert "Enter the width" in page.beside("width_m")


def test_in_salt_it_wants_to_be_turned_and_not_hung(visitor: Visitor, salted: str):
    assert wants(visitor)[:2] == [
        "Turn Loin in its salt day 1 of 14",
        "Take Loin out of the salt and hang it day 1 of 14",
    ]


def test_its_page_says_which_day_it_is_and_draws_the_salt_at_its_centre(visitor: Visitor, salted: str):
    visitor.wait(days=4)
    page = visitor.get(salted)
    assert "Day 5" in page.text
    assert any("Salt at the centre" in each for each in page.texts("figcaption"))
    assert "in salt, day 5 of 14" in visitor.get("/batches").text


def test_its_page_shows_both_ways_to_tell_the_days(visitor: Visitor, salted: str):
    heads = visitor.get(salted).texts("th")
    assert "By diffusion" in heads
    assert "Dry salt, by thickness" in heads


def test_turned_is_kept(visitor: Visitor, salted: str):
    assert visitor.fact(visitor.fill(f"{salted}/turn", note="much brine").saved) == PieceTurned("much brine")


def test_out_of_the_salt_the_next_form_is_the_hanging(visitor: Visitor, salted: str):
    visitor.wait(days=14)
    page = visitor.fill(f"{salted}/unsalt")
    assert page.path.startswith(f"{salted}/hang")
    assert visitor.fact(page.saved) == SaltingEnded()
    assert wants(visitor)[0] == "Hang the pieces of Loin"


def test_taken_out_early_it_is_told_that_the_middle_has_no_salt_yet(visitor: Visitor, salted: str):
    visitor.wait(days=2)
    assert "The middle has not its salt yet." in visitor.get(f"{salted}/unsalt").text


def test_taken_out_in_time_it_is_told_nothing(visitor: Visitor, salted: str):
    visitor.wait(days=40)
    assert "The middle has not its salt yet." not in visitor.get(f"{salted}/unsalt").text


def test_put_into_salt_again_it_is_corrected(visitor: Visitor, salted: str):
    assert visitor.get(f"{salted}/salt").path.endswith("/correct")


def test_a_fermented_sausage_has_no_salt_to_go_into(visitor: Visitor):
    batch = visitor.start_batch()
    visitor.cure(batch)
    assert "into salt" not in visitor.get(batch).text


@pytest.mark.parametrize("temperature", ["-2 °C", "28.5 °F"])
def test_salting_below_freezing_is_said_to_be_not_known_beside_its_box(visitor: Visitor, loin: str, temperature: str):
    page = visitor.fill(f"{loin}/salt", **INTO | {"temperature_c": temperature})
    assert "is not known" in page.beside("temperature_c")
