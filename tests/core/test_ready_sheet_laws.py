"""One path, by law: a charge is checked as its parts per million are, a piece of a batch as the single sum."""

from __future__ import annotations

from collections import Counter
from datetime import date

import pytest
from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import ActivityMeasured, CureWeighed, PieceInspected, PieceWeighed, Reading
from core.daybook.facts.ferment import DeviationDecided
from core.daybook.facts.meat import MeatNoted
from core.daybook.facts.salting import SaltingBegun, SaltingEnded
from core.meat import STYLES
from core.mix import ingoing, limit_check
from core.mix.cure import CureMix, Dose
from core.mix.curing_salt import CuringSalt
from core.mix.rule import METHODS
from core.mix.rules import RULE_SETS, Curing, products_for
from core.release.contradictions import LEAST_SALT, SERIES
from core.release.evidence import METHODS_OF, Evidence
from core.release.readiness import judge
from tests.core.kitchen import DAY, NOON, Kitchen
from tests.core.test_ready_sheet import met, typed, verdict

# One check of limits

_kg = st.floats(0.001, 0.2)


@settings(max_examples=150, deadline=None)
@given(st.data())
def test_what_went_in_is_checked_alike_as_a_weighed_charge_and_as_parts_per_million(data: st.DataObject):
    method = data.draw(st.sampled_from(sorted(METHODS)))
    rules = data.draw(st.sampled_from(sorted(RULE_SETS)))
    product = data.draw(st.sampled_from(sorted(products_for(rules, method))))
    alkalis = st.sampled_from(["sodium", "potassium"])
    salt = CuringSalt(data.draw(st.floats(0.004, 0.1)), data.draw(st.floats(0.004, 0.1)), 0.0, data.draw(alkalis))
    second = CuringSalt(0.0625, 0.0, 0.0, "sodium")
    charge = CureMix(
        10.0,
        (Dose(salt, data.draw(_kg)), Dose(second, data.draw(_kg))),
        0.3,
        water_kg=5.0,
        sugar_kg=0.1,
        other_kg=data.draw(_kg),
        accelerator_kg=data.draw(_kg),
        taken=0.1,
    )
    how = Curing(rules, product, method)
    by_charge = limit_check.check_limits(charge, how)
    by_ppm = ingoing.check_limits(ingoing.ingoing_of(charge, method), how)
    assert [each.rule for each in by_ppm] == [each.rule for each in by_charge]
    assert [each.ppm for each in by_ppm] == pytest.approx([each.ppm for each in by_charge], rel=1e-9)


# One verdict

TESTED = MeatNoted("pork", "tested", "P-7")


@st.composite
def kitchens(draw: st.DrawFn) -> tuple[str, Evidence]:
    """A batch of random entries, folded, and the evidence of its one piece."""
    style = draw(st.sampled_from(sorted(STYLES)))
    kitchen = Kitchen()
    target = draw(st.floats(0.02, 0.4))
    batch = kitchen.begin(style=style, target_loss=target, least_s=draw(st.none() | st.floats(0, 60 * 86400)))
    if draw(st.integers(0, 5)):
        kitchen.note(_cure(draw, style), batch)
    if style == "whole-muscle":
        _salt(draw, kitchen, batch)
    else:
        for at in (0.1, 1.0, 2.0):
            kitchen.note(Reading(draw(st.none() | st.floats(4.4, 7.4)), draw(st.none() | st.floats(2, 26))), batch, at)
    if not draw(st.integers(0, 7)):
        result = draw(st.sampled_from(["clean", "found", "not-tested"]))
        kitchen.note(DeviationDecided(draw(st.sampled_from(["keep", "discard"])), "Ana", result), batch, 3)
    if draw(st.integers(0, 5)):
        kitchen.note(draw(st.sampled_from([MeatNoted("none"), MeatNoted("pork"), TESTED])), batch)
    piece = kitchen.hang(batch, at=40)
    if draw(st.integers(0, 5)):
        kitchen.note(PieceWeighed(1 - draw(st.sampled_from([0.05, 0.2, 0.36, 0.42]))), piece, 70)
        if draw(st.integers(0, 3)):
            kitchen.note(ActivityMeasured(draw(st.floats(0.75, 0.97))), piece, 70)
    if draw(st.integers(0, 3)):
        kitchen.note(PieceInspected(("slime",) if not draw(st.integers(0, 3)) else ()), piece, 71)
    folded = kitchen.batch(batch)
    return style, evidence_for(folded, folded.piece(piece), NOON + draw(st.floats(71, 90)) * DAY)


def _cure(draw: st.DrawFn, style: str) -> CureWeighed:
    rules = draw(st.sampled_from(sorted(RULE_SETS)))
    method = draw(st.sampled_from(METHODS_OF[style]))  # type: ignore[index]
    product = draw(st.sampled_from(sorted(products_for(rules, method, date(2026, 11, 2)))))
    alkali = draw(st.sampled_from(["sodium", "potassium"]))
    return CureWeighed(
        draw(st.floats(0.01, 0.06)),
        0.0625,
        draw(st.sampled_from([0.0, 0.04])),
        draw(st.none() | st.floats(0.2, 0.5)),
        rules,
        product,
        method,
        alkali,
        alkali,
        accelerator_kg=draw(st.none() | st.floats(0.002, 0.01)),
        water_kg=10.0 if method in ("immersion", "pick-up", "pump") else None,
        taken=0.1 if method in ("pick-up", "pump") else None,
    )


def _salt(draw: st.DrawFn, kitchen: Kitchen, batch: str) -> None:
    if not draw(st.integers(0, 6)):
        return
    salted, shape = draw(st.sampled_from(["weighed", "excess"])), draw(st.sampled_from(["slab", "cylinder", "block"]))
    sides = (draw(st.floats(0.05, 0.1)), None) if shape == "block" else (None, None)
    way = draw(st.sampled_from(["diffusion", "ham-3"]))
    mass = draw(st.floats(5, 14)) if way == "ham-3" else None
    begun = SaltingBegun(salted, shape, draw(st.floats(0.02, 0.15)), 3.0, *sides, mass_kg=mass, way=way)
    kitchen.note(begun, batch, 0.5)
    rested = draw(st.none() | st.floats(0, 20 * 86400)) if salted == "excess" else None
    cold, warm = draw(st.none() | st.floats(1.5, 3.0)), draw(st.none() | st.floats(3.0, 5.0))
    if draw(st.integers(0, 4)):
        kitchen.note(SaltingEnded("", rested, cold, warm), batch, draw(st.floats(2, 39)))


def test_a_verdict_for_a_piece_of_a_batch_equals_the_single_sums_for_the_same_evidence():
    words: Counter[tuple[str, str]] = Counter()

    @settings(max_examples=120, deadline=None)
    @given(kitchens())
    def holds_for(made: tuple[str, Evidence]) -> None:
        style, known = made
        known = _first_contradiction(known)
        if known.style == "whole-muscle" and known.fermentation is not None:
            return  # the sheet refuses what a whole muscle has not
        if known.salt is not None and 0 < known.salt < LEAST_SALT:
            return  # and so little salt
        judged, by_sheet = judge(known), verdict(**typed(known))
        assert (by_sheet.word, met(by_sheet)) == (judged.word, met(judged))
        words[style, judged.word] += 1

    holds_for()
    assert min(sum(words[style, word] for word in ("ready", "hold", "discard")) for style in STYLES) >= 10
    assert sum(words[style, "discard"] for style in STYLES) >= 10


def _first_contradiction(known: Evidence) -> Evidence:
    """The sheet takes one of them, as it takes one sign: one is enough."""
    return evolve(known, contradictions=tuple(key for key in known.contradictions if key in SERIES)[:1])
