"""The rules that a single sum of the cure may be held to, by the name they are chosen by."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from core.mix.rule import Method
from core.mix.rules import Curing
from core.sentence import Message

BEFORE_2025 = date(2025, 10, 8)
LAWS = {
    "us": ("us", "meat"),
    "us-bacon": ("us", "bacon"),
    "us-bacon-rind": ("us", "bacon-rind"),
    "us-home": ("us", "home-mix"),
    "eu": ("eu", "not-heated"),
    "eu-old": ("eu", "not-heated"),
    "ca": ("ca", "meat"),
    "ca-bacon": ("ca", "bacon"),
}
LAW_NAMES: Mapping[str, Message] = {
    "us": "United States, cured meat",
    "us-bacon": "United States, bacon without its skin",
    "us-bacon-rind": "United States, bacon in its skin",
    "us-home": "United States, home-curing mix",
    "eu": "European Union, meat not heat-treated",
    "eu-old": "European Union until 9 October 2025",
    "ca": "Canada, cured meat",
    "ca-bacon": "Canada, side bacon",
}


def curing(law: str, method: Method) -> Curing:
    rules, product = LAWS[law]
    return Curing(rules, product, method, on=BEFORE_2025 if law == "eu-old" else None)
