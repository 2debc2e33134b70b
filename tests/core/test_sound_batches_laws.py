"""Laws of a whole journal: entries of a batch that was ready are taken away or joined by one that speaks against it."""

from collections import Counter
from collections.abc import Callable, Mapping
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import CureWeighed, PieceInspected, PieceWeighed, Reading
from core.daybook.facts.ferment import DeviationDecided
from core.daybook.facts.salting import SaltingBegun, SaltingEnded
from core.release.readiness import judge
from core.verdict import Reason
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.sound_batches import SOUND, Sound

ENDS = 61.0
law = settings(max_examples=80, deadline=None)


def word(sound: Sound) -> str:
    folded = sound.kitchen.batch(sound.batch)
    return judge(evidence_for(folded, folded.piece(sound.piece), NOON + ENDS * DAY)).word


def facts(sound: Sound) -> list[Any]:
    folded = sound.kitchen.batch(sound.batch)
    return [line.fact for line in folded.lines]


def with_more_than_is_asked(sound: Sound) -> Sound:
    """Entries that may go: or only the whole journal would be ready."""
    kitchen = sound.kitchen
    for at, mass_kg in ((40.0, 0.75), (50.0, 0.65)):
        kitchen.weigh(sound.piece, mass_kg, at)
    for at in (30.0, 60.5):
        kitchen.note(PieceInspected(), sound.piece, at)
    for at in (35.0, 45.0):
        kitchen.read(sound.batch, None, at, 12.0)
    return sound


ASKED: Mapping[str, Callable[[list[Any]], bool]] = {
    "fermented": lambda left: (
        sum(isinstance(each, Reading) and each.ph is not None and each.ph <= 5.3 for each in left) >= 1
    ),
    "slow": lambda left: sum(isinstance(each, Reading) for each in left) >= 3,
    "whole-muscle": lambda left: {SaltingBegun, SaltingEnded} <= {type(each) for each in left},
}


@pytest.mark.parametrize("style", SOUND)
def test_a_journal_is_ready_only_while_every_kind_of_evidence_is_in_it(style: str):
    words: Counter[str] = Counter()

    @law
    @given(st.data())
    def holds_for(data: st.DataObject) -> None:
        sound = with_more_than_is_asked(SOUND[style](Kitchen()))
        records = sound.kitchen.records
        free = [at for at, record in enumerate(records) if record["kind"] not in ("batch-started", "piece-hung")]
        spare = data.draw(st.booleans())
        gone = data.draw(st.sets(st.sampled_from(free[-6:] if spare else free), min_size=1, max_size=3))
        sound.kitchen.records = [record for at, record in enumerate(records) if at not in gone]
        left = facts(sound)
        found = word(sound)
        words[found] += 1
        assert found in ("ready", "hold")
        if found == "ready":
            assert {CureWeighed, PieceWeighed, PieceInspected} <= {type(each) for each in left}
            assert ASKED[style](left)

    holds_for()
    assert min(words["ready"], words["hold"]) >= 5


AGAINST: Mapping[str, Callable[[Sound, float], object]] = {
    "a sign": lambda sound, at: sound.kitchen.note(PieceInspected(("slime",)), sound.piece, at),
    "another cure": lambda sound, at: sound.kitchen.note(
        CureWeighed(0.01, 0.0625, 0.0, 0.36, "us", "meat", sound.method), sound.batch, at
    ),
    "a decision": lambda sound, at: sound.kitchen.note(
        DeviationDecided("discard", "Ana", "not-tested"), sound.batch, at
    ),
    "a pH of no meat": lambda sound, at: sound.kitchen.read(sound.batch, 8.1, at),
    "a weight that rose": lambda sound, at: sound.kitchen.weigh(sound.piece, 1.2, min(max(at, 23.0), 59.0)),
    "a time to come": lambda sound, at: sound.kitchen.read(sound.batch, None, ENDS + at, 12.0),
}


@pytest.mark.parametrize("style", SOUND)
@pytest.mark.parametrize("what", AGAINST)
@settings(max_examples=12, deadline=None)
@given(data=st.data(), at=st.floats(0.1, 60.9))
def test_nothing_that_speaks_against_it_is_outweighed(style: str, what: str, data: st.DataObject, at: float):
    sound = SOUND[style](Kitchen())
    assert word(sound) == "ready"
    AGAINST[what](sound, at)
    data.draw(st.randoms(use_true_random=False)).shuffle(sound.kitchen.records)
    assert word(sound) != "ready"


@pytest.mark.parametrize("style", SOUND)
@given(chance=st.randoms(use_true_random=False))
@settings(max_examples=12, deadline=None)
def test_the_order_in_which_entries_came_changes_no_reason(style: str, chance: Any):
    sound = SOUND[style](Kitchen())
    told = reasons(sound)
    chance.shuffle(sound.kitchen.records)
    assert reasons(sound) == told


def reasons(sound: Sound) -> tuple[Reason, ...]:
    folded = sound.kitchen.batch(sound.batch)
    return judge(evidence_for(folded, folded.piece(sound.piece), NOON + ENDS * DAY)).reasons
