"""Choosing a set-point: how hard does this air dry, what else dries as hard, and which surface will sweat in it?"""

from __future__ import annotations

from collections.abc import Iterable

from core.air import moist_air, vapour_pressure_deficit
from core.chamber.programmes import Programme, Range
from core.quantities import RELATIVE_HUMIDITY, TEMPERATURE, VAPOUR_PRESSURE, WATER_ACTIVITY, Amount, Quantity
from core.refusals import OutOfRange, require_between
from core.saturation import WARMEST_C, saturation_in_air_pa
from core.sentence import Message, Sentence, Value, said
from core.sources import WATER_SATURATION
from core.vapour import STANDARD_PA, dew_point_c, frost_point_c
from core.working import Figure

DEW = "Dew forms in air of {air} on what is at {point} or colder: coil, wall, window or cold piece."
FROST = "Frost forms in air of {air} on what is at {point} or colder: coil, wall, window or cold piece."
HYGROMETER = 0.03
"""What a hygrometer may be wrong by, as relative humidity (common practice; no published source)."""
COLDEST_C = -20.0
ROUNDING = 1e-9
AS_SHOWN = {TEMPERATURE.key: 0.05, RELATIVE_HUMIDITY.key: 0.0005}
"""12.8 °C is 55 °F: a set-point is held to what is printed only as finely as it is shown."""
BELOW_PRINTED: Message = "The set-point lies below what is printed."
ABOVE_PRINTED = "The set-point lies above what is printed."
NOT_EQUAL_DRYING: Message = (
    "Equal force is not equal drying: in the cold water comes more slowly out of the meat, and air that moves faster "
    "dries faster."
)


def set_point(
    temperature_c: float, humidity: float, surface_activity: float = 0.97, programme: Programme | None = None
) -> tuple[Figure, ...]:
    """All that a set-point comes to: drying force, dew point, the coldest surface that stays dry, the programme.

    temperature_c: −20 to 60 °C. humidity: above 0 to 1. surface_activity: 0 to 1. Raises OutOfRange.
    """
    points = {figure.key: figure for figure in moist_air(temperature_c, humidity)}
    return (
        vapour_pressure_deficit(temperature_c, humidity, surface_activity),
        points["dew_point"],
        coldest_dry_surface(temperature_c, humidity),
        *(beside(programme, temperature_c, humidity) if programme else ()),
    )


def coldest_dry_surface(temperature_c: float, humidity: float) -> Figure:
    """The coldest surface on which nothing dews, or ices below 0 °C. Ranges and errors as in `set_point`.

    `high` is where it would be if the hygrometer read three per cent of humidity too low.
    """
    point_c, high_c = (_first_wet_c(temperature_c, each) for each in (humidity, min(1.0, humidity + HYGROMETER)))
    amounts = {
        "point": Amount(point_c, TEMPERATURE),
        "air": Amount(temperature_c, TEMPERATURE),
        "high": Amount(high_c, TEMPERATURE),
        "wrong": Amount(HYGROMETER, RELATIVE_HUMIDITY),
    }
    where = FROST if point_c < 0 else DEW
    return Figure(
        key="coldest_dry_surface",
        name="Coldest surface that stays dry",
        value=point_c,
        quantity=TEMPERATURE,
        working=(
            Sentence(where, amounts),
            Sentence(
                "Were the humidity {wrong} higher than the hygrometer shows, it forms at {high} or colder.", amounts
            ),
        ),
        source=WATER_SATURATION,
        low=point_c,
        high=high_c,
    )


def _first_wet_c(temperature_c: float, humidity: float) -> float:
    frost_c = frost_point_c(temperature_c, humidity)
    return dew_point_c(temperature_c, humidity) if frost_c is None else frost_c


def equal_humidity(temperature_c: float, humidity: float, surface_activity: float, other_c: float) -> Figure:
    """The humidity at another temperature that dries as hard.

    temperature_c, humidity, surface_activity: the set-point known, as in `set_point`. other_c: −20 to 60 °C.
    Raises OutOfRange on "other_temperature" where even dry air would not, or only air above 100 %.
    """
    force = vapour_pressure_deficit(temperature_c, humidity, surface_activity)
    _require_other(other_c)
    saturated_pa = saturation_in_air_pa(other_c, STANDARD_PA)
    equal = surface_activity - force.value / saturated_pa
    if equal < -ROUNDING:
        raise OutOfRange("other_temperature", "Even dry air does not dry as hard at this temperature: choose a warmer.")
    if equal > 1 + ROUNDING:
        raise OutOfRange("other_temperature", "Only air above 100 % would match this one: choose another temperature.")
    equal = min(max(equal, 0.0), 1.0)
    amounts = {
        "activity": Amount(surface_activity, WATER_ACTIVITY),
        "force": force.amount,
        "other": Amount(other_c, TEMPERATURE),
        "saturated": Amount(saturated_pa, VAPOUR_PRESSURE),
        "equal": Amount(equal, RELATIVE_HUMIDITY),
    }
    steps = (
        *force.working,
        Sentence("Saturation at {other}: {saturated}. The humidity that leaves the same force:", amounts),
        Sentence("{activity} − {force} ÷ {saturated} = {equal}", amounts),
    )
    name = "Humidity that dries as hard there"
    cautions = (NOT_EQUAL_DRYING,)
    return Figure("equal_humidity", name, equal, RELATIVE_HUMIDITY, steps, WATER_SATURATION, cautions)


def equal_temperature(temperature_c: float, humidity: float, surface_activity: float, other_humidity: float) -> Figure:
    """The temperature at another humidity that dries as hard: the inverse of `equal_humidity`.

    other_humidity: 0 to less than surface_activity where the known air dries. Raises OutOfRange on "other_humidity"
    where no temperature from −20 to 60 °C answers, and on "humidity" for air that does not dry at all.
    """
    force = vapour_pressure_deficit(temperature_c, humidity, surface_activity)
    require_between("other_humidity", "The other humidity", other_humidity, 0.0, 1.0, RELATIVE_HUMIDITY)
    if force.value <= 0:
        raise OutOfRange("humidity", "Humidity must be below the water activity of the surface: this air does not dry.")
    room = surface_activity - other_humidity
    wanted_pa = force.value / room if room > 0 else float("inf")
    coldest_pa, warmest_pa = (saturation_in_air_pa(each, STANDARD_PA) for each in (COLDEST_C, WARMEST_C))
    if not coldest_pa <= wanted_pa <= warmest_pa:
        raise OutOfRange("other_humidity", "No temperature from −20 to 60 °C (−4 to 140 °F) dries as hard at this.")
    at_c = dew_point_c(WARMEST_C, wanted_pa / warmest_pa)
    amounts = {
        "force": force.amount,
        "activity": Amount(surface_activity, WATER_ACTIVITY),
        "other": Amount(other_humidity, RELATIVE_HUMIDITY),
        "wanted": Amount(wanted_pa, VAPOUR_PRESSURE),
        "at": Amount(at_c, TEMPERATURE),
    }
    steps = (
        *force.working,
        Sentence("For the same force at {other} the saturation must be:", amounts),
        Sentence("{force} ÷ ({activity} − {other}) = {wanted}", amounts),
        Sentence("Found by trial: air holds just that at {at}", amounts),
    )
    name = "Temperature that dries as hard at that humidity"
    return Figure("equal_temperature", name, at_c, TEMPERATURE, steps, WATER_SATURATION, (NOT_EQUAL_DRYING,))


def equal_line(
    temperature_c: float, humidity: float, surface_activity: float, temperatures_c: Iterable[float]
) -> tuple[tuple[float, float], ...]:
    """Set-points of equal force, for a chart: each temperature with its humidity, those that cannot be left out."""
    force_pa = vapour_pressure_deficit(temperature_c, humidity, surface_activity).value
    line = ((each, surface_activity - force_pa / saturation_in_air_pa(each, STANDARD_PA)) for each in temperatures_c)
    return tuple((each, equal) for each, equal in line if 0 <= equal <= 1)


def beside(programme: Programme, temperature_c: float, humidity: float) -> tuple[Figure, ...]:
    """The temperature and humidity a programme prints, each cautioned where the set-point lies outside it."""
    printed: tuple[tuple[str, Message, float, Quantity, Range | None], ...] = (
        ("programme_temperature", "Temperature printed", temperature_c, TEMPERATURE, programme.temperature_c),
        ("programme_humidity", "Humidity printed", humidity, RELATIVE_HUMIDITY, programme.humidity),
    )
    return tuple(
        _printed(programme, key, name, value, quantity, span) for key, name, value, quantity, span in printed if span
    )


def _printed(programme: Programme, key: str, name: Message, value: float, quantity: Quantity, span: Range) -> Figure:
    low, high = span
    amounts = {"set": Amount(value, quantity), "low": Amount(low, quantity), "high": Amount(high, quantity)}
    slack = AS_SHOWN[quantity.key]
    below, above = value < low - slack, value > high + slack
    no_lower_limit = quantity is RELATIVE_HUMIDITY and not low
    told = "{low}" if low == high else "at most {high}" if no_lower_limit else "{low} to {high}"
    where = "outside it, below" if below else "outside it, above" if above else "within it"
    words: dict[str, Value] = {
        "programme": said(programme.name),
        "printed": Sentence(told, amounts),
        "set": amounts["set"],
        "where": Sentence(where),
    }
    noted = (programme.note,) if programme.note else ()
    aside = (BELOW_PRINTED,) if below else (ABOVE_PRINTED,) if above else ()
    return Figure(
        key=key,
        name=Sentence("{name}, at most", {"name": Sentence(name)}) if no_lower_limit else name,
        value=high if no_lower_limit else (low + high) / 2,
        quantity=quantity,
        working=(Sentence("{programme}: {printed}. The set-point of {set} lies {where}.", words),),
        source=programme.source,
        cautions=aside + noted,
        low=None if low == high or no_lower_limit else low,
        high=None if low == high or no_lower_limit else high,
    )


def _require_other(other_c: float) -> None:
    require_between("other_temperature", "The other temperature", other_c, COLDEST_C, WARMEST_C, TEMPERATURE)
