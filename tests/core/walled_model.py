"""A chamber of three masses, for the tests: its air, its wall and its evaporator each warm and cool at their own pace.

When the compressor stops, the air first rebounds towards the wall within minutes and then warms with it over hours; in
the first hours the wall is still warm. Frost grows on the evaporator, chokes it and is removed; the humidifier's fog
goes on for a while after it stops; a door lets in the room's air, its warmth and its vapour. Seeded, as is the chamber
of one lump. Numbers are such as small cabinets have (common practice; no published source).
"""

from __future__ import annotations

import math
from random import Random

from attrs import evolve, frozen

from tests.core.chamber_model import HOUR_S, STEP_S, Logger, Truth, apart, saturated_pa

MELTING_J_KG = 334_000.0
DAY_S = 24 * HOUR_S


@frozen
class Walled:
    """Capacities in J/K, conductances in W/K, powers in W. drift_k: of the thermostat's own sensor, a day. thaws: how
    well frost melts while the compressor rests, 0 to 1."""

    room_c: float = 20.0
    room_swing_k: float = 0.5
    room_pa: float = 1200.0
    air_j_k: float = 6_000.0
    wall_j_k: float = 100_000.0
    coil_j_k: float = 4_000.0
    room_wall_w_k: float = 1.5
    air_wall_w_k: float = 12.0
    air_coil_w_k: float = 8.0
    fan_w: float = 4.0
    cooling_w: float = 60.0
    cut_out_c: float = 11.0
    differential_k: float = 2.0
    drift_k: float = 0.0
    sensor_lag_s: float = 45.0
    least_rest_s: float = 180.0
    defrosts_s: tuple[float, ...] = ()
    defrost_lasts_s: float = 1200.0
    heater_w: float = 120.0
    drips_s: float = 120.0
    frost_full_kg: float = 0.4
    thaws: float = 1.0
    doors_s: tuple[float, ...] = ()
    door_lasts_s: float = 60.0
    door_exchange_s: float = 90.0
    humid_set: float = 0.80
    humid_differential: float = 0.04
    humidifier_pa_s: float = 0.25
    fog_lag_s: float = 60.0
    coil_dries_s: float = 900.0
    leak_s: float = 6 * HOUR_S

    @property
    def coil_lag_s(self) -> float:
        return self.coil_j_k / self.air_coil_w_k

    @property
    def rebounds_s(self) -> float:
        """Time constant of the air towards its wall, evaporator at rest."""
        return self.air_j_k / (self.air_wall_w_k + self.air_coil_w_k)

    @property
    def warming_s(self) -> float:
        """Time constant of the wall, with all that goes along with it, towards the room."""
        return (self.wall_j_k + self.air_j_k + self.coil_j_k) / self.room_wall_w_k


def draw(seed: int) -> tuple[Walled, Logger]:
    """A walled chamber and a logger at random. The logger's interval is for the study to choose."""
    chance = Random(f"walled {seed}")
    step_k = chance.choice((0.01, 0.1, 0.1, 0.5))
    room_c, conducts_w_k = chance.uniform(18, 25), chance.uniform(0.8, 2.5)
    fan_w, run_share = chance.uniform(2, 6), chance.uniform(0.12, 0.5)
    cut_out_c, differential_k = chance.uniform(10, 12.5), chance.uniform(1.0, 3.0)
    load_w = conducts_w_k * (room_c - cut_out_c - differential_k / 2) + fan_w
    chamber = Walled(
        room_c=room_c,
        room_swing_k=chance.uniform(0, 1.5),
        room_pa=chance.uniform(800, 1600),
        air_j_k=chance.uniform(1_500, 9_000),
        wall_j_k=chance.uniform(40_000, 200_000),
        coil_j_k=chance.uniform(1_500, 6_000),
        room_wall_w_k=conducts_w_k,
        air_wall_w_k=chance.uniform(6, 20),
        air_coil_w_k=chance.uniform(4, 14),
        fan_w=fan_w,
        cooling_w=load_w / run_share,
        cut_out_c=cut_out_c,
        differential_k=differential_k,
        sensor_lag_s=chance.uniform(20, 120),
        least_rest_s=chance.choice((0, 120, 180, 300)),
        defrost_lasts_s=chance.uniform(12, 25) * 60,
        heater_w=chance.uniform(80, 200),
        frost_full_kg=chance.uniform(0.2, 0.8),
        door_lasts_s=chance.uniform(30, 120),
        door_exchange_s=chance.uniform(45, 120),
        humid_set=chance.uniform(0.72, 0.86),
        humid_differential=chance.uniform(0.03, 0.06),
        humidifier_pa_s=chance.uniform(0.15, 0.5),
        fog_lag_s=chance.uniform(20, 240),
        coil_dries_s=chance.uniform(600, 1800),
    )
    every_s = chance.choice((0, 0, 6, 8, 12)) * HOUR_S
    defrosts = tuple(every_s * turn for turn in range(1, 8) if 0 < every_s * turn < 47 * HOUR_S)
    doors = apart(sorted(chance.uniform(5, 47.5) * HOUR_S for _ in range(chance.randrange(5))))
    logger = Logger(lag_s=chance.uniform(45, 240), noise_k=chance.uniform(0, 0.08), step_k=step_k)
    return evolve(chamber, defrosts_s=defrosts, doors_s=doors), logger


class _State:
    """What changes from step to step."""

    def __init__(self, chamber: Walled) -> None:
        self.air_c = self.wall_c = self.coil_c = self.sensed_c = chamber.room_c
        self.frost_kg = 0.0
        self.vapour_pa = chamber.room_pa
        self.fog = 0.0
        self.sensed_humid = 0.6

    def step(self, c: Walled, room_c: float, is_cooling: bool, heats: bool, is_misting: bool, is_open: bool) -> float:
        """Ten seconds on. Returns the relative humidity."""
        to_coil_w_k = c.air_coil_w_k / (1 + self.frost_kg / c.frost_full_kg)
        to_coil_w = to_coil_w_k * (self.air_c - self.coil_c)
        to_wall_w = c.air_wall_w_k * (self.air_c - self.wall_c)
        cooling_w = is_cooling * c.cooling_w * max(0.2, 1 + 0.025 * (self.coil_c + 5))
        door_w = is_open * c.air_j_k * (room_c - self.air_c) / c.door_exchange_s
        self.wall_c += STEP_S * (c.room_wall_w_k * (room_c - self.wall_c) + to_wall_w) / c.wall_j_k
        self.coil_c += STEP_S * (to_coil_w - cooling_w + heats * c.heater_w) / c.coil_j_k
        self.air_c += STEP_S * (c.fan_w - to_coil_w - to_wall_w + door_w) / c.air_j_k
        self._vapour(c, is_misting, is_open)
        humidity = self.vapour_pa / saturated_pa(self.air_c)
        self.sensed_c += (self.air_c - self.sensed_c) * STEP_S / c.sensor_lag_s
        self.sensed_humid += (humidity - self.sensed_humid) * STEP_S / 90.0
        return humidity

    def _vapour(self, c: Walled, is_misting: bool, is_open: bool) -> None:
        self.fog += (is_misting - self.fog) * STEP_S / c.fog_lag_s
        taken_pa_s = max(0.0, self.vapour_pa - saturated_pa(max(self.coil_c, -25.0))) / c.coil_dries_s
        given_pa_s = 0.0
        if self.coil_c < 0:
            self.frost_kg += STEP_S * taken_pa_s * 2e-5
        elif self.frost_kg > 0:
            melts_kg = min(self.frost_kg, c.thaws * c.coil_j_k * self.coil_c / MELTING_J_KG)
            self.coil_c -= melts_kg * MELTING_J_KG / c.coil_j_k
            self.frost_kg -= melts_kg
            given_pa_s = 0.1
        self.vapour_pa += STEP_S * (
            self.fog * c.humidifier_pa_s
            - taken_pa_s
            + given_pa_s
            + (c.room_pa - self.vapour_pa) / (c.door_exchange_s if is_open else c.leak_s)
        )
        self.vapour_pa = min(self.vapour_pa, saturated_pa(self.air_c))


def run(chamber: Walled, hours: float = 48.0) -> Truth:
    """Switched on as warm as the room and left alone, but for its doors."""
    c, state = chamber, _State(chamber)
    truth = Truth(c, [], [], [], [], [], [])
    is_cooling = is_misting = False
    stopped_s = heats_until_s = locked_until_s = door_until_s = -math.inf
    begun_s = begun_mist_s = 0.0
    waiting, doors = list(c.defrosts_s), list(c.doors_s)
    for turn in range(round(hours * HOUR_S / STEP_S)):
        now_s = turn * STEP_S
        if waiting and now_s >= waiting[0] and not is_cooling:
            waiting.pop(0)
            heats_until_s = now_s + c.defrost_lasts_s
            locked_until_s = heats_until_s + c.drips_s
            truth.defrosts.append((now_s, heats_until_s))
        if doors and now_s >= doors[0]:
            doors.pop(0)
            door_until_s = now_s + c.door_lasts_s
            truth.doors.append((now_s, door_until_s))
        low_c = c.cut_out_c + c.drift_k * now_s / DAY_S
        if is_cooling and state.sensed_c <= low_c:
            is_cooling, stopped_s = False, now_s
            truth.runs.append((begun_s, now_s))
        elif (
            not is_cooling
            and now_s >= locked_until_s
            and state.sensed_c >= low_c + c.differential_k
            and now_s - stopped_s >= c.least_rest_s
        ):
            is_cooling, begun_s = True, now_s
        if is_misting and state.sensed_humid >= c.humid_set + c.humid_differential / 2:
            is_misting = False
            truth.misting.append((begun_mist_s, now_s))
        elif not is_misting and state.sensed_humid <= c.humid_set - c.humid_differential / 2:
            is_misting, begun_mist_s = True, now_s
        room_c = c.room_c + c.room_swing_k * math.sin(2 * math.pi * now_s / DAY_S)
        humidity = state.step(c, room_c, is_cooling, now_s < heats_until_s, is_misting, now_s < door_until_s)
        truth.temperatures_c.append(state.air_c)
        truth.humidities.append(humidity)
    return truth
