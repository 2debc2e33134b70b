"""Sentences as the metric reader is told them."""

from __future__ import annotations

from collections.abc import Iterable

from core.quantities import METRIC
from core.sentence import Said, Sentence, said
from core.working import Figure


def in_words(sentences: Iterable[Sentence]) -> tuple[str, ...]:
    return tuple(each.say(METRIC) for each in sentences)


def named(figure: Figure) -> str:
    return said(figure.name).say(METRIC)


def told(sentence: Said | None) -> str:
    return "" if sentence is None else said(sentence).say(METRIC)
