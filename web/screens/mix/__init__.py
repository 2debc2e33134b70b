"""Mixing day."""

from web.screens.mix import cure, formula, formula_batch, formula_writing, licence, rules, salting, sheet
from web.screens.mix.blueprint import screen

__all__ = ["cure", "formula", "formula_batch", "formula_writing", "licence", "rules", "salting", "screen", "sheet"]
