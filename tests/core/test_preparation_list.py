"""The list of a preparation run: the usual one, one's own, and how it is edited."""

import pytest
from attrs import evolve

from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.preparation import KeptTask, PreparationBegun, PreparationListKept
from core.daybook.preparation_list import (
    DIGITS,
    added,
    edited,
    kept,
    moved,
    removed,
    rewritten,
    tasks_for,
    usual,
    words_of,
)
from core.quantities import METRIC, US, Reader
from core.refusals import OutOfRange
from tests.core.kitchen import Kitchen

QUAT = PreparationBegun("quat", stock=0.1, target=200e-6, volume_m3=0.004)
STRONG = evolve(QUAT, target=800e-6, after="rinse")
LIME = evolve(QUAT, descaled=True)
OWN = tuple(KeptTask(task.key) for task in usual(QUAT))


def keys(tasks) -> list[str]:
    return [task.key for task in tasks]


def text_of(tasks, key: str) -> str:
    return said_task(next(task for task in tasks if task.key == key))


def said_task(task: KeptTask, reader: Reader = METRIC) -> str:
    return words_of(task).say(reader, DIGITS)


def as_usual(key: str) -> tuple[str, float | None]:
    """What a form shows of the usual task."""
    task = next(task for task in usual(QUAT) if task.key == key)
    return said_task(task), task.timer_s


def timer_of(tasks, key: str) -> float | None:
    return next(task.timer_s for task in tasks if task.key == key)


def refused(call) -> str:
    with pytest.raises(OutOfRange) as caught:
        call()
    return caught.value.field


def test_without_a_list_of_ones_own_the_usual_one_is_used():
    assert tasks_for(QUAT, ()) == usual(QUAT)


def test_ones_own_list_in_the_usual_words_is_the_usual_one():
    assert tasks_for(QUAT, OWN) == usual(QUAT)


@pytest.mark.parametrize(("reader", "shown"), [(METRIC, "23.9 °C"), (US, "75 °F"), (Reader("metric", ","), "23,9")])
def test_the_words_are_in_the_readers_units(reader: Reader, shown: str):
    assert shown in said_task(next(task for task in usual(QUAT) if task.key == "mix"), reader)


def test_a_task_of_ones_own_keeps_its_place_and_its_timer():
    own = (OWN[0], KeptTask("own-1", "Look at the seal.", 60.0), *OWN[1:])
    assert tasks_for(QUAT, own)[1] == own[1]


def test_the_usual_words_follow_the_run():
    assert "100 ppm" in text_of(tasks_for(evolve(QUAT, target=100e-6), OWN), "mix")


def test_words_of_ones_own_stay():
    own = edited(OWN, "wash", "Wash with the blue brush.", None, as_usual("wash"))
    assert text_of(tasks_for(QUAT, own), "wash") == "Wash with the blue brush."


def test_a_task_left_as_usual_follows_the_usual_list():
    assert edited(OWN, "mix", as_usual("mix")[0], None, as_usual("mix")) == OWN


def test_a_timer_taken_off_a_usual_task_is_off():
    own = edited(OWN, "dry", as_usual("dry")[0], None, as_usual("dry"))
    assert next(task for task in tasks_for(QUAT, own) if task.key == "dry").timer_s is None


def test_a_run_that_must_be_rinsed_is_rinsed_where_the_list_drains():
    found = keys(tasks_for(STRONG, OWN))
    assert "rinse-sanitiser" in found
    assert "drain" not in found


def test_descaling_is_put_into_a_list_that_was_made_without():
    assert keys(tasks_for(LIME, OWN)) == keys(usual(LIME))


def test_descaling_is_left_out_where_there_is_no_lime():
    own = tuple(KeptTask(task.key) for task in usual(LIME))
    assert keys(tasks_for(QUAT, own)) == keys(usual(QUAT))


@pytest.mark.parametrize("key", ["contact", "sanitise"])
def test_what_makes_it_count_is_put_back(key: str):
    assert keys(tasks_for(QUAT, removed(OWN, key))) == keys(usual(QUAT))


def test_a_rinse_that_was_left_out_is_put_back_before_the_drying():
    own = tuple(task for task in OWN if task.key != "drain")
    found = keys(tasks_for(STRONG, own))
    assert found.index("contact") < found.index("rinse-sanitiser") < found.index("dry")


@pytest.mark.parametrize(("by", "place"), [(-1, 2), (1, 4)])
def test_a_task_moves_one_place(by: int, place: int):
    assert keys(moved(OWN, "wash", by)).index("wash") == place


@pytest.mark.parametrize(("key", "by"), [("unplug", -1), ("plug", 1)])
def test_at_the_end_of_the_list_it_stays(key: str, by: int):
    assert moved(OWN, key, by) == OWN


def test_a_task_that_is_not_there_cannot_be_moved():
    with pytest.raises(KeyError):
        moved(OWN, "own-9", 1)


def test_the_last_task_stays():
    assert refused(lambda: removed((KeptTask("wash"),), "wash")) == ""


def test_tasks_of_ones_own_have_keys_of_their_own():
    twice = added(added(OWN, "One.", None), "Two.", 60.0)
    assert keys(twice)[-2:] == ["own-1", "own-2"]


def test_a_key_is_not_used_again_while_a_later_one_stands():
    tasks = removed(added(added(OWN, "One.", None), "Two.", None), "own-1")
    assert keys(added(tasks, "Three.", None))[-1] == "own-3"


@pytest.mark.parametrize(
    ("text", "timer_s", "field"),
    [("", None, "text"), ("x" * 201, None, "text"), ("Wait.", 3e5, "timer_s"), ("W.", -1.0, "timer_s")],
)
def test_what_cannot_be_kept_is_refused_beside_its_box(text: str, timer_s: float | None, field: str):
    assert refused(lambda: added(OWN, text, timer_s)) == field


def test_a_list_has_an_end():
    many = tuple(KeptTask(f"own-{number}", "Wait.") for number in range(60))
    assert refused(lambda: added(many, "One more.", None)) == "text"


def test_the_list_kept_last_counts():
    kitchen = Kitchen()
    kitchen.note(PreparationListKept(OWN[:3]), CHAMBER, at=1)
    kitchen.note(PreparationListKept(), CHAMBER, at=2)
    assert kept(kitchen.book) == ()


def test_a_run_keeps_no_words_in_the_units_of_then():
    """What is kept of a usual task is its key and values: another reader reads it in their own units."""
    mix = next(task for task in usual(QUAT) if task.key == "mix")
    assert mix.text == ""
    assert said_task(mix, US) == said_task(mix).replace("23.9 °C", "75 °F")


def test_a_run_corrected_without_a_change_keeps_its_tasks():
    was = evolve(QUAT, tasks=usual(QUAT))
    assert rewritten(was, QUAT) == was.tasks


def test_a_run_corrected_says_its_new_strength():
    was = evolve(QUAT, tasks=usual(QUAT))
    assert "150 ppm" in text_of(rewritten(was, evolve(QUAT, target=150e-6)), "mix")


def test_a_run_corrected_keeps_the_words_of_its_maker():
    was = evolve(QUAT, tasks=(*usual(QUAT)[:-1], KeptTask("own-1", "Air the room.")))
    assert keys(rewritten(was, evolve(QUAT, target=150e-6)))[-1] == "own-1"


def test_a_run_corrected_to_descale_descales():
    was = evolve(QUAT, tasks=usual(QUAT))
    assert keys(rewritten(was, LIME)) == keys(usual(LIME))


def test_words_have_no_more_digits_than_wet_hands_can_read():
    assert "at 200 ppm, at 23.9 °C or warmer:" in text_of(usual(QUAT), "mix")


@pytest.mark.parametrize(("label", "ending"), [(400e-6, "drain"), (None, "rinse-sanitiser")])
def test_a_label_that_lets_it_stay_on_is_followed(label: float | None, ending: str):
    assert ending in keys(usual(evolve(QUAT, target=300e-6, label=label)))


def test_the_list_that_was_kept_is_the_one_used():
    kitchen = Kitchen()
    kitchen.note(PreparationListKept(OWN[:3]), CHAMBER)
    assert kept(kitchen.book) == OWN[:3]


def test_where_none_was_kept_there_is_none():
    assert kept(Kitchen().book) == ()


def test_what_must_not_be_left_out_comes_first_where_nothing_it_follows_is_left():
    own = (KeptTask("own-1", "Look at the seal."), KeptTask("own-2", "Air the room."))
    assert keys(tasks_for(QUAT, own)) == ["sanitise", "contact", "own-1", "own-2"]


def test_a_drain_in_words_of_ones_own_does_not_say_how_to_rinse():
    own = edited(OWN, "drain", "Let it drip.", None, as_usual("drain"))
    assert text_of(tasks_for(QUAT, own), "drain") == "Let it drip."
    assert text_of(tasks_for(STRONG, own), "rinse-sanitiser") == text_of(usual(STRONG), "rinse-sanitiser")


@pytest.mark.parametrize(("timer_s", "stands_s"), [(7200.0, 7200.0), (0.0, None)])
def test_a_timer_of_ones_own_takes_the_place_of_the_usual(timer_s: float, stands_s: float | None):
    own = edited(OWN, "dry", as_usual("dry")[0], timer_s, as_usual("dry"))
    assert timer_of(tasks_for(QUAT, own), "dry") == stands_s
    assert keys(own) == keys(OWN)


def test_an_own_task_that_need_not_stand_has_no_timer_in_the_run():
    assert timer_of(tasks_for(QUAT, (*OWN, KeptTask("own-1", "Look.", 0.0))), "own-1") is None


def test_a_task_of_ones_own_is_edited_in_its_place():
    tasks = added(added(OWN[:2], "One.", None), "Two.", 60.0)
    assert edited(tasks, "own-1", "Other.", 90.0, None) == (*OWN[:2], KeptTask("own-1", "Other.", 90.0), tasks[3])


@pytest.mark.parametrize("timer_s", [None, 7200.0])
def test_a_run_corrected_keeps_a_timer_of_its_maker(timer_s: float | None):
    tasks = tuple(evolve(each, timer_s=timer_s) if each.key == "dry" else each for each in usual(QUAT))
    was = evolve(QUAT, tasks=tasks)
    found = rewritten(was, evolve(QUAT, target=150e-6))
    assert timer_of(found, "dry") == timer_s
    assert timer_of(found, "contact") == 30.0


def test_a_run_corrected_keeps_words_of_its_maker_beside_the_usual_ones():
    was = evolve(QUAT, tasks=tuple(evolve(each, text="Scrub.") if each.key == "wash" else each for each in usual(QUAT)))
    found = rewritten(was, evolve(QUAT, target=150e-6))
    assert text_of(found, "wash") == "Scrub."
    assert "150 ppm" in text_of(found, "mix")


def test_the_second_task_can_become_the_first():
    assert keys(moved(OWN[:3], "clear", -1)) == ["clear", "unplug", "cover"]


def test_of_two_tasks_one_may_go():
    assert removed(OWN[:2], "unplug") == OWN[1:2]


@pytest.mark.parametrize(
    ("text", "timer_s"), [("x" * 200, None), ("W.", 0.0), ("W.", 0.5), ("W.", 48 * 3600.0), ("W.", None)]
)
def test_what_can_just_be_kept_is_kept(text: str, timer_s: float | None):
    assert added(OWN, text, timer_s)[-1] == KeptTask("own-1", text, timer_s)


@pytest.mark.parametrize("timer_s", [-0.5, 48 * 3600.0 + 1])
def test_a_time_a_hair_outside_is_refused(timer_s: float):
    assert refused(lambda: added(OWN, "Wait.", timer_s)) == "timer_s"


def test_the_sixtieth_task_is_taken_and_no_more():
    tasks = tuple(KeptTask(f"own-{number}", "Wait.") for number in range(59))
    sixty = added(tasks, "One more.", None)
    assert len(sixty) == 60
    with pytest.raises(OutOfRange, match="A list can have 60 tasks at most"):
        added(sixty, "Another.", None)


def test_a_text_too_long_is_told_how_long_it_may_be():
    with pytest.raises(OutOfRange, match="A task can have 200 characters at most"):
        added(OWN, "x" * 201, None)
