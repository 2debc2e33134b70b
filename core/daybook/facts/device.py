"""What its owner calls the tablet that writes. Its id was made by chance when it first wrote; each entry carries it."""

from __future__ import annotations

from attrs import field, frozen
from attrs.validators import matches_re, max_len, min_len

DEVICES = "devices"
"""The `about` of everything that belongs to the tablets themselves."""


@frozen
class DeviceNamed:
    """device: the id that its entries carry. The latest name holds."""

    KIND = "device-named"

    device: str = field(validator=matches_re("[0-9a-z]{1,32}"))
    name: str = field(validator=[min_len(1), max_len(60)])


Fact = DeviceNamed
