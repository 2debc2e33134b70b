"""Laws of the verdict, over every style: it never improves by knowing less, by a worse value, or by a contradiction.

*Evidence away* is a measurement that a hurdle of the piece asks for, gone from evidence that does not contradict
itself. A sign of spoilage, a decision to throw it away, degree-hours of a whole muscle, ascorbate, the salt about a
buried ham: nothing asks for those, they are known only where they speak against it, and taking them back is a
correction. So is taking back one of two readings that contradict each other.
"""

from collections.abc import Callable

from attrs import evolve
from hypothesis import given, settings
from hypothesis import strategies as st

from core.ferment.outcome import Deviation, Outcome
from core.meat import STYLES
from core.mix.ingoing import Ingoing
from core.mix.licence import Licence
from core.mix.rules import Curing
from core.release.contradictions import SERIES
from core.release.readiness import SIGNS, Evidence, judge
from core.release.salted import Salted
from core.release.trichinella import UNKNOWN, Meat
from core.units import DAY_S

RANK = {"discard": 0, "hold": 1, "ready": 2}
EXAMPLES, ENOUGH = 40, 6
"""For each style: how many a law tries, and how many of them, at the least, it must have spoken of."""

Change = Callable[[Evidence, float], Evidence]
"""By a draw from 0 to 1."""


def rank(known: Evidence) -> int:
    return RANK[judge(known).word]


def contradicts_itself(known: Evidence) -> bool:
    return any(each.key.startswith("contradiction") for each in judge(known).reasons)


def salted(known: Evidence, **changes: object) -> Evidence:
    return evolve(known, salted=evolve(known.salted or Salted(), **changes))


def cure(known: Evidence, **changes: object) -> Evidence:
    return evolve(known, ingoing=evolve(known.ingoing, **changes))


# What is ready


def some_or_none(most_ppm: float) -> st.SearchStrategy[float]:
    return st.just(0.0) | st.floats(1, most_ppm)


_common = {
    "target_loss": st.floats(0.01, 0.35),
    "loss": st.floats(0.35, 0.45),
    "days_hung": st.floats(20.0, 90.0),
    "least_days": st.none() | st.floats(0, 20),
    "signs": st.just(()),
    "activity_from_mate": st.booleans(),
    "meat": st.sampled_from([Meat("none"), Meat("pork", "tested", "P-7"), Meat("pork", "shown")]),
}
salts = st.builds(
    Salted,
    method=st.just("weighed"),
    shape=st.sampled_from(["slab", "cylinder", "block"]),
    thickness_m=st.floats(0.03, 0.06),
    width_m=st.floats(0.03, 0.06),
    lasts_s=st.floats(30 * DAY_S, 90 * DAY_S),
    coldest_c=st.floats(2.2, 3.0),
    warmest_c=st.floats(3.0, 4.4),
) | st.builds(
    Salted,
    method=st.just("excess"),
    shape=st.sampled_from(["slab", "cylinder"]),
    thickness_m=st.floats(0.03, 0.06),
    lasts_s=st.floats(60 * DAY_S, 90 * DAY_S),
    rested_s=st.floats(30 * DAY_S, 40 * DAY_S),
    coldest_c=st.floats(2.2, 3.0),
    warmest_c=st.floats(3.0, 4.4),
)
READY: dict[str, st.SearchStrategy[Evidence]] = {
    "fermented": st.builds(
        Evidence,
        style=st.just("fermented"),
        lowest_ph=st.floats(4.5, 5.0),
        last_ph=st.floats(5.0, 5.9),
        water_activity=st.floats(0.80, 0.905),
        ingoing=st.builds(Ingoing, st.floats(50, 156), some_or_none(1700)),
        how=st.just(Curing()),
        fermentation=st.just(Outcome("passed")),
        **_common,
    ),
    "slow": st.builds(
        Evidence,
        style=st.just("slow"),
        lowest_ph=st.none() | st.floats(5.3, 5.5),
        last_ph=st.none() | st.floats(5.5, 6.0),
        water_activity=st.floats(0.80, 0.899),
        ingoing=st.builds(Ingoing, st.floats(50, 156), st.floats(50, 1700)),
        how=st.just(Curing()),
        salt=st.floats(0.025, 0.04),
        fermentation=st.just(Outcome("passed")),
        **_common,
    ),
    "whole-muscle": st.builds(
        Evidence,
        style=st.just("whole-muscle"),
        last_ph=st.none() | st.floats(5.4, 6.2),
        water_activity=st.floats(0.80, 0.899),
        ingoing=st.builds(Ingoing, some_or_none(600), some_or_none(600)),
        how=st.sampled_from(["dry-rub", "dry-salting"]).map(lambda method: Curing(method=method)),
        salt=st.floats(0.025, 0.04),
        salted=salts,
        **_common,
    ),
}
LICENCE = Licence("A trial", "letter 12", "Ana", "Food act, section 9", "nitrite", 190.0)


def excess_under_dry_rub(known: Evidence) -> Evidence:
    """A bag goes with a rub, plenty of salt with dry salting: so no draw is held for the wrong pair."""
    if known.salted is None:
        return known
    return evolve(known, how=Curing(method="dry-rub" if known.salted.method == "weighed" else "dry-salting"))


def ready(style: str) -> st.SearchStrategy[Evidence]:
    return READY[style].map(excess_under_dry_rub)


def asked_for(known: Evidence) -> dict[str, Change]:
    """What a hurdle of the piece asks for, each with the taking away of it."""
    fields = ["loss", "target_loss", "water_activity", "days_hung", "signs", "how"]
    fields += {"fermented": ["fermentation"], "slow": ["fermentation", "salt"], "whole-muscle": ["salted"]}[known.style]
    gone: dict[str, Change] = {"meat": lambda each, _: evolve(each, meat=UNKNOWN)}
    gone |= {key: lambda each, _, key=key: evolve(each, **{key: None}) for key in fields}
    for key in ("nitrite_ppm", "nitrate_ppm"):
        gone[key] = lambda each, _, key=key: cure(each, **{key: None})
    if known.style == "fermented":
        gone["ph"] = lambda each, _: evolve(each, lowest_ph=None, last_ph=None)
    if known.style == "whole-muscle" and known.salted is not None:
        parts = ["method", "shape", "thickness_m", "lasts_s", "coldest_c", "warmest_c"]
        for key in parts + (["rested_s"] if known.salted.method == "excess" else []):
            gone[key] = lambda each, _, key=key: salted(each, **{key: None})
        if known.salted.method == "weighed":
            gone["salt"] = lambda each, _: evolve(each, salt=None)
    return gone


def worsened(known: Evidence) -> dict[str, Change]:
    """A value of each kind made worse, a little or much."""

    def less(key: str, by: float) -> Change:
        return lambda each, draw: evolve(each, **{key: _plus(getattr(each, key), -by * draw)})

    worse: dict[str, Change] = {
        "loss": less("loss", 0.35),
        "days_hung": less("days_hung", 15.0),
        "target_loss": lambda each, draw: evolve(each, target_loss=_plus(each.target_loss, 0.4 * draw)),
        "least_days": lambda each, draw: evolve(each, least_days=(each.least_days or 0.0) + 90 * draw),
        "water_activity": less("water_activity", -0.06),
        "last_ph": less("last_ph", -1.0),
        "sign": lambda each, _: evolve(each, signs=(*(each.signs or ()), "slime")),
        "nitrite": lambda each, draw: cure(each, nitrite_ppm=_plus(each.ingoing.nitrite_ppm, 6000 * draw + 630)),
        "nitrate": lambda each, draw: cure(each, nitrate_ppm=_plus(each.ingoing.nitrate_ppm, 9000 * draw)),
        "accelerator": lambda each, draw: cure(each, accelerator_ppm=500 + 1000 * draw),
        "over": lambda each, _: evolve(each, fermentation=Outcome("over")),
        "game": lambda each, _: evolve(each, meat=Meat("game", "shown")),
        "condemned": lambda each, _: evolve(each, fermentation=Outcome("over", deviation=Deviation(False, "found"))),
    }
    if known.style != "fermented":
        worse["salt"] = less("salt", 0.04)
    if known.style == "whole-muscle":
        worse["thickness"] = lambda each, draw: salted(each, **_all_thicker(each.salted, 1 + 3 * draw))
        worse["shorter"] = lambda each, draw: salted(each, **_shorter(each.salted, 1 - draw))
        worse["colder"] = lambda each, draw: salted(
            each, coldest_c=_plus((each.salted or Salted()).coldest_c, -9 * draw)
        )
        worse["warmer"] = lambda each, draw: salted(
            each, warmest_c=_plus((each.salted or Salted()).warmest_c, 9 * draw)
        )
    return worse


def _plus(value: float | None, by: float) -> float | None:
    return None if value is None else value + by


def _all_thicker(known: Salted | None, times: float) -> dict[str, float | None]:
    sides = {key: getattr(known, key, None) for key in ("thickness_m", "width_m")}
    return {key: None if side is None else min(side * times, 1.0) for key, side in sides.items()}


def _shorter(known: Salted | None, times: float) -> dict[str, float | None]:
    """In salt and at rest alike."""
    spans = {key: getattr(known, key, None) for key in ("lasts_s", "rested_s")}
    return {key: None if span is None else span * times for key, span in spans.items()}


CONTRADICTIONS: dict[str, Change] = {
    "lowest above last": lambda each, draw: evolve(each, lowest_ph=5.5 + draw, last_ph=5.4),
    "a high pH": lambda each, draw: evolve(each, last_ph=7.01 + 0.9 * draw),
    "a low pH": lambda each, draw: evolve(each, lowest_ph=3.99 - draw, last_ph=5.5),
    "lost in a day": lambda each, draw: evolve(each, loss=0.36 + 0.1 * draw, days_hung=1 + draw),
    "too dry for its loss": lambda each, draw: evolve(each, water_activity=0.60 - 0.1 * draw),
    "too wet for its loss": lambda each, draw: evolve(each, water_activity=0.96 + 0.04 * draw, loss=0.4),
    "no water activity": lambda each, draw: evolve(each, water_activity=0.49 * draw + 0.001),
    "a drier sample": lambda each, draw: evolve(each, activity_loss=0.5 + 0.2 * draw),
    "no dose of nitrite": lambda each, draw: cure(each, nitrite_ppm=0.99 * draw + 1e-6),
    "no dose of nitrate": lambda each, draw: cure(each, nitrate_ppm=0.99 * draw + 1e-6),
    **{key: lambda each, _, key=key: evolve(each, contradictions=(*each.contradictions, key)) for key in SERIES},
}


@st.composite
def flawed(draw: st.DrawFn, style: str) -> Evidence:
    """Ready but for one to three things that are missing or bad: what a change could still make better."""
    known = draw(ready(style))
    for _ in range(draw(st.integers(1, 3))):
        changes = {**asked_for(known), **worsened(known)}
        known = changes[draw(st.sampled_from(sorted(changes)))](known, draw(st.floats(0, 1)))
    return known


draws = st.floats(0, 1)
picks = st.integers(0, 10_000)


def chosen(changes: dict[str, Change], pick: int) -> Change:
    return changes[sorted(changes)[pick % len(changes)]]


def law(check: Callable[[Evidence, int, float], bool], known: Callable[[str], st.SearchStrategy[Evidence]]) -> None:
    """Holds `check` for many examples of each style; those it says it spoke of are counted."""
    for style in STYLES:
        assert _spoken_of(check, known(style)) >= ENOUGH, style


def _spoken_of(check: Callable[[Evidence, int, float], bool], known: st.SearchStrategy[Evidence]) -> int:
    spoken_of: list[bool] = []

    @settings(max_examples=EXAMPLES, deadline=None)
    @given(known, picks, draws)
    def holds(evidence: Evidence, pick: int, draw: float) -> None:
        spoken_of.append(check(evidence, pick, draw))

    holds()
    return sum(spoken_of)


def test_ready_implies_every_hurdle_believable_readings_salt_and_time():
    def check(known: Evidence, _: int, __: float) -> bool:
        verdict = judge(known)
        assert verdict.word == "ready", [each.key for each in verdict.unmet]
        assert all(reason.met is True for reason in verdict.reasons)
        keys = {reason.key for reason in verdict.reasons}
        assert {"signs", "loss", "days", "shelf-stable", "listeria", "botulism", "nitrite", "trichinella"} <= keys
        own = {
            "fermented": {"acid", "degree-hours"},
            "slow": {"warm-days", "slow-cure", "slow-salt", "slow-dry"},
            "whole-muscle": {"salted-through", "salted-cold", "salt", "slow-dry"},
        }
        assert own[known.style] <= keys
        return True

    law(check, ready)


def test_it_is_ready_exactly_where_every_reason_is_met():
    def check(known: Evidence, _: int, __: float) -> bool:
        verdict = judge(known)
        assert (verdict.word == "ready") == all(reason.met is True for reason in verdict.reasons)
        return verdict.word != "ready"

    law(check, flawed)


def test_of_what_is_ready_anything_asked_for_and_gone_holds_it():
    def check(known: Evidence, pick: int, draw: float) -> bool:
        assert judge(chosen(asked_for(known), pick)(known, draw)).word == "hold"
        return True

    law(check, ready)


def test_taking_evidence_away_never_improves_the_verdict():
    def check(known: Evidence, pick: int, draw: float) -> bool:
        if contradicts_itself(known) or judge(known).word == "discard":
            return False
        assert rank(chosen(asked_for(known), pick)(known, draw)) <= rank(known)
        return judge(known).word == "hold"

    law(check, flawed)


def test_a_worse_value_never_improves_the_verdict():
    def check(known: Evidence, pick: int, draw: float) -> bool:
        if contradicts_itself(known):
            return False
        after = rank(chosen(worsened(known), pick)(known, draw))
        if any(each.fatal for each in judge(known).unmet):
            return False  # what is thrown away stays so only while its sign or its decision stands
        assert after <= rank(known)
        return judge(known).word == "hold"

    law(check, flawed)


def test_a_contradicting_reading_never_improves_the_verdict_and_is_never_ready():
    def check(known: Evidence, pick: int, draw: float) -> bool:
        after = chosen(CONTRADICTIONS, pick)(known, draw)
        assert contradicts_itself(after)
        assert rank(after) <= min(rank(known), RANK["hold"])
        return True

    law(check, lambda style: ready(style) | flawed(style))


def test_a_sign_of_spoilage_is_thrown_away_whatever_else_is_known():
    def check(known: Evidence, pick: int, _: float) -> bool:
        sign = sorted(SIGNS)[pick % len(SIGNS)]
        assert judge(evolve(known, signs=(*(known.signs or ()), sign))).word == "discard"
        return True

    law(check, flawed)


def test_an_exception_never_makes_a_verdict_worse_nor_lifts_more_than_its_figure():
    def check(known: Evidence, _: int, draw: float) -> bool:
        most_ppm = 625 if known.style == "whole-muscle" else 190
        known = cure(known, nitrite_ppm=most_ppm * (0.5 + draw))
        under = evolve(known, licence=LICENCE)
        over = any(each.key in ("nitrite", "ceiling") and each.met is False for each in judge(under).reasons)
        assert rank(under) >= rank(known)
        assert over == (known.ingoing.nitrite_ppm > most_ppm * 1.0005)
        return not over

    law(check, ready)


def test_of_what_is_ready_both_published_rules_hold():
    def check(known: Evidence, _: int, draw: float) -> bool:
        known = evolve(known, water_activity=0.86 + 0.1 * draw)
        if judge(known).word != "ready":
            return False
        activity, ph = known.water_activity, known.last_ph if known.style == "fermented" else None
        assert activity < 0.91 or (ph is not None and (ph < 5.0 or (ph < 5.2 and activity < 0.95)))
        assert activity <= 0.92 or (ph is not None and (ph <= 4.4 or (ph <= 5.0 and activity <= 0.94)))
        return True

    law(check, ready)
