"""Which language a text is said in: a gettext catalogue for each; English is what stands in the code."""

from __future__ import annotations

from gettext import NullTranslations
from typing import LiteralString

Message = LiteralString
"""A text that stands in the code, so that a catalogue of another language can hold it. What somebody typed is none."""

ENGLISH = "en"
_CATALOGUES: dict[str, NullTranslations] = {ENGLISH: NullTranslations()}


def learn(language: str, catalogue: NullTranslations) -> None:
    """Say what is asked for in this language, by its ISO 639 code, from this catalogue."""
    _CATALOGUES[language] = catalogue


def is_known(language: str) -> bool:
    return language in _CATALOGUES


def translated(text: str, language: str) -> str:
    return _CATALOGUES[language].gettext(text) if text else text  # "" is a catalogue's own head


def translated_count(one: str, many: str, count: int, language: str) -> str:
    return _CATALOGUES[language].ngettext(one, many, count)
