"""Fermenting: the clock, the readings, the loggers' files, and what is decided where the clock ran out."""

from web.screens.ferment import beginning, deviation, logger, reading
from web.screens.ferment.blueprint import screen
from web.screens.ferment.reading import READING

__all__ = ["READING", "beginning", "deviation", "logger", "reading", "screen"]
