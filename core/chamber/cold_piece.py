"""A cold piece in warm air: will it be wet, and for how long?

Water dews on it while its surface is colder than the dew point. The piece is taken as a long round one that warms
through its film of air; the answer is a range, because nobody knows that film well.
"""

from __future__ import annotations

import math

from core.air import moist_air
from core.chamber.rates import FILM, LASTING
from core.chamber.setpoints import coldest_dry_surface
from core.densities import MEAT_KG_PER_M3
from core.quantities import CELSIUS_TEMPERATURE, LENGTH, RATIO, TEMPERATURE, Amount
from core.refusals import OutOfRange, require_between
from core.sentence import Message, Sentence
from core.sources import MEAT_WARMS
from core.working import Figure

HEAT_CAPACITY, CONDUCTIVITY = 3500.0, 0.45
"""Of lean meat, SI (from memory)."""
USUAL_FILM, STILL_FILM, BRISK_FILM = 12.0, 6.0, 35.0
"""W/(m² K): radiation about 5 and 3 to 10 for air at 0.05 to 0.5 m/s; 35 allows for the heat that the dew brings."""

STAYS_DRY = "It is no colder than the dew point: no dew forms on it."
SO_NEAR = "That is so near the dew point that the hygrometer's own error decides."
WIPE_IT: Message = "A wet surface lets moulds and slime start: bring it in dry air, or wrapped, or in steps."
WET_LONGER: Message = "The dew must dry off again: the surface is moist for longer than that."


def cold_piece(
    piece_c: float, temperature_c: float, humidity: float, thickness_m: float, film_w_m2k: float | None = None
) -> tuple[Figure, ...]:
    """How long water dews on the piece, the surface below which it does, and how fast the piece warms.

    piece_c: −1 to 60 °C. temperature_c, humidity: the warm air, as in `core.air`. thickness_m: thickness, 0.01 to 0.3.
    film_w_m2k: heat film with radiation, 2 to 60; None means 12, with 6 to 35 as its range. A film that is given is
    allowed to be half or twice as much. Raises OutOfRange, also on "humidity" for air so moist that it never ends.
    """
    if piece_c < -1.0:
        raise OutOfRange(
            "piece",
            Sentence("Frozen meat thaws first: it must be {least} at least.", {"least": Amount(-1.0, TEMPERATURE)}),
        )
    require_between("piece", "The piece", piece_c, -1.0, 60.0, TEMPERATURE)
    require_between("thickness", "Thickness", thickness_m, 0.01, 0.3, LENGTH)
    usual = USUAL_FILM if film_w_m2k is None else film_w_m2k
    require_between("film", "The film coefficient", usual, 2.0, 60.0, FILM)
    still, brisk = (STILL_FILM, BRISK_FILM) if film_w_m2k is None else (usual / 2, usual * 2)
    dry = coldest_dry_surface(temperature_c, humidity)
    dew = next(figure for figure in moist_air(temperature_c, humidity) if figure.key == "dew_point")
    if piece_c >= dew.value:
        return _stays_dry(piece_c, dry), dry
    if temperature_c - dew.value < 0.1:
        raise OutOfRange("humidity", "In air this moist the piece stays wet: the humidity must be lower.")
    return (
        _wet_for(piece_c, temperature_c, dew, thickness_m, (still, usual, brisk)),
        dry,
        _warming(thickness_m, usual, still, brisk),
    )


def time_constant_s(thickness_m: float, film_w_m2k: float) -> float:
    """Seconds in which a long round piece comes 63 % nearer to the air, its inside as warm as its surface."""
    return MEAT_KG_PER_M3 * HEAT_CAPACITY * thickness_m / (4 * film_w_m2k)


def _wet_s(colder: float, thickness_m: float, film_w_m2k: float) -> float:
    """colder: the air's lead over the piece at first, in units of its lead over the dew point."""
    return time_constant_s(thickness_m, film_w_m2k) * math.log(colder)


def _least_wet_s(colder: float, thickness_m: float, film_w_m2k: float) -> float:
    """The same with the surface running ahead of the inside: its lag is a parabola's, 1 + Biot ÷ 4."""
    ahead = 1 + film_w_m2k * thickness_m / 2 / CONDUCTIVITY / 4
    return max(0.0, ahead * time_constant_s(thickness_m, film_w_m2k) * math.log(colder / ahead))


def _wet_for(
    piece_c: float, temperature_c: float, dew: Figure, thickness_m: float, films: tuple[float, float, float]
) -> Figure:
    still, usual, brisk = films
    colder = (temperature_c - piece_c) / (temperature_c - dew.value)
    low_s, value_s, high_s = (
        _least_wet_s(colder, thickness_m, brisk),
        _wet_s(colder, thickness_m, usual),
        _wet_s(colder, thickness_m, still),
    )
    amounts = {
        "air": Amount(temperature_c, CELSIUS_TEMPERATURE),
        "piece": Amount(piece_c, CELSIUS_TEMPERATURE),
        "dew": Amount(dew.value, CELSIUS_TEMPERATURE),
        "colder": Amount(colder, RATIO),
        "constant": Amount(time_constant_s(thickness_m, usual), LASTING),
        "value": Amount(value_s, LASTING),
        "usual": Amount(usual, FILM),
        "brisk": Amount(brisk, FILM),
        "still": Amount(still, FILM),
        "low": Amount(low_s, LASTING),
        "high": Amount(high_s, LASTING),
    }
    steps = (
        Sentence("({air} − {piece}) ÷ ({air} − {dew}) = {colder}", amounts),
        Sentence("With a film of {usual} it comes 63 % nearer to the air in {constant}; it is wet for:", amounts),
        Sentence("{constant} × ln({colder}) = {value}", amounts),
        Sentence("With {still}: {high}. With {brisk}, the surface ahead of the inside: {low}.", amounts),
    )
    near = (SO_NEAR,) if dew.value - piece_c < 1.0 else ()
    cautions = (*near, WET_LONGER, WIPE_IT)
    return Figure("wet_for", "Dew forms on it for", value_s, LASTING, steps, MEAT_WARMS, cautions, low_s, high_s)


def _stays_dry(piece_c: float, dry: Figure) -> Figure:
    near = dry.high is not None and piece_c < dry.high
    amounts = {"piece": Amount(piece_c, TEMPERATURE), "dew": dry.amount}
    step = Sentence("The piece has {piece}; dew forms on what is colder than {dew}.", amounts)
    cautions = (STAYS_DRY, SO_NEAR) if near else (STAYS_DRY,)
    return Figure("wet_for", "Dew forms on it for", 0.0, LASTING, (step,), MEAT_WARMS, cautions, 0.0, 0.0)


def _warming(thickness_m: float, usual: float, still: float, brisk: float) -> Figure:
    slow, value, fast = (time_constant_s(thickness_m, each) for each in (still, usual, brisk))
    amounts = {
        "thick": Amount(thickness_m, LENGTH),
        "film": Amount(usual, FILM),
        "value": Amount(value, LASTING),
        "density": str(round(MEAT_KG_PER_M3)),
        "heat": Amount(HEAT_CAPACITY / 1000, RATIO),
    }
    text: Message = (
        "Density × heat capacity × thickness ÷ (4 × film), with {density} kg/m³ and {heat} kJ/(kg K): {thick} and "
        "{film} make {value}."
    )
    name = "Comes 63 % nearer to the air in"
    return Figure("warming", name, value, LASTING, (Sentence(text, amounts),), MEAT_WARMS, (), fast, slow)
