"""Which language a text is said in: a gettext catalogue for each; English is what stands in the code.

Catalogues are made by `build.py messages` from `core/languages/*.po`; there is none yet but what the tests make up.
"""

from __future__ import annotations

import io
import pkgutil
import re
from gettext import GNUTranslations, NullTranslations

ENGLISH = "en"
_NAME = re.compile("[a-z]{2,3}")

_CATALOGUES: dict[str, NullTranslations] = {ENGLISH: NullTranslations()}


def is_known(language: str) -> bool:
    """Whether it can be said in this language, by its ISO 639 code."""
    return language in _CATALOGUES or (_NAME.fullmatch(language) is not None and _load(language))


def learn(language: str, catalogue: NullTranslations) -> None:
    """Say what is asked for in this language by this catalogue."""
    _CATALOGUES[language] = catalogue


def translated(text: str, language: str) -> str:
    return _CATALOGUES[language].gettext(text) if text and is_known(language) else text  # "" is a catalogue's own head


def translated_count(one: str, many: str, count: int, language: str) -> str:
    known = language if is_known(language) else ENGLISH
    return _CATALOGUES[known].ngettext(one, many, count)


def _load(language: str) -> bool:
    try:
        data = pkgutil.get_data("core", f"languages/{language}.mo")
    except OSError:
        return False
    if data is not None:
        learn(language, GNUTranslations(io.BytesIO(data)))
    return data is not None
