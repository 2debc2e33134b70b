"""What keeps it: acid, dryness, nitrite and cold, each by the rule that prints its limits."""

import pytest
from attrs import evolve

from core.refusals import OutOfRange
from core.release.hurdles import rests_on_equality, shelf_stable, too_dry_for_listeria
from core.release.readiness import Evidence, judge
from core.sources import EU_LISTERIA, FSRE_STABILITY
from tests.core.judging import MUSCLE, OVER, SAUSAGE, SLOW, cautions, next_step, reason, unmet, word


def test_without_nitrite_dryness_alone_guards_against_botulism():
    assert word(SAUSAGE, nitrite_ppm=0) == "ready"


def test_with_little_nitrite_and_much_water_it_is_held():
    assert unmet(SAUSAGE, nitrite_ppm=49.99, last_ph=4.3, lowest_ph=4.3, water_activity=0.93) == ["botulism"]


def test_fifty_ppm_guards_against_botulism():
    assert word(SAUSAGE, nitrite_ppm=50, last_ph=4.3, lowest_ph=4.3, water_activity=0.93) == "ready"


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
