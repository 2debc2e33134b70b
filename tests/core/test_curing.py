"""What an entry of the cure means in its batch: rules, masses, exceptions and house rules, old entries and new."""

import pytest
from attrs import evolve

from core.daybook.batch import fold
from core.daybook.curing import charge_of, cured, known_cure, licence_of
from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import CureWeighed
from core.daybook.facts.cure import RULES, HouseRule, LicensedException
from core.daybook.house import house_limits
from core.quantities import METRIC
from core.refusals import OutOfRange
from core.release.readiness import judge
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.telling import in_words

PUMPED = CureWeighed(
    0.24, 0.0625, other_salt_kg=1.2, rules="us", product="meat", method="pump", water_kg=10.0, sugar_kg=0.4, taken=0.1
)
LEAVE = LicensedException("A trial", "letter 12", "Ana", "Food act, section 9", "nitrite", 190e-6)


def batch_with(kitchen: Kitchen, fact: CureWeighed, **start):
    batch = kitchen.begin(**start)
    kitchen.note(fact, batch)
    return fold(kitchen.book, batch)


def nitrite_reason(kitchen: Kitchen, batch_id: str):
    return next(reason for reason in verdict_of(kitchen, batch_id).reasons if reason.key == "nitrite")


def verdict_of(kitchen: Kitchen, batch_id: str):
    piece = kitchen.hang(batch_id)
    batch = fold(kitchen.book, batch_id)
    assert batch is not None
    return judge(evidence_for(batch, batch.piece(piece), NOON))


def test_an_older_entry_means_the_us_chart_for_its_kind(kitchen: Kitchen):
    cure = cured(batch_with(kitchen, CureWeighed(0.031, 0.0625)))
    assert cure is not None
    assert (cure.how.rules, cure.how.product, cure.how.method) == ("us", "meat", "comminuted")


def test_an_older_entry_of_a_whole_muscle_means_dry_cured(kitchen: Kitchen):
    cure = cured(batch_with(kitchen, CureWeighed(0.031, 0.0625), style="whole-muscle"))
    assert cure is not None
    assert cure.how.method == "dry-rub"


def test_an_entry_is_held_to_the_rules_of_its_own_day(kitchen: Kitchen):
    cure = cured(batch_with(kitchen, CureWeighed(0.031, 0.0625, rules="eu", product="not-heated", method="comminuted")))
    assert cure is not None
    assert cure.how.on == NOON.date()


def test_nitrite_follows_the_way_of_curing(kitchen: Kitchen):
    cure = known_cure(batch_with(kitchen, PUMPED))
    assert cure is not None
    assert cure.nitrite_ppm == pytest.approx(15 / 11840 * 0.1 * 1e6)


def test_salt_follows_the_way_of_curing(kitchen: Kitchen):
    cure = known_cure(batch_with(kitchen, PUMPED))
    assert cure is not None
    assert cure.salt == pytest.approx((1.2 + 0.225) / 11.84 * 0.1)


def test_a_second_cure_counts(kitchen: Kitchen):
    both = CureWeighed(0.0124, 0.0625, second_kg=0.124, second_nitrite=0.005, second_nitrate=0.0)
    cure = known_cure(batch_with(kitchen, both))
    assert cure is not None
    assert cure.nitrite_ppm == pytest.approx(112.5)


@pytest.mark.parametrize(
    "fact",
    [
        CureWeighed(0.03, 0.9),
        CureWeighed(0.03, 0.0625, rules="mars"),
        CureWeighed(0.03, 0.0625, method="boiled"),
        CureWeighed(0.0, 0.0625, rules="us", product="meat", method="pump"),
    ],
)
def test_of_an_entry_that_cannot_be_read_nothing_is_known(kitchen: Kitchen, fact: CureWeighed):
    assert known_cure(batch_with(kitchen, fact)) is None


def test_over_the_limit_without_an_exception_is_refused(kitchen: Kitchen):
    cure = cured(batch_with(kitchen, CureWeighed(0.05, 0.0625)))
    assert cure is not None
    with pytest.raises(OutOfRange):
        cure.figures()


def test_over_the_limit_is_not_met_in_the_verdict(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.note(CureWeighed(0.05, 0.0625), batch)
    assert nitrite_reason(kitchen, batch).met is False


def test_an_exception_on_record_is_met_and_named(kitchen: Kitchen):
    reason = under(kitchen, LEAVE, 0.037)
    assert reason.met is True
    assert "is over the limit for chopped meat" in reason.text.say(METRIC)
    said = reason.text.say(METRIC)
    assert "(Food act, section 9) allows 190 ppm: A trial (letter 12; decided by Ana)" in said


def under(kitchen: Kitchen, exception: LicensedException, cure_kg: float):
    batch = kitchen.begin()
    kitchen.note(exception, batch)
    kitchen.note(CureWeighed(cure_kg, 0.0625), batch)
    return nitrite_reason(kitchen, batch)


def test_made_above_the_exceptions_own_figure_it_is_held(kitchen: Kitchen):
    reason = under(kitchen, LEAVE, 0.038)
    assert reason.met is False
    assert "allows 190 ppm only" in reason.text.say(METRIC)


def test_an_older_exception_without_a_figure_is_not_met_and_asks_for_it(kitchen: Kitchen):
    reason = under(kitchen, LicensedException("A trial", "letter 12", "Ana"), 0.037)
    assert reason.met is False
    assert "enter its rule and figure" in reason.text.say(METRIC)


def test_an_exception_for_something_else_lifts_nothing(kitchen: Kitchen):
    assert under(kitchen, evolve(LEAVE, substance="nitrate"), 0.037).met is False


def test_above_the_ceiling_no_exception_is_met(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.note(evolve(LEAVE, most=9000e-6), batch)
    kitchen.note(CureWeighed(1.0, 0.0625), batch)
    verdict = verdict_of(kitchen, batch)
    assert "ceiling" in [reason.key for reason in verdict.unmet]


@pytest.mark.parametrize(
    ("exception", "cure_kg", "over"),
    [
        (LEAVE, 0.037, True),
        (LEAVE, 0.031, False),
        (LEAVE, 0.038, False),
        (None, 0.037, False),
        (None, 0.031, False),
        (evolve(LEAVE, substance="nitrate"), 0.037, False),
    ],
)
def test_it_is_over_by_an_exception_where_it_passes_a_limit_and_one_lets_it(
    kitchen: Kitchen, exception: LicensedException | None, cure_kg: float, over: bool
):
    batch = kitchen.begin()
    if exception is not None:
        kitchen.note(exception, batch)
    kitchen.note(CureWeighed(cure_kg, 0.0625), batch)
    found = cured(kitchen.batch(batch))
    assert found is not None
    assert found.over_by_licence is over


def test_of_several_exceptions_the_latest_counts(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.note(evolve(LEAVE, decided_by="Bea"), batch)
    kitchen.note(LEAVE, batch, at=1)
    found = licence_of(kitchen.batch(batch))
    assert found is not None
    assert found.decided_by == "Ana"


def test_what_an_entry_does_not_name_is_none_of_it():
    charge = charge_of(CureWeighed(0.031, 0.0625), 12.4)
    assert (charge.water_kg, charge.sugar_kg, charge.other_kg, charge.accelerator_kg) == (0.0, 0.0, 0.0, 0.0)


def test_where_an_exception_lets_it_pass_a_caution_says_which_and_who(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.note(LEAVE, batch)
    kitchen.note(CureWeighed(0.037, 0.0625), batch)
    assert in_words(verdict_of(kitchen, batch).cautions)[0] == (
        "Over the limit of 9 CFR 424.21(c), 156.25 ppm. It passes only by an exception on record, Food act, section 9, "
        "up to 190 ppm: A trial (letter 12; decided by Ana). Nothing here makes that safe."
    )


def test_within_the_limit_no_caution_speaks_of_the_exception(kitchen: Kitchen):
    batch = kitchen.begin()
    kitchen.note(LEAVE, batch)
    kitchen.cure(batch)
    assert not [said for said in in_words(verdict_of(kitchen, batch).cautions) if "exception" in said]


def test_the_verdict_goes_by_the_rules_of_the_entry(kitchen: Kitchen):
    batch = kitchen.begin(style="fermented")
    kitchen.note(CureWeighed(0.031, 0.0625, rules="eu", product="not-heated", method="comminuted"), batch)
    reason = nitrite_reason(kitchen, batch)
    assert (reason.met, "counted as ion" in reason.text.text) == (False, True)


def test_the_latest_house_rule_of_a_set_holds(kitchen: Kitchen):
    kitchen.note(HouseRule("us", 120e-6), RULES)
    kitchen.note(HouseRule("us", 100e-6), RULES, at=1)
    kitchen.note(HouseRule("eu", 60e-6), RULES, at=2)
    assert [(each.rules, each.nitrite_ppm) for each in house_limits(kitchen.book)] == [
        ("us", pytest.approx(100.0)),
        ("eu", pytest.approx(60.0)),
    ]


def test_a_house_rule_holds_from_its_own_moment(kitchen: Kitchen):
    kitchen.note(HouseRule("us", 120e-6), RULES, at=2)
    assert len(house_limits(kitchen.book, NOON + 2 * DAY)) == 1


def test_a_house_rule_does_not_reach_back(kitchen: Kitchen):
    kitchen.note(HouseRule("us", 120e-6), RULES, at=2)
    assert house_limits(kitchen.book, NOON) == ()


@pytest.mark.parametrize("brine", [{}, {"water_kg": 10.0}, {"taken": 0.1}, {"water_kg": 10.0, "taken": 0.001}])
def test_a_pump_without_its_water_or_its_share_is_not_known_rather_than_none(brine: dict[str, float]):
    kitchen = Kitchen()
    batch = kitchen.begin(style="whole-muscle")
    kitchen.note(CureWeighed(0.4, 0.0625, rules="us", product="meat", method="pump", **brine), batch)
    assert known_cure(kitchen.batch(batch)) is None
