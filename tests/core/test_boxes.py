"""The ends of each box, and what stands in it before anything is typed, as the box itself reads them.

Our own bounds, wide about what a kitchen has; those that a source gives are in tests/published.
"""

import pytest

from core.reading import read
from core.refusals import OutOfRange
from core.worksheet import Number
from core.worksheets import WORKSHEETS, find

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
        "reading_c": "−30 °C to 50 °C",
        "tolerance_k": "0.01 K to 20 K; 1 K",
        "division_k": "0 K to 5 K; 0.1 K",
    },
    "boiling-point": {
        "reading_c": "50 °C to 150 °C",
        "altitude_m": "−500 m to 4000 m; 0 m",
        "pressure_pa": "600 hPa to 1100 hPa",
        "tolerance_k": "0.01 K to 20 K; 1 K",
        "division_k": "0 K to 5 K; 0.1 K",
    },
    "salt-check": {
        "temperature_c": "0 °C to 40 °C",
        "reading": "0 % to 100 %",
        "tolerance": "0.1 % to 50 %; 3 %",
        "division": "0 % to 10 %; 0.1 %",
        "apart_k": "0 K to 5 K; 0.2 K",
    },
    "salt-check-two": {
        "temperature_c": "0 °C to 40 °C",
        "reading": "0 % to 100 %",
        "other_temperature_c": "0 °C to 40 °C",
        "other_reading": "0 % to 100 %",
        "now": "0 % to 100 %",
        "tolerance": "0.1 % to 50 %; 3 %",
        "division": "0 % to 10 %; 0.1 %",
        "apart_k": "0 K to 5 K; 0.2 K",
    },
    "ph-meter": {
        "buffer": "1.0 to 13.0; 7.0",
        "temperature_c": "5 °C to 50 °C; 25 °C",
        "reading": "−1000 to 1000",
        "other_buffer": "1.0 to 13.0; 4.01",
        "other_temperature_c": "5 °C to 50 °C; 25 °C",
        "other_reading": "−1000 to 1000",
    },
    "ph-warmth": {
        "shown": "2.0 to 12.0",
        "sample": "0 °C to 60 °C",
        "stands_at": "0 °C to 60 °C; 25 °C",
    },
    "scale-check": {
        "mass_kg": "0.001 g to 999999 g",
        "reading_kg": "0.001 g to 999999 g",
        "division_kg": "0.001 g to 1000 g; 0.1 g",
        "other_mass_kg": "0.001 g to 999999 g",
        "other_reading_kg": "0.001 g to 999999 g",
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
        "centre_share": "1 % to 99 %; 90 %",
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
        "loss": "0 % to 75 %; 35 %",
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
    "net-yield": {
        "start_kg": "1 g to 999000 g",
        "now_kg": "1 g to 999000 g",
        "net_kg": "1 g to 999000 g",
    },
    "target-weight": {
        "start_kg": "1 g to 999000 g",
        "target_loss": "0 % to 75 %; 35 %",
    },
    "dried-activity": {
        "water": "2.5 % to 80 %",
        "salt": "0 % to 12 %",
        "sugar": "0 g/kg to 100 g/kg",
        "loss": "0 % to 70 %",
        "measured": "0.3 to 1",
    },
    "loss-for-activity": {
        "water": "2.5 % to 80 %",
        "salt": "0 % to 12 %",
        "sugar": "0 g/kg to 100 g/kg",
        "wanted": "0.76 to 0.98",
    },
    "dried-composition": {
        "water": "2.5 % to 80 %",
        "salt": "0 % to 12 %",
        "loss": "0 % to 70 %",
        "protein": "2 % to 40 %",
        "fat": "0 % to 70 %",
        "nitrite": "1 ppm to 10000 ppm",
    },
    "end-of-drying": {
        "water": "2.5 % to 80 %",
        "salt": "0 % to 12 %",
        "temperature_c": "0 °C to 40 °C",
        "humidity": "70 % to 98 %",
    },
    "mean-kinetic": {
        "temperature_1": "−50 °C to 80 °C",
        "lasts_1": "0 h to 20000 h",
        "temperature_2": "−50 °C to 80 °C",
        "lasts_2": "0 h to 20000 h",
        "temperature_3": "−50 °C to 80 °C",
        "lasts_3": "0 h to 20000 h",
    },
    "dilute-sanitiser": {
        "stock": "0.001 % to 100 %",
        "target": "1 ppm to 10000 ppm",
        "volume_m3": "10 ml to 37854.11784 L",
        "label": "1 ppm to 10000 ppm",
        "ph": "1.0 to 13.0",
        "stock_kg_m3": "0.8 kg/L to 2 kg/L; 1 kg/L",
    },
    "dilute-descaler": {
        "volume_m3": "10 ml to 37854.11784 L",
    },
    "cure-ppm": {
        "meat_kg": "10 g to 1000 kg",
        "dose": "0 % to 100 %",
        "nitrite": "0 % to 100 %",
        "nitrate": "0 % to 100 %; 0 %",
        "other_salt_kg": "0 g to 100000 g",
        "other_kg": "0 g to 1000000 g",
        "second_kg": "0 g to 100000 g",
        "second_nitrite": "0 % to 100 %",
        "second_nitrate": "0 % to 100 %",
    },
    "cure-dose": {
        "meat_kg": "10 g to 1000 kg",
        "wanted": "1 ppm to 10000 ppm",
        "nitrite": "0 % to 100 %",
        "nitrate": "0 % to 100 %; 0 %",
        "other_salt_kg": "0 g to 100000 g",
        "other_kg": "0 g to 1000000 g",
    },
    "cure-pump": {
        "meat_kg": "10 g to 1000 kg",
        "cure_kg": "0 g to 100000 g",
        "nitrite": "0 % to 100 %",
        "nitrate": "0 % to 100 %; 0 %",
        "water_kg": "10 g to 1000 kg",
        "other_salt_kg": "0 g to 300000 g; 0 g",
        "sugar_kg": "0 g to 300000 g; 0 g",
        "accelerator_kg": "0 g to 10000 g; 0 g",
        "taken": "0.1 % to 100 %",
    },
    "cure-pump-dose": {
        "meat_kg": "10 g to 1000 kg",
        "wanted": "1 ppm to 10000 ppm",
        "nitrite": "0 % to 100 %",
        "nitrate": "0 % to 100 %; 0 %",
        "water_kg": "10 g to 1000 kg",
        "other_salt_kg": "0 g to 300000 g; 0 g",
        "sugar_kg": "0 g to 300000 g; 0 g",
        "accelerator_kg": "0 g to 10000 g; 0 g",
        "taken": "0.1 % to 100 %",
    },
    "cure-immersion": {
        "meat_kg": "10 g to 1000 kg",
        "cure_kg": "0 g to 100000 g",
        "nitrite": "0 % to 100 %",
        "nitrate": "0 % to 100 %; 0 %",
        "water_kg": "10 g to 1000 kg",
        "other_salt_kg": "0 g to 300000 g; 0 g",
        "sugar_kg": "0 g to 300000 g; 0 g",
        "accelerator_kg": "0 g to 10000 g; 0 g",
        "taken": "0.1 % to 100 %",
    },
    "cure-immersion-dose": {
        "meat_kg": "10 g to 1000 kg",
        "wanted": "1 ppm to 10000 ppm",
        "nitrite": "0 % to 100 %",
        "nitrate": "0 % to 100 %; 0 %",
        "water_kg": "10 g to 1000 kg",
        "other_salt_kg": "0 g to 300000 g; 0 g",
        "sugar_kg": "0 g to 300000 g; 0 g",
        "accelerator_kg": "0 g to 10000 g; 0 g",
        "taken": "0.1 % to 100 %",
    },
    "cure-brine": {
        "water_kg": "10 g to 1000 kg",
        "other_salt_kg": "0 g to 300000 g; 0 g",
        "sugar_kg": "0 g to 300000 g; 0 g",
        "cure_kg": "0 g to 100000 g",
        "nitrite": "0 % to 100 %",
        "nitrate": "0 % to 100 %; 0 %",
    },
    "brine-recipe": {
        "volume_m3": "100 ml to 1000 L",
        "share": "0 % to 26.4 %",
    },
    "degree-hours": {
        "temperature_c": "0 °C to 50 °C",
        "lasts_s": "0 h to 1000 h",
    },
    "degree-hours-steps": {
        "temperature_1": "0 °C to 50 °C",
        "lasts_1": "0 h to 1000 h",
        "temperature_2": "0 °C to 50 °C",
        "lasts_2": "0 h to 1000 h",
        "temperature_3": "0 °C to 50 °C",
        "lasts_3": "0 h to 1000 h",
        "temperature_4": "0 °C to 50 °C",
        "lasts_4": "0 h to 1000 h",
    },
    "degree-hours-left": {
        "gone_ks": "0 °C·h to 2000 °C·h",
        "present_c": "0 °C to 50 °C",
        "highest_c": "0 °C to 50 °C",
    },
    "weigh-dose": {
        "wanted_kg": "0.001 g to 1000000 g",
        "division_kg": "0.001 g to 100 g; 1 g",
    },
    "pre-blend": {
        "dose_kg": "0.001 g to 1000000 g",
        "salt_kg": "0 g to 1000000 g",
        "division_kg": "0.001 g to 100 g; 1 g",
    },
    "ready": {
        "start_kg": "1 g to 999000 g",
        "now_kg": "1 g to 999000 g",
        "target_loss": "1 % to 75 %; 35 %",
        "hung": "0 d to 3650 d",
        "least": "0 d to 3650 d",
        "water_activity": "0.3 to 1",
        "activity_loss": "0 % to 75 %",
        "lowest_ph": "3.5 to 8.0",
        "last_ph": "3.5 to 8.0",
        "nitrite": "1 ppm to 10000 ppm",
        "nitrate": "1 ppm to 10000 ppm",
        "besides": "0 % to 200 %",
        "accelerator": "1 ppm to 10000 ppm",
        "salt": "0.5 % to 20 %",
        "thickness_m": "5 mm to 1000 mm",
        "width_m": "5 mm to 1000 mm",
        "length_m": "5 mm to 1000 mm",
        "in_salt": "0 d to 3650 d",
        "rested": "0 d to 3650 d",
        "coldest_c": "−18 °C to 45 °C",
        "warmest_c": "−18 °C to 45 °C",
        "mass_kg": "50 g to 60 kg",
    },
    "moisture-protein": {
        "water": "1 % to 85 %",
        "protein": "1 % to 60 %",
        "ph": "3.5 to 8.0",
        "salt": "0.1 % to 20 %",
    },
    "pork-frozen": {
        "warmest_c": "−60 °C to 40 °C",
        "thickness_m": "5 mm to 1000 mm",
    },
    "pork-trial": {
        "ph": "3.5 to 8.0",
        "salt": "0.1 % to 20 %",
    },
    "pork-cured": {
        "grind_m": "1 mm to 300 mm",
        "salted": "0.1 % to 30 %",
        "across_m": "5 mm to 300 mm",
        "deep_m": "5 mm to 1000 mm",
        "held_s": "0 h to 1440 h",
        "held_c": "−10 °C to 70 °C",
        "smoked_s": "0 h to 1440 h",
        "smoked_c": "−10 °C to 70 °C",
        "hot_s": "0 h to 1440 h",
        "hot_c": "−10 °C to 70 °C",
        "rise_s": "0 h to 240 h",
        "heaviest_kg": "50 g to 60 kg",
        "mix_salt": "0 % to 100 %",
        "contact_s": "0 d to 400 d",
        "rest_s": "0 d to 400 d",
        "lay_c": "−10 °C to 70 °C",
        "lay_most_c": "−10 °C to 70 °C",
        "overhauled": "0 to 20",
        "soaked_s": "0 h to 120 h",
        "soaked_c": "−10 °C to 70 °C",
        "brine": "0.1 % to 30 %",
        "dried_c": "−10 °C to 70 °C",
        "dried_s": "0 d to 1000 d",
        "since_s": "0 d to 1000 d",
    },
}


def test_every_box_of_every_worksheet_is_entered_above():
    numbers = {
        name: [each.key for each in sheet.inputs if isinstance(each, Number)] for name, sheet in WORKSHEETS.items()
    }
    assert {name: sorted(keys) for name, keys in numbers.items() if keys} == {
        n: sorted(keys) for n, keys in BOXES.items()
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
    hair = 1e-6 * (number.high - number.low)
    assert [number.check(end) for end in (number.low, number.high)] == [number.low, number.high]
    for beyond in (number.low - hair, number.high + hair):
        with pytest.raises(OutOfRange):
            number.check(beyond)


USUAL_HERE = {
    "ice-point": {"reading_c": "−5 °C to 5 °C", "division_k": "0.01 K to 1 K"},
    "boiling-point": {"division_k": "0.01 K to 1 K"},
    "scale-check": {"division_kg": "0.01 g to 5 g"},
    "dilute-sanitiser": {"target": "10 ppm to 1000 ppm", "label": "10 ppm to 500 ppm"},
    "cold-piece": {"piece": "−1 °C to 30 °C"},
    "chamber-capacity": {"drained": "20 ml to 30 L"},
    "cure-dose": {"wanted": "40 ppm to 250 ppm"},
    "cure-pump": {"taken": "5 % to 40 %"},
    "cure-pump-dose": {"wanted": "40 ppm to 250 ppm", "taken": "5 % to 40 %"},
    "cure-immersion": {"taken": "3 % to 40 %"},
    "cure-immersion-dose": {"wanted": "40 ppm to 250 ppm", "taken": "3 % to 40 %"},
    "degree-hours": {"temperature_c": "4 °C to 39 °C", "lasts_s": "8 h to 240 h"},
    "degree-hours-steps": {
        "temperature_1": "4 °C to 39 °C",
        "temperature_2": "4 °C to 39 °C",
        "temperature_3": "4 °C to 39 °C",
        "temperature_4": "4 °C to 39 °C",
    },
    "degree-hours-left": {"present_c": "4 °C to 39 °C", "highest_c": "4 °C to 39 °C"},
    "casings": {"length_m": "50 mm to 30000 mm"},
    "weigh-dose": {"division_kg": "0.01 g to 5 g"},
    "pre-blend": {"division_kg": "0.01 g to 5 g"},
    "dried-activity": {"water": "30 % to 80 %"},
    "loss-for-activity": {"water": "30 % to 80 %"},
    "dried-composition": {"water": "30 % to 80 %"},
    "end-of-drying": {"water": "30 % to 80 %"},
    "pork-frozen": {"warmest_c": "−45 °C to −12 °C"},
    "pork-cured": {"grind_m": "2 mm to 50 mm", "smoked_c": "20 °C to 60 °C", "hot_c": "20 °C to 60 °C"},
    "mean-kinetic": {"lasts_1": "1 h to 9000 h", "lasts_2": "1 h to 9000 h", "lasts_3": "1 h to 9000 h"},
}
"""What is usual in a box that has a range of its own."""


def test_what_is_usual_in_each_box_of_its_own():
    own = {
        name: {each.key: each for each in sheet.inputs if isinstance(each, Number) and each.usual is not None}
        for name, sheet in WORKSHEETS.items()
    }
    assert {name: list(keys) for name, keys in own.items() if keys} == {n: list(keys) for n, keys in USUAL_HERE.items()}
    for name, keys in USUAL_HERE.items():
        for key, ends in keys.items():
            number = own[name][key]
            read_ = [read(end, number.quantity) for end in ends.split(" to ")]
            assert number.usual == pytest.approx(read_, rel=1e-6), f"{name} {key}"
