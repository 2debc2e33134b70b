"""Choosing set-points: the programmes that are printed, what a set-point comes to, and the one in force."""

from __future__ import annotations

import attrs
from flask import abort, render_template, request, url_for

from core.chamber.cold_piece import cold_piece
from core.chamber.drying_force import SCALE, SOURCE, grade
from core.chamber.programmes import BY_KEY, PROCESSES, Programme, beef_ageing, of_process
from core.chamber.rates import AIR_SPEED
from core.chamber.setpoints import HYGROMETER, equal_humidity, equal_line, set_point
from core.daybook.facts.chamber import CHAMBER, SetPointsChosen
from core.daybook.facts.fields import boxes
from core.daybook.set_points import set_points
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE, TEMPERATURE_DIFFERENCE, Amount
from core.refusals import Missing, OutOfRange, Refusal
from core.sentence import Rounded, Sentence, Value
from core.units import DAY_S
from core.verdict import Reason
from core.working import Figure
from web.entry_forms import EntryForm, Subject, Values, declare, write
from web.forms import suggested
from web.journal import book
from web.screens.chamber.blueprint import screen
from web.visitor import reader

OWN = "own"
"""The address of a set-point that follows no programme."""
COMPARED_K = 2.0
_STEP = {"step": Amount(COMPARED_K, TEMPERATURE_DIFFERENCE)}
EQUALLY_HARD = (
    ("equal_colder", Sentence("Dries as hard {step} colder", _STEP), -COMPARED_K),
    ("equal_warmer", Sentence("Dries as hard {step} warmer", _STEP), COMPARED_K),
)
COMPARED_C = (-6.0, -4.0, -2.0, 2.0, 4.0, 6.0)


def _chosen(values: Values, subject: Subject) -> SetPointsChosen:
    """The programme stands in the address; a correction keeps the one it had."""
    if values["piece_c"] is not None and values["thickness_m"] is None:
        raise Missing("thickness_m", "Enter the thickness of the cold piece too, or leave its temperature empty.")
    if isinstance(subject.was, SetPointsChosen):
        return attrs.evolve(subject.was, **values)
    programme = BY_KEY.get((request.view_args or {}).get("programme", ""))
    process = programme.process if programme else ""
    return SetPointsChosen(**values, process=process, programme=programme.key if programme else "")


def meaning(fact: SetPointsChosen, subject: Subject | None = None) -> tuple[Figure, ...]:
    """All that a set-point comes to, the drying force with its word first."""
    air = (fact.temperature_c, fact.humidity)
    force, *others = set_point(*air, fact.surface_activity, BY_KEY.get(fact.programme))
    graded = grade(force.value)
    word = Sentence(
        "In a word: {word}; {meaning}. The scale is common practice; no published source.",
        {"word": Sentence(graded.word), "meaning": Sentence(graded.meaning)},
    )
    piece = () if fact.piece_c is None or fact.thickness_m is None else cold_piece(fact.piece_c, *air, fact.thickness_m)
    named = tuple(each for each in piece if each.key not in {other.key for other in others})
    cautions = (word, *force.cautions, *(_told(limit) for limit in limits(fact)))
    return (attrs.evolve(force, cautions=cautions), *others, *_equal(fact), *named)


def _known_meaning(fact: SetPointsChosen) -> tuple[Figure, ...]:
    """None where the form would refuse such a choice: it came from elsewhere."""
    try:
        return meaning(fact)
    except Refusal:
        return ()


def _told(limit: Reason) -> Sentence:
    """A limit of the rule for aged beef, while one types."""
    limited = {"limit": limit.text}
    if limit.met is None:
        return Sentence("Not shown to be within the EU rule for aged beef: {limit}", limited)
    if limit.met:
        return Sentence("Within the EU rule for aged beef: {limit}", limited)
    return Sentence("Outside the EU rule for aged beef: {limit}", limited)


def _equal(fact: SetPointsChosen) -> tuple[Figure, ...]:
    """The humidity that dries as hard a little colder and a little warmer, where there is one."""
    found: list[Figure] = []
    for key, name, step in EQUALLY_HARD:
        try:
            there = equal_humidity(fact.temperature_c, fact.humidity, fact.surface_activity, fact.temperature_c + step)
        except OutOfRange:
            continue
        found.append(attrs.evolve(there, key=key, name=name))
    return tuple(found)


def _said(fact: SetPointsChosen) -> Sentence:
    told: dict[str, Value] = {
        "temperature": Rounded(Amount(fact.temperature_c, TEMPERATURE)),
        "humidity": Rounded(Amount(fact.humidity, RELATIVE_HUMIDITY)),
    }
    programme = BY_KEY.get(fact.programme)
    if programme is None:
        return Sentence("Set-points chosen: {temperature}, {humidity}", told)
    named = {**told, "programme": Sentence(programme.name)}
    return Sentence("Set-points chosen: {temperature}, {humidity} ({programme})", named)


CHOOSE = declare(
    EntryForm(
        SetPointsChosen,
        "Choose set-points",
        boxes(SetPointsChosen),
        _said,
        figures=meaning,
        fact=_chosen,
        save="Save the set-points",
        correct="Correct these set-points",
    )
)


@screen.get("/chamber/set-points")
def set_points_page():
    """What is set and what it means; below it the programmes that are printed, by process."""
    line = set_points(book())
    fact = line.fact if line is not None and isinstance(line.fact, SetPointsChosen) else None
    return render_template(
        "chamber/set_points.html",
        line=line,
        fact=fact,
        figures=_known_meaning(fact) if fact else (),
        programme=BY_KEY.get(fact.programme) if fact else None,
        limits=limits(fact) if fact else (),
        equal=_equal_table(fact) if fact else (),
        processes={title: of_process(key) for key, title in PROCESSES.items()},
        day_s=DAY_S,
        scale=SCALE,
        scale_source=SOURCE,
    )


@screen.route("/chamber/set-points/choose/<programme>", methods=["GET", "POST"])
def choose(programme: str):
    """The form, begun with what the programme prints; without one, with what is set."""
    if programme != OWN and programme not in BY_KEY:
        abort(404)
    back = url_for("chamber.page")
    printed = BY_KEY.get(programme)
    return write(
        CHOOSE,
        Subject(),
        about=CHAMBER,
        back=back,
        back_to=url_for("chamber.set_points_page"),
        start=_printed(printed) if printed else _in_force(),
        template="chamber/choose.html",
        programme=printed,
    )


def _printed(programme: Programme) -> dict[str, str]:
    """The middle of each printed range; below an upper limit that stands alone by what a hygrometer may be wrong."""
    how, texts = reader(), dict[str, str]()
    if programme.temperature_c:
        texts["temperature_c"] = suggested(sum(programme.temperature_c) / 2, TEMPERATURE, how)
    if programme.humidity:
        low, high = programme.humidity
        texts["humidity"] = suggested((low + high) / 2 if low else high - HYGROMETER, RELATIVE_HUMIDITY, how)
    if programme.air_speed_m_s:
        texts["air_speed_m_s"] = suggested(sum(programme.air_speed_m_s) / 2, AIR_SPEED, how)
    return texts


def _in_force() -> dict[str, str]:
    line = set_points(book())
    return CHOOSE.texts_of(line.fact, reader()) if line else {}


def limits(fact: SetPointsChosen) -> tuple[Reason, ...]:
    """The four limits of the EU rule for aged beef; the set-point stands for the surface, which settles near it."""
    if fact.process != "beef-ageing":
        return ()
    return beef_ageing(fact.temperature_c, fact.humidity, fact.air_speed_m_s, None)


def _equal_table(fact: SetPointsChosen) -> tuple[tuple[float, float], ...]:
    others = (fact.temperature_c + step for step in COMPARED_C)
    within = [each for each in others if -20 <= each <= 60]
    return equal_line(fact.temperature_c, fact.humidity, fact.surface_activity, within)
