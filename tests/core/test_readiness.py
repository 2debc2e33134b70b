"""When a piece is ready: all evidence is there, none speaks against it, and what is unknown is held."""

import pytest

from core.mix.ingoing import Ingoing
from core.mix.rules import Curing
from core.quantities import METRIC
from core.release.readiness import LEAST_LOSS, SIGNS, Evidence, judge
from tests.core.judging import MUSCLE, SAUSAGE, SLOW, cautions, changed, next_step, reason, unmet, word
from tests.core.telling import in_words


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
