"""Laws of the verdict: it never improves by knowing less, nor by a sign of spoilage."""

from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

from core.ferment.outcome import PASSED, Deviation, Outcome
from core.release.readiness import SIGNS, Evidence, judge

RANK = {"discard": 0, "hold": 1, "ready": 2}
MEASURED = (
    *("loss", "target_loss", "lowest_ph", "last_ph", "water_activity", "days_hung", "nitrite_ppm"),
    *("fermentation", "cure_ppm", "salt"),
)
WORDS = ["passed", "over", "running", "not shown", "unknown"]

signs = st.lists(st.sampled_from(sorted(SIGNS)), max_size=2).map(tuple)
ph = st.one_of(st.none(), st.sampled_from([4.4, 5.0, 5.2, 5.3]), st.floats(4.2, 5.9))
outcomes = st.builds(
    Outcome,
    word=st.sampled_from(WORDS),
    deviation=st.none() | st.builds(Deviation, kept=st.booleans(), result=st.sampled_from(["clean", "not-tested"])),
)
evidence = st.builds(
    Evidence,
    style=st.sampled_from(["fermented", "slow", "whole-muscle"]),
    loss=st.none() | st.floats(-0.1, 0.8),
    target_loss=st.none() | st.floats(0.2, 0.4),
    lowest_ph=ph,
    last_ph=ph,
    water_activity=st.none() | st.sampled_from([0.85, 0.91, 0.92, 0.94, 0.95]) | st.floats(0.8, 0.99),
    activity_from_mate=st.booleans(),
    days_hung=st.none() | st.floats(0, 100),
    least_days=st.none() | st.floats(0, 60),
    nitrite_ppm=st.none() | st.sampled_from([0.0, 50.0, 156.25, 625.0]) | st.floats(0, 700),
    signs=st.none() | signs,
    fermentation=st.none() | outcomes,
    cure_ppm=st.none() | st.floats(0, 300),
    salt=st.none() | st.floats(0.01, 0.04),
)
good = st.builds(
    Evidence,
    style=st.sampled_from(["fermented", "slow", "whole-muscle"]),
    loss=st.floats(0.35, 0.5),
    target_loss=st.just(0.35),
    lowest_ph=st.floats(4.2, 5.3),
    last_ph=st.floats(4.2, 5.9),
    water_activity=st.floats(0.8, 0.97),
    days_hung=st.just(30.0),
    least_days=st.none() | st.just(20.0),
    nitrite_ppm=st.floats(0, 156),
    signs=st.just(()),
    fermentation=st.just(PASSED),
    cure_ppm=st.just(150.0),
    salt=st.just(0.028),
)


def rank(known: Evidence) -> int:
    return RANK[judge(known).word]


@given(evidence | good, st.sampled_from(MEASURED))
def test_taking_away_a_measurement_never_improves_the_verdict(known, gone):
    outcome = known.fermentation
    if gone == "fermentation" and outcome is not None and outcome.deviation is not None and outcome.deviation.condemns:
        return  # a decision to throw it away is no measurement
    assert rank(evolve(known, **{gone: None})) <= rank(known)


@given(evidence | good)
def test_a_fermentation_that_did_not_pass_is_never_ready_unless_it_was_cleared(known):
    outcome = known.fermentation
    cleared = outcome is not None and outcome.deviation is not None and outcome.deviation.clears
    if known.style != "whole-muscle" and (outcome is None or (outcome.word != "passed" and not cleared)):
        assert judge(known).word != "ready"


@given(evidence | good)
def test_nobody_having_looked_is_never_ready(known):
    assert judge(evolve(known, signs=None)).word != "ready"


@given(evidence | good, st.sampled_from(sorted(SIGNS)))
def test_a_sign_of_spoilage_never_improves_the_verdict(known, sign):
    assert rank(evolve(known, signs=(*(known.signs or ()), sign))) == 0


@given(evidence | good)
def test_ready_means_that_every_reason_is_met(known):
    verdict = judge(known)
    assert (verdict.word == "ready") == all(reason.met is True for reason in verdict.reasons)


@given(evidence | good, st.floats(0, 0.1))
def test_more_water_never_improves_the_verdict(known, more):
    if known.water_activity is not None:
        assert rank(evolve(known, water_activity=known.water_activity + more)) <= rank(known)


@given(good)
def test_ready_keeps_both_published_rules(known):
    if judge(known).word == "ready":
        activity, ph = known.water_activity, known.last_ph
        assert activity < 0.91 or ph < 5.0 or (ph < 5.2 and activity < 0.95)
        assert activity <= 0.92 or ph <= 4.4 or (ph <= 5.0 and activity <= 0.94)
