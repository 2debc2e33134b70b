"""A kitchen's instruments to test with: added, checked, read on."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from core.daybook.corrections.readings import CorrectedFact, corrected
from core.daybook.facts import Fact
from core.daybook.facts.chamber import CHAMBER, AirRead
from core.daybook.facts.instruments import (
    BoilingPointChecked,
    BuffersChecked,
    IcePointChecked,
    InstrumentAdded,
    InstrumentRecalibrated,
    InstrumentRetired,
    MassesChecked,
    SaltChecked,
    TwoSaltsChecked,
)
from core.daybook.instruments import Instrument, Shelf, fold_instrument
from tests.core.kitchen import DAY, NOON, Kitchen

OVER_SALT_12 = 0.756613
"""Greenspan's polynomial for table salt at 12 °C."""


CHECKS: dict[str, tuple[Fact, ...]] = {
    "thermometer": (IcePointChecked(0.3456, 0.1), BoilingPointChecked(98.4567, 312.3, 97654.3, 0.1)),
    "hygrometer": (
        SaltChecked("nacl", 12.3456, 0.7654, 0.001, 0.2345, "small"),
        TwoSaltsChecked("nacl", 12.3456, 0.7654, "kcl", 13.4567, 0.8654),
    ),
    "ph-meter": (BuffersChecked("mv", 7.01, 22.3456, -12.3, 4.005, 23.4567, 161.4, "yes"),),
    "scale": (MassesChecked(0.5, 0.5012, 0.001), MassesChecked(0.5, 0.5012, 0.001, 2.0, 2.0061)),
}
"""Every kind of check, by the kind of its instrument, with figures that no unit system shows in round numbers."""
FACTS: tuple[Fact, ...] = (
    InstrumentAdded("Larder", "hygrometer", 30.5 * 86400, 0.7654, 0.0234, "ch 1"),
    InstrumentAdded("Bench", "scale"),
    InstrumentAdded("Dial", "ph-meter", stands_at_c=22.3456),
    *(fact for facts in CHECKS.values() for fact in facts),
    InstrumentRecalibrated("a new electrode"),
    InstrumentRetired("broken"),
)


def day(number: float) -> datetime:
    return NOON + number * DAY


class Workshop(Kitchen):
    def add(self, kind: str = "hygrometer", name: str = "Larder", at: float = 0.0, **more: Any) -> str:
        """A temperature is held to 0.4 K, so that half a kelvin is to be adjusted and not replaced for."""
        if kind in ("thermometer", "hygrometer"):
            more = {"tolerance_k": 0.4} | more
        return self.note(InstrumentAdded(name, kind, **more), at=at)  # type: ignore[arg-type]

    def salt(self, instrument: str, reading: float = 0.79, at: float = 1.0) -> str:
        return self.note(SaltChecked("nacl", 12.0, reading), instrument, at)

    def ice(self, instrument: str, reading_c: float, at: float = 1.0) -> str:
        return self.note(IcePointChecked(reading_c), instrument, at)

    def buffers(self, meter: str, seven: float, four: float, at: float = 1.0, **more: Any) -> str:
        """In buffers of pH 7 and 4 at 25 °C, on a meter that shows pH."""
        facts = {"shows": "ph", "buffer": 7.0, "temperature_c": 25.0, "reading": seven, "other_buffer": 4.0}
        facts |= {"other_temperature_c": 25.0, "other_reading": four}
        return self.note(BuffersChecked(**facts | more), meter, at)  # type: ignore[arg-type]

    def weight(self, scale: str, reading_kg: float, mass_kg: float = 1.0, at: float = 1.0) -> str:
        return self.note(MassesChecked(mass_kg, reading_kg, 0.001), scale, at)

    def instrument(self, key: str) -> Instrument:
        folded = fold_instrument(self.book, key)
        assert folded is not None
        return folded

    def air(self, humidity: float, instrument: str | None, at: float, temperature_c: float = 12.0) -> CorrectedFact:
        """The air read, corrected."""
        fact = AirRead(temperature_c, humidity, instrument)
        self.note(fact, CHAMBER, at)
        return corrected(Shelf(self.book), fact, day(at))
