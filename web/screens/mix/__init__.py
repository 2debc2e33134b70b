"""Mixing day."""

from web.screens.mix import cure
from web.screens.mix.blueprint import screen

__all__ = ["cure", "screen"]
