"""The glossary names what is there: each word on some screen, each name in the code."""

import importlib
import re

import pytest

from building.paths import ROOT
from tests.building.test_words import TEXTS

ROWS = tuple(
    tuple(cell.strip() for cell in line.strip("|").split("|"))
    for line in (ROOT / "docs" / "glossary.md").read_text().splitlines()
    if line.startswith("| ") and not line.startswith(("| term", "| ---"))
)
EVERYTHING = "\n".join(text for _, text in TEXTS)


def resolve(name: str) -> object:
    """A module, or what is in one. Raises ImportError or AttributeError."""
    try:
        return importlib.import_module(name)
    except ModuleNotFoundError:
        module, _, inner = name.rpartition(".")
        return getattr(importlib.import_module(module), inner)


def test_it_has_the_terms_of_the_field():
    assert 25 <= len(ROWS) <= 45
    assert {len(row) for row in ROWS} == {4}


def test_each_term_stands_once():
    terms = [row[0] for row in ROWS]
    assert len(terms) == len(set(terms))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row[0])
def test_a_terms_screen_word_is_on_a_screen(row: tuple[str, ...]):
    assert [word for word in re.findall(r"\*([^*]+)\*", row[2]) if word not in EVERYTHING] == []


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row[0])
def test_a_terms_name_is_in_the_code(row: tuple[str, ...]):
    (name,) = re.findall(r"`([^`]+)`", row[3])
    assert resolve(name) is not None


def test_a_name_that_is_not_there_is_found_out():
    with pytest.raises(AttributeError):
        resolve("core.verdict.Sentencing")
