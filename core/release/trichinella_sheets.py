"""The sums of pork and trichinella: how long it must stay frozen, and what each published way of curing asks."""

from __future__ import annotations

from typing import Any

from core.quantities import DAYS, FRACTION, HOURS, LENGTH, PH, TEMPERATURE, Amount
from core.refusals import OutOfRange
from core.release.cured_pork import METHODS, NOT_AVAILABLE, conditions_of
from core.release.cured_readings import BOXES, CHOICES, NUMBERS, Condition, readings_of
from core.release.frozen_pork import LAWS, MEASURED, SOURCES, Frozen, asked_s
from core.release.trichinella import condition_said, demand_said
from core.sentence import Message, Said, Sentence, said
from core.sources import HILL_2017
from core.units import DAY_S
from core.usual import FROZEN_C
from core.working import Figure
from core.worksheet import Choice, Input, Number, Worksheet

TAME: Message = "Only of tame pigs: trichinella of game survives freezing, and no table of salt was made for it."
FREEZER: Message = "A freezer set to -18 °C (0 °F) counts by the row of -15 °C (5 °F), unless the core is logged."


def _frozen(measured: Any, warmest_c: float, thickness_m: float | None, law: Any) -> tuple[Figure, ...]:
    if measured == "product" and thickness_m is None:
        raise OutOfRange("thickness_m", "Enter how thick the piece, the layer or the box is.")
    meat = Frozen(measured, warmest_c, None, thickness_m, law)
    asked = asked_s(meat)
    if asked is None:
        raise OutOfRange(
            "warmest_c", "No table counts meat so warm or so thick. Freeze it colder, or in thinner pieces."
        )
    shown = DAYS if measured == "product" else HOURS
    amounts = {"warm": Amount(warmest_c, TEMPERATURE), "asked": Amount(asked, shown)}
    step = Sentence("By the row that is no colder than {warm}: {asked}", amounts)
    return (Figure("frozen_s", "Time to stay frozen", asked, shown, (step,), SOURCES[law], (TAME, FREEZER)),)


FROZEN_SHEET = Worksheet(
    name="pork-frozen",
    title="Frozen pork",
    stage="release",
    question="How long must pork stay frozen against trichinella?",
    inputs=(
        Choice("measured", "Measured with", {**MEASURED}, default="product"),
        Number("warmest_c", "Warmest it gets", TEMPERATURE, -60.0, 40.0, usual=FROZEN_C),
        Number(
            "thickness_m", "Thickness", LENGTH, 0.005, 1.0, optional=True, help="Of the piece, the layer or the box."
        ),
        Choice("law", "By the tables of", {**LAWS}, default="both"),
    ),
    compute=_frozen,
    example={"warmest_c": "-18 °C", "thickness_m": "120 mm"},
)


def _cured(method: str, **given: Any) -> tuple[Figure, ...]:
    readings = readings_of(given)
    conditions = conditions_of(method, readings)
    for each in conditions:
        if each.is_met(readings) is False and not _is_time(each):
            raise OutOfRange(each.reading, condition_said(each, readings))
    times = [each for each in conditions if _is_time(each)]
    times.sort(key=lambda each: _ORDER.index(each.reading))
    open_ones = [each for each in conditions if each not in times and each.is_met(readings) is None]
    cautions: tuple[Said, ...] = (
        TAME,
        *((METHODS[method].told,) if METHODS[method].told else ()),
        *(Sentence("Only where: {condition}", {"condition": demand_said(each)}) for each in open_ones),
        *NOT_AVAILABLE.values(),
    )
    figures = [_time(method, each) for each in times]
    first = figures[0]
    return (
        Figure(first.key, first.name, first.value, first.quantity, first.working, first.source, cautions),
        *figures[1:],
    )


_ORDER = ("dried_s", "since_s", "held_s", "smoked_s", "hot_s", "rise_s", "contact_s", "rest_s")


def _is_time(condition: Condition) -> bool:
    return condition.reading in _ORDER and condition.least is not None


def _time(method: str, condition: Condition) -> Figure:
    box = BOXES[condition.reading]
    assert isinstance(box, Number)
    assert condition.least is not None
    told = {"method": Sentence(METHODS[method].name), "condition": demand_said(condition)}
    step = Sentence("{method}. {condition}", told)
    return Figure(
        condition.reading,
        Sentence("{what}, at least", {"what": said(box.label)}),
        condition.least,
        box.quantity,
        (step,),
        METHODS[method].source,
    )


def _drawn(texts: Any) -> tuple[Input, ...]:
    method = texts.get("method", "")
    asked = METHODS[method].asks if method in METHODS else ()
    return (_METHOD, *(BOXES[key] for key in asked))


_METHOD = Choice("method", "Way", {key: each.name for key, each in METHODS.items()}, listed=True)
CURED_SHEET = Worksheet(
    name="pork-cured",
    title="Cured pork",
    stage="release",
    question="What does a published way of curing pork ask against trichinella?",
    inputs=(_METHOD, *NUMBERS, *CHOICES),
    compute=_cured,
    shape=_drawn,
    shaped_by=("method",),
    example={"method": "sausage-1", "grind_m": "8 mm", "salted": "3.4 %", "across_m": "80 mm", "dried_c": "12 °C"},
)


def hill_days(ph: float, salt: float) -> int | None:
    """Days until no larva was infective; None outside of what was tried."""
    if not 4.6 - 1e-9 <= ph <= 5.2 + 1e-9 or salt < 0.013 - 1e-9:
        return None
    if ph <= 4.6 + 1e-9 or salt >= 0.028 - 1e-9:
        return 8
    return 9 if salt >= 0.018 - 1e-9 else 11


TRIAL: Message = (
    "One trial: fermented at 24 °C (75 °F), dried at 15.5 °C (60 °F) and 75 % humidity to a water activity of 0.92. It "
    "is no official method and proves nothing for a verdict here."
)


def _hill(ph: float, salt: float) -> tuple[Figure, ...]:
    asked = hill_days(ph, salt)
    if asked is None:
        raise OutOfRange("ph", "The trial went from pH 4.6 to 5.2, with at least 1.3 % of salt.")
    amounts = {"ph": Amount(ph, PH), "salt": Amount(salt, FRACTION), "days": Amount(asked * DAY_S, DAYS)}
    step = Sentence("pH {ph}, salt {salt}: {days}", amounts)
    return (Figure("trial_s", "Days in the trial", asked * DAY_S, DAYS, (step,), HILL_2017, (TRIAL, TAME)),)


TRIAL_SHEET = Worksheet(
    name="pork-trial",
    title="Trichinella in a trial",
    stage="release",
    question="After how many days did a trial find no trichinella in sausage?",
    inputs=(
        Number("ph", "pH", PH, 3.5, 8.0, help="At the end of the fermentation."),
        Number("salt", "Salt", FRACTION, 0.001, 0.2, help="In the mix."),
    ),
    compute=_hill,
    example={"ph": "5.0", "salt": "2 %"},
)
WORKSHEETS = (FROZEN_SHEET, CURED_SHEET, TRIAL_SHEET)
