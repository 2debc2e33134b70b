"""A saved run: what it came to, and its logs looked at again where the device holds them."""

from __future__ import annotations

from hashlib import sha256
from typing import Any

from flask import Response, abort, redirect, render_template, request, url_for

from core.chamber.proof_run import Found
from core.daybook.book import Line
from core.daybook.facts.proofs import ProofRun
from core.daybook.kept_words import said
from core.daybook.proofs import band_words, headline, layout_of
from core.refusals import Refusal
from core.sentence import Message, Sentence, listed
from web.entry_forms import EntryForm, declare, reworded, typed_numbers
from web.files import NoSuchFile, file_of, keep_file
from web.forms import Words
from web.journal import book
from web.screens.chamber.blueprint import screen
from web.screens.chamber.proofs.drafts import LARGEST, Draft, DraftFile, begin_draft
from web.screens.chamber.proofs.looking import Look, drop, found_in, look_at, stage, whole_page
from web.screens.chamber.proofs.pictures import picture
from web.screens.chamber.proofs.results import context, kept_context
from web.screens.chamber.proofs.setting import PART
from web.visitor import reader

TEMPLATE = "chamber/proofs/saved.html"
NOT_HELD: Message = "This device does not hold the file."
NONE_SENT: Message = "Choose the file that the run was saved with."


def _say(fact: ProofRun) -> Sentence:
    return Sentence(
        "Proof “{name}”: settled" if fact.result.settled else "Proof “{name}”: not settled", {"name": fact.name}
    )


PROOF = declare(
    EntryForm(
        ProofRun,
        "Name the run",
        (
            Words("name", "Name of the run", 60, example="Second run"),
            Words("changed", "What was changed since the run before", 160, optional=True),
        ),
        _say,
        fact=reworded,
        hint="Target, part and probes are changed under Change the settings.",
        correct="Rename this run",
    )
)


def find_run(run_id: str) -> tuple[Line, ProofRun]:
    """The line as it stands; 404 where there is none or it was taken back."""
    line = book().line(run_id) if run_id in book() else abort(404)
    return (line, line.fact) if isinstance(line.fact, ProofRun) else abort(404)


@screen.get("/chamber/proofs/<run_id>")
def saved_proof(run_id: str):
    line, run = find_run(run_id)
    look = look_at(run, line.entry.happened_at)
    if (found := found_in(look)) is not None:
        return whole_page(_page(line, run, look, found))
    missing = _missing(run)
    if missing:
        return whole_page(_page(line, run, look, None, **_told(missing)))
    path = url_for("chamber.saved_proof", run_id=line.id)
    outcome = stage(look, path, TEMPLATE, **_about(line, run, look))
    return whole_page(_page(line, run, look, outcome)) if isinstance(outcome, Found) else outcome


def _missing(run: ProofRun) -> list[str]:
    """The names of the files that the device does not hold."""
    missing: list[str] = []
    for file in run.files:
        try:
            file_of(file.sha256)
        except NoSuchFile:
            missing.append(file.name)
    return missing


def _told(missing: list[str]) -> dict[str, Any]:
    return {"missing": missing, "missing_files": listed(missing) if missing else None}


def _about(line: Line, run: ProofRun, look: Look) -> dict[str, Any]:
    """What is known of a saved run without its logs."""
    return {
        "line": line,
        "band": band_words(run),
        "kept": run.result,
        "said": said,
        "picture": picture(run),
        "corrections": look.notes,
        "missing": (),
        "missing_files": None,
        "refusal": None,
        "found": None,
        "headline": headline(run.result.settled_since_s, run.result.settled_after_s, run.begun_s is not None),
        **kept_context(run.result),
    }


def _page(line: Line, run: ProofRun, look: Look, found: Found | None, **more: Any) -> str:
    shown = _about(line, run, look) | {"doing": None, "refused": (), "run": run} | more
    if found is not None:
        pages = {each: url_for(f"chamber.{each}", run_id=line.id) for each in ("points", "tables")}
        shown |= context(found) | pages
    return render_template(TEMPLATE, **shown)


@screen.post("/chamber/proofs/<run_id>/stop")
def stop_saved(run_id: str):
    line, run = find_run(run_id)
    drop(look_at(run, line.entry.happened_at))
    return redirect(url_for("chamber.page"), 303)


@screen.get("/chamber/proofs/<run_id>/files/<int:at>")
def raw_file(run_id: str, at: int):
    """The file as the logger wrote it, byte for byte."""
    _, run = find_run(run_id)
    if at >= len(run.files):
        abort(404)
    try:
        data = file_of(run.files[at].sha256)
    except NoSuchFile:
        abort(404, NOT_HELD)
    response = Response(data, mimetype="application/octet-stream")
    response.headers.set("Content-Disposition", "attachment", filename=run.files[at].name)
    return response


@screen.post("/chamber/proofs/<run_id>/hand-in")
def hand_in(run_id: str):
    """A file that the device lacks, told by its SHA-256: another of the same name is not taken."""
    line, run = find_run(run_id)
    wanted = {file.sha256 for file in run.files}
    sent = [each.stream.read(LARGEST + 1) for each in request.files.getlist("file") if each.filename]
    known = [data for data in sent if sha256(data).hexdigest() in wanted]
    try:
        if not known:
            raise Refusal("file", _not_the_same(run) if sent else NONE_SENT)
        for data in known:
            keep_file(data)
    except Refusal as refusal:
        look = look_at(run, line.entry.happened_at)
        return _page(line, run, look, None, **_told(_missing(run)), refusal=refusal), 422
    return redirect(url_for("chamber.saved_proof", run_id=line.id), 303)


def _not_the_same(run: ProofRun) -> Sentence:
    return Sentence(
        "This is not the same file, byte for byte. Choose {files} as the logger saved it, not edited since.",
        {"files": listed([file.name for file in run.files], "or")},
    )


@screen.post("/chamber/proofs/<run_id>/again")
def look_again(run_id: str):
    """The same logs against another band, part or naming of the probes: what is saved then corrects this run."""
    line, run = find_run(run_id)
    try:
        files = [(file, file_of(file.sha256), layout_of(file.layout)) for file in run.files]
    except (NoSuchFile, Refusal):
        return redirect(url_for("chamber.saved_proof", run_id=line.id), 303)
    draft: Draft = begin_draft()
    draft.files = [DraftFile(file.sha256, file.name, data, layout, is_settled=True) for file, data, layout in files]
    draft.texts = _texts_of(run)
    draft.corrects = line.id
    return redirect(url_for("chamber.set_proof", draft_id=draft.id), 303)


def _texts_of(run: ProofRun) -> dict[str, str]:
    """The settings as they would have been typed."""
    how = reader()
    texts = typed_numbers(run, how)
    texts |= {each.key: each.text_of(getattr(run, each.key)) for each in PART}
    texts |= {"name": run.name, "changed": run.changed}
    for at, probe in enumerate(run.probes):
        texts[f"probe-{at}"] = probe.name
        if probe.instrument:
            texts[f"instrument-{at}"] = probe.instrument
        if probe.name == run.centre:
            texts["centre"] = str(at)
    return texts
