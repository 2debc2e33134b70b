"""What was read and weighed of a batch, each with its moment, its readings corrected."""

from __future__ import annotations

from datetime import datetime

from attrs import frozen

from core.daybook.corrections.readings import AS_READ, CorrectedFact, CorrectedReading
from core.ferment.course import Place


@frozen
class Dated:
    """A fact of the log with its moment and the line it stands in."""

    at: datetime
    line_id: str


@frozen
class Weighing(Dated):
    """mass_kg: corrected where its scale was checked; `reading` then tells what it showed."""

    mass_kg: float
    reading: CorrectedReading | None = None

    @property
    def proves(self) -> bool:
        return self.reading is None or not self.reading.proves_nothing


@frozen
class Activity(Dated):
    """loss: what the piece had lost by the weighing before. most_loss: at the very most, by a weighing after it or on
    the same day, on a sound scale; None where nobody knows, and then no batch-mate may lean on it."""

    water_activity: float
    loss: float
    most_loss: float | None


@frozen
class MeatReading(Dated):
    """Both corrected where their instruments were checked; `corrected` then tells what was read."""

    ph: float | None
    temperature_c: float | None
    corrected: CorrectedFact = AS_READ
    place: Place | None = None

    @property
    def ph_proves(self) -> bool:
        """Not on a meter that had failed its check."""
        of_ph = self.corrected.of("ph")
        return self.ph is not None and (of_ph is None or not of_ph.proves_nothing)
