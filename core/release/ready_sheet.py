"""The single sum of the last day: is this one ready? It is judged by what judges a batch's own entries."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from attrs import frozen

from core.dry.shrink import shrink
from core.ferment.outcome import Deviation, Outcome
from core.meat import STYLE_NAMES, Style
from core.mix.ingoing import Ingoing
from core.mix.ions import Alkali, Substance, factor
from core.mix.rule import METHODS
from core.mix.rules import BEFORE_2025, Curing
from core.refusals import Missing, OutOfRange
from core.release.evidence import METHOD_OF, METHODS_OF, Evidence
from core.release.readiness import judge
from core.release.ready_inputs import BELONGS, INPUTS, NO_SIGN, NOT_KNOWN, NOT_LOOKED
from core.release.salted import Salted
from core.release.trichinella import UNKNOWN, Meat
from core.sentence import Message, Said, Sentence, listed, said
from core.units import DAY_S
from core.verdict import Verdict
from core.working import Figure
from core.worksheet import Input, Value, Worksheet

_PPM = 1e-6
_OUTCOMES: dict[str, Outcome | None] = {
    NOT_KNOWN: None,
    "passed": Outcome("passed"),
    "over": Outcome("over"),
    "cleared": Outcome("over", deviation=Deviation(kept=True, result="clean")),
    "condemned": Outcome("over", deviation=Deviation(kept=False, result="not-tested")),
}
_MEATS: dict[str, Meat] = {
    NOT_KNOWN: UNKNOWN,
    "none": Meat("none"),
    "tested": Meat("pork", "tested", has_paper=True),
    "shown": Meat("pork", "shown"),
    "pork": Meat("pork"),
    "game": Meat("game"),
}
_LABELS: dict[str, Said] = {each.key: each.label for each in INPUTS}
_DEFAULTS = {each.key: each.default for each in INPUTS}


@frozen
class _Weights:
    """Both weights or neither: one alone says nothing."""

    start_kg: float | None
    now_kg: float | None
    target_loss: float | None

    def figures(self) -> tuple[Figure, ...]:
        if self.start_kg is None and self.now_kg is None:
            return ()
        if self.start_kg is None or self.now_kg is None:
            missing = "start_kg" if self.start_kg is None else "now_kg"
            raise Missing(missing, "Enter both weights, the one it was hung with and the one now, or neither.")
        return shrink(self.start_kg, self.now_kg, self.target_loss)

    @property
    def loss(self) -> float | None:
        return next((figure.value for figure in self.figures() if figure.key == "loss"), None)


def _figures(
    start_kg: float | None, now_kg: float | None, target_loss: float | None, **more: Any
) -> tuple[Figure, ...]:
    evidence_of(start_kg=start_kg, now_kg=now_kg, target_loss=target_loss, **more)
    return _Weights(start_kg, now_kg, target_loss).figures()


def _verdict(**typed: Any) -> Verdict:
    return judge(evidence_of(**typed))


def evidence_of(**typed: Any) -> Evidence:
    """What was typed, as evidence. Raises Missing or OutOfRange on what does not belong to the kind or to the rest."""
    style: Style = typed["style"]
    _require_belonging(style, typed)
    how = _how(style, typed)
    return Evidence(
        style=style,
        loss=_Weights(typed["start_kg"], typed["now_kg"], typed["target_loss"]).loss,
        target_loss=typed["target_loss"],
        lowest_ph=typed["lowest_ph"],
        last_ph=typed["last_ph"],
        water_activity=typed["water_activity"],
        activity_from_mate=typed["measured_on"] == "mate",
        activity_loss=typed["activity_loss"],
        days_hung=_over(typed["hung"], DAY_S),
        least_days=_over(typed["least"], DAY_S),
        ingoing=_ingoing(typed, how),
        how=how,
        salt=typed["salt"],
        fermentation=_OUTCOMES[typed["fermentation"]],
        signs={NO_SIGN: (), NOT_LOOKED: None}.get(typed["signs"], (typed["signs"],)),
        salted=_salted(typed) if style == "whole-muscle" else None,
        meat=_MEATS[typed["meat"]],
        contradictions=() if typed["contradicted"] == "none" else (typed["contradicted"],),
    )


def _over(value: float | None, unit: float) -> float | None:
    return None if value is None else value / unit


def _is_given(key: str, typed: Mapping[str, Value]) -> bool:
    return typed[key] not in (None, _DEFAULTS[key])


def _require_belonging(style: Style, typed: Mapping[str, Value]) -> None:
    """Guard: what would weigh nothing is refused, so that nobody thinks it was weighed."""
    kind = Sentence(STYLE_NAMES[style])
    for key, styles in BELONGS.items():
        if style not in styles and _is_given(key, typed):
            told = {"label": said(_LABELS[key]), "kind": kind}
            raise OutOfRange(key, Sentence("{label} does not belong to a {kind}: leave it as it was.", told))
    only_where = {
        "width_m": typed["shape"] == "block",
        "length_m": typed["shape"] == "block",
        "rested": typed["salted"] == "excess",
        "mass_kg": typed["way"] == "ham-3",
        "activity_loss": typed["water_activity"] is not None,
        "measured_on": typed["water_activity"] is not None,
    }
    for key, belongs in only_where.items():
        if not belongs and _is_given(key, typed):
            raise OutOfRange(key, Sentence(_WITH[key], {"label": said(_LABELS[key])}))


_WITH: dict[str, Message] = {
    "width_m": "{label} is only for a thick and wide piece: leave it as it was.",
    "length_m": "{label} is only for a thick and wide piece: leave it as it was.",
    "rested": "{label} is only for meat that lay in plenty of salt: leave it as it was.",
    "mass_kg": "{label} is only for US ham method 3: leave it as it was.",
    "activity_loss": "{label} is only for a measured water activity: leave it as it was.",
    "measured_on": "{label} is only for a measured water activity: leave it as it was.",
}


def _how(style: Style, typed: Mapping[str, Any]) -> Curing | None:
    """The rules that were chosen; None where they, or the way of curing, were not."""
    rules, _, product = typed["rules"].partition(":")
    method: str = typed["method"]
    if method != NOT_KNOWN and method not in METHODS_OF[style]:
        ways = listed([Sentence(METHODS[each]) for each in METHODS_OF[style]], "or")
        told = {"kind": Sentence(STYLE_NAMES[style]), "ways": ways}
        raise OutOfRange("method", Sentence("A {kind} is cured like this: {ways}.", told))
    if style != "whole-muscle":
        method = METHOD_OF[style]
    if rules == NOT_KNOWN or method == NOT_KNOWN:
        return None
    on = BEFORE_2025 if rules.endswith("-old") else None
    try:
        return Curing(rules.removesuffix("-old"), product, method, on)
    except OutOfRange as refusal:
        raise OutOfRange("rules", refusal.said) from None


def _ingoing(typed: Mapping[str, Any], how: Curing | None) -> Ingoing:
    alkali: Alkali = typed["alkali"]
    besides: float | None = typed["besides"]
    if besides is not None and not (how and any(rule.on == "mixture" for rule in how.held)):
        raise OutOfRange(
            "besides", "All else in the mix is counted only by rules on the whole mixture: leave it empty."
        )

    def weighed(substance: Substance) -> float | None:
        sodium: float | None = typed[substance]
        return None if sodium is None else sodium / _PPM / factor(substance, alkali, "sodium")

    return Ingoing(
        _over(typed["nitrite"], _PPM),
        _over(typed["nitrate"], _PPM),
        weighed("nitrite"),
        weighed("nitrate"),
        1.0 + (besides or 0.0),
        _over(typed["accelerator"], _PPM),
    )


def _salted(typed: Mapping[str, Any]) -> Salted:
    coldest_c: float | None = typed["coldest_c"]
    warmest_c: float | None = typed["warmest_c"]
    if coldest_c is not None and warmest_c is not None and coldest_c > warmest_c:
        raise OutOfRange("coldest_c", "The coldest is above the warmest: enter the two the other way round.")
    return Salted(
        method=None if typed["salted"] == NOT_KNOWN else typed["salted"],
        shape=None if typed["shape"] == NOT_KNOWN else typed["shape"],
        thickness_m=typed["thickness_m"],
        width_m=typed["width_m"],
        length_m=typed["length_m"],
        lasts_s=typed["in_salt"],
        rested_s=typed["rested"],
        coldest_c=typed["coldest_c"],
        warmest_c=typed["warmest_c"],
        way=typed["way"],
        mass_kg=typed["mass_kg"],
    )


def _drawn(texts: Mapping[str, str]) -> tuple[Input, ...]:
    """What such meat is asked; of sausage there is one way of curing. Before the kind is chosen, what all are asked."""
    style = texts.get("style", "")
    only_for = {**BELONGS, "method": [style for style, ways in METHODS_OF.items() if len(ways) > 1]}
    return tuple(each for each in INPUTS if each.key not in only_for or style in only_for[each.key])


READY = Worksheet(
    name="ready",
    title="Is this one ready?",
    stage="release",
    question="Is this piece ready, must it wait, or must it be thrown away?",
    inputs=INPUTS,
    compute=_figures,
    judge=_verdict,
    shape=_drawn,
    shaped_by=("style",),
    example={
        "style": "fermented",
        "start_kg": "1250 g",
        "now_kg": "800 g",
        "hung": "35 d",
        "water_activity": "0.89",
        "lowest_ph": "4.9",
        "last_ph": "5.1",
        "fermentation": "passed",
        "rules": "us:meat",
        "nitrite": "156 ppm",
        "nitrate": "0",
        "meat": "tested",
        "signs": "none",
    },
)
