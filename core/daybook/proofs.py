"""Proof runs of the book: what each was held to, what it came to, and how its logs are looked at again."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from datetime import UTC, datetime, timedelta
from typing import Any

from attrs import evolve
from cattrs.preconf.json import make_converter

from core.chamber.logs import Layout
from core.chamber.logs.notes import Note, kept_as_words
from core.chamber.proof_run import Found, Given, GivenFile, GivenProbe
from core.chamber.settling.comparing import key_figures
from core.chamber.settling.measures import LASTS
from core.chamber.settling.outline import outline
from core.chamber.settling.statistics import Band
from core.chamber.settling.wanted import USUAL_HUMIDITY, USUAL_TEMPERATURE, Wanted
from core.daybook.book import Book, Line
from core.daybook.corrections.logs import LogCorrection
from core.daybook.facts.proofs import ProofResult, ProofRun
from core.daybook.kept_words import keep, keep_figures
from core.daybook.set_points import set_points
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE, TEMPERATURE_DIFFERENCE, Amount
from core.refusals import Refusal
from core.sentence import Message, Sentence

EPOCH = datetime(1970, 1, 1, tzinfo=UTC)

_converter = make_converter(forbid_extra_keys=False)
_as_it_stands = _converter.gen_structure_attrs_fromdict(Note)


def _note(kept: Any, kind: type[Note]) -> Note | None:
    return kept_as_words(kept) if isinstance(kept, str) else _as_it_stands(kept, kind)


_converter.register_structure_hook(Note, _note)


def runs(book: Book) -> list[Line]:
    """Every run saved and not taken back, newest first."""
    return [line for line in book.of_kind("proof-run") if isinstance(line.fact, ProofRun)][::-1]


def usual_wanted(book: Book) -> tuple[Wanted, bool]:
    """The band a new run starts from, and whether it is that of the set-points in force."""
    chosen = set_points(book)
    if chosen is None:
        return Wanted(), False
    fact: Any = chosen.fact
    temperature = Band(fact.temperature_c, USUAL_TEMPERATURE.half)
    return Wanted(temperature, Band(fact.humidity, USUAL_HUMIDITY.half)), True


def keep_layout(layout: Layout) -> dict[str, Any]:
    """In plain JSON, without the rows that were shown."""
    return json.loads(json.dumps(_converter.unstructure(evolve(layout, preview=()))))


def layout_of(kept: Mapping[str, Any]) -> Layout:
    """Raises Refusal where a newer daybook laid it out in a way that this one does not know."""
    try:
        return _converter.structure(kept, Layout)
    except Exception:
        sentence: Message = "This log was laid out by a newer daybook. What it came to is below as it was saved."
        raise Refusal("layout", sentence) from None


def wanted_of(run: ProofRun) -> Wanted:
    humidity = None
    if run.humidity is not None and run.humidity_half is not None:
        humidity = Band(run.humidity, run.humidity_half)
    return Wanted(Band(run.temperature_c, run.temperature_half_k), humidity)


def given(run: ProofRun, data: Sequence[bytes], corrections: Sequence[LogCorrection]) -> Given:
    """What is to be looked at. data: its files' bytes; corrections: of each of its probes. Refusals as in layout_of."""
    return Given(
        files=tuple(
            GivenFile(file.name, each, layout_of(file.layout)) for file, each in zip(run.files, data, strict=True)
        ),
        probes=tuple(
            GivenProbe(probe.file, probe.in_log, probe.name, each.temperature, each.humidity, each.failed)
            for probe, each in zip(run.probes, corrections, strict=True)
        ),
        wanted=wanted_of(run),
        room_c=run.room_c,
        centre=run.centre or None,
        from_s=run.from_s,
        until_s=run.until_s,
        utc_offset_s=run.utc_offset_s,
    )


def result_of(found: Found, notes: Sequence[Sentence] = ()) -> ProofResult:
    """What is kept of it. notes: how its probes were corrected."""
    centre = next(each for each in found.series if each.probe == found.analysis.centre.name)
    since_s, after_s = settled_at(found)
    return ProofResult(
        settled_since_s=since_s,
        settled_after_s=after_s,
        because=tuple(keep(reason.text, reason.met) for reason in found.proof.because),
        advice=tuple(keep(each.text) for each in found.proof.advice),
        corrected=tuple(keep(each) for each in notes),
        figures=keep_figures(key_figures(found.analysis)),
        outline=outline(centre),
    )


def settled_at(found: Found) -> tuple[float | None, float | None]:
    """On the logs' clock, and how long into the first of them; None where it has not settled."""
    since_s = found.proof.settled_since_s
    begun_s = min(probe.begins_s for probe in found.analysis.probes)
    return since_s, None if since_s is None else since_s - begun_s


def headline(since_s: float | None, after_s: float | None, has_dates: bool) -> Sentence:
    """The verdict in a sentence: since when, or that it is not. has_dates: whether the logs' clock is a clock's."""
    if since_s is None or after_s is None:
        return Sentence("Not settled.")
    after = {"after": Amount(after_s, LASTS)}
    if not has_dates:
        return Sentence("Settled {after} into the log.", after)
    return Sentence("Settled since {since}, {after} into the log.", {"since": logged_at(since_s), **after})


def logged_at(at_s: float) -> datetime:
    """A time of the logs' clock."""
    return EPOCH + timedelta(seconds=at_s)


def band_amounts(run: ProofRun) -> dict[str, Amount]:
    amounts = {
        "temperature": Amount(run.temperature_c, TEMPERATURE),
        "half": Amount(run.temperature_half_k, TEMPERATURE_DIFFERENCE),
    }
    if run.humidity is not None and run.humidity_half is not None:
        amounts["humidity"] = Amount(run.humidity, RELATIVE_HUMIDITY)
        amounts["humid_half"] = Amount(run.humidity_half, RELATIVE_HUMIDITY)
    return amounts


def band_words(run: ProofRun) -> Sentence:
    """What it was held to."""
    amounts = band_amounts(run)
    both: Message = "Target {temperature} ± {half}, {humidity} ± {humid_half}."
    warmth: Message = "Target {temperature} ± {half}; no humidity target."
    return Sentence(both if "humidity" in amounts else warmth, amounts)
