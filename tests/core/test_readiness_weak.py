"""What is weak stands beside the word: a prediction that is no measurement, an old check, a deadline missed."""

import pytest
from attrs import evolve

from core.daybook.facts.batch import PieceWeighed
from core.daybook.facts.formula import FormulaKept
from core.ferment.outcome import Deviation
from core.quantities import METRIC
from core.release.readiness import judge
from core.release.trichinella import Meat
from tests.core.judging import MUSCLE, OVER, SAUSAGE, SLOW, cautions, next_step, word
from tests.core.kitchen import Kitchen
from tests.core.mixing import FORMULA, fields
from tests.core.proven import known, piece_that_lost, soured
from tests.core.workshop import Workshop


@pytest.mark.parametrize("likely", [None, (0.76, 0.84), (0.85, 0.93), (0.93, 1.01)])
@pytest.mark.parametrize("evidence", [SAUSAGE, SLOW, MUSCLE], ids=["fermented", "slow", "whole-muscle"])
def test_what_is_expected_never_stands_for_what_was_measured(evidence, likely: tuple[float, float] | None):
    measured = judge(evolve(evidence, likely_activity=likely))
    assert [each.met for each in measured.reasons] == [each.met for each in judge(evidence).reasons]
    unmeasured = judge(evolve(evidence, water_activity=None, likely_activity=likely))
    assert unmeasured.word == "hold"
    without = judge(evolve(evidence, water_activity=None))
    assert [each.met for each in unmeasured.reasons] == [each.met for each in without.reasons]


@pytest.mark.parametrize(
    ("evidence", "likely", "said"),
    [
        (SAUSAGE, (0.82, 0.90), "worth measuring now"),
        (SAUSAGE, (0.89, 0.97), "perhaps too moist yet"),
        (SAUSAGE, (0.96, 1.0), "let it dry further first"),
        (SLOW, (0.86, 0.90), "perhaps too moist yet"),
        (SLOW, (0.81, 0.89), "worth measuring now"),
    ],
)
def test_it_says_whether_a_measurement_is_worth_its_price(evidence, likely: tuple[float, float], said: str):
    found = [
        each.settle.say(METRIC)
        for each in judge(evolve(evidence, water_activity=None, likely_activity=likely)).reasons
        if each.key == "shelf-stable"
    ]
    assert said in found[0]
    assert "no evidence" in found[0]


def test_what_pork_rests_on_stands_beside_the_word():
    assert "It rests on what was noted of its meat. Tested or certified free of trichinella" in cautions(SAUSAGE)
    assert "lot P-7" in cautions(SAUSAGE)
    assert "It rests on" not in cautions(SAUSAGE, meat=Meat("none"))


def test_with_a_formula_a_range_is_expected_that_its_misses_make_wide(kitchen: Kitchen):
    formula = kitchen.note(FormulaKept(**fields(FORMULA)))
    batch = kitchen.begin(formula=formula)
    found = known(kitchen, batch, piece_that_lost(kitchen, batch, "J-1", 0.2)).likely_activity
    assert found is not None
    assert found[1] - found[0] == pytest.approx(0.08)
    assert 0.85 < found[0] < found[1] < 1.0


def test_without_a_formula_nothing_is_expected(kitchen: Kitchen, batch: str):
    assert known(kitchen, batch, piece_that_lost(kitchen, batch, "J-1", 0.4)).likely_activity is None
    assert next_step(SAUSAGE, water_activity=None) == "Measure one piece's water activity."


def test_readings_without_a_check_are_named(kitchen: Kitchen, batch: str):
    weak = known(kitchen, batch, piece_that_lost(kitchen, batch, "J-1", 0.4)).weak
    said = cautions(SAUSAGE, weak=weak)
    assert "Its pH and its weight were read on instruments without a check on record." in said


@pytest.mark.parametrize(("days", "is_old"), [(5.0, False), (29.0, True)])
def test_a_check_older_than_its_due_is_named_with_its_age(days: float, is_old: bool):
    shop = Workshop()
    batch = soured(shop)
    scale = shop.add("scale", "Bench", check_every_s=10 * 86400.0)
    shop.weight(scale, 1.0, at=32 - days)
    piece = shop.hang(batch, at=2)
    shop.note(PieceWeighed(0.6, scale), piece, 32)
    said = " ".join(each.say(METRIC) for each in known(shop, batch, piece, day=32).weak)
    assert ("Its weight was read on Bench, 29 d after its last check; one is due every 10 d." in said) is is_old
    assert "on a scale without" not in said


def test_a_missed_deadline_is_said_though_a_clean_test_lets_it_pass():
    cleared = evolve(OVER, deviation=Deviation(True, "clean", "Ana", "toxin"))
    assert word(SAUSAGE, fermentation=cleared) == "ready"
    assert "stands on a test and a decision alone" in cautions(SAUSAGE, fermentation=cleared)
    assert "stands on a test" not in cautions(SAUSAGE)
