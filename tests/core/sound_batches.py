"""A batch of each style with all that makes it ready on day 61, and nothing besides."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from attrs import frozen

from core.daybook.facts.batch import ActivityMeasured, CureWeighed, PieceInspected
from core.daybook.facts.salting import SaltingBegun, SaltingEnded
from tests.core.kitchen import Kitchen


@frozen
class Sound:
    kitchen: Kitchen
    batch: str
    piece: str
    method: str


def _dried(kitchen: Kitchen, batch: str, hung: float, method: str) -> Sound:
    kitchen.tested(batch)
    piece = kitchen.hang(batch, at=hung)
    kitchen.weigh(piece, 0.6, 60)
    kitchen.note(ActivityMeasured(0.88), piece, 60)
    kitchen.note(PieceInspected(), piece, 60)
    return Sound(kitchen, batch, piece, method)


def _sausage(kitchen: Kitchen, style: str, phs: tuple[float | None, ...], warm_c: float, hung: float) -> Sound:
    batch = kitchen.begin(style=style)
    kitchen.note(CureWeighed(0.031, 0.0625, 0.0, 0.36, "us", "meat", "comminuted"), batch)
    for half_days, ph in enumerate(phs):
        kitchen.read(batch, ph, half_days / 2, warm_c)
    return _dried(kitchen, batch, hung, "comminuted")


def fermented(kitchen: Kitchen, hung: float = 2.0) -> Sound:
    return _sausage(kitchen, "fermented", (5.7, 5.5, 5.2, 5.0, 4.9), 20.0, hung)


def slow(kitchen: Kitchen, hung: float = 3.0) -> Sound:
    return _sausage(kitchen, "slow", (5.7, 5.7, 5.6, 5.6, 5.6, 5.6, 5.6), 12.0, hung)


def whole_muscle(kitchen: Kitchen, hung: float = 22.5) -> Sound:
    batch = kitchen.begin("Loin", "whole-muscle")
    kitchen.note(CureWeighed(0.031, 0.0625, 0.0, 0.36, "us", "meat", "dry-rub"), batch)
    kitchen.note(SaltingBegun("weighed", "slab", 0.05, 3.0, mass_kg=2.0), batch, 1)
    kitchen.note(SaltingEnded("", None, 2.5, 4.0), batch, 22)
    return _dried(kitchen, batch, hung, "dry-rub")


SOUND: Mapping[str, Callable[..., Sound]] = {"fermented": fermented, "slow": slow, "whole-muscle": whole_muscle}
