"""How fast a piece may dry, and how slowly: the house's own bounds, or common practice."""

from __future__ import annotations

from attrs import evolve

from core.daybook.drying_bounds import bounds_of
from core.daybook.facts.drying import DryingBounded
from core.daybook.facts.fields import numbers
from core.dry.haste import STAGES, USUAL_BOUNDS, Span
from core.quantities import LOSS_RATE, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Rounded, Sentence, listed
from core.working import Figure
from web.entry_forms import EntryForm, Subject, declare
from web.screens.chamber.blueprint import of_chamber, screen

USUAL: Message = "Left empty: {usual}, common practice; no published source."
OWN: dict[str, Message] = {
    "early": "first third {least} to {most}",
    "middle": "second third {least} to {most}",
    "late": "last third {least} to {most}",
}
LEAST_ABOVE_MOST: Message = "It must be more than {least}, below which it is slow at this stage."


def _guard(fact: DryingBounded, _: Subject) -> tuple[Figure, ...]:
    bounds = bounds_of(fact)
    for stage in STAGES:
        least, most = bounds.of(stage)
        if least >= most:
            raise OutOfRange(f"{stage}_most", Sentence(LEAST_ABOVE_MOST, {"least": _a_day(least)}))
    return ()


def _say(fact: DryingBounded) -> Sentence:
    bounds = bounds_of(fact)
    own = [_span(stage, bounds.of(stage)) for stage in STAGES if bounds.of(stage) != USUAL_BOUNDS.of(stage)]
    if not own:
        return Sentence("Loss of a day bounded by common practice")
    return Sentence("Loss of a day bounded by the house: {bounds}", {"bounds": listed(own)})


def _span(stage: str, span: Span) -> Sentence:
    return Sentence(OWN[stage], {"least": _a_day(span[0]), "most": _a_day(span[1])})


def _a_day(per_s: float) -> Rounded:
    return Rounded(Amount(per_s, LOSS_RATE))


def _usual(key: str) -> float:
    stage, side = key.split("_")
    return USUAL_BOUNDS.of(next(each for each in STAGES if each == stage))[side == "most"]


BOUNDS = declare(
    EntryForm(
        DryingBounded,
        "How fast it may dry",
        tuple(evolve(box, help=Sentence(USUAL, {"usual": _a_day(_usual(box.key))})) for box in numbers(DryingBounded)),
        _say,
        figures=_guard,
        save="Hold to these bounds",
        hint="Nobody has published bounds on the loss of a day. Too fast, and the rim dries and shuts the rest in; too "
        "slow, and it spoils before it dries.",
        correct="Correct these bounds",
    )
)


@screen.route("/chamber/drying-bounds", methods=["GET", "POST"])
def drying_bounds():
    return of_chamber(BOUNDS)
