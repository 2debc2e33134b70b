"""A text from outside may be anything; it may not end the program."""

import pytest

from core.outside_json import DEEPEST, parse


def test_brackets_inside_a_text_do_not_count():
    assert parse('{"note": "' + "[" * 1000 + '"}') == {"note": "[" * 1000}


def test_an_escaped_quotation_mark_does_not_end_a_text():
    assert parse(r'["a\"[[[", 1]') == ['a"[[[', 1]


def test_what_nests_as_deeply_as_allowed_is_read():
    assert parse("[" * DEEPEST + "]" * DEEPEST) is not None


@pytest.mark.parametrize("opened", ["[", '{"a":'])
def test_what_nests_deeper_is_refused_without_being_parsed(opened: str):
    with pytest.raises(ValueError, match="too deeply"):
        parse(opened * 100_000)
