"""A figure whose working is one line."""

from __future__ import annotations

from core.quantities import Amount, Quantity
from core.sentence import Message, Said, Sentence
from core.sources import Source
from core.working import Figure


def plain(
    key: str,
    name: Message,
    value: float,
    quantity: Quantity,
    working: Message,
    source: Source,
    cautions: tuple[Said, ...] = (),
    give: float | None = None,
) -> Figure:
    """working: a line that names its {value}. give: how far the value may be off, either way."""
    return Figure(
        key,
        name,
        value,
        quantity,
        (Sentence(working, {"value": Amount(value, quantity)}),),
        source,
        cautions,
        None if give is None else value - give,
        None if give is None else value + give,
    )
