"""Work that is done in steps, so that a page can say how far it is."""

from __future__ import annotations

from collections.abc import Generator
from typing import TypeVar

T = TypeVar("T")
Steps = Generator[str, None, T]
"""Yields the name of the probe that is looked at."""
