"""The chamber: its air, its water, and what proves that it can be trusted."""

from web.screens.chamber import air, instruments, page, water
from web.screens.chamber.blueprint import screen

__all__ = ["air", "instruments", "page", "screen", "water"]
