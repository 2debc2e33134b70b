"""What a maker may call a sum, where its title and question do not hold the word: the search knows these too."""

from __future__ import annotations

from core.finding import holds, words_of
from core.sentence import Message
from core.worksheet import Worksheet
from web.saying import say

ALSO: dict[str, Message] = {
    "moist-air": "humidity, absolute humidity, wet bulb, condensation, vapour pressure, RH",
    "drying-force": "vapour pressure deficit, VPD, case hardening, dry rim",
    "ice-point": "calibrate a thermometer, zero, ice bath",
    "boiling-point": "calibrate a thermometer, altitude, elevation, steam",
    "salt-check": "calibrate a hygrometer, humidity sensor, salt test, slush, RH",
    "salt-check-two": "calibrate a hygrometer, humidity sensor, salt test, slush, RH",
    "ph-meter": "calibrate a pH meter, buffers, slope, electrode",
    "ph-warmth": "pH temperature compensation",
    "scale-check": "calibrate a scale, balance, check weight, smallest weight",
    "dilute-sanitiser": "bleach, chlorine, quat, peracetic acid, disinfect, ppm",
    "dilute-descaler": "acetic acid, citric acid, descale, lime",
    "humidifier-charge": "bicarbonate, soda, salt in the tank, tank water",
    "set-point": "temperature and humidity to set, controller, dew",
    "equal-drying": "same drying at another temperature, VPD",
    "cold-piece": "dew, condensation, sweating, from the refrigerator",
    "moisture-load": "dehumidifier, coil, water a day, evaporation",
    "chamber-capacity": "how much fits, overload, full chamber",
    "humidifier-need": "litres a day, empty chamber",
    "cure-ppm": "cure 1, cure 2, curing salt, pink salt, nitrate, parts per million",
    "cure-dose": "cure 1, cure 2, curing salt, pink salt, nitrate, grams, ppm",
    "cure-pump": "injection, pickle, brine, cure 1, pink salt",
    "cure-pump-dose": "injection, pickle, brine, cure 1, pink salt",
    "cure-immersion": "wet cure, pickle, brine, equilibrium, cure 1, pink salt",
    "cure-immersion-dose": "wet cure, pickle, brine, equilibrium, cure 1, pink salt",
    "cure-brine": "salinity, degrees salometer, density, pickle",
    "brine-recipe": "salinity, salt solution, pickle",
    "sugar-for-ph": "dextrose, acidify, ferment",
    "ph-of-sugar": "dextrose, acidify, ferment",
    "starter": "culture, bacteria, inoculate",
    "salting": "equilibrium, diffusion, how long in salt, whole muscle, ham",
    "ham-days": "ham, shoulder, prosciutto, trichinella, country ham",
    "degree-hours": "fermentation time, staphylococcus, degree days",
    "degree-hours-steps": "fermentation time, staphylococcus, room warming",
    "degree-hours-left": "fermentation time, clock, staphylococcus",
    "fat-mix": "lean and fat, fat percentage, trim, Pearson square",
    "finished-mass": "yield, raw weight, how much meat to buy",
    "casings": "diameter, length, stuffing, beef middles, hog casing",
    "weigh-dose": "rounding, resolution, scale step",
    "pre-blend": "premix, dilute the cure, small batch",
    "shrink": "yield, weight lost, moisture loss, percent",
    "target-weight": "yield, when is it done, final weight, green weight",
    "net-yield": "dry aged beef, dry-aged, trim, crust, saleable, waste, cooler shrink",
    "dried-activity": "aw, a_w, water activity, salt, shelf stable",
    "loss-for-activity": "aw, target, how dry, shelf stable",
    "dried-composition": "moisture protein ratio, MPR, M:P, brine, label",
    "end-of-drying": "equilibrium, isotherm, humidity, case hardening, stuck",
    "mean-kinetic": "MKT, storage, warm spell, average temperature",
    "moisture-protein": "mpr, laboratory, report, brine, semi-dry",
    "pork-frozen": "trichinella, trichinosis, freezer, freezing, worms",
    "pork-cured": "trichinella, trichinosis, coppa, ham, salami, certified pork",
    "pork-trial": "trichinella, larvae, study",
    "ready": "safe, shelf stable, water activity, aw, finished, done",
}


def is_found(sheet: Worksheet, sought: str) -> bool:
    """Whether each word sought begins a word of the sum's."""
    known = " ".join((say(sheet.title), say(sheet.question), sheet.name, say(ALSO.get(sheet.name, ""))))
    return holds(known, words_of(sought))
