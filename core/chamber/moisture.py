"""Moisture: how much water does the hanging meat give off, what must the coil take out, and how much can hang at all?

Air holds almost none of it: at 12 °C a chamber of 500 L holds half a gram more for ten per cent of humidity, so the
humidity is a balance of flows. What the meat gives off, the coil must take out at the same time.
"""

from __future__ import annotations

from attrs import evolve

from core.chamber.film import film, latent_heat_j_kg, wet_flux_kg_m2s, wet_surface_c
from core.chamber.rates import AIR_SPEED, FILM, FLUX, LASTING, MOISTURE, POWER, ROOM, SURFACE_OF_A_KILO, WATER_A_DAY
from core.densities import MEAT_KG_PER_M3, ROUGH_WATER_KG_PER_M3
from core.meat import MOST_LOSS_A_DAY
from core.quantities import (
    ABSOLUTE_HUMIDITY,
    COUNT,
    DOSE_MASS,
    ENTHALPY,
    LENGTH,
    LOSS_RATE,
    MASS,
    TEMPERATURE,
    Amount,
)
from core.refusals import OutOfRange, require_between
from core.sentence import Message, Sentence
from core.sources import (
    ASHRAE_ENTHALPY,
    CHURCHILL_BERNSTEIN,
    FIRST_DAYS_LOSS,
    VAPOUR_AS_IDEAL_GAS,
    WATER_BALANCE,
)
from core.traced import traced
from core.units import DAY_S
from core.vapour import absolute_humidity_kg_m3
from core.working import Figure

HEAVIEST_KG = 1000.0
FASTEST = MOST_LOSS_A_DAY / DAY_S
FIRST_DAYS, FIRST_DAYS_LOW, FIRST_DAYS_HIGH = 0.015 / DAY_S, 0.01 / DAY_S, 0.02 / DAY_S
NO_PEAK_PRINTED = "No published figure for the first days was found: 1 to 2 % a day is from memory."
NO_COOLER = (
    "The meat takes this heat from the air and the coil takes it out of the vapour again: the chamber gets no colder "
    "by it, but the compressor runs for it."
)
MELTS = (
    "Where ice forms on the coil, each defrost adds the heat of melting, 334 J to the gram, and gives the water back "
    "late."
)
UPPER_BOUND = "A wholly wet surface: after the first days skin and casing cut it several times over."
TIGHT = "The chamber is taken as tight; each time the door opens the room's moisture comes on top."


def moisture_load(
    hanging_kg: float,
    loss_per_s: float,
    temperature_c: float = 12.0,
    peak_per_s: float | None = None,
    chamber_m3: float | None = None,
) -> tuple[Figure, ...]:
    """What hanging meat gives off, at its mean rate and in the first days, and what that asks of the coil.

    hanging_kg: above 0, below 1000. loss_per_s: share of the weight lost in a second, up to 10 % a day. peak_per_s: the
    same in the first days; None means 1.5 % a day, from 1 to 2, or the mean where that is more. temperature_c: −5 to
    40 °C. chamber_m3: the chamber's air; tells how fast its humidity would rise. Raises OutOfRange.
    """
    _require_hanging(hanging_kg)
    _require_loss("loss", loss_per_s)
    require_between("temperature", "Temperature", temperature_c, -5.0, 40.0, TEMPERATURE)
    mean = _given_off("given_off", "Water the meat gives off", hanging_kg, loss_per_s)
    peak = _peak(hanging_kg, loss_per_s, peak_per_s)
    return (
        mean,
        peak,
        _coil(mean, peak),
        _latent("latent", "Heat to evaporate it", mean, temperature_c),
        _latent("latent_peak", "Heat to evaporate it in the first days", peak, temperature_c),
        *(() if chamber_m3 is None else _rises(chamber_m3, temperature_c, mean)),
    )


def wet_limit(
    hanging_kg: float, thickness_m: float, temperature_c: float, humidity: float, air_speed_m_s: float
) -> Figure:
    """The most that meat of this thickness can give off in this air, were its whole surface wet.

    Ranges as in `core.chamber.film`, humidity above 0 to 1. Raises OutOfRange. Source: Churchill and Bernstein 1977.
    """
    _require_hanging(hanging_kg)
    around = film(thickness_m, air_speed_m_s, temperature_c)
    flux = wet_flux_kg_m2s(temperature_c, humidity, around)
    surface = 4 / (MEAT_KG_PER_M3 * thickness_m)
    limit = Amount(hanging_kg * surface * flux, MOISTURE)
    amounts = {
        "speed": Amount(air_speed_m_s, AIR_SPEED),
        "thick": Amount(thickness_m, LENGTH),
        "film": Amount(around.heat_w_m2k, FILM),
        "wet": Amount(wet_surface_c(temperature_c, humidity, around), TEMPERATURE),
        "flux": Amount(flux, FLUX),
        "surface": Amount(surface, SURFACE_OF_A_KILO),
        "meat": Amount(hanging_kg, MASS),
        "limit": limit,
    }
    steps = (
        Sentence("Air of {speed} across a piece of {thick} makes a film of {film}.", amounts),
        Sentence("Its wet surface settles at {wet}, where {flux} leave it.", amounts),
        Sentence("A kilogram of it has {surface}: 4 ÷ (1050 kg/m³ × thickness).", amounts),
        Sentence("{meat} × {surface} × {flux} = {limit}", amounts),
    )
    name = "The most it can give off, wholly wet"
    return Figure("wet_limit", name, limit.value, MOISTURE, steps, CHURCHILL_BERNSTEIN, (UPPER_BOUND,))


def humidifier_need(
    chamber_m3: float,
    temperature_c: float,
    humidity: float,
    room_c: float,
    room_humidity: float,
    changes_a_day: float,
    drained_kg_s: float = 0.0,
) -> tuple[Figure, ...]:
    """What the humidifier must add while nothing hangs: once to moisten the air, then each day.

    chamber_m3: above 0 to 100. changes_a_day: how often the room's air replaces the chamber's, 0 to 1000. drained_kg_s:
    condensate that the empty chamber's coil drains all the same. Air as in `core.air`. The daily need is negative where
    the room brings more than is wanted. Assumes that the door stays shut and the walls take up no water.
    Raises OutOfRange.
    """
    _require_chamber(chamber_m3)
    require_between("changes", "Changes of air a day", changes_a_day, 0.0, 1000.0, COUNT)
    if not 0 <= drained_kg_s < 1:
        raise OutOfRange("drained", "The condensate drained must be 0 or more.")
    inside = absolute_humidity_kg_m3(temperature_c, humidity)
    outside = absolute_humidity_kg_m3(room_c, room_humidity)
    once, leak = chamber_m3 * (inside - outside), chamber_m3 * (inside - outside) * changes_a_day / DAY_S
    amounts = {
        "room": Amount(chamber_m3, ROOM),
        "inside": Amount(inside, ABSOLUTE_HUMIDITY),
        "outside": Amount(outside, ABSOLUTE_HUMIDITY),
        "once": Amount(once, DOSE_MASS),
        "changes": Amount(changes_a_day, COUNT),
        "leak": Amount(leak / ROUGH_WATER_KG_PER_M3, WATER_A_DAY),
        "drained": Amount(drained_kg_s / ROUGH_WATER_KG_PER_M3, WATER_A_DAY),
        "need": Amount((leak + drained_kg_s) / ROUGH_WATER_KG_PER_M3, WATER_A_DAY),
    }
    moisten = Sentence("{room} × ({inside} − {outside}) = {once}", amounts)
    steps = (
        moisten,
        Sentence("{once}, {changes} times a day, is {leak}; what the coil drains comes on top:", amounts),
        Sentence("{leak} + {drained} = {need}", amounts),
    )
    need = amounts["need"].value
    brings = ("The room brings more water than is wanted: the coil must take it out.",) if need < 0 else ()
    assumed = "The door counts as shut, and the walls as dry."
    return (
        Figure("need", "Water to add", need, WATER_A_DAY, steps, WATER_BALANCE, (*brings, assumed)),
        Figure("once", "To moisten the room's air once", once, DOSE_MASS, (moisten,), WATER_BALANCE),
    )


def _given_off(key: str, name: Message, hanging_kg: float, loss_per_s: float) -> Figure:
    return (traced("meat", hanging_kg, MASS) * traced("loss", loss_per_s, LOSS_RATE)).figure(key, name, MOISTURE)


def _peak(hanging_kg: float, loss_per_s: float, peak_per_s: float | None) -> Figure:
    name = "The same in the first days"
    if peak_per_s is not None:
        _require_loss("peak", peak_per_s)
        return _given_off("peak", name, hanging_kg, peak_per_s)
    figure = _given_off("peak", name, hanging_kg, max(loss_per_s, FIRST_DAYS))
    return evolve(
        figure,
        source=FIRST_DAYS_LOSS,
        cautions=(NO_PEAK_PRINTED,),
        low=hanging_kg * max(loss_per_s, FIRST_DAYS_LOW),
        high=hanging_kg * max(loss_per_s, FIRST_DAYS_HIGH),
    )


def _coil(mean: Figure, peak: Figure) -> Figure:
    litres, most = (
        Amount(mean.value / ROUGH_WATER_KG_PER_M3, WATER_A_DAY),
        Amount(peak.value / ROUGH_WATER_KG_PER_M3, WATER_A_DAY),
    )
    amounts = {"mean": mean.amount, "litres": litres, "peak": peak.amount, "most": most}
    steps = (Sentence("All that the meat gives off: {mean} is {litres}; in the first days {peak} is {most}.", amounts),)
    low, high = sorted((litres.value, most.value))
    name = "What the coil must take out"
    return Figure("coil", name, litres.value, WATER_A_DAY, steps, WATER_BALANCE, (TIGHT, MELTS), low, high)


def _latent(key: str, name: Message, water: Figure, temperature_c: float) -> Figure:
    heat = latent_heat_j_kg(temperature_c)
    power = traced("water", water.value, MOISTURE) * traced("heat", heat, ENTHALPY)
    low, high = (None if each is None else each * heat for each in (water.low, water.high))
    return power.figure(key, name, POWER, source=ASHRAE_ENTHALPY, cautions=(NO_COOLER,), low=low, high=high)


def _rises(chamber_m3: float, temperature_c: float, water: Figure) -> tuple[Figure, ...]:
    _require_chamber(chamber_m3)
    held = traced("held", absolute_humidity_kg_m3(temperature_c, 1.0), ABSOLUTE_HUMIDITY)
    one = (traced("room", chamber_m3, ROOM) * held / 100).figure(
        "one_per_cent", "Water in the air for 1 % of humidity", DOSE_MASS, source=VAPOUR_AS_IDEAL_GAS
    )
    if water.value <= 0:
        return (one,)
    lasts = traced("one", one.value, DOSE_MASS) / traced("water", water.value, MOISTURE)
    name = "The meat alone raises the humidity by 1 % in"
    return one, lasts.figure("rises_in", name, LASTING, before=one.working, source=WATER_BALANCE)


def _require_hanging(hanging_kg: float) -> None:
    if not 0 < hanging_kg < HEAVIEST_KG:
        told = Sentence("What hangs must weigh more than 0 and less than {most}.", {"most": Amount(HEAVIEST_KG, MASS)})
        raise OutOfRange("hanging", told)


def _require_loss(field: str, loss_per_s: float) -> None:
    if not 0 <= loss_per_s <= FASTEST * (1 + 1e-9):
        raise OutOfRange(field, "The loss must be between 0 and 10 % a day.")


def _require_chamber(chamber_m3: float) -> None:
    if not 0 < chamber_m3 <= 100:
        told = Sentence("The chamber must hold more than nothing and at most {most}.", {"most": Amount(100.0, ROOM)})
        raise OutOfRange("chamber", told)
