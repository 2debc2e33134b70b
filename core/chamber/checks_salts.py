"""The humidity over a saturated salt, which is what a hygrometer is checked against.

Greenspan's printed table cuts its second decimal off where one would round it: with that, these coefficients give all
71 of its values for these salts from 0 to 40 °C, to the last digit. Several public copies print LiCl's and K₂CO₃'s
second coefficient with a minus; the table, and every other one in print, is met only with the plus.
"""

from __future__ import annotations

from collections.abc import Mapping

from attrs import frozen

from core.quantities import CELSIUS_TEMPERATURE, RATIO, RELATIVE_HUMIDITY, TEMPERATURE, Amount
from core.refusals import OutOfRange
from core.sentence import Message, Sentence, formula, said
from core.sources import GREENSPAN, GREENSPAN_FITTED, Source
from core.working import Figure


@frozen
class Salt:
    """polynomial: per-cent of humidity in powers of °C. uncertain: per-cent either way, each 5 °C from coldest_c."""

    name: Message
    polynomial: tuple[float, ...]
    uncertain: tuple[float, ...]
    coldest_c: float = 0.0
    source: Source = GREENSPAN

    @property
    def warmest_c(self) -> float:
        return self.coldest_c + 5.0 * (len(self.uncertain) - 1)


SALTS: Mapping[str, Salt] = {
    "nacl": Salt(
        "table salt, sodium chloride",
        (75.5164, 0.0398321, -0.00265459, 2.848e-5),
        (0.34, 0.27, 0.22, 0.18, 0.14, 0.12, 0.11, 0.12, 0.13),
    ),
    "mgcl2": Salt(
        "magnesium chloride",
        (33.6686, -0.00797397, -0.00108988),
        (0.33, 0.28, 0.24, 0.21, 0.18, 0.16, 0.14, 0.13, 0.13),
    ),
    "kcl": Salt(
        "potassium chloride",
        (88.619, -0.19334, 0.000899706),
        (0.53, 0.45, 0.39, 0.33, 0.29, 0.26, 0.25, 0.25, 0.25),
    ),
    "k2so4": Salt("potassium sulfate", (98.7792, -0.0590502), (1.10, 0.91, 0.76, 0.63, 0.53, 0.45, 0.40, 0.38, 0.38)),
    "mg-nitrate": Salt(
        "magnesium nitrate",
        (60.3519, -0.298233),
        (0.55, 0.43, 0.33, 0.27, 0.23, 0.22, 0.24, 0.29, 0.37),
        source=GREENSPAN_FITTED,
    ),
    "nabr": Salt(
        "sodium bromide",
        (64.7147, -0.221331, -0.00404312, 5.91453e-5),
        (0.72, 0.60, 0.51, 0.44, 0.40, 0.38, 0.38, 0.41),
        coldest_c=5.0,
        source=GREENSPAN_FITTED,
    ),
    "k2co3": Salt("potassium carbonate", (43.1315, 0.00147523), (0.66, 0.50, 0.39, 0.33, 0.33, 0.39, 0.50)),
    "licl": Salt(
        "lithium chloride",
        (11.2323, 0.00824245, -0.000214890),
        (0.54, 0.47, 0.41, 0.35, 0.31, 0.27, 0.24, 0.22, 0.21),
    ),
}


def humidity_over(salt: Salt, temperature_c: float, field: str = "temperature_c") -> float:
    """Relative humidity over the saturated salt, 0 to 1, at the salt's own temperature.

    temperature_c: within the salt's range. Raises OutOfRange on `field` outside it. Source: Greenspan 1977.
    """
    _require_range(salt, temperature_c, field)
    return sum(factor * temperature_c**power for power, factor in enumerate(salt.polynomial)) / 100


def uncertainty_over(salt: Salt, temperature_c: float, field: str = "temperature_c") -> float:
    """How far the table itself may be out, either way, 0 to 1: straight between its printed values, each 5 °C."""
    _require_range(salt, temperature_c, field)
    step = (temperature_c - salt.coldest_c) / 5
    left = min(int(step), len(salt.uncertain) - 2)
    below, above = salt.uncertain[left : left + 2]
    return (below + (above - below) * (step - left)) / 100


def over_salt(salt: Salt, temperature_c: float, key: str = "truth", field: str = "temperature_c") -> Figure:
    """The humidity over a salt as a figure, its range being the table's own uncertainty."""
    humidity = humidity_over(salt, temperature_c, field)
    unsure = uncertainty_over(salt, temperature_c, field)
    amounts = {"salt": Amount(temperature_c, CELSIUS_TEMPERATURE), "humidity": Amount(humidity, RELATIVE_HUMIDITY)}
    amounts |= {f"factor{power}": Amount(abs(each), RATIO) for power, each in enumerate(salt.polynomial)}
    return Figure(
        key=key,
        name=Sentence("Humidity over {salt}", {"salt": said(salt.name)}),
        value=humidity,
        quantity=RELATIVE_HUMIDITY,
        working=(formula(_text_of(salt.polynomial), amounts),),
        source=salt.source,
        low=humidity - unsure,
        high=humidity + unsure,
    )


def _text_of(polynomial: tuple[float, ...]) -> str:
    text = "{factor0}"
    for power, factor in enumerate(polynomial[1:], 1):
        sign = "+" if factor > 0 else "−"
        raised = "{salt}" if power == 1 else f"{{salt}} ^ {power}"
        text += f" {sign} {{factor{power}}} × {raised}"
    return text + " = {humidity}"


def _require_range(salt: Salt, temperature_c: float, field: str) -> None:
    if not salt.coldest_c <= temperature_c <= salt.warmest_c:
        sentence = Sentence(
            "Over {salt} the humidity is known between {low} and {high}: let the salt stand within that.",
            {
                "salt": said(salt.name),
                "low": Amount(salt.coldest_c, TEMPERATURE),
                "high": Amount(salt.warmest_c, TEMPERATURE),
            },
        )
        raise OutOfRange(field, sentence)
