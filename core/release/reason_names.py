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
    "trichinella": "free of trichinella",
}
DOUBTS: Mapping[str, Message] = {
    "ph": "the lowest pH",
    "ph-fell": "a pH that fell again",
    "weight-rose": "a weight that rose",
    "weight-fell": "a weight that fell too fast",
    "activity-rose": "a water activity that rose",
    "activity-fell": "a water activity that fell too fast",
    "cured-twice": "cured twice",
    "salted-twice": "salted twice",
    "started-twice": "started twice",
    "decided-twice": "decided twice",
    "meat-twice": "its meat noted twice",
    "ahead": "an entry of a time to come",
    "waited": "days between the salt and the hook",
    "lowest-ph": "the lowest pH",
    "last-ph": "the last pH",
    "lowest-above-last": "a lowest pH above the last",
    "loss-too-fast": "weight lost too fast",
    "activity": "the water activity",
    "drier-sample": "a drier sample",
    "activity-for-loss": "a water activity that does not go with the loss",
    "nitrite": "nitrite",
    "nitrate": "nitrate",
    "salt": "salt",
}
AMOUNTS: Mapping[str, Message] = {
    "activity": "water activity",
    "asked": "asked for",
    "count": "conditions open",
    "cure": "cure",
    "hung": "hung",
    "lasted": "frozen for",
    "lasts": "after",
    "least": "at least",
    "limit": "limit",
    "lost": "lost",
    "lowest": "lowest",
    "made": "went in",
    "most": "at most",
    "ph": "pH",
    "salt": "salt",
    "slow": "in the middle",
    "sum": "sum",
    "target": "target",
    "warm": "warmest",
}
"""What an amount of a reason is called after the sentence that it stood in is gone."""
SUBSTANCES: Mapping[str, Message] = {
    "nitrite": "nitrite",
    "nitrate": "nitrate",
    "both": "both",
    "accelerator": "accelerator",
}
_SIGN, _CONTRADICTION, _HOUSE = "sign-", "contradiction-", "house-"


def amount_name(key: str) -> Sentence | None:
    """None for one that has no name here: it is shown bare."""
    return Sentence(AMOUNTS[key]) if key in AMOUNTS else None


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
