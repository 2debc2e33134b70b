"""Instruments added and checked through their forms."""

from tests.web.conftest import Visitor


def add(visitor: Visitor, kind: str = "hygrometer", name: str = "Larder", **more: str) -> str:
    """The instrument's path."""
    return visitor.fill("/chamber/instruments/add", name=name, kind=kind, **more).path.partition("?")[0]


def key_of(path: str) -> str:
    return path.rpartition("/")[2]


def checked(visitor: Visitor, reading: str = "79") -> str:
    """A hygrometer checked over table salt at 12 °C, where it should read 75.66 %; it is a day later."""
    path = add(visitor)
    visitor.fill(f"{path}/check/salt", temperature_c="12", reading=reading)
    visitor.wait(days=1)
    return path


def meter(visitor: Visitor, seven: str = "7.1", four: str = "4.1") -> str:
    path = add(visitor, "ph-meter", "Pen")
    texts = {"buffer": "7", "temperature_c": "25", "reading": seven, "other_temperature_c": "25"}
    visitor.fill(f"{path}/check/buffers", other_buffer="4", other_reading=four, **texts)
    visitor.wait(hours=1)
    return path


def scale(visitor: Visitor, reading: str = "1008") -> str:
    path = add(visitor, "scale", "Bench")
    visitor.fill(f"{path}/check/weights", mass_kg="1000", reading_kg=reading, division_kg="1")
    visitor.wait(hours=1)
    return path
