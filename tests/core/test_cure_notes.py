"""What a row of a law adds to a figure: ascorbate that must go with it, what may be left, a limit from memory."""

import pytest
from attrs import evolve

from core.mix.cure import CureMix, Dose
from core.mix.cure_notes import mistaken, most, noted, of_rows
from core.mix.curing_salt import CuringSalt
from core.mix.ions import Substance
from core.mix.limit_check import LimitCheck
from core.mix.rule import Method, Rule
from core.quantities import METRIC
from core.sentence import Sentence
from core.sources import CFR_424_21C
from tests.core.telling import in_words

CHARGE = CureMix(10.0, (Dose(CuringSalt(0.0625), 0.02),), 0.25)
WITH_IT = Rule(
    "bacon",
    "pumped bacon",
    ("pump",),
    "accelerator",
    "weighed",
    None,
    "9 CFR 424.22(b)",
    CFR_424_21C,
    "2015",
    printed="550 ppm",
    least_ppm=550.0,
)
OTHER = evolve(WITH_IT, substance="nitrate", least_ppm=None)


def said(rule: Rule, substance: Substance, charge: CureMix = CHARGE) -> str:
    return " ".join(in_words(of_rows((LimitCheck(rule, 0.0),), substance, charge)))


def test_ascorbate_that_must_go_with_it_is_asked_for_beside_the_nitrite():
    assert said(WITH_IT, "nitrite") == "9 CFR 424.22(b) asks for 550 ppm of ascorbate or erythorbate in pumped bacon."


@pytest.mark.parametrize(
    ("rule", "substance", "charge"),
    [
        (WITH_IT, "nitrate", CHARGE),
        (WITH_IT, "nitrite", evolve(CHARGE, accelerator_kg=0.005)),
        (evolve(WITH_IT, least_ppm=None), "nitrite", CHARGE),
        (OTHER, "nitrite", CHARGE),
    ],
)
def test_it_is_not_asked_for_where_it_is_no_question(rule: Rule, substance: Substance, charge: CureMix):
    assert said(rule, substance, charge) == ""


def test_what_may_be_left_is_said_of_its_own_substance():
    left = evolve(OTHER, left_ppm=150.0, cite="Annex II")
    assert (
        said(left, "nitrate")
        == "At most 150 mg/kg of nitrate may be left in it (Annex II); only a laboratory can show it."
    )
    assert said(left, "nitrite") == ""


@pytest.mark.parametrize(("note", "told"), [("", ()), ("Dried by its own table.", ("Dried by its own table.",))])
def test_a_rows_own_note_is_told_where_it_has_one(note: str, told: tuple[str, ...]):
    assert in_words(noted(evolve(WITH_IT, note=note))) == told


def test_a_limit_from_memory_says_so():
    remembered = evolve(WITH_IT, source=evolve(CFR_424_21C, verified="memory"))
    assert in_words(noted(remembered)) == ("The limit of 9 CFR 424.22(b) is from memory, not looked up.",)


@pytest.mark.parametrize(("most_ppm", "words"), [(0.0, "none"), (1.0, "1 ppm"), (156.25, "156 ppm")])
def test_the_most_of_a_row_is_said_in_ppm_or_that_none_may_be_added(most_ppm: float, words: str):
    assert Sentence("{most}", {"most": most(evolve(WITH_IT, most_ppm=most_ppm))}).say(METRIC) == words


HOME_CURE = Dose(CuringSalt(0.005), 0.03)


@pytest.mark.parametrize(
    ("doses", "method", "is_said"),
    [
        ((HOME_CURE,), "comminuted", True),
        ((HOME_CURE,), "immersion", False),
        ((HOME_CURE,), "pump", False),
        ((HOME_CURE, HOME_CURE), "comminuted", False),
        ((Dose(CuringSalt(0.0625), 0.05),), "comminuted", False),
    ],
)
def test_a_complete_cure_dosed_like_a_concentrate_is_said_only_of_one_on_the_meat(doses, method: Method, is_said: bool):
    """3 g to the kilogram; in a brine the meat’s weight tells nothing, and of two cures each may be the smaller."""
    found = in_words(mistaken(CureMix(10.0, doses), method))
    assert bool(found) is is_said
    assert all("is a complete mix" in each for each in found)
