"""Every worksheet on a fixed set of inputs within its bounds: run in CPython and in Pyodide, and compared."""

from __future__ import annotations

import json
from collections.abc import Iterator

from core.chamber.rates import LASTING
from core.quantities import TEMPERATURE
from core.refusals import Refusal
from core.worksheet import Choice, Number, Value, Worksheet
from core.worksheets import WORKSHEETS

FROM_ZERO = {TEMPERATURE: 273.15, LASTING: 3600.0}
"""Added before comparing: a relative difference needs a true zero. Degrees have theirs below; a piece that is wet for
seconds is one at the very edge of dewing, where the time is what is left when two nearly equal numbers are parted."""
MIXED = 40
GOLDEN = 0.6180339887498949  # its multiples spread evenly over 0 to 1 without repeating
ALONG = (0.0, 0.25, 0.5, 0.75, 1.0)

Inputs = dict[str, Value]


def figures() -> dict[str, float | str]:
    """Name of the worksheet, the case and the figure → its value in SI; or the verdict's word; or what was refused."""
    results: dict[str, float | str] = {}
    for sheet in WORKSHEETS.values():
        for number, inputs in enumerate(cases(sheet)):
            for key, value in outcomes(sheet, inputs):
                results[f"{sheet.name} {number} {key}"] = value
    return results


def outcomes(sheet: Worksheet, inputs: Inputs) -> Iterator[tuple[str, float | str]]:
    try:
        for figure in sheet.compute(**inputs):
            yield figure.key, figure.value + FROM_ZERO.get(figure.quantity, 0.0)
        if sheet.judge:
            yield "verdict", sheet.judge(**inputs).word
    except Refusal as refusal:
        yield "refused", refusal.sentence


def cases(sheet: Worksheet) -> Iterator[Inputs]:
    """The usual inputs; each input by itself along its range; and mixtures of all."""
    usual = {each.key: at(each, None) for each in sheet.inputs}
    yield usual
    for each in sheet.inputs:
        for share in ALONG:
            yield usual | {each.key: at(each, share)}
        if isinstance(each, Number) and each.optional:
            yield usual | {each.key: None}
    for number in range(1, MIXED + 1):
        yield {each.key: at(each, (number * (place + 1) * GOLDEN) % 1) for place, each in enumerate(sheet.inputs)}


def at(each: Number | Choice, share: float | None) -> Value:
    """An input's value so far along its range; its usual value where share is None."""
    if share is None and each.default is not None:
        return each.default
    share = 0.5 if share is None else share
    if isinstance(each, Choice):
        options = list(each.options)
        return options[min(int(share * len(options)), len(options) - 1)]
    return each.low + share * (each.high - each.low)


if __name__ == "__main__":
    print(json.dumps(figures()))
