"""Air programmes by process: which temperature and humidity are printed for this stage, and who prints them?

Each is a published range with its source, or common practice. None is a rule to be held to but that for aged beef.
"""

from __future__ import annotations

import math

from attrs import frozen

from core.chamber.rates import AIR_SPEED
from core.quantities import DAYS, RELATIVE_HUMIDITY, TEMPERATURE, Amount, Quantity
from core.refusals import OutOfRange
from core.sentence import Message, Sentence, Value
from core.sources import (
    BEEF_AGEING_REVIEW,
    CELLAR_STUDY,
    CFIA_OPTIONS,
    COMMON_PRACTICE,
    DRY_HAM_KATSARAS,
    DRY_HAM_TOLDRA,
    EFSA_BEEF_AGEING,
    EU_BEEF_AGEING,
    GD_2023_FERMENTING_AIR,
    HANDBOOK_SAUSAGE,
    SAUSAGE_65_MM,
    SAUSAGE_UNDER_LARD,
    Source,
)
from core.units import DAY_S
from core.verdict import Reason

Range = tuple[float, float]
F_13 = (55 - 32) / 1.8
"""55 °F as it is printed, 12.8 °C."""

ACID_IN_TIME: Message = "Warmth lets staphylococci grow too: keep within the degree-hours."
PROCESSES: dict[str, Message] = {
    "slow-fermentation": "Slow fermentation",
    "warm-fermentation": "Warm fermentation",
    "drying": "Drying sausage, by stage",
    "whole-muscle": "Drying whole muscle",
    "beef-ageing": "Dry-ageing beef",
    "storage": "Keeping what is done",
}


@frozen
class Programme:
    """The air that one source prints for one stage of a process. days: from, to; None where none are printed.

    temperature_c, humidity: from, to; the same twice where a single point is printed; None where nothing is.
    """

    key: str
    process: str
    name: Message
    temperature_c: Range | None
    humidity: Range | None
    source: Source
    days: Range | None = None
    air_speed_m_s: Range | None = None
    note: Message = ""


_SLOW, _WARM, _DRYING = "slow-fermentation", "warm-fermentation", "drying"
_WHOLE, _BEEF, _STORAGE = "whole-muscle", "beef-ageing", "storage"
PROGRAMMES = (
    Programme("slow-65mm", _SLOW, "65 mm sausage, days 1 and 2", (22, 22), (0.90, 0.90), SAUSAGE_65_MM, (2, 2)),
    Programme("slow-european", _SLOW, "European style", (20, 25), (0.92, 0.95), HANDBOOK_SAUSAGE),
    Programme("slow-guideline", _SLOW, "US guideline, humidity only", None, (0.85, 0.90), GD_2023_FERMENTING_AIR),
    Programme("slow-lard", _SLOW, "Sausage kept under lard, day 1", (24, 24), (0.80, 0.80), SAUSAGE_UNDER_LARD, (1, 1)),
    Programme(
        "warm-us", _WARM, "US style, to pH 4.8", (24, 43), (0.85, 1.0), HANDBOOK_SAUSAGE, note=ACID_IN_TIME
    ),
    Programme(
        "warm-practice",
        _WARM,
        "Up to 99 °F (37.2 °C) at 85 %",
        (24, (99 - 32) / 1.8),
        (0.85, 0.85),
        COMMON_PRACTICE,
        note=ACID_IN_TIME,
    ),
    Programme("dry-65mm-3", _DRYING, "65 mm sausage, day 3", (19, 19), (0.88, 0.88), SAUSAGE_65_MM, (1, 1)),
    Programme("dry-65mm-4", _DRYING, "65 mm sausage, day 4", (15, 15), (0.86, 0.86), SAUSAGE_65_MM, (1, 1)),
    Programme("dry-65mm", _DRYING, "65 mm sausage, day 5 to 28", (12, 12), (0.84, 0.84), SAUSAGE_65_MM, (24, 24)),
    Programme(
        "dry-lard-1", _DRYING, "Sausage kept under lard, day 2 to 6", (18, 22), (0.75, 0.89), SAUSAGE_UNDER_LARD, (5, 5)
    ),
    Programme(
        "dry-lard-2", _DRYING, "Sausage under lard, two months", (15, 20), (0.80, 0.85), SAUSAGE_UNDER_LARD, (60, 60)
    ),
    Programme("dry-practice", _DRYING, "Salami, 55 °F (12.8 °C) and 80 %", (F_13, F_13), (0.80, 0.80), COMMON_PRACTICE),
    Programme("dry-us", _DRYING, "US style, fermented sour", (13, 13), (0.65, 0.65), HANDBOOK_SAUSAGE),
    Programme("dry-canada", _DRYING, "After a heating step, 55 °F and 65 %", (F_13, F_13), (0.65, 0.65), CFIA_OPTIONS),
    Programme("dry-cellar", _DRYING, "Cellar, sausage 2 to 4 months", (12, 16), (0.70, 0.80), CELLAR_STUDY, (60, 120)),
    Programme("whole-salting", _WHOLE, "Italian ham, salting", (1, 3), (0.85, 0.85), DRY_HAM_KATSARAS, (25, 30)),
    Programme("whole-rest", _WHOLE, "Italian ham, resting", (2, 5), (0.80, 0.80), DRY_HAM_KATSARAS, (45, 45)),
    Programme(
        "whole-italian", _WHOLE, "Italian ham, to 6 or 7 months", (12, 14), (0.80, 0.82), DRY_HAM_KATSARAS, (180, 210)
    ),
    Programme("whole-ham", _WHOLE, "Dry-cured ham, drying", (16, 25), (0.65, 0.80), DRY_HAM_TOLDRA),
    Programme("whole-cellar", _WHOLE, "Cellar, bacon 1 to 2 months", (12, 16), (0.70, 0.80), CELLAR_STUDY, (30, 60)),
    Programme(
        "beef-eu", _BEEF, "EU rule of 2024", (-0.5, 3.0), (0.0, 0.85), EU_BEEF_AGEING, (0, 35), (0.2, 0.5),
        note="The temperature is that of the meat's surface; days count from when it has settled.",
    ),
    Programme("beef-efsa", _BEEF, "EFSA's opinion", (-0.5, 3.0), (0.75, 0.85), EFSA_BEEF_AGEING, (0, 35), (0.2, 0.5)),
    Programme("beef-review", _BEEF, "A review of 2016", (0, 4), (0.75, 0.80), BEEF_AGEING_REVIEW, (28, 55)),
    Programme("storage-hung", _STORAGE, "Hung, shelf-stable", (10, 15), (0.70, 0.75), COMMON_PRACTICE),
    Programme("storage-cold", _STORAGE, "Vacuum packed, in the cold", (0, 5), None, COMMON_PRACTICE),
)  # fmt: skip
BY_KEY = {programme.key: programme for programme in PROGRAMMES}


def of_process(process: str) -> tuple[Programme, ...]:
    """The programmes printed for a process, in the order of its stages."""
    return tuple(programme for programme in PROGRAMMES if programme.process == process)


def beef_ageing(
    surface_c: float | None, humidity: float | None, air_speed_m_s: float | None, days: float | None
) -> tuple[Reason, ...]:
    """The four limits of the EU rule for dry-ageing beef: surface, humidity, air speed, days since it settled.

    None where it was not measured: that limit is then not shown to be met. Outside them the maker must prove the
    combination safe. Raises OutOfRange for what cannot be. Source: Delegated Reg. (EU) 2024/1141.
    """
    return (
        _within("surface", "Surface", surface_c, TEMPERATURE, -0.5, 3.0),
        _within("humidity", "Humidity", humidity, RELATIVE_HUMIDITY, 0.0, 0.85),
        _within("air_speed", "Air speed", air_speed_m_s, AIR_SPEED, 0.2, 0.5),
        _within("days", "Time since it settled", None if days is None else days * DAY_S, DAYS, 0.0, 35 * DAY_S),
    )


def _within(field: str, name: Message, value: float | None, quantity: Quantity, low: float, high: float) -> Reason:
    ends: dict[str, Value] = {"low": Amount(low, quantity), "high": Amount(high, quantity)}
    told: dict[str, Value] = {
        "name": Sentence(name),
        "allowed": Sentence("{low} to {high}" if low else "at most {high}", ends),
    }
    settle = Sentence("Bring it to {allowed}, or prove this combination safe with the food-safety authority.", told)
    if value is None:
        text = Sentence("{name} is not measured; the rule allows {allowed}.", told)
        return Reason(field, text, None, EU_BEEF_AGEING, Sentence("Measure it; the rule allows {allowed}.", told))
    if not math.isfinite(value):
        raise OutOfRange(field, Sentence("{name} must be a number.", told))
    told["value"] = Amount(value, quantity)
    text = Sentence("{name} {value}; the rule allows {allowed}.", told)
    slack = 1e-9 * abs(high)
    return Reason(field, text, low - slack <= value <= high + slack, EU_BEEF_AGEING, settle)
