"""What a formula comes to, at any size: nitrite and salt, fat, what it is made of raw and dried, what it costs."""

from __future__ import annotations

from attrs import evolve, frozen

from core.daybook.house import house_limits
from core.mix import balance
from core.mix.cost import Bought, cost
from core.mix.formula import Formula, portions
from core.mix.formula_cure import made_of_cure, method_of, over_limit
from core.mix.rules import Curing, products_for
from core.quantities import FRACTION, Amount
from core.refusals import Refusal
from core.sentence import Message, Said, Sentence
from core.sources import DEFINITION
from core.working import Figure
from web.journal import book
from web.screens.mix.cure_shape import remembered_rules
from web.visitor import now

TOLD = ("nitrite", "nitrate", "together", "total_salt")
"""Of all that a cure comes to, what one asks of a formula; the batch's own page has the rest."""

BESIDES: dict[str, Message] = {"brine": "Salt in the water", "moisture-protein": "Water to protein"}


@frozen
class Made:
    """One line of the balance: a part of the mix, raw and dried."""

    name: Said
    raw: Figure
    dried: Figure


def cure_figures(formula: Formula) -> tuple[tuple[Figure, ...], Refusal | None]:
    """What the formula's cure makes to a kilogram of meat, or what is wrong with it."""
    how = curing_for(formula)
    refusal = over_limit(formula, how)
    if refusal:
        return (), refusal
    return tuple(figure for figure in made_of_cure(formula, how) if figure.key in TOLD), None


def curing_for(formula: Formula) -> Curing:
    """The rules the cure was last weighed by, as they stand today, with the house's own limits."""
    rules, method, today = remembered_rules() or "us", method_of(formula), now().date()
    product = next(iter(products_for(rules, method, today)), "")
    if not product:
        return Curing(method=method, on=today)
    return Curing(rules, product, method, today, house_limits(book()))


def fat(formula: Formula) -> Figure:
    steps = tuple(
        Sentence(
            "{name}: {share} × {fat} = {part}",
            {
                "name": meat.name,
                "share": Amount(meat.share, FRACTION),
                "fat": Amount(meat.fat, FRACTION),
                "part": Amount(meat.share * meat.fat, FRACTION),
            },
        )
        for meat in formula.meats
    )
    closing = Sentence("Together {fat} of the meat block", {"fat": Amount(formula.fat, FRACTION)})
    return Figure("fat_of_meat", "Fat of the meat block", formula.fat, FRACTION, (*steps, closing), DEFINITION)


def made_of(formula: Formula, loss: float) -> tuple[Made, ...]:
    """The lines of the balance table. Raises a Refusal on "loss" or "cut"."""
    figures = {figure.key: figure for figure in balance.figures(formula, loss)}
    names: dict[str, Said] = {**balance.PARTS, **BESIDES}
    return tuple(
        Made(name, figures[key], figures[f"{key}-dried"]) for key, name in names.items() if f"{key}-dried" in figures
    )


def cost_figures(formula: Formula) -> tuple[Figure, ...]:
    """To the raw and the finished weight; the first says what has no price."""
    raw_kg = balance.raw(formula).total
    bought = [Bought(row.name, row.mass_kg, row.price_per_kg) for row in portions(formula, 1.0)]
    found = cost(bought, raw_kg, raw_kg * (1 - formula.target_loss))
    if not found:
        return ()
    whole, to_raw, to_finished = found
    return evolve(to_raw, cautions=whole.cautions), to_finished
