"""Ready, hold or discard: each boundary, each gap in the evidence, each sign."""

from typing import Any

import pytest
from attrs import evolve

from core.ferment.outcome import Deviation, Outcome
from core.mix.ingoing import Ingoing
from core.mix.rules import Curing
from core.quantities import METRIC
from core.refusals import OutOfRange
from core.release.hurdles import rests_on_equality, shelf_stable, too_dry_for_listeria
from core.release.readiness import LEAST_LOSS, SIGNS, Evidence, judge
from core.release.salted import Salted
from core.sources import EU_LISTERIA, FSRE_STABILITY
from core.verdict import Reason
from tests.core.telling import in_words

SAUSAGE = Evidence(
    style="fermented",
    loss=0.36,
    target_loss=0.35,
    lowest_ph=4.9,
    last_ph=5.1,
    water_activity=0.89,
    days_hung=30,
    least_days=21,
    ingoing=Ingoing(150, 0),
    how=Curing(),
    signs=(),
    fermentation=Outcome("passed"),
)
SLOW = Evidence(
    style="slow",
    loss=0.38,
    target_loss=0.35,
    lowest_ph=5.6,
    last_ph=5.9,
    water_activity=0.88,
    days_hung=40,
    ingoing=Ingoing(100, 50),
    how=Curing(),
    salt=0.027,
    signs=(),
    fermentation=Outcome("passed"),
)
DAY_S = 86400.0
MUSCLE = Evidence(
    style="whole-muscle",
    loss=0.38,
    target_loss=0.35,
    water_activity=0.89,
    days_hung=60,
    ingoing=Ingoing(200, 0),
    how=Curing(method="dry-rub"),
    salt=0.03,
    signs=(),
    salted=Salted("weighed", "slab", 0.05, lasts_s=21 * DAY_S, coldest_c=3.0, warmest_c=4.0),
)


def changed(evidence: Evidence, **changes: Any) -> Evidence:
    """nitrite_ppm, nitrate_ppm: of what went in; lasts_s and the like: of its time in salt."""
    ingoing = {key: changes.pop(key) for key in list(changes) if key in ("nitrite_ppm", "nitrate_ppm")}
    salted = {key: changes.pop(key) for key in list(changes) if hasattr(Salted(), key)}
    if ingoing:
        changes["ingoing"] = evolve(evidence.ingoing, **ingoing)
    if salted:
        changes["salted"] = evolve(evidence.salted or Salted(), **salted)
    return evolve(evidence, **changes)


def word(evidence: Evidence, **changes: Any) -> str:
    return judge(changed(evidence, **changes)).word


def reason(evidence: Evidence, key: str, **changes: Any) -> Reason:
    return next(each for each in judge(changed(evidence, **changes)).reasons if each.key == key)


def unmet(evidence: Evidence, **changes: Any) -> list[str]:
    return [each.key for each in judge(changed(evidence, **changes)).unmet]


def next_step(evidence: Evidence, **changes: Any) -> str:
    return judge(changed(evidence, **changes)).next_step.say(METRIC)


def cautions(evidence: Evidence, **changes: Any) -> str:
    return " ".join(in_words(judge(changed(evidence, **changes)).cautions))


def test_a_sausage_with_all_its_evidence_is_ready():
    assert word(SAUSAGE) == "ready"


def test_a_whole_muscle_needs_no_acid():
    assert word(MUSCLE) == "ready"


@pytest.mark.parametrize(
    "gap",
    [
        *("loss", "target_loss", "water_activity", "days_hung", "signs", "fermentation"),
        *("nitrite_ppm", "nitrate_ppm", "how"),
    ],
)
def test_a_sausage_with_a_gap_in_its_evidence_is_held(gap: str):
    assert word(SAUSAGE, **{gap: None}) == "hold"


def test_a_sausage_whose_ph_nobody_measured_is_held():
    assert word(SAUSAGE, lowest_ph=None, last_ph=None) == "hold"


@pytest.mark.parametrize(
    "gap",
    [
        *("loss", "target_loss", "water_activity", "days_hung", "signs", "salt"),
        *("nitrite_ppm", "nitrate_ppm", "how", "salted"),
        *("method", "shape", "thickness_m", "lasts_s", "coldest_c", "warmest_c"),
    ],
)
def test_a_whole_muscle_with_a_gap_in_its_evidence_is_held(gap: str):
    assert word(MUSCLE, **{gap: None}) == "hold"


def test_the_gap_is_named():
    assert [each.key for each in judge(changed(SAUSAGE, nitrite_ppm=None)).missing] == ["nitrite"]


def test_unmeasured_water_activity_asks_for_one_measurement():
    assert next_step(SAUSAGE, water_activity=None) == "Measure one piece's water activity."


def test_acid_never_makes_up_for_unmeasured_water_activity():
    assert word(SAUSAGE, water_activity=None, lowest_ph=4.2, last_ph=4.2) == "hold"


@pytest.mark.parametrize("sign", SIGNS)
def test_any_sign_of_spoilage_is_thrown_away(sign: str):
    assert word(SAUSAGE, signs=(sign,)) == "discard"


def test_a_sign_this_version_does_not_know_is_thrown_away_too():
    assert word(SAUSAGE, signs=("rust",)) == "discard"


def test_a_sign_comes_before_everything_else_to_do():
    assert next_step(SAUSAGE, signs=("slime",), loss=None, nitrite_ppm=900).startswith("Throw it away")


def test_a_sign_outweighs_missing_evidence():
    assert judge(Evidence("fermented", signs=("smell",))).word == "discard"


def test_nothing_known_is_held():
    assert judge(Evidence("fermented")).word == "hold"


def test_a_ph_of_5_3_is_acid_enough():
    assert reason(SAUSAGE, "acid", lowest_ph=5.3, last_ph=5.6).met is True


def test_a_ph_of_5_31_is_not():
    assert word(SAUSAGE, lowest_ph=5.31, last_ph=5.31) == "hold"


def test_a_sausage_that_never_soured_is_sent_to_an_authority():
    assert "food-safety authority" in next_step(SAUSAGE, lowest_ph=5.6, last_ph=5.6)


def test_the_ph_may_rise_under_mould_after_it_was_low():
    assert word(SAUSAGE, lowest_ph=4.9, last_ph=5.9) == "ready"


def test_the_risen_ph_is_the_one_that_must_keep_it():
    assert word(SAUSAGE, lowest_ph=4.4, last_ph=5.5, water_activity=0.93) == "hold"


def test_a_ph_that_was_only_low_once_does_not_keep_it():
    assert reason(SAUSAGE, "listeria", lowest_ph=4.4, last_ph=None, water_activity=0.93).met is False


def test_the_target_itself_is_enough():
    assert reason(SAUSAGE, "loss", loss=1 - 0.65, target_loss=0.35).met is True


def test_just_under_the_target_hangs_on():
    assert next_step(SAUSAGE, loss=0.349) == "Let it hang until it has lost 35 %."


@pytest.mark.parametrize(("loss", "met"), [(0.7499, True), (0.75, True), (0.7501, False), (0.0, False)])
def test_more_than_the_water_in_meat_cannot_be_lost(loss: float, met: bool):
    """Lean raw meat is 70 to 76 % water (USDA, release 26)."""
    assert reason(SAUSAGE, "loss", loss=loss).met is met


def test_what_was_hung_this_moment_has_hung_no_time():
    assert reason(SAUSAGE, "days", days_hung=0, least_days=None).met is True


@pytest.mark.parametrize("loss", [-0.01, 0.7501])
def test_a_weight_that_cannot_be_is_weighed_again(loss: float):
    assert word(SAUSAGE, loss=loss) == "hold"
    assert next_step(SAUSAGE, loss=loss) == "Check the tag and the scale, and weigh it again."


def test_too_few_days_are_held():
    assert word(SAUSAGE, days_hung=20.9) == "hold"


def test_the_least_days_themselves_are_enough():
    assert word(SAUSAGE, days_hung=21) == "ready"


def test_without_least_days_it_need_not_have_hung_so_long():
    assert word(SAUSAGE, least_days=None, days_hung=8) == "ready"


@pytest.mark.parametrize("days", [None, -0.01, float("nan")])
def test_how_long_it_hung_is_always_asked(days: float | None):
    assert unmet(SAUSAGE, least_days=None, days_hung=days) == ["days"]


def test_nitrite_at_the_limit_passes():
    assert word(SAUSAGE, nitrite_ppm=156.25 * 1.0004) == "ready"


def test_nitrite_over_the_limit_is_held_and_not_eaten():
    assert word(SAUSAGE, nitrite_ppm=156.25 * 1.0006) == "hold"
    assert next_step(SAUSAGE, nitrite_ppm=157).startswith("Do not eat it. Ask a food-safety authority")


def test_a_whole_muscle_is_held_to_the_dry_cured_limit():
    assert word(MUSCLE, nitrite_ppm=625) == "ready"
    assert word(MUSCLE, nitrite_ppm=626) == "hold"


def test_without_nitrite_dryness_alone_guards_against_botulism():
    assert word(SAUSAGE, nitrite_ppm=0) == "ready"


def test_with_little_nitrite_and_much_water_it_is_held():
    assert unmet(SAUSAGE, nitrite_ppm=49.99, last_ph=4.3, lowest_ph=4.3, water_activity=0.93) == ["botulism"]


def test_fifty_ppm_guards_against_botulism():
    assert word(SAUSAGE, nitrite_ppm=50, last_ph=4.3, lowest_ph=4.3, water_activity=0.93) == "ready"


@pytest.mark.parametrize("between", [(3.0, None), (None, 0.089), (8.4, None), (None, 1.01)])
def test_a_reading_no_meat_gives_is_no_evidence(between):
    ph, activity = between
    changes = {"lowest_ph": ph, "last_ph": ph} if ph else {"water_activity": activity}
    assert word(SAUSAGE, **changes) == "hold"


def test_not_a_number_is_never_good_enough():
    nan = float("nan")
    evidence = Evidence("fermented", nan, nan, nan, nan, nan, False, nan, nan, Ingoing(nan, nan), Curing(), signs=())
    assert judge(evidence).word == "hold"


@pytest.mark.parametrize("field", ["loss", "water_activity", "days_hung", "nitrite_ppm", "nitrate_ppm"])
def test_one_figure_that_is_no_number_is_enough_to_hold_it(field: str):
    assert word(SAUSAGE, **{field: float("nan")}) == "hold"


FSRE = [
    (None, 0.909, True),
    (None, 0.91, False),
    (5.19, 0.949, True),
    (5.2, 0.949, False),
    (5.19, 0.95, False),
    (4.99, 0.99, True),
    (5.0, 0.95, False),
]


@pytest.mark.parametrize(("ph", "activity", "stable"), FSRE)
def test_the_us_rule_is_strict_at_its_limits(ph, activity, stable):
    assert shelf_stable(ph, activity) is stable


EU = [
    (None, 0.92, True),
    (None, 0.921, False),
    (4.4, 0.99, True),
    (4.41, 0.99, False),
    (5.0, 0.94, True),
    (5.01, 0.94, False),
    (5.0, 0.941, False),
]


@pytest.mark.parametrize(("ph", "activity", "stable"), EU)
def test_the_eu_rule_includes_its_limits(ph, activity, stable):
    assert too_dry_for_listeria(ph, activity) is stable


@pytest.mark.parametrize(
    ("ph", "activity", "equal"),
    [
        (5.0, 0.94, True),
        (None, 0.92, True),
        (4.4, 0.99, True),
        (4.9, 0.93, False),
        (None, 0.93, False),
        (5.0, 0.93, True),
    ],
)
def test_a_limit_met_exactly_is_known(ph, activity, equal):
    assert rests_on_equality(ph, activity) is equal


def test_a_limit_met_exactly_is_cautioned():
    assert 'prints "less than"' in cautions(SAUSAGE, last_ph=5.0, water_activity=0.94)


def test_where_the_rules_differ_the_us_one_can_be_the_stricter():
    judged = judge(evolve(SAUSAGE, last_ph=5.5, water_activity=0.915))
    assert judged.word == "hold"
    assert [each.source for each in judged.unmet] == [FSRE_STABILITY]


def test_where_the_rules_differ_the_eu_one_can_be_the_stricter():
    judged = judge(evolve(SAUSAGE, last_ph=4.9, water_activity=0.95))
    assert judged.word == "hold"
    assert [each.source for each in judged.unmet] == [EU_LISTERIA]


def test_where_the_rules_differ_both_are_named():
    said = cautions(MUSCLE, water_activity=0.915)
    assert "FSRE-2005" in said
    assert "2073/2005" in said


def test_a_batch_mates_measurement_is_said_to_be_one():
    said = reason(SAUSAGE, "listeria", activity_from_mate=True).text.say(METRIC)
    assert "of a batch-mate" in said
    assert "same batch" in cautions(SAUSAGE, activity_from_mate=True)


@pytest.mark.parametrize(
    "evidence", [SAUSAGE, MUSCLE, Evidence("fermented"), Evidence("whole-muscle", signs=("slime",))]
)
def test_every_verdict_says_what_it_is_not(evidence: Evidence):
    said = " ".join(in_words(judge(evidence).cautions))
    assert "does not approve" in said
    assert "trichinella" in said


def test_a_fermented_sausage_is_told_that_degree_hours_prove_nothing_about_salmonella():
    assert "Salmonella" in cautions(SAUSAGE)


OVER = Outcome("over", sum_ks=2.5e6, limit_ks=2.4e6)


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


def test_a_slow_sausage_with_its_hurdles_is_ready_without_acid():
    assert word(SLOW) == "ready"


@pytest.mark.parametrize(
    "gap", ["loss", "water_activity", "days_hung", "nitrite_ppm", "nitrate_ppm", "salt", "signs", "fermentation", "how"]
)
def test_a_slow_sausage_with_a_gap_in_its_evidence_is_held(gap: str):
    assert word(SLOW, **{gap: None}) == "hold"


@pytest.mark.parametrize(
    "short",
    [
        {"water_activity": 0.90},
        {"nitrite_ppm": 99.99, "nitrate_ppm": 0.0},
        {"nitrite_ppm": 50.0, "nitrate_ppm": 49.99},
        {"salt": 0.02499},
        {"fermentation": OVER},
    ],
)
def test_a_slow_sausage_short_of_one_hurdle_is_held(short):
    assert word(SLOW, **short) == "hold"


def test_acid_does_not_pass_a_slow_sausage():
    assert word(SLOW, lowest_ph=4.9, last_ph=4.9, water_activity=0.94) == "hold"


def test_a_slow_sausage_is_never_told_that_its_acid_passed():
    assert not [each for each in judge(SLOW).reasons if each.key in ("acid", "degree-hours")]


def test_at_0_85_it_need_not_be_kept_cold():
    assert "refrigerated" not in cautions(SAUSAGE, water_activity=0.85)


def test_above_0_85_it_is_kept_cold():
    assert "refrigerated" in cautions(SAUSAGE, water_activity=0.851)
    assert "refrigerator" in next_step(SAUSAGE, water_activity=0.851)


def test_a_style_it_does_not_know_is_refused():
    with pytest.raises(OutOfRange, match="fermented, slow or whole-muscle"):
        judge(Evidence("pickled"))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "just", [{"water_activity": 0.8999}, {"nitrite_ppm": 100.0, "nitrate_ppm": 0.0}, {"salt": 0.025}]
)
def test_a_slow_sausage_that_just_meets_one_hurdle_is_ready(just):
    assert word(SLOW, **just) == "ready"


@pytest.mark.parametrize(("activity", "met"), [(0.92, True), (0.9201, False)])
def test_dryness_alone_guards_against_botulism_at_0_92(activity: float, met: bool):
    assert reason(SAUSAGE, "botulism", nitrite_ppm=0, water_activity=activity).met is met


@pytest.mark.parametrize("nitrite_ppm", [None, 0.0])
def test_without_nitrite_an_unmeasured_water_activity_leaves_botulism_open(nitrite_ppm):
    assert reason(SAUSAGE, "botulism", nitrite_ppm=nitrite_ppm, water_activity=None).met is None


# A least loss by the kind of meat (common practice; no published source)


@pytest.mark.parametrize(
    ("evidence", "least"), [(SAUSAGE, 0.15), (SLOW, 0.25), (MUSCLE, 0.18)], ids=["fermented", "slow", "whole-muscle"]
)
@pytest.mark.parametrize(("off", "met"), [(0.0, True), (-0.0001, False)])
def test_a_low_target_does_not_lower_the_least_loss_of_its_kind(evidence, least, off, met):
    found = reason(evidence, "loss", target_loss=0.01, loss=least + off)
    assert (found.met, found.text.say(METRIC).count("whatever the target")) == (met, 1)
    assert LEAST_LOSS[evidence.style] == least


def test_a_target_of_one_per_cent_carries_nothing():
    assert word(SAUSAGE, target_loss=0.01, loss=0.01, last_ph=4.3, lowest_ph=4.3, water_activity=0.96) == "hold"


# Acid keeps only what is meant to sour


@pytest.mark.parametrize("acid", [{"last_ph": 5.0}, {"last_ph": 4.4}, {"lowest_ph": 4.4, "last_ph": 4.4}])
def test_the_acid_route_is_closed_to_a_whole_muscle(acid):
    assert reason(MUSCLE, "shelf-stable", water_activity=0.93, **acid).met is False
    assert reason(MUSCLE, "listeria", water_activity=0.93, **acid).met is False


def test_the_acid_route_is_closed_to_a_slow_sausage():
    assert reason(SLOW, "shelf-stable", water_activity=0.93, lowest_ph=4.4, last_ph=4.4).met is False


@pytest.mark.parametrize(("activity", "expected"), [(0.8999, "ready"), (0.90, "hold")])
def test_a_whole_muscle_of_its_own_ph_must_be_below_0_90(activity: float, expected: str):
    """Toldrá 2010, ch. 11, p. 221: dried meat of pH about 6 needs less than 0.90."""
    assert word(MUSCLE, water_activity=activity) == expected


# Whatever is known is weighed


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
