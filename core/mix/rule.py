"""One row of a law: what may go into which meat, cured how, and what may be left. The rows are in `rules_*.py`."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Literal

from attrs import frozen

from core.mix.ions import Counted, Substance
from core.sentence import Message, Said
from core.sources import Source

Method = Literal["comminuted", "dry-rub", "dry-salting", "immersion", "pick-up", "pump"]
METHODS: Mapping[Method, Message] = {
    "comminuted": "ground or chopped meat: sausage",
    "dry-rub": "rubbed on a whole piece: dry cured",
    "dry-salting": "dry salting in excess, by time",
    "immersion": "in brine until it is alike throughout",
    "pick-up": "in brine, by the brine taken up",
    "pump": "pumped with brine",
}
EVERY: tuple[Method, ...] = tuple(METHODS)
DRY: tuple[Method, ...] = ("dry-rub", "dry-salting")
WET: tuple[Method, ...] = ("immersion", "pick-up", "pump")
WHOLE = DRY + WET
PART_IN: tuple[Method, ...] = ("pick-up", "pump")
"""Methods that count a share of the brine: the pump or the pick-up."""

Limited = Literal["nitrite", "nitrate", "both", "accelerator"]
Base = Literal["meat", "mixture"]
"""What the ppm are divided by: the green weight of the meat, or all of the raw mixture with what was added."""
WHOLES: Mapping[Base, Message] = {"meat": "on the green weight", "mixture": "on the whole raw mixture"}


@frozen
class Rule:
    """Parts per million, mg/kg, unless `printed` says how the text has it.

    what: the meat in the words of a sentence. most_ppm: going in; 0 where none may be added, None where the row sets no
    such limit. left_ppm: what may be left in the product; left_is says whether more is forbidden or to be looked into.
    least_ppm: less does not count as cured. as_of: the edition of the text that was read. since, until: first day in
    force, and first day no longer.
    """

    product: str
    what: Message
    methods: tuple[Method, ...]
    substance: Limited
    counted: Counted
    most_ppm: float | None
    cite: str
    source: Source
    as_of: Message
    on: Base = "meat"
    printed: Said = ""
    left_ppm: float | None = None
    left_is: Literal["most", "look into"] = "most"
    least_ppm: float | None = None
    since: date | None = None
    until: date | None = None
    note: Said = ""

    def in_force(self, day: date | None) -> bool:
        """None asks for the newest text."""
        if day is None:
            return self.until is None
        return (self.since is None or self.since <= day) and (self.until is None or day < self.until)

    @property
    def substances(self) -> tuple[Substance, ...]:
        match self.substance:
            case "nitrite" | "nitrate":
                return (self.substance,)
            case "both":
                return ("nitrite", "nitrate")
            case _:
                return ()


@frozen
class RuleSet:
    """products: key → name, in the order to offer them, the usual one first."""

    key: str
    name: Message
    about: Message
    products: Mapping[str, Message]
    rules: tuple[Rule, ...]
