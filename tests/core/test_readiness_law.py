"""What the law asks of a piece: nitrite and nitrate to their limits, degree-hours, and who may decide otherwise."""

import pytest
from attrs import evolve

from core.ferment.outcome import Deviation, Outcome
from core.mix.rules import Curing
from core.quantities import METRIC
from core.release.readiness import Evidence, judge
from tests.core.judging import MUSCLE, OVER, SAUSAGE, SLOW, cautions, next_step, reason, unmet, word


def test_nitrite_at_the_limit_passes():
    assert word(SAUSAGE, nitrite_ppm=156.25 * 1.0004) == "ready"


def test_nitrite_over_the_limit_is_held_and_not_eaten():
    assert word(SAUSAGE, nitrite_ppm=156.25 * 1.0006) == "hold"
    assert next_step(SAUSAGE, nitrite_ppm=157).startswith("Do not eat it. Ask a food-safety authority")


def test_a_whole_muscle_is_held_to_the_dry_cured_limit():
    assert word(MUSCLE, nitrite_ppm=625) == "ready"
    assert word(MUSCLE, nitrite_ppm=626) == "hold"


def test_a_fermented_sausage_is_told_that_degree_hours_prove_nothing_about_salmonella():
    assert "Salmonella" in cautions(SAUSAGE)


@pytest.mark.parametrize("word", ["over", "not shown", "running", "unknown"])
def test_a_sausage_that_did_not_pass_its_degree_hours_is_held(word: str):
    assert judge(evolve(SAUSAGE, fermentation=Outcome(word))).word == "hold"  # type: ignore[arg-type]


def test_over_the_limit_it_says_why_and_whom_to_ask():
    said = next_step(SAUSAGE, fermentation=OVER)
    assert "food-safety authority" in said
    assert "survives cooking" in said


@pytest.mark.parametrize(
    ("kept", "result", "expected"),
    [
        (True, "clean", "ready"),
        (True, "not-tested", "hold"),
        (True, "found", "discard"),
        (False, "clean", "discard"),
        (False, "not-tested", "discard"),
    ],
)
def test_a_decision_clears_only_with_a_clean_test(kept: bool, result, expected: str):
    decided = evolve(OVER, deviation=Deviation(kept, result, "Ana {x}", "toxin, ELISA"))
    assert word(SAUSAGE, fermentation=decided) == expected


def test_what_was_decided_is_said_even_with_braces_in_it():
    decided = evolve(OVER, deviation=Deviation(True, "clean", "Ana {x}", "toxin {sum}"))
    assert "Ana {x}" in reason(SAUSAGE, "degree-hours", fermentation=decided).text.say(METRIC)


@pytest.mark.parametrize("fermentation", [OVER, Outcome("over", deviation=Deviation(True, "not-tested"))])
def test_degree_hours_over_the_limit_speak_against_a_whole_muscle_too(fermentation):
    assert unmet(MUSCLE, fermentation=fermentation) == ["degree-hours"]


def test_a_whole_muscle_that_was_condemned_is_thrown_away():
    assert word(MUSCLE, fermentation=Outcome("over", deviation=Deviation(False, "not-tested"))) == "discard"


def test_without_a_choice_of_rules_it_is_held():
    assert unmet(MUSCLE, how=None, nitrite_ppm=600) == ["salted-through", "rules"]


def test_a_sausage_that_is_noted_as_cured_like_a_ham_is_held():
    assert unmet(SAUSAGE, how=Curing(method="dry-rub"), nitrite_ppm=600) == ["rules"]


@pytest.mark.parametrize("evidence", [SAUSAGE, SLOW], ids=["fermented", "slow"])
@pytest.mark.parametrize(("nitrate", "met"), [(1718.75 * 1.0004, True), (1718.75 * 1.0006, False)])
def test_nitrate_is_held_to_its_limit(evidence: Evidence, nitrate: float, met: bool):
    assert reason(evidence, "nitrate", nitrate_ppm=nitrate).met is met


def test_both_together_are_held_to_canadas_limit():
    assert unmet(SAUSAGE, how=Curing("ca", "meat"), nitrite_ppm=120, nitrate_ppm=80.2) == ["both"]
    assert word(SAUSAGE, how=Curing("ca", "meat"), nitrite_ppm=120, nitrate_ppm=80) == "ready"


def test_the_eu_counts_the_ion():
    assert unmet(SAUSAGE, how=Curing("eu", "not-heated")) == ["nitrite"]
    assert word(SAUSAGE, how=Curing("eu", "not-heated"), nitrite_ppm=119.9) == "ready"


@pytest.mark.parametrize("key", ["slow-cure", "slow-salt"])
def test_what_canada_asks_is_named_as_asked_of_fermented_meat(key: str):
    """FSIS-GD-2023-0002, p. 38, quoting CFIA 2020."""
    (reason,) = (each for each in judge(SLOW).reasons if each.key == key)
    assert reason.text.say(METRIC).endswith("that Canada asks of fermented meat.")
