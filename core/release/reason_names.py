"""What each reason of a verdict is about, in a word or two: by these an old verdict is told."""

from __future__ import annotations

from collections.abc import Mapping

from core.release.evidence import SIGNS
from core.sentence import Message, Sentence, Value

NAMES: Mapping[str, Message] = {
    "signs": "signs of spoilage",
    "nitrite": "nitrite going in",
    "nitrate": "nitrate going in",
    "both": "nitrite and nitrate going in",
    "accelerator": "ascorbate or erythorbate going in",
    "rules": "whose rules it was cured by",
    "ceiling": "the most that no exception moves",
    "acid": "acid in time",
    "degree-hours": "degree-hours",
    "warm-days": "its warm days",
    "slow-salt": "its salt",
    "slow-cure": "its cure",
    "slow-dry": "dry enough without acid",
    "salted-through": "salt in the middle",
    "salted-cold": "cold while it was salted",
    "salt": "its salt",
    "taken-up": "salt taken up",
    "loss": "weight lost",
    "days": "time hung",
    "shelf-stable": "keeps without cold",
    "listeria": "no growth of Listeria",
    "botulism": "guarded against botulism",
}
DOUBTS: Mapping[str, Message] = {
    "ph": "ph",
    "ph-fell": "ph fell",
    "weight-rose": "weight rose",
    "weight-fell": "weight fell",
    "activity-rose": "activity rose",
    "activity-fell": "activity fell",
    "cured-twice": "cured twice",
    "salted-twice": "salted twice",
    "started-twice": "started twice",
    "decided-twice": "decided twice",
    "ahead": "ahead",
    "waited": "waited",
    "lowest-ph": "lowest ph",
    "last-ph": "last ph",
    "lowest-above-last": "lowest above last",
    "loss-too-fast": "loss too fast",
    "activity": "activity",
    "drier-sample": "drier sample",
    "activity-for-loss": "activity for loss",
    "nitrite": "nitrite",
    "nitrate": "nitrate",
    "salt": "salt",
}
SUBSTANCES: Mapping[str, Message] = {
    "nitrite": "nitrite",
    "nitrate": "nitrate",
    "both": "both",
    "accelerator": "accelerator",
}
_SIGN, _CONTRADICTION, _HOUSE = "sign-", "contradiction-", "house-"


def name_of(key: str) -> Sentence:
    """A key of a newer daybook is its own name."""
    if key.startswith(_SIGN):
        return Sentence("a sign of spoilage: {sign}", {"sign": _known(SIGNS, key.removeprefix(_SIGN), key)})
    if key.startswith(_CONTRADICTION):
        doubt = key.removeprefix(_CONTRADICTION)
        return Sentence("evidence in doubt: {doubt}", {"doubt": _known(DOUBTS, doubt, doubt.replace("-", " "))})
    if key.startswith(_HOUSE):
        substance = key.removeprefix(_HOUSE)
        return Sentence(
            "this kitchen's own limit: {substance}", {"substance": _known(SUBSTANCES, substance, substance)}
        )
    return Sentence("{key}", {"key": _known(NAMES, key, key)})


def _known(names: Mapping[str, Message], key: str, otherwise: str) -> Value:
    return Sentence(names[key]) if key in names else otherwise
