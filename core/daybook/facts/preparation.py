"""What happens while the chamber is made ready: the run is begun, its tasks are begun and done, its list is kept."""

from __future__ import annotations

from typing import Literal

from attrs import field, frozen
from attrs.validators import deep_iterable, in_, matches_re, optional

from core.daybook.facts.fields import above_zero, not_negative, ph_value, share
from core.daybook.facts.kept import KeptSentence

_KEY = "[a-z0-9-]{1,60}"


@frozen
class KeptTask:
    """A task of a list as it was kept. text: as the maker typed it. words: the usual ones, as a run that is begun keeps
    them. In a kept list neither, and no timer, mean the usual ones of that key; a timer of nothing, that it need not
    stand."""

    key: str = field(validator=matches_re(_KEY))
    text: str = ""
    timer_s: float | None = field(default=None, validator=optional(not_negative))
    words: KeptSentence | None = None


@frozen
class PreparationListKept:
    """The maker's own order of the run. Empty: back to the usual one."""

    KIND = "preparation-list-kept"

    tasks: tuple[KeptTask, ...] = ()


@frozen
class PreparationBegun:
    """A run is begun. Its entry's id is the run's id; it is about the chamber.

    agent: a key of AGENTS. target, label: of the active substance, as fractions. contact_s: the label's own time.
    others: what else is used in the run, keys of CLEANERS. tasks: the list as it stood.
    """

    KIND = "preparation-begun"

    agent: str = field(validator=matches_re(_KEY))
    stock: float = field(validator=share)
    target: float = field(validator=share)
    volume_m3: float = field(validator=above_zero)
    after: Literal["drain", "rinse"] = field(default="drain", validator=in_(("drain", "rinse")))
    label: float | None = field(default=None, validator=optional(share))
    ph: float | None = field(default=None, validator=optional(ph_value))
    stated: Literal["active", "hypochlorite"] = field(default="active", validator=in_(("active", "hypochlorite")))
    stock_kg_m3: float = field(default=1000.0, validator=above_zero)
    contact_s: float | None = field(default=None, validator=optional(not_negative))
    descaled: bool = False
    others: tuple[str, ...] = field(default=(), validator=deep_iterable(matches_re(_KEY)))
    tasks: tuple[KeptTask, ...] = ()


@frozen
class TaskBegun:
    """The task's timer was started. Its entry is about the run. text, words: what the task was."""

    KIND = "task-begun"

    key: str = field(validator=matches_re(_KEY))
    text: str = ""
    words: KeptSentence | None = None


@frozen
class TaskDone:
    """The task is ticked off. Its entry is about the run. in_short: said to have stood for less than its timer."""

    KIND = "task-done"

    key: str = field(validator=matches_re(_KEY))
    text: str = ""
    in_short: bool = False
    words: KeptSentence | None = None


@frozen
class PreparationEnded:
    """The run was broken off before all was done. Its entry is about the run."""

    KIND = "preparation-ended"

    note: str = ""


Fact = PreparationListKept | PreparationBegun | TaskBegun | TaskDone | PreparationEnded
