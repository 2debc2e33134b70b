"""What may be written after `python -m core`, and the help that says so."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from collections.abc import Collection, Mapping, Sequence
from typing import NoReturn

from core.language import Message
from core.quantities import METRIC, DecimalMark, Reader, System
from core.refusals import Refusal
from core.sentence import Sentence, listed
from core.shipped import spoken_here

SYSTEMS: tuple[System, ...] = ("metric", "us")
MARKS: dict[str, DecimalMark] = {"point": ".", "comma": ","}

CALLS: dict[str, Message] = {
    "python -m core": "List the worksheets",
    "python -m core NAME --describe": "Print its inputs and outputs, as JSON",
    "python -m core NAME key=value …": 'Compute; a value may carry its unit, as in meat_kg="27 lb 5 oz"',
    "python -m core NAME < values.json": "Compute from a JSON object on standard input",
}
OPTIONS: dict[str, Message] = {
    "--json": "Print figures, units, cautions and working as JSON",
    "--units metric|us": "How bare numbers are read and figures are shown",
    "--decimal point|comma": "The decimal mark of what is typed and shown",
    "--language CODE": "The language, by its ISO 639 code; English where its words are not here",
    "--help": "Print this help",
}
UNREADABLE: Message = "These options cannot be read. Try --help."


class _Parser(ArgumentParser):
    def error(self, message: str) -> NoReturn:
        raise Refusal("", UNREADABLE)


def parse(arguments: Sequence[str]) -> Namespace:
    """As they are written; `checked` says whether they can be so. Raises Refusal."""
    parser = _Parser(add_help=False, allow_abbrev=False)
    parser.add_argument("name", nargs="?")
    parser.add_argument("values", nargs="*")
    for name in ("--describe", "--json", "--help", "-h"):
        parser.add_argument(name, action="store_true")
    for name, usual in (("--units", "metric"), ("--decimal", "point"), ("--language", METRIC.language)):
        parser.add_argument(name, nargs="?", default=usual, const="")
    options, options.unknown = parser.parse_known_intermixed_args(arguments)
    options.help |= options.h
    options.language = spoken_here(options.language)
    return options


def checked(options: Namespace) -> Reader:
    """In whose manner the answer is given. Raises Refusal."""
    for each in options.unknown:
        raise Refusal("", Sentence("“{option}” is not an option. Try --help.", {"option": each}))
    _require("--units", options.units, SYSTEMS)
    _require("--decimal", options.decimal, MARKS)
    return Reader(options.units, MARKS[options.decimal], options.language)


def _require(option: str, given: str, known: Collection[str]) -> None:
    if given not in known:
        told = {"option": option, "known": listed(tuple(known), "or"), "given": given}
        raise Refusal("", Sentence("{option} must be {known}, not “{given}”.", told))


def help_for(reader: Reader) -> str:
    title = Sentence("The sums of a curing chamber, each with its working.")
    return "\n".join([title.say(reader), "", *table(CALLS, reader), "", *table(OPTIONS, reader)])


def table(rows: Mapping[str, Message], reader: Reader) -> list[str]:
    """A name and what it means, a row each."""
    width = max(map(len, rows))
    return [f"  {name:<{width}}  {Sentence(words).say(reader)}" for name, words in rows.items()]
