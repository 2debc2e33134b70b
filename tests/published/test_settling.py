"""The reference logs are counted as their table says; the one that was logged too slowly is refused in words."""

import csv
from functools import cache
from pathlib import Path

import pytest

from core.chamber.series import Series
from core.chamber.settling.analysis import Compressor
from tests.core.analysed import compressor_of
from tests.core.telling import told
from tests.published.rows import Row, rows

FOLDER = Path(__file__).parent / "settling"


@cache
def readings(name: str) -> Series:
    with (FOLDER / f"log_{name}.csv").open(encoding="utf-8", newline="") as file:
        lines = list(csv.DictReader(file))
    return Series(name, [float(line["t_s"]) for line in lines], [float(line["T_C"]) for line in lines])


def computed(row: Row) -> float:
    found = compressor_of(readings(row.inputs["log"]), row.inputs.get("room_c"))
    if row.quantity == "runs":
        return len(found.runs)
    assert found.rhythm is not None, found.why_not
    rhythm = found.rhythm
    match row.quantity:
        case "period_min":
            return rhythm.period_s / 60
        case "hold_min":
            return rhythm.holds_s / 60
        case "run_share":
            return rhythm.run_share
        case "warming_min":
            assert rhythm.warming_s is not None
            return rhythm.warming_s / 60
    raise AssertionError(f"{row.id}: nothing computes {row.quantity}")


@pytest.mark.parametrize("row", rows("settling"), ids=lambda row: row.id)
def test_agrees_with_the_table(row: Row):
    assert abs(computed(row) - row.expected) <= row.tolerance


def too_slow(interval_s: float) -> Compressor:
    """Log E, and the same readings as if they had been taken at another interval."""
    slow = readings("e_10min_alias")
    return compressor_of(Series("E", [place * interval_s for place in range(len(slow))], slow.temperatures_c))


def test_the_log_sampled_too_slowly_is_refused_in_words():
    assert told(too_slow(600).why_not).startswith("Cycles cannot be resolved: a reading every 10 min is too slow.")


def test_its_readings_would_be_refused_at_any_interval():
    assert "too slowly or with too much noise" in told(too_slow(60).why_not)
