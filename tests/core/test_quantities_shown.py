"""In which unit and with how many decimals every quantity of the core is shown, entered a second time.

"kg.3 from 10, g.0" is kilograms with three decimals from 10 kg on, below it whole grams; "lb.1 from 1 then oz" has the
ounces beside the pounds, "g.2 (oz)" the ounces in brackets. The choice is ours, no published source.
"""

import pkgutil
from importlib import import_module

import pytest

import core
from core import quantities
from core.chamber import (
    checks_hygrometer,
    checks_ph,
    checks_thermometer,
    humidifier,
    hygrometer_boxes,
    rates,
    sanitising_measures,
)
from core.chamber.settling import measures as proof_measures
from core.daybook.facts import preparation
from core.dry import shrink
from core.ferment import saying
from core.mix import blend, curing_salt, dose_box, limit_check, measures
from core.quantities import Amount, DisplayUnit, Quantity


def _rung(rung: DisplayUnit) -> str:
    said = f"{rung.unit.symbol or '1'}.{rung.decimals}"
    said += f" from {rung.from_value:g}" if rung.from_value else ""
    said += f" then {rung.then.symbol}" if rung.then else ""
    return said + (f" ({rung.also.symbol})" if rung.also else "")


def _ladder(rungs: tuple[DisplayUnit, ...]) -> str:
    return ", ".join(map(_rung, rungs))


# The quantity, its metric ladder, that of the US where it is another, the units of a bare number, how it is rounded.
SHOWN = (
    (quantities.ABSOLUTE_HUMIDITY, "g/m³.2", "", "g/m³", ""),
    (quantities.ABSOLUTE_TEMPERATURE, "K.2", "", "K", ""),
    (quantities.ALTITUDE, "m.0", "ft.0", "m, ft", ""),
    (quantities.CELSIUS_TEMPERATURE, "°C.1", "", "°C", ""),
    (quantities.COUNT, "1.0", "", "", ""),
    (quantities.CURE_MASS,
     "g.0 from 1000, g.1 from 10, g.2",
     "g.0 from 1000 (oz), g.1 from 10 (oz), g.2 (oz)", "g", "down"),
    (quantities.DAYS, "d.1", "", "d", "trimmed"),
    (quantities.DEGREE_HOURS, "°C·h.0", "°F·h.0", "°C·h, °F·h", ""),
    (quantities.DENSITY, "kg/L.3", "", "kg/L", ""),
    (quantities.DIFFUSIVITY, "mm² a day.1", "", "mm² a day", ""),
    (quantities.DOSE_MASS,
     "g.0 from 1000, g.1 from 10, g.2",
     "g.0 from 1000 (oz), g.1 from 10 (oz), g.2 (oz)", "g", ""),
    (quantities.ENTHALPY, "kJ/kg.1", "", "kJ/kg", ""),
    (quantities.FRACTION, "%.2", "", "%", "trimmed"),
    (quantities.HOURS, "h.1", "", "h", "trimmed"),
    (quantities.HOURS_LEFT, "h.1", "", "h", "trimmed down"),
    (saying.HOURS_AND_MINUTES, "h.0 from 1 then min, min.0", "", "h", "trimmed down"),
    (quantities.HUMIDITY_RATIO, "g/kg.2", "", "g/kg", ""),
    (quantities.LENGTH, "mm.0", "in.2", "mm, in", "trimmed"),
    (quantities.LOSS, "%.1", "", "%", ""),
    (quantities.LOSS_RATE, "% a day.2", "", "% a day", ""),
    (quantities.MASS,
     "kg.3 from 10, g.0 from 100, g.1 from 10, g.2",
     "lb.1 from 1 then oz, oz.2", "kg, lb", "trimmed"),
    (quantities.MOLALITY, "mol/kg.3", "", "mol/kg", ""),
    (quantities.MOLAR_MASS, "kg/mol.3", "", "kg/mol", "trimmed"),
    (quantities.PARTS_PER_MILLION, "ppm.0", "", "ppm", ""),
    (quantities.PH, "1.2", "", "", "trimmed at least 1"),
    (quantities.PIECE_MASS, "g.1", "lb.1 from 1 then oz, oz.2", "g, lb", "trimmed"),
    (quantities.PRESSURE, "hPa.1", "inHg.2", "hPa, inHg", "trimmed"),
    (quantities.RATIO, "1.3", "", "", "trimmed"),
    (quantities.RELATIVE_HUMIDITY, "%.1", "", "%", "trimmed"),
    (quantities.SALOMETER, "degrees.0", "", "degrees", ""),
    (quantities.SUGAR_DOSE, "g/kg.1", "", "g/kg", "trimmed"),
    (quantities.TEMPERATURE, "°C.1", "°F.1", "°C, °F", ""),
    (quantities.TEMPERATURE_DIFFERENCE, "K.1", "°F.1", "K, °F", ""),
    (quantities.VAPOUR_PRESSURE, "Pa.0", "", "Pa", ""),
    (quantities.VOLUME,
     "L.2 from 1, ml.0 from 100, ml.1",
     "qt.2 from 0.25, tbsp.2 from 1, tsp.2", "L, qt", "trimmed"),
    (quantities.WATER_ACTIVITY, "1.3", "", "", ""),
    (humidifier.SODA_DOSE, "g/L.1", "tbsp/qt.2", "g/L, tbsp/qt", "trimmed"),
    (humidifier.SODA_GRAMS, "g/L.1", "", "g/L", ""),
    (humidifier.SPOONS, "tbsp.1", "", "tbsp", "trimmed"),
    (rates.AIR_SPEED, "m/s.2", "ft/min.0", "m/s, ft/min", "trimmed"),
    (rates.FILM, "W/(m² K).1", "", "W/(m² K)", "trimmed"),
    (rates.FLUX, "g/(m² h).1", "", "g/(m² h)", ""),
    (rates.LASTING, "d.1 from 2, h.1 from 2, min.0 from 2, s.0", "", "h", "trimmed"),
    (preparation.TIMED, "d.1 from 2, h.1 from 2, min.0 from 2, s.0", "", "min", "trimmed"),
    (rates.MOISTURE, "g/h.2", "", "g/h", ""),
    (rates.POWER, "W.1", "", "W", ""),
    (rates.ROOM, "m³.2 from 10, L.0", "ft³.1", "L, ft³", "trimmed"),
    (rates.SURFACE_OF_A_KILO, "m²/kg.4", "", "m²/kg", ""),
    (rates.WATER_A_DAY, "L a day.2", "qt a day.2", "L a day, qt a day", "trimmed"),
    (sanitising_measures.CONTACT, "s.0", "", "h", "trimmed"),
    (sanitising_measures.CONTACT_TIME, "s.0", "", "s", "trimmed"),
    (sanitising_measures.WEIGHT_OF_A_LITRE, "kg/L.2", "", "kg/L", "trimmed"),
    (sanitising_measures.SPOONS, "tbsp.2 from 1, tsp.2", "", "L, qt", "trimmed"),
    (sanitising_measures.STOCK, "ml.0 from 100, ml.1 from 10, ml.2", "", "L, qt", "trimmed"),
    (sanitising_measures.STRENGTH, "%.2", "", "%", "trimmed"),
    (checks_hygrometer.WAIT, "min.0", "", "min", "trimmed"),
    (checks_ph.VOLTAGE, "mV.1", "", "mV", "trimmed"),
    (hygrometer_boxes.HUMIDITY_STEP, "%.1", "", "%", "trimmed"),
    (checks_thermometer.HOT, "°C.1", "°F.1", "°C, °F", ""),
    (checks_ph.SHOWN, "1.3", "", "", "trimmed"),
    (proof_measures.DRIFT, "K/d.2", "°F/d.2", "K/d, °F/d", ""),
    (proof_measures.FINE_DIFFERENCE, "K.2", "°F.2", "K, °F", ""),
    (proof_measures.FINE_TEMPERATURE, "°C.2", "°F.2", "°C, °F", ""),
    (proof_measures.LASTS, "h.1 from 3, min.1 from 1, s.0", "", "min", ""),
    (proof_measures.SPEED, "K/h.1", "°F/h.1", "K/h, °F/h", ""),
    (proof_measures.STARTS, "/h.2", "", "/h", ""),
    (shrink.WHOLE_GRAMS, "g.0", "lb.1 from 1 then oz, oz.2", "g, lb", "trimmed"),
    (blend.SALT_IN_BLEND,
     "g.0 from 1000, g.1 from 10, g.2",
     "g.0 from 1000 (oz), g.1 from 10 (oz), g.2 (oz)", "g", "up"),
    (curing_salt.DOSE, "%.2", "", "%", "trimmed"),
    (curing_salt.STRENGTH, "%.2", "", "%", "trimmed"),
    (dose_box.PER_CENT_OR_WEIGHT, "%.2", "", "%", "trimmed"),
    (dose_box.WEIGHT_IN_BRINE,
     "g.0 from 1000, g.1 from 10, g.2",
     "g.0 from 1000 (oz), g.1 from 10 (oz), g.2 (oz)", "g", ""),
    (limit_check.TO_10_MG, "g.2", "g.0 from 1000 (oz), g.1 from 10 (oz), g.2 (oz)", "g", "trimmed down"),
    (measures.CURE_SHARE, "%.3", "", "%", "trimmed down"),
    (measures.DENSITY, "kg/L.2", "", "kg/L", ""),
    (measures.GOING_IN, "ppm.0", "", "ppm", "down"),
    (measures.GRAMS_PER_MEAT, "g/kg.2", "", "%", "trimmed"),
    (measures.MONEY, "1.2", "", "", ""),
    (measures.PER_MEAT, "%.2", "", "%", "trimmed"),
    (measures.PRICE, "a kg.2", "a lb.2", "a kg, a lb", ""),
    (measures.SALT_SHARE, "%.2", "", "%", "trimmed down"),
)  # fmt: skip


@pytest.mark.parametrize(
    ("quantity", "metric", "us", "bare", "how"), SHOWN, ids=[f"{at}-{row[0].key}" for at, row in enumerate(SHOWN)]
)
def test_a_quantity_is_shown_so(quantity: Quantity, metric: str, us: str, bare: str, how: str):
    assert (_ladder(quantity.metric), _ladder(quantity.us)) == (metric, us or metric)
    assert ", ".join(dict.fromkeys((quantity.bare_metric.symbol, quantity.bare_us.symbol))) == bare
    least = f"at least {quantity.least}" if quantity.least else ""
    rounds = "" if quantity.rounds == "nearest" else quantity.rounds
    assert " ".join(filter(None, ("trimmed" if quantity.trim else "", least, rounds))) == how


def test_every_quantity_of_the_core_is_entered_above():
    modules = [each for each in pkgutil.walk_packages(core.__path__, "core.") if not each.name.endswith("__main__")]
    known = [each for module in modules for each in vars(import_module(module.name)).values()]
    entered = {id(row[0]) for row in SHOWN}
    assert [each.key for each in known if isinstance(each, Quantity) and id(each) not in entered] == []


@pytest.mark.parametrize(
    ("value", "shown"), [(1.23456e-7, "0.000000123456"), (1.23456e-9, "0.000000001235"), (4e-13, "0")]
)
def test_the_smallest_numbers_are_shown_in_twelve_decimals(value: float, shown: str):
    assert Amount(value, quantities.RATIO).show_exact() == shown
