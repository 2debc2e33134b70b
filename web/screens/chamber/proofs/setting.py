"""The third step: what the chamber is held to, which part of the logs counts, which probe is which instrument."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime
from typing import Any

from attrs import frozen
from flask import redirect, render_template, request, url_for

from core.chamber.logs import Layout, clock_kind, preview_times
from core.chamber.logs.naming import called
from core.chamber.proof_run import probes_in
from core.daybook.facts.fields import numbers
from core.daybook.facts.proofs import ProofFile, ProofProbe, ProofResult, ProofRun
from core.daybook.proofs import keep_layout, usual_wanted
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE, TEMPERATURE_DIFFERENCE, Reader
from core.refusals import Missing, NotAQuantity, OutOfRange, Refusal, Refused
from core.sentence import Message, Sentence, as_typed
from core.worksheet import Choice
from web.forms import Form, Input, Words, from_request, typed
from web.instruments import ANOTHER, one_of, shelf
from web.journal import book
from web.screens.chamber.blueprint import screen
from web.screens.chamber.proofs.drafts import Draft, find_draft
from web.visitor import now, reader

NOTHING_YET = ProofResult(None, None)
LOGGERS = ("thermometer", "hygrometer")


@frozen
class LogTime:
    """A moment of the logs' own clock, in seconds; empty means that end of the log."""

    key: str
    label: Message
    help: Message = ""

    def read(self, text: str, reader: Reader) -> float | None:
        if not text.strip():
            return None
        try:
            return datetime.fromisoformat(text.strip()).replace(tzinfo=UTC).timestamp()
        except ValueError:
            raise NotAQuantity(self.key, "Enter the day and time, for example 2026-11-25 17:30.") from None

    def text_of(self, at_s: float | None) -> str:
        return "" if at_s is None else datetime.fromtimestamp(at_s, UTC).replace(tzinfo=None).isoformat("T", "minutes")


BAND = numbers(ProofRun)
NAMING = (
    Words("name", "Name of the run", 60, example="Second run"),
    Words("changed", "What was changed since the run before", 160, optional=True),
)
PART = (
    LogTime("from_s", "From", "Empty: from its beginning."),
    LogTime("until_s", "Until", "Empty: to its end."),
)


@screen.route("/chamber/proofs/drafts/<draft_id>/settings", methods=["GET", "POST"])
def set_proof(draft_id: str):
    draft = find_draft(draft_id)
    if not draft.files:
        return redirect(url_for("chamber.new_proof", draft=draft.id), 303)
    if draft.first_unsettled is not None:
        return redirect(url_for("chamber.lay_out", draft_id=draft.id, at=draft.first_unsettled), 303)
    probes = probes_of(draft)
    inputs = _inputs(draft, probes)
    if request.method == "GET":
        return _page(draft, probes, Form("", inputs, _start(draft, inputs) | draft.texts))
    form = from_request(inputs, request.form, "")
    draft.texts = form.texts
    try:
        draft.run = run_of(draft, probes, form)
    except Refused as refused:
        return _page(draft, probes, form.refused(refused)), 422
    return redirect(url_for("chamber.draft_proof", draft_id=draft.id), 303)


def probes_of(draft: Draft) -> list[ProofProbe]:
    """Every probe of every file, called by what tells it from the others: the logs' own names, or its file's too."""
    found = [(at, name) for at, file in enumerate(draft.files) for name in probes_in(file.layout)]
    are_told = len({name.casefold() for _, name in found}) == len(found)
    return [
        ProofProbe(at, name, called(name).say(reader()) if are_told else _with_file(draft, at, name))
        for at, name in found
    ]


def _with_file(draft: Draft, at: int, name: str) -> str:
    stem = draft.files[at].name.rsplit(".", 1)[0][:30]
    is_told = sum(file.name.rsplit(".", 1)[0][:30] == stem for file in draft.files) == 1
    stem = stem if is_told else f"{at + 1} {stem}"
    return stem if len(probes_in(draft.files[at].layout)) == 1 else f"{stem} {called(name).say(reader())}"[:40]


def _inputs(draft: Draft, probes: list[ProofProbe]) -> tuple[Input, ...]:
    part = PART if has_dates(draft) else ()
    centre = Choice(
        "centre", "The probe in the middle", {str(at): as_typed(each.name) for at, each in enumerate(probes)}
    )
    return (*BAND, *part, *_about_probes(probes), *((centre,) if len(probes) > 1 else ()), *NAMING)


def _about_probes(probes: list[ProofProbe]) -> Iterator[Input]:
    options = {each.id: as_typed(each.name) for each in shelf().in_use() if each.kind in LOGGERS}
    for at, probe in enumerate(probes):
        told = {"probe": probe.name}
        yield Words(f"probe-{at}", Sentence("Name of “{probe}”", told), 40, example="left shelf")
        if options:
            yield one_of(f"instrument-{at}", Sentence("“{probe}” is", told), options, "none of the list")


def _start(draft: Draft, inputs: tuple[Input, ...]) -> dict[str, str]:
    """What a new form begins with: the band of the set-points, or the usual one; the instruments by their names."""
    how, (wanted, _) = reader(), usual_wanted(book())
    texts = {
        "temperature_c": typed(wanted.temperature.target, TEMPERATURE, how),
        "temperature_half_k": typed(wanted.temperature.half, TEMPERATURE_DIFFERENCE, how),
        "centre": "0",
        "name": Sentence("Run of {day}", {"day": now().date()}).say(how),
    }
    if wanted.humidity is not None:
        texts["humidity"] = typed(wanted.humidity.target, RELATIVE_HUMIDITY, how)
        texts["humidity_half"] = typed(wanted.humidity.half, RELATIVE_HUMIDITY, how)
    for at, probe in enumerate(probes_of(draft)):
        texts[f"probe-{at}"] = probe.name
        texts[f"instrument-{at}"] = _likely_instrument(draft, probe)
    return {each.key: texts[each.key] for each in inputs if each.key in texts}


def _likely_instrument(draft: Draft, probe: ProofProbe) -> str:
    """The one that is called so, by itself or in loggers' files; where none is, or several, it is not guessed."""
    called = {_letters(each) for each in (probe.in_log, probe.name, draft.files[probe.file].name.rsplit(".", 1)[0])}
    kept = [each for each in shelf().in_use() if each.kind in LOGGERS]
    in_files = [each.id for each in kept if each.added.probe and _letters(each.added.probe) in called]
    named = in_files or [each.id for each in kept if _letters(each.name) in called]
    return named[0] if len(named) == 1 else ANOTHER


def _letters(name: str) -> str:
    """Nobody types a name twice with the same capitals, spaces and hyphens."""
    return "".join(each for each in name.casefold() if each.isalnum()) or name


def has_dates(draft: Draft) -> bool:
    return any(clock_kind(file.layout) != "start" for file in draft.files)


def _page(draft: Draft, probes: list[ProofProbe], form: Form) -> str:
    _, is_set = usual_wanted(book())
    return render_template(
        "chamber/proofs/settings.html",
        draft=draft,
        form=form,
        band=BAND,
        part=[each for each in form.inputs if isinstance(each, LogTime)],
        naming=NAMING,
        probes=[
            (probe, [each for each in form.inputs if each.key in (f"probe-{at}", f"instrument-{at}")])
            for at, probe in enumerate(probes)
        ],
        centre=next((each for each in form.inputs if each.key == "centre"), None),
        is_set=is_set,
    )


def run_of(draft: Draft, probes: list[ProofProbe], form: Form) -> ProofRun:
    """What is to be looked at. Raises Refused."""
    values: dict[str, Any] = form.read(reader())
    named = [
        ProofProbe(probe.file, probe.in_log, values[f"probe-{at}"], values.get(f"instrument-{at}"))
        for at, probe in enumerate(probes)
    ]
    refusals = [*_humidity(values), *_names(named), *_ends(values)]
    if refusals:
        raise Refused(refusals)
    present = now()
    offset = present.utcoffset()
    has_humidity = values["humidity"] is not None
    return ProofRun(
        name=values["name"],
        changed=values["changed"],
        files=tuple(ProofFile(file.sha256, file.name, keep_layout(file.layout)) for file in draft.files),
        probes=tuple(named),
        temperature_c=values["temperature_c"],
        temperature_half_k=values["temperature_half_k"],
        humidity=values["humidity"],
        humidity_half=values["humidity_half"] if has_humidity else None,
        room_c=values["room_c"],
        centre=named[int(values.get("centre", 0))].name,
        from_s=values.get("from_s"),
        until_s=values.get("until_s"),
        begun_s=_begun_s([file.layout for file in draft.files], offset.total_seconds() if offset else 0.0),
        utc_offset_s=offset.total_seconds() if offset else 0.0,
        result=NOTHING_YET,
    )


def _humidity(values: dict[str, Any]) -> Iterator[Refusal]:
    if values["humidity"] is not None and values["humidity_half"] is None:
        yield Missing("humidity_half", "Enter the humidity tolerance, for example 5 %.")


def _names(probes: list[ProofProbe]) -> Iterator[Refusal]:
    names = [probe.name for probe in probes]
    for at, name in enumerate(names):
        if name in names[:at]:
            taken = Sentence("Another probe is called {name} already: give this one a name of its own.", {"name": name})
            yield OutOfRange(f"probe-{at}", taken)


def _ends(values: dict[str, Any]) -> Iterator[Refusal]:
    first, last = values.get("from_s"), values.get("until_s")
    if isinstance(first, float) and isinstance(last, float) and first >= last:
        yield OutOfRange("until_s", "The end must be later than the beginning.")


def _begun_s(layouts: list[Layout], utc_offset_s: float) -> float | None:
    """When the logs begin, as far as their first rows tell."""
    begun: list[float] = []
    for layout in layouts:
        clock = clock_kind(layout)
        if clock != "start":
            shift_s = utc_offset_s if clock == "utc" else 0.0
            begun += [at_s + shift_s for at_s in preview_times(layout) if at_s == at_s]
    return min(begun, default=None)
