"""What happens while the chamber is made ready: the run is begun, its tasks are begun and done, its list is kept."""

from __future__ import annotations

from attrs import evolve, field, frozen
from attrs.validators import deep_iterable, matches_re

from core.chamber import sanitising_sheets as sheets
from core.chamber.rates import LASTING
from core.chamber.sanitising import After
from core.chamber.sanitising_measures import CONTACT_TIME
from core.chamber.sanitising_stock import Stated
from core.daybook.facts.fields import asked, lasting
from core.daybook.facts.kept import KeptSentence
from core.units import DAY_S, MINUTE
from core.worksheet import Number

_KEY = "[a-z0-9-]{1,60}"
CONTACT_BY_LABEL = Number(
    "contact_s",
    "Contact time by the label",
    CONTACT_TIME,
    1.0,
    DAY_S,
    optional=True,
    help="The longer of it and the rule’s is kept.",
)


TIMED = evolve(LASTING, key="timer", bare_metric=MINUTE, bare_us=MINUTE, example_metric="30 min", example_us="30 min")
TIMER = Number("timer_s", "How long it takes", TIMED, 0.0, 2 * DAY_S, optional=True, help="Empty where it need not.")


@frozen
class KeptTask:
    """A task of a list as it was kept. text: as the maker typed it. words: the usual ones, as a run that is begun keeps
    them. In a kept list neither, and no timer, mean the usual ones of that key; a timer of nothing, that it need not
    stand."""

    key: str = field(validator=matches_re(_KEY))
    text: str = ""
    timer_s: float | None = asked(TIMER, holds=lasting)
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

    agent: str = asked(sheets.AGENT, holds=matches_re(_KEY))
    stock: float = asked(sheets.STOCK)
    target: float = asked(sheets.TARGET)
    volume_m3: float = asked(sheets.SOLUTION)
    after: After = asked(sheets.AFTER, default="drain")
    label: float | None = asked(sheets.LABEL)
    ph: float | None = asked(sheets.SOLUTION_PH)
    stated: Stated = asked(sheets.STATED, default="active")
    stock_kg_m3: float = asked(sheets.WEIGHT, default=1000.0)
    contact_s: float | None = asked(CONTACT_BY_LABEL)
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
