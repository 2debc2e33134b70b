"""The catalogues that ship with the core: core/languages/*.mo, made from *.po by the build. There is none yet."""

from __future__ import annotations

import io
import pkgutil
import re
from gettext import GNUTranslations

from core.language import ENGLISH, is_known, learn

_CODE = re.compile("[a-z]{2,3}")


def spoken_here(language: str) -> str:
    """The language, where it can be said; else English."""
    if not is_known(language) and _CODE.fullmatch(language):
        _load(language)
    return language if is_known(language) else ENGLISH


def _load(language: str) -> None:
    try:
        data = pkgutil.get_data("core", f"languages/{language}.mo")
    except OSError:
        return
    if data is not None:
        learn(language, GNUTranslations(io.BytesIO(data)))
