"""A text from outside may be anything; it may not end the program."""

import pytest

from core.outside_json import DEEPEST, Doubled, parse


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


@pytest.mark.parametrize("text", ['{"a": 1, "a": 1}', '[{"b": {"a": 1, "c": 2, "a": 3}}]', r'{"a": 1, "\u0061": 2}'])
def test_a_key_that_stands_twice_is_refused_and_named(text: str):
    with pytest.raises(Doubled, match="“a” stands twice") as caught:
        parse(text)
    assert caught.value.key == "a"


def test_a_key_may_stand_once_in_each_object():
    assert parse('[{"a": 1}, {"a": {"a": 2}}]') == [{"a": 1}, {"a": {"a": 2}}]
