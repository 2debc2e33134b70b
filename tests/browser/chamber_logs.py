"""The files that the two loggers of a scene save: two days of the model's chamber, each in its own way of writing."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

from attrs import evolve

from tests.core.chamber_model import Chamber, Logged, Logger, log, run
from tests.core.proof_files import STEADY

READS_LOW = 0.035
"""By how much the first logger's hygrometer is out, as the check over salt finds."""
TOO_COLD = Chamber(cut_out_c=10.5, differential_k=3.0)
REPAIRED = evolve(STEADY, cut_out_c=12.5)
FIRST, SECOND = datetime(2026, 11, 3, 10, tzinfo=UTC), datetime(2026, 11, 7, 10, tzinfo=UTC)


def two_files(chamber: Chamber, begun: datetime, name: str) -> dict[str, bytes]:
    truth = run(chamber)
    return {
        f"{name}-a.csv": _day_before_month(log(truth, Logger(), 1), begun),
        f"{name}-b.csv": _iso(log(truth, Logger(offset_k=0.1), 2), begun),
    }


def _day_before_month(logged: Logged, begun: datetime) -> bytes:
    lines = ["Zeit;Larder A Temperatur (°C);Larder A Feuchte (%)"]
    for at, warm, humid in _rows(logged, begun):
        lines.append(f"{at:%d/%m/%Y %H:%M};" + f"{warm:.1f};{100 * (humid - READS_LOW):.1f}".replace(".", ","))
    return "\r\n".join(lines).encode("utf-8-sig")


def _iso(logged: Logged, begun: datetime) -> bytes:
    lines = ["Time,Larder B temperature (°C),Larder B humidity (%)"]
    lines += [f"{at:%Y-%m-%d %H:%M:%S},{warm:.1f},{100 * humid:.1f}" for at, warm, humid in _rows(logged, begun)]
    return "\n".join([*lines, ""]).encode()


def _rows(logged: Logged, begun: datetime) -> Iterator[tuple[datetime, float, float]]:
    for at_s, warm, humid in zip(logged.times_s, logged.temperatures_c, logged.humidities, strict=True):
        yield begun + timedelta(seconds=at_s), warm, humid
