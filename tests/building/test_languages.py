"""A language's catalogue goes the whole way: gathered from the source, translated, compiled, and said by."""

import io
from gettext import GNUTranslations

import pytest
from babel.messages import pofile
from babel.messages.catalog import Catalog

from building import languages
from building.messages import every
from building.running import Failed
from core.language import learn
from core.quantities import COUNT, MASS, Amount, Reader
from core.sentence import Sentence
from tests.made_up import said

PIECES = Sentence("{count} piece left", {"count": Amount(2, COUNT)}, plural="{count} pieces left")


def read(catalogue: Catalog) -> GNUTranslations:
    return GNUTranslations(io.BytesIO(languages.machine_read(catalogue)))


@pytest.fixture(scope="module")
def made_up() -> GNUTranslations:
    """Every message of the source, as a translator's file would hold it."""
    catalogue = Catalog(locale="de")
    for each in languages.template():
        if each.id:
            forms = [each.id] if isinstance(each.id, str) else list(each.id)
            told = [said(form) for form in forms]
            catalogue.add(each.id, told[0] if isinstance(each.id, str) else told)
    written = io.BytesIO()
    pofile.write_po(written, catalogue)
    written.seek(0)
    return read(pofile.read_po(written, locale="de"))


def test_every_message_of_the_source_comes_through_translated(made_up: GNUTranslations):
    assert [each.text for each in every() if made_up.gettext(each.text) != said(each.text) and not each.plural] == []


def test_a_sentence_is_said_by_a_compiled_catalogue_with_its_plural():
    catalogue = Catalog(locale="de")
    catalogue.add((PIECES.text, PIECES.plural), ("noch {count} Stück", "noch {count} Stücke"))
    learn("de", read(catalogue))
    assert PIECES.say(Reader(language="de")) == "noch 2 Stücke"


def test_a_bare_per_cent_sign_is_a_sign_like_any_other():
    catalogue = Catalog(locale="de")
    catalogue.add("{salt} of 100 % is salt", "{salt} von 100 % ist Salz")
    learn("de", read(catalogue))
    told = Sentence("{salt} of 100 % is salt", {"salt": Amount(0.25, MASS)})
    assert told.say(Reader(decimal=",", language="de")) == "250 g von 100 % ist Salz"


@pytest.mark.parametrize("translation", ["{sal} von 100 %", "Salz", "{salt} und {meat}"])
def test_a_translation_that_names_other_values_fails_the_build(translation: str):
    catalogue = Catalog(locale="de")
    catalogue.add("{salt} of 100 %", translation)
    with pytest.raises(Failed, match="names other values"):
        languages.machine_read(catalogue)


def test_one_form_may_leave_the_count_out():
    catalogue = Catalog(locale="de")
    catalogue.add(("{count} piece", "{count} pieces"), ("ein Stück", "{count} Stücke"))
    assert read(catalogue).ngettext("{count} piece", "{count} pieces", 1) == "ein Stück"


def test_every_text_names_its_values_with_letters_alone():
    """So that no format specification or index creeps into what a translator sees."""
    assert [each.text for each in every() if not all(name.isidentifier() for name in languages._names(each.text))] == []


@pytest.mark.parametrize(
    "text",
    [
        "{label} must be between {low} and {high}.",  # given to a Sentence
        "Nitrite in the meat",  # a declaration's
        "Melting ice",  # a parameter's
        "Nitrite in the second",  # an evolved declaration's
    ],
)
def test_the_gathered_messages_come_from_wherever_one_is_said(text: str):
    assert text in {each.text for each in every()}
