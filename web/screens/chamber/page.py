"""The chamber's own page: how it stands now, and its log."""

from __future__ import annotations

from flask import render_template, request

from core.daybook.book import Line
from core.daybook.facts.chamber import CHAMBER, AirRead, HumidifierCharged
from core.daybook.facts.proofs import ProofRun
from core.daybook.preparation import latest_run, sanitised
from core.daybook.proofs import runs
from core.daybook.water import Basin, Tank, basin, tank
from core.quantities import COUNT, VOLUME, Amount
from core.refusals import Refusal
from core.sentence import Message, Rounded, Sentence, Value
from core.units import DAY_S
from core.working import Figure
from web.days import day
from web.entry_forms import say
from web.instruments import corrected_of, shelf
from web.journal import book
from web.screens.chamber.air import air_figures, course
from web.screens.chamber.blueprint import screen
from web.screens.chamber.in_force import in_force
from web.screens.chamber.instrument_words import OUTCOMES
from web.screens.chamber.load import BURDEN_WORDS, in_short
from web.screens.chamber.proofs.pictures import picture
from web.screens.chamber.run import STANDING_WORDS
from web.visitor import reader

LATEST_LINES = 50
"""A chamber is read for years: its page shows this many lines of the log until all are asked for."""

DRY: Message = "{rate} of {holds}. Dry about {expected}, {earliest} at the earliest, {latest} at the latest."
FULL: Message = (
    "The basin gathers {rate} of {holds}. Full about {expected}, {earliest} at the earliest, {latest} at the latest."
)


@screen.get("/chamber")
def page():
    shown = len(book()) + 1 if "all" in request.args else LATEST_LINES
    lines, air = book().about(CHAMBER), book().latest(CHAMBER, AirRead)
    figures = _meant_by(air) if air else ()
    run, humidifier, gathered = latest_run(book()), tank(book()), basin(book())
    return render_template(
        "chamber/page.html",
        air=air,
        figures=figures,
        dew_point=next((each for each in figures if each.key == "dew_point"), None),
        set_points=(chosen := in_force()),
        course=course(chosen.fact) if chosen else None,
        instruments=shelf().in_use(),
        outcomes=OUTCOMES,
        charge=book().latest(CHAMBER, HumidifierCharged),
        tank=humidifier,
        tank_lasts=_lasts(DRY, humidifier),
        basin=gathered,
        basin_lasts=_lasts(FULL, gathered),
        run=run,
        standing=STANDING_WORDS[sanitised(run)[0]] if run else "",
        load=in_short(),
        burden_words=BURDEN_WORDS,
        day_s=DAY_S,
        proofs=[(line, picture(line.fact)) for line in runs(book()) if isinstance(line.fact, ProofRun)],
        log=[(line, say(line, reader())) for line in reversed(lines[-shown:])],
        older=_older(len(lines[:-shown])),
    )


def _meant_by(air: Line) -> tuple[Figure, ...]:
    """None of air that is beyond the sum: a reading may lie there once it is corrected."""
    try:
        return air_figures(corrected_of(air).fact)
    except Refusal:
        return ()


def _lasts(text: Message, of: Tank | Basin | None) -> Sentence | None:
    """How fast it goes, and the day of its end; None where that is not known yet."""
    if of is None or of.outlook is None:
        return None
    outlook = of.outlook
    told: dict[str, Value] = {
        "rate": Rounded(outlook.rate.amount),
        "holds": Rounded(Amount(of.holds_m3 or 0.0, VOLUME)),
    }
    days = {"expected": outlook.expected, "earliest": outlook.earliest, "latest": outlook.latest}
    return Sentence(text, {**told, **{name: day(moment) for name, moment in days.items()}})


def _older(count: int) -> Sentence | None:
    """What asks for the lines that are not shown."""
    if not count:
        return None
    shown = {"count": Amount(count, COUNT)}
    return Sentence("Show {count} older line", shown, plural="Show {count} older lines")
