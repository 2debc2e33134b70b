"""A preparation run is the fold of its entries: what is done, what may be begun, what still has to stand."""

from __future__ import annotations

import math
from datetime import datetime, timedelta
from typing import Literal

from attrs import frozen

from core.chamber.rates import LASTING
from core.chamber.sanitising_agents import AGENTS, CLEANERS, PPM, Agent, Clash, contact_s, never_mix
from core.chamber.sanitising_measures import CONTACT
from core.chamber.sanitising_run import Task, ready_for
from core.daybook.book import Book, Line
from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.preparation import KeptTask, PreparationBegun, PreparationEnded, TaskBegun, TaskDone
from core.daybook.preparation_list import words_of
from core.quantities import PARTS_PER_MILLION, Amount
from core.sentence import Message, Sentence, Value
from core.sources import CFR_178_1010, FOOD_CODE_SANITISERS, PRODUCT_LABEL
from core.verdict import Reason

A_TAP_S = 0.5
"""The tap that starts a timer and the one that ends it are no stopwatch."""


@frozen
class RunTask:
    """A task of the run as it stands. begun: the line that started its timer; done: the one that ticked it off."""

    kept: KeptTask
    begun: Line | None
    done: Line | None

    @property
    def key(self) -> str:
        return self.kept.key

    @property
    def text(self) -> Sentence:
        return words_of(self.kept)

    @property
    def timer_s(self) -> float | None:
        return self.kept.timer_s or None

    @property
    def until(self) -> datetime | None:
        """When its time is over; None while no timer runs."""
        if self.timer_s is None or self.begun is None:
            return None
        return self.begun.entry.happened_at + timedelta(seconds=self.timer_s)

    def left_s(self, now: datetime) -> float:
        """Seconds it has still to stand: all of them before its timer was started, none where it has no timer."""
        if self.timer_s is None:
            return 0.0
        until = self.until
        left = self.timer_s if until is None else (until - now).total_seconds()
        return left if left > A_TAP_S else 0.0

    @property
    def stood_s(self) -> float | None:
        """How long it stood from its timer to its tick; None where either is missing."""
        if self.begun is None or self.done is None:
            return None
        return (self.done.entry.happened_at - self.begun.entry.happened_at).total_seconds()

    @property
    def in_short(self) -> bool:
        """Whether it was ticked off before its time was over."""
        if self.done is None or self.timer_s is None:
            return False
        return self.stood_s is None or self.stood_s < self.timer_s - A_TAP_S


@frozen
class Run:
    id: str
    begun_at: datetime
    start: PreparationBegun
    tasks: tuple[RunTask, ...]
    ended: Line | None
    lines: tuple[Line, ...]

    @property
    def done(self) -> tuple[RunTask, ...]:
        return tuple(task for task in self.tasks if task.done is not None)

    @property
    def ready(self) -> tuple[RunTask, ...]:
        """The tasks that may be begun now; the first is the one to show."""
        in_a_row = tuple(
            Task(task.key, Sentence(""), task.timer_s, (self.tasks[place - 1].key,) if place else ())
            for place, task in enumerate(self.tasks)
        )
        keys = {task.key for task in ready_for(in_a_row, frozenset(task.key for task in self.done))}
        return tuple(task for task in self.tasks if task.key in keys)

    @property
    def finished(self) -> bool:
        return len(self.done) == len(self.tasks)

    @property
    def open(self) -> bool:
        return not self.finished and self.ended is None

    @property
    def finished_at(self) -> datetime | None:
        if not self.finished:
            return None
        return max((task.done.entry.happened_at for task in self.tasks if task.done), default=self.begun_at)

    def task(self, key: str) -> RunTask | None:
        return next((task for task in self.tasks if task.key == key), None)

    @property
    def contact_s(self) -> float:
        """How long it must stay wet: by the rule or by the label, whichever is longer. The list cannot shorten it."""
        return max(contact_s(self.start.agent), self.start.contact_s or 0.0)


def fold_run(book: Book, run_id: str) -> Run | None:
    """The run as it stands, or None where no such run was begun or its beginning was taken back."""
    if run_id not in book:
        return None
    begun = book.line(run_id)
    if begun.id != run_id or not isinstance(begun.fact, PreparationBegun):
        return None
    lines = book.about(run_id)
    started = {line.fact.key: line for line in lines if isinstance(line.fact, TaskBegun)}
    ticked = {line.fact.key: line for line in lines if isinstance(line.fact, TaskDone)}
    endings = [line for line in lines if isinstance(line.fact, PreparationEnded)]
    return Run(
        id=run_id,
        begun_at=begun.entry.happened_at,
        start=begun.fact,
        tasks=tuple(RunTask(task, started.get(task.key), ticked.get(task.key)) for task in begun.fact.tasks),
        ended=endings[-1] if endings else None,
        lines=tuple(sorted([begun, *lines], key=lambda line: line.order)),
    )


def latest_run(book: Book) -> Run | None:
    line = book.latest(CHAMBER, PreparationBegun)
    return fold_run(book, line.id) if line is not None else None


def clashes(start: PreparationBegun) -> tuple[Clash, ...]:
    """A warning for each pair of agents in the same run; its washing-up liquid and vinegar count where it uses them."""
    by_list = {"wash": "detergent", "descale": "vinegar"}
    in_list = {agent for task in start.tasks for key, agent in by_list.items() if task.key == key}
    used = {start.agent, *start.others, *in_list, *(("vinegar",) if start.descaled else ())}
    return never_mix(tuple({key if key in CLEANERS else "label" for key in used}))


Standing = Literal["not finished", "sanitised by the rule", "not sanitised by the rule"]


def sanitised(run: Run) -> tuple[Standing, tuple[Reason, ...]]:
    """Whether what was logged is what the rule asks, and what it rests on. What is not logged is not shown."""
    reasons = (_cleaned(run), _strength(run), _contact(run), _ending(run))
    if all(reason.met for reason in reasons):
        return "sanitised by the rule", reasons
    if any(reason.met is False for reason in reasons) or not run.open:
        return "not sanitised by the rule", reasons
    return "not finished", reasons


def _cleaned(run: Run) -> Reason:
    steps = [run.task(key) for key in ("wash", "rinse")]
    ticked = all(step is not None and step.done is not None for step in steps)
    settle = Sentence("Wash and rinse first: what is dirty cannot be sanitised.")
    if any(step is None for step in steps):
        return Reason("cleaned", Sentence("The list has no washing and rinsing."), False, CFR_178_1010, settle)
    words: Message = "Washed and rinsed first." if ticked else "Not yet washed and rinsed."
    return Reason("cleaned", Sentence(words), True if ticked else None, CFR_178_1010, settle)


def _strength(run: Run) -> Reason:
    agent = _agent(run.start)
    told: dict[str, Value] = {
        "made": Amount(run.start.target, PARTS_PER_MILLION),
        "active": Sentence(agent.active),
    }
    settle = Sentence("Mix it as strong as the rule or the label asks.")
    if agent.least_ppm is None:
        words = Sentence("{made} of {active}; how strong it must be its label says.", told)
        return Reason("strength", words, True, PRODUCT_LABEL, settle)
    told["least"] = Amount(agent.least_ppm * PPM, PARTS_PER_MILLION)
    words = Sentence("{made} of {active}; {least} at least.", told)
    enough = run.start.target >= agent.least_ppm * PPM * (1 - 1e-9)
    return Reason("strength", words, enough, agent.least_source, settle)


def _contact(run: Run) -> Reason:
    task = run.task("contact")
    source = PRODUCT_LABEL if run.contact_s == run.start.contact_s else FOOD_CODE_SANITISERS
    amounts = {"asked": Amount(run.contact_s, CONTACT)}
    settle = Sentence("Sanitise again, and keep it wet for {asked}.", amounts)
    if task is None or task.done is None:
        return Reason("contact", Sentence("Wet for {asked}: not yet.", amounts), None, source, settle)
    stood_s = task.stood_s
    if stood_s is None:
        told = Sentence("Wet for {asked}: no timer was started, so it is not shown.", amounts)
        return Reason("contact", told, False, source, settle)
    long_enough = stood_s >= run.contact_s - A_TAP_S
    amounts["stood"] = Amount(float(round(stood_s)) if long_enough else _cut(stood_s), LASTING)
    enough: Message = "Wet for {stood}; {asked} at least."
    short: Message = "Wet for only {stood}; it needs {asked}."
    words = enough if long_enough else short
    return Reason("contact", Sentence(words, amounts), long_enough, source, settle)


def _cut(stood_s: float) -> float:
    """Whole seconds, never up to what is needed; the shortest is one."""
    return max(1.0, float(math.floor(stood_s)))


def _ending(run: Run) -> Reason:
    task = run.task("rinse-sanitiser") or run.task("drain")
    settle = Sentence("Let it drain, or rinse it off where it is too strong to stay on.")
    if task is None:
        return Reason("ended", Sentence("The list neither drains nor rinses it."), False, CFR_178_1010, settle)
    done: Message = "Rinsed off." if task.key == "rinse-sanitiser" else "Drained."
    words: Message = done if task.done else "Not yet drained or rinsed off."
    return Reason("ended", Sentence(words), True if task.done else None, CFR_178_1010, settle)


def _agent(start: PreparationBegun) -> Agent:
    """One that only a newer daybook knows goes by its label."""
    return AGENTS.get(start.agent, AGENTS["label"])
