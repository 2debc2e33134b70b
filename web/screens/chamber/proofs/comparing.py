"""Two saved runs side by side, from what was kept of each: no log need be read again."""

from __future__ import annotations

from flask import render_template, request

from core.chamber.settling.comparing import beside
from core.daybook.facts.proofs import ProofRun
from core.daybook.kept_words import named_figures, said
from core.daybook.proofs import band_words, runs
from web.journal import book
from web.screens.chamber.blueprint import screen
from web.screens.chamber.proofs.pictures import picture

TELLING = (
    "settled",
    "mean",
    "lowest",
    "highest",
    "in_band",
    "swing",
    "starts",
    "run_share",
    "humidity",
    "humidity_swing",
)
"""What a change is made for; the other figures are folded."""


@screen.get("/chamber/proofs/compare")
def compare_proofs():
    """The newest beside the one before it, unless others are chosen."""
    lines = {line.id: line for line in runs(book())}
    newest = [*lines, "", ""]
    chosen = [request.args.get(key, "") for key in ("one", "other")]
    one, other = (key if key in lines else newest[place] for key, place in zip(chosen, (1, 0), strict=True))
    both = [(lines[key], _run(lines[key].fact)) for key in (one, other) if key]
    table = beside(*(named_figures(run.result.figures) for _, run in both)) if len(both) == 2 else ()
    return render_template(
        "chamber/proofs/compare.html",
        lines=lines.values(),
        one=one,
        other=other,
        both=both,
        table=table,
        telling=TELLING,
        picture=picture,
        band_words=band_words,
        said=said,
    )


def _run(fact: object) -> ProofRun:
    assert isinstance(fact, ProofRun)
    return fact
