"""Pieces that dry by another model than diffusion within: a front that recedes, a dry shell that grows around it.

Inside the front the meat is as it was filled; the shell is of one water activity. What dries at the front passes
through half of the shell, quasi-steady as in a round rod, and what leaves the shell through the other half, casing and
film, as the differences of water activity drive it. Written by somebody who had not read the other model, and the
forecast was not built on it.

D of 3e-11 to 2.5e-10 m²/s is within the span of published effective diffusivities (Palumbo et al. 1977; pork pieces at
2 °C and 80 %). Water in meat falls by some 3,600 kg/m³ for a whole of water activity (computed from a mix of 0.58 water
and 0.028 salt). 40 to 150 g/(m² h) is a wet cylinder in still air by Lewis' relation, cut by a casing.
"""

from __future__ import annotations

from itertools import pairwise
from math import exp, log, pi
from random import Random

from attrs import frozen

from core.dry.activity import Mix
from tests.core.drying_model import DAY_S, Step, Weighing

HOUR_S, STEP_S = 3600.0, 900.0
LONGEST_S = 150 * DAY_S
BEGUN, LEAST_CORE = 0.97, 0.01
SALT_KG_PER_MOL = 0.05844
WATER_MOL_PER_KG = 55.51
KG_M3_PER_ACTIVITY = 3600.0


@frozen
class Meat:
    """A piece when it is hung. Fractions of its mass; what is neither water, salt nor fat is lean and dry."""

    mass_kg: float
    diameter_m: float
    water: float
    salt: float
    fat: float

    @property
    def lean_kg(self) -> float:
        return self.mass_kg * (1 - self.water - self.salt - self.fat)

    @property
    def length_m(self) -> float:
        """Of a cylinder of the density of water."""
        return self.mass_kg / 1000 / (pi / 4 * self.diameter_m**2)

    @property
    def surface_m2(self) -> float:
        """Without its ends."""
        return pi * self.diameter_m * self.length_m


@frozen
class Way:
    """How easily water goes, in kg/s for a whole of water activity: through a shell e times as wide as its core, and
    off it. hardens: how many times, in powers of e, the first falls while the shell gives off all its water."""

    within_kg_s: float
    off_kg_s: float
    hardens: float


def activity(water_kg: float, lean_kg: float, salt_kg: float) -> float:
    """Of meat: the brine's by a straight line, its protein's by an exponential. Rough, and meant to be."""
    if water_kg <= 0:
        return 0.0
    moles = 2 * salt_kg / SALT_KG_PER_MOL
    brine = 1 / (1 + 0.95 * moles / (water_kg * WATER_MOL_PER_KG))
    return brine * (1 - exp(-6.0 * water_kg / lean_kg))


@frozen
class Course:
    """losses: of the start weight, every quarter of an hour from hanging."""

    losses: tuple[float, ...]

    def at(self, at_s: float) -> float:
        place, rest = divmod(at_s / STEP_S, 1)
        before, after = self.losses[int(place)], self.losses[min(int(place) + 1, len(self.losses) - 1)]
        return before + rest * (after - before)

    def day_of(self, loss: float) -> float | None:
        """Seconds since hanging; None where it never lost so much."""
        for place, (before, after) in enumerate(pairwise(self.losses)):
            if after >= loss:
                return (place + (loss - before) / (after - before)) * STEP_S
        return None


@frozen
class Batch:
    """What happens and what is seen of it, as in the other model."""

    target: float
    told: tuple[Step, ...]
    pieces: tuple[Meat, ...]
    courses: tuple[Course, ...]
    weighings: tuple[tuple[Weighing, ...], ...]
    step_kg: float
    formula: Mix


def run(meat: Meat, way: Way, air: tuple[Step, ...], until_loss: float) -> Course:
    """Until it has lost so much, or for 150 days. core: the share of the dry meat that the front has not reached."""
    start_kg = meat.mass_kg * meat.water
    salt_kg = meat.mass_kg * meat.salt
    fresh = activity(start_kg, meat.lean_kg, salt_kg)
    core = BEGUN
    shell_kg = start_kg * (1 - core)
    losses = [0.0]
    while losses[-1] < until_loss and len(losses) * STEP_S < LONGEST_S:
        now = next(each for each in reversed(air) if each.from_s <= (len(losses) - 1) * STEP_S)
        dry = 1 - core
        outside = activity(shell_kg, meat.lean_kg * dry, salt_kg * dry)
        moist = shell_kg / dry / start_kg
        half = log(1 / core) / 4 / (way.within_kg_s * exp(-way.hardens * max(0.0, 1 - moist)))
        inward = max(0.0, fresh - outside) / half
        receded = min(core - LEAST_CORE, inward * STEP_S / (start_kg * max(0.02, 1 - moist)))
        core -= receded
        off = 1 / (half + 1 / (way.off_kg_s * _warmth(now.temperature_c)))
        shell_kg += receded * start_kg - off * (outside - now.humidity) * STEP_S
        losses.append((start_kg * (1 - core) - shell_kg) / meat.mass_kg)
    return Course(tuple(losses))


def _warmth(celsius: float) -> float:
    """Saturation pressure against that at 12 °C, by Magnus' formula (from memory)."""
    return exp(17.62 * celsius / (243.12 + celsius) - 17.62 * 12 / (243.12 + 12))


def draw(seed: int, pieces: int = 12) -> Batch:
    """One batch: alike in its meat, apart in thickness and in its place."""
    chance = Random(f"front {seed}")
    thick_m, mass_kg = chance.uniform(0.035, 0.09), chance.uniform(0.3, 1.8)
    water, salt, fat = chance.uniform(0.50, 0.66), chance.uniform(0.024, 0.034), chance.uniform(0.08, 0.28)
    diffusivity, hardens = 10 ** chance.uniform(-10.5, -9.6), chance.uniform(0, 1.5)
    off_g_m2_h = chance.uniform(40, 150)
    meats, ways = [], []
    for _ in range(pieces):
        wide_m = thick_m * chance.gauss(1, 0.05)
        meats.append(Meat(mass_kg * chance.gauss(1, 0.12), wide_m, water, salt, fat))
        off = meats[-1].surface_m2 * off_g_m2_h * exp(chance.gauss(0, 0.2)) / 1000 / HOUR_S
        ways.append(Way(2 * pi * meats[-1].length_m * diffusivity * KG_M3_PER_ACTIVITY, off, hardens))
    told = _programme(chance)
    off_k, off = chance.gauss(0, 0.4), chance.gauss(0, 0.012)
    air = tuple(Step(each.from_s, each.temperature_c + off_k, each.humidity + off) for each in told)
    target, step_kg = chance.uniform(0.28, 0.38), chance.choice((0.001, 0.002, 0.005))
    courses = tuple(run(meat, way, air, target + 0.005) for meat, way in zip(meats, ways, strict=True))
    weighings = tuple(_weighed(chance, step_kg, *each) for each in zip(meats, courses, strict=True))
    formula = Mix(round(water + chance.gauss(0, 0.012), 3), round(salt, 3))
    return Batch(target, told, tuple(meats), courses, weighings, step_kg, formula)


def _programme(chance: Random) -> tuple[Step, ...]:
    """Humid at first, drier in one step or in two."""
    at_s, found = 0.0, [Step(0.0, chance.uniform(12, 18), chance.uniform(0.82, 0.90))]
    for low, high in ((0.76, 0.82), (0.70, 0.78))[: chance.choice((1, 2, 2))]:
        at_s += chance.uniform(2, 9) * DAY_S
        found.append(Step(at_s, chance.uniform(11, 14), chance.uniform(low, high)))
    return tuple(found)


def _weighed(chance: Random, step_kg: float, meat: Meat, course: Course) -> tuple[Weighing, ...]:
    """Every few days, as somebody comes by."""
    found, at_s = [], chance.uniform(0.8, 3) * DAY_S
    while at_s < (len(course.losses) - 1) * STEP_S:
        mass_kg = meat.mass_kg * (1 - course.at(at_s)) + chance.gauss(0, 0.6 * step_kg)
        found.append(Weighing(at_s, round(mass_kg / step_kg) * step_kg))
        at_s += chance.uniform(2, 7) * DAY_S
    return tuple(found)
