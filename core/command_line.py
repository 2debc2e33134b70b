"""A worksheet and its answer as a terminal or another program reads them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from attrs import evolve

from core.quantities import Amount, Reader
from core.reading import is_bare
from core.refusals import Refused
from core.sentence import Message, Rounded, Sentence, said
from core.usual import as_typed
from core.verdict import WORDS, Reason, Verdict
from core.working import Figure
from core.worksheet import Answer, Choice, Input, Number, Worksheet


def describe(sheet: Worksheet, reader: Reader) -> dict[str, Any]:
    """The declaration: inputs with their units and bounds, and the outputs its example comes to."""
    try:
        answer = sheet.answer(sheet.example)
    except Refused:
        answer = Answer(())
    outputs: list[dict[str, Any]] = [
        {
            "key": figure.key,
            "name": said(figure.name).say(reader),
            "quantity": figure.quantity.key,
            "unit": figure.quantity.si,
        }
        for figure in answer.figures
    ]
    if sheet.judge is not None:
        outputs.append({"key": "verdict", "name": Sentence("Verdict").say(reader), "options": list(WORDS)})
    return {
        "name": sheet.name,
        "title": Sentence(sheet.title).say(reader),
        "stage": sheet.stage,
        "question": Sentence(sheet.question).say(reader),
        "inputs": [_describe_input(each, reader) for each in sheet.inputs],
        "outputs": outputs,
        "example": dict(sheet.example),
    }


def _describe_input(each: Input, reader: Reader) -> dict[str, Any]:
    words = {"label": said(each.label).say(reader), "help": said(each.help).say(reader)}
    common = {"key": each.key, **words, "default": each.default}
    if isinstance(each, Choice):
        return {
            **common,
            "required": each.default is None,
            "options": {key: said(words).say(reader) for key, words in each.options.items()},
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
        "example": each.quantity.example(reader),
    }


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
    told = {"shown": shown, "other": Amount(value, each.quantity).show_exact(other, 3)}
    return Sentence("{shown} ({other})", told).say(reader)


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
        "source": figure.source.cite().say(reader),
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
                "source": reason.source.cite().say(reader),
                "verified": reason.source.verified,
            }
            for reason in verdict.reasons
        ],
        "cautions": [caution.say(reader) for caution in verdict.cautions],
    }


def answer_as_text(answer: Answer, reader: Reader, read: Iterable[tuple[Message, str]] = ()) -> str:
    """read: what `read_as` gave, each with the label of its input."""
    lines = [] if answer.verdict is None else list(_verdict_lines(answer.verdict))
    for figure in answer.figures:
        lines += _figure_lines(figure)
    for label, shown in read:
        lines.append((0, Sentence("Read: {label} {shown}", {"label": Sentence(label), "shown": shown})))
    return "\n".join(" " * indent + line.say(reader) for indent, line in lines)


Line = tuple[int, Sentence]
"""How far it stands in, and what it says."""
IN = 4


def _figure_lines(figure: Figure) -> Iterator[Line]:
    yield 0, _with_range(figure)
    yield from ((IN, step) for step in figure.working)
    yield IN, Sentence("Source: {source}", {"source": figure.source.cite()})
    yield from map(_caution, figure.cautions)


def _with_range(figure: Figure) -> Sentence:
    told = {"name": said(figure.name), "figure": Rounded(figure.amount)}
    if figure.low is None or figure.high is None:
        return Sentence("{name}: {figure}", told)
    low, high = (Rounded(Amount(value, figure.quantity)) for value in (figure.low, figure.high))
    return Sentence("{name}: {figure} ({low} to {high})", {**told, "low": low, "high": high})


def _caution(caution: Sentence) -> Line:
    return IN, Sentence("! {caution}", {"caution": caution})


def _verdict_lines(verdict: Verdict) -> Iterator[Line]:
    yield 0, Sentence("Verdict: {word}", {"word": Sentence(verdict.word)})
    yield IN, Sentence("Next: {step}", {"step": verdict.next_step})
    yield from ((IN, _of_reason(reason)) for reason in verdict.reasons)
    yield from map(_caution, verdict.cautions)


MARKS: dict[bool | None, Message] = {
    True: "yes: {reason} Source: {source}",
    False: "no: {reason} Source: {source}",
    None: "not known: {reason} Source: {source}",
}


def _of_reason(reason: Reason) -> Sentence:
    return Sentence(MARKS[reason.met], {"reason": reason.text, "source": reason.source.cite()})
