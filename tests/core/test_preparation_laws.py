"""Laws of the preparation list and run, whatever is done to them."""

from attrs import evolve
from hypothesis import given
from hypothesis import strategies as st

from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.preparation import KeptTask, PreparationBegun, TaskDone
from core.daybook.preparation import fold_run
from core.daybook.preparation_list import NOT_LEFT_OUT, added, moved, removed, tasks_for, usual, words_of
from core.quantities import METRIC
from core.refusals import OutOfRange
from tests.core.kitchen import Kitchen

AGENTS = ("chlorine", "iodine", "quat", "peracetic", "label")
starts = st.builds(
    PreparationBegun,
    agent=st.sampled_from(AGENTS),
    stock=st.just(0.1),
    target=st.floats(1e-6, 1e-3),
    volume_m3=st.just(0.004),
    after=st.sampled_from(("drain", "rinse")),
    descaled=st.booleans(),
)
changes = st.lists(st.tuples(st.sampled_from(("up", "down", "remove", "add")), st.integers(0, 30)), max_size=25)


def changed(start: PreparationBegun, steps: list[tuple[str, int]]) -> tuple[KeptTask, ...]:
    tasks = tuple(KeptTask(task.key) for task in usual(evolve(start, descaled=True)))
    for step, place in steps:
        key = tasks[place % len(tasks)].key
        if step == "add":
            tasks = added(tasks, f"Task {place}.", None)
        elif step == "remove":
            try:
                tasks = removed(tasks, key)
            except OutOfRange:
                assert len(tasks) == 1
        else:
            tasks = moved(tasks, key, -1 if step == "up" else 1)
    return tasks


@given(starts, changes)
def test_no_task_stands_twice_and_every_one_has_words(start: PreparationBegun, steps):
    found = tasks_for(start, changed(start, steps))
    assert len({task.key for task in found}) == len(found)
    assert all(words_of(task).say(METRIC) for task in found)


@given(starts, changes)
def test_what_must_not_be_left_out_is_in_every_run(start: PreparationBegun, steps):
    found = {task.key for task in tasks_for(start, changed(start, steps))}
    assert {task.key for task in usual(start)} & NOT_LEFT_OUT <= found


@given(starts, changes)
def test_moving_up_and_down_again_changes_nothing(start: PreparationBegun, steps):
    tasks = changed(start, steps)
    for task in tasks[1:]:
        assert moved(moved(tasks, task.key, -1), task.key, 1) == tasks


@given(starts, st.lists(st.integers(0, 20), max_size=20))
def test_a_run_is_open_until_all_its_tasks_are_done(start: PreparationBegun, ticks: list[int]):
    kitchen = Kitchen()
    tasks = usual(start)
    run_id = kitchen.note(evolve(start, tasks=tasks), CHAMBER)
    for at, place in enumerate(ticks):
        kitchen.note(TaskDone(tasks[place % len(tasks)].key), run_id, at)
    run = fold_run(kitchen.book, run_id)
    assert run is not None
    assert run.finished == (len({place % len(tasks) for place in ticks}) == len(tasks))
    assert bool(run.ready) != run.finished
