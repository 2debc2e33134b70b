"""A season of an invented kitchen, told as one that ends now: what a book looks like after some months."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from datetime import datetime, timedelta

from core.daybook.entries import Entry, entry_id
from core.daybook.facts import Fact
from core.daybook.facts.batch import (
    ActivityMeasured,
    BatchStarted,
    CureWeighed,
    PieceHung,
    PieceInspected,
    PieceTakenDown,
    PieceWeighed,
    Reading,
)
from core.daybook.facts.chamber import CHAMBER, AirRead, HumidifierCharged, HumidifierFilled, SetPointsChosen
from core.daybook.facts.ferment import FermentationBegun
from core.daybook.facts.instruments import IcePointChecked, InstrumentAdded, SaltChecked
from core.daybook.facts.meat import MeatNoted
from core.daybook.facts.proofs import KeptFigure, ProofFile, ProofProbe, ProofResult, ProofRun

Told = tuple[float, Fact, str, str]
"""Days ago, what happened, what it is about by its key ("" where it begins something), and its own key."""

COARSE = {"S-1": 1.250, "S-2": 1.180, "S-3": 1.310, "S-4": 1.205}
DRIED = {"S-1": 0.62, "S-2": 0.71, "S-3": 0.63, "S-4": 0.64}
LAST_YEARS = {"A-1": 0.940, "A-2": 0.905}


def season(now: datetime) -> tuple[Entry, ...]:
    """Its entries in the order they were written: one batch is mixed, one ferments, one dries with a piece ready, one
    on hold and one to discard, one is finished; a chamber proved empty and two instruments checked."""
    told = sorted(_told(), key=lambda each: -each[0])
    ids = {key: _id(now, days, key) for days, _, _, key in told}
    return tuple(_entry(now, each, ids, number) for number, each in enumerate(told, 1))


def _entry(now: datetime, told: Told, ids: dict[str, str], number: int) -> Entry:
    days, fact, about, key = told
    at = now - timedelta(days=days)
    return Entry(ids[key], about if about == CHAMBER else ids[about or key], at, at, fact, clock=number)


def _id(now: datetime, days: float, key: str) -> str:
    return entry_id(now - timedelta(days=days), hashlib.sha256(key.encode()).digest())


def _told() -> Iterator[Told]:
    yield from _chamber()
    yield from _finished()
    yield from _drying()
    yield from _fermenting()
    yield 0.3, BatchStarted("Hawthorn loin", "whole-muscle", 1.9, 0.38), "", "loin"


def _chamber() -> Iterator[Told]:
    yield 110.2, InstrumentAdded("Shelf logger", "hygrometer", probe="shelf"), "", "logger"
    yield 110.1, InstrumentAdded("Needle", "thermometer"), "", "needle"
    yield 110.0, SaltChecked("nacl", 20.0, 0.74, apart_k=0.2, bulk="small"), "logger", "salt-check"
    yield 12.0, IcePointChecked(0.2), "needle", "ice-check"
    yield 106.0, _proof(), CHAMBER, "proof"
    yield 105.0, SetPointsChosen(12.8, 0.80), CHAMBER, "set-points"
    yield 105.0, HumidifierCharged(0.006, 0.006, 0.008), CHAMBER, "charge"
    for at, days in enumerate((30.0, 18.0, 6.0)):
        yield days, HumidifierFilled(0.004), CHAMBER, f"filling-{at}"
    for at, (days, temperature_c, humidity) in enumerate(
        (
            (9.0, 12.6, 0.79),
            (5.0, 12.9, 0.81),
            (2.0, 12.7, 0.80),
            (0.9, 13.0, 0.78),
            (0.4, 12.8, 0.79),
            (0.1, 12.7, 0.8),
        )
    ):
        yield days, AirRead(temperature_c, humidity), CHAMBER, f"air-{at}"


def _proof() -> ProofRun:
    figures = (("mean", 12.8, "fine_temperature"), ("in_band", 1.0, "loss"))
    swing = tuple((hour / 2, 12.8 + (0.5 if hour % 2 else -0.5)) for hour in range(96))
    return ProofRun(
        name="Empty, two days",
        changed="",
        files=(ProofFile(hashlib.sha256(b"shelf").hexdigest(), "shelf.csv", {}),),
        probes=(ProofProbe(0, "shelf", "Shelf logger"),),
        result=ProofResult(
            5400.0, 5400.0, figures=tuple(KeptFigure(*each) for each in figures), outline=((0.0, 19.5), *swing[1:])
        ),
        temperature_c=12.8,
        temperature_half_k=1.5,
        humidity=None,
        humidity_half=None,
        centre="Shelf logger",
    )


def _batch(key: str, name: str, days: float, meat_kg: float, loss: float) -> Iterator[Told]:
    yield days, BatchStarted(name, "fermented", meat_kg, loss), "", key
    cure = CureWeighed(meat_kg * 0.0025, 0.0625, other_salt_kg=meat_kg * 0.025, rules="us", method="comminuted")
    yield days - 0.01, cure, key, f"{key}-cure"
    yield (
        days - 0.02,
        MeatNoted("pork", "tested", f"P-{days:.0f}", "the slaughterhouse's certificate"),
        key,
        f"{key}-meat",
    )
    yield days - 0.05, FermentationBegun("us", 22.0), key, f"{key}-clock"


def _soured(key: str, days: float) -> Iterator[Told]:
    for at, (after, ph) in enumerate(((0.1, 5.7), (0.8, 5.5), (1.5, 5.25), (2.2, 5.1))):
        yield days - after, Reading(ph, 22.0, place="chamber"), key, f"{key}-reading-{at}"


def _drying() -> Iterator[Told]:
    yield from _batch("coarse", "Sloe coarse", 52.0, 5.4, 0.35)
    yield from _soured("coarse", 52.0)
    for tag, kg in COARSE.items():
        yield 49.0, PieceHung(tag, kg, counted_from="fermented"), "coarse", tag
        for at, (days, share) in enumerate(((40.0, 0.88), (25.0, 0.76), (0.5, DRIED[tag]))):
            yield days, PieceWeighed(round(kg * share, 3)), tag, f"{tag}-weighing-{at}"
    yield 0.45, ActivityMeasured(0.88), "S-1", "S-1-activity"
    yield 0.4, PieceInspected(), "S-1", "S-1-look"
    yield 0.4, PieceInspected(("slime",), "on the seam"), "S-4", "S-4-look"


def _finished() -> Iterator[Told]:
    yield from _batch("early", "Juniper early", 104.0, 2.0, 0.35)
    yield from _soured("early", 104.0)
    for tag, kg in LAST_YEARS.items():
        yield 101.0, PieceHung(tag, kg, counted_from="fermented"), "early", tag
        yield 62.0, PieceWeighed(round(kg * 0.63, 3)), tag, f"{tag}-weighing"
        yield 61.9, ActivityMeasured(0.87), tag, f"{tag}-activity"
        yield 61.8, PieceInspected(), tag, f"{tag}-look"
        yield 61.7, PieceTakenDown("ready", fate="eaten"), tag, f"{tag}-down"


def _fermenting() -> Iterator[Told]:
    yield from _batch("fennel", "Fennel short", 1.4, 3.0, 0.35)
    for at, (days, ph) in enumerate(((1.3, 5.8), (0.8, 5.7), (0.2, 5.55))):
        yield days, Reading(ph, 22.0, place="chamber"), "fennel", f"fennel-reading-{at}"
