"""The preparation run: its order, its timers, and what waits for what."""

import pytest

from core.chamber.sanitising_agents import AGENTS
from core.chamber.sanitising_run import Task, preparation, ready_for
from core.quantities import METRIC, US
from core.refusals import OutOfRange


def keys(tasks: tuple[Task, ...]) -> list[str]:
    return [task.key for task in tasks]


def task(tasks: tuple[Task, ...], key: str) -> Task:
    return next(each for each in tasks if each.key == key)


def test_it_begins_with_the_plug_and_ends_with_it():
    run = keys(preparation("chlorine", 100.0))
    assert (run[0], run[-1]) == ("unplug", "plug")


def test_washing_rinsing_sanitising_and_contact_come_in_that_order():
    run = keys(preparation("chlorine", 100.0))
    assert sorted(("wash", "rinse", "mix", "sanitise", "contact", "drain", "dry"), key=run.index) == [
        *("wash", "rinse", "mix", "sanitise", "contact", "drain", "dry")
    ]


@pytest.mark.parametrize("agent", AGENTS)
def test_every_task_waits_only_for_tasks_before_it(agent: str):
    run = preparation(agent, 50.0, descale=True)
    for place, each in enumerate(run):
        assert set(each.after) <= set(keys(run[:place]))


@pytest.mark.parametrize("agent", AGENTS)
def test_keys_are_its_own(agent: str):
    run = keys(preparation(agent, 50.0, descale=True))
    assert len(set(run)) == len(run)


@pytest.mark.parametrize("reader", [METRIC, US])
def test_every_task_can_be_said(reader):
    assert all(each.text.say(reader) for each in preparation("chlorine", 100.0, descale=True))


def test_the_reader_sees_their_own_degrees():
    assert "55 °F" in task(preparation("chlorine", 100.0), "mix").text.say(US)


def test_what_may_stay_on_is_drained():
    assert "drain" in keys(preparation("chlorine", 200.0))


@pytest.mark.parametrize(
    ("agent", "ppm", "after"), [("chlorine", 300.0, "drain"), ("chlorine", 100.0, "rinse"), ("label", 100.0, "drain")]
)
def test_what_may_not_stay_on_is_rinsed(agent: str, ppm: float, after):
    run = keys(preparation(agent, ppm, after))
    assert "rinse-sanitiser" in run
    assert "drain" not in run


def test_the_contact_time_runs_as_a_timer():
    assert task(preparation("iodine", 20.0), "contact").timer_s == 30.0


def test_a_longer_time_on_the_label_is_kept():
    assert task(preparation("quat", 200.0, contact_s=60.0), "contact").timer_s == 60.0


def test_a_shorter_time_on_the_label_does_not_shorten_the_rule():
    assert task(preparation("quat", 200.0, contact_s=5.0), "contact").timer_s == 30.0


def test_vinegar_is_rinsed_away_before_anything_else_goes_in():
    run = keys(preparation("chlorine", 100.0, descale=True))
    assert run.index("descale") < run.index("rinse-descaler") < run.index("mix")


def test_sprays_are_kept_off_what_they_would_spoil():
    assert "off fans, sensors and electrics" in task(preparation("quat", 200.0), "cover").text.say(METRIC)


def test_wick_reservoir_tray_and_basin_are_thought_of():
    assert {"wick", "reservoir", "tray", "basin"} <= set(keys(preparation("quat", 200.0)))


def test_only_the_first_task_may_be_begun_at_first():
    assert keys(ready_for(preparation("quat", 200.0), frozenset())) == ["unplug"]


def test_nothing_is_left_when_all_is_done():
    run = preparation("quat", 200.0)
    assert ready_for(run, frozenset(keys(run))) == ()


def test_an_unknown_sanitiser_is_refused():
    with pytest.raises(OutOfRange):
        preparation("soap", 100.0)


@pytest.mark.parametrize(
    ("agent", "limit_ppm"), [("chlorine", 200), ("isocyanurate", 100), ("iodine", 25), ("quat", 200)]
)
def test_a_run_drains_what_may_stay_on_and_rinses_a_hair_more(agent: str, limit_ppm: float):
    """21 CFR 178.1010(c)(1), (2), (3) and 40 CFR 180.940(a)."""
    assert "drain" in keys(preparation(agent, limit_ppm))
    assert "rinse-sanitiser" in keys(preparation(agent, limit_ppm * 1.0001))


def test_lime_is_steeped_for_half_an_hour_and_all_dries_for_an_hour():
    """Common practice; no published source."""
    run = preparation("chlorine", 100.0, descale=True)
    assert task(run, "descale").timer_s == 1800.0
    assert task(run, "dry").timer_s == 3600.0


def test_each_task_waits_for_the_one_above_it():
    run = preparation("chlorine", 100.0, descale=True)
    assert [each.after for each in run] == [(), *((key,) for key in keys(run)[:-1])]


@pytest.mark.parametrize(("reader", "warmth"), [(METRIC, "12.7778 °C"), (US, "55 °F")])
def test_how_strong_and_how_warm_to_mix_is_said(reader, warmth: str):
    said = task(preparation("chlorine", 100.0), "mix").text.say(reader)
    assert f"at 100 ppm, at {warmth} or warmer" in said
