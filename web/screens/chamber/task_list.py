"""The list of a preparation run, as its maker wants it: other words, another order, tasks of one's own."""

from __future__ import annotations

from collections.abc import Callable

import attrs
from flask import abort, redirect, render_template, request, url_for

from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.preparation import TIMER, KeptTask, PreparationBegun, PreparationListKept
from core.daybook.preparation import latest_run
from core.daybook.preparation_list import (
    DIGITS,
    LONGEST_TEXT,
    NOT_LEFT_OUT,
    Tasks,
    added,
    edited,
    kept,
    moved,
    removed,
    tasks_for,
    usual,
    words_of,
)
from core.quantities import COUNT, Amount
from core.refusals import Refusal, Refused
from core.sentence import Sentence
from web.entry_forms import EntryForm, Subject, Values, declare, with_saved
from web.forms import Form, Words, from_request, typed
from web.journal import book, fresh_id, record, sent_token
from web.screens.chamber.blueprint import screen
from web.visitor import now, reader

INPUTS = (Words("text", "What is to be done", LONGEST_TEXT, example="Look at the door’s seal"), TIMER)


def _as_it_was(values: Values, subject: Subject) -> PreparationListKept:
    assert isinstance(subject.was, PreparationListKept)
    return subject.was


def _said(fact: PreparationListKept) -> Sentence:
    if not fact.tasks:
        return Sentence("Preparation list as usual")
    count = {"count": Amount(len(fact.tasks), COUNT)}
    return Sentence("Preparation list kept: {count} task", count, plural="Preparation list kept: {count} tasks")


declare(EntryForm(PreparationListKept, "Preparation list", (), _said, fact=_as_it_was))


def _example() -> PreparationBegun:
    """The list is shown as for the last run, and with its descaling."""
    last = latest_run(book())
    start = last.start if last else PreparationBegun("quat", 0.1, 200e-6, 0.004)
    return attrs.evolve(start, descaled=True)


def _own() -> Tasks:
    """The maker's list as it is kept; the usual one, each task by its key alone, where none is."""
    return kept(book()) or tuple(KeptTask(task.key) for task in usual(_example()))


def _usual_tasks() -> dict[str, KeptTask]:
    return {task.key: task for task in usual(_example())}


def _said_task(task: KeptTask) -> str:
    return words_of(task).say(reader(), DIGITS)


def _as_usual(key: str) -> tuple[str, float | None] | None:
    task = _usual_tasks().get(key)
    return None if task is None else (_said_task(task), task.timer_s)


@screen.get("/chamber/preparation/list")
def task_list():
    return _drawn(Form(fresh_id(), INPUTS))


@screen.post("/chamber/preparation/list")
def add_task():
    form = from_request(INPUTS, request.form, sent_token())
    try:
        values = form.read(reader())
        return _keep(added(_own(), str(values["text"]), _seconds(values["timer_s"])), form.token)
    except (Refusal, Refused) as refused:
        return _drawn(form.refused(refused)), 422


@screen.post("/chamber/preparation/list/usual")
def usual_list():
    return _change(lambda tasks: ())


@screen.post("/chamber/preparation/list/<key>/up")
def task_up(key: str):
    return _change(lambda tasks: moved(tasks, key, -1))


@screen.post("/chamber/preparation/list/<key>/down")
def task_down(key: str):
    return _change(lambda tasks: moved(tasks, key, 1))


@screen.post("/chamber/preparation/list/<key>/remove")
def remove_task(key: str):
    if key in NOT_LEFT_OUT:
        return _drawn(Form(fresh_id(), INPUTS, refusals={"": STAYS})), 422
    return _change(lambda tasks: removed(tasks, key))


STAYS = Sentence(
    "This task keeps someone from harm or makes the sanitising count: it may be moved and reworded, not left out."
)


@screen.route("/chamber/preparation/list/<key>", methods=["GET", "POST"])
def edit_task(key: str):
    shown = {task.key: task for task in _shown()}
    if key not in shown:
        abort(404)
    task, how = shown[key], reader()
    if request.method == "GET":
        texts = {"text": _said_task(task), "timer_s": typed(task.timer_s, TIMER.quantity, how)}
        return _edit(task, Form(fresh_id(), INPUTS, texts))
    form = from_request(INPUTS, request.form, sent_token())
    try:
        values = form.read(how)
        tasks = edited(_own(), key, str(values["text"]), _seconds(values["timer_s"]), _as_usual(key))
        return _keep(tasks, form.token)
    except (Refusal, Refused) as refused:
        return _edit(task, form.refused(refused)), 422


def _seconds(value: object) -> float | None:
    return value if isinstance(value, float) else None


def _change(to: Callable[[Tasks], Tasks]):
    """One tap: the list as it is after it. A key that was taken off the list meanwhile is no page."""
    token = sent_token()
    if token in book():  # the same tap twice
        return redirect(with_saved(url_for("chamber.task_list"), token), 303)
    try:
        return _keep(to(_own()), token)
    except KeyError:
        abort(404)
    except Refusal as refused:
        return _drawn(Form(fresh_id(), INPUTS).refused(refused)), 422


def _keep(tasks: Tasks, token: str):
    written = record(PreparationListKept(tasks), about=CHAMBER, happened_at=now(), token=token)
    return redirect(with_saved(url_for("chamber.task_list"), written), 303)


def _shown() -> Tasks:
    """Every task of the list as its words would stand in a run."""
    return tasks_for(_example(), _own())


def _drawn(form: Form) -> str:
    tasks = _shown()
    return render_template(
        "chamber/task_list.html",
        tasks=tasks,
        form=form,
        own=bool(kept(book())),
        said=_said_task,
    )


def _edit(task: KeptTask, form: Form) -> str:
    told = {"may_be_left_out": task.key not in NOT_LEFT_OUT, "stays": STAYS}
    return render_template("chamber/task.html", task=task, form=form, said=_said_task, **told)
