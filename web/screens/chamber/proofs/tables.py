"""The chart's data as tables: every hour, every run of the compressor, every door. Laid out when they are asked for.

A month of two probes is 700 hours and 2,000 runs: with the verdict they would make whoever waits for it wait longer.
"""

from __future__ import annotations

from flask import abort, render_template, url_for

from web.screens.chamber.blueprint import screen
from web.screens.chamber.proofs.draft_run import moment_of
from web.screens.chamber.proofs.drafts import find_draft
from web.screens.chamber.proofs.looking import Look, found_again, look_at
from web.screens.chamber.proofs.results import tables_of
from web.screens.chamber.proofs.saved_run import find_run


@screen.get("/chamber/proofs/drafts/<draft_id>/tables")
def draft_tables(draft_id: str):
    draft = find_draft(draft_id)
    back = url_for("chamber.draft_proof", draft_id=draft.id)
    return _page(look_at(draft.run, moment_of(draft), draft) if draft.run else abort(404), back)


@screen.get("/chamber/proofs/<run_id>/tables")
def tables(run_id: str):
    line, run = find_run(run_id)
    return _page(look_at(run, line.entry.happened_at), url_for("chamber.saved_proof", run_id=line.id))


def _page(look: Look, back: str) -> str:
    return render_template("chamber/proofs/tables.html", run=look.run, back=back, **tables_of(found_again(look)))
