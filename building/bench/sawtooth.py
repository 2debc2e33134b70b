"""What two loggers would write down in an empty chamber: a sawtooth with noise, a reading a minute, the same each time.

It is made to be long, not to be true: how right the proof is, the tests' physical model says.
"""

from datetime import UTC, datetime, timedelta
from math import exp
from random import Random

BEGUN = datetime(2026, 9, 7, 18, tzinfo=UTC)
WARM_K, SETTLING_MIN = 9.0, 90.0  # so much too warm at first, and how fast that goes
CYCLE_MIN, COOLING_MIN = 46, 11
SWING_K = 1.8


def log(rows: int, target_c: float, seed: int) -> bytes:
    """A logger's file of that many rows: time, temperature, humidity."""
    chance = Random(seed)
    lines = ["Time;Temperature (°C);Humidity (%)"]
    for minute in range(rows):
        cold = _cold(minute + 7 * seed)
        temperature = target_c + WARM_K * exp(-minute / SETTLING_MIN) - SWING_K * (cold - 0.5) + chance.gauss(0, 0.05)
        humidity = 78 - 6 * cold + chance.gauss(0, 0.3)
        moment = BEGUN + timedelta(minutes=minute)
        lines.append(f"{moment:%Y-%m-%d %H:%M:%S};{temperature:.2f};{humidity:.1f}")
    return "\r\n".join(lines).encode()


def two_loggers(rows: int) -> dict[str, bytes]:
    """rows: of both together."""
    return {"upper.csv": log(rows // 2, 12.5, 1), "lower.csv": log(rows // 2, 11.9, 2)}


def _cold(minute: int) -> float:
    """0 where the compressor starts, 1 where it stops."""
    at = minute % CYCLE_MIN
    return at / COOLING_MIN if at < COOLING_MIN else (CYCLE_MIN - at) / (CYCLE_MIN - COOLING_MIN)
