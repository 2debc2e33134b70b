"""Which conditions each published way of curing pork against trichinella sets: former 9 CFR 318.10, as it was read.

A condition whose limit hangs on another reading that is not known takes the strictest of its limits. Nothing between
two printed rows is made up.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence

from attrs import frozen

from core.release.cured_readings import BOXES, Condition, Readings, days, hours
from core.sentence import Message
from core.sources import CFIA_TRICHINELLA, CFR_TRICHINELLA, Source
from core.units import FAHRENHEIT, INCH_M, POUND_KG


def _f(temperature_f: float) -> float:
    return FAHRENHEIT.to_si(temperature_f)


def _least(**limits: float) -> tuple[Condition, ...]:
    return tuple(Condition(key, least=limit) for key, limit in limits.items())


def _most(**limits: float) -> tuple[Condition, ...]:
    return tuple(Condition(key, most=limit) for key, limit in limits.items())


SALT = 0.0333  # 3⅓ lb to 100 lb, which the text itself prints 3.33 in method 6
WIDEST_M, WIDE_M = 4 * INCH_M, 3.5 * INCH_M
WIDE_CANADA_M, DRYING_CANADA_C = 0.088, 7.3  # CFIA prints 8.8 cm and 7.3 °C for 3½ in and 45 °F: each the stricter
PEPPERONI_M = 1.375 * INCH_M
DRYING_C = _f(45)
GROUND = (*_most(grind_m=0.75 * INCH_M), *_least(salted=SALT))
UNWASHED = Condition("unwashed", least=1.0)
BARE = (Condition("bare", least=1.0), UNWASHED)


def _dry(dried: float, since: float, dried_c: float = DRYING_C) -> tuple[Condition, ...]:
    return _least(dried_c=dried_c, dried_s=days(dried), since_s=days(since))


@frozen
class Band:
    """Up to this diameter, these conditions."""

    most_m: float
    conditions: tuple[Condition, ...]


def _by_diameter(readings: Readings, *bands: Band) -> tuple[Condition, ...]:
    """Of a diameter that is not known, or of none that is allowed, the widest band's."""
    across = readings.get("across_m", math.inf)
    band = next((each for each in bands if across <= each.most_m + 1e-9), bands[-1])
    return (*_most(across_m=bands[-1].most_m), *band.conditions)


def _method_1(readings: Readings) -> tuple[Condition, ...]:
    return (*GROUND, *BARE, *_by_diameter(readings, Band(WIDE_M, _dry(20, 25)), Band(WIDEST_M, _dry(35, 40))))


def _pepperoni(_: Readings) -> tuple[Condition, ...]:
    return (*GROUND, *BARE, *_most(across_m=PEPPERONI_M), *_dry(15, 20))


def _method_2(readings: Readings) -> tuple[Condition, ...]:
    bands = (
        Band(WIDE_CANADA_M, _dry(10, 18, DRYING_CANADA_C)),
        Band(WIDEST_M, _dry(25, 33, DRYING_CANADA_C)),
    )
    return (*GROUND, *BARE, *_least(smoked_s=hours(40), smoked_c=_f(80)), *_by_diameter(readings, *bands))


def _method_3(readings: Readings) -> tuple[Condition, ...]:
    bands = (
        Band(WIDE_M, _least(smoked_s=hours(12), hot_s=hours(4))),
        Band(WIDEST_M, _least(smoked_s=hours(15), hot_s=hours(7))),
    )
    held = _least(held_s=hours(36), held_c=_f(34), since_s=hours(144))
    return (
        *GROUND,
        *BARE,
        *held,
        *_by_diameter(readings, *bands),
        *_least(smoked_c=_f(90), hot_c=_f(128), rise_s=hours(4)),
    )


def _method_4(_: Readings) -> tuple[Condition, ...]:
    return (
        *_most(grind_m=0.25 * INCH_M),
        *_least(salted=0.025),
        *BARE,
        *_most(deep_m=6 * INCH_M, across_m=10 / 3 * INCH_M),
        *_least(held_s=days(10), held_c=_f(36), dried_c=DRYING_C, since_s=days(35)),
    )


def _method_5(_: Readings) -> tuple[Condition, ...]:
    return (*GROUND, UNWASHED, *_least(dried_c=DRYING_C, dried_s=days(65)))


TABLE_3A = dict(
    zip((1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6), (14, 15, 16, 18, 20, 23, 25, 30, 35, 43, 50), strict=True)
)
"""Days by the diameter in inches, up to."""
TABLE_3B_F = (70, 75, 80, 85, 90, 95, 100, 105, 110, 120)
TABLE_3B: Mapping[int, Sequence[int]] = {
    24: (4, 5, 8, 10, 15, 23, 37, 57, 90, 100),
    48: (9, 12, 18, 25, 35, 49, 88, 100, 100, 100),
    72: (14, 19, 28, 39, 55, 74, 100, 100, 100, 100),
    96: (19, 26, 38, 53, 75, 98, 100, 100, 100, 100),
    120: (24, 33, 48, 67, 95, 100, 100, 100, 100, 100),
}
"""Per-cent off those days, by the hours held and the temperature."""
LEAST_SALT_6 = 0.020


def method_6_days(across_m: float, held_s: float, held_c: float, salted: float) -> int | None:
    """Days in the drying room; None of what is too wide or has too little salt. Days off are rounded down, days on for
    the salt up and counted on the days before anything came off: the text does not say, and so they are more."""
    base = next((each for inches, each in TABLE_3A.items() if across_m <= inches * INCH_M + 1e-9), None)
    more = days_more_for_salt(salted)
    if base is None or more is None:
        return None
    off = base * days_off(held_s, held_c) // 100
    return base - off + -(-base * more // 100)


def days_off(held_s: float, held_c: float) -> int:
    """Table 3B, per-cent."""
    row = max((each for each in TABLE_3B if hours(each) <= held_s + 1e-6), default=None)
    columns = [at for at, each in enumerate(TABLE_3B_F) if _f(each) <= held_c + 1e-9]
    return TABLE_3B[row][columns[-1]] if row is not None and columns else 0


def days_more_for_salt(salted: float) -> int | None:
    """Table 4: 1 % at 3.3 lb to 100 lb, and 3 % more for each tenth of a pound less, down to 2.0."""
    if salted >= SALT - 1e-9:
        return 0
    tenths = math.floor(salted * 1000 + 1e-6)
    return 1 + 3 * (33 - tenths) if tenths >= round(LEAST_SALT_6 * 1000) else None


def _method_6(readings: Readings) -> tuple[Condition, ...]:
    held_s, held_c = readings.get("held_s", 0.0), readings.get("held_c", -math.inf)
    asked = method_6_days(
        min(readings.get("across_m", 6 * INCH_M), 6 * INCH_M),
        held_s,
        held_c,
        max(readings.get("salted", LEAST_SALT_6), LEAST_SALT_6),
    )
    assert asked is not None
    drying = _least(dried_c=_f(50), dried_s=days(asked)) if asked else ()
    return (
        *_most(grind_m=0.75 * INCH_M, across_m=6 * INCH_M),
        *_least(salted=LEAST_SALT_6),
        *BARE,
        *_least(held_s=hours(48), held_c=_f(35)),
        *drying,
    )


def _method_7(readings: Readings) -> tuple[Condition, ...]:
    bands = Band(0.055, _least(dried_s=days(4))), Band(0.105, _least(dried_s=days(7)))
    fine = (*_most(grind_m=0.25 * INCH_M), *_least(salted=0.027), *BARE, Condition("scheduled", least=1.0))
    return (*fine, *_by_diameter(readings, *bands), *_least(dried_c=_f(50)))


TABLE_5_F = {130: 1.5, 125: 2, 120: 3, 115: 4, 110: 5, 105: 6, 100: 7, 95: 9, 90: 11, 85: 18, 80: 25, 75: 35}
"""Days of drying of a ham by the temperature."""


def table_5_days(dried_c: float) -> float | None:
    """None where it is colder than the table goes."""
    return next((asked for warm_f, asked in TABLE_5_F.items() if dried_c >= _f(warm_f) - 1e-9), None)


def _ham_dried(readings: Readings) -> tuple[Condition, ...]:
    asked = table_5_days(readings.get("dried_c", _f(75)))
    return _least(dried_c=_f(75), dried_s=days(TABLE_5_F[75] if asked is None else asked))


def _soaked(readings: Readings, most_s: float) -> tuple[Condition, ...]:
    warm = _most(soaked_c=_f(70)) if readings.get("soaked_s", 1.0) > 0 else ()
    return (*_most(soaked_s=most_s), *warm)


def _lay(readings: Readings, lay: float, least_c: float, **more: float) -> tuple[Condition, ...]:
    return _least(contact_s=days(lay), lay_c=least_c, **more)


def _ham_1(readings: Readings) -> tuple[Condition, ...]:
    lay = _lay(readings, 40, _f(36), salted=0.04, overhauled=1.0)
    return (*lay, *_soaked(readings, hours(15)), *_ham_dried(readings))


WEIGHED = Condition("heaviest_kg")


def _pounds(readings: Readings) -> float:
    return readings.get("heaviest_kg", 60.0) / POUND_KG


def _ham_3(readings: Readings) -> tuple[Condition, ...]:
    """35 to 45 °F all the time: the 60 °F that it allows later is not counted on. Rest must do what contact did not."""
    pounds = _pounds(readings)
    contact, in_all = max(28.0, 1.5 * pounds), max(40.0, 2.0 * pounds)
    rest = max(in_all - readings.get("contact_s", 0.0) / days(1), 0.0)
    lay = _lay(readings, contact, _f(35), mix_salt=0.70, rest_s=days(rest))
    return (WEIGHED, *lay, *_most(lay_most_c=_f(45)), *_ham_dried(readings))


def _ham_3_bag(readings: Readings) -> tuple[Condition, ...]:
    return (*_least(salted=0.06), *_ham_3(readings))


def _ham_4(readings: Readings) -> tuple[Condition, ...]:
    pounds = _pounds(readings)
    lay = _lay(readings, max(30.0, 2.0 * pounds), _f(35), mix_salt=0.715, salted=0.0572, overhauled=3.0)
    return (WEIGHED, *lay, *_least(rest_s=days(max(14.0, pounds))), *_ham_dried(readings))


def _ham_5(_: Readings) -> tuple[Condition, ...]:
    return _least(brine=0.06, dried_c=_f(55), dried_s=days(150), since_s=days(206))


def _ham_6(_: Readings) -> tuple[Condition, ...]:
    return _least(brine=0.06, dried_c=_f(110), dried_s=days(4), since_s=days(34))


def _capocollo(readings: Readings) -> tuple[Condition, ...]:
    smoked = _least(smoked_s=hours(30), smoked_c=_f(80))
    return (*_lay(readings, 25, _f(36), salted=0.045), *smoked, *_least(dried_c=DRYING_C, dried_s=days(20)))


def _coppa(readings: Readings) -> tuple[Condition, ...]:
    return (*_lay(readings, 18, _f(36), salted=0.045), *_least(dried_c=DRYING_C, dried_s=days(35)))


def _loin(readings: Readings) -> tuple[Condition, ...]:
    smoked = _least(smoked_s=hours(12), smoked_c=_f(100), hot_s=hours(4), hot_c=_f(125))
    cured = (*_lay(readings, 25, _f(36), salted=0.05), *_soaked(readings, hours(1)))
    return (*cured, *smoked, *_least(dried_c=DRYING_C, dried_s=days(12)))


@frozen
class CuringMethod:
    name: Message
    conditions: Callable[[Readings], tuple[Condition, ...]]
    source: Source = CFR_TRICHINELLA
    told: Message = ""

    @property
    def asks(self) -> tuple[str, ...]:
        """The readings it goes by, in the order of their boxes."""
        found = {each.reading for each in (*self.conditions({}), *self.conditions({"soaked_s": 1.0}))}
        return tuple(key for key in BOXES if key in found)


SAUSAGE: Mapping[str, CuringMethod] = {
    "sausage-1": CuringMethod("sausage, method 1: dried", _method_1),
    "sausage-1-thin": CuringMethod("pepperoni, method 1", _pepperoni),
    "sausage-2": CuringMethod("sausage, method 2: smoked 40 h and dried", _method_2, CFIA_TRICHINELLA),
    "sausage-3": CuringMethod("sausage, method 3: held and smoked hot", _method_3),
    "sausage-4": CuringMethod("sausage, method 4: fine, held in a mass", _method_4),
    "sausage-5": CuringMethod("sausage, method 5: dried 65 days", _method_5),
    "sausage-6": CuringMethod("sausage, method 6: days by diameter, heat and salt", _method_6),
    "sausage-7": CuringMethod(
        "sausage, method 7: fine, heated in steps",
        _method_7,
        told="Up to 105 mm: 12 h at 10 °C (50 °F), 1 h each at 33, 38, 44 and 49 °C (90, 100, 110, 120 °F), 7 h at "
        "52 °C (125 °F). Up to 55 mm: 12 h at 10 °C, 1 h at 38 °C, 6 h at 52 °C.",
    ),
}
MUSCLE: Mapping[str, CuringMethod] = {
    "coppa": CuringMethod("coppa", _coppa),
    "capocollo": CuringMethod("capocollo, smoked", _capocollo),
    "loin": CuringMethod("boneless loin, smoked", _loin),
    "ham-1": CuringMethod("ham, method 1", _ham_1),
    "ham-3": CuringMethod("ham, method 3", _ham_3),
    "ham-3-bag": CuringMethod("ham, method 3 in a bag", _ham_3_bag),
    "ham-4": CuringMethod("ham, method 4", _ham_4),
    "ham-5": CuringMethod("ham, method 5: brine and 206 days", _ham_5),
    "ham-6": CuringMethod("ham, method 6: brine and heat", _ham_6),
}
METHODS: Mapping[str, CuringMethod] = {**SAUSAGE, **MUSCLE}
NOT_AVAILABLE: Mapping[str, Message] = {
    "2015/1375": "European Union 2015/1375, annex II: not available here; its text was not read.",
    "newer-guideline": "USDA-FSIS guideline on Trichinella of 2018: not available here; only its opening was read.",
}
"""Known to be there, not read: never computed."""


def conditions_of(method: str, readings: Readings) -> tuple[Condition, ...]:
    return METHODS[method].conditions(readings)


def is_cured_by(method: str, readings: Readings) -> bool | None:
    met = [each.is_met(readings) for each in conditions_of(method, readings)]
    return False if False in met else None if None in met else True
