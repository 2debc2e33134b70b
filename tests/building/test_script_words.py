"""What the scripts and the starting page say stands in the catalogue, and each key that they ask for is there."""

import re

import pytest

from building.messages import every
from building.paths import WEB, shown
from core.language import learn
from tests.made_up import LANGUAGE, MadeUp
from web.script_words import MONTH_KEYS, WORDS, in_language

SHELL = (WEB / "shell.html").read_text("utf-8")
SCRIPTS = {shown(path): path.read_text("utf-8") for path in sorted((WEB / "browser").rglob("*.js"))}
PROSE = re.compile(r"""["'`][A-Z][a-z]+ [a-z]+""")
FOR_WHO_MENDS_IT = re.compile(r"new Error\(|event\.message \?\?")
"""What goes into a report alone."""


def asked() -> set[str]:
    constant = {key for text in SCRIPTS.values() for key in re.findall(r'wordsFor\("(\w+)"', text)}
    return constant | set(re.findall(r'data-say="(\w+)"', SHELL)) | set(re.findall(r"\{\{ (\w+) \}\}", SHELL))


def test_each_key_that_is_asked_for_has_its_words():
    assert sorted(asked() - {*WORDS, *MONTH_KEYS, "version", "build_id"}) == []


def test_no_words_are_left_that_nobody_asks_for():
    everything = "".join((*SCRIPTS.values(), SHELL))
    assert [key for key in WORDS if not re.search(rf'"{key}"|\{{\{{ {key} \}}\}}', everything)] == []


@pytest.mark.parametrize("path", SCRIPTS)
def test_no_script_has_prose_of_its_own(path: str):
    lines = [line for line in SCRIPTS[path].splitlines() if not FOR_WHO_MENDS_IT.search(line)]
    assert [line for line in lines if not line.lstrip().startswith(("//", "*", "/*")) and PROSE.search(line)] == []


def test_the_starting_page_has_no_prose_of_its_own():
    shown_texts = re.findall(r">\s*([^<>{]*[A-Za-z][^<>{]*)<", SHELL.partition("<body")[2])
    assert set(map(str.strip, shown_texts)) == {"Curing Daybook"}


def test_the_scripts_speak_each_language_that_is_known():
    learn(LANGUAGE, MadeUp(every()))
    told = in_language(LANGUAGE)
    assert [key for key, text in told.items() if not text.startswith("⟦")] == []
