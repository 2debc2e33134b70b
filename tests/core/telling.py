"""Sentences as the metric reader is told them."""

from __future__ import annotations

from collections.abc import Iterable

from core.quantities import METRIC
from core.sentence import Sentence, said
from core.working import Figure


def in_words(sentences: Iterable[Sentence]) -> tuple[str, ...]:
    return tuple(each.say(METRIC) for each in sentences)


def named(figure: Figure) -> str:
    return said(figure.name).say(METRIC)
