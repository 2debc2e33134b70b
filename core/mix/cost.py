"""What it costs: by ingredient, to the raw kilogram and to the finished one."""

from __future__ import annotations

from collections.abc import Sequence

from attrs import frozen

from core.mix.measures import MONEY, PRICE
from core.quantities import MASS, Amount
from core.sentence import Message, Sentence, listed
from core.sources import DEFINITION
from core.traced import traced
from core.working import Figure


@frozen
class Bought:
    """price_per_kg: in the maker's own money; None where it is not known."""

    name: str
    mass_kg: float
    price_per_kg: float | None

    @property
    def cost(self) -> float | None:
        return None if self.price_per_kg is None else self.mass_kg * self.price_per_kg


def cost(bought: Sequence[Bought], raw_kg: float, finished_kg: float) -> tuple[Figure, ...]:
    """All of it, then to the kilogram. Masses above 0. Nothing where no price is known."""
    priced = [each for each in bought if each.price_per_kg is not None]
    if not priced:
        return ()
    total = sum(each.cost or 0.0 for each in priced)
    missing = [each.name for each in bought if each.price_per_kg is None and each.mass_kg > 0]
    without = Sentence("Without what has no price: {names}.", {"names": listed(missing)}) if missing else None
    cautions = (without,) if without else ()
    steps = (*(_line(each) for each in priced), Sentence("Together {total}", {"total": Amount(total, MONEY)}))
    return (
        Figure("cost", "Cost", total, MONEY, steps, DEFINITION, cautions),
        _per("raw", "Cost to the raw weight", total, raw_kg),
        _per("finished", "Cost to the finished weight", total, finished_kg),
    )


def _line(each: Bought) -> Sentence:
    return Sentence(
        "{name}: {mass} at {price} = {cost}",
        {
            "name": each.name,
            "mass": Amount(each.mass_kg, MASS),
            "price": Amount(each.price_per_kg or 0.0, PRICE),
            "cost": Amount(each.cost or 0.0, MONEY),
        },
    )


def _per(key: str, name: Message, total: float, mass_kg: float) -> Figure:
    return (traced("total", total, MONEY) / traced("mass", mass_kg, MASS)).figure(f"cost-{key}", name, PRICE)
