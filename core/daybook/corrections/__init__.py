"""Readings corrected by the checks of their instruments: of a fact, of a log, and how that is shown."""
