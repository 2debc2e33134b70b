"""What the pages of the instruments call a kind, a check and its outcome, where none stands within a sentence."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from attrs import frozen

from core.chamber.checks import Word
from core.daybook.facts.instruments import (
    BoilingPointChecked,
    BuffersChecked,
    IcePointChecked,
    InstrumentKind,
    MassesChecked,
    SaltChecked,
    TwoSaltsChecked,
)
from core.daybook.instruments import Checked
from core.sentence import Message

KIND_TITLES: Mapping[InstrumentKind, Message] = {
    "thermometer": "Thermometer",
    "hygrometer": "Hygrometer",
    "ph-meter": "pH meter",
    "scale": "Scale",
}
CHECK_TITLES: Mapping[type[Any], Message] = {
    IcePointChecked: "Ice check",
    BoilingPointChecked: "Boiling check",
    SaltChecked: "Salt check",
    TwoSaltsChecked: "Two-salt check",
    BuffersChecked: "Buffer check",
    MassesChecked: "Weight check",
}
ONE_LINE: Mapping[type[Any], Message] = {
    IcePointChecked: "With the one in boiling water it gives one line.",
    BoilingPointChecked: "With the one in ice it gives one line.",
}
OUTCOMES: Mapping[Word, Message] = {"accept": "accept", "adjust": "adjust", "clean": "clean", "replace": "replace"}


@frozen
class ShownCheck:
    """A check under its title; with_mate: that it rests on another of the same day too, or ""."""

    made: Checked
    title: Message
    outcome: Message
    with_mate: Message


def shown(made: Checked) -> ShownCheck:
    kind = type(made.line.fact)
    with_mate = ONE_LINE[kind] if made.by != made.name else ""
    return ShownCheck(made, CHECK_TITLES[kind], OUTCOMES[made.check.word], with_mate)
