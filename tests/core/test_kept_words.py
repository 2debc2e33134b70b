"""What an entry keeps of a sentence is its key and its values: said again in any units, and never guessed."""

from datetime import date

import pytest

from core.chamber.logs.notes import KEYS as NOTE_KEYS
from core.chamber.logs.notes import NOTES
from core.chamber.settling.measures import LASTS
from core.chamber.settling.proof_words import REASONS
from core.daybook.facts.kept import KeptAmount, KeptDay, KeptName, KeptSentence, KeptWord
from core.daybook.kept_words import FROM_A_NEWER_DAYBOOK, KEYS, SAID, keep, said
from core.quantities import METRIC, PH, US, Amount
from core.sentence import Sentence


def test_no_two_keys_say_the_same():
    assert len(KEYS) == len(SAID)


def test_a_kept_sentence_reads_in_both_unit_systems():
    kept = KeptSentence("advice-fan", (KeptAmount("apart", 1.8, "temperature_difference"),))
    shown = [said(kept).say(reader, 2).rpartition(" are ")[2] for reader in (METRIC, US)]
    assert shown == ["1.8 K apart.", "3.2 °F apart."]


@pytest.mark.parametrize(
    "kept",
    [
        KeptSentence("advice-fan"),
        KeptSentence("advice-fan", (KeptAmount("apart", 1.8, "quantity-to-come"),)),
        KeptSentence("advice-to-come", (KeptAmount("apart", 1.8, "temperature_difference"),)),
        KeptSentence(
            "corrected-temperature-right",
            (KeptName("probe", "low"), KeptWord("check", "check-to-come"), KeptDay("at", date(2026, 11, 3))),
        ),
    ],
)
def test_what_a_newer_daybook_kept_is_told_as_such(kept: KeptSentence):
    assert said(kept) == FROM_A_NEWER_DAYBOOK


def test_a_sentence_is_kept_by_its_key_and_only_what_it_tells():
    values = {"probe": "low {x}", "hole": Amount(60.0, LASTS), "window": Amount(3600.0, LASTS), "more": Amount(1, PH)}
    kept = keep(Sentence(REASONS["hole"], values | {"most": Amount(600.0, LASTS)}), None)
    assert (kept.key, [each.name for each in kept.values], kept.met) == (
        "reason-hole", ["probe", "hole", "window", "most"], None
    )  # fmt: skip
    assert said(kept).say(METRIC, 3).startswith("“low {x}” was at most 1 min without")


def test_no_two_notes_of_a_layout_say_the_same():
    assert len(NOTE_KEYS) == len(NOTES)


def test_a_sentence_without_a_key_is_not_kept():
    with pytest.raises(KeyError):
        keep(Sentence("Made in place."))
