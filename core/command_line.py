"""A worksheet and its answer as a terminal or another program reads them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from attrs import evolve

from core.quantities import METRIC, Amount, Reader
from core.reading import is_bare
from core.refusals import Refused
from core.sentence import Said, said
from core.usual import as_typed
from core.verdict import Reason, Verdict
from core.working import Figure
from core.worksheet import Answer, Choice, Input, Number, Worksheet


def describe(sheet: Worksheet) -> dict[str, Any]:
    """The declaration: inputs with their units and bounds, and the outputs its example comes to."""
    try:
        answer = sheet.answer(sheet.example)
    except Refused:
        answer = Answer(())
    outputs: list[dict[str, Any]] = [
        {
            "key": figure.key,
            "name": _text(figure.name),
            "quantity": figure.quantity.key,
            "unit": figure.quantity.si,
        }
        for figure in answer.figures
    ]
    if sheet.judge is not None:
        outputs.append({"key": "verdict", "name": "Verdict", "options": ["ready", "hold", "discard"]})
    return {
        "name": sheet.name,
        "title": sheet.title,
        "stage": sheet.stage,
        "question": sheet.question,
        "inputs": [_describe_input(each) for each in sheet.inputs],
        "outputs": outputs,
        "example": dict(sheet.example),
    }


def _describe_input(each: Input) -> dict[str, Any]:
    common = {"key": each.key, "label": _text(each.label), "default": each.default, "help": _text(each.help)}
    if isinstance(each, Choice):
        return {
            **common,
            "required": each.default is None,
            "options": {key: _text(words) for key, words in each.options.items()},
        }
    return {
        **common,
        "required": each.default is None and not each.optional,
        "optional": each.optional,
        "quantity": each.quantity.key,
        "unit": each.quantity.si,
        "low": each.low,
        "or_zero": each.or_zero,
        "high": each.high,
        "bare_unit": {"metric": each.quantity.bare_metric.symbol, "us": each.quantity.bare_us.symbol},
        "units": [unit.symbol for unit in each.quantity.units if unit.symbol],
        "example": each.quantity.example(METRIC),
    }


def _text(words: Said) -> str:
    return said(words).say(METRIC)


def read_as(sheet: Worksheet, texts: Mapping[str, str], reader: Reader) -> dict[str, str]:
    """Every number that was typed without its unit, said back with it, and in the other system where that differs.

    No range tells 27.3 kg from 27.3 lb: only the eye does.
    """
    numbers = [each for each in sheet.inputs if isinstance(each, Number)]
    return {each.key: _said_back(each, texts[each.key], reader) for each in numbers if is_bare(texts.get(each.key, ""))}


def _said_back(each: Number, text: str, reader: Reader) -> str:
    value = each.read(text, reader)
    assert value is not None
    shown = as_typed(value, each.quantity, reader)
    other = evolve(reader, system="metric" if reader.system == "us" else "us")
    if each.quantity.bare("us") == each.quantity.bare("metric"):
        return shown
    return f"{shown} ({Amount(value, each.quantity).show_exact(other, 3)})"


def answer_as_json(answer: Answer, reader: Reader, read: Mapping[str, str] | None = None) -> dict[str, Any]:
    """Figures in SI, and as the reader sees them. read: what `read_as` gave."""
    told: dict[str, Any] = {"figures": [_figure_as_json(figure, reader) for figure in answer.figures]}
    if read:
        told["read"] = dict(read)
    if answer.verdict is not None:
        told["verdict"] = _verdict_as_json(answer.verdict, reader)
    return told


def _figure_as_json(figure: Figure, reader: Reader) -> dict[str, Any]:
    return {
        "key": figure.key,
        "name": said(figure.name).say(reader),
        "value": figure.value,
        "unit": figure.quantity.si,
        "shown": figure.show(reader),
        "low": figure.low,
        "high": figure.high,
        "working": [step.say(reader) for step in figure.working],
        "source": figure.source.cite(),
        "verified": figure.source.verified,
        "cautions": [caution.say(reader) for caution in figure.cautions],
    }


def _verdict_as_json(verdict: Verdict, reader: Reader) -> dict[str, Any]:
    return {
        "word": verdict.word,
        "next_step": verdict.next_step.say(reader),
        "reasons": [
            {
                "key": reason.key,
                "met": reason.met,
                "text": reason.text.say(reader),
                "source": reason.source.cite(),
                "verified": reason.source.verified,
            }
            for reason in verdict.reasons
        ],
        "cautions": [caution.say(reader) for caution in verdict.cautions],
    }


def answer_as_text(answer: Answer, reader: Reader, read: Iterable[str] = ()) -> str:
    lines: list[str] = []
    if answer.verdict is not None:
        lines += _verdict_lines(answer.verdict, reader)
    for figure in answer.figures:
        lines += _figure_lines(figure, reader)
    lines += [f"Read: {each}" for each in read]
    return "\n".join(lines)


def _figure_lines(figure: Figure, reader: Reader) -> Iterator[str]:
    yield f"{said(figure.name).say(reader)}: {figure.show(reader)}{_range(figure, reader)}"
    yield from (f"    {step.say(reader)}" for step in figure.working)
    yield f"    Source: {figure.source.cite()}"
    yield from (f"    ! {caution.say(reader)}" for caution in figure.cautions)


def _range(figure: Figure, reader: Reader) -> str:
    if figure.low is None or figure.high is None:
        return ""
    low, high = (Amount(value, figure.quantity).show(reader) for value in (figure.low, figure.high))
    return f" ({low} to {high})"


def _verdict_lines(verdict: Verdict, reader: Reader) -> Iterator[str]:
    yield f"Verdict: {verdict.word}"
    yield f"    Next: {verdict.next_step.say(reader)}"
    yield from (_reason_line(reason, reader) for reason in verdict.reasons)
    yield from (f"    ! {caution.say(reader)}" for caution in verdict.cautions)


def _reason_line(reason: Reason, reader: Reader) -> str:
    mark = {True: "yes", False: "no", None: "not known"}[reason.met]
    return f"    {mark}: {reason.text.say(reader)} Source: {reason.source.cite()}"
