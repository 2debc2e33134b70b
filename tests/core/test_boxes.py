"""The ends of each box, and what stands in it before anything is typed, as the box itself reads them.

Our own bounds, wide about what a kitchen has; those that a source gives are in tests/published.
"""

import pytest

from core.quantities import METRIC
from core.reading import read
from core.refusals import OutOfRange
from core.worksheet import Number
from core.worksheets import find

BOXES = {
    "moist-air": {
        "temperature": "−20 °C to 60 °C; 12 °C",
        "humidity": "1 % to 100 %; 75 %",
        "altitude": "−500 m to 4000 m; 0 m",
        "pressure": "600 hPa to 1100 hPa",
    },
    "drying-force": {
        "temperature": "−20 °C to 60 °C; 12 °C",
        "humidity": "1 % to 100 %; 75 %",
        "surface_activity": "0.5 to 1; 0.97",
        "surface_temperature": "−20 °C to 60 °C",
    },
    "ice-point": {
        "reading": "−30 °C to 50 °C",
        "tolerance": "0.01 K to 20 K; 1 K",
        "division": "0 K to 5 K; 0.1 K",
    },
    "boiling-point": {
        "reading": "50 °C to 150 °C",
        "altitude": "−500 m to 4000 m; 0 m",
        "pressure": "600 hPa to 1100 hPa",
        "tolerance": "0.01 K to 20 K; 1 K",
        "division": "0 K to 5 K; 0.1 K",
    },
    "salt-check": {
        "temperature": "0 °C to 40 °C",
        "reading": "0 % to 100 %",
        "tolerance": "0.1 % to 50 %; 3 %",
        "division": "0 % to 10 %; 0.1 %",
        "apart": "0 K to 5 K; 0.2 K",
    },
    "salt-check-two": {
        "temperature": "0 °C to 40 °C",
        "reading": "0 % to 100 %",
        "other_temperature": "0 °C to 40 °C",
        "other_reading": "0 % to 100 %",
        "now": "0 % to 100 %",
        "tolerance": "0.1 % to 50 %; 3 %",
        "division": "0 % to 10 %; 0.1 %",
        "apart": "0 K to 5 K; 0.2 K",
    },
    "ph-meter": {
        "buffer": "1.0 to 13.0; 7.0",
        "temperature": "5 °C to 50 °C; 25 °C",
        "reading": "−1000 to 1000",
        "other_buffer": "1.0 to 13.0; 4.01",
        "other_temperature": "5 °C to 50 °C; 25 °C",
        "other_reading": "−1000 to 1000",
    },
    "ph-warmth": {
        "shown": "2.0 to 12.0",
        "sample": "0 °C to 60 °C",
        "stands_at": "0 °C to 60 °C; 25 °C",
    },
    "scale-check": {
        "mass": "0.001 g to 1000000 g",
        "reading": "0.001 g to 1000000 g",
        "division": "0.001 g to 1000 g; 0.1 g",
        "other_mass": "0.001 g to 1000000 g",
        "other_reading": "0.001 g to 1000000 g",
    },
    "humidifier-charge": {
        "water_m3": "100 ml to 1000 L",
        "soda_kg_per_m3": "0 g/L to 100 g/L; 14.5823 g/L",
        "tank_m3": "100 ml to 1000 L",
        "water_c": "0 °C to 60 °C; 20 °C",
        "carbon_dioxide": "100 ppm to 10000 ppm; 420 ppm",
    },
    "set-point": {
        "temperature": "−20 °C to 60 °C; 12 °C",
        "humidity": "1 % to 100 %; 75 %",
        "activity": "0.5 to 1; 0.97",
    },
    "equal-drying": {
        "temperature": "−20 °C to 60 °C; 12 °C",
        "humidity": "1 % to 100 %; 75 %",
        "activity": "0.5 to 1; 0.97",
        "other_temperature": "−20 °C to 60 °C",
        "other_humidity": "0 % to 100 %",
    },
    "cold-piece": {
        "piece": "−1 °C to 60 °C; 2 °C",
        "temperature": "−20 °C to 60 °C; 12 °C",
        "humidity": "1 % to 100 %; 75 %",
        "thickness": "10 mm to 300 mm",
        "film": "2 W/(m² K) to 60 W/(m² K)",
    },
    "moisture-load": {
        "hanging": "1 g to 999 kg",
        "loss": "0.01 % a day to 10 % a day; 1 % a day",
        "peak": "0.01 % a day to 10 % a day",
        "temperature": "−20 °C to 60 °C; 12 °C",
        "humidity": "1 % to 100 %; 75 %",
        "chamber": "10 L to 100 m³",
        "thickness": "10 mm to 300 mm",
        "air_speed": "0.02 m/s to 3 m/s",
    },
    "chamber-capacity": {
        "loss": "0.01 % a day to 10 % a day; 1 % a day",
        "drained": "1 ml to 1000 L",
        "time": "6 h to 365 d",
        "rating": "0.001 L a day to 1000 L a day",
        "hanging": "1 g to 999 kg",
        "peak": "0.01 % a day to 10 % a day",
    },
    "humidifier-need": {
        "chamber": "10 L to 100 m³",
        "temperature": "−20 °C to 60 °C; 12 °C",
        "humidity": "1 % to 100 %; 75 %",
        "room_temperature": "−20 °C to 60 °C; 20 °C",
        "room_humidity": "1 % to 100 %; 50 %",
        "changes": "0 to 1000",
        "drained": "0 L a day to 100 L a day",
    },
    "sugar-for-ph": {
        "start_ph": "5.0 to 7.0; 5.8",
        "wanted_ph": "4.5 to 7.0; 5.0",
    },
    "ph-of-sugar": {
        "start_ph": "5.0 to 7.0; 5.8",
        "sugar_share": "0 g/kg to 50 g/kg",
    },
    "starter": {
        "meat_kg": "10 g to 1000 kg",
        "packet_kg": "0.01 g to 10000 g",
        "packet_for_kg": "100 g to 10000 kg",
        "cells_per_gram": "1 to 10000000000000",
    },
    "salting": {
        "thickness_m": "5 mm to 1000 mm",
        "width_m": "5 mm to 1000 mm",
        "length_m": "5 mm to 1000 mm",
        "temperature_c": "−2 °C to 15 °C; 3 °C",
        "share": "1 % to 99 %; 90 %",
        "mass_kg": "50 g to 60 kg",
    },
    "ham-days": {
        "salted_s": "0 d to 3650 d",
        "in_all_s": "0 d to 3650 d",
        "salt": "0.1 % to 50 %",
        "water": "0.1 % to 90 %",
    },
    "fat-mix": {
        "lean_fat": "0 % to 100 %",
        "fat_fat": "0 % to 100 %",
        "wanted": "0 % to 100 %",
        "meat_kg": "10 g to 1000 kg",
    },
    "finished-mass": {
        "finished_kg": "10 g to 1000 kg",
        "loss": "0 % to 70 %; 35 %",
        "others": "0 % to 200 %; 4 %",
    },
    "casings": {
        "count": "1 to 10000",
        "diameter_m": "5 mm to 500 mm",
        "length_m": "10 mm to 1000000 mm",
        "density": "0.5 kg/L to 1.5 kg/L; 1.05 kg/L",
    },
    "shrink": {
        "start_kg": "1 g to 999000 g",
        "now_kg": "1 g to 999000 g",
        "target_loss": "0 % to 75 %; 35 %",
    },
    "target-weight": {
        "start_kg": "1 g to 999000 g",
        "target_loss": "0 % to 75 %; 35 %",
    },
}
boxes = pytest.mark.parametrize(("name", "key"), [(name, key) for name, keys in BOXES.items() for key in keys])


def box(name: str, key: str) -> Number:
    (found,) = [each for each in find(name).inputs if each.key == key and isinstance(each, Number)]
    return found


@boxes
def test_a_box_has_these_ends(name: str, key: str):
    number = box(name, key)
    ends = BOXES[name][key].partition("; ")[0].split(" to ")
    assert [number.low, number.high] == pytest.approx([read(end, number.quantity) for end in ends], rel=1e-6, abs=1e-15)


@boxes
def test_what_stands_in_a_box_at_first(name: str, key: str):
    number = box(name, key)
    first = BOXES[name][key].partition("; ")[2]
    wanted = read(first, number.quantity) if first else None
    assert number.default == (None if wanted is None else pytest.approx(wanted, rel=1e-5))


@boxes
def test_both_ends_are_let_through_and_a_hair_beyond_them_is_not(name: str, key: str):
    number = box(name, key)
    hair = 1e-4 * (number.high - number.low)
    assert [number.check(end, METRIC) for end in (number.low, number.high)] == [number.low, number.high]
    for beyond in (number.low - hair, number.high + hair):
        with pytest.raises(OutOfRange):
            number.check(beyond, METRIC)
