"""The worksheets at a command line.

    python -m core                                  list the worksheets
    python -m core NAME --describe                  its inputs and outputs, as JSON
    python -m core NAME key=value …                 compute; values may carry units: meat_kg="27 lb 5 oz"
    python -m core NAME < values.json               the same from a JSON object

`--json` prints figures, units, cautions and working. `--units us|metric` and `--decimal comma|point` say how bare
numbers are read and how figures are shown. Bad input ends with status 2 and one sentence on standard error.
"""

from __future__ import annotations

import json
import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Mapping, Sequence
from contextlib import suppress
from decimal import Decimal
from difflib import get_close_matches
from typing import Any, NoReturn, TextIO, cast

from core import outside_json
from core.command_line import answer_as_json, answer_as_text, describe, read_as
from core.quantities import METRIC, Reader
from core.refusals import Missing, Refusal, Refused
from core.sentence import Sentence
from core.worksheet import Worksheet
from core.worksheets import WORKSHEETS, by_stage, find


class _Parser(ArgumentParser):
    def error(self, message: str) -> NoReturn:
        raise Refusal("", Sentence("{wrong}. Try --help.", {"wrong": message[:1].upper() + message[1:]}))


def main(arguments: Sequence[str], stdin: TextIO) -> tuple[str, str, int]:
    """What goes to standard output, to standard error, and the exit status."""
    reader = METRIC
    try:
        options = _parse(arguments)
        reader = Reader(options.units, "," if options.decimal == "comma" else ".")
        return _run(options, stdin, reader), "", 0
    except Refused as refused:
        return "", _sentence(refused, reader), 2
    except Refusal as refusal:
        return "", _with_key(refusal, reader), 2


def _sentence(refused: Refused, reader: Reader) -> str:
    """One sentence: what is missing, all of it at once, or the first thing that cannot stand."""
    missing = [refusal.field for refusal in refused.refusals if isinstance(refusal, Missing)]
    wrong = [refusal for refusal in refused.refusals if not isinstance(refusal, Missing)]
    if len(missing) > 1 and not wrong:
        return f"Missing: {', '.join(missing)}. Use --describe to see what each one is."
    return _with_key((wrong or list(refused.refusals))[0], reader)


def _with_key(refusal: Refusal, reader: Reader) -> str:
    told = refusal.said.say(reader)
    return f"{refusal.field}: {told}" if refusal.field else told


def _parse(arguments: Sequence[str]) -> Namespace:
    parser = _Parser(prog="python -m core", description="The sums of a curing chamber, each with its working.")
    parser.add_argument("name", nargs="?", help="a worksheet; without one they are listed")
    parser.add_argument("values", nargs="*", metavar="key=value", help="inputs; or a JSON object on standard input")
    parser.add_argument("--describe", action="store_true", help="print inputs and outputs as JSON")
    parser.add_argument("--json", action="store_true", help="print figures, units, cautions and working as JSON")
    parser.add_argument("--units", choices=("metric", "us"), default="metric")
    parser.add_argument("--decimal", choices=("point", "comma"), default="point")
    return parser.parse_intermixed_args(arguments)


def _run(options: Namespace, stdin: TextIO, reader: Reader) -> str:
    if options.name is None:
        return _listed(as_json=options.json)
    sheet = find(options.name)
    if options.describe:
        return _dump(describe(sheet))
    texts = _typed(options.values) if options.values else _piped(stdin, reader)
    _require_known(sheet, texts)
    answer = sheet.answer(texts, reader)
    read = read_as(sheet, texts, reader)
    if options.json:
        return _dump(answer_as_json(answer, reader, read))
    labels = {each.key: each.label for each in sheet.inputs}
    return answer_as_text(answer, reader, (f"{labels[key]} {shown}" for key, shown in read.items()))


def _listed(*, as_json: bool) -> str:
    if as_json:
        return _dump(
            [{"name": each.name, "stage": each.stage, "question": each.question} for each in WORKSHEETS.values()]
        )
    width = max(map(len, WORKSHEETS))
    lines: list[str] = []
    for stage, sheets in by_stage().items():
        lines += [stage, *(f"  {sheet.name:<{width}}  {sheet.question}" for sheet in sheets)]
    return "\n".join(lines)


def _typed(values: Sequence[str]) -> dict[str, str]:
    texts: dict[str, str] = {}
    for value in values:
        key, equals, text = value.partition("=")
        if not equals:
            raise Refusal("", Sentence("“{value}” is not an input. Write it as key=value.", {"value": value}))
        if key in texts:
            raise Refusal(key, "This input is given twice.")
        texts[key] = text
    return texts


def _piped(stdin: TextIO, reader: Reader) -> dict[str, str]:
    """A JSON object on standard input, where there is one; numbers are read like typed ones, without a unit."""
    text = "" if stdin.isatty() else stdin.read()
    if not text.strip():
        return {}
    try:
        given: Any = outside_json.parse(text, _exactly)
    except Refusal:
        raise
    except outside_json.Doubled as doubled:
        raise Refusal(doubled.key, "This input is given twice.") from None
    except ValueError:
        raise Refusal("", "Standard input is not JSON. Give an object of keys and values.") from None
    if not isinstance(given, dict):
        raise Refusal("", "Standard input must be one JSON object of keys and values.")
    return {key: _text_of(key, value, reader) for key, value in cast(dict[str, Any], given).items()}


def _exactly(text: str) -> Any:
    return json.loads(
        text,
        object_pairs_hook=outside_json.once,
        parse_float=Decimal,
        parse_int=Decimal,
        parse_constant=_refuse_constant,
    )


def _refuse_constant(constant: str) -> NoReturn:
    raise Refusal("", Sentence("{value} is not a number that can be computed with.", {"value": constant}))


def _text_of(key: str, value: Any, reader: Reader) -> str:
    """As it would have been typed: null is an empty field, and a number's point is written as the reader writes it."""
    if value is None:
        return ""
    if isinstance(value, Decimal):
        return f"{value:f}".replace(".", reader.decimal) if abs(value.adjusted()) < 30 else str(value)
    if isinstance(value, str):
        return value
    raise Refusal(key, "Give this input as a text or a number.")


def _require_known(sheet: Worksheet, texts: Mapping[str, str]) -> None:
    known = [each.key for each in sheet.inputs]
    for key in texts:
        if key not in known:
            raise Refusal("", _unknown(sheet.name, key, known))


def _unknown(sheet: str, key: str, known: list[str]) -> Sentence:
    near = get_close_matches(key, known, n=1)
    if near:
        told = {"key": key, "sheet": sheet, "near": near[0]}
        return Sentence("“{key}” is not an input of {sheet}. Did you mean “{near}”?", told)
    told = {"key": key, "sheet": sheet, "known": ", ".join(known)}
    return Sentence("“{key}” is not an input of {sheet}. Its inputs are: {known}.", told)


def _dump(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, indent=2, allow_nan=False)


def say(text: str, stream: TextIO) -> None:
    """Whoever reads may have enough, as `head` does; then the rest is not said, and nothing went wrong."""
    try:
        print(text, file=stream, flush=True)
    except BrokenPipeError:
        with suppress(BrokenPipeError):  # closed all the same; an open one would be flushed, and complain, at the exit
            stream.close()


if __name__ == "__main__":
    printed, complaint, status = main(sys.argv[1:], sys.stdin)
    if printed:
        say(printed, sys.stdout)
    if complaint:
        say(complaint, sys.stderr)
    sys.exit(status)
