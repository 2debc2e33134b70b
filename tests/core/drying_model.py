"""A drying piece by finite differences, for the tests: what the forecaster is held against and never sees.

Water moves between shells that hold the same dry matter each, so that the piece shrinks as it dries. Diffusivity falls
as a shell dries and rises with warmth; water leaves through a casing and the air's film in a row, driven by the vapour
pressure of the outermost shell against the air's. The shell's water activity follows from its brine and from what its
protein binds. Every number is drawn by a seed; they are such as small chambers have (common practice; no published
source).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from random import Random

from attrs import frozen

from core.dry.activity import Mix

DAY_S = 86_400.0
STEP_S = 3600.0
SHELLS = 12
GAS = 8.314


@frozen
class Step:
    """The chamber's air from a moment on."""

    from_s: float
    temperature_c: float
    humidity: float


@frozen
class Meat:
    """What a batch is made of; shares of the raw mass. falls: how many e-folds the diffusivity loses while a shell
    gives off all its water. binds: water that the protein holds, as a share of the dry matter, at a half of saturation.
    """

    water: float
    salt: float
    solutes_mol: float
    binds: float
    diffusivity: float
    falls: float
    activation_j: float
    casing_s_m: float


@frozen
class Piece:
    meat: Meat
    mass_kg: float
    radius_m: float
    is_round: bool
    film_s_m: float

    @property
    def power(self) -> int:
        """Its volume goes with its edge to this power."""
        return 2 if self.is_round else 1

    def face(self, edge_m: float) -> float:
        """The area of a shell's edge, in the units in which the volume is its edge to the power."""
        return 2 * edge_m if self.is_round else 1.0


@frozen
class Course:
    """Loss at each hour from hanging on."""

    losses: tuple[float, ...]

    def at(self, at_s: float) -> float:
        place = min(at_s / STEP_S, len(self.losses) - 1.001)
        low = int(place)
        return self.losses[low] + (place - low) * (self.losses[low + 1] - self.losses[low])

    def day_of(self, loss: float) -> float | None:
        """In seconds; None where it is not reached while the model ran."""
        later = next((hour for hour, each in enumerate(self.losses) if each >= loss), None)
        if later is None or later == 0:
            return None
        before, after = self.losses[later - 1], self.losses[later]
        return (later - 1 + (loss - before) / (after - before)) * STEP_S


def saturation_pa(temperature_c: float) -> float:
    return 611.2 * math.exp(17.62 * temperature_c / (243.12 + temperature_c))


def activity(meat: Meat, water: float) -> float:
    """Of a shell with so much water, as a share of the raw mass."""
    dry = 1 - meat.water
    bound = meat.binds * dry
    free = max(water - 0.5 * bound, 1e-4)
    molal = meat.salt / 0.05844 / free
    brine = math.exp(-0.018015 * (2 * molal * (0.92 + 0.055 * molal) + meat.solutes_mol * meat.water / free))
    protein = water / (water + 0.15 * bound)
    return max(0.02, brine * protein)


def run(piece: Piece, air: Sequence[Step], lasts_s: float, until: float = 1.0) -> Course:
    """lasts_s: after which it is given up. until: the loss at which it may stop."""
    meat = piece.meat
    water = [meat.water] * SHELLS
    dry = (1 - meat.water) / 1.1
    unit_m3 = piece.radius_m**piece.power / (SHELLS * (meat.water + dry))
    table = [activity(meat, meat.water * place / 200) for place in range(202)]
    losses = [0.0]
    for hour in range(int(lasts_s / STEP_S)):
        now = next(step for step in reversed(air) if step.from_s <= hour * STEP_S + 1)
        water = _an_hour_on(piece, now, table, water, dry, unit_m3)
        losses.append(meat.water - sum(water) / SHELLS)
        if losses[-1] >= until:
            break
    return Course(tuple(losses))


def _an_hour_on(
    piece: Piece, now: Step, table: Sequence[float], water: Sequence[float], dry: float, unit_m3: float
) -> list[float]:
    """Implicit in the water of all shells, each flow a straight line in it: it may take any step."""
    meat, kelvin = piece.meat, now.temperature_c + 273.15
    warm = meat.diffusivity * math.exp(-meat.activation_j / GAS * (1 / kelvin - 1 / 285.15))
    shares = [each / (each + dry) for each in water]
    slopes = [dry / (each + dry) ** 2 for each in water]
    edges = [0.0]
    held = 0.0
    for each in water:
        held += unit_m3 * (each + dry)
        edges.append(held ** (1 / piece.power))
    passes = [0.0]
    for at in range(1, SHELLS):
        mean = (water[at - 1] + water[at]) / 2
        diffusivity = warm * math.exp(-meat.falls * (1 - mean / meat.water))
        apart_m = (edges[at + 1] - edges[at - 1]) / 2
        passes.append(STEP_S * diffusivity * piece.face(edges[at]) / apart_m / unit_m3)
    saturated = saturation_pa(now.temperature_c) / (461.5 * kelvin)
    place = max(0.0, min(200.0, water[-1] / meat.water * 200))
    low = int(place)
    surface = table[low] + (place - low) * (table[low + 1] - table[low])
    rises = (table[low + 1] - table[low]) / (meat.water / 200)
    diffusivity = warm * math.exp(-meat.falls * (1 - water[-1] / meat.water))
    within_s_m = (edges[-1] - edges[-2]) / 2 / diffusivity * rises / slopes[-1] * saturated / 1000
    leaves = (
        STEP_S * saturated / (piece.film_s_m + meat.casing_s_m + within_s_m) / 1000 * piece.face(edges[-1]) / unit_m3
    )

    below, middle, above, right = ([0.0] * SHELLS for _ in range(4))
    for at in range(SHELLS):
        inward, outward = passes[at], passes[at + 1] if at + 1 < SHELLS else 0.0
        middle[at] = 1 + (inward + outward) * slopes[at]
        if at:
            below[at] = -inward * slopes[at - 1]
            right[at] += inward * (shares[at - 1] - shares[at])
        if at + 1 < SHELLS:
            above[at] = -outward * slopes[at + 1]
            right[at] -= outward * (shares[at] - shares[at + 1])
    middle[-1] += leaves * rises
    right[-1] -= leaves * (surface - now.humidity)
    return [max(1e-3, each + change) for each, change in zip(water, _solved(below, middle, above, right), strict=True)]


def _solved(below: list[float], middle: list[float], above: list[float], right: list[float]) -> list[float]:
    """Of a matrix with three diagonals: forward, then back."""
    for at in range(1, len(middle)):
        share = below[at] / middle[at - 1]
        middle[at] -= share * above[at - 1]
        right[at] -= share * right[at - 1]
    found = [right[-1] / middle[-1]]
    for at in range(len(middle) - 2, -1, -1):
        found.append((right[at] - above[at] * found[-1]) / middle[at])
    return found[::-1]


@frozen
class Weighing:
    at_s: float
    mass_kg: float


@frozen
class Batch:
    """What happens, and what is seen of it. told: the air as its hygrometer and thermometer tell it. formula: water and
    salt as a table of meats gives them, which no forecast need be told."""

    target: float
    air: tuple[Step, ...]
    told: tuple[Step, ...]
    pieces: tuple[Piece, ...]
    courses: tuple[Course, ...]
    weighings: tuple[tuple[Weighing, ...], ...]
    step_kg: float
    formula: Mix


PROGRAMMES = (
    ((0.0, 12.0, 0.78),),
    ((0.0, 13.0, 0.75),),
    ((0.0, 11.0, 0.80),),
    ((0.0, 15.0, 0.85), (5.0, 13.0, 0.78)),
    ((0.0, 18.0, 0.88), (3.0, 14.0, 0.82), (12.0, 12.0, 0.76)),
    ((0.0, 12.0, 0.80), (18.0, 12.0, 0.72)),
    ((0.0, 13.0, 0.74), (14.0, 12.0, 0.78)),
)


def draw(seed: int, pieces: int = 12) -> Batch:
    """One batch, hung together: alike in its meat and its casing, apart in thickness and in its place."""
    chance = Random(f"drying {seed}")
    meat = Meat(
        water=chance.uniform(0.54, 0.64),
        salt=chance.uniform(0.024, 0.034),
        solutes_mol=chance.uniform(0.35, 0.60),
        binds=chance.uniform(0.10, 0.22),
        diffusivity=10 ** chance.uniform(-10.1, -9.5),
        falls=chance.uniform(0.5, 2.5),
        activation_j=chance.uniform(20e3, 40e3),
        casing_s_m=chance.uniform(100, 900),
    )
    radius_m, is_round = chance.uniform(0.016, 0.038), chance.random() < 0.8
    film_s_m, mass_kg = chance.uniform(100, 400), chance.uniform(0.3, 1.4)
    each = tuple(
        Piece(
            meat,
            mass_kg * chance.gauss(1, 0.12),
            radius_m * chance.gauss(1, 0.04),
            is_round,
            film_s_m * math.exp(chance.gauss(0, 0.2)),
        )
        for _ in range(pieces)
    )
    told = tuple(
        Step(day * DAY_S, celsius, humidity + chance.choice((-0.02, 0.0, 0.02)))
        for day, celsius, humidity in chance.choice(PROGRAMMES)
    )
    off_k, off = chance.gauss(0, 0.4), chance.gauss(0, 0.012)
    air = tuple(Step(step.from_s, step.temperature_c + off_k, step.humidity + off) for step in told)
    target = chance.choice((0.28, 0.30, 0.32, 0.34, 0.36))
    courses = tuple(run(piece, air, 150 * DAY_S, target + 0.005) for piece in each)
    step_kg = chance.choice((0.001, 0.001, 0.002, 0.005))
    weighings = tuple(map(_weighed(chance, step_kg), each, courses))
    formula = Mix(round(meat.water + chance.gauss(0, 0.012), 3), round(meat.salt, 3))
    return Batch(target, air, told, each, courses, weighings, step_kg, formula)


def _weighed(chance: Random, step_kg: float):
    """Twice a week at first, then once; the scale steps and strays."""
    days = [1.0]
    while days[-1] < 150:
        days.append(days[-1] + chance.choice((2, 3, 4) if days[-1] < 14 else (4, 6, 7, 8)))

    def weigh(piece: Piece, course: Course) -> tuple[Weighing, ...]:
        seen = []
        for day in days:
            at_s = (day + chance.uniform(-0.1, 0.1)) * DAY_S
            if at_s / STEP_S >= len(course.losses) - 1:
                break
            mass = piece.mass_kg * (1 - course.at(at_s)) + chance.gauss(0, 0.6 * step_kg)
            seen.append(Weighing(at_s, round(mass / step_kg) * step_kg))
        return tuple(seen)

    return weigh
