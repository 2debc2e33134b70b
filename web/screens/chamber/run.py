"""A preparation run, one thing at a time: the step that is open, its timer, its tick, and what is behind it."""

from __future__ import annotations

import math
from typing import Any

from flask import abort, redirect, render_template, request, url_for

from core.chamber.rates import LASTING
from core.daybook.facts.preparation import PreparationBegun, PreparationEnded, TaskBegun, TaskDone
from core.daybook.preparation import Run, RunTask, Standing, fold_run, sanitised
from core.daybook.preparation_list import words_of
from core.quantities import Amount
from core.refusals import Refusal
from core.sentence import Message, Rounded, Said, Sentence
from core.working import Figure
from web.entry_forms import EntryForm, Subject, Values, declare, noted, say, with_saved
from web.forms import Words
from web.journal import NotSaved, book, record, sent_token
from web.screens.chamber.blueprint import screen
from web.screens.chamber.prepare import LABEL_AND_LAW, dilution, lime, warnings
from web.visitor import now, reader


def _as_it_was(values: Values, subject: Subject) -> Any:
    """A tick is corrected by its moment alone."""
    return subject.was


def _done(fact: TaskDone) -> Sentence:
    task = {"task": words_of(fact)}
    return Sentence("Done, before its time: {task}", task) if fact.in_short else Sentence("Done: {task}", task)


declare(
    EntryForm(
        TaskBegun,
        "Timer started",
        (),
        lambda fact: Sentence("Timer started: {task}", {"task": words_of(fact)}),
        fact=_as_it_was,
    )
)
declare(EntryForm(TaskDone, "Task done", (), _done, fact=_as_it_was))
END = declare(
    EntryForm(
        PreparationEnded,
        "Break the run off",
        (Words("note", "Why", 200, optional=True),),
        lambda fact: noted("Broken off", fact.note),
        save="Break it off",
    )
)


STANDING_WORDS: dict[Standing, Message] = {
    "not finished": "Not finished",
    "sanitised by the rule": "Sanitised by the rule",
    "not sanitised by the rule": "Not sanitised by the rule",
}
WAITS: Message = "This waits for the task above it."

NOT_TIMED: Message = "Its time was not started: start the timer, or record it as not timed."
NOT_TIMED_WET: Message = (
    "Its contact time was not started: start the timer, or record it as not timed. The run then says: not sanitised by "
    "the rule."
)
TOO_SOON: Message = "Its time is not over: {left} are left. Let it stand, or record it as shorter."
TOO_SOON_WET: Message = (
    "Its contact time is not over: {left} are left. Let it stand, or record it as shorter. The run then says: not "
    "sanitised by the rule."
)


def find_run(run_id: str) -> Run:
    return fold_run(book(), run_id) or abort(404)


@screen.get("/chamber/preparation/<run_id>")
def run(run_id: str):
    return _drawn(find_run(run_id))


@screen.post("/chamber/preparation/<run_id>/timer")
def start_timer(run_id: str):
    run, task = _asked(run_id)
    if task.begun is not None or task.done is not None:
        return redirect(_path(run), 303)
    if task not in run.ready or not run.open:
        return _drawn(run, WAITS), 422
    return _written(run, TaskBegun(task.key, task.kept.text, task.kept.words))


@screen.post("/chamber/preparation/<run_id>/done")
def tick(run_id: str):
    """A task that has not stood long enough is ticked off only as what it is."""
    run, task = _asked(run_id)
    if task.done is not None:
        return redirect(_path(run), 303)
    if task not in run.ready or not run.open:
        return _drawn(run, WAITS), 422
    in_short = task.left_s(now()) > 0
    if in_short and request.form.get("as_it_is") != "yes":
        return _drawn(run, _too_soon(task), too_soon=True), 422
    return _written(run, TaskDone(task.key, task.kept.text, in_short, task.kept.words))


@screen.post("/chamber/preparation/<run_id>/end")
def break_off(run_id: str):
    run = find_run(run_id)
    if not run.open:
        return redirect(_path(run), 303)
    return _written(run, PreparationEnded())


def _asked(run_id: str) -> tuple[Run, RunTask]:
    run = find_run(run_id)
    return run, run.task(request.form.get("task", "")) or abort(404)


def _too_soon(task: RunTask) -> Sentence:
    told = {"left": Rounded(Amount(math.ceil(task.left_s(now())), LASTING))}
    if task.key == "contact":
        return Sentence(TOO_SOON_WET if task.begun else NOT_TIMED_WET, told)
    return Sentence(TOO_SOON if task.begun else NOT_TIMED, told)


def _written(run: Run, fact: TaskBegun | TaskDone | PreparationEnded):
    token = sent_token()
    if token in book():  # the same tap twice
        return redirect(with_saved(_path(run), token), 303)
    try:
        written = record(fact, about=run.id, happened_at=now(), token=token)
    except NotSaved as refusal:
        return _drawn(run, refusal.said), 503
    return redirect(with_saved(_path(run), written), 303)


def _path(run: Run) -> str:
    return url_for("chamber.run", run_id=run.id)


def _drawn(run: Run, refusal: Said = "", too_soon: bool = False) -> str:
    standing, reasons = sanitised(run)
    task = run.ready[0] if run.ready and run.open else None
    return render_template(
        "chamber/run.html",
        run=run,
        task=task,
        left_s=task.left_s(now()) if task else 0.0,
        figures=_figures(run.start, task),
        warnings=warnings(run.start),
        label_and_law=LABEL_AND_LAW,
        refusal=refusal,
        too_soon=too_soon,
        standing=STANDING_WORDS[standing],
        reasons=reasons,
        failed=standing == "not sanitised by the rule",
        log=[(line, say(line, reader())) for line in reversed(run.lines)],
    )


def _figures(start: PreparationBegun, task: RunTask | None) -> tuple[Figure, ...]:
    """What the open step measures out: the sanitiser or the vinegar."""
    if task is None or task.key not in ("mix", "descale"):
        return ()
    try:
        return dilution(start) if task.key == "mix" else lime(start)
    except Refusal:  # an entry from elsewhere may ask for what may not be made
        return ()
