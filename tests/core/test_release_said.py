"""What each reason of a verdict says, with the limit's own number in it, for the word that was come to.

The numbers: FSIS-GD-2023-0002 p. 38 (50 ppm or 0.92) and p. 55 (100 ppm, 2.5 %), FSRE-2005 (pH 5.3), 9 CFR 424.21(c)
(156.25 and 625 ppm), Toldrá 2010 p. 221 (0.90), JERKY-2014 (0.85).
"""

from typing import Any

import pytest

from core.ferment.slow import OWN_USE
from core.mix.rules import Curing
from core.quantities import METRIC
from core.release.evidence import Evidence
from core.release.hurdles import rests_on_equality
from core.release.readiness import judge
from core.sources import (
    CFR_424_21C,
    COMMON_PRACTICE,
    DEGREE_HOURS_US,
    DRIED_MEAT_TOLDRA,
    EU_LISTERIA,
    FSRE_ACID,
    FSRE_STABILITY,
    GD_2023_BOTULISM,
    GD_2023_SLOW_CURE,
    GD_2023_STAPHYLOCOCCI,
    USDA_LEAN_WATER,
    Source,
)
from tests.core.judging import MUSCLE, SAUSAGE, SLOW, changed
from tests.core.telling import in_words

OVER_0_92 = {"water_activity": 0.93}


def reason(evidence: Evidence, key: str, **changes: Any) -> tuple[bool | None, str, str]:
    (found,) = [each for each in judge(changed(evidence, **changes)).reasons if each.key == key]
    return found.met, *(step.say(METRIC).replace("\u00a0", " ") for step in (found.text, found.settle))


SAID = [
    (SAUSAGE, {}, "acid", True, "The lowest pH, 4.9, came down to 5.3."),
    (SAUSAGE, {"lowest_ph": 5.4, "last_ph": 5.4}, "acid", False, "The lowest pH, 5.4, did not come down to 5.3."),
    (SAUSAGE, {"lowest_ph": None, "last_ph": None}, "acid", None, "it must have come down to 5.3"),
    (SAUSAGE, {}, "shelf-stable", True, "Water activity 0.89 and pH 5.1 are low enough"),
    (SAUSAGE, {"water_activity": 0.96}, "shelf-stable", False, "Water activity 0.96 and pH 5.1 are not low enough"),
    (SAUSAGE, {"activity_from_mate": True}, "listeria", True, "Water activity 0.89 of a batch-mate and pH 5.1 are low"),
    (SLOW, {}, "listeria", True, "Water activity 0.88 is low enough"),
    (SAUSAGE, {}, "botulism", True, "it has 50 ppm of nitrite or a water activity of at most 0.92"),
    (SAUSAGE, {**OVER_0_92, "nitrite_ppm": 40}, "botulism", False, "it lacks 50 ppm of nitrite"),
    (SAUSAGE, {**OVER_0_92, "nitrite_ppm": None}, "botulism", None, "it is not known to have 50 ppm of nitrite"),
    (SLOW, {}, "slow-cure", True, "150 ppm, are at least the 100 ppm"),
    (SLOW, {"nitrite_ppm": 60, "nitrate_ppm": 0}, "slow-cure", False, "60 ppm, are less than the 100 ppm"),
    (SLOW, {}, "slow-salt", True, "2.7 %, is at least the 2.5 %"),
    (SLOW, {"salt": 0.024}, "slow-salt", False, "2.4 %, is less than the 2.5 %"),
    (SLOW, {}, "slow-dry", True, "Water activity 0.88 is below 0.9,"),
    (SLOW, {"water_activity": 0.9}, "slow-dry", False, "Water activity 0.9 is not below 0.9,"),
    (SLOW, {"water_activity": None}, "slow-dry", None, "must be below 0.9."),
    (SAUSAGE, {}, "nitrite", True, "150 ppm, is within the limit for chopped meat, 156.25 ppm."),
    (SAUSAGE, {"nitrite_ppm": 160}, "nitrite", False, "160 ppm, is over the limit for chopped meat, 156.25 ppm."),
    (MUSCLE, {}, "nitrite", True, "200 ppm, is within the limit for dry-cured meat, 625 ppm."),
    (MUSCLE, {}, "salt", True, "3 %, is at least the 2.25 %"),
    (SAUSAGE, {}, "loss", True, "It has lost 36 %; enough for a target of 35 %."),
    (SAUSAGE, {"loss": 0.3}, "loss", False, "It has lost 30 %; not yet enough for a target of 35 %."),
    (SAUSAGE, {"loss": 0.12, "target_loss": 0.1}, "loss", False, "its kind, which loses 15 % at least"),
    (SAUSAGE, {"loss": 0.16, "target_loss": 0.15}, "loss", True, "for a target of 15 %"),
    (SAUSAGE, {"loss": 0.8}, "loss", False, "It has lost 80 %, more than the water in meat."),
    (SAUSAGE, {"loss": -0.01}, "loss", False, "It weighs more than at the start."),
    (SAUSAGE, {"loss": 0.0}, "loss", False, "It has lost 0 %; not yet enough"),
    (SAUSAGE, {"target_loss": None}, "loss", None, "no loss to reach was set"),
    (SAUSAGE, {"target_loss": 0.0}, "loss", None, "no loss to reach was set"),
    (SAUSAGE, {"loss": float("nan")}, "loss", None, "Its loss is not known."),
    (SAUSAGE, {}, "days", True, "It has hung 30 d of 21 d."),
    (SAUSAGE, {"days_hung": 20}, "days", False, "It has hung 20 d of 21 d."),
    (SAUSAGE, {"days_hung": 0, "least_days": None}, "days", True, "It has hung 0 d; no least time was set."),
    (SAUSAGE, {"days_hung": -1}, "days", None, "How long it has hung is not known."),
    (SAUSAGE, {"how": Curing(method="dry-rub")}, "rules", None, "That is no fermented sausage."),
]
WHAT_TO_DO = [
    (SAUSAGE, {**OVER_0_92, "nitrite_ppm": 40}, "botulism", "to a water activity of 0.92"),
    (SLOW, {"nitrite_ppm": 60, "nitrate_ppm": 0}, "slow-cure", "Next time use 100 ppm."),
    (SLOW, {"salt": 0.024}, "slow-salt", "Next time use 2.5 %."),
    (SAUSAGE, {"loss": 0.3}, "loss", "until it has lost 35 %"),
    (SAUSAGE, {"loss": 0.12, "target_loss": 0.1}, "loss", "until it has lost 15 %"),
    (SAUSAGE, {"days_hung": 20}, "days", "until 21 d are over"),
]


@pytest.mark.parametrize(("evidence", "changes", "key", "met", "words"), SAID)
def test_a_reason_says_its_limit(evidence: Evidence, changes: dict[str, Any], key: str, met: bool | None, words: str):
    found, text, _ = reason(evidence, key, **changes)
    assert found is met
    assert words in text


@pytest.mark.parametrize(("evidence", "changes", "key", "words"), WHAT_TO_DO)
def test_what_settles_a_reason_names_the_figure_to_reach(
    evidence: Evidence, changes: dict[str, Any], key: str, words: str
):
    assert words in reason(evidence, key, **changes)[2]


def kept(activity: float | None) -> str:
    return judge(changed(SAUSAGE, water_activity=activity)).when_ready.say(METRIC)


@pytest.mark.parametrize(("activity", "cold"), [(None, True), (0.8501, True), (0.85, False)])
def test_above_0_85_it_is_kept_in_the_cold(activity: float | None, cold: bool):
    assert ("in the refrigerator" in kept(activity)) is cold
    cautions = in_words(judge(changed(SAUSAGE, water_activity=activity)).cautions)
    assert any(each.startswith("Keep it refrigerated") for each in cautions) is cold


@pytest.mark.parametrize(("evidence", "said"), [(SAUSAGE, True), (SLOW, True), (MUSCLE, False)])
def test_salted_whole_or_soured_a_verdict_says_what_it_does_not_prove(evidence: Evidence, said: bool):
    assert any("do not prove that Salmonella" in each for each in in_words(judge(evidence).cautions)) is said


@pytest.mark.parametrize("activity", [0.5, 1.0])
def test_a_water_activity_is_believed_from_a_half_to_one(activity: float):
    assert changed(SAUSAGE, water_activity=activity).activity() == activity


@pytest.mark.parametrize("activity", [0.4999, 1.0001])
def test_a_water_activity_outside_is_no_reading(activity: float):
    assert changed(SAUSAGE, water_activity=activity).activity() is None


@pytest.mark.parametrize(("evidence", "ends"), [(SAUSAGE, (4.0, 7.0)), (SLOW, (4.0, 7.0)), (MUSCLE, (5.0, 7.0))])
def test_a_ph_is_believed_within_what_meat_has(evidence: Evidence, ends: tuple[float, float]):
    low, high = ends
    read = [changed(evidence, last_ph=ph).believable_last_ph() for ph in (low - 1e-3, low, high, high + 1e-3)]
    assert read == [None, low, high, None]


@pytest.mark.parametrize(
    ("nitrite_ppm", "days_in_salt", "met"), [(200, 21, True), (200, 1, False), (40, 21, False), (None, 21, None)]
)
def test_nitrite_guards_a_whole_muscle_only_where_the_salt_has_come_through(
    nitrite_ppm: float | None, days_in_salt: float, met: bool | None
):
    found = reason(MUSCLE, "botulism", **OVER_0_92, nitrite_ppm=nitrite_ppm, lasts_s=days_in_salt * 86400.0)
    assert found[0] is met


@pytest.mark.parametrize(
    ("ph", "activity", "exactly"),
    [
        *((4.9, 0.94, True), (4.9, 0.9399, False), (5.0, 0.93, True), (4.999, 0.93, False), (4.4, 0.97, True)),
        *((4.399, 0.97, False), (None, 0.92, True), (None, 0.9199, False), (5.5, 0.92, True), (5.5, 0.95, False)),
    ],
)
def test_the_eu_limit_met_exactly_is_told(ph: float | None, activity: float, exactly: bool):
    """Reg. (EC) 2073/2005, Annex I, 1.3: pH 4.4, water activity 0.92, or 5.0 with 0.94, each inclusive."""
    assert rests_on_equality(ph, activity) is exactly


RESTS_ON = [
    (SAUSAGE, {}, "signs", True, COMMON_PRACTICE),
    (SAUSAGE, {"signs": None}, "signs", None, COMMON_PRACTICE),
    (SAUSAGE, {"signs": ("slime",)}, "sign-slime", False, COMMON_PRACTICE),
    (SAUSAGE, {}, "acid", True, FSRE_ACID),
    (SAUSAGE, {"lowest_ph": None, "last_ph": None}, "acid", None, FSRE_ACID),
    (SAUSAGE, {}, "degree-hours", True, DEGREE_HOURS_US),
    (SAUSAGE, {"fermentation": None}, "degree-hours", None, DEGREE_HOURS_US),
    (SAUSAGE, {}, "loss", True, COMMON_PRACTICE),
    (SAUSAGE, {"loss": 0.8}, "loss", False, USDA_LEAN_WATER),
    (SAUSAGE, {}, "days", True, COMMON_PRACTICE),
    (SAUSAGE, {}, "shelf-stable", True, FSRE_STABILITY),
    (SAUSAGE, {"water_activity": None}, "shelf-stable", None, FSRE_STABILITY),
    (SAUSAGE, {}, "listeria", True, EU_LISTERIA),
    (SAUSAGE, {"water_activity": None}, "listeria", None, EU_LISTERIA),
    (SAUSAGE, {}, "botulism", True, GD_2023_BOTULISM),
    (SAUSAGE, {"how": None}, "rules", None, CFR_424_21C),
    (SAUSAGE, {"how": Curing(method="dry-rub")}, "rules", None, CFR_424_21C),
    (SAUSAGE, {"nitrite_ppm": None}, "nitrite", None, CFR_424_21C),
    (SAUSAGE, {"nitrate_ppm": None}, "nitrate", None, CFR_424_21C),
    (SLOW, {}, "warm-days", True, GD_2023_STAPHYLOCOCCI),
    (SLOW, {"fermentation": None}, "warm-days", None, GD_2023_STAPHYLOCOCCI),
    (SLOW, {}, "slow-cure", True, GD_2023_SLOW_CURE),
    (SLOW, {"nitrite_ppm": None}, "slow-cure", None, GD_2023_SLOW_CURE),
    (SLOW, {}, "slow-salt", True, GD_2023_SLOW_CURE),
    (SLOW, {"salt": None}, "slow-salt", None, GD_2023_SLOW_CURE),
    (SLOW, {}, "slow-dry", True, DRIED_MEAT_TOLDRA),
    (MUSCLE, {"water_activity": None}, "slow-dry", None, DRIED_MEAT_TOLDRA),
    (SAUSAGE, {"last_ph": 7.5}, "contradiction-last-ph", None, COMMON_PRACTICE),
]


@pytest.mark.parametrize(("evidence", "changes", "key", "met", "source"), RESTS_ON)
def test_each_reason_of_a_verdict_names_what_it_rests_on(
    evidence: Evidence, changes: dict[str, Any], key: str, met: bool | None, source: Source
):
    (found,) = [each for each in judge(changed(evidence, **changes)).reasons if each.key == key]
    assert (found.met, found.source) == (met, source)


def test_only_a_sign_of_spoilage_among_them_throws_it_away():
    (sign,) = [each for each in judge(changed(SAUSAGE, signs=("slime",))).reasons if each.key == "sign-slime"]
    assert sign.fatal
    assert not any(each.fatal for each in judge(changed(SAUSAGE, loss=0.8, nitrite_ppm=200, lowest_ph=5.4)).reasons)


@pytest.mark.parametrize(("evidence", "said"), [(SLOW, True), (SAUSAGE, False), (MUSCLE, False)])
def test_only_of_a_slow_sausage_is_the_borrowed_limit_told(evidence: Evidence, said: bool):
    assert (OWN_USE in in_words(judge(evidence).cautions)) is said
