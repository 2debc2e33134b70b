"""What a logger wrote in the chamber while pieces hang, kept in stretches of whole hours."""

from __future__ import annotations

from itertools import pairwise

from attrs import field, frozen
from attrs.validators import and_, deep_iterable, ge, matches_re, max_len, min_len, optional

from core.daybook.facts.fields import above_zero, celsius, not_negative, share
from core.units import HOUR_S

MOST_STRETCHES = 1200
"""Fifty days hour by hour; a longer log is kept in longer stretches."""
_column = and_(min_len(1), max_len(MOST_STRETCHES))


@frozen
class AirLogTaken:
    """A logger's file of the chamber's air, which began at the entry's moment: one of its probes.

    file: SHA-256 of its bytes in hexadecimal. begins_s: of each stretch that holds a reading, from that moment; where
    none begins nothing was read. temperatures_c, humidities: the means of each, highest_c: its warmest reading;
    humidities is empty where the probe has no hygrometer, None where it showed none. known_s: for how much of the
    stretch its readings stand. instrument: what it was logged with, by its id; all is as logged.
    """

    KIND = "air-log-taken"

    file: str = field(validator=matches_re("[0-9a-f]{64}"))
    stretch_s: float = field(validator=and_(above_zero, ge(HOUR_S)))
    begins_s: tuple[float, ...] = field(validator=and_(_column, deep_iterable(not_negative)))
    temperatures_c: tuple[float, ...] = field(validator=deep_iterable(celsius))
    highest_c: tuple[float, ...] = field(validator=deep_iterable(celsius))
    known_s: tuple[float, ...] = field(validator=deep_iterable(above_zero))
    readings: int = field(validator=ge(1))
    humidities: tuple[float | None, ...] = field(default=(), validator=deep_iterable(optional(share)))
    probe: str = ""
    instrument: str | None = None

    def __attrs_post_init__(self) -> None:
        columns = (self.temperatures_c, self.highest_c, self.known_s, *((self.humidities,) if self.humidities else ()))
        if any(len(column) != len(self.begins_s) for column in columns):
            raise ValueError("there is not one value for each stretch")
        if any(before >= after for before, after in pairwise(self.begins_s)):
            raise ValueError("the stretches are not in order")

    @property
    def ends_s(self) -> float:
        return self.begins_s[-1] + self.stretch_s


Fact = AirLogTaken
