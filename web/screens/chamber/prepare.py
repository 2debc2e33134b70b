"""Begin a preparation run: what it is sanitised with, how it is diluted, and what must not meet in it."""

from __future__ import annotations

import attrs
from flask import url_for

from core.chamber.sanitising import descaler, dilute
from core.chamber.sanitising_agents import AGENTS, CLEANERS, PPM
from core.daybook.facts.chamber import CHAMBER
from core.daybook.facts.fields import boxes
from core.daybook.facts.preparation import PreparationBegun
from core.daybook.preparation import clashes, latest_run
from core.daybook.preparation_list import kept, rewritten, tasks_for
from core.quantities import PARTS_PER_MILLION, Amount, Reader
from core.sentence import Message, Rounded, Sentence, each_said, said
from core.working import Figure
from core.worksheet import Choice
from web.entry_forms import EntryForm, Subject, Values, declare, typed_numbers, write
from web.forms import Ticks
from web.journal import book
from web.screens.chamber.blueprint import screen
from web.visitor import reader

DESCALED: dict[str, Message] = {"no": "none", "yes": "remove it first, with vinegar and water half and half"}
ALSO_USED: dict[str, Message] = {key: words for key, words in CLEANERS.items() if key not in ("label", "vinegar")}
ASKED = ("agent", "stock", "target", "volume_m3", "stock_kg_m3", "after", "stated", "descaled")
BY_THE_LABEL = ("label", "ph", "contact_s")
"""Boxes that always stand there, and those that are folded until one is filled."""
LABEL_AND_LAW: Message = "The product’s label and local rules come before what is said here."


def _begun(values: Values, subject: Subject) -> PreparationBegun:
    """The list as it stands today goes into the run; a correction says anew what its old words no longer say."""
    start = PreparationBegun(**values | {"descaled": values["descaled"] == "yes"})
    if isinstance(subject.was, PreparationBegun):
        return attrs.evolve(start, tasks=rewritten(subject.was, start))
    return attrs.evolve(start, tasks=tasks_for(start, kept(book())))


def _texts(fact: PreparationBegun, how: Reader) -> dict[str, str]:
    chosen = {key: getattr(fact, key) for key in ("agent", "after", "stated")}
    texts = typed_numbers(fact, how) | chosen
    return texts | {"descaled": "yes" if fact.descaled else "no", "others": " ".join(fact.others)}


def dilution(fact: PreparationBegun) -> tuple[Figure, ...]:
    """The sanitiser of the run. Raises OutOfRange for one that may not be made."""
    label_ppm = None if fact.label is None else fact.label / PPM
    return dilute(
        fact.agent,
        fact.stock,
        fact.target / PPM,
        fact.volume_m3,
        fact.after,
        label_ppm,
        fact.ph,
        fact.stated,
        fact.stock_kg_m3 / 1000,
    )


def lime(fact: PreparationBegun) -> tuple[Figure, ...]:
    """The vinegar against lime, as much of it as there is to be of the sanitiser."""
    if not fact.descaled:
        return ()
    return tuple(attrs.evolve(each, key=f"descaler_{each.key}") for each in descaler(fact.volume_m3))


def warnings(fact: PreparationBegun) -> tuple[Sentence, ...]:
    """A calm sentence for each pair of agents that is used in the same run."""
    return each_said(clash.say() for clash in clashes(fact))


def _figures(fact: PreparationBegun, subject: Subject | None = None) -> tuple[Figure, ...]:
    first, *others = dilution(fact)
    told = warnings(fact)
    cautions = (*told, *first.cautions, *each_said((LABEL_AND_LAW,)))
    return (attrs.evolve(first, cautions=tuple(dict.fromkeys(cautions))), *others, *lime(fact))


def _said(fact: PreparationBegun) -> Sentence:
    agent = AGENTS[fact.agent].name if fact.agent in AGENTS else "another sanitiser"
    told = {"agent": said(agent), "strength": Rounded(Amount(fact.target, PARTS_PER_MILLION))}
    return Sentence("Preparation run begun: {agent}, {strength}", told)


BEGIN = declare(
    EntryForm(
        PreparationBegun,
        "Prepare the chamber",
        (
            *boxes(PreparationBegun),
            Choice(
                "descaled",
                "Limescale",
                DESCALED,
                default="no",
                help="Vinegar does not sanitise: sanitise afterwards what it has cleaned.",
            ),
            Ticks(
                "others",
                "Also used in this run",
                ALSO_USED,
                help="Cleaners within reach or still wet on a surface. You will see which must not meet.",
            ),
        ),
        _said,
        figures=_figures,
        fact=_begun,
        texts=_texts,
        save="Begin the run",
        correct="Correct how this run was started",
    )
)


@screen.route("/chamber/preparation", methods=["GET", "POST"])
def prepare():
    """A new run starts from what the last one was made with."""
    last = latest_run(book())
    return write(
        BEGIN,
        Subject(),
        about=CHAMBER,
        back=lambda written: url_for("chamber.run", run_id=written),
        back_to=url_for("chamber.page"),
        start=_texts(last.start, reader()) if last else None,
        template="chamber/prepare.html",
        unfinished=last if last and last.open else None,
        own_list=bool(kept(book())),
        asked=ASKED,
        by_the_label=BY_THE_LABEL,
    )
