"""Where each line of advice begins, common practice without a source: a finding on each side of it, a hair off."""

from types import SimpleNamespace
from typing import Any

import pytest

from core.chamber.settling.advice import advise
from core.chamber.settling.mapping import Pair
from core.chamber.settling.runs import Run
from core.chamber.settling.statistics import Band, Spread
from core.quantities import METRIC

HOUR_S, DAY_S = 3600.0, 86_400.0
AIR, WET = Band(12.0, 1.5), Band(0.80, 0.06)


def spread(mean: float = 12.0, deviation: float = 0.0, **more: Any) -> Spread:
    low, high = more.get("low", mean), more.get("high", mean)
    return Spread(
        mean, deviation, more.get("lowest", low), more.get("highest", high), low, high, DAY_S, more.get("in_band", 1.0)
    )


def rhythm(**more: float | None) -> Any:
    usual = {"swing_k": 1.0, "holds_s": 900.0, "starts_an_hour": 2.0, "run_share": 0.3, "warming_s": 10 * HOUR_S}
    return SimpleNamespace(**usual | more)


def runs(count: int = 9, **of: Any) -> tuple[Run, ...]:
    """An hour apart; of: what changes from the middle third to the last, in all."""
    third = count // 3
    made: list[Run] = []
    for n in range(count):
        late = n >= count - third
        lasts = 600.0 * (of.get("longer", 1.0) if late else 1.0)
        foot, peak = (of.get("foot", 0.0), of.get("peak", 0.0)) if late else (0.0, 0.0)
        begins = n * of.get("apart_s", HOUR_S)
        made.append(Run(begins - 60, begins, begins, 13.0 + peak, begins + lasts, 11.0 + foot))
    return tuple(made)


def probe(name: str = "low", *, dew: float | None = None, **more: Any) -> Any:
    humidity = more.get("humidity")
    if dew is not None:
        humidity = SimpleNamespace(dew_point=spread(dew), calm=spread(0.8))
    compressor = SimpleNamespace(
        runs=more.get("runs", ()), rhythm=more.get("rhythm"), told_events=more.get("events", ())
    )
    steady = more.get("steady", spread())
    return SimpleNamespace(
        name=name, humidity=humidity, compressor=compressor, steady=steady, first_c=more.get("first_c", 20.0),
        lasts_s=more.get("lasts_s", 2 * DAY_S),
    )  # fmt: skip


def keys(centre: Any = None, **more: Any) -> list[str]:
    return [each.key for each in advise(analysis(centre, **more))]


def analysis(centre: Any = None, **more: Any) -> Any:
    centre = centre or probe(rhythm=rhythm(), runs=runs())
    wanted = SimpleNamespace(temperature=AIR, humidity=more.get("wet", WET), apart_k=1.5)
    return SimpleNamespace(
        wanted=wanted, centre=centre, probes=more.get("probes", (centre,)), pairs=more.get("pairs", ()),
        space=more.get("space"), room_c=more.get("room_c"),
    )  # fmt: skip


def said(key: str, found: Any) -> str:
    (text,) = (each.text for each in advise(found) if each.key == key)
    return text.say(METRIC)


def test_nothing_is_advised_where_nothing_stands_out():
    assert keys() == []


@pytest.mark.parametrize(
    ("off_k", "deviation", "advised"),
    [(0.3, 0.0, True), (0.2999, 0.0, False), (-0.3, 0.0, True), (0.6, 0.1999, True), (0.6, 0.2001, False)],
)
def test_a_sensor_is_off_by_three_tenths_that_hold_to_a_third(off_k: float, deviation: float, advised: bool):
    pairs = (Pair("low", "high", spread(off_k, deviation)),)
    assert keys(pairs=pairs) == (["sensor"] if advised else [])


@pytest.mark.parametrize(("off_k", "way"), [(0.5, "above"), (-0.5, "below")])
def test_which_sensor_reads_above_the_other_is_said(off_k: float, way: str):
    pairs = (Pair("low {1}", "high", spread(off_k)),)
    assert said("sensor", analysis(pairs=pairs)).startswith(f"“low {{1}}” reads 0.5 K {way} “high” all the time.")


@pytest.mark.parametrize(("apart_k", "advised"), [(1.0, False), (1.001, True)])
def test_hygrometers_differ_by_a_kelvin_of_dew_point(apart_k: float, advised: bool):
    probes = (probe("a", dew=8.0), probe("b", dew=8.0 + apart_k), probe("c"))
    assert keys(probes=probes) == (["hygrometer"] if advised else [])


def test_the_damper_hygrometer_is_named_first():
    probes = (probe("a", dew=8.0), probe("b", dew=10.0), probe("c", dew=9.0))
    assert said("hygrometer", analysis(probes=probes)).startswith("“b” shows a dew point 2 K above “a”")


def test_one_hygrometer_is_compared_with_nothing_and_none_where_a_sensor_is_off():
    assert keys(probes=(probe("a", dew=8.0), probe("b"))) == []
    probes = (probe("a", dew=8.0), probe("b", dew=10.0))
    assert keys(probes=probes, pairs=(Pair("a", "b", spread(0.5)),)) == ["sensor"]


@pytest.mark.parametrize(
    ("mean", "low", "room_c", "first_c", "advised"),
    [
        (18.01, 14.0, 20.0, 30.0, True), (18.0, 14.0, 20.0, 10.0, False), (18.01, 14.0, None, 20.0, True),
        (18.0, 14.0, None, 20.0, False), (18.01, 13.5, 20.0, 20.0, False), (18.01, 13.501, 20.0, 20.0, True),
    ],
)  # fmt: skip
def test_a_compressor_that_does_not_cool(mean: float, low: float, room_c, first_c: float, advised: bool):
    """Within two kelvin of the room, or of where it began; too warm is above 13.5 °C for all but a twentieth."""
    centre = probe(steady=spread(mean, low=low), first_c=first_c)
    assert ("compressor" in keys(centre, room_c=room_c)) is advised
    running = probe(steady=spread(mean, low=low), first_c=first_c, runs=runs(3))
    assert "compressor" not in keys(running, room_c=room_c)


@pytest.mark.parametrize(("count", "longer", "advised"), [(9, 1.301, True), (9, 1.3, False), (8, 2.0, False)])
def test_runs_that_grow_by_three_tenths_tell_of_ice(count: int, longer: float, advised: bool):
    assert ("ice" in keys(probe(rhythm=rhythm(), runs=runs(count, longer=longer)))) is advised


def test_from_how_long_to_how_long_the_runs_grew_is_said():
    found = analysis(probe(rhythm=rhythm(), runs=runs(12, longer=2.0)))
    assert said("ice", found).endswith("the runs grew from 10 min to 20 min.")


@pytest.mark.parametrize(
    ("count", "foot", "peak", "advised"),
    [
        (9, 0.76, 0.76, True), (9, 0.75, 0.76, False), (9, 0.76, 0.75, False), (9, -0.76, -0.76, True),
        (9, 0.76, -0.76, False), (8, 0.9, 0.9, False),
    ],
)  # fmt: skip
def test_a_thermostat_that_drifts_by_half_of_the_half_band_a_day(count: int, foot: float, peak: float, advised: bool):
    """Runs eight hours apart: the last third lies a day behind the middle one."""
    made = runs(count, foot=foot, peak=peak, apart_s=8 * HOUR_S)
    assert ("drift" in keys(probe(rhythm=rhythm(), runs=made))) is advised


def test_by_how_much_it_drifts_is_said():
    found = analysis(probe(rhythm=rhythm(), runs=runs(9, foot=0.8, peak=1.0, apart_s=8 * HOUR_S)))
    assert "drift by 0.9 K/d" in said("drift", found)


@pytest.mark.parametrize(("off_k", "advised"), [(0.5, False), (0.501, True), (-0.501, True), (-0.5, False)])
def test_a_mean_a_third_of_the_half_band_off_turns_the_set_point(off_k: float, advised: bool):
    centre = probe(rhythm=rhythm(), runs=runs(), steady=spread(12.0 + off_k))
    assert keys(centre) == (["set-point"] if advised else [])


@pytest.mark.parametrize(("off_k", "way"), [(1.0, "lower"), (-1.0, "higher")])
def test_which_way_to_turn_is_said(off_k: float, way: str):
    centre = probe(rhythm=rhythm(), runs=runs(), steady=spread(12.0 + off_k))
    assert said("set-point", analysis(centre)).startswith(f"Set the thermostat 1 K {way}:")


@pytest.mark.parametrize(("swing_k", "advised"), [(2.4, False), (2.41, True)])
def test_a_swing_of_four_fifths_of_the_band_is_too_wide(swing_k: float, advised: bool):
    assert keys(probe(rhythm=rhythm(swing_k=swing_k), runs=runs())) == (["differential"] if advised else [])


def test_by_how_much_to_narrow_it_is_said():
    found = analysis(probe(rhythm=rhythm(swing_k=3.4), runs=runs()))
    assert said("differential", found).startswith("Narrow the differential by 1 K or more: the trace swings by 3.4 K")


@pytest.mark.parametrize(
    ("holds_s", "starts", "advised"), [(300.0, 6.0, False), (299.9, 6.0, True), (300.0, 6.01, True)]
)
def test_a_compressor_rests_for_five_minutes_and_starts_six_times_an_hour(holds_s: float, starts: float, advised: bool):
    centre = probe(rhythm=rhythm(holds_s=holds_s, starts_an_hour=starts), runs=runs())
    assert keys(centre) == (["differential"] if advised else [])


def test_how_often_it_starts_and_for_how_long_it_rests_is_said():
    found = analysis(probe(rhythm=rhythm(holds_s=240.0, starts_an_hour=8.0), runs=runs()))
    assert "starts 8 /h and rests for 4 min only" in said("differential", found)


@pytest.mark.parametrize(("count", "advised"), [(3, True), (2, False)])
def test_a_swing_that_cannot_be_timed_is_seen_from_three_runs_on(count: int, advised: bool):
    made = [Run(each.rises_s, each.falls_s, each.peak_s, 14.0, each.trough_s, 11.0) for each in runs(count)]
    assert keys(probe(runs=tuple(made))) == (["differential"] if advised else [])


def humid(**more: Any) -> Any:
    return probe(rhythm=rhythm(), runs=runs(), humidity=SimpleNamespace(dew_point=None, calm=spread(**more)))


@pytest.mark.parametrize(("high", "advice"), [(0.7399, ["humidifier"]), (0.7401, ["humidity-set-point"])])
def test_a_humidity_that_hardly_gets_into_its_band_is_a_weak_humidifier_s(high: float, advice: list[str]):
    assert keys(humid(mean=0.73, high=high)) == advice


@pytest.mark.parametrize(
    ("more", "advised"),
    [
        ({"in_band": 0.979, "high": 0.831, "highest": 0.861, "low": 0.8199}, True),
        ({"in_band": 0.98, "high": 0.831, "highest": 0.861, "low": 0.8199}, False),
        ({"in_band": 0.979, "high": 0.83, "highest": 0.861, "low": 0.8199}, False),
        ({"in_band": 0.979, "high": 0.831, "highest": 0.86, "low": 0.8199}, False),
        ({"in_band": 0.979, "high": 0.831, "highest": 0.861, "low": 0.8201}, False),
        ({"in_band": None, "high": 0.831, "highest": 0.861, "low": 0.8199}, False),
    ],
)
def test_a_humidifier_that_overshoots_goes_past_its_band_from_its_target(more: dict[str, Any], advised: bool):
    assert keys(humid(mean=0.80, **more)) == (["humidifier"] if advised else [])


def test_from_where_to_where_the_humidity_goes_is_said():
    found = analysis(humid(mean=0.80, in_band=0.9, high=0.85, highest=0.9, low=0.78))
    assert "the humidity goes from 78 % to 90 %" in said("humidifier", found)
    weak = analysis(humid(mean=0.7, high=0.71))
    assert "gets into its band, 70 % in the mean" in said("humidifier", weak)


@pytest.mark.parametrize(("off", "advised"), [(0.0199, False), (0.0201, True), (-0.0201, True), (-0.0199, False)])
def test_a_humidity_a_third_of_the_half_band_off_turns_the_humidistat(off: float, advised: bool):
    assert keys(humid(mean=0.80 + off)) == (["humidity-set-point"] if advised else [])


@pytest.mark.parametrize(("off", "way"), [(0.04, "lower"), (-0.04, "higher")])
def test_which_way_to_turn_the_humidistat_is_said(off: float, way: str):
    text = said("humidity-set-point", analysis(humid(mean=0.80 + off)))
    assert text == f"Set the humidistat 4 % (of relative humidity) {way}."


def test_without_a_band_or_a_hygrometer_nothing_is_said_of_the_humidity():
    assert keys(humid(mean=0.5), wet=None) == []


def opened(doors: int, lasts_s: float, defrosts: int = 0) -> Any:
    events = [*[SimpleNamespace(kind="door")] * doors, *[SimpleNamespace(kind="defrost")] * defrosts]
    return probe(rhythm=rhythm(), runs=runs(), events=events, lasts_s=lasts_s)


@pytest.mark.parametrize(
    ("doors", "lasts_s", "defrosts", "advised"),
    [
        (12, 2 * DAY_S, 0, False), (13, 2 * DAY_S, 0, True), (12, 2 * DAY_S, 9, False), (3, 0.4 * DAY_S, 0, False),
        (4, 0.4 * DAY_S, 0, True), (4, DAY_S, 0, False), (4, 0.0, 0, True), (12, 1.99 * DAY_S, 0, True),
    ],
)  # fmt: skip
def test_a_door_opened_more_than_six_times_a_day_is_left_shut(doors: int, lasts_s: float, defrosts: int, advised: bool):
    assert keys(opened(doors, lasts_s, defrosts)) == (["door"] if advised else [])


def test_how_often_the_door_was_opened_is_said():
    assert said("door", analysis(opened(20, 2 * DAY_S))) == "Leave the door shut for the proof: it was opened 20 times."


@pytest.mark.parametrize(("warming_s", "advised"), [(7200.0, False), (7199.0, True), (None, False)])
def test_a_chamber_that_warms_within_two_hours_leaks(warming_s: float | None, advised: bool):
    assert keys(probe(rhythm=rhythm(warming_s=warming_s), runs=runs())) == (["door"] if advised else [])


@pytest.mark.parametrize(
    ("gradient_k", "uniformity_k", "advised"),
    [(1.5, 1.5, False), (1.501, 0.0, True), (0.0, 1.501, True)],
)
def test_probes_further_apart_than_is_wanted_ask_for_more_air(gradient_k: float, uniformity_k: float, advised: bool):
    space = SimpleNamespace(gradient_k=gradient_k, uniformity_k=uniformity_k)
    assert keys(space=space) == (["fan"] if advised else [])


def test_how_far_apart_the_probes_are_is_said():
    assert "the probes are 2 K apart" in said("fan", analysis(space=SimpleNamespace(gradient_k=1.8, uniformity_k=2.0)))


@pytest.mark.parametrize(("share", "advised"), [(0.8, False), (0.801, True)])
def test_a_compressor_that_runs_more_than_four_fifths_of_the_time_is_overloaded(share: float, advised: bool):
    assert keys(probe(rhythm=rhythm(run_share=share), runs=runs())) == (["load"] if advised else [])


def test_how_much_of_the_time_it_runs_is_said():
    assert "runs 85 % of the time" in said("load", analysis(probe(rhythm=rhythm(run_share=0.85), runs=runs())))


@pytest.mark.parametrize(("low", "first_c", "advised"), [(13.6, 30.0, True), (13.4, 30.0, False), (13.6, 14.0, False)])
def test_one_that_never_comes_down_is_overloaded_unless_it_does_not_cool(low: float, first_c: float, advised: bool):
    assert ("load" in keys(probe(steady=spread(14.0, low=low), first_c=first_c))) is advised


def test_what_misleads_all_the_rest_is_said_first():
    centre = probe(
        rhythm=rhythm(swing_k=3.0, run_share=0.9, warming_s=HOUR_S),
        runs=runs(9, longer=2.0, foot=0.9, peak=0.9, apart_s=8 * HOUR_S),
        steady=spread(13.0),
        humidity=SimpleNamespace(dew_point=None, calm=spread(0.7)),
    )
    space = SimpleNamespace(gradient_k=2.0, uniformity_k=2.0)
    assert keys(centre, pairs=(Pair("a", "b", spread(0.5)),), space=space) == [
        "sensor", "ice", "door", "load", "drift", "differential", "set-point", "humidifier", "fan",
    ]  # fmt: skip
