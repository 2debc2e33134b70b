"""Catalogues of other languages, by Babel: `core/languages/XX.po` for a language, compiled into what the tablet gets.

Babel extracts nothing itself, for it passes over what is no call of `_()`: `building.messages` says what there is.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from gettext import GNUTranslations
from pathlib import Path, PurePath
from string import Formatter

from babel.messages import mofile, pofile
from babel.messages.catalog import Catalog, Message

from building import messages
from building.paths import BUILD, CORE, shown
from building.running import Failed
from core.language import ENGLISH, learn
from web.script_words import in_language

FOLDER = CORE / "languages"
TEMPLATE = BUILD / "messages.pot"


def write_template() -> Path:
    """What a translator starts from: `pybabel init` and `pybabel update` take it."""
    BUILD.mkdir(exist_ok=True)
    with TEMPLATE.open("wb") as file:
        pofile.write_po(file, template(), width=0)
    return TEMPLATE


def template() -> Catalog:
    catalogue = Catalog(project="Curing Daybook", charset="utf-8")
    for each in messages.every():
        path, _, line = each.where.rpartition(":")
        catalogue.add((each.text, each.plural) if each.plural else each.text, locations=[(path, int(line))])
    return catalogue


def compiled() -> Iterator[tuple[str, bytes]]:
    """Each catalogue as the tablet reads it. Raises Failed where one names other values than the source."""
    for path in sorted(FOLDER.glob("*.po")):
        with path.open("rb") as file:
            yield f"{shown(FOLDER)}/{path.stem}.mo", machine_read(pofile.read_po(file, locale=path.stem))


def words_of_scripts() -> dict[str, dict[str, str]]:
    """By language and key: what the page and the starting page say before Python does, and beside it."""
    for path, data in compiled():
        learn(PurePath(path).stem, GNUTranslations(io.BytesIO(data)))
    codes = sorted(path.stem for path in FOLDER.glob("*.po"))
    return {code: in_language(code) for code in (ENGLISH, *codes)}


def machine_read(catalogue: Catalog) -> bytes:
    """Raises Failed for a message whose values in braces are not those of the source: Babel does not compare them."""
    for each in catalogue:
        if each.id and (wrong := _names_otherwise(each)):
            raise Failed(f"{catalogue.locale}: “{wrong}” names other values than “{each.id}”.")
    told = io.BytesIO()
    mofile.write_mo(told, catalogue)
    return told.getvalue()


def _names_otherwise(message: Message) -> str:
    """The translation that does, or nothing. One of several forms may leave its count out: "one piece"."""
    source = _names(message.id if isinstance(message.id, str) else message.id[-1])
    forms = [message.string] if isinstance(message.string, str) else list(message.string or ())
    spared = set[str]() if isinstance(message.id, str) else {"count"}
    return next((form for form in forms if form and _names(form) - spared != source - spared), "")


def _names(text: str) -> set[str]:
    return {name for _, name, _, _ in Formatter().parse(text) if name is not None}
