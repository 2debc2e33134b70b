"""The compressor in the trace of a chamber whose runs are known: counted, timed, refused where it cannot be seen."""

import pytest
from attrs import evolve

from core.chamber.series import Series
from core.chamber.settling.analysis import Compressor
from core.chamber.settling.figures import figures_of
from core.chamber.settling.rhythm import Rhythm
from tests.core import walled_model
from tests.core.analysed import analyse, compressor_of
from tests.core.chamber_model import Chamber, Logged, Logger, Truth, log, run
from tests.core.telling import told as words_of

QUIET = run(Chamber(), 24)
HOLD_S = sum(b[0] - a[1] for a, b in zip(QUIET.runs[1:], QUIET.runs[2:], strict=False)) / (len(QUIET.runs) - 2)
RUN_S = sum(stop_s - start_s for start_s, stop_s in QUIET.runs[1:]) / (len(QUIET.runs) - 1)


def seen(logged: Logged, room_c: float | None = 20.0) -> Compressor:
    return compressor_of(Series("low", logged.times_s, logged.temperatures_c), room_c)


def logged(truth: Truth = QUIET, **changes: float) -> Logged:
    return log(truth, evolve(Logger(), **changes), 7)


def rhythm(log_: Logged) -> Rhythm:
    found = seen(log_).rhythm
    assert found is not None
    return found


def thinned(whole: Logged, first: int, end: int) -> Logged:
    """Without the readings from `first` to `end`."""
    return Logged(
        *(column[:first] + column[end:] for column in (whole.times_s, whole.temperatures_c, whole.humidities))
    )


@pytest.mark.parametrize("interval_s", [10, 30, 60, 120, 300])
def test_every_run_is_counted_whatever_the_interval(interval_s: float):
    assert len(seen(logged(interval_s=interval_s)).runs) == len(QUIET.runs) - 1


@pytest.mark.parametrize("noise_k", [0.0, 0.05, 0.1, 0.2])
def test_noise_does_not_fool_the_count(noise_k: float):
    assert len(seen(logged(noise_k=noise_k, interval_s=30)).runs) == len(QUIET.runs) - 1


@pytest.mark.parametrize("step_k", [0.01, 0.1, 0.25, 0.5])
def test_coarse_steps_do_not_fool_the_count(step_k: float):
    assert len(seen(logged(step_k=step_k)).runs) == len(QUIET.runs) - 1


@pytest.mark.parametrize("lag_s", [20, 120, 240])
def test_a_slow_probe_does_not_lengthen_the_runs(lag_s: float):
    assert rhythm(logged(lag_s=lag_s)).cools_s == pytest.approx(RUN_S, abs=60)


def test_the_hold_is_the_time_between_runs():
    assert rhythm(logged()).holds_s == pytest.approx(HOLD_S, rel=0.03)


def test_the_warming_time_constant_is_the_chambers():
    assert rhythm(logged()).warming_s == pytest.approx(QUIET.chamber.warming_s, rel=0.05)


def test_without_the_rooms_temperature_there_is_no_warming_time():
    found = seen(logged(), room_c=None).rhythm
    assert found is not None
    assert found.warming_s is None


def test_it_cools_at_the_pace_of_the_coil():
    chamber = QUIET.chamber
    middle_c = chamber.cut_out_c + chamber.differential_k / 2
    by_s = (middle_c - chamber.coil_c) / chamber.cooling_s - (chamber.room_c - middle_c) / chamber.warming_s
    assert rhythm(logged(interval_s=30)).cools_by_s == pytest.approx(by_s, rel=0.2)


def test_share_and_starts_follow_from_run_and_hold():
    found = rhythm(logged())
    assert found.run_share == pytest.approx(found.cools_s / (found.cools_s + found.holds_s))
    assert found.starts_an_hour == pytest.approx(3600 / (found.cools_s + found.holds_s))


def test_the_pull_down_is_no_run():
    found = seen(logged())
    assert found.runs[0].rises_s > QUIET.runs[0][1]


def test_a_log_that_starts_in_the_middle_counts_the_rest():
    whole = logged()
    assert abs(len(seen(thinned(whole, 0, 400)).runs) - sum(stop_s > 400 * 60 for _, stop_s in QUIET.runs)) <= 1


def test_the_cycle_around_a_gap_is_not_measured():
    found = rhythm(thinned(logged(), 600, 800))
    assert found.holds_s == pytest.approx(HOLD_S, rel=0.03)


def test_a_chamber_that_does_not_cycle_is_refused_in_words():
    steady = Logged([60.0 * at for at in range(1000)], [12.0] * 1000)
    assert words_of(seen(steady).why_not).startswith("Cycles cannot be resolved")


def test_a_log_every_ten_minutes_is_refused_in_words():
    assert "Log every 5 min or oftener" in words_of(seen(logged(interval_s=600)).why_not)


def test_quick_cycles_logged_every_five_minutes_are_refused_in_words():
    quick = run(Chamber(differential_k=0.5, warming_s=7200, cooling_s=2400), 24)
    assert seen(logged(quick, interval_s=300, step_k=0.1)).why_not


def test_cycles_of_five_readings_or_so_are_counted():
    quick = run(Chamber(differential_k=0.6, warming_s=7200, cooling_s=2400), 24)
    found = seen(logged(quick, interval_s=300, step_k=0.1))
    assert found.is_counted
    assert len(found.runs) == len(quick.runs) - 1


def test_noise_as_large_as_the_swing_is_refused_in_words():
    assert "noise" in words_of(seen(logged(noise_k=1.0)).why_not)


def test_a_few_readings_are_refused_in_words():
    assert "too few" in words_of(seen(thinned(logged(), 10, 10_000)).why_not)


def test_one_cycle_is_refused_in_words():
    assert seen(thinned(logged(), 150, 10_000)).why_not


def test_a_swing_of_hardly_more_than_two_steps_is_refused_in_words():
    narrow = run(Chamber(differential_k=0.8), 24)
    found = seen(logged(narrow, step_k=0.5))
    assert not found.is_counted
    assert found.rhythm is None
    assert "Log in steps of 0.1 K" in words_of(found.why_not)


def test_a_narrow_noisy_log_gives_the_share_of_the_time_with_a_range_that_holds_it():
    narrow = run(Chamber(differential_k=0.6), 24)
    runs = narrow.runs[1:]
    share = sum(stop_s - start_s for start_s, stop_s in runs) / (runs[-1][1] - runs[0][0])
    found = rhythm(logged(narrow, noise_k=0.05))
    assert found.run_share_low < share < found.run_share_high
    assert found.run_share_high - found.run_share_low < 0.1


def test_where_air_and_wall_warm_apart_no_single_time_constant_is_told():
    walled = walled_model.Walled(air_j_k=8_000, air_wall_w_k=8, coil_j_k=1_500, room_swing_k=0.0, differential_k=2.5)
    found = rhythm(log(walled_model.run(walled, 48), Logger(interval_s=30, noise_k=0.02, step_k=0.01), 1))
    assert found.warming_s is None
    assert "as where air and wall warm apart" in words_of(found.warming_why_not)


def test_a_wall_that_shows_only_after_the_pull_down_leaves_the_time_constant_untold_too():
    walled = walled_model.draw(423)[0]  # its holds are straight
    found = rhythm(log(walled_model.run(walled, 48), Logger(noise_k=0.02), 1))
    assert found.warming_s is None


def test_where_the_share_of_the_time_is_not_known_well_it_is_shown_only_as_a_range():
    stairs = logged(run(Chamber(differential_k=2.8), 24), step_k=0.5)
    fine, coarse = (Series("low", log_.times_s, log_.temperatures_c) for log_ in (logged(), stairs))
    told, between = ({each.key for each in figures_of(analyse([each]).centre)} for each in (fine, coarse))
    assert "run_share" in told
    assert {"run_share_least", "run_share_most"} <= between
    assert "run_share" not in between
