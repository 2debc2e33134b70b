"""One line of Today: what is to be done, about what, by when."""

from __future__ import annotations

from datetime import datetime
from typing import Literal

from attrs import frozen

from core.sentence import Sentence

Task = Literal[
    "reading",
    "temperature",
    "deviation",
    "discard",
    "recheck",
    "replace",
    "sheet",
    "cure",
    "unread",
    "salt",
    "unsalt",
    "turn",
    "hang",
    "prepare",
    "release",
    "look",
    "activity",
    "take-down",
    "weigh",
    "fill",
    "empty",
    "check",
    "copy",
]
"""What is to be done: the screen knows the form that each one opens (`web/screens/today.py`)."""


@frozen
class Due:
    """task: which form to open. about: the batch, the piece, the run or the instrument by its id, CHAMBER or BOOK.

    words: the whole sentence; its verb is the value "act", for the screen to set apart. at: when it is or was due.
    fact: what was last known of it. until: the last safe moment of a clock that runs.
    """

    task: Task
    about: str
    words: Sentence
    at: datetime
    fact: Sentence | None = None
    until: datetime | None = None

    def late(self, now: datetime) -> bool:
        return self.at <= now


BOOK = "book"
"""What a line is about that concerns the record itself."""
