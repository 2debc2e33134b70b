"""A chamber that never was, for the tests: what a compressor, a coil, a defrost, a humidifier and a door do to its air.

The truth is known to the step, so what the analysis says of a logged trace can be held against it. One lump of air and
walls warms towards the room and is cooled by a coil that answers late; a door's warm air is a second, short-lived part
on top of it. The controller's own sensor lags; so does the logger, which adds noise and rounds. A defrost heater waits
for the run in progress to end. Seeded: the same seed is the same chamber.
"""

from __future__ import annotations

import math
from random import Random
from typing import Any

from attrs import evolve, field, frozen

STEP_S = 10.0
HOUR_S = 3600.0


@frozen
class Chamber:
    """What a chamber is made of. Temperatures in °C, times in s, vapour pressures in Pa."""

    room_c: float = 20.0
    room_swing_k: float = 0.0
    room_pa: float = 1200.0
    fan_rise_k: float = 0.0
    warming_s: float = 4 * HOUR_S
    cut_out_c: float = 11.0
    differential_k: float = 2.0
    coil_c: float = -5.0
    cooling_s: float = 1.5 * HOUR_S
    coil_lag_s: float = 90.0
    sensor_lag_s: float = 45.0
    least_rest_s: float = 180.0
    defrosts_s: tuple[float, ...] = ()
    defrost_lasts_s: float = 1200.0
    defrost_k_s: float = 12 / HOUR_S
    doors_s: tuple[float, ...] = ()
    door_lasts_s: float = 60.0
    door_exchange_s: float = 90.0
    door_recovers_s: float = 180.0
    humid_set: float = 0.80
    humid_differential: float = 0.04
    humidifier_pa_s: float = 0.25
    drying_s: float = 900.0
    leak_s: float = 6 * HOUR_S


@frozen
class Logger:
    """How a probe sees the air: late, with noise, rounded, and not quite at the middle of the chamber."""

    interval_s: float = 60.0
    lag_s: float = 120.0
    noise_k: float = 0.03
    step_k: float = 0.1
    offset_k: float = 0.0
    humid_noise: float = 0.003
    humid_step: float = 0.001


@frozen
class Truth:
    """What happened, step by step and event by event. runs: each compressor run as (start, stop)."""

    chamber: Any
    temperatures_c: list[float]
    humidities: list[float]
    runs: list[tuple[float, float]]
    misting: list[tuple[float, float]]
    defrosts: list[tuple[float, float]]
    doors: list[tuple[float, float]]

    @property
    def lasts_s(self) -> float:
        return len(self.temperatures_c) * STEP_S


@frozen
class Logged:
    times_s: list[float] = field(factory=list)
    temperatures_c: list[float] = field(factory=list)
    humidities: list[float] = field(factory=list)


def saturated_pa(temperature_c: float) -> float:
    """Magnus, with Sonntag's constants: the model shares no formula with what it tests."""
    return 611.2 * math.exp(17.62 * temperature_c / (243.12 + temperature_c))


def draw(seed: int) -> tuple[Chamber, Logger]:
    """A chamber and a logger at random, such as stand in kitchens and cellars."""
    chance = Random(seed)
    step_k = chance.choice((0.1, 0.1, 0.5))
    room_c, coil_c, warming_s = chance.uniform(18, 25), chance.uniform(-10, 0), chance.uniform(2, 6) * HOUR_S
    run_share = chance.uniform(0.12, 0.55)  # about: what the compressor is sized for
    chamber = Chamber(
        room_c=room_c,
        room_swing_k=chance.uniform(0, 1.0),
        room_pa=chance.uniform(800, 1600),
        fan_rise_k=chance.uniform(0, 0.4),
        warming_s=warming_s,
        cut_out_c=chance.uniform(10, 12.5),
        differential_k=chance.uniform(1.0, 3.0) if step_k < 0.5 else chance.uniform(1.5, 3.0),
        coil_c=coil_c,
        cooling_s=run_share * warming_s * (12.0 - coil_c) / (room_c - 12.0),
        coil_lag_s=chance.uniform(60, 180),
        sensor_lag_s=chance.uniform(30, 90),
        defrost_lasts_s=chance.uniform(12, 25) * 60,
        defrost_k_s=chance.uniform(8, 18) / HOUR_S,
        door_lasts_s=chance.uniform(30, 120),
        door_exchange_s=chance.uniform(45, 120),
        door_recovers_s=chance.uniform(120, 300),
        humid_set=chance.uniform(0.72, 0.86),
        humid_differential=chance.uniform(0.03, 0.06),
        humidifier_pa_s=chance.uniform(0.15, 0.5),
        drying_s=chance.uniform(600, 1800),
    )
    every_s = chance.choice((0, 6, 8, 12)) * HOUR_S
    defrosts = [every_s * turn for turn in range(1, 8) if 0 < every_s * turn < 47 * HOUR_S]
    doors = sorted(chance.uniform(5, 47.5) * HOUR_S for _ in range(chance.randrange(5)))
    logger = Logger(
        interval_s=chance.choice((30, 60, 60, 120, 300)),
        lag_s=chance.uniform(45, 240),
        noise_k=chance.uniform(0, 0.08),
        step_k=step_k,
    )
    return evolve(chamber, defrosts_s=tuple(defrosts), doors_s=apart(doors)), logger


def apart(times_s: list[float], least_s: float = 1800.0) -> tuple[float, ...]:
    kept: list[float] = []
    for at_s in times_s:
        if not kept or at_s - kept[-1] >= least_s:
            kept.append(at_s)
    return tuple(kept)


def run(chamber: Chamber, hours: float = 48.0) -> Truth:
    """The chamber switched on at the room's temperature and left alone, but for its doors."""
    c = chamber
    lump_c, extra_k, vapour_pa = c.room_c, 0.0, c.room_pa
    sensed_c, sensed_humid, coil = lump_c, 0.6, 0.0
    is_cooling, is_misting = False, False
    stopped_s, defrost_until_s = -math.inf, -math.inf
    begun_s = begun_mist_s = 0.0
    waiting, doors = list(c.defrosts_s), list(c.doors_s)
    door_until_s = -math.inf
    truth = Truth(c, [], [], [], [], [], [])
    for turn in range(round(hours * HOUR_S / STEP_S)):
        now_s = turn * STEP_S
        if waiting and now_s >= waiting[0] and not is_cooling:
            waiting.pop(0)
            defrost_until_s = now_s + c.defrost_lasts_s
            truth.defrosts.append((now_s, defrost_until_s))
        if doors and now_s >= doors[0]:
            doors.pop(0)
            door_until_s = now_s + c.door_lasts_s
            truth.doors.append((now_s, door_until_s))
        is_defrosting, is_open = now_s < defrost_until_s, now_s < door_until_s

        if is_cooling and sensed_c <= c.cut_out_c:
            is_cooling, stopped_s = False, now_s
            truth.runs.append((begun_s, now_s))
        elif (
            not is_cooling
            and not is_defrosting
            and sensed_c >= c.cut_out_c + c.differential_k
            and now_s - stopped_s >= c.least_rest_s
        ):
            is_cooling, begun_s = True, now_s
        if is_misting and sensed_humid >= c.humid_set + c.humid_differential / 2:
            is_misting = False
            truth.misting.append((begun_mist_s, now_s))
        elif not is_misting and sensed_humid <= c.humid_set - c.humid_differential / 2:
            is_misting, begun_mist_s = True, now_s

        air_c = lump_c + extra_k
        room_c = c.room_c + c.room_swing_k * math.sin(2 * math.pi * now_s / (24 * HOUR_S))
        coil += (is_cooling - coil) * STEP_S / c.coil_lag_s
        lump_c += STEP_S * (
            (room_c + c.fan_rise_k - lump_c) / c.warming_s
            - coil * (lump_c - c.coil_c) / c.cooling_s
            + is_defrosting * c.defrost_k_s
            + 0.05 * extra_k / c.door_recovers_s
        )
        extra_k += STEP_S * (is_open * (room_c - air_c) / c.door_exchange_s - extra_k / c.door_recovers_s)
        vapour_pa += STEP_S * (
            is_misting * c.humidifier_pa_s
            - coil * max(0.0, vapour_pa - saturated_pa(max(c.coil_c, -8.0))) / c.drying_s
            + (c.room_pa - vapour_pa) / (c.door_exchange_s if is_open else c.leak_s)
            + is_defrosting * 0.15
        )
        air_c = lump_c + extra_k
        vapour_pa = min(vapour_pa, saturated_pa(air_c))
        humidity = vapour_pa / saturated_pa(air_c)
        sensed_c += (air_c - sensed_c) * STEP_S / c.sensor_lag_s
        sensed_humid += (humidity - sensed_humid) * STEP_S / 90.0
        truth.temperatures_c.append(air_c)
        truth.humidities.append(humidity)
    return truth


def log(truth: Truth, logger: Logger, seed: int = 0) -> Logged:
    """What the logger writes down of it."""
    chance = Random(seed)
    every = round(logger.interval_s / STEP_S)
    share = STEP_S / logger.lag_s
    probe_c, probe_humid = truth.temperatures_c[0], truth.humidities[0]
    logged = Logged()
    for turn, (air_c, humidity) in enumerate(zip(truth.temperatures_c, truth.humidities, strict=True)):
        probe_c += (air_c - probe_c) * share
        probe_humid += (humidity - probe_humid) * share
        if turn % every == 0:
            logged.times_s.append(turn * STEP_S)
            seen_c = probe_c + logger.offset_k + chance.gauss(0, logger.noise_k)
            logged.temperatures_c.append(round(round(seen_c / logger.step_k) * logger.step_k, 4))
            seen = min(1.0, probe_humid + chance.gauss(0, logger.humid_noise))
            logged.humidities.append(round(round(seen / logger.humid_step) * logger.humid_step, 6))
    return logged
