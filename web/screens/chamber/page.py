"""The chamber's own page: how it stands now, and its log."""

from __future__ import annotations

from flask import render_template, request

from core.daybook.facts import CHAMBER, AirRead, HumidifierCharged, ProofRun
from core.daybook.preparation import latest_run, sanitised
from core.daybook.proofs import runs
from core.daybook.water import basin, tank
from web.entry_forms import say
from web.instruments import corrected_of, shelf
from web.journal import book
from web.screens.chamber.air import air_figures
from web.screens.chamber.blueprint import screen
from web.screens.chamber.load import in_short
from web.screens.chamber.proofs.pictures import picture
from web.screens.chamber.set_points import in_force
from web.visitor import reader

LATEST_LINES = 50
"""A chamber is read for years: its page shows this many lines of the log until all are asked for."""


@screen.get("/chamber")
def page():
    shown = len(book()) + 1 if "all" in request.args else LATEST_LINES
    lines, air = book().about(CHAMBER), book().latest(CHAMBER, AirRead)
    run = latest_run(book())
    return render_template(
        "chamber/page.html",
        air=air,
        figures=air_figures(corrected_of(air).fact) if air else (),
        set_points=in_force(),
        instruments=shelf().in_use(),
        charge=book().latest(CHAMBER, HumidifierCharged),
        tank=tank(book()),
        basin=basin(book()),
        run=run,
        standing=sanitised(run)[0] if run else "",
        load=in_short(),
        proofs=[(line, picture(line.fact)) for line in runs(book()) if isinstance(line.fact, ProofRun)],
        log=[(line, say(line, reader())) for line in reversed(lines[-shown:])],
        hidden=len(lines[:-shown]),
    )
