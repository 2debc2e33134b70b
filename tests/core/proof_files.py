"""Files such as loggers save of the model's chamber, for the tests of the two-day proof."""

import csv
import io
from datetime import UTC, datetime, timedelta
from functools import cache
from typing import Any

from attrs import evolve

from core.chamber.logs import guess
from core.chamber.proof_run import Given, GivenFile, GivenProbe
from core.chamber.settling.statistics import Band
from core.chamber.settling.wanted import Wanted
from tests.core.chamber_model import Chamber, Logged, Logger, Truth, log, run

BEGUN = datetime(2026, 11, 23, 10, tzinfo=UTC)
STEADY = Chamber(differential_k=1.0, humid_differential=0.02, drying_s=3600)
"""One that settles within the band below."""
WANTED = Wanted(Band(11.5, 1.5), Band(0.80, 0.10))


@cache
def _truth(chamber: Chamber) -> Truth:
    return run(chamber, 48)


def logged(place: int = 0, offset_k: float = 0.0, chamber: Chamber = STEADY) -> Logged:
    """Two days of minutes. place: another probe for each number."""
    return log(_truth(chamber), Logger(offset_k=offset_k), place)


def text_of(logged: Logged, stamp: str = "%Y-%m-%d %H:%M:%S", head: str = "Time,Temp (°C),RH (%)") -> bytes:
    written = io.StringIO()
    rows = csv.writer(written, lineterminator="\n")
    rows.writerow(head.split(","))
    for at_s, warm, humid in zip(logged.times_s, logged.temperatures_c, logged.humidities, strict=True):
        rows.writerow([f"{BEGUN + timedelta(seconds=at_s):{stamp}}", f"{warm:.1f}", f"{100 * humid:.1f}"])
    return written.getvalue().encode()


def epoch_of(logged: Logged, begun_s: float) -> bytes:
    """The same with seconds since 1970 in UTC."""
    rows = zip(logged.times_s, logged.temperatures_c, logged.humidities, strict=True)
    lines = [f"{begun_s + at_s:.0f},{warm:.1f},{100 * humid:.1f}" for at_s, warm, humid in rows]
    return "\n".join(("Time,Temp (°C),RH (%)", *lines, "")).encode()


@cache
def low() -> bytes:
    return text_of(logged())


@cache
def high() -> bytes:
    return text_of(logged(1, 0.1))


@cache
def disturbed() -> bytes:
    """With a defrost and an opened door."""
    return text_of(logged(3, chamber=evolve(STEADY, defrosts_s=(36_000.0,), doors_s=(86_400.0,))))


def file_of(data: bytes, name: str = "low.csv") -> GivenFile:
    return GivenFile(name, data, guess(data))


def given(**changes: Any) -> Given:
    return evolve(
        Given(
            (file_of(low()), file_of(high(), "high.csv")),
            (GivenProbe(0, "Probe 1", "low"), GivenProbe(1, "Probe 1", "high")),
            WANTED,
            room_c=20.0,
        ),
        **changes,
    )
