"""Fermenting: the clock, the readings, the loggers' files, and what is decided where the clock ran out."""
