"""A preparation run is the fold of its entries: what is done, what is open, and whether it sanitised by the rule."""

from datetime import timedelta

import pytest
from attrs import evolve

from core.chamber.sanitising_agents import AGENTS
from core.daybook.facts import Withdrawn
from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.preparation import KeptTask, PreparationBegun, PreparationEnded, TaskBegun, TaskDone
from core.daybook.preparation import Run, clashes, fold_run, latest_run, sanitised
from core.daybook.preparation_list import tasks_for
from core.quantities import METRIC
from core.sources import FOOD_CODE_SANITISERS, PRODUCT_LABEL
from tests.core.kitchen import Kitchen

SECOND = 1 / 86400
QUAT = PreparationBegun("quat", stock=0.1, target=200e-6, volume_m3=0.004)
BLEACH = PreparationBegun("chlorine", stock=0.0525, target=100e-6, volume_m3=0.004, descaled=True)


class Runner:
    """A kitchen in which a run was begun at noon; its tasks are done a minute apart unless they are timed."""

    def __init__(self, start: PreparationBegun = QUAT) -> None:
        self.kitchen = Kitchen()
        self.id = self.kitchen.note(evolve(start, tasks=start.tasks or tasks_for(start, ())), CHAMBER)
        self.at = 0.0

    @property
    def run(self) -> Run:
        found = fold_run(self.kitchen.book, self.id)
        assert found is not None
        return found

    def tick(self, key: str, stands_s: float | None = None) -> str:
        if stands_s is not None:
            self.kitchen.note(TaskBegun(key), self.id, self.at)
            self.at += stands_s * SECOND
        done = self.kitchen.note(TaskDone(key), self.id, self.at)
        self.at += 60 * SECOND
        return done

    def tick_all(self, contact_s: float = 30.0) -> dict[str, str]:
        stands = {"contact": contact_s}
        return {task.key: self.tick(task.key, stands.get(task.key, task.timer_s)) for task in self.run.tasks}


@pytest.fixture
def runner() -> Runner:
    return Runner()


def word(runner: Runner) -> str:
    return sanitised(runner.run)[0]


def met(runner: Runner) -> dict[str, bool | None]:
    return {reason.key: reason.met for reason in sanitised(runner.run)[1]}


def test_a_run_opens_with_its_first_task(runner: Runner):
    assert [task.key for task in runner.run.ready] == ["unplug"]


def test_a_done_task_opens_the_next(runner: Runner):
    runner.tick("unplug")
    assert runner.run.ready[0].key == "clear"


def test_each_task_tells_when_it_was_done(runner: Runner):
    runner.tick("unplug")
    done = runner.run.tasks[0].done
    assert done is not None
    assert done.entry.happened_at == runner.run.begun_at


def test_a_tick_taken_back_opens_its_task_again(runner: Runner):
    first = runner.tick("unplug")
    runner.tick("clear")
    runner.kitchen.take_back(first)
    assert runner.run.ready[0].key == "unplug"


def test_what_was_done_after_it_stays_done(runner: Runner):
    first = runner.tick("unplug")
    runner.tick("clear")
    runner.kitchen.take_back(first)
    assert [task.key for task in runner.run.done] == ["clear"]


def test_a_run_taken_back_is_none(runner: Runner):
    runner.kitchen.note(Withdrawn(), CHAMBER, corrects=runner.id, written=1)
    assert fold_run(runner.kitchen.book, runner.id) is None


@pytest.mark.parametrize("key", ["", "mine", "chamber"])
def test_what_is_no_run_folds_to_none(runner: Runner, key: str):
    assert fold_run(runner.kitchen.book, key) is None


def test_a_tick_is_no_run_of_its_own(runner: Runner):
    assert fold_run(runner.kitchen.book, runner.tick("unplug")) is None


def test_the_latest_run_counts():
    kitchen = Kitchen()
    kitchen.note(QUAT, CHAMBER, at=0)
    second = kitchen.note(QUAT, CHAMBER, at=2)
    run = latest_run(kitchen.book)
    assert run is not None
    assert run.id == second


def test_a_timer_counts_from_the_entry_that_started_it(runner: Runner):
    started = runner.run.begun_at
    runner.kitchen.note(TaskBegun("dry"), runner.id, at=0.5)
    task = runner.run.task("dry")
    assert task is not None
    assert task.until is not None
    assert (task.until - started).total_seconds() == 12 * 3600 + 3600


def test_a_timer_not_started_has_all_its_time_left(runner: Runner):
    task = runner.run.task("dry")
    assert task is not None
    assert task.left_s(runner.run.begun_at) == 3600


def test_a_run_with_all_done_and_enough_contact_has_sanitised(runner: Runner):
    runner.tick_all()
    assert (word(runner), runner.run.finished) == ("sanitised by the rule", True)


def test_it_is_finished_when_the_last_task_was_done(runner: Runner):
    runner.tick_all()
    last = runner.run.tasks[-1].done
    assert last is not None
    assert runner.run.finished_at == last.entry.happened_at


def test_a_contact_cut_short_has_not_sanitised(runner: Runner):
    runner.tick_all(contact_s=20.0)
    assert (word(runner), met(runner)["contact"]) == ("not sanitised by the rule", False)


def test_a_contact_cut_short_is_told_at_once(runner: Runner):
    for key in ("unplug", "clear", "cover", "wash", "rinse", "mix", "sanitise"):
        runner.tick(key)
    runner.tick("contact", 12.0)
    assert word(runner) == "not sanitised by the rule"


def test_a_contact_that_was_not_timed_has_not_sanitised(runner: Runner):
    for task in runner.run.tasks:
        runner.tick(task.key)
    assert met(runner)["contact"] is False


def test_a_list_with_a_shorter_contact_does_not_shorten_the_rule():
    short = tuple(evolve(task, timer_s=5.0) if task.key == "contact" else task for task in tasks_for(QUAT, ()))
    runner = Runner(evolve(QUAT, tasks=short))
    runner.tick_all(contact_s=6.0)
    assert met(runner)["contact"] is False


def test_a_label_that_asks_longer_is_asked_for():
    runner = Runner(evolve(QUAT, contact_s=600.0))
    runner.tick_all(contact_s=599.0)
    assert met(runner)["contact"] is False


def test_a_time_of_contact_corrected_counts(runner: Runner):
    runner.tick_all(contact_s=20.0)
    task = runner.run.task("contact")
    assert task is not None
    assert task.done is not None
    later = (task.done.entry.happened_at - runner.run.begun_at).total_seconds() * SECOND + 15 * SECOND
    runner.kitchen.note(TaskDone("contact"), runner.id, later, corrects=task.done.id, written=2)
    assert met(runner)["contact"] is True


def test_a_list_without_washing_has_not_sanitised():
    runner = Runner(evolve(QUAT, tasks=tuple(task for task in tasks_for(QUAT, ()) if task.key != "wash")))
    runner.tick_all()
    assert met(runner)["cleaned"] is False


def test_a_list_without_draining_has_not_sanitised():
    runner = Runner(evolve(QUAT, tasks=tuple(task for task in tasks_for(QUAT, ()) if task.key != "drain")))
    runner.tick_all()
    assert met(runner)["ended"] is False


def test_too_weak_a_chlorine_has_not_sanitised():
    runner = Runner(evolve(BLEACH, target=10e-6))
    runner.tick_all()
    assert met(runner)["strength"] is False


def test_a_run_in_the_middle_says_nothing_yet(runner: Runner):
    runner.tick("unplug")
    assert word(runner) == "not finished"


def test_a_run_broken_off_has_not_sanitised(runner: Runner):
    runner.tick("unplug")
    runner.kitchen.note(PreparationEnded(), runner.id, at=1)
    assert (word(runner), runner.run.open) == ("not sanitised by the rule", False)


def test_an_agent_of_a_newer_daybook_goes_by_its_label():
    runner = Runner(evolve(QUAT, agent="moonlight", tasks=(KeptTask("contact", "Wait.", 30.0),)))
    assert word(runner) in ("not finished", "not sanitised by the rule")


def told(start: PreparationBegun) -> list[frozenset[str]]:
    return [frozenset(clash.agents) for clash in clashes(evolve(start, tasks=tasks_for(start, ())))]


def test_chlorine_after_vinegar_is_warned_of():
    assert told(BLEACH)[0] == {"chlorine", "vinegar"}


def test_the_washing_up_liquid_of_the_list_is_warned_of():
    assert {"quat", "detergent"} in told(QUAT)


def test_each_pair_of_what_is_used_is_warned_of():
    pairs = told(evolve(BLEACH, others=("ammonia", "quat")))
    assert {frozenset({"chlorine", "ammonia"}), frozenset({"chlorine", "quat"}), frozenset({"vinegar", "quat"})} <= set(
        pairs
    )


def test_a_cleaner_of_a_newer_daybook_is_another_product():
    assert {"quat", "label"} in told(evolve(QUAT, others=("moonlight",)))


@pytest.mark.parametrize("descaled", [True, False])
def test_vinegar_counts_where_the_run_uses_it_whatever_its_list_says(descaled: bool):
    start = evolve(BLEACH, descaled=descaled, tasks=(KeptTask("contact", "Wait.", 60.0),))
    pairs = [frozenset(clash.agents) for clash in clashes(start)]
    assert ({"chlorine", "vinegar"} in pairs) is descaled


def test_without_lime_no_vinegar_is_warned_of():
    assert told(QUAT) == [{"quat", "detergent"}]


def timed(key: str = "contact", stood_s: float | None = None, start: PreparationBegun = QUAT) -> Runner:
    """A run of which one task was begun at noon, and ticked off so many seconds later."""
    runner = Runner(start)
    runner.kitchen.note(TaskBegun(key), runner.id)
    if stood_s is not None:
        runner.kitchen.note(TaskDone(key), runner.id, stood_s * SECOND)
    return runner


@pytest.mark.parametrize(("over_s", "left_s"), [(0.501, 0.501), (0.5, 0.0), (0.0, 0.0), (-60.0, 0.0)])
def test_a_timer_has_nothing_left_within_a_tap_of_its_end(over_s: float, left_s: float):
    task = timed().run.task("contact")
    assert task is not None
    assert task.until is not None
    assert task.left_s(task.until - timedelta(seconds=over_s)) == left_s


def test_a_task_without_a_timer_has_nothing_left(runner: Runner):
    task = runner.run.task("wash")
    assert task is not None
    assert (task.left_s(runner.run.begun_at), task.until) == (0.0, None)


def test_a_task_without_a_timer_is_never_over_though_it_was_begun():
    task = timed("wash").run.task("wash")
    assert task is not None
    assert (task.until, task.stood_s) == (None, None)


@pytest.mark.parametrize(("stood_s", "short"), [(29.499, True), (29.5, False), (30.0, False)])
def test_a_contact_counts_to_within_a_tap_of_its_time(stood_s: float, short: bool):
    runner = timed(stood_s=stood_s)
    task = runner.run.task("contact")
    assert task is not None
    assert (task.in_short, met(runner)["contact"]) == (short, not short)


def test_a_task_ticked_off_without_its_timer_was_cut_short(runner: Runner):
    runner.tick("contact")
    task = runner.run.task("contact")
    assert task is not None
    assert (task.stood_s, task.in_short) == (None, True)


def test_what_is_not_done_or_need_not_stand_is_not_cut_short():
    runner = timed()
    runner.tick("wash")
    assert [task.in_short for key in ("contact", "wash") if (task := runner.run.task(key))] == [False, False]


def test_a_run_has_no_end_before_all_is_done(runner: Runner):
    runner.tick("unplug")
    assert runner.run.finished_at is None


def test_a_finished_run_is_no_longer_open(runner: Runner):
    runner.tick_all()
    assert not runner.run.open


def test_of_two_endings_the_later_counts(runner: Runner):
    runner.kitchen.note(PreparationEnded(), runner.id, at=1)
    later = runner.kitchen.note(PreparationEnded(), runner.id, at=2)
    ended = runner.run.ended
    assert ended is not None
    assert ended.id == later


def reasons(runner: Runner) -> dict[str, tuple[str, bool | None]]:
    return {reason.key: (reason.text.say(METRIC, 3), reason.met) for reason in sanitised(runner.run)[1]}


def test_what_is_not_yet_logged_is_told_as_not_yet(runner: Runner):
    assert reasons(runner) == {
        "cleaned": ("Not yet washed and rinsed.", None),
        "strength": ("200 ppm of quaternary ammonium; 150 ppm at least.", True),
        "contact": ("Wet for 30 s: not yet.", None),
        "ended": ("Not yet drained or rinsed off.", None),
    }


@pytest.mark.parametrize("key", ["wash", "rinse"])
def test_washing_without_rinsing_or_the_other_way_round_is_not_yet_cleaned(runner: Runner, key: str):
    runner.tick(key)
    assert met(runner)["cleaned"] is None


def test_what_was_logged_is_told(runner: Runner):
    runner.tick_all()
    assert reasons(runner) == {
        "cleaned": ("Washed and rinsed first.", True),
        "strength": ("200 ppm of quaternary ammonium; 150 ppm at least.", True),
        "contact": ("Wet for 30 s; 30 s at least.", True),
        "ended": ("Drained.", True),
    }


def test_what_was_too_strong_to_stay_on_is_rinsed_off():
    runner = Runner(evolve(QUAT, target=400e-6, after="rinse"))
    runner.tick_all()
    assert reasons(runner)["ended"] == ("Rinsed off.", True)


@pytest.mark.parametrize(("stood_s", "said"), [(20.0, 20), (0.856, 1), (1.9, 1), (29.4, 29)])
def test_how_much_too_short_the_contact_was_is_told_in_whole_seconds(stood_s: float, said: int):
    assert reasons(timed(stood_s=stood_s))["contact"] == (f"Wet for only {said} s; it needs 30 s.", False)


@pytest.mark.parametrize(("stood_s", "said"), [(29.6, 30), (30.4, 30), (31.0, 31)])
def test_a_contact_that_counts_never_seems_too_short(stood_s: float, said: int):
    assert reasons(timed(stood_s=stood_s))["contact"] == (f"Wet for {said} s; 30 s at least.", True)


def test_of_another_product_its_label_says_how_strong():
    runner = Runner(evolve(QUAT, agent="label"))
    assert reasons(runner)["strength"] == ("200 ppm of active substance; how strong it must be its label says.", True)


LEAST = [(key, agent.least_ppm) for key, agent in AGENTS.items() if agent.least_ppm]


@pytest.mark.parametrize(("agent", "least_ppm"), LEAST)
def test_the_least_strength_counts_and_a_hair_less_does_not(agent: str, least_ppm: float):
    at, below = (met(Runner(evolve(QUAT, agent=agent, target=each * 1e-6))) for each in (least_ppm, least_ppm * 0.9999))
    assert (at["strength"], below["strength"]) == (True, False)


@pytest.mark.parametrize(
    ("agent", "by_label_s", "asked_s"),
    [("quat", None, 30.0), ("quat", 30.5, 30.5), ("quat", 29.5, 30.0), ("chlorine", None, 10.0)],
)
def test_how_long_it_must_stay_wet_says_the_rule_or_the_label(agent: str, by_label_s: float | None, asked_s: float):
    """Food Code 4-501.114: 10 s for chlorine, 30 s for the rest."""
    run = Runner(evolve(QUAT, agent=agent, contact_s=by_label_s)).run
    source = PRODUCT_LABEL if asked_s == by_label_s else FOOD_CODE_SANITISERS
    assert (run.contact_s, sanitised(run)[1][2].source) == (asked_s, source)
