"""What lifts the trace in a hold or a run: by hand, each limit met to a hair.

Eight holds of sixty readings from 10 to 12 °C, runs of fifteen; a reading a minute where nothing else is said. So a
hold rises by 0.1 K in three minutes and 0.333 K in ten; what rises by less than 0.35 K tells nothing. The humps are in
the fifth hold, whose foot is reading 0 here, and in the run after it.
"""

import pytest
from attrs import evolve

from core.chamber.settling.events import Event, find_events, other_ways, why_no_events
from core.chamber.settling.swing import Swing, Trace
from tests.core.settling_traces import legs, swing_of, trace_of

HOLDS, FOOT = 8, 4 * 75
TURNS = [turn for hold in range(HOLDS) for turn in ((75 * hold, False), (75 * hold + 60, True))]


def chamber(lifts: dict[int, float], interval_s: float = 60.0, **kinds: bool) -> tuple[Trace, Swing]:
    values = legs(10.0, *[(60, 12.0), (15, 10.0)] * HOLDS)
    for at, lift_k in lifts.items():
        values[FOOT + at] += lift_k
    return trace_of(values, interval_s, **kinds), swing_of(10.0, 12.0, 60 * interval_s, 15 * interval_s, TURNS)


def hump(first: int, up: int, lift_k: float, down: int) -> dict[int, float]:
    """Up within so many readings, and gone again within so many."""
    rising = {first + at: lift_k * at / up for at in range(1, up + 1)}
    return rising | {first + up + at: lift_k * (1 - at / down) for at in range(1, down)}


def seen(lifts: dict[int, float], interval_s: float = 60.0) -> list[Event]:
    return list(find_events(*chamber(lifts, interval_s)))


def shown(event: Event, interval_s: float = 60.0) -> list[object]:
    """Foot, a tenth risen, top and end in readings; from and top in °C."""
    at = [each / interval_s - FOOT for each in (event.starts_s, event.onset_s, event.top_s, event.ends_s)]
    return [event.kind, *at, event.from_c, event.top_c]


def test_plain_holds_and_runs_are_no_event():
    assert seen({}) == []


@pytest.mark.parametrize(
    ("lifts", "rows"),
    [
        # in a hold that ends at the usual peak: by 0.55 K within three minutes, twice what a hold does
        (hump(30, 1, 0.449, 8), []),
        (hump(30, 1, 0.451, 8), [["door", 28, 29.653, 31, 38, 10.9 + 1 / 30, 11.4 + 0.084 + 1 / 3000]]),
        # at its end: 0.35 K above the usual peak
        (hump(50, 10, 0.349, 20), []),
        (hump(50, 10, 0.351, 20), [["door", 54, 54.6, 60, 61, 11.9404, 12.351]]),
        # and by 0.783 K within ten minutes, 1.3 of a hold's: then it began there
        (hump(50, 10, 0.449, 20), [["door", 54, 54.6, 60, 62, 11.9796, 12.449]]),
        (hump(50, 10, 0.451, 20), [["defrost", 50, 51, 60, 62, 11 + 2 / 3, 12.451]]),
        # in a run, where it falls by 0.4 K in three minutes: by 0.48 K
        (hump(65, 1, 0.879, 6), []),
        (hump(65, 1, 0.881, 6), [["door", 65, 65.1, 66, 68, 11 + 1 / 3, 12.081]]),
        (hump(65, 1, 2, 6), [["door", 65, 65.1, 66, 70, 11 + 1 / 3, 13.2]]),
        # large ones
        (hump(50, 10, 2, 20), [["defrost", 43, 50.1, 60, 67, 11.3 + 4 / 30, 14]]),
        (hump(50, 10, 4, 20), [["defrost", 42, 50 + 5.8 / 13, 60, 70, 11.4, 16]]),
        (hump(45, 6, 3, 8), [["door", 36, 38.4, 60, 60, 11.2, 12]]),
        (hump(45, 10, 3, 8), [["door", 37, 42.675, 60, 62, 11.2 + 1 / 30, 13.125]]),
        # two in one hold are one, the steeper; in a hold and the run after it two
        (hump(30, 1, 1, 3) | hump(40, 1, 1, 3), [["door", 38, 40 + 1.3 / 31, 41, 44, 11.2 + 2 / 30, 12.3 + 2 / 30]]),
        (
            hump(50, 10, 2, 6) | hump(68, 1, 2, 6),
            [["defrost", 43, 50.1, 60, 64, 11.3 + 4 / 30, 14], ["door", 68, 68.1, 69, 73, 10.8 + 4 / 30, 12.8]],
        ),
    ],
)
def test_a_hump_is_seen_once_it_is_steeper_or_higher_than_holds_are(lifts: dict[int, float], rows: list[list[object]]):
    assert [shown(event) for event in seen(lifts)] == [[row[0], *(pytest.approx(at) for at in row[1:])] for row in rows]


@pytest.mark.parametrize(("interval_s", "lift_k", "count"), [(200 / 3.49, 1.0, 1), (200 / 3.51, 1.0, 0)])
def test_doors_are_looked_for_over_200_s(interval_s: float, lift_k: float, count: int):
    """Over three readings 0.88 K would show in a run, over four only 1.06 K."""
    assert len(seen(hump(65, 1, lift_k, 6), interval_s)) == count


@pytest.mark.parametrize(("interval_s", "foot"), [(600 / 10.49, 50), (600 / 10.51, 54)])
def test_defrosts_are_looked_for_over_600_s(interval_s: float, foot: int):
    """Over ten readings 0.45 K show at the end of a hold, over eleven 0.46 K: else only what is above the peak."""
    found = seen(hump(50, 10, 0.455, 20), interval_s)
    assert [event.starts_s / interval_s - FOOT for event in found] == pytest.approx([foot])


@pytest.mark.parametrize(("interval_s", "kind"), [(49.0, "door"), (49.2, "defrost")])
def test_a_door_rises_from_a_quarter_to_three_quarters_within_270_s(interval_s: float, kind: str):
    """From 11.333 to 15 °C: at 12.25 °C 1.75 readings after it began, at 14.083 °C 7.25: 5.5 readings."""
    assert [event.kind for event in seen(hump(50, 10, 3, 20), interval_s)] == [kind]


@pytest.mark.parametrize(("part", "kind"), [(0.2429, "door"), (0.2430, "defrost")])
def test_where_readings_are_few_a_door_rises_within_one_and_a_little(part: float, kind: str):
    """A quarter to three quarters of the rise, in a hair less than 1.01 readings and in a hair more."""
    found = seen({57: 3 * part, 58: 3 * (1 - part), 59: 3.0, 60: 3.0}, 300.0)
    assert [event.kind for event in found] == [kind]


@pytest.mark.parametrize(
    ("part", "interval_s", "is_unsure"),
    [(0.1950, 300, False), (0.1951, 300, True), (0.2697, 300, True), (0.2698, 300, False), (0.2429, 260, False)],
)
def test_what_rises_within_about_a_reading_may_be_a_door_or_a_defrost(part: float, interval_s: float, is_unsure: bool):
    """From 0.85 to 1.2 readings; where those are oftener than every 267 s a door is told by its 270 s."""
    found = seen({57: 3 * part, 58: 3 * (1 - part), 59: 3.0, 60: 3.0}, interval_s)
    assert [event.is_unsure for event in found] == [is_unsure]


def test_what_may_be_either_is_taken_for_both():
    door, either = (Event("door", 0, 0, 60, 90, 10, 12, is_unsure) for is_unsure in (False, True))
    assert other_ways([door, either]) == [(door, either), (door, evolve(either, kind="defrost"))]
    assert other_ways([door]) == []


@pytest.mark.parametrize(("interval_s", "over"), [(59.9, 26), (60.0, 25), (60.1, 25)])
def test_what_goes_slowly_is_over_after_25_min(interval_s: float, over: int):
    found = seen(hump(59, 1, 30, 100), interval_s)[:1]
    assert [(event.ends_s - event.top_s) / interval_s for event in found] == pytest.approx([over])


@pytest.mark.parametrize(("comes_down", "first", "count"), [(True, 9, 0), (False, 9, 1), (True, 10, 1)])
def test_after_a_pull_down_the_first_hold_may_be_as_steep_as_it_likes_for_ten_minutes(
    comes_down: bool, first: int, count: int
):
    lifts = {at - FOOT: lift_k for at, lift_k in hump(first, 1, 1, 8).items()}
    assert len(find_events(*chamber(lifts, comes_down=comes_down))) == count


@pytest.mark.parametrize(("lift_k", "count"), [(0.37, 0), (0.39, 1)])
def test_a_hold_that_begins_high_may_be_no_more_than_a_third_steeper(lift_k: float, count: int):
    """Foot at 10.6 °C, then to 12 °C: by 0.48 K within three minutes at the most, else it is a door's."""
    rise_k = 0.1 + lift_k
    values = legs(10.0, *[(60, 12.0), (15, 10.0)] * HOLDS)
    foot, values[FOOT - 15 : FOOT + 61] = FOOT, legs(12.0, (15, 10.6), (3, 10.6 + rise_k), (57, 12.0))
    trace = trace_of(values)
    assert len(find_events(trace, swing_of(10.0, 12.0, 3600.0, 900.0, TURNS))) == count
    assert trace.values[foot] == pytest.approx(10.6)


@pytest.mark.parametrize(("interval_s", "is_told"), [(60.0, True), (150.0, True), (151.0, False)])
def test_doors_and_defrosts_are_told_apart_by_a_reading_every_150_s(interval_s: float, is_told: bool):
    assert (why_no_events(trace_of([10.0, 10.0], interval_s)) is None) is is_told


@pytest.mark.parametrize("lifts", [hump(50, 10, 4, 20), hump(65, 1, 2, 6)])
@pytest.mark.parametrize("before", [2, 6])
def test_beside_a_hole_a_hump_is_seen_once(lifts: dict[int, float], before: int):
    """An hour is missing in the middle of another hold, before the hump or after it."""
    trace, swing = chamber(lifts)
    at = 75 * before + 30
    times_s = [each + (3600.0 if place >= at else 0.0) for place, each in enumerate(trace.times_s)]
    found = find_events(trace_of(trace.values, times_s=times_s), swing)
    late_s = 3600.0 if before < 4 else 0.0
    assert [(event.kind, event.starts_s - late_s, event.top_s - late_s, event.top_c) for event in found] == [
        (event.kind, event.starts_s, event.top_s, event.top_c) for event in seen(lifts)
    ]


@pytest.mark.parametrize(("lift_k", "foot"), [(0.42, 38), (0.424, 6)])
def test_each_part_of_a_hold_is_held_against_the_same_part_of_the_others(lift_k: float, foot: int):
    """Holds that rise by 0.9 K in three minutes and then by 0.0193 K a minute. A lift at the eighth, which stays: it
    shows within three minutes from 0.48 K on, 0.058 K of it the hold's; else only where the usual peak is passed."""
    values = legs(10.0, *[(3, 10.9), (57, 12.0), (15, 10.0)] * HOLDS)
    for at in range(8, 61):
        values[FOOT + at] += lift_k
    found = find_events(trace_of(values), swing_of(10.0, 12.0, 3600.0, 900.0, TURNS))
    assert [event.starts_s / 60 - FOOT for event in found] == [foot]


def test_an_event_rises_from_its_foot_to_its_top():
    assert seen(hump(65, 1, 2, 6))[0].rise_k == pytest.approx(13.2 - 11 - 1 / 3)
