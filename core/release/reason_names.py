"""What each reason of a verdict is about, in a word or two: by these an old verdict is told."""

from __future__ import annotations

from collections.abc import Mapping

from core.release.evidence import SIGNS

NAMES: Mapping[str, str] = {
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
_SIGN, _CONTRADICTION, _HOUSE = "sign-", "contradiction-", "house-"


def name_of(key: str) -> str:
    """A key of a newer daybook is its own name."""
    if key.startswith(_SIGN):
        return f"a sign of spoilage: {SIGNS.get(key.removeprefix(_SIGN), key)}"
    if key.startswith(_CONTRADICTION):
        return f"evidence in doubt: {key.removeprefix(_CONTRADICTION).replace('-', ' ')}"
    if key.startswith(_HOUSE):
        return f"this kitchen's own limit: {key.removeprefix(_HOUSE)}"
    return NAMES.get(key, key)
