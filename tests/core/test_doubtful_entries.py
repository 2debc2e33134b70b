"""What the entries themselves leave in doubt: noted twice, for a time to come, out of the cold too long, over the
kitchen's own limit. Each holds a piece that was ready, until somebody clears it up."""

import pytest

from core.daybook.evidence import evidence_for
from core.daybook.facts import Fact
from core.daybook.facts.batch import CureWeighed, PieceInspected
from core.daybook.facts.cure import HouseRule, LicensedException
from core.daybook.facts.ferment import DeviationDecided, FermentationBegun
from core.daybook.facts.salting import SaltingBegun, SaltingEnded
from core.release.contradictions import NOTED, contradictions
from core.release.evidence import Evidence
from core.release.readiness import Verdict, judge
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.sound_batches import SOUND, Sound


def judged(sound: Sound, now: float = 61.0) -> Verdict:
    folded = sound.kitchen.batch(sound.batch)
    return judge(evidence_for(folded, folded.piece(sound.piece), NOON + now * DAY))


@pytest.fixture(params=SOUND)
def sound(request: pytest.FixtureRequest) -> Sound:
    made = SOUND[request.param](Kitchen())
    assert judged(made).word == "ready"
    return made


@pytest.fixture
def sausage() -> Sound:
    return SOUND["fermented"](Kitchen())


@pytest.fixture
def muscle() -> Sound:
    return SOUND["whole-muscle"](Kitchen())


def doubted(sound: Sound, key: str, now: float = 61.0) -> bool:
    found = judged(sound, now)
    return found.word == "hold" and f"contradiction-{key}" in [each.key for each in found.missing]


def noted_twice(sound: Sound, fact: Fact) -> None:
    for at in (0.2, 0.4):
        sound.kitchen.note(fact, sound.batch, at)


def test_a_cure_noted_twice_holds_every_style_until_one_is_taken_back(sound: Sound):
    again = sound.kitchen.note(CureWeighed(0.015, 0.0625, 0.0, 0.36, "us", "meat", sound.method), sound.batch, 0.3)
    assert doubted(sound, "cured-twice")
    sound.kitchen.take_back(again)
    assert judged(sound).word == "ready"


def test_a_piece_salted_twice_is_held(muscle: Sound):
    muscle.kitchen.note(SaltingBegun("weighed", "slab", 0.05, 3.0), muscle.batch, 0.5)
    assert doubted(muscle, "salted-twice")


def test_a_fermentation_begun_twice_is_held(sausage: Sound):
    noted_twice(sausage, FermentationBegun("us", 24.0))
    assert doubted(sausage, "started-twice")


def test_two_decisions_are_held(sausage: Sound):
    noted_twice(sausage, DeviationDecided("keep", "Ana", "clean", "no toxin found"))
    assert doubted(sausage, "decided-twice")


@pytest.mark.parametrize(("minutes", "held"), [(59, False), (60, False), (61, True), (60 * 24 * 40, True)])
def test_what_is_noted_for_a_time_to_come_holds_it(sound: Sound, minutes: float, held: bool):
    sound.kitchen.note(PieceInspected(), sound.piece, 61 + minutes / 1440)
    assert doubted(sound, "ahead") is held


def test_a_reading_of_the_batch_for_a_time_to_come_holds_it(sound: Sound):
    sound.kitchen.read(sound.batch, None, 80.0, 12.0)
    assert doubted(sound, "ahead")
    assert not doubted(sound, "ahead", now=80.0)


@pytest.mark.parametrize(("hours", "held"), [(0.0, False), (24.0, False), (24.1, True), (480.0, True)])
def test_out_of_the_cold_for_more_than_a_day_before_it_is_hung(hours: float, held: bool):
    made = SOUND["whole-muscle"](Kitchen(), hung=22.0 + hours / 24)
    assert doubted(made, "waited") is held
    assert (judged(made).word == "ready") is not held


def test_a_piece_hung_before_it_was_noted_out_of_the_salt_did_not_wait(muscle: Sound):
    out = next(line.id for line in muscle.kitchen.batch(muscle.batch).lines if isinstance(line.fact, SaltingEnded))
    muscle.kitchen.note(SaltingEnded("", None, 2.5, 4.0), muscle.batch, 30.0, corrects=out)
    assert not doubted(muscle, "waited")


@pytest.mark.parametrize("key", NOTED)
def test_each_says_what_is_in_doubt_and_what_settles_it(key: str):
    (reason,) = contradictions(Evidence("slow", contradictions=(key,)))
    text, settle = NOTED[key]
    assert (reason.text.text, reason.settle, reason.met) == (text, settle, None)
    assert text.endswith(".")
    assert settle.text.endswith(".")


# The kitchen's own limits


def limited(nitrite_ppm: float, at: float = -1.0) -> Sound:
    kitchen = Kitchen()
    kitchen.note(HouseRule("us", nitrite_ppm * 1e-6), at=at)
    return SOUND["fermented"](kitchen)


@pytest.mark.parametrize(("house_ppm", "word"), [(156.25, "ready"), (156.0, "hold"), (60.0, "hold")])
def test_over_the_kitchens_own_limit_it_is_held_and_not_thrown_away(house_ppm: float, word: str):
    found = judged(limited(house_ppm))
    assert found.word == word
    over = [each for each in found.missing if each.key == "house-nitrite"]
    assert bool(over) is (word == "hold")
    for each in over:
        assert each.text.values["made"].value == pytest.approx(156.25e-6)
        assert each.text.values["most"].value == pytest.approx(house_ppm * 1e-6)


def test_a_limit_set_after_it_was_cured_does_not_reach_back():
    assert judged(limited(60.0, at=5.0)).word == "ready"


def test_over_the_law_as_well_it_is_told_of_both():
    made = limited(60.0)
    weighed = made.kitchen.batch(made.batch).cure_line_id
    made.kitchen.note(CureWeighed(0.04, 0.0625, 0.0, 0.36, "us", "meat", "comminuted"), made.batch, corrects=weighed)
    over = {each.key: each.met for each in judged(made).reasons if not each.met}
    assert over == {"nitrite": False, "house-nitrite": None}


def test_an_exception_that_names_the_limit_lifts_the_kitchens_too():
    made = limited(100.0)
    exception = LicensedException("as ever", "the county", "Ana", "rule of the house", "nitrite", 156.25e-6)
    made.kitchen.note(exception, made.batch, 0.5)
    assert judged(made).word == "ready"
