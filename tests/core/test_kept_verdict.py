"""A verdict as it is kept: keys and values, told again in any units, whatever the rules say by then."""

import pytest
from attrs import evolve

from core.daybook.evidence import evidence_for
from core.daybook.facts.kept import KeptAmount, KeptReason
from core.daybook.kept_verdict import keep_reasons, told
from core.daybook.kept_words import QUANTITIES
from core.quantities import METRIC, US
from core.release.contradictions import NOTED, SERIES
from core.release.evidence import SIGNS, Evidence
from core.release.readiness import judge
from core.release.reason_names import AMOUNTS, NAMES, name_of
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.sound_batches import SOUND

BARE = [Evidence(style=style) for style in ("fermented", "slow", "whole-muscle")]  # type: ignore[arg-type]


def evidence(style: str) -> Evidence:
    sound = SOUND[style](Kitchen())
    folded = sound.kitchen.batch(sound.batch)
    return evidence_for(folded, folded.piece(sound.piece), NOON + 61 * DAY)


@pytest.fixture(params=SOUND)
def sound(request: pytest.FixtureRequest) -> Evidence:
    return evidence(request.param)


def test_every_reason_is_kept_with_whether_it_was_met(sound: Evidence):
    verdict = judge(sound)
    assert [(each.key, each.met) for each in keep_reasons(verdict)] == [
        (each.key, each.met) for each in verdict.reasons
    ]


def test_every_amount_that_was_said_is_kept_and_can_be_told(sound: Evidence):
    for verdict in (judge(sound), *(judge(each) for each in BARE)):
        for reason, again in zip(verdict.reasons, told(keep_reasons(verdict)), strict=True):
            assert dict(again.amounts) == reason.text.amounts
            assert all(each.show_exact(US, 6) in reason.text.say(US) for _, each in again.amounts)


def test_every_amount_has_a_name(sound: Evidence):
    for verdict in (judge(sound), *(judge(each) for each in BARE)):
        assert {name for reason in verdict.reasons for name in reason.text.amounts} <= set(AMOUNTS)


def test_every_reason_has_a_name(sound: Evidence):
    for verdict in (judge(sound), *(judge(each) for each in BARE)):
        assert {each.key for each in verdict.reasons} <= set(NAMES)


@pytest.mark.parametrize(
    ("key", "name"),
    [
        ("acid", "acid in time"),
        ("sign-slime", f"a sign of spoilage: {SIGNS['slime']}"),
        ("sign-of-a-newer", "a sign of spoilage: sign-of-a-newer"),
        ("contradiction-weight-rose", "evidence in doubt: a weight that rose"),
        ("house-nitrite", "this kitchen's own limit: nitrite"),
        ("of-a-newer", "of-a-newer"),
    ],
)
def test_a_reason_is_named(key: str, name: str):
    assert name_of(key).say(METRIC) == name


@pytest.mark.parametrize("key", [*SERIES, *NOTED])
def test_every_doubt_is_kept_by_its_key(key: str):
    kept = keep_reasons(judge(evolve(evidence("fermented"), contradictions=(key,))))
    assert KeptReason(f"contradiction-{key}", None) in kept


def test_an_amount_of_a_newer_daybook_is_passed_over():
    kept = KeptReason("loss", True, (KeptAmount("a", 1.0, "ripeness"), KeptAmount("b", 0.3, "loss")))
    assert [name for name, _ in told((kept,))[0].amounts] == ["b"]


def test_a_kept_quantity_is_found_by_its_own_key():
    assert all(each.key == key for key, each in QUANTITIES.items())
