"""The fourth step: the logs are read and looked at, and the run is kept with its files, or not."""

from __future__ import annotations

from datetime import datetime

from attrs import evolve
from flask import redirect, render_template, url_for

from core.chamber.proof_run import Found
from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.proofs import ProofRun
from core.daybook.proofs import band_words, result_of
from core.refusals import Refusal
from web.entry_forms import with_saved
from web.files import keep_file
from web.journal import book, fresh_id, record, sent_token
from web.screens.chamber.blueprint import screen
from web.screens.chamber.proofs.drafts import Draft, find_draft
from web.screens.chamber.proofs.looking import Look, drop, found_in, look_at, stage, whole_page
from web.screens.chamber.proofs.results import context
from web.visitor import now

TEMPLATE = "chamber/proofs/draft.html"


def moment_of(draft: Draft) -> datetime:
    """When it is saved: now, or when the run that it corrects was."""
    return now() if draft.corrects is None else book().line(draft.corrects).entry.happened_at


def _look(draft: Draft, run: ProofRun) -> Look:
    return look_at(run, moment_of(draft), draft)


@screen.get("/chamber/proofs/drafts/<draft_id>")
def draft_proof(draft_id: str):
    draft = find_draft(draft_id)
    if draft.run is None:
        return redirect(url_for("chamber.set_proof", draft_id=draft.id), 303)
    look = _look(draft, draft.run)
    path = url_for("chamber.draft_proof", draft_id=draft.id)
    outcome = stage(look, path, TEMPLATE, draft=draft, band=band_words(look.run))
    return _found(draft, look, outcome) if isinstance(outcome, Found) else outcome


def _found(draft: Draft, look: Look, found: Found, refusal: Refusal | None = None):
    page = render_template(
        TEMPLATE,
        run=look.run,
        draft=draft,
        band=band_words(look.run),
        doing=None,
        refused=(),
        corrections=look.notes,
        points=url_for("chamber.draft_points", draft_id=draft.id),
        tables=url_for("chamber.draft_tables", draft_id=draft.id),
        token=fresh_id(),
        not_saved=refusal,
        **context(found),
    )
    return whole_page(page)


@screen.post("/chamber/proofs/drafts/<draft_id>/stop")
def stop_proof(draft_id: str):
    """What was read so far is let go; files and settings stay."""
    draft = find_draft(draft_id)
    if draft.run is not None:
        drop(_look(draft, draft.run))
    return redirect(url_for("chamber.set_proof", draft_id=draft.id), 303)


@screen.post("/chamber/proofs/drafts/<draft_id>/save")
def save_proof(draft_id: str):
    """The entry and its files together, or neither."""
    draft = find_draft(draft_id)
    token = sent_token()
    if token in book():  # the same tap twice
        return redirect(_saved(draft, token), 303)
    look = _look(draft, draft.run) if draft.run is not None else None
    found = found_in(look) if look is not None else None
    if look is None or found is None:
        return redirect(url_for("chamber.draft_proof", draft_id=draft.id), 303)
    try:
        for file in draft.files:
            keep_file(file.data)
        written = record(
            evolve(look.run, result=result_of(found, look.notes)),
            about=CHAMBER,
            happened_at=moment_of(draft),
            token=token,
            corrects=draft.corrects,
        )
    except Refusal as refusal:
        return _found(draft, look, found, refusal), 503
    return redirect(_saved(draft, written), 303)


def _saved(draft: Draft, written: str) -> str:
    return with_saved(url_for("chamber.saved_proof", run_id=draft.corrects or written), written)
