"""The chart's data as bytes: a header in JSON, then columns of numbers as the device's own arrays hold them.

Body: the header's length, 4 bytes little-endian; the header, padded with spaces until 4 + length divides by 8; times
as Float64, seconds of the logs' clock as if it were UTC; each column as Float32, NaN where nothing was measured.
"""

from __future__ import annotations

import json
import math
import sys
from array import array
from collections.abc import Iterator
from typing import Any

from flask import Response, abort

from core.chamber.proof_run import Found
from core.chamber.settling.analysis import Probe
from core.chamber.settling.outline import Trace, on_one_axis
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE, VAPOUR_PRESSURE, Quantity, Reader
from core.sentence import Message
from web.saying import say
from web.screens.chamber.blueprint import screen
from web.screens.chamber.proofs.draft_run import moment_of
from web.screens.chamber.proofs.drafts import find_draft
from web.screens.chamber.proofs.looking import Look, found_again, look_at
from web.screens.chamber.proofs.results import chart_headline
from web.screens.chamber.proofs.saved_run import find_run
from web.visitor import reader

TITLES: dict[tuple[str, ...], Message] = {
    ("temperature",): "Temperature, {unit}",
    ("temperature", "dew point"): "Temperature and dew point, {unit}",
    ("humidity",): "Humidity, {unit}",
    ("deficit",): "Deficit, {unit}",
}
"""Of a panel, by the kinds of what is drawn in it: all that has one unit."""
EVENT_WORDS: dict[str, Message] = {"defrost": "defrost", "door": "door opened"}


@screen.get("/chamber/proofs/drafts/<draft_id>/points")
def draft_points(draft_id: str):
    draft = find_draft(draft_id)
    return _answer(look_at(draft.run, moment_of(draft), draft) if draft.run else abort(404))


@screen.get("/chamber/proofs/<run_id>/points")
def points(run_id: str):
    line, run = find_run(run_id)
    return _answer(look_at(run, line.entry.happened_at))


def _answer(look: Look) -> Response:
    return Response(as_bytes(found_again(look), reader()), mimetype="application/octet-stream")


def as_bytes(found: Found, how: Reader) -> bytes:
    """All probes on one axis of time, in the reader's units."""
    named = [
        (name, quantity, trace) for probe in found.analysis.probes for name, quantity, trace in _traces(found, probe)
    ]
    times, columns = on_one_axis([trace for _, _, trace in named])
    header = {
        "rows": len(times),
        "columns": [
            {"name": probe, "label": _label(probe, kind), "quantity": kind, "unit": _unit(quantity, how)}
            for probe, (kind, quantity), _ in named
        ],
        "titles": _titles([(kind, _unit(quantity, how)) for _, (kind, quantity), _ in named]),
        "bands": list(_bands(found, how)),
        "marks": list(_marks(found)),
        "headline": chart_headline(found),
    }
    text = json.dumps(header, ensure_ascii=False).encode()
    text += b" " * (-(4 + len(text)) % 8)
    parts = [len(text).to_bytes(4, "little"), text, _little(times)]
    for (_, (_, quantity), _), column in zip(named, columns, strict=True):
        from_si = quantity.bare(how.system).from_si
        is_as_it_is = from_si(1.0) == 1.0 and from_si(0.0) == 0.0
        parts.append(_little(array("f", column if is_as_it_is else map(from_si, column))))
    return b"".join(parts)


Named = tuple[str, tuple[str, Quantity], Trace]


def _traces(found: Found, probe: Probe) -> Iterator[Named]:
    series = next(each for each in found.series if each.probe == probe.name)
    step_s = series.interval_s
    yield probe.name, ("temperature", TEMPERATURE), Trace(series.times_s, series.temperatures_c, step_s)
    if probe.humidity is None:
        return
    air = probe.humidity.air
    for kind, quantity, values in (
        ("humidity", RELATIVE_HUMIDITY, air.humidities),
        ("dew point", TEMPERATURE, air.dew_points_c),
        ("deficit", VAPOUR_PRESSURE, air.deficits_pa),
    ):
        yield probe.name, (kind, quantity), Trace(air.times_s, values, step_s)


def _label(probe: str, kind: str) -> str:
    """At the end of its line: a dew point says so, for it shares a panel with temperatures."""
    return say("{probe} dew point", probe=probe) if kind == "dew point" else probe


def _titles(drawn: list[tuple[str, str]]) -> dict[str, str]:
    by_unit = {unit: tuple(dict.fromkeys(kind for kind, each in drawn if each == unit)) for _, unit in drawn}
    return {unit: say(TITLES[kinds], unit=unit) for unit, kinds in by_unit.items()}


def _unit(quantity: Quantity, how: Reader) -> str:
    return quantity.bare(how.system).symbol


def _bands(found: Found, how: Reader) -> Iterator[dict[str, Any]]:
    wanted = found.analysis.wanted
    for kind, quantity, band in (
        ("temperature", TEMPERATURE, wanted.temperature),
        ("humidity", RELATIVE_HUMIDITY, wanted.humidity),
    ):
        if band is not None:
            from_si = quantity.bare(how.system).from_si
            yield {
                "quantity": kind,
                "low": from_si(band.target - band.half),
                "high": from_si(band.target + band.half),
            }


def _marks(found: Found) -> Iterator[dict[str, Any]]:
    """The runs that the probe in the middle shows, the events that any shows; a moment has its end where it begins."""
    for run in found.analysis.centre.compressor.runs:
        yield {"kind": "cooling", "from": run.peak_s, "to": run.trough_s, "words": say("compressor")}
    events = (event for probe in found.analysis.probes for event in probe.compressor.events)
    over_s: dict[str, float] = {}
    for event in sorted(events, key=lambda each: each.starts_s):
        if event.starts_s > over_s.get(event.kind, -math.inf):  # another probe's view of the same is no second one
            yield {
                "kind": event.kind,
                "from": event.starts_s,
                "to": event.ends_s,
                "words": say(EVENT_WORDS[event.kind]),
            }
        over_s[event.kind] = max(event.ends_s, over_s.get(event.kind, -math.inf))
    since_s = found.proof.settled_since_s
    if since_s is not None:
        yield {"kind": "settled", "from": since_s, "to": since_s, "words": say("settled")}


def _little(column: array[float]) -> bytes:
    if sys.byteorder == "big":
        column = array(column.typecode, column)
        column.byteswap()
    return column.tobytes()
