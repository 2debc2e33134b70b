"""The worksheets at a command line; `python -m core --help` says how.

Bad input ends with status 2 and one sentence on standard error.
"""

from __future__ import annotations

import json
import sys
from argparse import Namespace
from collections.abc import Mapping, Sequence
from contextlib import suppress
from decimal import Decimal
from difflib import get_close_matches
from typing import Any, NoReturn, TextIO, cast

from core import command_options, outside_json
from core.command_line import answer_as_json, answer_as_text, describe, read_as
from core.quantities import METRIC, Reader
from core.refusals import Missing, Refusal, Refused
from core.sentence import Sentence, as_typed, in_a_row
from core.worksheet import Worksheet
from core.worksheets import STAGES, WORKSHEETS, by_stage, find


def main(arguments: Sequence[str], stdin: TextIO) -> tuple[str, str, int]:
    """What goes to standard output, to standard error, and the exit status."""
    reader = METRIC
    try:
        options = command_options.parse(arguments)
        reader = Reader(language=options.language)
        reader = command_options.checked(options)
        return _run(options, stdin, reader), "", 0
    except Refused as refused:
        return "", _of_all(refused).say(reader), 2
    except Refusal as refusal:
        return "", _with_key(refusal).say(reader), 2


def _of_all(refused: Refused) -> Sentence:
    """What is missing, all of it at once, or the first thing that cannot stand."""
    missing = [refusal.field for refusal in refused.refusals if isinstance(refusal, Missing)]
    wrong = [refusal for refusal in refused.refusals if not isinstance(refusal, Missing)]
    if len(missing) > 1 and not wrong:
        return Sentence("Missing: {keys}. Use --describe to see what each one is.", {"keys": in_a_row(missing)})
    return _with_key((wrong or list(refused.refusals))[0])


def _with_key(refusal: Refusal) -> Sentence:
    told = {"key": as_typed(refusal.field), "refusal": refusal.said}
    return Sentence("{key}: {refusal}", told) if refusal.field else refusal.said


def _run(options: Namespace, stdin: TextIO, reader: Reader) -> str:
    if options.help:
        return command_options.help_for(reader)
    if options.name is None:
        return _listed(reader, as_json=options.json)
    sheet = find(options.name)
    if options.describe:
        return _dump(describe(sheet, reader))
    texts = _typed(options.values) if options.values else _piped(stdin, reader)
    _require_known(sheet, texts)
    answer = sheet.answer(texts, reader)
    read = read_as(sheet, texts, reader)
    if options.json:
        return _dump(answer_as_json(answer, reader, read))
    return answer_as_text(answer, reader, [(each.label, read[each.key]) for each in sheet.inputs if each.key in read])


def _listed(reader: Reader, *, as_json: bool) -> str:
    questions = {each.name: Sentence(each.question).say(reader) for each in WORKSHEETS.values()}
    if as_json:
        sheets = WORKSHEETS.values()
        return _dump([{"name": each.name, "stage": each.stage, "question": questions[each.name]} for each in sheets])
    width = max(map(len, WORKSHEETS))
    lines: list[str] = []
    for stage, sheets in by_stage().items():
        lines += [Sentence(STAGES[stage]).say(reader)]
        lines += [f"  {sheet.name:<{width}}  {questions[sheet.name]}" for sheet in sheets]
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
    told = {"key": key, "sheet": sheet, "known": in_a_row(known)}
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
