"""A figure whose working is one line."""

from __future__ import annotations

from core.quantities import Amount, Quantity
from core.sentence import Message, Sentence, Unconverted
from core.sources import Source
from core.working import Figure


def plain(
    key: str,
    name: Message | Unconverted,
    value: float,
    quantity: Quantity,
    words: str,
    source: Source,
    cautions: tuple[str, ...] = (),
    give: float | None = None,
) -> Figure:
    """give: how far the value may be off, either way."""
    return Figure(
        key,
        name,
        value,
        quantity,
        (Sentence(words + ": {value}", {"value": Amount(value, quantity)}),),
        source,
        cautions,
        None if give is None else value - give,
        None if give is None else value + give,
    )
