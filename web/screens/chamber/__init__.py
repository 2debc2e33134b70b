"""The chamber: its air, its water, and what proves that it can be trusted."""

from web.screens.chamber import air, instruments, load, page, prepare, proofs, run, set_points, task_list, water
from web.screens.chamber.blueprint import screen

__all__ = [
    "air",
    "instruments",
    "load",
    "page",
    "prepare",
    "proofs",
    "run",
    "screen",
    "set_points",
    "task_list",
    "water",
]
