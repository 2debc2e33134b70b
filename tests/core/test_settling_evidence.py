"""A verdict rests on readings that show it: what is missing is never proof, and less of a log never proves more."""

import pytest

from core.chamber.series import Series
from core.chamber.settling.proof import Proof, prove
from core.chamber.settling.statistics import Band
from core.chamber.settling.wanted import Wanted
from core.quantities import METRIC
from tests.core.analysed import analyse

HOUR_S = 3600.0
BAND = Band(12.0, 1.0)
TWO_DAYS = Wanted(BAND, None)
EIGHT_HOURS = Wanted(BAND, None, held_s=4 * HOUR_S, lasts_s=8 * HOUR_S)


def sawtooth(at_s: float, middle_c: float, half_k: float, period_s: float) -> float:
    part = at_s % period_s / period_s
    return middle_c + half_k * (1 - 2 * (part / 0.25 if part < 0.25 else (1 - part) / 0.75))


def verdict(times_s: list[float], temperatures_c: list[float], wanted: Wanted = TWO_DAYS) -> Proof:
    """Of two probes in the same air."""
    return prove(analyse([Series(name, times_s, temperatures_c) for name in ("low", "high")], wanted))


def logged(
    hours: float, interval_s: float, half_k: float = 0.6, period_s: float = 2760.0
) -> tuple[list[float], list[float]]:
    times_s = [interval_s * place for place in range(round(hours * HOUR_S / interval_s))]
    return times_s, [round(sawtooth(at_s, 12.0, half_k, period_s), 2) for at_s in times_s]


def unmet(proof: Proof) -> dict[str, bool | None]:
    return {reason.key: reason.met for reason in proof.because}


def test_two_days_of_minutes_prove_themselves():
    assert verdict(*logged(48, 60)).is_settled


def test_a_log_with_a_hole_of_two_days_is_no_proof():
    times_s, temperatures_c = logged(48, 60)
    kept = [place for place in range(len(times_s)) if not 2 * HOUR_S < times_s[place] < 47 * HOUR_S]
    found = unmet(verdict([times_s[place] for place in kept], [temperatures_c[place] for place in kept]))
    assert {"length", "hole-low", "temperature-low"} <= found.keys()
    assert set(found.values()) == {None}


def test_a_clock_that_fell_back_to_another_century_adds_no_hours():
    times_s, temperatures_c = logged(24, 60)
    early = [at_s - 223_286 * HOUR_S for at_s in times_s[:200]]
    found = verdict(early + times_s[200:], temperatures_c)
    length = next(reason for reason in found.reasons if reason.key == "length")
    assert length.met is None
    assert "24 h" in length.text.say(METRIC, 2)


@pytest.mark.parametrize("interval_s", [60.0, 120.0, 300.0, 600.0])
def test_a_chamber_outside_its_band_for_two_fifths_of_the_time_is_not_settled(interval_s: float):
    found = unmet(verdict(*logged(48, interval_s, half_k=1.75)))
    assert found["temperature-low"] is False


def test_the_share_inside_is_named_with_its_limit():
    found = verdict(*logged(48, 60, half_k=1.3))
    reason = next(each for each in found.because if each.key == "temperature-low")
    said = reason.text.say(METRIC, 2)
    assert "95 %" in said
    assert reason.met is False


@pytest.mark.parametrize(("interval_s", "met"), [(300.0, True), (310.0, None), (600.0, None)])
def test_a_reading_every_five_minutes_is_the_slowest_that_shows_the_slowest_cycle(interval_s: float, met: bool | None):
    found = verdict(*logged(96, interval_s, period_s=4 * HOUR_S))
    assert next(each.met for each in found.reasons if each.key == "sampling-low") is met


def test_cycles_ask_for_eight_readings_each():
    found = verdict(*logged(48, 240, period_s=2000))
    reason = next(each for each in found.reasons if each.key == "sampling-low")
    assert reason.met is True
    assert "4.17 min" in reason.text.say(METRIC, 3)


@pytest.mark.parametrize(("interval_s", "met"), [(75.0, True), (80.0, None)])
def test_where_no_cycle_is_seen_a_log_must_be_fit_to_show_one_of_ten_minutes(interval_s: float, met: bool | None):
    times_s = [interval_s * place for place in range(round(48 * HOUR_S / interval_s))]
    found = verdict(times_s, [12.0] * len(times_s))
    assert next(each.met for each in found.reasons if each.key == "sampling-low") is met


def test_probes_logged_one_after_the_other_do_not_tell_warm_from_cold_places():
    times_s, temperatures_c = logged(60, 60)
    first, second = slice(0, 50 * 60), slice(49 * 60, None)
    probes = (
        Series("low", times_s[first], temperatures_c[first]),
        Series("high", times_s[second], temperatures_c[second]),
    )
    found = prove(analyse(probes, Wanted(BAND, None, held_s=8 * HOUR_S, lasts_s=10 * HOUR_S)))
    assert unmet(found) == {"gradient": None}
