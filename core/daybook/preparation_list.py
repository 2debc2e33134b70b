"""The list of a preparation run: the usual one, the maker's own order of it, and how a list is edited."""

from __future__ import annotations

import re

from attrs import evolve

from core.chamber.sanitising_agents import PPM
from core.chamber.sanitising_run import preparation
from core.daybook.book import Book
from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.preparation import TIMER, KeptTask, PreparationBegun, PreparationListKept, TaskBegun, TaskDone
from core.daybook.kept_words import keep, said
from core.quantities import COUNT, HOURS, Amount
from core.refusals import OutOfRange
from core.sentence import Sentence

Tasks = tuple[KeptTask, ...]

LONGEST_TEXT, LONGEST_LIST = 200, 60
DIGITS = 3  # a list to read with wet hands: 23.9 °C
NOT_LEFT_OUT = frozenset({"descale", "rinse-descaler", "sanitise", "contact", "rinse-sanitiser"})
"""Where the run needs one of these it is put back in its place, whatever list is kept: vinegar must be gone before
chlorine comes, a sanitiser must stand, and what is too strong must be rinsed off."""
ENDINGS = frozenset({"drain", "rinse-sanitiser"})
"""One list is kept for both ways to end: the run's own takes the place of the other."""


def usual(run: PreparationBegun) -> Tasks:
    """The usual list for these agents. Raises OutOfRange for an agent not known."""
    label_ppm = None if run.label is None else run.label / PPM
    tasks = preparation(run.agent, run.target / PPM, run.after, label_ppm, run.contact_s, run.descaled)
    return tuple(KeptTask(task.key, "", task.timer_s, keep(task.text)) for task in tasks)


def words_of(task: KeptTask | TaskBegun | TaskDone) -> Sentence:
    """What is to be done: as the maker typed it, or in the usual words."""
    if task.text or task.words is None:
        return Sentence("{typed}", {"typed": task.text})
    return said(task.words)


def kept(book: Book) -> Tasks:
    """The maker's own list; empty where the usual one is used."""
    line = book.latest(CHAMBER, PreparationListKept)
    return line.fact.tasks if line is not None and isinstance(line.fact, PreparationListKept) else ()


def tasks_for(run: PreparationBegun, own: Tasks) -> Tasks:
    """The list that this run goes by: the maker's own order where there is one, the usual words where none were put."""
    as_usual = usual(run)
    if not own:
        return as_usual
    usual_keys = {task.key: task for task in as_usual}
    every_usual = {task.key for task in usual(evolve(run, descaled=True))} | ENDINGS
    ending = next(key for key in usual_keys if key in ENDINGS)
    found: list[KeptTask] = []
    for task in own:
        key = ending if task.key in ENDINGS else task.key
        if key in usual_keys:
            found.append(_filled_in(task if key == task.key else KeptTask(key), usual_keys[key]))
        elif key not in every_usual:
            found.append(evolve(task, timer_s=task.timer_s or None))
    return _put_back(tuple(found), as_usual)


def _filled_in(task: KeptTask, as_usual: KeptTask) -> KeptTask:
    timer_s = as_usual.timer_s if task.timer_s is None else task.timer_s
    return KeptTask(as_usual.key, task.text, timer_s or None, None if task.text else as_usual.words)


def _put_back(tasks: Tasks, as_usual: Tasks) -> Tasks:
    order = [task.key for task in as_usual]
    for task in as_usual:
        present = [each.key for each in tasks]
        if task.key not in NOT_LEFT_OUT or task.key in present:
            continue
        before = set(order[: order.index(task.key)])
        at = max((place + 1 for place, key in enumerate(present) if key in before), default=0)
        tasks = (*tasks[:at], task, *tasks[at:])
    return tasks


def rewritten(was: PreparationBegun, new: PreparationBegun) -> Tasks:
    """The tasks after the run was corrected: what was said in the usual words is said anew."""
    before = {task.key: task for task in usual(was)}
    own = tuple(_unlike(task, before.get(task.key)) for task in was.tasks)
    all_usual = own == tuple(KeptTask(key) for key in before)
    return tasks_for(new, () if all_usual else own)


def _unlike(task: KeptTask, as_usual: KeptTask | None) -> KeptTask:
    """Only that of the task which is not as usual."""
    same_timer = as_usual is not None and (task.timer_s or None) == as_usual.timer_s
    return KeptTask(task.key, task.text, None if same_timer else task.timer_s or 0.0)


def moved(tasks: Tasks, key: str, by: int) -> Tasks:
    """The task one place up (-1) or down (1); at the end of the list it stays. KeyError where there is none."""
    at = _place(tasks, key)
    to = max(at + by, 0)
    rest = [*tasks[:at], *tasks[at + 1 :]]
    return (*rest[:to], tasks[at], *rest[to:])


def removed(tasks: Tasks, key: str) -> Tasks:
    """Raises OutOfRange for the last one left: an empty list would be the usual one again."""
    at = _place(tasks, key)
    if len(tasks) == 1:
        raise OutOfRange("", "The last task stays, or the list would be the usual one again.")
    return (*tasks[:at], *tasks[at + 1 :])


def added(tasks: Tasks, text: str, timer_s: float | None) -> Tasks:
    """A task of the maker's own at the end of the list. Raises OutOfRange on "text" or "timer_s"."""
    if len(tasks) >= LONGEST_LIST:
        raise OutOfRange(
            "text", Sentence("A list can have {most} tasks at most.", {"most": Amount(LONGEST_LIST, COUNT)})
        )
    numbers = [int(found[1]) for task in tasks if (found := re.fullmatch("own-([0-9]+)", task.key))]
    key = f"own-{max(numbers, default=0) + 1}"
    _require(text, timer_s)
    return (*tasks, KeptTask(key, text, timer_s))


def edited(
    tasks: Tasks, key: str, text: str, timer_s: float | None, as_usual: tuple[str, float | None] | None
) -> Tasks:
    """The task with other words or another timer. as_usual: the words, as the reader sees them, and the timer of the
    usual list, None for a task of the maker's own; what is left as usual goes on following the usual list. Raises
    OutOfRange on "text" or "timer_s"."""
    at = _place(tasks, key)
    _require(text, timer_s)
    task = KeptTask(key, text, timer_s)
    if as_usual is not None:
        usual_text, usual_timer_s = as_usual
        task = KeptTask(key, "" if text == usual_text else text, None if timer_s == usual_timer_s else timer_s or 0.0)
    return (*tasks[:at], task, *tasks[at + 1 :])


def _require(text: str, timer_s: float | None) -> None:
    if not text:
        raise OutOfRange("text", "Enter what is to be done, for example Look at the door's seal.")
    if len(text) > LONGEST_TEXT:
        most = {"most": Amount(LONGEST_TEXT, COUNT)}
        raise OutOfRange("text", Sentence("A task can have {most} characters at most.", most))
    if timer_s is not None and not TIMER.low <= timer_s <= TIMER.high:
        most = {"most": Amount(TIMER.high, HOURS)}
        raise OutOfRange("timer_s", Sentence("The time must be between 0 and {most}.", most))


def _place(tasks: Tasks, key: str) -> int:
    return [task.key for task in tasks].index(key) if any(task.key == key for task in tasks) else _absent(key)


def _absent(key: str) -> int:
    raise KeyError(key)
