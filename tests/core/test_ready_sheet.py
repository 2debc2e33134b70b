"""One path: a piece of a batch is judged as the single sum is, for the same evidence; and the sheet drops nothing."""

from __future__ import annotations

from collections import Counter
from datetime import date
from typing import Any

import pytest

from core.daybook.evidence import evidence_for
from core.daybook.facts.batch import ActivityMeasured, CureWeighed, PieceInspected
from core.daybook.facts.salting import SaltingBegun, SaltingEnded
from core.meat import STYLES
from core.mix.rule import METHODS
from core.quantities import METRIC, NO_BREAK_SPACE
from core.refusals import Refused
from core.release.evidence import METHODS_OF, Evidence
from core.release.readiness import judge
from core.release.ready_inputs import BELONGS, CURE_INPUTS, INPUTS
from core.release.ready_sheet import READY, evidence_of
from core.release.trichinella import trichinella
from core.sentence import said
from core.verdict import Verdict
from core.worksheet import Choice, Number
from tests.core.kitchen import DAY, NOON, Kitchen

EMPTY = {"style": "fermented", "signs": "none"}
MUSCLE = {
    **{"style": "whole-muscle", "start_kg": "1250 g", "now_kg": "800 g", "hung": "60 d", "water_activity": "0.89"},
    **{"rules": "us:meat", "method": "dry-rub", "nitrite": "156 ppm", "nitrate": "0", "salt": "3 %", "signs": "none"},
    **{"salted": "weighed", "shape": "slab", "thickness_m": "50 mm", "in_salt": "21 d", "coldest_c": "3 °C"},
    "warmest_c": "4 °C",
    "meat": "tested",
}
SLOW = {
    **{"style": "slow", "start_kg": "1250 g", "now_kg": "800 g", "hung": "40 d", "water_activity": "0.88"},
    **{"rules": "us:meat", "nitrite": "120 ppm", "nitrate": "0", "salt": "2.7 %", "fermentation": "passed"},
    "meat": "none",
    "signs": "none",
}


def verdict(**texts: str) -> Verdict:
    found = READY.answer(texts).verdict
    assert found is not None
    return found


def refusal(texts: dict[str, str]) -> tuple[str, str]:
    with pytest.raises(Refused) as caught:
        READY.answer(texts)
    only = caught.value.refusals[0]
    return only.field, only.sentence.replace(NO_BREAK_SPACE, " ")


@pytest.mark.parametrize("texts", [dict(READY.example), MUSCLE, SLOW], ids=["fermented", "whole-muscle", "slow"])
def test_with_all_its_evidence_it_is_ready(texts: dict[str, str]):
    assert verdict(**texts).word == "ready"


def test_it_holds_nitrate_to_its_limit_as_a_batch_is_held():
    assert [each.key for each in verdict(**SLOW | {"nitrate": "9900 ppm"}).unmet] == ["nitrate"]


@pytest.mark.parametrize("key", ["nitrite", "nitrate", "rules"])
def test_not_said_is_not_0(key: str):
    texts = {name: text for name, text in SLOW.items() if name != key}
    assert key in [each.key for each in verdict(**texts).missing]


def test_nitrite_without_a_choice_of_rules_is_held():
    texts = MUSCLE | {"nitrite": "600 ppm"}
    assert verdict(**texts).word == "ready"
    assert verdict(**texts | {"rules": "not-known"}).word == "hold"
    assert verdict(**texts | {"method": "not-known"}).word == "hold"


@pytest.mark.parametrize("text", ["0.0009", "0.0156", "0.000156", "0.99", "0.5 ppm"])
@pytest.mark.parametrize("key", ["nitrite", "nitrate", "accelerator"])
def test_a_fraction_typed_for_parts_per_million_is_asked_about(key: str, text: str):
    assert refusal(SLOW | {key: text}) == (key, f"{_label(key)} must be 0, or between 1 ppm and 10 000 ppm.")


def test_a_number_in_powers_of_ten_is_refused():
    assert refusal(SLOW | {"nitrite": "1.56e-4"})[0] == "nitrite"


@pytest.mark.parametrize(
    ("key", "text"), [("salt", "0.027"), ("target_loss", "0.35"), ("water_activity", "89"), ("water_activity", "0.089")]
)
def test_a_slip_of_a_hundred_is_asked_about(key: str, text: str):
    assert refusal(SLOW | {key: text})[0] == key


def _label(key: str) -> str:
    return next(each.label for each in READY.inputs if each.key == key)


SAMPLE: dict[str, str] = {
    **{"lowest_ph": "5.1", "fermentation": "over", "salt": "3 %", "salted": "excess", "shape": "slab"},
    **{"thickness_m": "50 mm", "width_m": "60 mm", "length_m": "90 mm", "in_salt": "9 d", "rested": "2 d"},
    **{"coldest_c": "3 °C", "warmest_c": "4 °C", "way": "ham-3", "mass_kg": "9 kg"},
}


@pytest.mark.parametrize(
    ("style", "key"), [(style, key) for style in STYLES for key, styles in BELONGS.items() if style not in styles]
)
def test_what_does_not_belong_to_the_kind_is_refused_and_not_dropped(style: str, key: str):
    field, said = refusal({"style": style, "signs": "none", key: SAMPLE[key]})
    assert (field, "does not belong to a" in said) == (key, True)


@pytest.mark.parametrize(
    ("key", "texts"),
    [
        ("width_m", MUSCLE | {"width_m": "60 mm"}),
        ("length_m", MUSCLE | {"length_m": "60 mm"}),
        ("rested", MUSCLE | {"rested": "2 d"}),
        ("mass_kg", MUSCLE | {"mass_kg": "9 kg"}),
        ("activity_loss", EMPTY | {"activity_loss": "30 %"}),
        ("measured_on", EMPTY | {"measured_on": "mate"}),
        ("besides", SLOW | {"besides": "10 %"}),
    ],
)
def test_what_belongs_to_nothing_else_typed_is_refused(key: str, texts: dict[str, str]):
    field, said = refusal(texts)
    assert (field, "leave it" in said) == (key, True)


@pytest.mark.parametrize(
    ("style", "method"), [("fermented", "dry-rub"), ("slow", "pump"), ("whole-muscle", "comminuted")]
)
def test_a_way_of_curing_that_is_not_of_the_kind_is_refused(style: str, method: str):
    assert refusal({"style": style, "signs": "none", "method": method})[0] == "method"


def test_a_product_that_is_not_cured_like_this_is_refused_beside_the_rules():
    assert refusal(MUSCLE | {"rules": "eu:rohwurst"})[0] == "rules"


def test_a_ph_that_speaks_against_a_whole_muscle_is_weighed():
    assert verdict(**MUSCLE | {"last_ph": "7.4"}).word == "hold"


@pytest.mark.parametrize("key", ["condemned", "over", "cleared", "not-known"])
def test_the_outcome_of_the_fermentation_is_weighed(key: str):
    expected = {"condemned": "discard", "over": "hold", "cleared": "ready", "not-known": "hold"}
    assert verdict(**SLOW | {"fermentation": key}).word == expected[key]


def test_a_contradiction_in_what_was_noted_holds_it():
    assert verdict(**SLOW | {"contradicted": "weight-rose"}).word == "hold"


def typed(known: Evidence) -> dict[str, str]:
    """The evidence as somebody types it into the single sum."""
    loss, ingoing, how, salted = known.loss, known.ingoing, known.how, known.salted
    signs = known.signs
    texts: dict[str, Any] = {
        "style": known.style,
        "target_loss": _with(known.target_loss, 100, " %"),
        "water_activity": _with(known.water_activity),
        "last_ph": _with(known.last_ph),
        "hung": _with(known.days_hung, 1, " d"),
        "least": _with(known.least_days, 1, " d"),
        "nitrite": _with(ingoing.nitrite_ppm, 1, " ppm"),
        "nitrate": _with(ingoing.nitrate_ppm, 1, " ppm"),
        "accelerator": _with(ingoing.accelerator_ppm, 1, " ppm"),
        "meat": _meat(known),
        "signs": "not-looked" if signs is None else signs[0] if signs else "none",
        "contradicted": known.contradictions[0] if known.contradictions else "none",
    }
    if loss is not None:
        texts |= {"start_kg": "1 kg", "now_kg": f"{1 - loss!r} kg"}
    if known.water_activity is not None:
        texts |= {"measured_on": "mate" if known.activity_from_mate else "piece"}
        texts |= {"activity_loss": _with(known.activity_loss, 100, " %")}
    if how is not None:
        texts |= {"rules": f"{how.rules}:{how.product}", "method": how.method}
        if any(rule.on == "mixture" for rule in how.held):
            texts |= {"besides": _with(ingoing.mixture - 1, 100, " %")}
    if ingoing.nitrite_ppm and ingoing.nitrite_weighed_ppm:
        same = abs(ingoing.nitrite_weighed_ppm / ingoing.nitrite_ppm - 1) < 1e-9
        texts |= {"alkali": "sodium" if same else "potassium"}
    if known.style != "fermented":
        texts |= {"salt": _with(known.salt, 100, " %")}
    if known.style != "whole-muscle":
        texts |= {"lowest_ph": _with(known.lowest_ph), "fermentation": _fermentation(known)}
    if salted is not None:
        texts |= {
            "salted": salted.method or "not-known",
            "shape": salted.shape or "not-known",
            "way": salted.way,
            **{key: _with(getattr(salted, key), 1, " m") for key in ("thickness_m", "width_m", "length_m")},
            "in_salt": _with(salted.lasts_s, 1 / 86400, " d"),
            "rested": _with(salted.rested_s, 1 / 86400, " d"),
            "coldest_c": _with(salted.coldest_c, 1, " °C"),
            "warmest_c": _with(salted.warmest_c, 1, " °C"),
            "mass_kg": _with(salted.mass_kg, 1, " kg"),
        }
    return {key: text for key, text in texts.items() if text is not None}


def _meat(known: Evidence) -> str:
    meat, met = known.meat, trichinella(known.meat).met
    if met and meat.kind != "none":
        return "tested" if meat.proof == "tested" else "shown"
    return meat.kind or "not-known"


def _with(value: float | None, times: float = 1, unit: str = "") -> str | None:
    return None if value is None else f"{value * times:.12f}{unit}"


def _fermentation(known: Evidence) -> str:
    outcome = known.fermentation
    if outcome is None:
        return "not-known"
    deviation = outcome.deviation
    if deviation is not None and deviation.condemns:
        return "condemned"
    untold = known.style == "slow" and outcome.word != "over"  # a clean test does not tell how warm it was
    if outcome.word != "passed" and deviation is not None and not untold:
        return "cleared" if deviation.clears else "over"
    return outcome.word if outcome.word in ("passed", "over") else "not-known"


def met(judged: Verdict) -> Counter[tuple[str, bool | None]]:
    return Counter((each.key, each.met) for each in judged.reasons)


@pytest.mark.parametrize("texts", [dict(READY.example), MUSCLE, SLOW], ids=["fermented", "whole-muscle", "slow"])
def test_a_ready_batch_is_ready_in_the_single_sum(texts: dict[str, str]):
    """The law above seldom draws one: here the entries are those of the sheet's own texts."""
    kitchen, style = Kitchen(), texts["style"]
    salt_kg = 0.372 if style != "fermented" else None
    batch = kitchen.begin(style=style)
    kitchen.note(
        CureWeighed(
            0.025, 0.0625, 0.0, salt_kg, "us", "meat", METHODS_OF[style][0] if style != "whole-muscle" else "dry-rub"
        ),
        batch,
    )
    if style == "whole-muscle":
        kitchen.note(SaltingBegun("weighed", "slab", 0.05, 3.0), batch, 0.1)
        kitchen.note(SaltingEnded("", None, 3.0, 4.0), batch, 22)
    elif style == "fermented":
        for at, ph in ((0.5, 5.6), (1, 5.3), (2, 5.0)):
            kitchen.read(batch, ph, at, 20.0)
    else:
        for at in (0.2, 0.7, 1.2, 1.7, 2.2, 2.7, 3.2):
            kitchen.read(batch, 5.8, at, 12.0)
    kitchen.tested(batch)
    piece = kitchen.hang(batch, at=23)
    kitchen.weigh(piece, 0.6, 60)
    kitchen.note(ActivityMeasured(0.88), piece, 60)
    kitchen.note(PieceInspected(), piece, 60)
    folded = kitchen.batch(batch)
    known = evidence_for(folded, folded.piece(piece), NOON + 61 * DAY)
    judged, by_sheet = judge(known), verdict(**typed(known))
    assert judged.word == "ready", [(each.key, each.text) for each in judged.unmet]
    assert met(by_sheet) == met(judged)


def test_a_coldest_above_the_warmest_is_refused():
    field, sentence = refusal(MUSCLE | {"coldest_c": "5 °C", "warmest_c": "4 °C"})
    assert (field, sentence) == (
        "coldest_c",
        "The coldest is above the warmest: enter the two the other way round.",
    )


TEN_YEARS_S = 3650 * 86400.0
ASKED_FROM_TO = {
    "start_kg": (0.001, 999.0),
    "now_kg": (0.001, 999.0),
    "target_loss": (0.01, 0.75),
    "hung": (0.0, TEN_YEARS_S),
    "least": (0.0, TEN_YEARS_S),
    "water_activity": (0.3, 1.0),
    "activity_loss": (0.0, 0.75),
    "lowest_ph": (3.5, 8.0),
    "last_ph": (3.5, 8.0),
    "nitrite": (1e-6, 0.01),
    "nitrate": (1e-6, 0.01),
    "besides": (0.0, 2.0),
    "accelerator": (1e-6, 0.01),
    "salt": (0.005, 0.2),
    "thickness_m": (0.005, 1.0),
    "width_m": (0.005, 1.0),
    "length_m": (0.005, 1.0),
    "in_salt": (0.0, TEN_YEARS_S),
    "rested": (0.0, TEN_YEARS_S),
    "coldest_c": (-18.0, 45.0),
    "warmest_c": (-18.0, 45.0),
    "mass_kg": (0.05, 60.0),
}
"""What is typed beyond is a slip of the key or of the unit; our own choice, no source."""
NONE_IS_AN_ANSWER = {"nitrite", "nitrate", "accelerator", "salt"}


def test_each_number_is_asked_from_one_end_to_the_other():
    numbers = [each for each in INPUTS if isinstance(each, Number)]
    assert {each.key: (each.low, each.high) for each in numbers} == {
        key: pytest.approx(ends, rel=1e-12) for key, ends in ASKED_FROM_TO.items()
    }
    assert {each.key for each in numbers if each.or_zero} == NONE_IS_AN_ANSWER
    assert all(each.optional for each in numbers)


def test_a_target_is_there_before_one_is_set_and_every_other_field_is_empty():
    assert {each.key: each.default for each in INPUTS if isinstance(each, Number) and each.default is not None} == {
        "target_loss": 0.35
    }


def weighed_from(texts: dict[str, str]) -> Evidence:
    return evidence_of(**READY.read(texts))


def test_what_was_typed_is_weighed_as_it_stands():
    typed = {"hung": "35 d", "least": "21 d", "water_activity": "0.89", "measured_on": "mate", "activity_loss": "30 %"}
    found = weighed_from({**EMPTY, **typed, "start_kg": "2000 g", "now_kg": "1280 g", "lowest_ph": "4.9"})
    assert found.loss == pytest.approx(0.36)
    assert (found.days_hung, found.least_days) == pytest.approx((35.0, 21.0))
    assert (found.water_activity, found.activity_from_mate, found.activity_loss) == (0.89, True, pytest.approx(0.3))
    assert (found.lowest_ph, found.last_ph, found.target_loss, found.signs) == (4.9, None, 0.35, ())


@pytest.mark.parametrize(
    ("alkali", "nitrite_ppm", "nitrate_ppm"),
    [("sodium", 100.0, 200.0), ("potassium", 100 * 85.1038 / 68.9953, 200 * 101.1032 / 84.9947)],
)
def test_the_salt_that_was_weighed_follows_from_its_alkali(alkali: str, nitrite_ppm: float, nitrate_ppm: float):
    """Molar masses by IUPAC's atomic weights, from memory: KNO2 85.10, NaNO2 69.00, KNO3 101.10, NaNO3 84.99 g/mol."""
    made = weighed_from({**EMPTY, "nitrite": "100 ppm", "nitrate": "200 ppm", "alkali": alkali}).ingoing
    assert (made.nitrite_ppm, made.nitrate_ppm) == pytest.approx((100.0, 200.0))
    assert (made.nitrite_weighed_ppm, made.nitrate_weighed_ppm) == pytest.approx((nitrite_ppm, nitrate_ppm), rel=1e-4)
    assert made.mixture == 1.0


@pytest.mark.parametrize(
    ("signs", "found"), [("none", ()), ("not-looked", None), ("slime", ("slime",)), ("mould", ("mould",))]
)
def test_the_look_that_was_typed_is_weighed(signs: str, found: tuple[str, ...] | None):
    assert weighed_from({**EMPTY, "signs": signs}).signs == found


def test_the_time_in_salt_that_was_typed_is_weighed():
    salted = weighed_from({**MUSCLE, "salted": "excess", "rested": "10 d"}).salted
    assert salted is not None
    assert (salted.method, salted.shape, salted.way, salted.mass_kg) == ("excess", "slab", "diffusion", None)
    assert (salted.thickness_m, salted.lasts_s, salted.rested_s) == pytest.approx((0.05, 21 * 86400, 10 * 86400))
    assert (salted.coldest_c, salted.warmest_c) == pytest.approx((3.0, 4.0))
    assert weighed_from(EMPTY).salted is None


ASKED_OF_ALL = {
    *("style", "start_kg", "now_kg", "target_loss", "hung", "least", "water_activity", "measured_on", "activity_loss"),
    *("last_ph", "rules", "nitrite", "nitrate", "alkali", "besides", "accelerator", "contradicted", "meat", "signs"),
}
OF_SAUSAGE = {"lowest_ph", "fermentation"}
OF_A_MUSCLE = {
    *("method", "salt", "salted", "shape", "thickness_m", "width_m", "length_m", "in_salt", "rested"),
    *("coldest_c", "warmest_c", "way", "mass_kg"),
}


@pytest.mark.parametrize(
    ("style", "besides"),
    [("", set()), ("fermented", OF_SAUSAGE), ("slow", {*OF_SAUSAGE, "salt"}), ("whole-muscle", OF_A_MUSCLE)],
)
def test_each_kind_of_meat_is_asked_what_belongs_to_it(style: str, besides: set[str]):
    assert {each.key for each in READY.drawn({"style": style})} == ASKED_OF_ALL | besides


def test_what_does_not_belong_names_the_field_and_the_kind():
    said = refusal({"style": "slow", "signs": "none", "thickness_m": "50 mm"})[1]
    assert said == "Thickness does not belong to a slow sausage: leave it as it was."


def test_another_way_of_curing_names_the_kind_and_its_own_way():
    said = refusal({"style": "slow", "signs": "none", "method": "dry-rub"})[1]
    assert said == f"A slow sausage is cured like this: {METHODS['comminuted']}."


@pytest.mark.parametrize(("rules", "on"), [("eu:rohwurst", None), ("eu-old:rohwurst", date(2025, 10, 8))])
def test_the_rows_that_have_ended_are_those_of_the_day_before_they_did(rules: str, on: date | None):
    """Regulation (EU) 2023/2108 applies from 9 October 2025."""
    how = weighed_from({**EMPTY, "rules": rules}).how
    assert how is not None
    assert (how.rules, how.product, how.on) == ("eu", "rohwurst", on)


def test_all_else_in_the_mix_is_counted_where_the_rules_count_on_it():
    rules = "ca:meat"
    assert weighed_from({**EMPTY, "rules": rules, "besides": "10 %"}).ingoing.mixture == pytest.approx(1.1)
    assert weighed_from({**EMPTY, "rules": rules}).ingoing.mixture == 1.0


def test_a_salting_that_was_as_cold_as_warm_is_let_through():
    salted = weighed_from({**MUSCLE, "coldest_c": "3 °C", "warmest_c": "3 °C"}).salted
    assert salted is not None
    assert salted.coldest_c == salted.warmest_c


def test_only_the_eu_has_rules_that_have_ended():
    """Reg. (EC) 1333/2008 changed on 9 October 2025; the others are held by one text."""
    (rules,) = (each for each in CURE_INPUTS if each.key == "rules")
    assert isinstance(rules, Choice)
    assert {key.partition(":")[0] for key in rules.options} == {"not-known", "us", "eu", "eu-old", "ca"}
    assert "until 9 October 2025" in said(rules.options["eu-old:rohwurst"]).say(METRIC)
