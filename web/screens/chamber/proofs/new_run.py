"""The first step of a run: which files the loggers saved."""

from __future__ import annotations

from flask import redirect, render_template, request, url_for

from core.refusals import Refusal
from core.sentence import Sentence
from web.screens.chamber.blueprint import screen
from web.screens.chamber.proofs.drafts import Draft, begin_draft, drafts


@screen.route("/chamber/proofs/new", methods=["GET", "POST"])
def new_proof():
    """Files that can be read are kept, whatever becomes of the others."""
    draft = drafts().get(request.values.get("draft", ""))
    if request.method == "GET":
        return render_template("chamber/proofs/new.html", draft=draft, refusals=())
    sent = [each for each in request.files.getlist("file") if each.filename]
    if draft is None and sent:
        draft = begin_draft()
    refusals = _taken(draft, [(each.filename or "", each.stream.read()) for each in sent]) if draft else []
    if not sent:
        refusals = [("", Sentence("Choose the text file that a logger saved, or several."))]
    if refusals:
        return render_template("chamber/proofs/new.html", draft=draft, refusals=refusals), 422
    assert draft is not None
    return redirect(url_for("chamber.lay_out", draft_id=draft.id, at=draft.first_unsettled or 0), 303)


def _taken(draft: Draft, sent: list[tuple[str, bytes]]) -> list[tuple[str, Sentence]]:
    """Takes each file; returns the names of those that cannot be read, and why."""
    refused: list[tuple[str, Sentence]] = []
    for name, data in sent:
        try:
            draft.take(name, data)
        except Refusal as refusal:
            refused.append((name, refusal.said))
    return refused
