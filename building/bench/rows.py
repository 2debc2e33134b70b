"""The measurements by name. A new one is a function in a file of its own, and a line here."""

from collections.abc import Callable

from building.bench import Row
from building.bench.first_visit import first_visit

ROWS: dict[str, Callable[[], Row]] = {
    "first-visit": first_visit,
}
