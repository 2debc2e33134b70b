"""One line of Today: what is to be done, about what, by when."""

from __future__ import annotations

from datetime import datetime
from typing import Literal

from attrs import frozen

from core.sentence import Sentence

Task = Literal[
    "sheet",
    "cure",
    "reading",
    "deviation",
    "salt",
    "turn",
    "unsalt",
    "hang",
    "weigh",
    "release",
    "prepare",
    "fill",
    "empty",
    "check",
]
"""What is to be done: the screen knows the form that each one opens (`web/screens/today.py`)."""


@frozen
class Due:
    """task: which form to open. about: the batch or the instrument by its id, or CHAMBER. at: when it is or was due.

    says_when: the words name the day themselves.
    """

    task: Task
    about: str
    words: Sentence
    at: datetime
    says_when: bool = False

    def late(self, now: datetime) -> bool:
        return self.at <= now
