"""The word and the next step are read off the reasons: a fatal one before all others, a missing one in its turn."""

import pytest

from core.quantities import METRIC
from core.sentence import Sentence
from core.sources import DEFINITION
from core.verdict import Reason, Verdict


def reason(key: str, met: bool | None, fatal: bool = False) -> Reason:
    return Reason(key, Sentence(f"{key}."), met, DEFINITION, Sentence(f"See to {key}."), fatal)


WEIGHT, ACID = reason("weight", False), reason("acid", None)
SOUND, SLIMY, UNSEEN = (reason("signs", met, fatal=True) for met in (True, False, None))
DRY = reason("dry", True)


@pytest.mark.parametrize(
    ("reasons", "word", "next_step"),
    [
        ((DRY, SOUND), "ready", "Eat it."),
        ((), "hold", "Eat it."),
        ((DRY, WEIGHT, ACID), "hold", "See to weight."),
        ((DRY, ACID, WEIGHT), "hold", "See to acid."),
        ((WEIGHT, UNSEEN), "hold", "See to weight."),
        ((UNSEEN, WEIGHT), "hold", "See to signs."),
        ((WEIGHT, SOUND), "hold", "See to weight."),
        ((WEIGHT, ACID, SLIMY), "discard", "See to signs."),
        ((DRY, SLIMY), "discard", "See to signs."),
    ],
)
def test_word_and_next_step_follow_from_the_reasons(reasons: tuple[Reason, ...], word: str, next_step: str):
    verdict = Verdict(reasons, Sentence("Eat it."))
    assert (verdict.word, verdict.next_step.say(METRIC)) == (word, next_step)


def test_what_is_unmet_and_what_of_it_is_missing():
    verdict = Verdict((DRY, WEIGHT, ACID, UNSEEN), Sentence("Eat it."))
    assert verdict.unmet == (WEIGHT, ACID, UNSEEN)
    assert verdict.missing == (ACID, UNSEEN)
